package colour

import (
	"testing"

	"pgregory.net/rapid"
)

// Published: Sharma, Wu & Dalal (2005), table 1: 34 pairs, to four decimals.
func TestDifference(t *testing.T) {
	rows := table(t, "ciede2000_sharma2005.csv")
	if len(rows) != 34 {
		t.Fatalf("%d pairs, want 34", len(rows))
	}
	for _, r := range rows {
		a := Lab{float(t, r["L1"]), float(t, r["a1"]), float(t, r["b1"])}
		b := Lab{float(t, r["L2"]), float(t, r["a2"]), float(t, r["b2"])}
		near(t, "pair "+r["pair"], float64(Difference(a, b)), float(t, r["dE00"]), 5e-5)
		near(t, "pair "+r["pair"]+" turned", float64(Difference(b, a)), float(t, r["dE00"]), 5e-5)
	}
}

func anyLab(t *rapid.T) Lab {
	ab := rapid.Float64Range(-100, 100)
	return Lab{rapid.Float64Range(0, 100).Draw(t, "L"), ab.Draw(t, "a"), ab.Draw(t, "b")}
}

func TestDifferenceIsOneOfTwo(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := anyLab(t), anyLab(t)
		there, back := Difference(a, b), Difference(b, a)
		near(t, "back", float64(back), float64(there), 1e-9)
		if !(there >= 0) {
			t.Errorf("the difference of %+v and %+v is %v", a, b, there)
		}
		if d := Difference(a, a); d != 0 {
			t.Errorf("the difference of %+v from itself is %v", a, d)
		}
		if a != b && there == 0 {
			t.Errorf("no difference between %+v and %+v", a, b)
		}
	})
}

// Greys differ by lightness alone: ΔL / SL, worked independently.
func TestDifferenceOfGreys(t *testing.T) {
	for _, c := range []struct{ l1, l2, want float64 }{
		{50, 51, 1 / 1.0008333}, {0, 100, 100}, {95, 96, 1 / 1.679227}, {10, 12, 2 / 1.581192},
	} {
		near(t, "ΔE", float64(Difference(Lab{c.l1, 0, 0}, Lab{c.l2, 0, 0})), c.want, 1e-6)
	}
}
