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
// of the queue is the cheapest.
type search struct {
	*compiled
	nodes []node
	at    map[state]int32
	queue queue
	films []cost // least cost of required film i and all after it
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
	s := &search{compiled: c, at: map[state]int32{}}
	s.films = c.filmCosts()
	goal, err := s.run()
	if err != nil {
		return nil, nil, err
	}
	if goal < 0 {
		return nil, s.stuck(), nil
	}
	return s.route(goal), nil, nil
}

// filmCosts is, for each required film, the least that it and those after it
// cost in themselves.
func (c *compiled) filmCosts() []cost {
	costs := make([]cost, len(c.Films)+1)
	for i := len(c.Films) - 1; i >= 0; i-- {
		least := cost(-1)
		for k := range c.ops {
			if t := &c.ops[k].turns[i]; t.ok && t.required && (least < 0 || t.cost < least) {
				least = t.cost
			}
		}
		costs[i] = costs[i+1] + max(least, 0)
	}
	return costs
}

// bound is the least that is still to be spent from s on: the films, and for
// each film what every film needs anew. What s has already, it need not pay.
func (s *search) bound(st state) cost {
	left := cost(len(s.Films) - int(st.next))
	sum := s.films[st.next]
	for _, r := range s.anew {
		n := left
		if left > 0 && st.facts.has(r.fact) {
			n--
		}
		sum += n * r.cost
	}
	return sum
}

func (s *search) run() (goal int32, err error) {
	limit := s.MaxStates
	if limit == 0 {
		limit = DefaultMaxStates
	}
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
		if len(s.nodes) > limit {
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
	for i := range s.ops {
		if !s.follows(st, i) {
			continue
		}
		if after, more, ok := s.apply(st, i); ok {
			s.reach(after, at, int16(i), spent+more)
		}
	}
}

// reach records that st can be had for spent, if that is news.
func (s *search) reach(st state, parent int32, op int16, spent cost) {
	if old, seen := s.at[st]; seen {
		if s.nodes[old].spent <= spent {
			return
		}
		s.nodes[old].done = true
	}
	s.nodes = append(s.nodes, node{state: st, parent: parent, op: op, spent: spent})
	i := int32(len(s.nodes) - 1)
	s.at[st] = i
	s.queue.push(i, spent+s.bound(st))
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
