package route

import (
	"coatwright/planner/library"
	q "coatwright/quantity"
)

// state is a surface in the middle of a job. It is comparable: two states that
// are equal have the same future.
//
// Under a design's film the film that covers the whole part still shows beside
// it; what comes next must hold on both.
type state struct {
	facts   bits
	exposed traits // of what lies below, down to the first barrier
	wait    q.Time // how long the top film has been waited for
	last    int16  // op of the last step of the cycle, plus 1; 0 for none
	top     int16  // index in films, plus 1; 0 for the bare substrate
	base    int16  // under a local top film: the last film that covers the part
	grit    uint8  // the scratch, as op.grit
	ground  uint8  // the scratch on base
	next    uint8  // required films that are laid
	phase   int8   // rank of the last step's phase in this film's cycle
	under   bool   // stripped to what is under the substrate
	did     bool   // the step of Problem.Without, where it is left out
}

const recoat = library.Recoat

func (c *compiled) start() state {
	s := state{exposed: c.traitSet(c.Substrate.Traits)}
	for _, l := range c.Facts {
		if i, asked := c.index[l.Fact]; asked {
			s.facts.set(i)
			if i == c.keyed {
				s.grit = uint8(c.gritIndex(l.Number))
			}
		}
	}
	return s
}

// at is the film at place i of a state, nil for the bare substrate.
func (c *compiled) at(i int16) *film {
	if i == 0 {
		return nil
	}
	return &c.films[i-1]
}

// material is the top film's, nil for the bare substrate.
func (c *compiled) material(s state) *library.Material {
	if s.top == 0 {
		return nil
	}
	return c.films[s.top-1].Material
}

// localTop reports whether a design's film lies uppermost.
func (c *compiled) localTop(s state) bool { return s.top != 0 && c.films[s.top-1].local }

// omits reports whether o is the step that is to be left out at this place.
func (c *compiled) omits(s state, o *op) bool {
	return c.Without.Step == o.step.Slug && c.omissionAt(s)
}

// omissionAt reports whether s is where a step is left out.
func (c *compiled) omissionAt(s state) bool {
	if c.Without.Step == "" || c.Without.Next != int(s.next) {
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
	return !c.independent(&c.ops[s.last-1], o)
}

// independent reports whether a and b may change places without any effect.
func (c *compiled) independent(a, b *op) bool {
	if a.top != 0 || b.top != 0 || a.step.Strips || b.step.Strips {
		return false
	}
	if a.grit != 0 && b.grit != 0 {
		return false
	}
	if len(a.step.Before) > 0 && b.dries || len(b.step.Before) > 0 && a.dries {
		return false
	}
	changeA, changeB := a.gives.or(a.spoils), b.gives.or(b.spoils)
	same := a.gives.and(b.gives).or(a.spoils.and(b.spoils))
	if changeA.and(changeB).without(same) != (bits{}) {
		return false
	}
	return !changeA.meets(b.asked) && !changeB.meets(a.asked)
}

// apply does op i in s. ok is false when a need does not hold, or nothing would
// change.
func (c *compiled) apply(s state, i int) (after state, spent cost, ok bool) {
	o := &c.ops[i]
	if !s.facts.contains(o.must) {
		return s, 0, false
	}
	turn := &o.turns[s.next]
	fits := o.fits[0]
	if s.under {
		fits = o.fits[1]
	}
	if !turn.ok || !fits || !lies(o.step.OnlyIf.On, c.material(s)) {
		return s, 0, false
	}
	if o.top != 0 {
		if c.omits(s, o) {
			return s, 0, false
		}
		return c.applyFilm(s, o, turn)
	}
	if o.grit == 0 && s.facts.contains(o.gives) || o.grit != 0 && int(s.grit) == o.grit && s.facts.contains(o.gives) {
		return s, 0, false
	}
	if o.step.Strips && (s.under || s.top != 0 || c.Substrate.Under == "") {
		return s, 0, false
	}
	wait, ok := c.met(s, o, s.wait)
	if !ok || len(o.step.Before) > 0 && !c.notYet(s, o.step.Before, wait) {
		return s, 0, false
	}
	spent = turn.cost + o.stands + waitCost(wait) - waitCost(s.wait) + c.missed(s, o, turn)
	after = c.change(c.strip(s, o), o)
	after.wait = wait
	after.phase, after.last = c.rank(o.phase, s), int16(i+1)
	after.did = s.did || c.omits(s, o)
	return after, spent, true
}

// strip lays bare what is under the substrate: its facts and traits hold from
// now on, and none of what was said of the old surface.
func (c *compiled) strip(s state, o *op) state {
	if !o.step.Strips {
		return s
	}
	s.under = true
	s.facts = s.facts.without(c.surface).without(c.bare[0]).or(c.bare[1]).or(c.always.and(c.surface))
	s.exposed = c.traitSet(c.substrates()[1].Traits)
	return s
}

// change applies what o spoils and gives.
func (c *compiled) change(s state, o *op) state {
	s.facts = s.facts.without(o.spoils).or(o.gives)
	if o.grit != 0 {
		s.grit, s.ground = uint8(o.grit), uint8(o.grit)
	}
	if c.keyed >= 0 && !s.facts.has(c.keyed) {
		s.grit = 0
		if o.spoils.has(c.keyed) {
			s.ground = 0
		}
	}
	if !c.localTop(s) {
		s.ground = 0
	}
	return s
}
