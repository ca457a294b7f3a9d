package content

import (
	"bytes"
	"fmt"
	"slices"

	"coatwright/planner/library"
)

// problemsOfPlanner reports what is wrong between notes rather than in one:
// needs that nothing gives, and films that no step lays.
func (lib *Library) problemsOfPlanner(l *loader) {
	p := lib.planner
	given := givenFacts(p)
	for _, slug := range sortedKeys(p.Steps) {
		l.checkNeeds("step", slug, p.Steps[slug].Needs, given)
	}
	laid := map[string]bool{}
	for _, s := range p.Steps {
		laid[s.Lays] = true
	}
	for _, slug := range sortedKeys(p.Materials) {
		m := p.Materials[slug]
		l.checkNeeds("material", slug, m.Needs, given)
		if m.Role != "" && !laid[m.Role] {
			l.problemAt("material", slug, "role", fmt.Sprintf("the role %q", m.Role), "a role that some step lays")
		}
	}
}

// checkNeeds reports the needs of a note that nothing can meet.
func (l *loader) checkNeeds(kind, slug string, needs []library.Need, given map[string]bool) {
	for _, need := range needs {
		if !slices.ContainsFunc(need.Any, func(lit library.Literal) bool { return given[lit.Fact] }) {
			l.problemAt(kind, slug, "needs", fmt.Sprintf("a need of %q", need.Any[0].Fact), "a fact that some step, film or surface gives")
		}
	}
}

// problemAt reports a problem at a key of a note's front matter.
func (l *loader) problemAt(kind, slug, key, found, expected string) {
	i := slices.IndexFunc(l.files, func(f file) bool { return f.kind == kind && f.slug == slug })
	f := l.files[i]
	line, column := place(f.front, bytes.Index(f.front, []byte("\n"+key+":"))+1)
	l.problem(f.name, 1+line, column, found, expected, "")
}

// givenFacts is every fact that can come to hold.
func givenFacts(p *library.Library) map[string]bool {
	given := map[string]bool{}
	for _, w := range p.Words.Dryness {
		given[w.Name] = true
	}
	for _, s := range p.Steps {
		for _, g := range s.Gives {
			given[g.Fact] = true
		}
		if s.Lays != "" {
			given["film/"+s.Lays] = true
		}
	}
	for _, m := range p.Materials {
		for _, g := range m.Gives {
			given[g] = true
		}
	}
	for _, s := range p.Substrates {
		for _, g := range s.Facts {
			given[g.Fact] = true
		}
	}
	for _, f := range p.Words.Facts {
		if f.Fresh || f.AtStart != "" {
			given[f.Name] = true
		}
	}
	return given
}

func sortedKeys[V any](m map[string]V) []string {
	keys := make([]string, 0, len(m))
	for k := range m {
		keys = append(keys, k)
	}
	slices.Sort(keys)
	return keys
}
