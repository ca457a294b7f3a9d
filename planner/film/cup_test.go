package film

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	q "coatwright/quantity"
)

// The lines of a mixing cup: common practice, no published source.
var cupMarks = []Mark{{50 * ml, 1 * ml}, {250 * ml, 5 * ml}, {600 * ml, 10 * ml}}

func TestFills(t *testing.T) {
	for _, c := range []struct {
		total, cup q.Volume
		want       int
	}{
		{0, 600 * ml, 0}, {1 * ml, 600 * ml, 1}, {600 * ml, 600 * ml, 1}, {601 * ml, 600 * ml, 2},
		{3 * (0.1 + 0.2) * 1e-3, 0.3e-3, 3}, // a sliver over 900 mL
		{900 * ml, 0, 1},
	} {
		if got := Fills(c.total, c.cup); got != c.want {
			t.Errorf("Fills(%v mL, %v mL) = %d, want %d", c.total.Millilitres(), c.cup.Millilitres(), got, c.want)
		}
	}
}

func TestRoundUp(t *testing.T) {
	for _, c := range []struct{ v, want float64 }{
		{0, 0}, {0.2, 1}, {17, 17}, {49.2, 50}, {50, 50}, {51, 55}, {248, 250}, {250, 250}, {250.5, 260}, {1204, 1210},
	} {
		near(t, "rounded", RoundUp(q.Volume(c.v*ml), cupMarks).Millilitres(), c.want, 1e-9)
	}
	if got := RoundUp(17.3*ml, nil); got != 17.3*ml {
		t.Errorf("RoundUp without marks = %v mL, want 17.3", got.Millilitres())
	}
}

func TestRoundUpProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := anyOf[q.Volume](t, "volume", 0, 5000*ml)
		got := RoundUp(v, cupMarks)
		if over := got - v; over < -1e-12 || over > 10*ml {
			t.Errorf("RoundUp(%v) = %v, more than a step away or below", v, got)
		}
		if again := RoundUp(got, cupMarks); math.Abs(float64(again-got)) > 1e-15 {
			t.Errorf("RoundUp(RoundUp(%v)) = %v, want %v", v, again, got)
		}
	})
}

func BenchmarkRoundUp(b *testing.B) {
	for b.Loop() {
		RoundUp(248*ml, cupMarks)
	}
}
