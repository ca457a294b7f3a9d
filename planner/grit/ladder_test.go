package grit

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	q "coatwright/quantity"
)

func names(rungs []Rung) string {
	var out []string
	for _, r := range rungs {
		out = append(out, r.Grade.Name())
	}
	return strings.Join(out, " ")
}

// No more than twice the number in a step, and half again when it must be perfect:
// common practice, no published source. Which grades come of it was worked by hand.
func TestLadder(t *testing.T) {
	for _, c := range []struct {
		from, to q.Grit
		jump     float64
		want     string
	}{
		{80, 320, 1, "P80 P120 P180 P320"}, // there is no P160
		{80, 600, 1, "P80 P120 P220 P360 P600"},
		{80, 320, 0.5, "P80 P120 P180 P240 P320"},
		{320, 1000, 1, "P320 P600 P1000"},
		{600, 600, 1, "P600"},
		{600, 800, 1, "P600 P800"},
		{600, 1200, 1, "P600 P1200"},
		{600, 1500, 0.1, "P600 P800 P1000 P1200 P1500"}, // neighbours, though each is further
	} {
		got, err := Ladder(c.from, c.to, c.jump)
		if err != nil || names(got) != c.want {
			t.Errorf("from P%g to P%g by %g is %s, %v, want %s", float64(c.from), float64(c.to), c.jump, names(got), err, c.want)
		}
	}
}

func TestJumps(t *testing.T) {
	got, err := Ladder(150, 500, 1)
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range []float64{0, 280.0/150 - 1, 500.0/280 - 1} {
		if math.Abs(got[i].Jump-want) > 1e-12 {
			t.Errorf("jump to %s is %v, want %v", got[i].Grade.Name(), got[i].Jump, want)
		}
	}
}

func TestLadderRefuses(t *testing.T) {
	for _, c := range []struct {
		from, to q.Grit
		jump     float64
		want     string
	}{
		{600, 180, 1, "found P600 to P180; expected the coarse grade first: P180 to P600"},
		{85, 320, 1, `found "P85", expected a grade of the P scale, P12 to P3000; did you mean "P80"?`},
		{80, 330, 1, `found "P330", expected a grade of the P scale, P12 to P3000; did you mean "P320"?`},
		{80, 320, 0, "found a jump of 0; expected more than 0, such as 1 for twice the number"},
		{80, 320, math.NaN(), "found a jump of NaN; expected more than 0, such as 1 for twice the number"},
		{80, 320, math.Inf(1), "found a jump of +Inf; expected more than 0, such as 1 for twice the number"},
	} {
		_, err := Ladder(c.from, c.to, c.jump)
		if err == nil || err.Error() != c.want {
			t.Errorf("error is\n\t%v\nwant\n\t%s", err, c.want)
		}
	}
}

// Against every choice of grades between: none keeps the rule with fewer.
func TestLadderIsShort(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		table := tables[P]
		first := rapid.IntRange(0, len(table)-1).Draw(t, "first")
		last := rapid.IntRange(first, min(first+9, len(table)-1)).Draw(t, "last")
		jump := rapid.Float64Range(0.05, 2).Draw(t, "jump")
		got, err := Ladder(table[first].Number, table[last].Number, jump)
		if err != nil {
			t.Fatal(err)
		}
		if !keeps(got, jump) || got[0].Grade != table[first] || got[len(got)-1].Grade != table[last] {
			t.Fatalf("from %s to %s by %v is %s", table[first].Name(), table[last].Name(), jump, names(got))
		}
		inside := table[first+min(1, last-first) : last]
		for choice := range 1 << len(inside) {
			other := rungs(chosen(table[first], inside, choice, table[last]))
			if len(other) < len(got) && keeps(other, jump) {
				t.Errorf("%s is shorter than %s, by %v", names(other), names(got), jump)
			}
			if len(other) == len(got) && keeps(other, jump) && uneven(other) < uneven(got)-1e-9 {
				t.Errorf("%s is more even than %s, by %v", names(other), names(got), jump)
			}
		}
	})
}

// chosen is first, what the bits of choice say of inside, and last.
func chosen(first Grade, inside []Grade, choice int, last Grade) []Grade {
	out := []Grade{first}
	for i, g := range inside {
		if choice&(1<<i) != 0 {
			out = append(out, g)
		}
	}
	if last != first {
		out = append(out, last)
	}
	return out
}

// keeps reports whether each step is a neighbour or no more than jump.
func keeps(rungs []Rung, jump float64) bool {
	for i := 1; i < len(rungs); i++ {
		neighbour, _ := rungs[i-1].Grade.Finer()
		if neighbour != rungs[i].Grade && rungs[i].Jump > jump*(1+1e-6)+1e-6 {
			return false
		}
	}
	return true
}

func uneven(rungs []Rung) float64 {
	var sum float64
	for _, r := range rungs {
		sum += math.Log1p(r.Jump) * math.Log1p(r.Jump)
	}
	return sum
}

func BenchmarkLadder(b *testing.B) {
	for b.Loop() {
		if _, err := Ladder(36, 2000, 0.5); err != nil {
			b.Fatal(err)
		}
	}
}
