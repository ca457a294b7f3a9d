package area

import (
	"math"
	"testing"

	q "coatwright/quantity"
)

// near fails unless got is within a share tolerance of want.
func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance*math.Abs(want)) {
		t.Errorf("%s = %.9g, want %.9g within %g %%", what, got, want, 100*tolerance)
	}
}

const cm q.Length = 0.01

// Textbook geometry, worked independently, save where a source is given.
func TestArea(t *testing.T) {
	for _, c := range []struct {
		name      string
		shape     Shape
		want      float64 // m2
		tolerance float64
		form      string
	}{
		{"area", &Measured{0.55}, 0.55, 0, "solid"},
		{"plate, one face", &Plate{Length: 0.6, Width: 0.4}, 0.24, 1e-9, "panel"},
		{"plate, both faces", &Plate{Length: 0.6, Width: 0.4, Sheet: Sheet{BothFaces: true}}, 0.48, 1e-9, "panel"},
		{"plate with its edges", &Plate{Length: 0.6, Width: 0.4, Sheet: Sheet{BothFaces: true, Thickness: 0.02}}, 0.52, 1e-9, "panel"},
		{"disc", &Disc{Diameter: 0.5}, 0.19634954, 1e-7, "panel"},
		{"disc with its edge", &Disc{Diameter: 0.5, Sheet: Sheet{Thickness: 0.01}}, 0.21205750, 1e-7, "panel"},
		// Published: mathonline.edusoftmax.com/trapezoid.html: bases 12 and 8,
		// height 5, 50; sides of 10, 7, 6 and 7 are 30 round.
		{"trapezium", &Trapezium{Base: 12 * cm, Top: 8 * cm, Height: 5 * cm}, 50e-4, 1e-9, "panel"},
		{"trapezium with its edges", &Trapezium{Base: 10 * cm, Top: 6 * cm, Height: q.Length(math.Sqrt(45)) * cm, Sheet: Sheet{Thickness: 1 * cm}},
			1e-4 * (8*math.Sqrt(45) + 30), 1e-9, "panel"},
		{"triangle", &Trapezium{Base: 0.6, Height: 0.4, Sheet: Sheet{Thickness: 0.01}}, 0.12 + 0.01*(0.6+2*0.5), 1e-9, "panel"},

		{"cylinder, side", &Cylinder{Diameter: 0.2, Length: 0.5}, 0.31416, 2e-5, "tube"},
		{"cylinder, one end", &Cylinder{Diameter: 0.2, Length: 0.5, Ends: 1}, 0.34558, 2e-5, "tube"},
		{"cylinder, both ends", &Cylinder{Diameter: 0.2, Length: 0.5, Ends: 2}, 0.37699, 2e-5, "tube"},
		{"tube, inside", &Cylinder{Diameter: 0.2, Length: 0.5, Shell: Shell{Inside, 0.01}},
			math.Pi*0.18*0.5 + 2*math.Pi*0.01*0.19, 1e-9, "tube"},
		{"tube, both sides", &Cylinder{Diameter: 0.2, Length: 0.5, Shell: Shell{Both, 0.01}},
			math.Pi*(0.2+0.18)*0.5 + 2*math.Pi*0.01*0.19, 1e-9, "tube"},
		{"tin, inside", &Cylinder{Diameter: 0.2, Length: 0.5, Ends: 1, Shell: Shell{Inside, 0.01}},
			math.Pi*0.18*0.49 + math.Pi*0.09*0.09 + math.Pi*0.01*0.19, 1e-9, "tube"},
		{"thin tin, both sides", &Cylinder{Diameter: 0.2, Length: 0.5, Ends: 1, Shell: Shell{Painted: Both}}, 2 * 0.34558, 2e-5, "tube"},
		{"frustum", &Frustum{Diameter1: 0.6, Diameter2: 0.4, Length: 0.24}, 0.40841, 2e-5, "tube"},
		{"frustum the other way", &Frustum{Diameter1: 0.4, Diameter2: 0.6, Length: 0.24}, 0.40841, 2e-5, "tube"},
		{"frustum, closed", &Frustum{Diameter1: 0.6, Diameter2: 0.4, Length: 0.24, Ends: 2}, 0.81681, 2e-5, "tube"},
		{"frustum, wide end closed", &Frustum{Diameter1: 0.4, Diameter2: 0.6, Length: 0.24, Ends: 1}, 0.40841 + 0.28274, 2e-5, "tube"},
		// Published: surface-area-calculator-tan.vercel.app, radii 8 and 4 cm,
		// height 10 cm: side 406.00, in all 657.33 cm2, of a slant rounded to 10.77.
		{"frustum, published", &Frustum{Diameter1: 16 * cm, Diameter2: 8 * cm, Length: 10 * cm}, 406.00e-4, 1e-4, "tube"},
		{"frustum, published, closed", &Frustum{Diameter1: 16 * cm, Diameter2: 8 * cm, Length: 10 * cm, Ends: 2}, 657.33e-4, 1e-4, "tube"},
		// The slant is 5/4 of the height here, so a wall of 8 mm takes 10 mm off a
		// radius.
		{"frustum, inside", &Frustum{Diameter1: 0.8, Diameter2: 0.2, Length: 0.4, Shell: Shell{Inside, 0.008}},
			math.Pi*(0.39+0.09)*0.5 + math.Pi*(0.16-0.39*0.39) + math.Pi*(0.01-0.09*0.09), 1e-9, "tube"},
		{"cone", &Cone{Diameter: 0.6, Height: 0.4}, 0.47124, 2e-5, "solid"},
		{"cone, closed", &Cone{Diameter: 0.6, Height: 0.4, Ends: 1}, 0.47124 + 0.28274, 2e-5, "solid"},
		// A wall of 32 mm takes 40 mm off the radius, and leaves a cone of 13/15.
		{"cone, inside", &Cone{Diameter: 0.6, Height: 0.4, Shell: Shell{Inside, 0.032}},
			0.471238898*13*13/15/15 + math.Pi*(0.09-0.26*0.26), 1e-8, "solid"},

		{"box", &Box{0.6, 0.4, 0.02}, 0.52, 1e-9, "solid"},
		// Published: askanewquestion.com/questions/3898631, side 5 cm, height
		// 4.3 cm: 258.9 cm2 with both ends, 129 cm2 without.
		{"hexagonal prism", &Prism{Sides: 6, Side: 5 * cm, Length: 4.3 * cm, Ends: 2}, 258.9e-4, 1e-4, "tube"},
		{"hexagonal prism, sides", &Prism{Sides: 6, Side: 5 * cm, Length: 4.3 * cm}, 129e-4, 1e-9, "tube"},
		{"square prism", &Prism{Sides: 4, Side: 0.1, Length: 0.5, Ends: 2}, 0.22, 1e-9, "tube"},
		{"slab", &Slab{Outline: 0.12, Perimeter: 1.4, Thickness: 0.045}, 0.303, 1e-9, "solid"},

		{"sphere", &Sphere{0.5}, 0.78540, 2e-5, "solid"},
		{"dome", &Dome{Diameter: 0.6, Height: 0.1}, 0.31416, 2e-5, "solid"},
		{"half a ball", &Dome{Diameter: 0.5, Height: 0.25}, 0.39270, 2e-5, "solid"},
		{"half a ball, both sides", &Dome{Diameter: 0.5, Height: 0.25, Shell: Shell{Both, 0.01}},
			2*math.Pi*(0.0625+0.0576) + math.Pi*(0.0625-0.0576), 1e-9, "solid"},
		{"torus", &Ring{Diameter: 0.64, Depth: 0.04}, 0.23687, 2e-5, "tube"},
		// Published: Gibilisco, Mathematical and Physical Data, Equations, and
		// Rules of Thumb, figure 2.54: π² (r2² - r1²) of the outer and inner radius.
		{"torus, by its two radii", &Ring{Diameter: 0.7, Depth: 0.1}, math.Pi * math.Pi * (0.35*0.35 - 0.25*0.25), 1e-9, "tube"},
		{"quarter bend", &Ring{Diameter: 0.64, Depth: 0.04, Share: 0.25}, 0.23687 / 4, 2e-5, "tube"},
		{"square rim", &Ring{Diameter: 0.64, Depth: 0.04, Girth: 0.16}, 0.16 * math.Pi * 0.6, 1e-9, "tube"},

		// Published: planetcalc.com/149, semi-axes 3, 4, 5.
		{"ellipsoid, by the formula", &Ellipsoid{6, 8, 10, false}, 199.501704, 1e-8, "solid"},
		{"half of it", &Ellipsoid{6, 8, 5, true}, 199.501704 / 2, 1e-8, "solid"},
		// Published: hpmuseum.org forum, 28 May 2021, after Dieckmann (Bonn 2003):
		// semi-axes 1.1, 1.2, 4.7, by the formula and exact.
		{"ellipsoid, by the formula again", &Ellipsoid{2.2, 2.4, 9.4, false}, 54.4952199737, 1e-10, "solid"},
		{"ellipsoid, exact", &Ellipsoid{2.2, 2.4, 9.4, false}, 54.6901240998, thomsenError, "solid"},
		{"prolate, exact", &Ellipsoid{6, 6, 10, false}, 165.793, thomsenError, "solid"},
		{"oblate, exact", &Ellipsoid{10, 10, 6, false}, 234.736, thomsenError, "solid"},

		// 6 tubes of 28.6 mm and a taper of 31.8 to 28 mm, less 4 mean sections
		// of (6 · 642.42 + 702.15)/7 mm2.
		{"frame", &Frame{[]Tube{{Diameter: 0.0286, Length: 0.56, Count: 6}, {Diameter: 0.0318, To: 0.028, Length: 0.6}}, 4},
			0.3018945 + 0.0563604 - 4*0.00065096, 1e-6, "lattice"},
		{"paper", &Paper{0.062, 1, 0.9, 0.036}, 1.55, 1e-9, "solid"},
		{"roll", &Roll{0.45, 2.4, 0.1}, 0.972, 1e-9, "solid"},

		{"sum", &Sum{[]Piece{{&Cylinder{Diameter: 0.2, Length: 0.5}, 2}, {&Box{0.6, 0.4, 0.02}, 0}}}, 2*0.31416 + 0.52, 2e-5, "tube"},
		{"openings", &Cut{&Plate{Length: 0.6, Width: 0.4}, []Piece{{&Disc{Diameter: 0.1}, 2}, {&Measured{0.01}, 1}}},
			0.24 - 2*0.00785398 - 0.01, 1e-7, "panel"},
		{"openings through both faces", &Cut{&Plate{Length: 0.6, Width: 0.4, Sheet: Sheet{BothFaces: true}}, []Piece{{&Measured{0.01}, 1}}}, 0.46, 1e-9, "panel"},
		{"openings through a shell", &Cut{&Dome{Diameter: 0.6, Height: 0.1, Shell: Shell{Painted: Both}}, []Piece{{&Measured{0.01}, 1}}}, 2*0.31416 - 0.02, 2e-5, "solid"},
		{"opening in one face of a slab", &Cut{&Slab{0.12, 1.4, 0.045}, []Piece{{&Measured{0.01}, 0}}}, 0.293, 1e-9, "solid"},
		{"no openings", &Cut{Of: &Sphere{0.5}}, 0.78540, 2e-5, "solid"},
	} {
		t.Run(c.name, func(t *testing.T) {
			if err := c.shape.Check(); err != nil {
				t.Fatal(err)
			}
			near(t, "area", float64(c.shape.Area()), c.want, c.tolerance)
			if got := c.shape.Form(); got != c.form {
				t.Errorf("form = %q, want %q", got, c.form)
			}
		})
	}
}

// A joint hides a tube's section, and on a tube as thick 4/π of it: a quarter of
// the 16 r² that two tubes that cross have in common
// (mathworld.wolfram.com/SteinmetzSolid.html). By integration over the patch
// that a tube of radius r covers on one of radius R.
func TestJointHidesAboutASection(t *testing.T) {
	patch := func(r, R float64) float64 {
		return integral(func(angle float64) float64 { // x = r sin(angle)
			sin, cos := math.Sincos(angle)
			return 2 * r * r * cos * cos * R / math.Hypot(R*cos, math.Sqrt(R*R-r*r)*sin)
		}, -math.Pi/2, math.Pi/2, 400)
	}
	section := math.Pi
	near(t, "patch on a tube as thick, of the section", patch(1, 1)/section, 16.0/4/math.Pi, 1e-4)
	near(t, "patch on a wall, of the section", patch(1, 1e4)/section, 1, 1e-6)
	one := Frame{[]Tube{{Diameter: 2, Length: 10}}, 1}
	if got := float64(one.hidden()); got < patch(1, 1e4)*(1-1e-6) || got > patch(1, 1) {
		t.Errorf("a joint hides %v m2, want from %v to %v", got, patch(1, 1e4), patch(1, 1))
	}
}
