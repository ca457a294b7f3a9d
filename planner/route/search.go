package route

import (
	"container/heap"
	"errors"
)

// ErrTooLarge says that the search gave up before it knew.
var ErrTooLarge = errors.New("route: too many ways to look at; leave out films or notes")

// node is a state that was reached, and how.
type node struct {
	state  state
	parent int32 // index in search.nodes; -1 for the start
	op     int16
	spent  cost
	done   bool
}

// search is best-first with an admissible bound: the first goal it takes out
// of the queue is the cheapest. With the bound made heavier it looks at fewer
// states, and the goal may cost as much more than the cheapest.
type search struct {
	*compiled
	nodes  []node
	at     map[state]int32
	queue  queue
	bound  *bound // nil to search blindly
	heavy  cost   // tenths
	budget int    // steps that may be tried
	every  []int16
	laid   map[boundary][]int32 // nodes that have just laid a film
}

// exact is the weight, in tenths, at which the bound promises the cheapest route.
const exact = 10

// effort is how hard to look: how heavy the bound is, in tenths, and how many
// steps may be tried. A search tries every step of the place in every state that
// it looks at.
type effort struct {
	heavy  cost
	budget int
}

// The built-in library's largest jobs take a few hundred thousand tries. A shop
// with very many notes gets, rather than no answer, a route that is not proved to
// be the cheapest; from crowded steps on the proof is not even tried.
var (
	efforts        = []effort{{exact, 1_500_000}, {40, 8_000_000}, {100, 16_000_000}}
	crowdedEfforts = efforts[1:]
)

const crowded = 400

// boundary is a surface with a film just laid, but for its facts.
type boundary struct {
	place
	grit, ground uint8
	exposed      traits
	under        bool
}

// Find returns the cheapest route, or why there is none. The error is
// ErrTooLarge.
func Find(p *Problem) (*Route, *Refusal, error) {
	c, err := compile(p)
	if err != nil {
		return nil, nil, err
	}
	if r := c.refuse(); r != nil {
		return nil, r, nil
	}
	switch r, dead := c.find(); {
	case dead:
		return nil, c.deadEnd(), nil
	case r == nil:
		return nil, nil, ErrTooLarge
	default:
		return r, nil, nil
	}
}

// find looks for a route with one effort after the other. It is nil where none
// was found; dead says that there is none.
func (c *compiled) find() (r *Route, dead bool) {
	least := newBound(c, nil)
	guide := least
	look := efforts
	if len(c.ops) > crowded {
		look = crowdedEfforts
	}
	for _, e := range look {
		if e.heavy > exact && guide == least {
			guide = newBound(c, c.ways())
		}
		s := newSearch(c, guide, e.heavy, e.budget)
		goal, err := s.run()
		switch {
		case err != nil:
			continue
		case goal < 0:
			return nil, true
		}
		r := s.route(goal)
		if r.Least = r.Cost; e.heavy > exact {
			r.Least = float64(least.from(s.start())) / 1000
		}
		return r, false
	}
	return nil, false
}

func newSearch(c *compiled, b *bound, heavy cost, budget int) *search {
	return &search{compiled: c, at: map[state]int32{}, bound: b, heavy: heavy, budget: budget, laid: map[boundary][]int32{}}
}

// deadEnd explains why no goal was found: it looks again without a bound, which
// leaves out every dead end.
func (c *compiled) deadEnd() *Refusal {
	s := newSearch(c, nil, exact, efforts[0].budget)
	for i := range c.ops {
		s.every = append(s.every, int16(i))
	}
	// Where even that is too much to look at, what was seen must do.
	_, _ = s.run()
	return s.stuck()
}

func (s *search) run() (goal int32, err error) {
	s.reach(s.start(), -1, 0, 0)
	for len(s.queue.items) > 0 {
		at := heap.Pop(&s.queue).(item).node
		n := &s.nodes[at]
		if n.done {
			continue
		}
		n.done = true
		if n.op == endOp {
			return at, nil
		}
		if s.budget -= len(s.here(n.state)); s.budget < 0 {
			return -1, ErrTooLarge
		}
		s.expand(at)
	}
	return -1, nil
}

// endOp stands for the hand-over; it ends a route.
const endOp = -2

func (s *search) expand(at int32) {
	st, spent := s.nodes[at].state, s.nodes[at].spent
	if int(st.next) == len(s.Films) && !(st.did && s.Without.Before == "") {
		if wait, ok := s.met(st, &s.end, st.wait); ok {
			more := waitCost(wait) - waitCost(st.wait) + s.missed(st, &s.end, &s.endTurn)
			s.nodes = append(s.nodes, node{state: st, parent: at, op: endOp, spent: spent + more})
			s.queue.push(int32(len(s.nodes)-1), spent+more)
		}
	}
	for _, i := range s.here(st) {
		if !s.follows(st, int(i)) {
			continue
		}
		if after, more, ok := s.apply(st, int(i)); ok {
			if s.heavy > exact {
				after.last = 0 // no order within a phase: it would lead a hasty search astray
			}
			s.reach(after, at, i, spent+more)
		}
	}
}

// here is the ops that can be done in st for all that its place says; without a
// bound, every op.
func (s *search) here(st state) []int16 {
	if s.bound != nil {
		return s.bound.here[placeOf(st)]
	}
	return s.every
}

// reach records that st can be had for spent, if that is news.
func (s *search) reach(st state, parent int32, op int16, spent cost) {
	if old, seen := s.at[st]; seen {
		if s.nodes[old].spent <= spent {
			return
		}
		s.nodes[old].done = true
	}
	least := cost(0)
	if s.bound != nil {
		least = s.bound.from(st)
	}
	if least >= unreachable || parent >= 0 && s.ops[op].top != 0 && s.dominated(st, spent) {
		return
	}
	s.nodes = append(s.nodes, node{state: st, parent: parent, op: op, spent: spent})
	i := int32(len(s.nodes) - 1)
	s.at[st] = i
	if parent >= 0 && s.ops[op].top != 0 {
		b := boundaryOf(st)
		s.laid[b] = append(s.laid[b], i)
	}
	s.queue.push(i, spent+least*s.heavy/exact)
}

func boundaryOf(s state) boundary {
	return boundary{placeOf(s), s.grit, s.ground, s.exposed, s.under}
}

// dominated reports whether a film has been laid for no more with all that holds
// in st and maybe more: nothing ever needs a fact not to hold.
func (s *search) dominated(st state, spent cost) bool {
	for _, i := range s.laid[boundaryOf(st)] {
		if n := &s.nodes[i]; n.spent <= spent && n.state.facts.contains(st.facts) {
			return true
		}
	}
	return false
}

// queue is a priority queue by bound, then by age, so that equals come out in
// the order they went in and the search is the same every time.
type queue struct{ items []item }

type item struct {
	node  int32
	bound cost
}

func (q *queue) push(node int32, bound cost) { heap.Push(q, item{node, bound}) }
func (q *queue) Len() int                    { return len(q.items) }
func (q *queue) Less(i, j int) bool {
	a, b := q.items[i], q.items[j]
	return a.bound < b.bound || a.bound == b.bound && a.node < b.node
}
func (q *queue) Swap(i, j int) { q.items[i], q.items[j] = q.items[j], q.items[i] }
func (q *queue) Push(x any)    { q.items = append(q.items, x.(item)) }
func (q *queue) Pop() any {
	last := q.items[len(q.items)-1]
	q.items = q.items[:len(q.items)-1]
	return last
}
