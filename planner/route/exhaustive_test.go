package route

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"sort"
	"strings"
	"testing"

	"coatwright/planner/library"
	q "coatwright/quantity"
)

// bench is a second, plain reading of the same rules, for tests only: facts as a
// map of words, no bound, no canonical order, no relevance, nothing compiled.
type bench struct {
	p     *Problem
	best  map[string]cost
	goal  cost
	found bool
}

type plainState struct {
	facts   map[string]bool
	exposed map[string]bool // traits that reach what is laid next
	grit    q.Range[q.Grit]
	top     *library.Material
	base    *library.Material // under a design's film
	ground  q.Range[q.Grit]   // the scratch on base
	design  bool              // a design's film lies uppermost
	next    int
	phase   int
	wait    q.Time
	under   bool
}

func (s plainState) key() string {
	var on []string
	for f, yes := range s.facts {
		if yes {
			on = append(on, f)
		}
	}
	sort.Strings(on)
	name := func(m *library.Material) string {
		if m == nil {
			return ""
		}
		return m.Slug
	}
	return fmt.Sprint(strings.Join(on, ","), s.exposed, s.grit, name(s.top), name(s.base), s.ground, s.design, s.next, s.phase, s.wait, s.under)
}

// exhaust tries every sequence of steps, cutting only where the same state was
// had for no more.
func exhaust(p *Problem) (cost, bool) {
	b := &bench{p: p, best: map[string]cost{}}
	s := plainState{facts: map[string]bool{}, exposed: set(p.Substrate.Traits)}
	for _, l := range p.Facts {
		s.facts[l.Fact] = true
	}
	b.visit(s, 0)
	return b.goal, b.found
}

func set(words []string) map[string]bool {
	out := map[string]bool{}
	for _, w := range words {
		out[w] = true
	}
	return out
}

func (b *bench) visit(s plainState, spent cost) {
	if b.found && spent >= b.goal {
		return
	}
	k := s.key()
	if old, seen := b.best[k]; seen && old <= spent {
		return
	}
	b.best[k] = spent
	b.hand(s, spent)
	for _, slug := range sorted(b.p.Library.Steps) {
		step := b.p.Library.Steps[slug]
		if step.Lays == "" {
			b.do(s, step, nil, spent)
			continue
		}
		b.do(s, step, b.p.Library.Materials["film-"+step.Lays], spent)
	}
}

func (b *bench) hand(s plainState, spent cost) {
	if s.next < len(b.p.Films) {
		return
	}
	wait := s.wait
	for _, f := range b.p.Ends {
		w, ok := b.holds(s, library.Literal{Fact: f})
		if !ok {
			return
		}
		wait = max(wait, w)
	}
	spent += waitCost(wait) - waitCost(s.wait) + b.penalty(s, b.p.EndWants)
	if !b.found || spent < b.goal {
		b.goal, b.found = spent, true
	}
}

func (b *bench) penalty(s plainState, wants []library.Want) cost {
	var sum cost
	for _, w := range wants {
		if !s.facts[w.Fact] {
			sum += cost(float64(minutes(w.Saves))*b.p.Care + 0.5)
		}
	}
	return sum
}

func (b *bench) holds(s plainState, l library.Literal) (q.Time, bool) {
	if strings.HasPrefix(l.Fact, "dry-") {
		if s.top == nil {
			return 0, true
		}
		return b.p.Lag(Coating{Material: s.top}, l.Fact)
	}
	return 0, s.facts[l.Fact]
}

func (b *bench) phase(s plainState, name string) int {
	all := []string{"clean", "coat", "level", "inspect"}
	if s.top != nil {
		all = []string{"level", "inspect", "clean", "coat"}
	}
	return slices.Index(all, name)
}

func (b *bench) do(s plainState, step *library.Step, m *library.Material, spent cost) {
	phase := b.phase(s, step.Phase)
	if phase < s.phase || step.OnlyIf.On == "film" && s.top == nil || !b.fits(s, step.OnlyIf) {
		return
	}
	area, ok := b.extent(s, step)
	if !ok {
		return
	}
	needs := step.Needs
	if m != nil {
		needs = append(slices.Clone(needs), m.Needs...)
	}
	wait, ok := b.waitFor(s, needs)
	if !ok {
		return
	}
	for _, state := range step.Before {
		if lag, ok := b.p.Lag(Coating{Material: s.top}, state); ok && wait >= lag {
			return
		}
	}
	if wait, ok = b.rules(s, step, m, wait); !ok {
		return
	}
	if m != nil {
		b.lay(s, step, m, spent, wait)
		return
	}
	if step.Strips {
		if s.under || s.top != nil || b.p.Substrate.Under == "" {
			return
		}
		s = b.strip(s)
	}
	spent += minutes(step.Work.Fixed+q.Time(float64(step.Work.PerArea)*float64(area))) + waitCost(step.Stands.In) + waitCost(wait) - waitCost(s.wait)
	after := b.change(s, step.Spoils, step.Gives)
	after.wait, after.phase = wait, phase
	b.visit(after, spent)
}

// fits looks at the traits of what the part is made of now, and at the mask of
// the layer that comes next.
func (b *bench) fits(s plainState, c library.Condition) bool {
	substrate := b.p.Substrate
	if s.under {
		substrate = b.p.Library.Substrates[substrate.Under]
	}
	for _, t := range c.Traits {
		if !slices.Contains(substrate.Traits, t) {
			return false
		}
	}
	if len(c.Masks) == 0 {
		return true
	}
	return s.next < len(b.p.Films) && b.p.Films[s.next].Layer != nil && slices.Contains(c.Masks, b.p.Films[s.next].Layer.Mask)
}

// extent is what a step's work goes by: the part, or a layer that is there.
func (b *bench) extent(s plainState, step *library.Step) (q.Area, bool) {
	at := s.next
	switch step.Work.Of {
	case library.OfPart:
		return b.p.Area, true
	case library.OfLaidLayer:
		at--
	}
	if at < 0 || at >= len(b.p.Films) || b.p.Films[at].Layer == nil {
		return 0, false
	}
	return b.p.Films[at].Layer.Extent, true
}

// rules looks at what lies below.
func (b *bench) rules(s plainState, step *library.Step, m *library.Material, wait q.Time) (q.Time, bool) {
	var over []library.Over
	if m != nil {
		over = append(over, m.Over...)
	}
	for _, u := range step.Uses {
		over = append(over, b.p.Library.Tools[u.Tool].Tape.Over...)
	}
	for _, o := range over {
		about := o.Trait != "" && s.exposed[o.Trait]
		for _, below := range []*library.Material{s.top, s.base} {
			about = about || below != nil && (o.Material == below.Slug || o.Role == below.Role && o.Role != "")
		}
		if !about {
			continue
		}
		w, ok := b.holds(s, o.Needs)
		if o.Never || !ok {
			return 0, false
		}
		wait = max(wait, w)
	}
	return wait, true
}

// strip leaves what is said of the part, and not by its substrate.
func (b *bench) strip(s plainState) plainState {
	under := b.p.Library.Substrates[b.p.Substrate.Under]
	facts := map[string]bool{}
	for name, yes := range s.facts {
		own := slices.ContainsFunc(b.p.Substrate.Facts, func(l library.Literal) bool { return l.Fact == name })
		if yes && b.p.Library.Words.Facts[name].Of != library.Surface && !own {
			facts[name] = true
		}
	}
	for _, l := range under.Facts {
		facts[l.Fact] = true
	}
	s.facts, s.under, s.exposed, s.grit = facts, true, set(under.Traits), q.Range[q.Grit]{}
	return s
}

func (b *bench) waitFor(s plainState, needs []library.Need) (q.Time, bool) {
	wait := s.wait
	for _, n := range needs {
		least, ok := q.Time(0), false
		for _, l := range n.Any {
			if w, holds := b.holds(s, l); holds && (!ok || w < least) {
				least, ok = w, true
			}
		}
		if !ok {
			return 0, false
		}
		wait = max(wait, least)
	}
	return wait, true
}

// change gives what is given even where the same step spoils it.
func (b *bench) change(s plainState, spoils []string, gives []library.Literal) plainState {
	after := s
	after.facts = map[string]bool{}
	for f, yes := range s.facts {
		after.facts[f] = yes
	}
	for _, f := range spoils {
		delete(after.facts, f)
	}
	for _, g := range gives {
		after.facts[g.Fact] = true
		if g.Fact == "keyed" {
			after.grit, after.ground = g.Number, g.Number
		}
	}
	if !after.facts["keyed"] {
		after.grit = q.Range[q.Grit]{}
	}
	if slices.Contains(spoils, "keyed") && !after.facts["keyed"] || !s.design {
		after.ground = q.Range[q.Grit]{}
	}
	return after
}

func (b *bench) lay(s plainState, step *library.Step, m *library.Material, spent cost, wait q.Time) {
	if s.next == len(b.p.Films) {
		return
	}
	ranks := []string{"seal", "ground", "lock", "art", "clear"}
	rank := func(m *library.Material) int { return slices.Index(ranks, m.Role) }
	turn := b.p.Films[s.next]
	required := turn.Role == m.Role
	if !required {
		prep := (m.Role == "seal" || m.Role == "lock") && rank(m) < slices.Index(ranks, turn.Role)
		above := s.top == nil || !s.design && rank(m) > rank(s.top) || s.design && (s.base == nil || rank(m) >= rank(s.base))
		if !prep || !above {
			return
		}
	}
	grips := func(grit q.Range[q.Grit], below *library.Material) bool {
		if m.Key != (q.Range[q.Grit]{}) && grit != (q.Range[q.Grit]{}) && grit.Low <= m.Key.High && m.Key.Low <= grit.High {
			return true
		}
		return below == nil && m.Key == q.Range[q.Grit]{}
	}
	if s.design && !grips(s.ground, s.base) && s.base == nil {
		return
	}
	if !grips(s.grit, s.top) {
		if s.top == nil {
			return
		}
		d := s.top.Dries[recoat]
		if wait = max(wait, d.In); d.Closes != 0 && wait > d.Closes {
			return
		}
	}
	area := b.p.Area
	if required && turn.Layer != nil {
		area = turn.Layer.Sprayed
	}
	litres := float64(area) * float64(m.Build) / float64(m.SolidsByVolume) * 1000 * float64(m.Coats)
	worked, _ := b.extent(s, step)
	if required && turn.Layer != nil {
		worked = area
	}
	spent += minutes(step.Work.Fixed+q.Time(float64(step.Work.PerArea)*float64(worked))+q.Time(litres*LitreMinutes*60)) + waitCost(wait) - waitCost(s.wait)
	spent += b.penalty(s, step.Wants) + b.penalty(s, m.Wants)
	after := b.cover(s, step, m)
	after.top, after.wait, after.phase = m, 0, 0
	if required {
		after.next++
	}
	b.visit(after, spent)
}

// cover says what holds after a film: over the whole part what the film brings,
// after a design only what also held beside it.
func (b *bench) cover(s plainState, step *library.Step, m *library.Material) plainState {
	words := b.p.Library.Words.Facts
	after := s
	after.facts, after.exposed = map[string]bool{}, map[string]bool{}
	design := m.Role == "art"
	spoils := set(append(slices.Clone(step.Spoils), m.Spoils...))
	gives := set(append(literalFacts(step.Gives), append(m.Gives, "film/"+m.Role)...))
	for name := range gives {
		spoils[name] = false
	}
	all := slices.Concat(sorted(words), sorted(gives))
	for _, name := range all {
		f := words[name]
		surface := f != nil && f.Of == library.Surface
		brought := gives[name] || surface && f.Fresh
		switch {
		case spoils[name]:
		case surface && design:
			after.facts[name] = brought && s.facts[name]
		case surface:
			after.facts[name] = brought
		default:
			after.facts[name] = gives[name] || s.facts[name]
		}
	}
	if !m.Barrier || design {
		for t := range s.exposed {
			after.exposed[t] = true
		}
	}
	for _, t := range m.Traits {
		after.exposed[t] = true
	}
	after.grit = q.Range[q.Grit]{}
	switch {
	case design && !s.design:
		after.base, after.ground = s.top, s.grit
	case !design:
		after.base, after.ground = nil, q.Range[q.Grit]{}
	}
	after.design = design
	return after
}

// TestFindIsOptimal compares Find with exhaustive search on 300 random small
// libraries that have a route, and on those that have none on the way there.
func TestFindIsOptimal(t *testing.T) {
	planned, refused := 0, 0
	seen := map[string]int{} // routes in which something of note happens
	for seed := uint64(0); planned < 300; seed++ {
		p := randomProblem(rand.New(rand.NewPCG(seed, 7)))
		want, exists := exhaust(p)
		got, refusal, err := Find(p)
		if err != nil {
			t.Fatalf("seed %d: %v", seed, err)
		}
		switch {
		case exists && refusal != nil:
			t.Fatalf("seed %d: refused (%s: %v), but a route of %d exists", seed, refusal.Fact, refusal.Reasons, want)
		case !exists && refusal == nil:
			t.Fatalf("seed %d: a route of %v, but none exists", seed, got.Cost)
		case !exists:
			refused++
			if refusal.Fact == "" || len(refusal.Reasons) == 0 {
				t.Fatalf("seed %d: refused without a fact or a reason: %+v", seed, refusal)
			}
		case float64(want)/1000 != got.Cost:
			t.Fatalf("seed %d: cost %v, exhaustive search finds %v", seed, got.Cost, float64(want)/1000)
		default:
			planned++
			for what := range happenings(got) {
				seen[what]++
			}
		}
	}
	for _, what := range []string{"a design", "a lock", "a mask", "stripping", "a missed want", "a fresh key"} {
		if seen[what] < 5 {
			t.Errorf("%s is in %d routes: too few to try it", what, seen[what])
		}
	}
	if refused == 0 {
		t.Error("no random library was without a route: the refusals were not tried")
	}
	t.Logf("%d planned, %d refused; %v", planned, refused, seen)
}

// happenings is what a route has in it that the search must get right.
func happenings(r *Route) map[string]bool {
	out := map[string]bool{}
	for _, a := range r.Actions {
		out["a design"] = out["a design"] || a.Film.Material != nil && a.Film.Role == "art"
		out["a lock"] = out["a lock"] || a.Film.Material != nil && a.Film.Role == "lock"
		out["a mask"] = out["a mask"] || len(a.Step.OnlyIf.Masks) > 0 || a.Step.Work.Of != library.OfPart
		out["stripping"] = out["stripping"] || a.Step.Strips
		for _, l := range a.Links {
			out["a missed want"] = out["a missed want"] || l.Missed
			out["a fresh key"] = out["a fresh key"] || l.Fact == "keyed"
		}
	}
	for what, yes := range out {
		if !yes {
			delete(out, what)
		}
	}
	return out
}
