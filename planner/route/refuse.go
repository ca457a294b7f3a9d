package route

import (
	"fmt"
	"slices"

	"coatwright/planner/library"
	q "coatwright/quantity"
)

// relaxed is everything that could ever hold if nothing were ever spoiled. What
// is not in it cannot be had by any order of any steps.
type relaxed struct {
	*compiled
	facts bits
	grits []q.Range[q.Grit]
	tops  []*library.Material
}

func (c *compiled) relax() *relaxed {
	r := &relaxed{compiled: c}
	start := c.start()
	r.facts = start.facts
	if start.grit != 0 {
		r.grits = append(r.grits, c.grits[start.grit-1])
	}
	done := make([]bool, len(c.ops))
	for grew := true; grew; {
		grew = false
		for i := range c.ops {
			if !done[i] && r.can(&c.ops[i]) {
				done[i], grew = true, true
				r.take(&c.ops[i])
			}
		}
	}
	return r
}

func (r *relaxed) take(o *op) {
	r.facts = r.facts.or(o.gives)
	if o.grit != 0 {
		r.grits = append(r.grits, r.compiled.grits[o.grit-1])
	}
	if o.material != nil {
		r.facts = r.facts.or(r.fresh)
		r.tops = append(r.tops, o.material)
	}
}

// can reports whether o's needs can all be had.
func (r *relaxed) can(o *op) bool {
	if !r.lies(o.step.OnlyIf.On) {
		return false
	}
	if o.material != nil && (!r.lies(o.material.OnlyIf.On) || !r.wanted(o.material) || !r.grips(o.material)) {
		return false
	}
	return r.unmet(o) == nil
}

func (r *relaxed) lies(on string) bool {
	return lies(on, nil) || slices.ContainsFunc(r.tops, func(m *library.Material) bool { return lies(on, m) })
}

// wanted reports whether m is a prep film or makes a required one.
func (r *relaxed) wanted(m *library.Material) bool {
	for i := range r.Films {
		if r.isFilm(i, m) {
			return true
		}
	}
	return r.prep(m.Role)
}

func (r *relaxed) grips(m *library.Material) bool {
	if m.Key == (q.Range[q.Grit]{}) {
		return true
	}
	if slices.ContainsFunc(r.grits, func(g q.Range[q.Grit]) bool { _, ok := g.Meets(m.Key); return ok }) {
		return true
	}
	return slices.ContainsFunc(r.tops, func(top *library.Material) bool {
		_, dries := r.Lag(top, recoat)
		barred := slices.ContainsFunc(m.Over, func(o library.Over) bool { return o.Never && o.Material == top.Slug })
		return dries && !r.Shut[top.Slug] && r.ranks[top.Role] < r.ranks[m.Role] && !barred
	})
}

// unmet is the first need of o that cannot be had, nil when all can.
func (r *relaxed) unmet(o *op) *need {
	for i, n := range o.needs {
		if !slices.ContainsFunc(n.choices, r.holds) {
			return &o.needs[i]
		}
	}
	return nil
}

func (r *relaxed) holds(ch choice) bool {
	if ch.fact < 0 {
		return true
	}
	if ch.fact == r.keyed && ch.number != (q.Range[q.Grit]{}) {
		return slices.ContainsFunc(r.grits, func(g q.Range[q.Grit]) bool { _, ok := g.Meets(ch.number); return ok })
	}
	return r.facts.has(ch.fact)
}

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
		if o.material == nil || !r.isFilm(i, o.material) {
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
			refusal.Reasons = append(refusal.Reasons, r.whyNot(r.Library.Materials[slug]))
		}
		return refusal
	}
	return r.blockedBy(blocked)
}

func (r *relaxed) blockedBy(o *op) *Refusal {
	if n := r.unmet(o); n != nil {
		return r.root(n.choices[0], o.step.Slug, map[int]bool{})
	}
	return &Refusal{Fact: "keyed", Step: o.step.Slug, Reasons: []string{
		fmt.Sprintf("%s wants a scratch of P%.0f to P%.0f, or an open film below it, and no step leaves either here", o.material.Slug, float64(o.material.Key.Low), float64(o.material.Key.High))}}
}

// whyNot says what keeps a material from being laid.
func (r *relaxed) whyNot(m *library.Material) string {
	if why := r.unfit(m); why != "" {
		return m.Slug + " " + why
	}
	for _, slug := range sorted(r.Library.Steps) {
		if s := r.Library.Steps[slug]; s.Lays == m.Role {
			if why := r.barred(s.OnlyIf); why != "" {
				return slug + " " + why
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
	for _, slug := range sorted(r.Library.Steps) {
		s := r.Library.Steps[slug]
		for _, m := range r.givers(s, ch.fact) {
			why, deeper := r.stops(s, m)
			if deeper != nil && !seen[deeper.fact] {
				return r.root(*deeper, slug, seen)
			}
			if why != "" {
				refusal.Reasons = append(refusal.Reasons, why)
			}
		}
	}
	if len(refusal.Reasons) == 0 {
		refusal.Reasons = []string{fmt.Sprintf("no note gives %q", refusal.Fact)}
	}
	return refusal
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
		gives := r.fresh.has(fact) && r.prep(m.Role) || slices.ContainsFunc(m.Gives, func(g string) bool { return r.index[g] == fact })
		if m.Role == s.Lays && gives {
			out = append(out, m)
		}
	}
	return out
}

// stops says what keeps s, with m, from being done: a condition, or a need that
// lies deeper.
func (r *relaxed) stops(s *library.Step, m *library.Material) (why string, deeper *choice) {
	if why := r.barred(s.OnlyIf); why != "" {
		return s.Slug + " " + why, nil
	}
	if m != nil {
		if why := r.unfit(m); why != "" {
			return m.Slug + " " + why, nil
		}
	}
	for i := range r.ops {
		o := &r.ops[i]
		if o.step != s || o.material != m {
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

func (c *compiled) prep(role string) bool {
	return slices.ContainsFunc(c.Library.Words.Roles, func(r library.Role) bool { return r.Name == role && r.Prep })
}

// stuck explains a search that found no order although each fact alone could
// be had: how far it came, and what was missing there.
func (s *search) stuck() *Refusal {
	far := s.nodes[0].state
	for _, n := range s.nodes {
		if n.state.next >= far.next {
			far = n.state
		}
	}
	if int(far.next) == len(s.Films) {
		if r := s.lacking(far, s.end.needs, "", map[int]bool{}); r != nil {
			return r
		}
		return &Refusal{Fact: s.name(s.end.needs[0].choices[0]), Reasons: []string{"all films can be laid, but no order of steps leads from them to the hand-over"}}
	}
	f := s.Films[far.next]
	for i := range s.ops {
		o := &s.ops[i]
		if o.material == nil || !s.isFilm(int(far.next), o.material) {
			continue
		}
		if r := s.lacking(far, o.needs, o.step.Slug, map[int]bool{}); r != nil {
			return r
		}
	}
	return &Refusal{Fact: "film/" + f.Role, Reasons: []string{
		fmt.Sprintf("no order of steps lays it: what prepares it is spoiled again, or its window cannot be met, after film %d of %d", far.next, len(s.Films))}}
}

// lacking follows the needs that do not hold in st, through the steps that would
// give them, down to a dryness state that the top film never reaches. It returns
// nil when there is none at the bottom.
func (s *search) lacking(st state, needs []need, step string, seen map[int]bool) *Refusal {
	for _, n := range needs {
		if _, ok := s.chosen(st, n, st.wait); ok {
			continue
		}
		ch := n.choices[0]
		if ch.fact < 0 {
			return &Refusal{Fact: s.name(ch), Step: step, Reasons: []string{fmt.Sprintf("%s never gets there in this air", s.material(st).Slug)}}
		}
		if seen[ch.fact] {
			continue
		}
		seen[ch.fact] = true
		for i := range s.ops {
			if o := &s.ops[i]; o.material == nil && o.gives.has(ch.fact) {
				if r := s.lacking(st, o.needs, o.step.Slug, seen); r != nil {
					return r
				}
			}
		}
	}
	return nil
}
