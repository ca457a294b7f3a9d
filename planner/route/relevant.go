package route

import "slices"

// keepRelevant drops the steps that give nothing anybody asks for, working back
// from the end state. Steps that lay films always stay: a fresh film is a
// surface of its own.
func (c *compiled) keepRelevant() {
	asked := c.asks(c.end)
	for _, o := range c.ops {
		if o.material != nil {
			asked = asked.or(c.asks(o))
		}
	}
	if c.keyed >= 0 {
		asked.set(c.keyed) // every film over a film may ask for it
	}
	kept := map[int]bool{}
	for grew := true; grew; {
		grew = false
		for i, o := range c.ops {
			if !kept[i] && (o.material != nil || o.gives.and(asked) != bits{}) {
				kept[i], grew = true, true
				asked = asked.or(c.asks(o))
			}
		}
	}
	i := -1
	c.ops = slices.DeleteFunc(c.ops, func(op) bool { i++; return !kept[i] })
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
		b.set(w.fact)
	}
	return b
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
	needed, ended := bits{^uint64(0), ^uint64(0), ^uint64(0), ^uint64(0)}, bits{^uint64(0), ^uint64(0), ^uint64(0), ^uint64(0)}
	films := 0
	for _, o := range c.ops {
		if o.material == nil {
			continue
		}
		films++
		needed = needed.and(o.must)
		ended = ended.and(o.spoils.or(c.surface.without(c.fresh)).without(o.gives))
	}
	if films == 0 {
		return nil
	}
	set := needed.and(ended)
	if c.keyed >= 0 && set.has(c.keyed) {
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

func only(i int) bits {
	var b bits
	b.set(i)
	return b
}

// mustHave is the facts that o cannot do without.
func (c *compiled) mustHave(o op) bits {
	var b bits
	for _, n := range o.needs {
		if len(n.choices) == 1 && n.choices[0].fact >= 0 {
			b.set(n.choices[0].fact)
		}
	}
	return b
}

// leastShare is the least share of a step's cost that giving fact i bears.
func (c *compiled) leastShare(i int, set bits) (least cost, ok bool) {
	for _, o := range c.ops {
		if !o.gives.has(i) {
			continue
		}
		n := cost(0)
		for j := range c.facts {
			if set.has(j) && o.gives.has(j) {
				n++
			}
		}
		if share := o.cost / n; !ok || share < least {
			least, ok = share, true
		}
	}
	return least, ok
}
