package route

import (
	"slices"

	q "coatwright/quantity"
)

// applyFilm lays the film of o in s.
func (c *compiled) applyFilm(s state, o *op, t *turn) (after state, spent cost, ok bool) {
	f := &c.films[o.top-1]
	if !c.inOrder(s, f, t) || s.did && c.Without.Before == f.Slug || !lies(f.OnlyIf.On, c.material(s)) {
		return s, 0, false
	}
	if !t.required && o.step.Slug != c.Without.Step && c.omissionAt(s) && !slices.Contains(c.Without.Preps, f.Slug) {
		return s, 0, false
	}
	wait, ok := c.met(s, o, s.wait)
	if !ok {
		return s, 0, false
	}
	if wait, ok = c.grips(s, f, wait); !ok {
		return s, 0, false
	}
	spent = t.cost + waitCost(wait) - waitCost(s.wait) + c.missed(s, o, t)
	after = c.cover(s, f, o)
	after.wait, after.phase, after.last, after.did = 0, 0, 0, false
	if t.required {
		after.next++
	}
	return after, spent, true
}

// inOrder reports whether f, where it is a prep film, stands after what lies
// below in the order of roles. Over a design it may lie a second time.
func (c *compiled) inOrder(s state, f *film, t *turn) bool {
	if t.required || s.top == 0 {
		return true
	}
	if c.localTop(s) {
		return s.base == 0 || f.rank >= c.films[s.base-1].rank
	}
	return f.rank > c.films[s.top-1].rank
}

// cover puts f on s. A film over the whole part ends all that was said of the
// surface; of a design's film only what holds on it and beside it is left.
func (c *compiled) cover(s state, f *film, o *op) state {
	kept := c.fresh
	gives := o.gives
	if f.local {
		kept = c.fresh.or(gives).and(s.facts)
		gives = gives.without(c.surface)
		if !c.localTop(s) {
			s.base, s.ground = s.top, s.grit
		}
		s.exposed |= f.exposes
	} else {
		s.base, s.ground = 0, 0
		if f.Barrier {
			s.exposed = 0
		}
		s.exposed |= f.exposes
	}
	s.facts = s.facts.without(c.surface).or(kept.and(c.surface))
	s.facts = s.facts.without(o.spoils).or(gives)
	s.grit, s.top = 0, o.top
	if c.keyed >= 0 && s.facts.has(c.keyed) && o.grit != 0 {
		s.grit = uint8(o.grit)
	}
	return s
}

// grips reports whether f holds on what lies below, on the design and beside it:
// by a scratch of the grit it wants or, over a film, by a recoat window that is
// open. The wait is for the top film; the one below it has dried longer, and
// its window is kept by the calendar.
func (c *compiled) grips(s state, f *film, wait q.Time) (q.Time, bool) {
	if c.localTop(s) && !c.holdsOn(f, s.ground, c.at(s.base), s.next) {
		return wait, false
	}
	if c.scratched(f, s.grit) {
		return wait, true
	}
	top := c.at(s.top)
	if top == nil {
		return wait, f.Key == q.Range[q.Grit]{}
	}
	if top.recoat[s.next] == noLag {
		return wait, false
	}
	wait = max(wait, top.recoat[s.next])
	return wait, top.closes == 0 || wait <= top.closes
}

// scratched reports whether the scratch is one that f wants under it.
func (c *compiled) scratched(f *film, grit uint8) bool {
	if f.Key == (q.Range[q.Grit]{}) || grit == 0 {
		return false
	}
	_, meets := c.grits[grit-1].Meets(f.Key)
	return meets
}

// holdsOn reports whether f can hold on the film beside a design.
func (c *compiled) holdsOn(f *film, grit uint8, below *film, next uint8) bool {
	if c.scratched(f, grit) {
		return true
	}
	if below == nil {
		return f.Key == q.Range[q.Grit]{}
	}
	return below.recoat[next] != noLag
}

// met reports whether every need of o holds, and every rule about what lies
// below, once the top film has been waited for, and how long that is: at least
// wait.
func (c *compiled) met(s state, o *op, wait q.Time) (q.Time, bool) {
	for _, n := range o.needs {
		least, ok := c.chosen(s, n, wait)
		if !ok {
			return wait, false
		}
		wait = max(wait, least)
	}
	for i := range o.rules {
		r := &o.rules[i]
		if !c.touches(s, r) {
			continue
		}
		if r.Never {
			return wait, false
		}
		least, ok := c.holds(s, r.needs)
		if !ok {
			return wait, false
		}
		wait = max(wait, least)
	}
	return wait, true
}

// touches reports whether r is about what lies below.
func (c *compiled) touches(s state, r *rule) bool {
	if r.trait != 0 {
		return s.exposed&r.trait != 0
	}
	if r.about(c.at(s.top)) {
		return true
	}
	return c.localTop(s) && r.about(c.at(s.base))
}

func (r *rule) about(f *film) bool {
	if f == nil {
		return false
	}
	return r.System == f.System && r.System != "" || r.Role == f.Role && r.Role != "" || r.Material == f.Slug && r.Material != ""
}

// chosen is the least wait for any choice of n.
func (c *compiled) chosen(s state, n need, wait q.Time) (least q.Time, ok bool) {
	for _, ch := range n.choices {
		w, holds := c.holds(s, ch)
		if holds && (!ok || max(w, wait) < least) {
			least, ok = max(w, wait), true
		}
	}
	return least, ok
}

// holds reports whether ch holds in s, and after what wait.
func (c *compiled) holds(s state, ch choice) (q.Time, bool) {
	switch {
	case ch.fact < 0 && s.top == 0:
		return 0, true
	case ch.fact < 0:
		lag := c.films[s.top-1].lags[ch.state]
		return lag, lag != noLag
	case !s.facts.has(ch.fact):
		return 0, false
	case ch.number == q.Range[q.Grit]{} || ch.fact != c.keyed:
		return 0, true
	case s.grit == 0:
		return 0, false
	}
	_, meets := c.grits[s.grit-1].Meets(ch.number)
	return 0, meets
}

// notYet reports whether the top film has reached none of states after wait.
func (c *compiled) notYet(s state, states []string, wait q.Time) bool {
	for _, name := range states {
		if s.top == 0 {
			return false
		}
		if lag := c.films[s.top-1].lags[c.dryness[name]]; lag != noLag && wait >= lag {
			return false
		}
	}
	return true
}

// missed is what the wants of o that do not hold cost.
func (c *compiled) missed(s state, o *op, t *turn) cost {
	var sum cost
	for i, w := range o.wants {
		if !s.facts.has(w.fact) {
			sum += t.missed[i]
		}
	}
	return sum
}
