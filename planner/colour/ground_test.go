package colour

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	q "coatwright/quantity"
)

// Fresnel's equations for light that meets a surface of n = 1.5 from within and
// from all sides, added up here: worked independently.
func TestScattering(t *testing.T) {
	const n, steps = 1.5, 200000
	var returned float64
	for i := range steps {
		// Lambert's law: as much light at each share of sin²; so sin² goes evenly.
		sin := math.Sqrt((float64(i) + 0.5) / steps)
		cos, out := math.Sqrt(1-sin*sin), n*sin
		if out >= 1 {
			returned += 1.0 / steps // total reflection
			continue
		}
		cosOut := math.Sqrt(1 - out*out)
		across := (n*cos - cosOut) / (n*cos + cosOut)
		along := (cos - n*cosOut) / (cos + n*cosOut)
		returned += (across*across + along*along) / 2 / steps
	}
	near(t, "returned", float64(Scattering), returned, 0.001)
	squarely := (n - 1) / (n + 1) * (n - 1) / (n + 1)
	near(t, "squarely", squarely, 0.04, 1e-9) // the 4 % that the docs leave out
}

func anyGround(t *rapid.T) Ground {
	return Ground{Reflectance: anySpectrum(t), Returned: q.Fraction(rapid.Float64Range(0, 0.7).Draw(t, "returned"))}
}

func TestSurfaceGoesBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := anyGround(t)
		below := g.below()
		for i, r := range above(below, g.Returned) {
			near(t, "there and back", r, g.Reflectance[i], 1e-12)
			if !(below[i] >= g.Reflectance[i] && below[i] <= 1) {
				t.Errorf("%v from outside is %v from within", g.Reflectance[i], below[i])
			}
		}
	})
}

// White and black look the same from both sides, a middle grey does not: from
// the formula, R 0.5 and k2 0.6 give Ri = 0.5/(0.4 + 0.3), worked independently.
func TestBelow(t *testing.T) {
	for _, c := range []struct{ seen, returned, want float64 }{
		{1, 0.6, 1}, {0, 0.6, 0}, {0.5, 0.6, 0.714286}, {0.5, 0, 0.5}, {0.04, 0.6, 0.094340},
	} {
		got := Ground{Reflectance: flat(c.seen), Returned: q.Fraction(c.returned)}.below()
		near(t, "from within", got[20], c.want, 1e-6)
	}
}

func TestNewGround(t *testing.T) {
	g, err := NewGround(swatch(t, "#c9ccd0"), Scattering)
	if err != nil || g.Returned != Scattering || g.Off != 0 {
		t.Errorf("NewGround = %+v, %v", g, err)
	}
	if back, _ := g.Reflectance.XYZ().Screen(); back.String() != "#c9ccd0" {
		t.Errorf("the ground looks like %v", back)
	}
	if g, err := NewGround(SwatchOf(Lab{50, 120, 100}.XYZ()), 0); err != nil || g.Off <= 0 {
		t.Errorf("a colour that no surface has makes a ground %v off, %v", g.Off, err)
	}
	for _, returned := range []float64{-0.1, 1, 60, math.NaN()} {
		if _, err := NewGround(swatch(t, "#c9ccd0"), q.Fraction(returned)); err == nil {
			t.Errorf("a surface that returns %v is no error", returned)
		}
	}
	_, err = NewGround(swatch(t, "#c9ccd0"), 2)
	const want = "a ground whose surface returns 200 % of the light; expected 0 or more and less than 100 %: 0 % over flakes that lie flat, 59.6 % over what scatters"
	if err == nil || err.Error() != want {
		t.Errorf("NewGround refuses with\n\t%v\nwant\n\t%s", err, want)
	}
}
