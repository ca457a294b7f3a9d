package content

import (
	"fmt"
	"slices"

	"coatwright/planner/library"
)

// problemsOfPlanner reports what is wrong between notes rather than in one:
// films that no step lays, facts that nothing gives, mixes of unknown parts.
func (lib *Library) problemsOfPlanner(l *loader) {
	p := lib.planner
	where := func(kind, slug string) string {
		for _, f := range l.files {
			if f.kind == kind && f.slug == slug {
				return f.name
			}
		}
		return kind + "/" + slug + ".md"
	}
	given := givenFacts(p)
	for _, slug := range sortedKeys(p.Steps) {
		for _, need := range p.Steps[slug].Needs {
			if !slices.ContainsFunc(need.Any, func(lit library.Literal) bool { return given[lit.Fact] }) {
				l.problem(where("step", slug), 1, 1, fmt.Sprintf("a need of %q", need.Any[0].Fact), "a fact that some step, film or surface gives", "")
			}
		}
	}
	laid := map[string]bool{}
	for _, s := range p.Steps {
		laid[s.Lays] = true
	}
	for _, slug := range sortedKeys(p.Materials) {
		if role := p.Materials[slug].Role; role != "" && !laid[role] {
			l.problem(where("material", slug), 1, 1, fmt.Sprintf("the role %q", role), "a role that some step lays", "")
		}
	}
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
		if f.Fresh {
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
