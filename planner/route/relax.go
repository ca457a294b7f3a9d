package route

import (
	"slices"

	q "coatwright/quantity"
)

// relaxed is everything that could ever hold if nothing were ever spoiled, and
// no film barred another. What is not in it cannot be had by any order of any
// steps.
type relaxed struct {
	*compiled
	facts bits
	grits []q.Range[q.Grit]
	tops  []*film
	under bool // stripping is within reach
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
	if o.step.Strips {
		r.under = true
		r.facts = r.facts.or(r.bare[1]).or(r.always)
	}
	if o.top != 0 {
		r.facts = r.facts.or(r.fresh)
		r.tops = append(r.tops, &r.films[o.top-1])
	}
}

// can reports whether o's needs can all be had.
func (r *relaxed) can(o *op) bool {
	if !r.fits(o) || !r.lies(o.step.OnlyIf.On) || o.step.Strips && len(r.substrates()) == 1 {
		return false
	}
	if !slices.ContainsFunc(o.turns, func(t turn) bool { return t.ok }) {
		return false
	}
	if o.top != 0 && (!r.lies(o.film.OnlyIf.On) || !r.grips(&r.films[o.top-1])) {
		return false
	}
	return r.unmet(o) == nil
}

func (r *relaxed) fits(o *op) bool { return o.fits[0] || r.under && o.fits[1] }

func (r *relaxed) lies(on string) bool {
	return lies(on, nil) || slices.ContainsFunc(r.tops, func(f *film) bool { return lies(on, f.Material) })
}

func (r *relaxed) grips(f *film) bool {
	if f.Key == (q.Range[q.Grit]{}) {
		return true
	}
	if slices.ContainsFunc(r.grits, func(g q.Range[q.Grit]) bool { _, ok := g.Meets(f.Key); return ok }) {
		return true
	}
	return slices.ContainsFunc(r.tops, func(below *film) bool {
		return below.rank <= f.rank && slices.ContainsFunc(below.recoat, func(lag q.Time) bool { return lag != noLag })
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
