package film

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	q "coatwright/quantity"
)

// integrated is the reflectance over a ground by the differential equation that
// Kubelka and Munk set out from, dR/dX = S - 2(K + S)R + S R^2, in steps of
// Runge and Kutta's fourth order.
func integrated(o Optics, ground float64) float64 {
	const steps = 4000
	k, s, h := float64(o.Absorption), float64(o.Scattering), 1.0/steps
	slope := func(r float64) float64 { return s - 2*(k+s)*r + s*r*r }
	r := ground
	for range steps {
		k1 := slope(r)
		k2 := slope(r + h/2*k1)
		k3 := slope(r + h/2*k2)
		k4 := slope(r + h*k3)
		r += h / 6 * (k1 + 2*k2 + 2*k3 + k4)
	}
	return r
}

// The solution against the equation it solves (Kubelka and Munk, 1931).
func TestOverSolvesTheEquation(t *testing.T) {
	for _, o := range []Optics{{0, 0}, {0, 1}, {1, 0}, {0.01, 5}, {0.3, 2}, {2, 2}, {5, 0.5}, {1e-9, 10}} {
		for _, ground := range []float64{0, 0.05, 0.5, 0.8, 1} {
			got := float64(o.Over(q.Fraction(ground)))
			if want := integrated(o, ground); math.Abs(got-want) > 1e-9 {
				t.Errorf("%+v over %g reflects %.12g, want %.12g", o, ground, got, want)
			}
		}
	}
}

// The forms that the general solution has at its limits, in any textbook on it.
func TestOverAtItsLimits(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		ground, x := anyOf[q.Fraction](t, "ground", 0, 1), anyOf[q.Number](t, "power", 0, 20)
		g, p := float64(ground), float64(x)
		near(t, "no film", float64(Optics{}.Over(ground)), g, 0)
		near(t, "no absorption", float64(Optics{0, x}.Over(ground)), (p*(1-g)+g)/(p*(1-g)+1), 1e-12)
		if got, want := float64(Optics{x, 0}.Over(ground)), g*math.Exp(-2*p); math.Abs(got-want) > 1e-14 {
			t.Errorf("without scattering %v, want %v", got, want)
		}
		r := anyOf[q.Fraction](t, "reflectivity", 0.01, 0.95)
		near(t, "endless film", float64(OpticsOf(r, 1e4).Over(ground)), float64(r), 1e-9)
	})
}

// The printed form, ReflectanceFormula, where it can be evaluated.
func TestOverAsPrinted(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		k, s := rapid.Float64Range(0.01, 5).Draw(t, "absorption"), rapid.Float64Range(0.1, 10).Draw(t, "scattering")
		g := rapid.Float64Range(0, 1).Draw(t, "ground")
		a := 1 + k/s
		b := math.Sqrt(a*a - 1)
		coth := 1 / math.Tanh(b*s)
		want := (1 - g*(a-b*coth)) / (a - g + b*coth)
		near(t, "reflectance", float64(Optics{q.Number(k), q.Number(s)}.Over(q.Fraction(g))), want, 1e-9)
	})
}

// S of a film from its reflectance over ideal white and black: Curtis and others,
// Computer-Generated Watercolor, SIGGRAPH 1997; the formula from memory.
func TestOverAgainstItsInverse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := Optics{anyOf[q.Number](t, "absorption", 0.02, 2), anyOf[q.Number](t, "scattering", 0.1, 2)}
		rw, rb := float64(o.Over(1)), float64(o.Over(0))
		a := (rw + (rb-rw+1)/rb) / 2
		b := math.Sqrt(a*a - 1)
		s := math.Atanh(b*(1-rw)/(b*b-(a-rw)*(a-1))) / b
		near(t, "scattering", s, float64(o.Scattering), 1e-5)
		near(t, "absorption", s*(a-1), float64(o.Absorption), 1e-5)
	})
}

// A film over a film is a film: two of one paint are as one as thick as both.
func TestFilmOverFilm(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := Optics{anyOf[q.Number](t, "absorption", 0, 5), anyOf[q.Number](t, "scattering", 0, 10)}
		part, ground := anyOf[q.Number](t, "part", 0, 1), anyOf[q.Fraction](t, "ground", 0, 1)
		below := Optics{o.Absorption * part, o.Scattering * part}
		above := Optics{o.Absorption - below.Absorption, o.Scattering - below.Scattering}
		got := above.Over(below.Over(ground))
		if math.Abs(float64(got-o.Over(ground))) > 1e-12 {
			t.Errorf("in two films %v, in one %v", got, o.Over(ground))
		}
		if got < 0 || got > 1 {
			t.Errorf("reflectance %v", got)
		}
	})
}

func TestOpticsOf(t *testing.T) {
	// K/S of 50 % is 0.25: Kubelka and Munk's function, worked independently.
	near(t, "absorption", float64(OpticsOf(0.5, 4).Absorption), 1, 1e-12)
	near(t, "ideal white", float64(OpticsOf(1, 4).Absorption), 0, 0)
}

func BenchmarkOver(b *testing.B) {
	o := OpticsOf(0.8, 5)
	for b.Loop() {
		o.Over(0.8)
	}
}
