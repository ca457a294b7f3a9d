package route

import (
	"slices"

	"coatwright/planner/library"
	q "coatwright/quantity"
)

// compiled is a problem with its words turned into numbers.
type compiled struct {
	*Problem
	facts   []string
	index   map[string]int
	dryness map[string]int
	fresh   bits           // facts that a new film has
	surface bits           // facts that a new film ends
	bare    [2]bits        // facts that the substrate, and what is under it, have of their own
	always  bits           // facts that hold at the start whatever the part
	ranks   map[string]int // of roles, from 1
	phases  map[string]int
	films   []film
	level   int // index of the phase that a film's cycle starts with
	keyed   int // the fact that carries the scratch
	grits   []q.Range[q.Grit]
	ops     []op
	end     op
	endTurn turn
}

// substrates are the one the part came with and, where stripping lays another
// bare, that one.
func (p *Problem) substrates() []*library.Substrate {
	if under := p.Library.Substrates[p.Substrate.Under]; under != nil {
		return []*library.Substrate{p.Substrate, under}
	}
	return []*library.Substrate{p.Substrate}
}

// compile keeps the steps whose conditions hold for this problem, in the order
// of their slugs: the search must not depend on map order. The error is
// ErrTooLarge.
func compile(p *Problem) (*compiled, error) {
	c := &compiled{Problem: p, keyed: -1, index: map[string]int{}, dryness: map[string]int{}, ranks: map[string]int{}, phases: map[string]int{}}
	w := p.Library.Words
	for i, d := range w.Dryness {
		c.dryness[d.Name] = i
	}
	for i, r := range w.Roles {
		c.ranks[r.Name] = i + 1
	}
	for i, ph := range w.Phases {
		c.phases[ph.Name] = i
	}
	c.level = c.phases["level"]
	candidates := c.relevant(c.candidates())
	if err := c.addFacts(candidates); err != nil {
		return nil, err
	}
	for i, k := range candidates {
		c.ops = append(c.ops, c.op(k))
		c.ops[i].index = i
	}
	c.end = op{needs: c.compileNeeds(endNeeds(p)), wants: c.compileWants(p.EndWants)}
	c.end.asked, c.end.must = c.asks(c.end), mustHave(c.end)
	for _, w := range c.end.wants {
		c.endTurn.missed = append(c.endTurn.missed, cost(float64(minutes(w.saves))*c.Care+0.5))
	}
	c.tabulate()
	return c, nil
}

func endNeeds(p *Problem) []library.Need {
	needs := make([]library.Need, len(p.Ends))
	for i, f := range p.Ends {
		needs[i] = library.Need{Any: []library.Literal{{Fact: f}}}
	}
	return needs
}

// candidate is a step that can be done in this problem, with the film it lays.
type candidate struct {
	step *library.Step
	film Coating
	fits [2]bool // on the substrate, and on what is under it
}

// candidates is every step whose conditions hold on some substrate of the
// problem, once for each coating that it may lay.
func (c *compiled) candidates() []candidate {
	var out []candidate
	for _, slug := range sorted(c.Library.Steps) {
		s := c.Library.Steps[slug]
		var fits [2]bool
		for i, substrate := range c.substrates() {
			fits[i] = c.barred(s.OnlyIf, substrate) == "" && tooHot(s, substrate) == ""
		}
		if s.Lays == "" {
			if fits != [2]bool{} && c.atHand(s.OnlyIf.Applicator) {
				out = append(out, candidate{step: s, fits: fits})
			}
			continue
		}
		out = append(out, c.coatings(s, fits)...)
	}
	return out
}

// atHand reports whether one of the applicators that a note asks for is there.
func (c *compiled) atHand(asked []string) bool {
	return len(asked) == 0 || slices.ContainsFunc(c.Tools, func(t string) bool { return slices.Contains(asked, t) })
}

// coatings is a step that lays a film, once for each material and applicator.
func (c *compiled) coatings(s *library.Step, fits [2]bool) []candidate {
	var out []candidate
	for _, slug := range sorted(c.Library.Materials) {
		m := c.Library.Materials[slug]
		if m.Role != s.Lays {
			continue
		}
		on := fits
		for i, substrate := range c.substrates() {
			on[i] = on[i] && c.unfit(m, substrate) == ""
		}
		if on == [2]bool{} {
			continue
		}
		for _, tool := range c.Tools {
			if !missing(s.OnlyIf.Applicator, tool) && !missing(m.OnlyIf.Applicator, tool) {
				out = append(out, candidate{s, Coating{m, c.Library.Tools[tool]}, on})
			}
		}
	}
	return out
}

// addFacts gives a number to every fact that some candidate, or the end, asks
// for; others make no difference.
func (c *compiled) addFacts(candidates []candidate) error {
	named := c.askedOf(candidates)
	for _, name := range sorted(named) {
		if _, dries := c.dryness[name]; dries {
			continue
		}
		if len(c.facts) == maxFacts {
			return ErrTooLarge
		}
		c.index[name] = len(c.facts)
		c.facts = append(c.facts, name)
	}
	c.sortFacts(c.Library.Words)
	return nil
}

// sortFacts notes what each fact is about, and what holds from the start.
func (c *compiled) sortFacts(w *library.Vocabulary) {
	c.keyed = -1
	for i, name := range c.facts {
		f := w.Facts[name]
		if f == nil { // film/<role>
			continue
		}
		if f.Number {
			c.keyed = i
		}
		if f.AtStart == library.Always {
			c.always.set(i)
		}
		if f.Of == library.Surface {
			c.surface.set(i)
			if f.Fresh {
				c.fresh.set(i)
			}
		}
	}
	for i, s := range c.substrates() {
		c.bare[i] = c.set(literalFacts(s.Facts))
	}
}

// set is the facts of names that somebody asks for.
func (c *compiled) set(names []string) bits {
	var b bits
	for _, n := range names {
		if i, ok := c.index[n]; ok {
			b.set(i)
		}
	}
	return b
}

func literalFacts(ls []library.Literal) []string {
	names := make([]string, len(ls))
	for i, l := range ls {
		names[i] = l.Fact
	}
	return names
}

// traitSet is a list of traits as a set.
func (c *compiled) traitSet(names []string) traits {
	var t traits
	for i, w := range c.Library.Words.Traits {
		if slices.Contains(names, w.Name) {
			t |= 1 << i
		}
	}
	return t
}

func sorted[V any](m map[string]V) []string {
	keys := make([]string, 0, len(m))
	for k := range m {
		keys = append(keys, k)
	}
	slices.Sort(keys)
	return keys
}
