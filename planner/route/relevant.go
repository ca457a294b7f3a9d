package route

import (
	"slices"

	"coatwright/planner/library"
)

// relevant drops the candidates that give nothing anybody asks for, working back
// from the end state. Steps that lay films always stay: a fresh film is a
// surface of its own. So does stripping.
func (c *compiled) relevant(candidates []candidate) []candidate {
	asked := c.askedOf(nil)
	kept := make([]bool, len(candidates))
	for grew := true; grew; {
		grew = false
		for i, k := range candidates {
			if !kept[i] && (!k.film.IsZero() || k.step.Strips || k.gives(asked)) {
				kept[i], grew = true, true
				c.addAsked(asked, k)
			}
		}
	}
	i := -1
	return slices.DeleteFunc(candidates, func(candidate) bool { i++; return !kept[i] })
}

// askedOf is every fact that the end or one of the candidates asks for. Every
// film over a film may ask for a scratch.
func (c *compiled) askedOf(candidates []candidate) map[string]bool {
	asked := map[string]bool{}
	for _, f := range c.Ends {
		asked[f] = true
	}
	for _, w := range c.EndWants {
		asked[w.Fact] = true
	}
	for name, f := range c.Library.Words.Facts {
		if f.Number {
			asked[name] = true
		}
	}
	for _, k := range candidates {
		c.addAsked(asked, k)
	}
	return asked
}

func (c *compiled) addAsked(asked map[string]bool, k candidate) {
	add := func(needs []library.Need, wants []library.Want, over []library.Over) {
		for _, n := range needs {
			for _, l := range n.Any {
				asked[l.Fact] = true
			}
		}
		for _, w := range wants {
			asked[w.Fact] = true
		}
		for _, o := range over {
			if !o.Never {
				asked[o.Needs.Fact] = true
			}
		}
	}
	add(k.step.Needs, k.step.Wants, nil)
	for _, t := range tapes(c.Library, k.step) {
		add(t.Needs, nil, t.Over)
	}
	if m := k.film.Material; m != nil {
		add(m.Needs, m.Wants, m.Over)
	}
}

// gives reports whether the step gives one of the facts asked for.
func (k candidate) gives(asked map[string]bool) bool {
	return slices.ContainsFunc(k.step.Gives, func(l library.Literal) bool { return asked[l.Fact] })
}

// recurrent is a fact that every film needs anew, and the least it costs to
// give it. It makes the bound of the search tight: a mix and a tack for every
// film still to come.
type recurrent struct {
	fact int
	cost cost
}

// recurrents finds the facts that every film step needs and that a film step
// ends. A step that gives several of them pays its cost once, so each bears an
// equal share: the sum stays a lower bound.
func (c *compiled) recurrents() []recurrent {
	var needed, ended bits
	films := 0
	for _, o := range c.ops {
		if o.film.IsZero() {
			continue
		}
		ends := o.spoils.or(c.surface.without(c.fresh)).without(o.gives)
		if films == 0 {
			needed, ended = o.must, ends
		}
		needed, ended = needed.and(o.must), ended.and(ends)
		films++
	}
	set := needed.and(ended)
	if c.keyed >= 0 {
		set = set.without(only(c.keyed))
	}
	var out []recurrent
	for i := range c.facts {
		if set.has(i) {
			if least, ok := c.leastShare(i, set); ok {
				out = append(out, recurrent{i, least})
			}
		}
	}
	return out
}

// leastShare is the least share of a step's cost that giving fact i bears.
func (c *compiled) leastShare(i int, set bits) (least cost, ok bool) {
	for k := range c.ops {
		o := &c.ops[k]
		if !o.gives.has(i) {
			continue
		}
		n := cost(0)
		for j := range c.facts {
			if set.has(j) && o.gives.has(j) {
				n++
			}
		}
		for _, t := range o.turns {
			if share := t.cost / n; t.ok && (!ok || share < least) {
				least, ok = share, true
			}
		}
	}
	return least, ok
}
