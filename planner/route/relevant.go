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
	for _, t := range k.step.Tapes(c.Library.Tools) {
		add(t.Tape.Needs, nil, t.Tape.Over)
	}
	if m := k.film.Material; m != nil {
		add(m.Needs, m.Wants, m.Over)
	}
}

// gives reports whether the step gives one of the facts asked for.
func (k candidate) gives(asked map[string]bool) bool {
	return slices.ContainsFunc(k.step.Gives, func(l library.Literal) bool { return asked[l.Fact] })
}
