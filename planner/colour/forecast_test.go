package colour

import (
	"testing"

	"pgregory.net/rapid"

	q "coatwright/quantity"
)

func redOverSilver(t tb) Coating {
	g := ground(t, "#c9ccd0")
	return coating(t, candy(t, "#b01020", g, coats(3)), g, coats(1))
}

// A colour that so many coats have is found again.
func TestNearestFindsItsOwnCoats(t *testing.T) {
	work := redOverSilver(t)
	for n := 1; n <= 12; n++ {
		m := work.Nearest(work.Lab(q.Number(n)), 12)
		if m.Coats != n || m.Left > 1e-9 {
			t.Errorf("%d coats are found as %+v", n, m)
		}
		near(t, "best", float64(m.Best), float64(n), 1e-4)
	}
}

// A part of a coat is found too, and the whole number beside it that is nearer.
func TestNearestFindsParts(t *testing.T) {
	work := redOverSilver(t)
	for _, c := range []struct {
		coats q.Number
		whole int
	}{{0.4, 1}, {2.2, 2}, {2.8, 3}, {3.37, 3}, {7.9, 8}} {
		m := work.Nearest(work.Lab(c.coats), 12)
		near(t, "best", float64(m.Best), float64(c.coats), 1e-4)
		if m.Coats != c.whole || m.BestLeft > 1e-3 || m.Left < m.BestLeft {
			t.Errorf("%v coats are found as %+v", c.coats, m)
		}
	}
}

// No count of coats and no tenth of one is nearer than what Nearest says.
func TestNoneIsNearer(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		work, wanted := anyCoating(t), anyScreen(t).XYZ().Lab()
		most := rapid.IntRange(1, 12).Draw(t, "most")
		m := work.Nearest(wanted, most)
		if m.Coats < 1 || m.Coats > most || m.Best < 0 || m.Best > q.Number(most) {
			t.Errorf("of at most %d coats: %+v", most, m)
		}
		near(t, "left", float64(m.Left), float64(Difference(work.Lab(q.Number(m.Coats)), wanted)), 1e-6)
		near(t, "left of best", float64(m.BestLeft), float64(Difference(work.Lab(m.Best), wanted)), 1e-6)
		for n := 1; n <= most; n++ {
			if d := Difference(work.Lab(q.Number(n)), wanted); d < m.Left-1e-6 {
				t.Errorf("%d coats are %v from it, %+v", n, d, m)
			}
		}
		for n := 0; n <= quarters*most; n++ {
			if d := Difference(work.Lab(q.Number(n)/quarters), wanted); d < m.BestLeft-1e-6 {
				t.Errorf("%v coats are %v from it, %+v", q.Number(n)/quarters, d, m)
			}
		}
	})
}

// What lies deeper than all coats is met by the most, what lies before the first
// by one.
func TestNearestAtTheEnds(t *testing.T) {
	work := redOverSilver(t)
	if m := work.Nearest(work.Lab(9), 4); m.Coats != 4 || m.Best != 4 || m.Left != m.BestLeft {
		t.Errorf("beyond the most: %+v", m)
	}
	if m := work.Nearest(work.Lab(0), 4); m.Coats != 1 || m.Best != 0 || m.BestLeft > 1e-9 {
		t.Errorf("the bare ground: %+v", m)
	}
	if m := work.Nearest(work.Lab(9), 0); m.Coats != 1 {
		t.Errorf("of no coats: %+v", m)
	}
}

// A pass too many in three coats is a sixth more film, in six weaker ones a
// twelfth: as different as half a coat, and half as different about.
func TestEvenness(t *testing.T) {
	work := redOverSilver(t)
	sixth := work.Evenness(3, 1.0/6)
	near(t, "thick", float64(sixth.Thick), float64(Difference(work.Lab(3), work.Lab(3.5))), 1e-9)
	near(t, "thin", float64(sixth.Thin), float64(Difference(work.Lab(3), work.Lab(2.5))), 1e-9)
	twelfth := work.Evenness(3, 1.0/12)
	near(t, "half of it", float64(sixth.Thick/twelfth.Thick), 2, 0.2)
	if none := work.Evenness(3, 0); none.Thin != 0 || none.Thick != 0 {
		t.Errorf("an even film is uneven: %+v", none)
	}
}

// At the tolerance the worse side is at the limit, for every limit.
func TestTolerance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		work := anyCoating(t)
		n := q.Number(rapid.IntRange(1, 12).Draw(t, "coats"))
		limit := DeltaE(rapid.Float64Range(0.1, 10).Draw(t, "limit"))
		v := work.Tolerance(n, limit)
		if v < 0 || v > 1 {
			t.Errorf("a tolerance of %v", v)
		}
		e := work.Evenness(n, v)
		at := max(e.Thin, e.Thick)
		if at > limit || (v < 1 && float64(limit-at) > 0.01*float64(limit)+0.01) {
			t.Errorf("at a tolerance of %v the difference is %v, the limit %v", v, at, limit)
		}
		if less := work.Tolerance(n, limit/2); less > v {
			t.Errorf("half the difference allows %v, all of it %v", less, v)
		}
	})
}

// Just visible needs a film even to about 5 % in the middle of a red candy;
// plainly visible, to about twice that.
func TestToleranceOfARed(t *testing.T) {
	work := redOverSilver(t)
	just, plain := work.Tolerance(3, JustVisible), work.Tolerance(3, PlainlyVisible)
	near(t, "just visible", float64(just), 0.05, 0.01)
	near(t, "plainly visible", float64(plain/just), float64(PlainlyVisible/JustVisible), 0.2)
	near(t, "10 %", float64(work.Evenness(3, 0.10).Thin), 0.10/float64(just), 0.2)
}

// A candy that takes nothing away may be as uneven as it likes.
func TestToleranceOfNoColour(t *testing.T) {
	g := ground(t, "#c9ccd0")
	work := coating(t, candy(t, "#c9ccd0", g, coats(3)), g, coats(1))
	if v := work.Tolerance(3, JustVisible); v != 1 {
		t.Errorf("a tolerance of %v, want 1", v)
	}
}

// A sag half as thick again over three coats is four and a half, twice as thick
// is six: what the strip says of those.
func TestSag(t *testing.T) {
	work := redOverSilver(t)
	for times, n := range map[q.Number]q.Number{1: 3, 1.5: 4.5, 2: 6} {
		s := work.Sag(3, times)
		nearLab(t, "sag", s.Lab, work.Lab(n), 1e-9)
		near(t, "change", float64(s.Change), float64(Difference(work.Lab(3), work.Lab(n))), 1e-9)
		near(t, "darker", s.Darker, work.Lab(3).L-work.Lab(n).L, 1e-9)
		if want, on := work.Reflectance(n).XYZ().Screen(); s.Screen != want || s.OnScreen != on {
			t.Errorf("a sag %v times as thick is %v, want %v", times, s.Screen, want)
		}
	}
}

// A thicker place is darker, and looks further from the rest.
func TestThickerSagsAreWorse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		work := anyCoating(t)
		k := q.Number(rapid.Float64Range(1, 2).Draw(t, "times"))
		some, more := work.Sag(3, k), work.Sag(3, k+0.5)
		if some.Darker < 0 || more.Darker < some.Darker {
			t.Errorf("%v times as thick loses %v of L, %v times loses %v", k, some.Darker, k+0.5, more.Darker)
		}
	})
}
