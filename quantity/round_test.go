package quantity

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func TestRoundTo(t *testing.T) {
	for _, c := range []struct{ v, step, nearest float64 }{
		{17, 5, 15},
		{17.5, 5, 20},
		{20, 5, 20},
		{0.15, 0.1, 0.2},            // 0.15/0.1 is a sliver below 1.5
		{3 * (0.1 + 0.2), 0.3, 0.9}, // a sliver above
		{0.9 - 1e-12, 0.3, 0.9},     // a sliver below
		{0, 5, 0},
		{-17, 5, -15},
		{-17.5, 5, -20},
		{0.2, 1, 0},
		{17, 0, 17},
		{17, -5, 17},
	} {
		if got := RoundTo(c.v, c.step); math.Abs(got-c.nearest) > 1e-12 {
			t.Errorf("RoundTo(%v, %v) = %v, want %v", c.v, c.step, got, c.nearest)
		}
	}
	if got := RoundTo(Volume(17.4e-6), 5e-6); math.Abs(got.Millilitres()-15) > 1e-9 {
		t.Errorf("17.4 mL to 5 mL is %v mL, want 15", got.Millilitres())
	}
}

func TestRoundingProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		step := rapid.Float64Range(1e-6, 10).Draw(t, "step")
		v := rapid.Float64Range(-1e4, 1e4).Draw(t, "steps") * step
		slack := step * 1e-6
		near := RoundTo(v, step)
		if math.Abs(near-v) > step/2+slack {
			t.Errorf("RoundTo(%v, %v) = %v, more than half a step away", v, step, near)
		}
		if math.Abs(RoundTo(near, step)-near) > slack {
			t.Errorf("rounding %v to %v twice moves it", v, step)
		}
		if larger := v + rapid.Float64Range(0, 10).Draw(t, "more"); RoundTo(larger, step) < near {
			t.Errorf("%v rounds to less than %v, by %v", larger, v, step)
		}
	})
}

func TestFigures(t *testing.T) {
	for _, c := range []struct {
		x     float64
		n     int
		want  string
		bound string // to n figures also before the point
	}{
		{0.590551, 2, "0.59", "0.59"},
		{0.0000123456, 3, "0.0000123", "0.0000123"},
		{9.996, 3, "10", "10"},
		{99.95, 3, "100", "100"},
		{999.6, 3, "1000", "1000"},
		{12345.6, 3, "12346", "12300"},
		{127, 2, "127", "130"},
		{15.0000000001, 3, "15", "15"},
		{0.1 + 0.2, 3, "0.3", "0.3"},
		{1e-14, 3, "0", "0"},
		{-1e-14, 3, "0", "0"},
		{-0.126, 2, "-0.13", "-0.13"},
		{math.Inf(1), 3, "+Inf", "+Inf"},
	} {
		if got := figures(c.x, c.n); got != c.want {
			t.Errorf("figures(%v, %d) = %q, want %q", c.x, c.n, got, c.want)
		}
		if got := figures(toFigures(c.x, c.n), c.n); got != c.bound {
			t.Errorf("figures(toFigures(%v, %d)) = %q, want %q", c.x, c.n, got, c.bound)
		}
	}
}
