package route

import (
	"slices"

	"coatwright/planner/library"
	q "coatwright/quantity"
)

// bits is a set of facts.
type bits [4]uint64

func (b *bits) set(i int)      { b[i/64] |= 1 << (i % 64) }
func (b bits) has(i int) bool  { return b[i/64]&(1<<(i%64)) != 0 }
func (b bits) and(c bits) bits { return bits{b[0] & c[0], b[1] & c[1], b[2] & c[2], b[3] & c[3]} }
func (b bits) or(c bits) bits  { return bits{b[0] | c[0], b[1] | c[1], b[2] | c[2], b[3] | c[3]} }
func (b bits) without(c bits) bits {
	return bits{b[0] &^ c[0], b[1] &^ c[1], b[2] &^ c[2], b[3] &^ c[3]}
}
func (b bits) contains(c bits) bool { return c.without(b) == bits{} }

const maxFacts = 256

// compiled is a problem with its words turned into numbers.
type compiled struct {
	*Problem
	facts   []string
	index   map[string]int
	dryness map[string]int
	fresh   bits           // facts that a new film has
	surface bits           // facts that a new film ends
	ranks   map[string]int // of roles, from 1
	phases  map[string]int
	films   []film
	level   int // index of the phase that a film's cycle starts with
	keyed   int // the fact that carries the scratch
	grits   []q.Range[q.Grit]
	ops     []op
	end     op
	always  []recurrent
	apart   [][]bool // whether two ops may change places
}

// film is a material that may come to lie uppermost, with what is asked of it
// again and again during the search.
type film struct {
	*library.Material
	rank     int      // of its role
	prep     bool     // laid for what it gives
	required []bool   // whether it makes required film i
	lags     []q.Time // by dryness state; noLag where it never gets there
	recoat   q.Time   // noLag where the window cannot be used
	closes   q.Time
	bars     []bool // whether it must not lie on film i
}

// noLag stands for a dryness state that is never reached.
const noLag = q.Time(-1)

// op is a step that can be done in this problem: static conditions hold.
type op struct {
	step     *library.Step
	material *library.Material
	film     int8 // index in films, plus 1; 0 for none
	phase    int8
	needs    []need
	must     bits // the needs that are one fact: looked at first, all at once
	wants    []want
	gives    bits
	spoils   bits
	grit     int // index in grits, plus 1, of the scratch it leaves; 0 for none
	cost     cost
	stands   cost
	dries    bool // some need is a dryness state
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
	penalty cost
	because string
}

// compile keeps the steps whose conditions hold for this problem, in the order
// of their slugs: the search must not depend on map order.
func compile(p *Problem) *compiled {
	c := &compiled{Problem: p, keyed: -1, index: map[string]int{}, dryness: map[string]int{}, ranks: map[string]int{}, phases: map[string]int{}}
	w := p.Library.Words
	for i, d := range w.Dryness {
		c.dryness[d.Name] = i
	}
	for i, r := range w.Roles {
		c.ranks[r.Name] = i + 1
		c.fact("film/" + r.Name)
	}
	for i, ph := range w.Phases {
		c.phases[ph.Name] = i
	}
	c.level = c.phases["level"]
	c.addFacts(w)
	for _, slug := range sorted(p.Library.Steps) {
		c.addOps(p.Library.Steps[slug])
	}
	ends := make([]library.Need, len(p.Ends))
	for i, f := range p.Ends {
		ends[i] = library.Need{Any: []library.Literal{{Fact: f}}}
	}
	c.end = op{needs: c.compileNeeds(ends), wants: c.compileWants(p.EndWants)}
	c.keepRelevant()
	c.tabulate()
	c.always = c.recurrents()
	c.apart = make([][]bool, len(c.ops))
	for i := range c.ops {
		c.apart[i] = make([]bool, len(c.ops))
		for j := range c.ops {
			c.apart[i][j] = c.independent(&c.ops[i], &c.ops[j])
		}
	}
	return c
}

// tabulate makes the table of films and points the ops at it.
func (c *compiled) tabulate() {
	for i := range c.ops {
		m := c.ops[i].material
		if m == nil {
			continue
		}
		at := slices.IndexFunc(c.films, func(f film) bool { return f.Material == m })
		if at < 0 {
			at = len(c.films)
			c.films = append(c.films, c.film(m))
		}
		c.ops[i].film = int8(at + 1)
	}
	for i := range c.films {
		for _, below := range c.films {
			bars := slices.ContainsFunc(c.films[i].Over, func(o library.Over) bool { return o.Never && o.Material == below.Slug })
			c.films[i].bars = append(c.films[i].bars, bars)
		}
	}
}

func (c *compiled) film(m *library.Material) film {
	f := film{Material: m, rank: c.ranks[m.Role], recoat: noLag, closes: c.Closes(m)}
	for _, r := range c.Library.Words.Roles {
		f.prep = f.prep || r.Prep && r.Name == m.Role
	}
	for _, required := range c.Films {
		f.required = append(f.required, required.Role == m.Role && slices.Contains(required.Materials, m.Slug))
	}
	for _, d := range c.Library.Words.Dryness {
		lag, ok := c.Lag(m, d.Name)
		if !ok {
			lag = noLag
		}
		f.lags = append(f.lags, lag)
		if d.Name == recoat && !c.Shut[m.Slug] {
			f.recoat = lag
		}
	}
	return f
}

func sorted[V any](m map[string]V) []string {
	keys := make([]string, 0, len(m))
	for k := range m {
		keys = append(keys, k)
	}
	slices.Sort(keys)
	return keys
}

func (c *compiled) fact(name string) int {
	if i, ok := c.index[name]; ok {
		return i
	}
	if len(c.facts) == maxFacts {
		panic("route: more than 256 facts")
	}
	c.index[name] = len(c.facts)
	c.facts = append(c.facts, name)
	return len(c.facts) - 1
}

func (c *compiled) addFacts(w *library.Vocabulary) {
	for _, name := range sorted(w.Facts) {
		f, i := w.Facts[name], c.fact(name)
		if f.Number {
			c.keyed = i
		}
		if f.Of == library.Surface {
			c.surface.set(i)
			if f.Fresh {
				c.fresh.set(i)
			}
		}
	}
}

// addOps adds the step, once for each material it may lay.
func (c *compiled) addOps(s *library.Step) {
	if c.barred(s.OnlyIf) != "" {
		return
	}
	if s.Lays == "" {
		c.ops = append(c.ops, c.op(s, nil))
		return
	}
	for _, slug := range sorted(c.Library.Materials) {
		if m := c.Library.Materials[slug]; m.Role == s.Lays && c.unfit(m) == "" {
			c.ops = append(c.ops, c.op(s, m))
		}
	}
}

func (c *compiled) op(s *library.Step, m *library.Material) op {
	o := op{step: s, material: m, phase: int8(c.phases[s.Phase]), needs: c.compileNeeds(s.Needs), wants: c.compileWants(s.Wants), cost: c.workCost(s, m), stands: waitCost(c.Stands(s.Stands))}
	for _, g := range s.Gives {
		i := c.fact(g.Fact)
		o.gives.set(i)
		if g.Number != (q.Range[q.Grit]{}) {
			o.grit = c.gritIndex(g.Number)
		}
	}
	for _, f := range s.Spoils {
		o.spoils.set(c.fact(f))
	}
	if m != nil {
		c.addFilm(&o, m)
	}
	o.spoils = o.spoils.without(o.gives)
	o.must = c.mustHave(o)
	for _, n := range o.needs {
		o.dries = o.dries || slices.ContainsFunc(n.choices, func(ch choice) bool { return ch.fact < 0 })
	}
	return o
}

func (c *compiled) addFilm(o *op, m *library.Material) {
	o.needs = append(o.needs, c.compileNeeds(m.Needs)...)
	o.wants = append(o.wants, c.compileWants(m.Wants)...)
	for _, f := range m.Spoils {
		o.spoils.set(c.fact(f))
	}
	for _, f := range m.Gives {
		o.gives.set(c.fact(f))
	}
	o.gives.set(c.fact("film/" + m.Role))
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
		var compiled need
		compiled.because = n.Because
		for _, l := range n.Any {
			state, dries := c.dryness[l.Fact]
			ch := choice{fact: -1, state: state, number: l.Number}
			if !dries {
				ch.fact = c.fact(l.Fact)
			}
			compiled.choices = append(compiled.choices, ch)
		}
		out = append(out, compiled)
	}
	return out
}

func (c *compiled) compileWants(wants []library.Want) []want {
	var out []want
	for _, w := range wants {
		out = append(out, want{c.fact(w.Fact), w.Number, w.Saves, cost(float64(minutes(w.Saves))*c.Care + 0.5), w.Because})
	}
	return out
}

// workCost is hands-on time, spraying time and material of one step.
func (c *compiled) workCost(s *library.Step, m *library.Material) cost {
	t := s.Work.Fixed + q.Time(float64(s.Work.PerArea)*float64(c.Area))
	if m == nil {
		return minutes(t)
	}
	coats := float64(c.Coats(m))
	if a := c.Library.Tools[c.Tool]; a != nil && a.Applicator != nil {
		t += q.Time(float64(a.Applicator.Pace) * float64(c.Area) * coats)
	}
	t += q.Time(LitreMinutes * 60 * filmLitres(m, c.Area) * coats)
	return minutes(t) + waitCost(c.Stands(m.Flash)*q.Time(coats-1))
}

// Coats is how many coats of m this problem lays.
func (p *Problem) Coats(m *library.Material) int {
	for _, f := range p.Films {
		if f.Coats > 0 && slices.Contains(f.Materials, m.Slug) {
			return f.Coats
		}
	}
	return m.Coats
}

// filmLitres is the material in one coat of the film itself, before any loss.
func filmLitres(m *library.Material, area q.Area) float64 {
	if m.SolidsByVolume <= 0 {
		return 0
	}
	return float64(area) * float64(m.Build) / float64(m.SolidsByVolume) * 1000
}
