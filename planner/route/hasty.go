package route

// ways is, for each op, its cost and that of all it needs, nothing shared: more
// than it must cost, but a good guide to which of many ways are the short ones.
func (c *compiled) ways() []cost {
	facts := make([]cost, len(c.facts))
	start := c.start().facts
	for i := range facts {
		if !start.has(i) {
			facts[i] = unreachable
		}
	}
	costs := make([]cost, len(c.ops))
	for cheaper := true; cheaper; {
		cheaper = false
		for i := range c.ops {
			o := &c.ops[i]
			costs[i] = o.way(facts)
			gives := o.gives
			if o.top != 0 {
				gives = gives.or(c.fresh)
			}
			for fact := range facts {
				if costs[i] < facts[fact] && gives.has(fact) {
					facts[fact], cheaper = costs[i], true
				}
			}
		}
	}
	return costs
}

// way is the cost of o and of all it needs, where facts cost so much.
func (o *op) way(facts []cost) cost {
	sum := unreachable
	for _, t := range o.turns {
		if t.ok {
			sum = min(sum, t.cost+o.stands)
		}
	}
	for _, n := range o.needs {
		least := unreachable
		for _, ch := range n.choices {
			if ch.fact < 0 {
				least = 0
			} else {
				least = min(least, facts[ch.fact])
			}
		}
		sum = min(sum+least, unreachable)
	}
	return sum
}
