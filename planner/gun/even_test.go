package gun

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	q "coatwright/quantity"
)

func evenness(t *testing.T, p Profile, overlap q.Fraction) Evenness {
	t.Helper()
	e, err := p.Evenness(overlap)
	if err != nil {
		t.Fatal(err)
	}
	return e
}

// Published: "Coating uniformity with a uniform robotic spray gun velocity"
// (paperexplained.cn, abstract): with a parabolic distribution the least variance
// is about 0.0025 at an overlap of 0.29 to 0.31. That it is in films as thick as
// the middle of one pass, and for overlaps up to a half, is our reading.
func TestParabolaIsEvenestAtThreeTenths(t *testing.T) {
	best, at := math.Inf(1), 0.0
	for overlap := 0.0; overlap <= 0.5; overlap += 0.005 {
		e := evenness(t, Parabolic, q.Fraction(overlap))
		mean := 1 / (1.5 * (1 - overlap)) // of a coat, in middles of a pass
		if variance := math.Pow(float64(e.Deviation)*mean, 2); variance < best {
			best, at = variance, overlap
		}
	}
	near(t, "overlap", at, 0.30, 0.035)
	near(t, "variance", best, 0.0025, 0.05)
}

// Worked by hand. A flat fan is even where a whole number of passes lies over each
// spot, and has 2 or 3 where that is 2.5. A parabola that overlaps by a half adds
// 1.5 (1 - u^2) and 1.5 (1 - (1 - u)^2), halved: 0.75 at the edges, 1.125 between.
// A round cone without overlap is an ellipse, 4/pi of the mean in the middle.
func TestEvenness(t *testing.T) {
	for _, c := range []struct {
		profile     Profile
		overlap     q.Fraction
		thin, thick float64
	}{
		{Flat, 0, 1, 1}, {Flat, 0.5, 1, 1}, {Flat, 0.75, 1, 1}, {Flat, 0.6, 0.8, 1.2},
		{Parabolic, 0, 0, 1.5}, {Parabolic, 0.5, 0.75, 1.125}, {Round, 0, 0, 4 / math.Pi},
	} {
		e := evenness(t, c.profile, c.overlap)
		if math.Abs(float64(e.Thin)-c.thin) > 1e-5 || math.Abs(float64(e.Thick)-c.thick) > 1e-5 {
			t.Errorf("β = %g with %v %%: %v to %v, want %v to %v", float64(c.profile), c.overlap.Percent(), e.Thin, e.Thick, c.thin, c.thick)
		}
	}
}

func TestEvennessRefuses(t *testing.T) {
	_, err := Profile(0.5).Evenness(0.5)
	refuses(t, err, "profile of a pass: found β = 0.5; expected 1 (flat) to 20 (a spike)")
	_, err = Round.Evenness(1)
	refuses(t, err, "overlap: found 100 %; expected 0 to 99 %")
}

// The mean stays the mean, and many passes over each spot lie nearly even.
func TestEvennessProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := rapid.OneOf(rapid.Just(Flat), rapid.Map(rapid.Float64Range(1.2, 6), func(b float64) Profile { return Profile(b) })).Draw(t, "β")
		overlap := anyOf[q.Fraction](t, "overlap", 0, 0.95)
		e, err := p.Evenness(overlap)
		if err != nil {
			t.Fatal(err)
		}
		const eps = 1e-9
		if e.Thin < 0 || e.Thin > 1+eps || e.Thick < 1-eps || e.Deviation > max(1-e.Thin, e.Thick-1)+eps {
			t.Errorf("β = %g with %v %%: %+v", float64(p), overlap.Percent(), e)
		}
		if e, err := p.Evenness(0.95); err != nil || e.Thick-e.Thin > 0.11 {
			t.Errorf("β = %g with twenty passes over each spot: %+v, %v", float64(p), e, err)
		}
	})
}

func BenchmarkEvenness(b *testing.B) {
	for b.Loop() {
		if _, err := Round.Evenness(0.75); err != nil {
			b.Fatal(err)
		}
	}
}
