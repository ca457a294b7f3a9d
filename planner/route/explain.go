package route

import (
	"slices"

	q "coatwright/quantity"
)

// Who gave a fact. Indices of actions are 0 and up.
const (
	itself  = -1 // the surface came with it
	covered = -2 // a film buried it, and has it of its own
)

// route turns the goal node into actions with their links.
func (s *search) route(goal int32) *Route {
	var ops []int16
	for at := s.nodes[goal].parent; s.nodes[at].parent >= 0; at = s.nodes[at].parent {
		ops = append(ops, s.nodes[at].op)
	}
	slices.Reverse(ops)
	e := explainer{compiled: s.compiled, state: s.start(), from: map[int]int{}, given: map[int]int{}, film: itself, base: itself}
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
	from  map[int]int // by fact, the action that gave it
	given map[int]int // by fact that is covered, the action that gave it before
	film  int         // the action that laid the top film
	base  int         // under a design's film: the action that laid the film beside it
	under []laid      // the designs' films that lie beside the top one
}

// laid is a film and the action that laid it.
type laid struct {
	film   *film
	action int
}

func (e *explainer) do(index, i int) Action {
	o := &e.ops[i]
	a := Action{Step: o.step, Film: o.film, Required: -1, Next: int(e.state.next), Links: e.links(o)}
	if top := e.at(e.state.top); o.step.OnlyIf.On != "" && top != nil && (top.prep || top.local) {
		a.Links = append(a.Links, Link{Fact: "film/" + top.Role, From: e.film})
	}
	if len(o.step.Before) > 0 {
		e.addBefore(&a, o.step.Before)
	}
	if o.top != 0 {
		if o.turns[e.state.next].required {
			a.Required = int(e.state.next)
		}
		a.Links = append(a.Links, e.grip(&e.films[o.top-1])...)
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
	local := o.top != 0 && e.films[o.top-1].local
	for i := range e.facts {
		switch {
		case !after.facts.has(i):
		case o.step.Strips && e.bare[1].has(i):
			e.from[i] = index
		case local && e.surface.has(i) && !o.step.Strips:
			// it held before, on what lies beside the design
		case o.gives.has(i):
			e.from[i] = index
		case o.top != 0 && e.fresh.has(i):
			if e.state.facts.has(i) {
				if e.from[i] != covered {
					e.given[i] = e.from[i]
				}
				e.from[i] = covered
			} else {
				e.from[i] = index
			}
		}
	}
	if o.top != 0 {
		switch {
		case !local:
			e.under = nil
		case e.localTop(e.state):
			e.under = append(e.under, laid{e.at(e.state.top), e.film})
		default:
			e.base = e.film
		}
		e.film = index
	}
	e.state = after
}

// links is what o needs and wants in the present state, and who gave it.
func (e *explainer) links(o *op) []Link {
	var links []Link
	add := func(ch choice, because string) {
		switch {
		case ch.fact >= 0:
			links = e.gift(links, Link{Fact: e.facts[ch.fact], Number: ch.number, Because: because}, ch.fact)
		case e.state.top != 0:
			links = append(links, e.wait(e.name(ch), because))
		}
	}
	for _, n := range o.needs {
		add(e.choose(n), n.because)
	}
	for i := range o.rules {
		if r := &o.rules[i]; !r.Never && e.touches(e.state, r) {
			add(r.needs, r.Because)
		}
	}
	for _, w := range o.wants {
		l := Link{Fact: e.facts[w.fact], Number: w.number, Because: w.because, Want: true, Saves: e.saves(o, w)}
		if !e.state.facts.has(w.fact) {
			l.Missed = true
			links = append(links, l)
			continue
		}
		links = e.gift(links, l, w.fact)
	}
	return links
}

// saves is what a want of o spares, over the area that o goes by.
func (e *explainer) saves(o *op, w want) q.Time {
	if w.perArea == 0 {
		return w.saves
	}
	return w.saves + q.Time(float64(w.perArea)*float64(o.turns[e.state.next].area))
}

// gift adds a link to whoever gave the fact. A fact that the film below has of
// its own it could not have without the gift that it covers.
func (e *explainer) gift(links []Link, l Link, fact int) []Link {
	if l.From = e.from[fact]; l.From == covered {
		l.From, l.Covered = e.given[fact], true
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
	top := e.at(e.state.top)
	return Link{Fact: state, From: e.film, Because: because, Min: top.lags[e.dryness[state]], By: top.Dries[state].By, Lag: true}
}

// addBefore bounds a's wait by the first state that must not have come yet.
func (e *explainer) addBefore(a *Action, states []string) {
	for _, state := range states {
		top := e.at(e.state.top)
		if lag := top.lags[e.dryness[state]]; lag != noLag {
			a.Links = append(a.Links, Link{Fact: "before " + state, From: e.film, Max: lag, By: top.Dries[state].By, Lag: true})
		}
	}
}

// grip is what f holds on by: on what lies uppermost, and beside it on the other
// designs and on the film that they lie on.
func (e *explainer) grip(f *film) []Link {
	links := e.gripOn(f, e.state.grit, e.at(e.state.top), e.film)
	add := func(more []Link) {
		for _, l := range more {
			if !slices.ContainsFunc(links, func(o Link) bool { return o.Fact == l.Fact && o.From == l.From }) {
				links = append(links, l)
			}
		}
	}
	if e.localTop(e.state) && e.state.base != 0 {
		add(e.gripOn(f, e.state.ground, e.at(e.state.base), e.base))
	}
	for _, u := range e.under {
		if u.film.recoat[e.state.next] != noLag {
			add(e.gripOn(f, e.state.grit, u.film, u.action))
		}
	}
	return links
}

// gripOn is the scratch, else the open window of the film below, which action
// laid.
func (e *explainer) gripOn(f *film, grit uint8, below *film, action int) []Link {
	if e.scratched(f, grit) {
		meets, _ := e.grits[grit-1].Meets(f.Key)
		return e.gift(nil, Link{Fact: e.facts[e.keyed], Number: meets, Either: below != nil && below.recoat[e.state.next] != noLag}, e.keyed)
	}
	if below == nil {
		return nil
	}
	return []Link{{Fact: recoat, From: action, Min: below.recoat[e.state.next], Max: below.closes, By: below.Dries[recoat].By, Lag: true}}
}
