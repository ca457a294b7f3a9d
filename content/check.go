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
	c := checker{l, p, givenFacts(p, wordNames(p.Words.Masks))}
	for _, slug := range sortedKeys(p.Steps) {
		c.needs("step", slug, "needs", p.Steps[slug].Needs)
		c.wants("step", slug, p.Steps[slug].Wants)
		c.applicators("step", slug, "only-if", p.Steps[slug].OnlyIf.Applicator)
	}
	for _, slug := range sortedKeys(p.Materials) {
		c.material(p.Materials[slug])
	}
	for _, slug := range sortedKeys(p.Substrates) {
		c.under(p.Substrates[slug])
	}
	for _, slug := range sortedKeys(p.Effects) {
		c.films("effect", slug, "films", p.Effects[slug].Films)
	}
	for _, slug := range sortedKeys(p.Designs) {
		c.design(p.Designs[slug])
	}
	for _, slug := range sortedKeys(p.Finishes) {
		c.finish(p.Finishes[slug])
	}
	for _, slug := range sortedKeys(p.Tools) {
		if t := p.Tools[slug].Tape; t != nil {
			c.needs("tool", slug, "tape", t.Needs)
			c.over("tool", slug, "tape", t.Over)
		}
	}
}

// checker looks at notes beside one another.
type checker struct {
	*loader
	lib   *library.Library
	given map[string]bool // every fact that can come to hold
}

// needs reports the needs of a note that nothing can meet.
func (c checker) needs(kind, slug, key string, needs []library.Need) {
	for _, need := range needs {
		if !canMeet(need, c.given) {
			c.problemAt(kind, slug, key, fmt.Sprintf("a need of %q", need.Any[0].Fact), givable)
		}
	}
}

func (c checker) wants(kind, slug string, wants []library.Want) {
	for _, w := range wants {
		if !c.given[w.Fact] {
			c.problemAt(kind, slug, "wants", fmt.Sprintf("a want of %q", w.Fact), givable)
		}
	}
}

// applicators reports tools that are named as guns and lay no film.
func (c checker) applicators(kind, slug, key string, tools []string) {
	for _, t := range tools {
		if tool := c.lib.Tools[t]; tool != nil && tool.Applicator == nil {
			c.problemAt(kind, slug, key, fmt.Sprintf("the tool %q", t), "an applicator")
		}
	}
}

// givable is what is expected of a fact that a note asks for.
const givable = "a fact that some step, film or surface gives"

func canMeet(need library.Need, given map[string]bool) bool {
	return slices.ContainsFunc(need.Any, func(lit library.Literal) bool { return given[lit.Fact] })
}

func (c checker) finish(f *library.Finish) {
	c.films("finish", f.Slug, "films", f.Films)
	c.wants("finish", f.Slug, f.Wants)
	for _, fact := range f.Ends {
		if !c.given[fact] {
			c.problemAt("finish", f.Slug, "ends", fmt.Sprintf("an end with %q", fact), givable)
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

// givenFacts is every fact that can come to hold where a design's layers have
// these masks.
func givenFacts(p *library.Library, masks []string) map[string]bool {
	given := map[string]bool{}
	for _, s := range p.Steps {
		if !fitsMask(s, masks...) {
			continue
		}
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
		for state := range m.Dries {
			given[state] = true
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

// fitsMask reports whether a step can be done with one of the masks.
func fitsMask(s *library.Step, masks ...string) bool {
	of := s.OnlyIf.Masks
	return len(of) == 0 || slices.ContainsFunc(of, func(m string) bool { return slices.Contains(masks, m) })
}

func sortedKeys[V any](m map[string]V) []string {
	keys := make([]string, 0, len(m))
	for k := range m {
		keys = append(keys, k)
	}
	slices.Sort(keys)
	return keys
}
