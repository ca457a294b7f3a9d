package route

import (
	"math"
	"slices"

	q "coatwright/quantity"
)

// leg is a way from one film to the next, or to the hand-over: what it costs at
// least, whatever else is done on the way.
type leg struct {
	op    *op
	after place // where it leads to; of the hand-over nothing
	marks []mark
	wait  q.Time // the least that the film below must be waited for
	cost  cost   // of the op itself
}

// mark is a fact that must be given on a leg if it does not hold yet, and its
// share of the least that a step which gives it costs. A step that gives several
// bears its cost once, so the sum over the marks of a leg stays a lower bound.
type mark struct {
	fact   int
	after  int  // it must be given after this fact, which spoils it; -1 for none
	toward bits // it is needed only until one of these holds
	share  cost
	late   cost // ... where no step gives it any more: their phase is past, or the film too dry
	last   int8 // rank of that phase
	shuts  q.Time
}

// place is a film that has just been laid, under a design's the film beside it,
// and how many required films lie.
type place struct {
	next      uint8
	top, base int16
}

func placeOf(s state) place { return place{s.next, s.top, s.base} }

// bound knows the least that is still to be spent from any state. It looks at
// each leg as if nothing were ever spoiled on it, and takes the cheapest
// sequence of legs.
type bound struct {
	*compiled
	may   map[place]bits     // facts that may hold when the film has just been laid
	not   []bits             // by fact, those that never hold together with it
	waits map[place][]q.Time // by fact, how long the film there must at least dry before it can hold
	legs  map[place][]leg
	here  map[place][]int16 // ops that can be done on a leg from there
	rest  map[place]cost    // least from there to the hand-over
	guide []cost            // by op, for a hasty search; nil for a bound that never overshoots
}

// unreachable is more than any plan costs.
const unreachable = cost(math.MaxInt64 / 4)

// newBound works it out. With a guide it may overshoot.
func newBound(c *compiled, guide []cost) *bound {
	b := &bound{compiled: c, guide: guide, may: map[place]bits{}, legs: map[place][]leg{}, here: map[place][]int16{}, rest: map[place]cost{}, waits: map[place][]q.Time{}}
	b.not = c.exclusive()
	order := b.explore()
	for _, p := range order {
		for i := range c.ops {
			o := &c.ops[i]
			l, leads := b.leg(p, o)
			if leads {
				b.legs[p] = append(b.legs[p], l)
			}
			if leads || o.top == 0 && b.inLeg(p, o) {
				b.here[p] = append(b.here[p], int16(i))
			}
		}
		if int(p.next) == len(c.Films) {
			if l, ok := b.leg(p, &c.end); ok {
				b.legs[p] = append(b.legs[p], l)
			}
		}
		b.rest[p] = unreachable
	}
	b.settle(order)
	return b
}

// explore finds every place that can be reached and what may hold there.
func (b *bound) explore() []place {
	var order []place
	start := place{}
	b.may[start] = b.start().facts
	queue := []place{start}
	for len(queue) > 0 {
		p := queue[0]
		queue = queue[1:]
		if !slices.Contains(order, p) {
			order = append(order, p)
		}
		facts := b.closure(p)
		for i := range b.ops {
			o := &b.ops[i]
			if o.top == 0 || !b.leadsOn(p, o) || !b.couldDo(p, o, facts) {
				continue
			}
			after, more := b.step(p, o), b.lays(o, facts)
			if old, seen := b.may[after]; !seen || !old.contains(more) {
				b.may[after] = old.or(more)
				queue = append(queue, after)
			}
		}
	}
	return order
}

// step is the place after film op o.
func (b *bound) step(p place, o *op) place {
	after := place{next: p.next, top: o.top}
	if b.films[o.top-1].local {
		if after.base = p.top; p.top != 0 && b.films[p.top-1].local {
			after.base = p.base
		}
	}
	if o.turns[p.next].required {
		after.next++
	}
	return after
}

// lays is what may hold after film op o where facts may hold before it.
func (b *bound) lays(o *op, facts bits) bits {
	f := &b.films[o.top-1]
	kept := b.fresh
	if f.local {
		kept = b.fresh.or(o.gives).and(facts)
	}
	for i := range b.facts {
		if o.must.has(i) { // it holds now, and so these do not
			facts = facts.without(b.not[i])
		}
	}
	return facts.without(b.surface).or(kept.and(b.surface)).without(o.spoils).or(o.gives)
}

// exclusive finds pairs of facts that never hold together: every step that gives
// one of them spoils the other, and they do not both hold from the start.
func (c *compiled) exclusive() []bits {
	spoiled := make([]bits, len(c.facts)) // by fact, what all its givers spoil
	given := bits{}
	for i := range c.ops {
		o := &c.ops[i]
		for fact := range c.facts {
			switch {
			case !o.gives.has(fact):
			case given.has(fact):
				spoiled[fact] = spoiled[fact].and(o.spoils)
			default:
				spoiled[fact] = o.spoils
				given.set(fact)
			}
		}
	}
	not := make([]bits, len(c.facts))
	start := c.start().facts.or(c.bare[1]).or(c.always)
	for i := range c.facts {
		for j := range c.facts {
			if spoiled[i].has(j) && spoiled[j].has(i) && !(start.has(i) && start.has(j)) && !c.surface.has(i) && !c.surface.has(j) {
				not[i].set(j)
			}
		}
	}
	return not
}

// closure is all that could come to hold at p if nothing were spoiled.
func (b *bound) closure(p place) bits {
	facts := b.may[p]
	for grew := true; grew; {
		grew = false
		for i := range b.ops {
			o := &b.ops[i]
			if o.top != 0 || !b.inLeg(p, o) || facts.contains(o.gives) && !o.step.Strips || !b.couldDo(p, o, facts) {
				continue
			}
			more := facts.or(o.gives)
			if o.step.Strips {
				more = more.or(b.bare[1]).or(b.always)
			}
			if more != facts {
				facts, grew = more, true
			}
		}
	}
	return facts
}

// inLeg reports whether a step that lays nothing can be done on a leg from p.
func (b *bound) inLeg(p place, o *op) bool {
	return o.turns[p.next].ok && b.on(p, o.step.OnlyIf.On)
}

// on reports whether what lies uppermost at p is what a note asks for.
func (b *bound) on(p place, asked string) bool { return lies(asked, b.material(state{top: p.top})) }

// leadsOn reports whether film op o can end a leg from p.
func (b *bound) leadsOn(p place, o *op) bool {
	t := &o.turns[p.next]
	if !t.ok {
		return false
	}
	if !b.on(p, o.film.OnlyIf.On) || !b.on(p, o.step.OnlyIf.On) {
		return false
	}
	if t.required || p.top == 0 {
		return true
	}
	below, f := &b.films[p.top-1], &b.films[o.top-1]
	if below.local {
		return p.base == 0 || f.rank >= b.films[p.base-1].rank
	}
	return f.rank > below.rank
}

// couldDo reports whether the needs of o could be met where facts may hold.
func (b *bound) couldDo(p place, o *op, facts bits) bool {
	if !facts.contains(o.must) {
		return false
	}
	for _, n := range o.needs {
		if !slices.ContainsFunc(n.choices, func(ch choice) bool {
			if ch.fact >= 0 {
				return facts.has(ch.fact)
			}
			return b.lag(p, ch.state) != noLag
		}) {
			return false
		}
	}
	return true
}

// lag is how long the top film at p takes to a dryness state; a bare surface is
// dry.
func (b *bound) lag(p place, state int) q.Time {
	if p.top == 0 {
		return 0
	}
	return b.films[p.top-1].lags[state]
}

// settle works out the least from each place, back from the hand-over.
func (b *bound) settle(order []place) {
	for changed := true; changed; {
		changed = false
		for i := len(order) - 1; i >= 0; i-- {
			p := order[i]
			least := unreachable
			for k := range b.legs[p] {
				l := &b.legs[p][k]
				least = min(least, b.least(l, b.may[p], 0, 0))
			}
			if least < b.rest[p] {
				b.rest[p], changed = least, true
			}
		}
	}
}

// least is what is left to spend by leg l where facts hold, the top film has been
// waited for, and the work of the leg has come as far as phase.
func (b *bound) least(l *leg, facts bits, wait q.Time, phase int8) cost {
	sum := l.cost
	if l.op != &b.end {
		sum += b.rest[l.after]
	}
	if l.wait > wait {
		sum += waitCost(l.wait) - waitCost(wait)
	}
	for i := range l.marks {
		m := &l.marks[i]
		if facts.meets(m.toward) {
			continue
		}
		switch {
		case facts.has(m.fact) && (m.after < 0 || facts.has(m.after)):
		case phase > m.last || wait >= m.shuts:
			if m.late >= unreachable {
				return unreachable
			}
			sum += m.late
		default:
			sum += m.share
		}
	}
	return min(sum, unreachable)
}

// from is the least that is still to be spent from s on; unreachable where no
// leg leads on.
func (b *bound) from(s state) cost {
	least := unreachable
	legs := b.legs[placeOf(s)]
	for i := range legs {
		least = min(least, b.least(&legs[i], s.facts, s.wait, s.phase))
	}
	return least
}
