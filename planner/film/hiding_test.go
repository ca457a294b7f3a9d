package film

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	q "coatwright/quantity"
)

func anyHiding(t *rapid.T) Hiding {
	return Hiding{
		Ratio: anyOf[q.Fraction](t, "ratio", 0.05, 0.99), At: anyOf[q.Length](t, "film", 5*um, 100*um),
		Reflectivity: anyOf[q.Fraction](t, "reflectivity", 0.002, 1), Over: TestChart,
	}
}

func anyChart(t *rapid.T) Chart {
	black := anyOf[q.Fraction](t, "black", 0, 0.5)
	return Chart{black, anyOf[q.Fraction](t, "white", float64(black)+0.05, 1)}
}

func contrast(t tester, h Hiding, dry q.Length, over Chart) q.Fraction {
	t.Helper()
	c, err := h.Contrast(dry, over)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func filmFor(t tester, h Hiding, ratio q.Fraction, over Chart) q.Length {
	t.Helper()
	dry, err := h.Film(ratio, over)
	if err != nil {
		t.Fatal(err)
	}
	return dry
}

// Worked by hand. An ideal white (R∞ = 1) over 0 and 0.8 reflects SX/(SX + 1) and
// (0.2 SX + 0.8)/(0.2 SX + 1). At SX = 6 that is 0.857143 and 0.909091, so 0.942857.
// At SX = 12 it is 0.923077 and 0.941176, so 0.980769.
func TestContrastOfIdealWhite(t *testing.T) {
	h := Hiding{Ratio: 0.857142857142857 / 0.909090909090909, At: 15 * um, Reflectivity: 1, Over: TestChart}
	near(t, "twice the film", float64(contrast(t, h, 30*um, TestChart)), 0.980769, 1e-6)
	near(t, "no film", float64(contrast(t, h, 0, TestChart)), 0, 0)
	if n, err := h.Coats(15*um, TestChart); err != nil || n != 2 {
		t.Errorf("Coats = %d, %v, want 2", n, err)
	}
	// C = (0.2 SX^2 + SX)/(0.2 SX^2 + SX + 0.8) is 0.98 at SX^2 + 5 SX = 196.
	near(t, "film that hides", filmFor(t, h, Hidden, TestChart).Micrometres(), 15*(math.Sqrt(809)-5)/2/6, 1e-12)
}

// Film and Contrast undo each other, whatever the paint and the chart.
func TestHidingRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h, over := anyHiding(t), anyChart(t)
		near(t, "what was measured", float64(contrast(t, h, h.At, TestChart)), float64(h.Ratio), 1e-9)
		near(t, "where it was measured", float64(filmFor(t, h, h.Ratio, TestChart)), float64(h.At), 1e-9)
		bare := float64(over.Black / over.White)
		ratio := q.Fraction(bare + (0.995-bare)*rapid.Float64Range(0.01, 1).Draw(t, "ratio to reach"))
		near(t, "there and back", float64(contrast(t, h, filmFor(t, h, ratio, over), over)), float64(ratio), 1e-7)
	})
}

// The scattering that a ratio takes, found again by halving on the reflectances.
func TestScatteringByHalving(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h := anyHiding(t)
		low, high := q.Number(0), q.Number(1e5)
		for range 200 {
			middle := (low + high) / 2
			o := OpticsOf(h.Reflectivity, middle)
			if o.Over(h.Over.Black) < h.Ratio*o.Over(h.Over.White) {
				low = middle
			} else {
				high = middle
			}
		}
		got, err := h.scattering()
		if err != nil {
			t.Fatal(err)
		}
		near(t, "scattering", float64(got), float64(high), 1e-7)
	})
}

func TestContrastRisesToOne(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h, over := anyHiding(t), anyChart(t)
		dry := anyOf[q.Length](t, "dry", 0, 500*um)
		less := contrast(t, h, dry, over)
		more := contrast(t, h, dry+anyOf[q.Length](t, "more", 0, 500*um), over)
		if more < less-1e-12 || more > 1 || less < over.Black/over.White-1e-12 {
			t.Errorf("contrast ratio %v, then %v", less, more)
		}
		near(t, "far beyond", float64(contrast(t, h, 1, over)), 1, 1e-2)
	})
}

// A better paint, or a coat with more of it, never takes more coats.
func TestHidingCoatsFall(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h, build := anyHiding(t), anyOf[q.Length](t, "build", 5*um, 50*um)
		count := func(h Hiding, build q.Length) int {
			n, err := h.Coats(build, TestChart)
			if err != nil {
				t.Fatal(err)
			}
			return n
		}
		n := count(h, build)
		if got := count(h, build+anyOf[q.Length](t, "more", 0, 50*um)); got > n {
			t.Errorf("thicker coats take %d, thinner took %d", got, n)
		}
		better := h
		better.Ratio += (0.995 - h.Ratio) * anyOf[q.Fraction](t, "better", 0, 1)
		if got := count(better, build); got > n {
			t.Errorf("a better paint takes %d coats, the other %d", got, n)
		}
		darker := h
		darker.Ratio = min(h.Ratio, Hidden)
		n = count(darker, build)
		darker.Reflectivity *= anyOf[q.Fraction](t, "darker", 0.5, 1)
		if got := count(darker, build); got > n {
			t.Errorf("a darker paint of that ratio takes %d coats, the lighter %d", got, n)
		}
	})
}

// What Hiding's comment says of light and dark paints: worked independently, by
// another program.
func TestLightPaintNeedsMore(t *testing.T) {
	for _, c := range []struct {
		reflectivity q.Fraction
		want         float64
	}{{0.1, 1.314}, {0.5, 1.490}, {0.8, 1.787}, {1, 2.479}} {
		h := Hiding{Ratio: 0.92, At: 10 * um, Reflectivity: c.reflectivity, Over: TestChart}
		near(t, "film", filmFor(t, h, Hidden, TestChart).Micrometres()/10, c.want, 5e-4)
	}
}

// Grounds nearer to each other take less to hide.
func TestNearerGrounds(t *testing.T) {
	h := Hiding{Ratio: 0.92, At: 15 * um, Reflectivity: 0.3, Over: TestChart}
	far, nearer := filmFor(t, h, Hidden, TestChart), filmFor(t, h, Hidden, Chart{0.2, 0.4})
	if !(nearer > 0 && nearer < far) {
		t.Errorf("%v over near grounds, %v over black and white", nearer, far)
	}
	for _, even := range []Chart{{0.2, 0.4}, {0.5, 0.505}, {0.0001, 0.00011}, {0.999, 1}} {
		if got := filmFor(t, h, even.Black/even.White, even); got != 0 {
			t.Errorf("film for a ratio that the bare chart %v has = %v, want 0", even, got)
		}
		if got := filmFor(t, h, even.Black/even.White*0.9, even); got != 0 {
			t.Errorf("film for less than the bare chart %v has = %v, want 0", even, got)
		}
	}
}

func TestHidingRefuses(t *testing.T) {
	good := Hiding{Ratio: 0.92, At: 15 * um, Reflectivity: 0.3, Over: TestChart}
	for _, c := range []struct {
		spoil func(h *Hiding)
		says  string
	}{
		{func(h *Hiding) { h.Reflectivity = 0 }, "reflectivity of the paint: found 0 %; expected 0.1 to 100 %"},
		{func(h *Hiding) { h.At = 0 }, "dry film that was measured: found 0 um; expected above 0 um"},
		{func(h *Hiding) { h.Ratio = 1 }, "contrast ratio that was measured: found 100 %; expected above 0 %, which the bare chart has, and up to 99.99 %"},
		{func(h *Hiding) { h.Ratio, h.Over = 0.1, Chart{0.1, 0.8} }, "contrast ratio that was measured: found 10 %; expected above 12.5 %, which the bare chart has, and up to 99.99 %"},
		{func(h *Hiding) { h.Over = Chart{0.8, 0.1} }, "chart: found grounds that reflect 80 and 10 %; expected the darker first, both from 0 to 100 %"},
		{func(h *Hiding) { h.Over = Chart{} }, "chart: found grounds that reflect 0 and 0 %; expected the darker first, both from 0 to 100 %"},
	} {
		t.Run(c.says, func(t *testing.T) {
			h := good
			c.spoil(&h)
			_, err := h.Film(Hidden, TestChart)
			refuses(t, err, c.says)
			_, err = h.Contrast(15*um, TestChart)
			refuses(t, err, c.says)
			_, err = h.Coats(15*um, TestChart)
			refuses(t, err, c.says)
		})
	}
	_, err := good.Film(1, TestChart)
	refuses(t, err, "contrast ratio to reach: found 100 %; expected above 0 and up to 99.99 %")
	_, err = good.Film(Hidden, Chart{1, 2})
	refuses(t, err, "chart: found grounds that reflect 100 and 200 %; expected the darker first, both from 0 to 100 %")
	_, err = good.Contrast(-1*um, TestChart)
	refuses(t, err, "dry film: found -1 um; expected 0 um or more")
	_, err = good.Contrast(1*um, Chart{1, 2})
	refuses(t, err, "chart: found grounds that reflect 100 and 200 %; expected the darker first, both from 0 to 100 %")
}

func BenchmarkHidingContrast(b *testing.B) {
	h := Hiding{Ratio: 0.92, At: 15 * um, Reflectivity: 0.3, Over: TestChart}
	for b.Loop() {
		if _, err := h.Contrast(30*um, TestChart); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkHidingCoats(b *testing.B) {
	h := Hiding{Ratio: 0.92, At: 15 * um, Reflectivity: 0.3, Over: TestChart}
	for b.Loop() {
		if _, err := h.Coats(15*um, TestChart); err != nil {
			b.Fatal(err)
		}
	}
}
