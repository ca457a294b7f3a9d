package planner_test

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"coatwright/planner"
	"coatwright/planner/library"
	q "coatwright/quantity"
)

// grow adds random step notes to a library until it has n, as a shop's own notes
// do over many years. Most are about facts of their own, which need and give one
// another and old facts; every fourth is another way to do an old step, with
// other times and up to two random needs more.
func grow(lib *library.Library, n int, seed uint64) {
	r := rand.New(rand.NewPCG(seed, 9))
	old := sorted(lib.Words.Facts)
	var steps []*library.Step
	for _, slug := range sorted(lib.Steps) {
		if s := lib.Steps[slug]; s.Lays == "" && !s.Strips {
			steps = append(steps, s)
		}
	}
	var fresh []string
	scopes := []library.Scope{library.Part, library.Surface, library.Surface, library.Bench}
	for i := range 100 {
		name := fmt.Sprintf("new-%d", i)
		lib.Words.Facts[name] = &library.Fact{Name: name, Of: scopes[r.IntN(4)], Fresh: r.IntN(2) == 0, Is: "New.", Else: "Not."}
		fresh = append(fresh, name)
	}
	pick := func(from []string, most int) []string {
		var out []string
		for range r.IntN(most + 1) {
			if f := from[r.IntN(len(from))]; !lib.Words.Facts[f].Number {
				out = append(out, f)
			}
		}
		return out
	}
	need := func(s *library.Step, facts []string) {
		for _, f := range facts {
			s.Needs = append(s.Needs, library.Need{Any: []library.Literal{{Fact: f}}})
		}
	}
	for i := 0; len(lib.Steps) < n; i++ {
		slug := fmt.Sprintf("grown-%04d", i)
		s := &library.Step{Because: "It is so.", Skipped: "It is not.", Checks: []string{"It is."}, Phase: lib.Words.Phases[r.IntN(len(lib.Words.Phases))].Name}
		if i%4 == 0 {
			*s = *steps[r.IntN(len(steps))]
			s.Needs = append([]library.Need{}, s.Needs...)
			need(s, pick(fresh, 2))
		} else {
			need(s, append(pick(old, 2), pick(fresh, 2)...))
			s.Spoils = pick(fresh, 2)
			for _, f := range append(pick(fresh, 2), fresh[r.IntN(len(fresh))]) {
				s.Gives = append(s.Gives, library.Literal{Fact: f})
			}
		}
		s.Slug, s.Title = slug, slug
		s.Work = library.Work{Fixed: q.Time(60 * (2 + r.IntN(40))), Of: s.Work.Of}
		lib.Steps[slug] = s
	}
}

// TestGrownLibrary: with 2,000 step notes the frame still plans, soundly.
func TestGrownLibrary(t *testing.T) {
	lib := builtIn(t)
	grow(lib, 2000, 1)
	p := plan(t, frame(t), lib)
	if p.Refused != nil {
		t.Fatalf("refused: %+v", p.Refused)
	}
	for _, fault := range verify(p, lib) {
		t.Error(fault)
	}
}

// BenchmarkGrownLibrary is how planning the frame grows with the notes.
func BenchmarkGrownLibrary(b *testing.B) {
	for _, n := range []int{100, 200, 300, 500, 1000, 2000} {
		lib := builtIn(b)
		grow(lib, n, 1)
		job := parse(b, frame(b), lib)
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			for b.Loop() {
				if p, err := planner.New(job, lib); err != nil || p.Refused != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
