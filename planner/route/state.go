package route

import (
	"coatwright/planner/library"
	q "coatwright/quantity"
)

// state is a surface in the middle of a job. It is comparable: two states that
// are equal have the same future.
type state struct {
	facts bits
	grit  uint8  // the scratch, as op.grit
	next  uint8  // required films that are laid
	phase int8   // rank of the last step's phase in this film's cycle
	last  int16  // op of the last step of the cycle, plus 1; 0 for none
	top   int8   // index in films, plus 1; 0 for the bare substrate
	wait  q.Time // how long the top film has been waited for
	did   bool   // the step of Problem.Without, where it is left out
}

const recoat = "dry-to-recoat"

func (c *compiled) start() state {
	var s state
	for _, l := range c.Facts {
		s.facts.set(c.fact(l.Fact))
		if c.fact(l.Fact) == c.keyed {
			s.grit = uint8(c.gritIndex(l.Number))
		}
	}
	return s
}

// top is the film that lies uppermost, nil for the bare substrate.
func (c *compiled) top(s state) *film {
	if s.top == 0 {
		return nil
	}
	return &c.films[s.top-1]
}

// material is the top film's, nil for the bare substrate.
func (c *compiled) material(s state) *library.Material {
	if s.top == 0 {
		return nil
	}
	return c.films[s.top-1].Material
}

// omits reports whether o is the step that is to be left out between this top
// film and some next one.
func (c *compiled) omits(s state, o *op) bool {
	if c.Without.Step != o.step.Slug {
		return false
	}
	if s.top == 0 {
		return c.Without.After == ""
	}
	return c.Without.After == c.films[s.top-1].Slug
}

// rank is the place of a phase in the cycle. Before any film the phases stand
// in their own order; after a film first comes what is done to that film.
func (c *compiled) rank(phase int8, s state) int8 {
	if s.top == 0 {
		return phase
	}
	n := int8(len(c.phases))
	return (phase - int8(c.level) + n) % n
}

// follows reports whether op i may come after s in the one order that stands
// for all orders of the same work: phases do not go back between two films, and
// of two steps in a phase that do not touch each other the first in the list
// comes first.
func (c *compiled) follows(s state, i int) bool {
	o := &c.ops[i]
	rank := c.rank(o.phase, s)
	switch {
	case rank < s.phase:
		return false
	case rank > s.phase || s.last == 0 || i >= int(s.last)-1:
		return true
	}
	return !c.apart[s.last-1][i]
}

// independent reports whether a and b may change places without any effect.
func (c *compiled) independent(a, b *op) bool {
	if a.material != nil || b.material != nil {
		return false
	}
	if a.grit != 0 && b.grit != 0 {
		return false
	}
	if len(a.step.Before) > 0 && b.dries || len(b.step.Before) > 0 && a.dries {
		return false
	}
	changeA, changeB := a.gives.or(a.spoils), b.gives.or(b.spoils)
	both := changeA.and(changeB)
	same := a.gives.and(b.gives).or(a.spoils.and(b.spoils))
	if both.without(same) != (bits{}) {
		return false
	}
	asksA, asksB := c.asks(*a), c.asks(*b)
	return changeA.and(asksB) == bits{} && changeB.and(asksA) == bits{}
}

// apply does op i in s. ok is false when a need does not hold, or nothing would
// change.
func (c *compiled) apply(s state, i int) (after state, spent cost, ok bool) {
	o := &c.ops[i]
	if !s.facts.contains(o.must) {
		return s, 0, false
	}
	if on := o.step.OnlyIf.On; on != "" && !lies(on, c.material(s)) {
		return s, 0, false
	}
	if o.film != 0 {
		if c.omits(s, o) {
			return s, 0, false
		}
		return c.applyFilm(s, o)
	}
	if o.grit == 0 && s.facts.contains(o.gives) || o.grit != 0 && int(s.grit) == o.grit && s.facts.contains(o.gives) {
		return s, 0, false
	}
	wait, ok := c.met(s, o.needs, s.wait)
	if !ok || len(o.step.Before) > 0 && !c.notYet(s, o.step.Before, wait) {
		return s, 0, false
	}
	spent = o.cost + o.stands + waitCost(wait) - waitCost(s.wait) + c.missed(s, o.wants)
	after = c.change(s, o)
	after.wait = wait
	after.phase, after.last = c.rank(o.phase, s), int16(i+1)
	after.did = s.did || c.omits(s, o)
	return after, spent, true
}

// change applies what o spoils and gives.
func (c *compiled) change(s state, o *op) state {
	s.facts = s.facts.without(o.spoils).or(o.gives)
	if o.grit != 0 {
		s.grit = uint8(o.grit)
	}
	if c.keyed >= 0 && !s.facts.has(c.keyed) {
		s.grit = 0
	}
	return s
}

func (c *compiled) applyFilm(s state, o *op) (after state, spent cost, ok bool) {
	f := &c.films[o.film-1]
	required, ok := c.turn(s, f)
	if !ok || s.did && c.Without.Before == f.Slug || s.top != 0 && f.bars[s.top-1] || !lies(f.OnlyIf.On, c.material(s)) {
		return s, 0, false
	}
	wait, ok := c.met(s, o.needs, s.wait)
	if !ok {
		return s, 0, false
	}
	if wait, ok = c.grips(s, f, wait); !ok {
		return s, 0, false
	}
	spent = o.cost + waitCost(wait) - waitCost(s.wait) + c.missed(s, o.wants)
	s.facts = s.facts.without(c.surface.without(c.fresh)).or(c.fresh)
	after = c.change(s, o)
	after.top, after.wait, after.phase, after.last, after.did = o.film, 0, 0, 0, false
	if required {
		after.next++
	}
	return after, spent, true
}

// turn reports whether f may be laid now, and whether as the next required film.
func (c *compiled) turn(s state, f *film) (required, ok bool) {
	if s.top != 0 && f.rank <= c.films[s.top-1].rank || int(s.next) == len(c.Films) {
		return false, false
	}
	next := c.ranks[c.Films[s.next].Role]
	if f.rank == next {
		return true, f.required[s.next]
	}
	return false, f.prep && f.rank < next
}

// grips reports whether f holds on what lies below: by a scratch of the grit it
// wants or, over a film, by a recoat window that is open.
func (c *compiled) grips(s state, f *film, wait q.Time) (q.Time, bool) {
	keyless := f.Key == q.Range[q.Grit]{}
	if !keyless && s.grit != 0 {
		if _, meets := c.grits[s.grit-1].Meets(f.Key); meets {
			return wait, true
		}
	}
	top := c.top(s)
	if top == nil {
		return wait, keyless
	}
	if top.recoat == noLag {
		return wait, false
	}
	wait = max(wait, top.recoat)
	return wait, top.closes == 0 || wait <= top.closes
}

// met reports whether every need holds once the top film has been waited for,
// and how long that is: at least wait.
func (c *compiled) met(s state, needs []need, wait q.Time) (q.Time, bool) {
	for _, n := range needs {
		least, ok := c.chosen(s, n, wait)
		if !ok {
			return wait, false
		}
		wait = max(wait, least)
	}
	return wait, true
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

// missed is what the wants that do not hold cost.
func (c *compiled) missed(s state, wants []want) cost {
	var sum cost
	for _, w := range wants {
		if !s.facts.has(w.fact) {
			sum += w.penalty
		}
	}
	return sum
}
