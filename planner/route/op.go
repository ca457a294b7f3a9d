package route

import (
	"slices"

	"coatwright/planner/library"
	q "coatwright/quantity"
)

// op is a candidate with its words turned into numbers.
type op struct {
	index  int // in compiled.ops
	step   *library.Step
	film   Coating
	top    int16 // index in films of the film it lays, plus 1; 0 for none
	phase  int8
	fits   [2]bool
	needs  []need
	must   bits // the needs that are one fact: looked at first, all at once
	asked  bits // every fact that it needs or wants
	wants  []want
	gives  bits
	spoils bits
	grit   int // index in grits, plus 1, of the scratch it leaves; 0 for none
	rules  []rule
	turns  []turn // by the required film that is laid next
	stands cost
	dries  bool // some need is a dryness state
}

// turn is an op at one place among the required films: whether it can be done
// there, and what it costs.
type turn struct {
	ok       bool
	required bool // it lays that film
	area     q.Area
	cost     cost
	missed   []cost // by want, what missing it costs
}

// need is met when any of its choices is.
type need struct {
	choices []choice
	because string
}

// choice is a fact, a scratch within a range, or a dryness state.
type choice struct {
	fact   int // -1 for a dryness state
	state  int
	number q.Range[q.Grit]
}

type want struct {
	fact    int
	number  q.Range[q.Grit]
	saves   q.Time
	perArea q.TimePerArea
	because string
}

// rule is a library.Over.
type rule struct {
	library.Over
	trait traits
	needs choice
}

func (c *compiled) op(k candidate) op {
	s := k.step
	o := op{step: s, film: k.film, phase: int8(c.phases[s.Phase]), fits: k.fits, stands: waitCost(c.Stands(s.Stands))}
	o.needs, o.wants = c.compileNeeds(s.Needs), c.compileWants(s.Wants)
	o.gives, o.spoils = c.set(literalFacts(s.Gives)), c.set(s.Spoils)
	for _, g := range s.Gives {
		if g.Number != (q.Range[q.Grit]{}) {
			o.grit = c.gritIndex(g.Number)
		}
	}
	for _, t := range s.Tapes(c.Library.Tools) {
		o.needs = append(o.needs, c.compileNeeds(t.Tape.Needs)...)
		o.rules = append(o.rules, c.rules(t.Tape.Over)...)
	}
	if m := k.film.Material; m != nil {
		o.needs = append(o.needs, c.compileNeeds(m.Needs)...)
		o.wants = append(o.wants, c.compileWants(m.Wants)...)
		o.spoils = o.spoils.or(c.set(m.Spoils))
		o.gives = o.gives.or(c.set(m.Gives)).or(c.set([]string{"film/" + m.Role}))
		o.rules = c.rules(m.Over)
	}
	o.spoils = o.spoils.without(o.gives)
	o.must, o.asked = mustHave(o), c.asks(o)
	for _, n := range o.needs {
		o.dries = o.dries || slices.ContainsFunc(n.choices, func(ch choice) bool { return ch.fact < 0 })
	}
	for i := range len(c.Films) + 1 {
		o.turns = append(o.turns, c.turn(&o, i))
	}
	return o
}

// mustHave is the facts that o cannot do without.
func mustHave(o op) bits {
	var b bits
	for _, n := range o.needs {
		if len(n.choices) == 1 && n.choices[0].fact >= 0 {
			b.set(n.choices[0].fact)
		}
	}
	return b
}

// asks is every fact that o needs or wants.
func (c *compiled) asks(o op) bits {
	var b bits
	for _, n := range o.needs {
		for _, ch := range n.choices {
			if ch.fact >= 0 {
				b.set(ch.fact)
			}
		}
	}
	for _, w := range o.wants {
		if w.fact >= 0 {
			b.set(w.fact)
		}
	}
	for _, r := range o.rules {
		if !r.Never && r.needs.fact >= 0 {
			b.set(r.needs.fact)
		}
	}
	return b
}

func (c *compiled) gritIndex(r q.Range[q.Grit]) int {
	if i := slices.Index(c.grits, r); i >= 0 {
		return i + 1
	}
	c.grits = append(c.grits, r)
	return len(c.grits)
}

func (c *compiled) compileNeeds(needs []library.Need) []need {
	var out []need
	for _, n := range needs {
		compiled := need{because: n.Because}
		for _, l := range n.Any {
			compiled.choices = append(compiled.choices, c.choice(l))
		}
		out = append(out, compiled)
	}
	return out
}

func (c *compiled) choice(l library.Literal) choice {
	if state, dries := c.dryness[l.Fact]; dries {
		return choice{fact: -1, state: state}
	}
	return choice{fact: c.index[l.Fact], number: l.Number}
}

func (c *compiled) compileWants(wants []library.Want) []want {
	var out []want
	for _, w := range wants {
		out = append(out, want{c.index[w.Fact], w.Number, w.Saves, w.PerArea, w.Because})
	}
	return out
}

func (c *compiled) rules(over []library.Over) []rule {
	var out []rule
	for _, o := range over {
		r := rule{Over: o}
		if o.Trait != "" {
			r.trait = c.traitSet([]string{o.Trait})
		}
		if !o.Never {
			r.needs = c.choice(o.Needs)
		}
		out = append(out, r)
	}
	return out
}
