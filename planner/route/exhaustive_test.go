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
	facts map[string]bool
	grit  q.Range[q.Grit]
	top   *library.Material
	next  int
	phase int
	wait  q.Time
}

func (s plainState) key() string {
	var on []string
	for f, yes := range s.facts {
		if yes {
			on = append(on, f)
		}
	}
	sort.Strings(on)
	top := ""
	if s.top != nil {
		top = s.top.Slug
	}
	return fmt.Sprint(strings.Join(on, ","), s.grit, top, s.next, s.phase, s.wait)
}

// exhaust tries every sequence of steps, cutting only where the same state was
// had for no more.
func exhaust(p *Problem) (cost, bool) {
	b := &bench{p: p, best: map[string]cost{}}
	s := plainState{facts: map[string]bool{}}
	for _, l := range p.Facts {
		s.facts[l.Fact] = true
	}
	b.visit(s, 0)
	return b.goal, b.found
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
		return b.p.Lag(s.top, l.Fact)
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
	if phase < s.phase || step.OnlyIf.On == "film" && s.top == nil {
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
		if lag, ok := b.p.Lag(s.top, state); ok && wait >= lag {
			return
		}
	}
	if m != nil {
		b.lay(s, step, m, spent, wait)
		return
	}
	spent += minutes(step.Work.Fixed) + waitCost(step.Stands.In) + waitCost(wait) - waitCost(s.wait)
	after := b.change(s, step.Spoils, step.Gives)
	after.wait, after.phase = wait, phase
	b.visit(after, spent)
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
			after.grit = g.Number
		}
	}
	if !after.facts["keyed"] {
		after.grit = q.Range[q.Grit]{}
	}
	return after
}

func (b *bench) lay(s plainState, step *library.Step, m *library.Material, spent cost, wait q.Time) {
	ranks := []string{"seal", "ground", "clear"}
	rank := slices.Index(ranks, m.Role)
	if s.top != nil && rank <= slices.Index(ranks, s.top.Role) || s.next == len(b.p.Films) {
		return
	}
	required := b.p.Films[s.next].Role == m.Role
	if !required && (m.Role != "seal" || rank >= slices.Index(ranks, b.p.Films[s.next].Role)) {
		return
	}
	scratch := s.facts["keyed"] && m.Key != q.Range[q.Grit]{} && s.grit.Low <= m.Key.High && m.Key.Low <= s.grit.High
	switch {
	case scratch:
	case s.top == nil:
		if m.Key != (q.Range[q.Grit]{}) {
			return
		}
	default:
		d := s.top.Dries[recoat]
		if wait = max(wait, d.In); d.Closes != 0 && wait > d.Closes {
			return
		}
	}
	litres := float64(b.p.Area) * float64(m.Build) / float64(m.SolidsByVolume) * 1000 * float64(m.Coats)
	spent += minutes(step.Work.Fixed+q.Time(litres*LitreMinutes*60)) + waitCost(wait) - waitCost(s.wait)
	spent += b.penalty(s, step.Wants) + b.penalty(s, m.Wants)
	after := b.change(s, b.buried(s), nil)
	for name, f := range b.p.Library.Words.Facts {
		if f.Of == library.Surface && f.Fresh {
			after.facts[name] = true
		}
	}
	gives := append(literals(m.Gives), library.Literal{Fact: "film/" + m.Role})
	after = b.change(after, append(slices.Clone(step.Spoils), m.Spoils...), append(gives, step.Gives...))
	after.top, after.wait, after.phase = m, 0, 0
	if required {
		after.next++
	}
	b.visit(after, spent)
}

// buried is the surface facts that a new film ends.
func (b *bench) buried(plainState) []string {
	var out []string
	for name, f := range b.p.Library.Words.Facts {
		if f.Of == library.Surface && !f.Fresh {
			out = append(out, name)
		}
	}
	return out
}

// TestFindIsOptimal compares Find with exhaustive search on 300 random small
// libraries that have a route, and on those that have none on the way there.
func TestFindIsOptimal(t *testing.T) {
	planned, refused := 0, 0
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
		}
	}
	if refused == 0 {
		t.Error("no random library was without a route: the refusals were not tried")
	}
	t.Logf("%d planned, %d refused", planned, refused)
}
