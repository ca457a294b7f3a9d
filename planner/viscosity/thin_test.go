package viscosity

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	q "coatwright/quantity"
)

// Worked independently for a paint of 120 mm2/s and a thinner of 0.7, a tenth of
// the paint's volume, which is 1/11 of the mixture:
// exp((10 ln 120 + ln 0.7)/11) = 75.18, and by blending number 45.26.
func TestRules(t *testing.T) {
	e, err := Estimate(120*mm2, 0.7*mm2)
	if err != nil {
		t.Fatal(err)
	}
	r := e.Viscosity(0.1)
	near(t, "log rule", float64(r.High)/mm2, 75.18, 0.005)
	near(t, "blending number", float64(r.Low)/mm2, 45.26, 0.005)
}

// Equal weights of the log rule are the geometric mean.
func TestEvenMixture(t *testing.T) {
	e, err := Estimate(100*mm2, 1*mm2)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "half and half", float64(e.Viscosity(1).High)/mm2, 10, 1e-9)
}

// Worked by hand: with 2.5 for α, a fifth of thinner counts half, and
// exp((ln 100 + 0.5 ln 1)/1.5) = 100^(2/3).
func TestPull(t *testing.T) {
	c := Thinning{Paint: 100 * mm2, Thinner: 1 * mm2, Pull: 2.5}
	near(t, "viscosity", float64(c.Viscosity(0.2).Low)/mm2, math.Pow(100, 2.0/3), 1e-9)
	near(t, "α found back", c.pull(c.Viscosity(0.2).Low, 0.2), 2.5, 1e-9)
}

func TestEstimateRefuses(t *testing.T) {
	for _, c := range []struct{ paint, thinner q.Viscosity }{
		{1, 2}, {1, 1}, {1, 0}, {1, -1}, {0.5, 0.2}, {0.1, 0.1}, {0, 0},
		{q.Viscosity(math.NaN()), 1}, {1, q.Viscosity(math.NaN())}, {q.Viscosity(math.Inf(1)), 1},
	} {
		if e, err := Estimate(c.paint*mm2, c.thinner*mm2); err == nil {
			t.Errorf("a paint of %v and a thinner of %v mm2/s give %v", c.paint, c.thinner, e)
		}
	}
	_, err := Estimate(50*mm2, 60*mm2)
	const want = "found a paint of 50 mm²/s and a thinner of 60 mm²/s; expected a thinner over 0.2 mm²/s and a paint thicker than it"
	if err == nil || err.Error() != want {
		t.Errorf("error is\n\t%v\nwant\n\t%s", err, want)
	}
}

func TestShare(t *testing.T) {
	e, err := Estimate(120*mm2, 0.7*mm2)
	if err != nil {
		t.Fatal(err)
	}
	for _, target := range []q.Viscosity{120 * mm2, 200 * mm2} {
		if got, err := e.Share(target); err != nil || got != (q.Range[q.Fraction]{}) {
			t.Errorf("a paint of 120 needs %v, %v of thinner to come to %s", got, err, squareMillimetres(target))
		}
	}
	for _, target := range []q.Viscosity{0.7 * mm2, 0.1 * mm2, 0, q.Viscosity(math.NaN())} {
		if got, err := e.Share(target); err == nil {
			t.Errorf("%s is reached with %v", squareMillimetres(target), got)
		}
	}
	_, err = e.Share(0.5 * mm2)
	const want = "found 0.5 mm²/s as the aim; expected more than the thinner's own 0.7 mm²/s, which no share of it can reach"
	if err == nil || err.Error() != want {
		t.Errorf("error is\n\t%v\nwant\n\t%s", err, want)
	}
}

func TestCalibratedRefuses(t *testing.T) {
	ford4 := cup(t, "Ford 4")
	for _, c := range []struct {
		name           string
		paint, thinned q.Time
		share          q.Fraction
		want           string
	}{
		{"too fast", 12, 30, 0.1, "the paint from the can: found 12 s with the Ford 4 cup, expected 20 to 100 s; run the Ford 1 cup instead: 94 s"},
		{"thinned too fast", 40, 12, 0.1, "the thinned paint: found 12 s with the Ford 4 cup, expected 20 to 100 s; run the Ford 1 cup instead: 94 s"},
		{"turned round", 30, 40, 0.1, "found 40 s Ford 4 with 10 % of thinner after 30 s Ford 4 without; expected less, and more than the thinner's own 0.7 mm²/s: stir, let it stand, and read both at one temperature"},
		{"no change", 40, 40, 0.1, "found 40 s Ford 4 with 10 % of thinner after 40 s Ford 4 without; expected less, and more than the thinner's own 0.7 mm²/s: stir, let it stand, and read both at one temperature"},
		{"no thinner", 40, 30, 0, "found 0 % of thinner in the thinned paint; expected more than 0 %, of the paint's own volume"},
		{"less than none", 40, 30, -0.1, "found -10 % of thinner in the thinned paint; expected more than 0 %, of the paint's own volume"},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := Calibrated(Reading{ford4, c.paint}, Reading{ford4, c.thinned}, c.share, 0.7*mm2)
			if err == nil || err.Error() != c.want {
				t.Errorf("error is\n\t%v\nwant\n\t%s", err, c.want)
			}
		})
	}
	if _, err := Calibrated(Reading{ford4, 40}, Reading{ford4, 30}, 0.1, 0); err == nil {
		t.Error("a thinner of no viscosity is no error")
	}
	if _, err := Calibrated(Reading{ford4, 40}, Reading{ford4, 30}, q.Fraction(math.Inf(1)), 0.7*mm2); err == nil {
		t.Error("a share without end is no error")
	}
}

// A thinner that is half or twice as thick as was thought moves what 20 % do, as
// foreseen from a reading with 10 %, by less than 3 % of a stopwatch's seconds.
func TestThinnerNeedNotBeKnownWell(t *testing.T) {
	ford4 := cup(t, "Ford 4")
	foreseen := func(thinner q.Viscosity) float64 {
		c, err := Calibrated(Reading{ford4, 60}, Reading{ford4, 35}, 0.1, thinner)
		if err != nil {
			t.Fatal(err)
		}
		return float64(ford4.time(c.Viscosity(0.2).Low))
	}
	middle := foreseen(1 * mm2)
	for _, thinner := range []q.Viscosity{0.5 * mm2, 2 * mm2} {
		near(t, "20 % of "+squareMillimetres(thinner), foreseen(thinner), middle, 0.03*middle)
	}
}

func anyThinning(t *rapid.T) Thinning {
	thinner := q.Viscosity(mm2 * rapid.Float64Range(0.3, 5).Draw(t, "thinner"))
	e, err := Estimate(thinner*q.Viscosity(rapid.Float64Range(2, 500).Draw(t, "times as thick")), thinner)
	if err != nil {
		t.Fatal(err)
	}
	if rapid.Bool().Draw(t, "calibrated") {
		e.Pull = rapid.Float64Range(0.2, 5).Draw(t, "pull")
	}
	return e
}

func TestMoreThinnerIsThinner(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		e := anyThinning(t)
		share := q.Fraction(rapid.Float64Range(0, 2).Draw(t, "share"))
		more := share + q.Fraction(rapid.Float64Range(0.001, 1).Draw(t, "more"))
		r, s := e.Viscosity(share), e.Viscosity(more)
		if s.Low >= r.Low || s.High >= r.High || s.Low <= e.Thinner || r.High > e.Paint*(1+1e-9) || r.Low > r.High {
			t.Errorf("%+v with %v is %v, with %v %v", e, share, r, more, s)
		}
	})
}

func TestShareThereAndBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		e := anyThinning(t)
		share := q.Fraction(rapid.Float64Range(0.001, 2).Draw(t, "share"))
		v := e.Viscosity(share)
		for _, target := range []q.Viscosity{v.Low, v.High} {
			back, err := e.Share(target)
			if err != nil {
				t.Fatal(err)
			}
			if math.Abs(float64(back.Low-share)) > 1e-6*float64(share) && math.Abs(float64(back.High-share)) > 1e-6*float64(share) {
				t.Errorf("%v of thinner gives %v, which takes %v", share, target, back)
			}
		}
	})
}

func BenchmarkShare(b *testing.B) {
	e := Thinning{Paint: 120 * mm2, Thinner: 0.7 * mm2}
	for b.Loop() {
		if _, err := e.Share(60 * mm2); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkCalibrated(b *testing.B) {
	paint, thinned := Reading{cup(b, "Ford 4"), 60}, Reading{cup(b, "Ford 4"), 35}
	for b.Loop() {
		if _, err := Calibrated(paint, thinned, 0.1, 0.7*mm2); err != nil {
			b.Fatal(err)
		}
	}
}
