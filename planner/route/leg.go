package route

import (
	"math"

	q "coatwright/quantity"
)

// leg is what it takes at least to get from p to op o, which lays a film or is
// the end; ok is false where it cannot be reached from p.
func (b *bound) leg(p place, o *op) (l leg, ok bool) {
	l.op = o
	if o != &b.end {
		if o.top == 0 || !b.leadsOn(p, o) {
			return l, false
		}
		l.after, l.cost = b.step(p, o), o.turns[p.next].cost
		if _, reached := b.may[l.after]; !reached {
			return l, false
		}
	}
	if l.marks, ok = b.marks(p, o); !ok {
		return l, false
	}
	l.cost += b.lost(p, o)
	l.wait, ok = b.leastWait(p, o)
	return l, ok
}

// marks are the facts that surely do not hold at p, and that o needs or wants, or
// that every step needs which gives one of them; and those that o needs and that
// every step spoils which gives one of them.
func (b *bound) marks(p place, o *op) (marks []mark, ok bool) {
	m := marker{bound: b, place: p, givers: map[int][]*op{}, toward: map[int]bits{}, all: o == &b.end}
	set := o.must
	if o != &b.end {
		set = set.without(b.may[p])
	}
	if b.mustKey(p, o) && !b.may[p].has(b.keyed) {
		set.set(b.keyed)
	}
	if set, ok = m.chain(set); !ok {
		return nil, false
	}
	after := m.spoiled(o, set)
	wanted := m.wanted(o, set)
	all := set.or(wanted)
	for fact := range after {
		all.set(fact)
	}
	for fact := range b.facts {
		if !all.has(fact) {
			continue
		}
		k := mark{fact: fact, after: -1, toward: m.toward[fact], share: b.share(p, fact, m.givers[fact], all), late: unreachable, last: m.last(fact), shuts: m.shuts(fact)}
		if y, again := after[fact]; again {
			k.after = y
		}
		if wanted.has(fact) {
			k.late = b.penalty(p, o, fact)
			k.share = min(k.share, k.late)
		}
		marks = append(marks, k)
	}
	return append(marks, m.regrets(set)...), true
}

// regrets is what the wants of the steps cost that give the marks, where only
// another film could meet them.
func (m *marker) regrets(set bits) []mark {
	var out []mark
	for fact := range m.facts {
		if _, passing := m.toward[fact]; passing || !set.has(fact) || len(m.givers[fact]) == 0 {
			continue
		}
		for _, w := range m.givers[fact][0].wants {
			if len(m.gather(w.fact)) > 0 {
				continue
			}
			least := unreachable
			for _, g := range m.givers[fact] {
				least = min(least, m.penalty(m.place, g, w.fact)/cost(g.gives.and(set).count()))
			}
			if least > 0 {
				out = append(out, mark{fact: w.fact, after: -1, toward: bit(fact), share: least, late: least, last: m.last(fact), shuts: forever})
			}
		}
	}
	return out
}

// marker gathers the marks of a leg.
type marker struct {
	*bound
	place  place
	givers map[int][]*op
	toward map[int]bits // by mark that o does not need itself, the marks that it leads to
	all    bool         // mark what may hold already too: at the end there is no other leg to mend it
}

// gather finds the steps of the leg that give fact.
func (m *marker) gather(fact int) []*op {
	if found, done := m.givers[fact]; done {
		return found
	}
	var found []*op
	for i := range m.ops {
		g := &m.ops[i]
		if g.top == 0 && m.inLeg(m.place, g) && (g.gives.has(fact) || m.laysBare(m.place, g, fact)) {
			found = append(found, g)
		}
	}
	m.givers[fact] = found
	return found
}

// last is the rank of the last phase in which a step of the leg gives fact.
func (m *marker) last(fact int) int8 {
	rank := int8(-1)
	for _, g := range m.gather(fact) {
		rank = max(rank, m.rank(g.phase, state{top: m.place.top}))
	}
	return rank
}

// shuts is from how long after the film on no step of the leg may give fact.
func (m *marker) shuts(fact int) q.Time {
	var latest q.Time
	for _, g := range m.gather(fact) {
		open := forever
		for _, state := range g.step.Before {
			if lag := m.lag(m.place, m.dryness[state]); lag != noLag {
				open = min(open, lag)
			}
		}
		latest = max(latest, open)
	}
	return latest
}

// chain adds to set what every giver of one of its facts needs. ok is false where
// a fact has no giver.
func (m *marker) chain(set bits) (all bits, ok bool) {
	done := bits{}
	for done != set {
		for fact := range m.facts {
			if !set.has(fact) || done.has(fact) {
				continue
			}
			done.set(fact)
			givers := m.gather(fact)
			if len(givers) == 0 {
				if may := m.may[m.place]; !may.has(fact) && !may.meets(m.toward[fact]) {
					return set, false
				}
				continue
			}
			common := givers[0].must
			for _, g := range givers {
				common = common.and(g.must)
			}
			for more := range m.facts {
				if common.has(more) && !set.has(more) && (m.all || !m.may[m.place].has(more)) {
					set.set(more)
					m.toward[more] = m.toward[fact].or(bit(fact))
				}
			}
		}
	}
	return set, true
}

// spoiled is the facts that o needs and that must be given once more, each after
// another that o needs and whose every giver spoils it.
func (m *marker) spoiled(o *op, set bits) map[int]int {
	after := map[int]int{}
	for y := range m.facts {
		if _, passing := m.toward[y]; passing || !set.has(y) {
			continue
		}
		if len(m.givers[y]) == 0 {
			continue
		}
		common := m.givers[y][0].spoils
		for _, g := range m.givers[y] {
			common = common.and(g.spoils)
		}
		for fact := range m.facts {
			if common.has(fact) && o.must.has(fact) && len(m.gather(fact)) > 0 {
				after[fact] = y
			}
		}
	}
	return after
}

// wanted is the wants of o that a step of the leg can meet.
func (m *marker) wanted(o *op, set bits) bits {
	var out bits
	for _, w := range o.wants {
		if !set.has(w.fact) && len(m.gather(w.fact)) > 0 {
			out.set(w.fact)
		}
	}
	return out
}

// lost is what the wants of o cost that surely do not hold and that nothing on
// the leg can meet.
func (b *bound) lost(p place, o *op) cost {
	var sum cost
	m := marker{bound: b, place: p, givers: map[int][]*op{}}
	for i, w := range o.wants {
		if !b.may[p].has(w.fact) && len(m.gather(w.fact)) == 0 {
			sum += b.turnOfLeg(p, o).missed[i]
		}
	}
	return sum
}

// turnOfLeg is the turn of an op that ends a leg from p.
func (b *bound) turnOfLeg(p place, o *op) *turn {
	if o == &b.end {
		return &b.endTurn
	}
	return &o.turns[p.next]
}

// penalty is what it costs at p if o lacks a fact that it wants.
func (b *bound) penalty(p place, o *op, fact int) cost {
	t := b.turnOfLeg(p, o)
	var sum cost
	for i, w := range o.wants {
		if w.fact == fact {
			sum += t.missed[i]
		}
	}
	return sum
}

// mustKey reports whether o can hold only by a scratch.
func (b *bound) mustKey(p place, o *op) bool {
	if o.top == 0 || b.keyed < 0 || o.film.Key == (q.Range[q.Grit]{}) {
		return false
	}
	return p.top == 0 || b.films[p.top-1].recoat[p.next] == noLag
}

// laysBare reports whether stripping would give a fact of what is under.
func (b *bound) laysBare(p place, o *op, fact int) bool {
	return o.step.Strips && p.top == 0 && b.bare[1].or(b.always).has(fact)
}

// share is the least share of a giver's cost that one of the marks bears.
func (b *bound) share(p place, fact int, givers []*op, set bits) cost {
	least := unreachable
	for _, g := range givers {
		gives := g.gives
		if g.step.Strips {
			gives = gives.or(b.bare[1]).or(b.always)
		}
		bears := g.turns[p.next].cost + g.stands
		if b.guide != nil {
			bears = max(bears, b.guide[g.index])
		}
		least = min(least, bears/cost(gives.and(set).count()))
	}
	return least
}

// forever is a wait that never ends.
var forever = q.Time(math.Inf(1))

// leastWait is how long the film at p must at least dry before o.
func (b *bound) leastWait(p place, o *op) (q.Time, bool) {
	if p.top == 0 {
		return 0, true
	}
	waits := b.waitsAt(p)
	w := b.waitOf(p, o, waits)
	if o.top != 0 {
		w = max(w, b.gripWait(p, o, waits))
	}
	return w, w < forever
}

// waitsAt is how long the film at p must at least dry before each fact can hold:
// the least over its givers of the most that one of their needs takes.
func (b *bound) waitsAt(p place) []q.Time {
	if known, ok := b.waits[p]; ok {
		return known
	}
	waits := make([]q.Time, len(b.facts))
	for i := range waits {
		if !b.may[p].has(i) {
			waits[i] = forever
		}
	}
	for shorter := true; shorter; {
		shorter = false
		for i := range b.ops {
			g := &b.ops[i]
			if g.top != 0 || !b.inLeg(p, g) {
				continue
			}
			w := b.waitOf(p, g, waits)
			for fact := range b.facts {
				if w < waits[fact] && g.gives.has(fact) {
					waits[fact], shorter = w, true
				}
			}
		}
	}
	b.waits[p] = waits
	return waits
}

// waitOf is how long o must wait where facts come to hold after waits.
func (b *bound) waitOf(p place, o *op, waits []q.Time) q.Time {
	var most q.Time
	for _, n := range o.needs {
		least := forever
		for _, ch := range n.choices {
			least = min(least, b.waitFor(p, ch, waits))
		}
		most = max(most, least)
	}
	for i := range o.rules {
		if r := &o.rules[i]; r.trait == 0 && r.about(&b.films[p.top-1]) {
			if r.Never {
				return forever
			}
			most = max(most, b.waitFor(p, r.needs, waits))
		}
	}
	return most
}

func (b *bound) waitFor(p place, ch choice, waits []q.Time) q.Time {
	if ch.fact >= 0 {
		return waits[ch.fact]
	}
	if lag := b.lag(p, ch.state); lag != noLag {
		return lag
	}
	return forever
}

// gripWait is how long film op o must wait for something to hold on by.
func (b *bound) gripWait(p place, o *op, waits []q.Time) q.Time {
	least := forever
	if lag := b.films[p.top-1].recoat[p.next]; lag != noLag {
		least = lag
	}
	if o.film.Key != (q.Range[q.Grit]{}) && b.keyed >= 0 {
		least = min(least, waits[b.keyed])
	}
	return least
}
