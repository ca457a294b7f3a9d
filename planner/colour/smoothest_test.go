package colour

import (
	"math"
	"math/rand/v2"
	"testing"

	"pgregory.net/rapid"
)

// checkSmoothest fails unless r is a reflectance that looks like c.
func checkSmoothest(t tb, c XYZ, r Spectrum, off DeltaE) {
	t.Helper()
	nearXYZ(t, "the spectrum", r.XYZ(), c, 1e-6)
	if off != 0 {
		t.Errorf("the spectrum for %+v is off by %v", c, off)
	}
	for band, share := range r {
		if !(share >= 0 && share <= 1) {
			t.Errorf("the spectrum for %+v reflects %v at band %d", c, share, band)
		}
	}
}

// Every colour of a screen has a spectrum that looks exactly like it: a grid of
// all its sides, and 2000 at random.
func TestEveryScreenColourHasASpectrum(t *testing.T) {
	check := func(c Screen) {
		r, off := SwatchOf(c.XYZ()).Reflectance()
		checkSmoothest(t, c.XYZ(), r, off)
		if back, exact := r.XYZ().Screen(); back != c || !exact {
			t.Errorf("%v comes back as %v", c, back)
		}
	}
	for r := 0; r < 256; r += 17 {
		for g := 0; g < 256; g += 17 {
			for b := 0; b < 256; b += 17 {
				check(Screen{uint8(r), uint8(g), uint8(b)})
			}
		}
	}
	random := rand.New(rand.NewPCG(1931, 2))
	for range 2000 {
		check(Screen{uint8(random.IntN(256)), uint8(random.IntN(256)), uint8(random.IntN(256))})
	}
}

// What Newton's method alone does not find from an even spectrum on.
func TestHardColours(t *testing.T) {
	for _, text := range []string{"#0010ef", "#0f0fff", "#1f00df", "#1f00ef", "#ffff30", "#ffffff", "#000000", "#ffff00", "#00ff00", "#0000ff", "#010000"} {
		s := swatch(t, text)
		r, off := s.Reflectance()
		checkSmoothest(t, s.Colour, r, off)
	}
}

// slope is what the method makes least: that of Burns' z, squared and summed.
func slope(r Spectrum) float64 {
	z := func(share float64) float64 { return math.Atanh(2*share - 1) }
	var out float64
	for i := 1; i < Bands; i++ {
		d := z(r[i]) - z(r[i-1])
		out += d * d
	}
	return out
}

// Any reflectance is one that looks as it does, so the smoothest that looks so
// must exist, and be no steeper.
func TestNoneIsSmoother(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var s Spectrum
		z := rapid.Float64Range(-2, 2).Draw(t, "start")
		for i, step := range rapid.SliceOfN(rapid.Float64Range(-0.4, 0.4), Bands, Bands).Draw(t, "steps") {
			z += step
			s[i] = (math.Tanh(z) + 1) / 2
		}
		r, off := SwatchOf(s.XYZ()).Reflectance()
		checkSmoothest(t, s.XYZ(), r, off)
		if slope(r) > slope(s)+1e-9 {
			t.Errorf("the smoothest has a slope of %v, but there is one of %v", slope(r), slope(s))
		}
	})
}

// Real surfaces too are steeper than the smoothest of their colour, and not far
// from it: the reflectance of metals (see testdata/colour/README.md).
func TestSmoothestOfMetals(t *testing.T) {
	for _, symbol := range []string{"Al", "Cu", "Au", "Ag"} {
		real := metal(t, symbol)
		r, off := SwatchOf(real.XYZ()).Reflectance()
		checkSmoothest(t, real.XYZ(), r, off)
		if slope(r) > slope(real) {
			t.Errorf("%s is smoother than the smoothest", symbol)
		}
		for i := 4; i < 33; i++ { // 420 to 700 nm; beyond, no eye could tell
			near(t, symbol, r[i], real[i], 0.10)
		}
	}
}

// At a least slope the forces of the three sums hold the slopes in balance: for
// Burns' F = 0 the gradient must be made of the rows of T alone.
func TestSmoothestIsInBalance(t *testing.T) {
	s := swatch(t, "#b01020")
	a, even := (&aim{observer().weights, s.Colour.sums()}).normal()
	at, ok := newton(point{logits: flat(math.Log(even / (1 - even)))}, a)
	if !ok {
		t.Fatal("no balance found")
	}
	b := a.balance(&at)
	for i, g := range b.gradient {
		near(t, "gradient", g, 0, 1e-7)
		pull := at.pull(a, i)
		bare := 0.0
		if i > 0 {
			bare += at.logits[i] - at.logits[i-1]
		}
		if i < Bands-1 {
			bare += at.logits[i] - at.logits[i+1]
		}
		near(t, "slopes against forces", bare, -b.give[i]*pull, 1e-7)
	}
}

// Greys reflect evenly.
func TestSmoothestOfGreys(t *testing.T) {
	for _, y := range []float64{0.02, 1, 18, 60, 99} {
		r, off := SwatchOf(flat(y / 100).XYZ()).Reflectance()
		checkSmoothest(t, flat(y/100).XYZ(), r, off)
		for _, share := range r {
			near(t, "grey", share, y/100, 1e-8)
		}
	}
}

// No surface looks like these; the answer keeps the lightness, is a spectrum,
// and says how far off it is.
func TestNoSurfaceLooksSo(t *testing.T) {
	for _, c := range []Lab{{50, 120, 100}, {95, -80, 90}, {30, 60, -128}, {130, 0, 0}, {99.9, 40, 0}, {-5, 0, 0}} {
		r, off := SwatchOf(c.XYZ()).Reflectance()
		if off <= 0 {
			t.Errorf("%+v has the spectrum %v", c, r)
		}
		if got := r.XYZ().Lab(); c.L > 0 && c.L < 99 {
			near(t, "lightness", got.L, c.L, 0.01)
		}
		for _, share := range r {
			if !(share >= 0 && share <= 1) {
				t.Errorf("%+v reflects %v", c, share)
			}
		}
	}
}

// The system that each step solves, by multiplying its solution out again.
func TestBorderedSystem(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x := rapid.Float64Range(-1, 1)
		var b bordered
		var r column
		var s [border]float64
		for i := range r {
			b.diagonal[i] = rapid.Float64Range(2.1, 4).Draw(t, "diagonal")
			r[i] = x.Draw(t, "right side")
			for j := range b.wide {
				b.wide[j][i] = x.Draw(t, "wide")
			}
		}
		for i := range s {
			s[i] = x.Draw(t, "right side")
			b.corner[i][i] = rapid.Float64Range(-30, -20).Draw(t, "corner") // keeps it far from singular
		}
		in, out := b.solve(&r, s)
		for i := range r {
			got := b.diagonal[i] * in[i]
			if i > 0 {
				got -= in[i-1]
			}
			if i < inner-1 {
				got -= in[i+1]
			}
			for j := range out {
				got += b.wide[j][i] * out[j]
			}
			near(t, "row", got, r[i], 1e-9)
		}
		for j := range out {
			got := inside(&b.wide[j], &in)
			for k := range out {
				got += b.corner[j][k] * out[k]
			}
			near(t, "border row", got, s[j], 1e-9)
		}
	})
}
