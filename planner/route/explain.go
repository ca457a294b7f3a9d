package route

import (
	"slices"

	"coatwright/planner/library"
	q "coatwright/quantity"
)

// Who gave a fact. Indices of actions are 0 and up.
const (
	itself  = -1 // the surface came with it
	covered = -2 // an earlier film buried it, and the new film has it of its own
)

// route turns the goal node into actions with their links.
func (s *search) route(goal int32) *Route {
	var ops []int16
	for at := s.nodes[goal].parent; s.nodes[at].parent >= 0; at = s.nodes[at].parent {
		ops = append(ops, s.nodes[at].op)
	}
	slices.Reverse(ops)
	e := explainer{compiled: s.compiled, state: s.start(), from: map[int]int{}, film: itself}
	for i := range s.facts {
		e.from[i] = itself
	}
	r := &Route{Cost: float64(s.nodes[goal].spent) / 1000, States: len(s.nodes)}
	for i, op := range ops {
		r.Actions = append(r.Actions, e.do(i, int(op)))
	}
	r.Ends = e.links(&s.end)
	return r
}

// explainer walks a route and notes who gave what.
type explainer struct {
	*compiled
	state state
	from  map[int]int
	film  int // the action that laid the top film
}

func (e *explainer) do(index, i int) Action {
	o := &e.ops[i]
	a := Action{Step: o.step, Material: o.material, Required: -1, Links: e.links(o)}
	if top := e.top(e.state); o.step.OnlyIf.On != "" && top != nil && top.prep {
		a.Links = append(a.Links, Link{Fact: "film/" + top.Role, From: e.film})
	}
	if len(o.step.Before) > 0 {
		e.addBefore(&a, o.step.Before)
	}
	if o.material != nil {
		if required, _ := e.turn(e.state, &e.films[o.film-1]); required {
			a.Required = int(e.state.next)
		}
		a.Links = append(a.Links, e.grip(o.material)...)
	}
	after, _, ok := e.apply(e.state, i)
	if !ok {
		panic("route: the search took a step that cannot be done: " + o.step.Slug)
	}
	e.hand(index, o, after)
	return a
}

// hand notes what action index gave.
func (e *explainer) hand(index int, o *op, after state) {
	for i := range e.facts {
		switch {
		case o.gives.has(i):
			e.from[i] = index
		case o.material != nil && e.fresh.has(i) && !o.spoils.has(i):
			if e.state.facts.has(i) {
				e.from[i] = covered
			} else {
				e.from[i] = index
			}
		}
	}
	if o.material != nil {
		e.film = index
	}
	e.state = after
}

// links is what o needs and wants in the present state, and who gave it.
func (e *explainer) links(o *op) []Link {
	var links []Link
	for _, n := range o.needs {
		ch := e.choose(n)
		switch {
		case ch.fact >= 0:
			links = e.gift(links, Link{Fact: e.facts[ch.fact], Number: ch.number, Because: n.because}, ch.fact)
		case e.state.top != 0:
			links = append(links, e.wait(e.name(ch), n.because))
		}
	}
	for _, w := range o.wants {
		l := Link{Fact: e.facts[w.fact], Number: w.number, Because: w.because, Want: true, Saves: w.saves}
		if !e.state.facts.has(w.fact) {
			l.Missed = true
			links = append(links, l)
			continue
		}
		links = e.gift(links, l, w.fact)
	}
	return links
}

// gift adds a link to whoever gave the fact; a fact that the film below has of
// its own is nobody's gift.
func (e *explainer) gift(links []Link, l Link, fact int) []Link {
	if l.From = e.from[fact]; l.From == covered {
		return links
	}
	return append(links, l)
}

func (e *explainer) choose(n need) choice {
	best, least, found := n.choices[0], q.Time(0), false
	for _, ch := range n.choices {
		if w, ok := e.holds(e.state, ch); ok && (!found || w < least) {
			best, least, found = ch, w, true
		}
	}
	return best
}

// wait is the link to the film that must first reach a dryness state.
func (e *explainer) wait(state, because string) Link {
	top := e.top(e.state)
	return Link{Fact: state, From: e.film, Because: because, Min: top.lags[e.dryness[state]], By: top.Dries[state].By, Lag: true}
}

// addBefore bounds a's wait by the first state that must not have come yet.
func (e *explainer) addBefore(a *Action, states []string) {
	for _, state := range states {
		top := e.top(e.state)
		if lag := top.lags[e.dryness[state]]; lag != noLag {
			a.Links = append(a.Links, Link{Fact: "before " + state, From: e.film, Max: lag, By: top.Dries[state].By, Lag: true})
		}
	}
}

// open reports whether the top film's recoat window can be used.
func (e *explainer) open() bool {
	top := e.top(e.state)
	return top != nil && top.recoat != noLag
}

// grip is what m holds on by: the scratch, else the open window of the film below.
func (e *explainer) grip(m *library.Material) []Link {
	if m.Key != (q.Range[q.Grit]{}) && e.state.grit != 0 {
		if meets, ok := e.grits[e.state.grit-1].Meets(m.Key); ok {
			return e.gift(nil, Link{Fact: e.facts[e.keyed], Number: meets, Either: e.open()}, e.keyed)
		}
	}
	top := e.top(e.state)
	if top == nil {
		return nil
	}
	l := e.wait(recoat, "")
	l.Max = top.closes
	return []Link{l}
}
