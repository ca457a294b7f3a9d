package route

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"coatwright/planner/library"
)

// refuse names the first fact that nothing can give, nil when all can be had.
func (c *compiled) refuse() *Refusal {
	r := c.relax()
	for i, f := range c.Films {
		if refusal := r.refuseFilm(i, f); refusal != nil {
			return refusal
		}
	}
	if n := r.unmet(&c.end); n != nil {
		return r.root(n.choices[0], "", map[int]bool{})
	}
	return nil
}

// refuseFilm explains why required film i cannot be laid, nil when it can.
func (r *relaxed) refuseFilm(i int, f Film) *Refusal {
	var blocked *op
	for j := range r.ops {
		o := &r.ops[j]
		if t := o.turns[i]; !t.ok || !t.required {
			continue
		}
		if r.can(o) {
			return nil
		}
		blocked = o
	}
	if blocked == nil {
		refusal := &Refusal{Fact: "film/" + f.Role}
		for _, slug := range f.Materials {
			refusal.Reasons = append(refusal.Reasons, r.whyNot(r.Library.Materials[slug], i))
		}
		return refusal
	}
	return r.blockedBy(blocked)
}

func (r *relaxed) blockedBy(o *op) *Refusal {
	if n := r.unmet(o); n != nil {
		return r.root(n.choices[0], o.step.Slug, map[int]bool{})
	}
	return &Refusal{Fact: r.Library.Words.Scratch(), Step: o.step.Slug, Reasons: []string{
		fmt.Sprintf("%s wants a scratch of P%.0f to P%.0f, or an open film below it, and no step leaves either here", o.film.Slug, float64(o.film.Key.Low), float64(o.film.Key.High))}}
}

// whyNot says what keeps a material from being laid as required film i.
func (r *relaxed) whyNot(m *library.Material, i int) string {
	if why := r.unfit(m, r.Substrate); why != "" {
		return m.Slug + " " + why
	}
	piece := r.Piece
	if l := r.layer(i); l != nil {
		piece = l.Piece
	}
	for _, slug := range sorted(r.Library.Steps) {
		s := r.Library.Steps[slug]
		if s.Lays != m.Role || !onLayer(s.OnlyIf, r.layer(i)) {
			continue
		}
		if why := r.barred(s.OnlyIf, r.Substrate); why != "" {
			return slug + " " + why
		}
		if !r.atHand(s.OnlyIf.Applicator) {
			return fmt.Sprintf("%s is only for %s", slug, strings.Join(s.OnlyIf.Applicator, " or "))
		}
		for _, tool := range r.Tools {
			if why := tooLarge(Coating{m, r.Library.Tools[tool]}, piece); why != "" {
				return m.Slug + " " + why
			}
		}
	}
	return fmt.Sprintf("no step lays the role %s", m.Role)
}

// root goes down from a fact that cannot be had to the fact at the bottom of
// it: the one whose givers are all barred, not merely in need of something.
func (r *relaxed) root(ch choice, step string, seen map[int]bool) *Refusal {
	if ch.fact < 0 {
		return &Refusal{Fact: r.name(ch), Step: step, Reasons: []string{"the film below never reaches it"}}
	}
	seen[ch.fact] = true
	refusal := &Refusal{Fact: r.compiled.facts[ch.fact], Step: step}
	var others []string // what other surfaces are that a step is for
	for _, slug := range sorted(r.Library.Steps) {
		s := r.Library.Steps[slug]
		for _, m := range r.givers(s, ch.fact) {
			if trait := r.lacks(s, m); trait != "" {
				if !slices.Contains(others, trait) {
					others = append(others, trait)
				}
				continue
			}
			why, deeper := r.stops(s, m)
			if deeper != nil && !seen[deeper.fact] {
				return r.root(*deeper, slug, seen)
			}
			if why != "" && !slices.Contains(refusal.Reasons, why) {
				refusal.Reasons = append(refusal.Reasons, why)
			}
		}
	}
	if len(others) > 0 {
		refusal.Reasons = append(refusal.Reasons, "other ways to it are for a surface that is "+strings.Join(others, ", "))
	}
	if len(refusal.Reasons) == 0 {
		refusal.Reasons = []string{fmt.Sprintf("no note gives %q", refusal.Fact)}
	}
	return refusal
}

// lacks is the trait that s, or the material m that it lays, asks for and that the
// part has not; "" where it is something else that stops it.
func (r *relaxed) lacks(s *library.Step, m *library.Material) string {
	asked := s.OnlyIf.Traits
	if m != nil {
		asked = slices.Concat(asked, m.OnlyIf.Traits)
	}
	for _, t := range asked {
		if !slices.ContainsFunc(r.substrates(), func(sub *library.Substrate) bool { return slices.Contains(sub.Traits, t) }) {
			return t
		}
	}
	return ""
}

// givers is the ways in which s would give a fact: nil for the step itself, a
// material for a film that does.
func (r *relaxed) givers(s *library.Step, fact int) []*library.Material {
	var out []*library.Material
	if slices.ContainsFunc(s.Gives, func(g library.Literal) bool { return r.index[g.Fact] == fact }) {
		out = append(out, nil)
	}
	if s.Lays == "" {
		return out
	}
	for _, slug := range sorted(r.Library.Materials) {
		m := r.Library.Materials[slug]
		gives := r.fresh.has(fact) && r.prep(m.Role) && !needs(s, m, r.compiled.facts[fact]) || slices.ContainsFunc(m.Gives, func(g string) bool { return r.index[g] == fact })
		if m.Role == s.Lays && gives {
			out = append(out, m)
		}
	}
	return out
}

// needs reports whether s, laying m, needs a fact itself: then its film has it
// only from what lies below.
func needs(s *library.Step, m *library.Material, fact string) bool {
	return slices.ContainsFunc(slices.Concat(s.Needs, m.Needs), func(n library.Need) bool {
		return slices.ContainsFunc(n.Any, func(l library.Literal) bool { return l.Fact == fact })
	})
}

// stops says what keeps s, with m, from being done: a condition, or a need that
// lies deeper.
func (r *relaxed) stops(s *library.Step, m *library.Material) (why string, deeper *choice) {
	if why := cmp.Or(r.barred(s.OnlyIf, r.Substrate), tooHot(s, r.Substrate)); why != "" {
		return s.Slug + " " + why, nil
	}
	if m != nil {
		if why := r.unfit(m, r.Substrate); why != "" {
			return m.Slug + " " + why, nil
		}
	}
	for i := range r.ops {
		o := &r.ops[i]
		if o.step != s || o.film.Material != m {
			continue
		}
		if n := r.unmet(o); n != nil {
			return fmt.Sprintf("%s itself needs %q", s.Slug, r.name(n.choices[0])), &n.choices[0]
		}
	}
	return "", nil
}

func (c *compiled) name(ch choice) string {
	if ch.fact < 0 {
		return c.Library.Words.Dryness[ch.state].Name
	}
	return c.facts[ch.fact]
}
