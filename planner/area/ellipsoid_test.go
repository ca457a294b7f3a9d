package area

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	q "coatwright/quantity"
)

// carlsonF and carlsonD are the symmetric elliptic integrals of the first and
// second kind, by duplication (Carlson 1995, Numerical Algorithms 10, 13-26).
func carlsonF(x, y, z float64) float64 {
	for {
		mean := (x + y + z) / 3
		if d := max(math.Abs(x-mean), math.Abs(y-mean), math.Abs(z-mean)) / mean; d < 1e-8 {
			return 1 / math.Sqrt(mean)
		}
		l := math.Sqrt(x*y) + math.Sqrt(x*z) + math.Sqrt(y*z)
		x, y, z = (x+l)/4, (y+l)/4, (z+l)/4
	}
}

func carlsonD(x, y, z float64) float64 {
	sum, scale := 0.0, 1.0
	for {
		mean := (x + y + 3*z) / 5
		if d := max(math.Abs(x-mean), math.Abs(y-mean), math.Abs(z-mean)) / mean; d < 1e-8 {
			return 3*sum + scale/(mean*math.Sqrt(mean))
		}
		l := math.Sqrt(x*y) + math.Sqrt(x*z) + math.Sqrt(y*z)
		sum += scale / (math.Sqrt(z) * (z + l))
		scale /= 4
		x, y, z = (x+l)/4, (y+l)/4, (z+l)/4
	}
}

// carlsonG is that of which an ellipsoid's surface is made.
func carlsonG(x, y, z float64) float64 {
	return (z*carlsonF(x, y, z) - (x-z)*(y-z)*carlsonD(x, y, z)/3 + math.Sqrt(x*y/z)) / 2
}

// exactEllipsoid is the surface of an ellipsoid of half axes a, b, c:
// S = 4 π R_G(a²b², a²c², b²c²) (DLMF 19.33.1, from memory).
func exactEllipsoid(a, b, c float64) float64 {
	return 4 * math.Pi * carlsonG(a*a*b*b, a*a*c*c, b*b*c*c)
}

// Published: Carlson (1995), section 5, as in the tests of the R package Carlson.
func TestCarlson(t *testing.T) {
	near(t, "R_G(0, 16, 16)", carlsonG(0, 16, 16), math.Pi, 1e-12)
	near(t, "R_G(2, 3, 4)", carlsonG(2, 3, 4), 1.7255030280692, 1e-12)
	near(t, "R_G(0, 0.0796, 4)", carlsonG(0, 0.0796, 4), 1.0284758090288, 1e-12)
}

// The exact integrals worked independently, and published (see TestArea).
func TestExactEllipsoid(t *testing.T) {
	for _, c := range []struct{ a, b, c, want, tolerance float64 }{
		{3, 4, 5, 199.4552, 1e-6},
		{3, 3, 5, 165.793, 1e-5},
		{5, 5, 3, 234.736, 1e-5},
		{1.1, 1.2, 4.7, 54.6901240998, 1e-11},
	} {
		near(t, "exact", exactEllipsoid(c.a, c.b, c.c), c.want, c.tolerance)
		near(t, "crown, twice", 2*crown(c.a, c.b, c.c, 0), exactEllipsoid(c.a, c.b, c.c), 3e-6)
	}
}

// Thomsen's formula is at most 1.061 % off, whatever the axes.
func TestThomsen(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		axis := rapid.Float64Range(0.01, 2)
		s := Ellipsoid{Length: q.Length(axis.Draw(t, "l")), Width: q.Length(axis.Draw(t, "w")), Height: q.Length(axis.Draw(t, "h"))}
		exact := q.Area(exactEllipsoid(float64(s.Length)/2, float64(s.Width)/2, float64(s.Height)/2))
		if r := Range(&s); !(r.Low <= exact*(1+1e-5) && exact <= r.High*(1+1e-5)) {
			t.Errorf("%v: %v to %v m2, exact %v m2", s, r.Low, r.High, exact)
		}
	})
}

// spheroidBand is the surface of a spheroid of half axes a, a, c from its middle
// up to height z, in closed form: 2 π a ∫ √(1 + (a² - c²) z²/c⁴) dz.
func spheroidBand(a, c, z float64) float64 {
	g := (a*a - c*c) / (c * c * c * c)
	u := math.Sqrt(math.Abs(g)) * z
	switch {
	case u < 1e-6:
		return 2 * math.Pi * a * z
	case g > 0:
		return math.Pi * a / math.Sqrt(g) * (u*math.Sqrt(1+u*u) + math.Asinh(u))
	default:
		return math.Pi * a / math.Sqrt(-g) * (u*math.Sqrt(1-u*u) + math.Asin(u))
	}
}

func TestCrown(t *testing.T) {
	for _, c := range []struct {
		name       string
		a, b, c, k float64
		want       float64
		tolerance  float64
	}{
		{"ball, cut in the middle", 1, 1, 1, 0, 2 * math.Pi, 1e-12},
		{"ball, cut below: 2 π R h", 1, 1, 1, 0.4, 2 * math.Pi * 1.4, 1e-12},
		{"oblate", 0.14, 0.14, 0.1, 0.04, spheroidBand(0.14, 0.1, 0.1) + spheroidBand(0.14, 0.1, 0.04), 1e-8},
		{"prolate", 0.11, 0.11, 0.16, 0.05, spheroidBand(0.11, 0.16, 0.16) + spheroidBand(0.11, 0.16, 0.05), 1e-6},
		{"flat as a dish", 1, 1, 0.05, 0, spheroidBand(1, 0.05, 0.05), 1e-6},
		{"as flat as a disc", 1, 1, 1e-4, 0, math.Pi, 1e-3},
		{"three axes", 0.14, 0.11, 0.15, 0, exactEllipsoid(0.14, 0.11, 0.15) / 2, 1e-7},
	} {
		near(t, c.name, crown(c.a, c.b, c.c, c.k), c.want, c.tolerance)
	}
	// What lies above a plane and what lies below make up the whole.
	near(t, "two crowns", crown(0.14, 0.11, 0.15, 0.06)+crown(0.14, 0.11, 0.15, -0.06), exactEllipsoid(0.14, 0.11, 0.15), 1e-6)
}

func TestHelmet(t *testing.T) {
	half := exactEllipsoid(0.14, 0.11, 0.15) / 2
	for _, c := range []struct {
		name      string
		helmet    Helmet
		want      float64
		tolerance float64
	}{
		{"from its length and width", Helmet{Length: 0.28, Width: 0.22, Height: 0.15}, half, 1e-6},
		{"with something below", Helmet{Length: 0.28, Width: 0.22, Height: 0.19, Below: 0.04}, half + spheroidBand(0.125, 0.15, 0.04), 0.01}, // of a round one as wide on average
		{"half a ball from its circumference", Helmet{Circumference: math.Pi * 0.3, Height: 0.15}, 2 * math.Pi * 0.0225, 1e-9},
		{"inside of half a ball", Helmet{Circumference: math.Pi * 0.3, Height: 0.15, Shell: Shell{Inside, 0.01}},
			2*math.Pi*0.14*0.14 + math.Pi*(0.0225-0.0196), 1e-9},
		{"both sides of half a ball", Helmet{Circumference: math.Pi * 0.3, Height: 0.15, Shell: Shell{Both, 0.01}},
			2*math.Pi*(0.0225+0.0196) + math.Pi*(0.0225-0.0196), 1e-9},
		// Against a dome of that ball: R 0.15, h 0.2.
		{"most of a ball", Helmet{Length: 0.3, Width: 0.3, Height: 0.2, Below: 0.05, Shell: Shell{Both, 0.01}},
			float64((&Dome{Diameter: 2 * 0.141421356, Height: 0.2, Shell: Shell{Both, 0.01}}).Area()), 1e-8},
	} {
		if err := c.helmet.Check(); err != nil {
			t.Errorf("%s: %v", c.name, err)
		}
		near(t, c.name, float64(c.helmet.Area()), c.want, c.tolerance)
	}
}

// What is said of the circumference: of a shell a quarter longer than wide it
// gives at most 1 % too much.
func TestHelmetByCircumference(t *testing.T) {
	for _, height := range []q.Length{0.1, 0.12, 0.15, 0.18} {
		oval := Helmet{Length: 0.275, Width: 0.22, Height: height}
		round := Helmet{Circumference: q.Length(aroundEllipse(0.1375, 0.11)), Height: height}
		if r := float64(round.Area() / oval.Area()); r < 1 || r > 1.01 {
			t.Errorf("%v m high: %.4f of the oval one", height, r)
		}
	}
}
