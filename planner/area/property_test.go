package area

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	q "coatwright/quantity"
)

// anyShape draws a shape of any kind that passes its check.
func anyShape(t *rapid.T) Shape {
	kinds := Kinds()
	return anyOf(t, kinds[rapid.IntRange(0, len(kinds)-1).Draw(t, "kind")])
}

func anyOf(t *rapid.T, k Kind) Shape {
	s := k.New()
	draw(t, s.Measures())
	if h, ok := uncut(s).(*Helmet); ok {
		if rapid.Bool().Draw(t, "round") {
			h.Length, h.Width, h.Circumference = 0, 0, h.Circumference+0.1
		} else {
			h.Length, h.Width, h.Circumference = h.Length+0.1, h.Width+0.1, 0
		}
	}
	if s.Check() != nil {
		t.Skip("cannot be")
	}
	return s
}

// draw measures something: what may be left out is left out half of the time,
// and else small against the rest, so that most shapes can be.
func draw(t *rapid.T, measures []Measure) {
	for _, m := range measures {
		if m.Optional && rapid.Bool().Draw(t, m.Key+" left out") {
			continue
		}
		length := rapid.Float64Range(0.1, 1)
		if m.Optional {
			length = rapid.Float64Range(0.001, 0.02)
		}
		switch into := m.Into.(type) {
		case *q.Length:
			*into = q.Length(length.Draw(t, m.Key))
		case *q.Area:
			*into = q.Area(rapid.Float64Range(0.001, 0.01).Draw(t, m.Key))
		case *q.Mass:
			*into = q.Mass(rapid.Float64Range(0.01, 1).Draw(t, m.Key))
		case *q.Fraction:
			*into = q.Fraction(rapid.Float64Range(0.01, 0.99).Draw(t, m.Key))
		case *int:
			*into = rapid.IntRange(m.Least, min(m.Most, 8)).Draw(t, m.Key)
		case *bool:
			*into = rapid.Bool().Draw(t, m.Key)
		case *Side:
			*into = Side(rapid.SampledFrom(Sides()).Draw(t, m.Key))
		case *[]Tube:
			*into = make([]Tube, rapid.IntRange(1, 5).Draw(t, m.Key))
			for i := range *into {
				draw(t, (*into)[i].Measures())
			}
		case *[]Piece:
			if m.Key == "openings" {
				*into = []Piece{{&Measured{q.Area(length.Draw(t, "opening") / 1000)}, 1}}
				continue
			}
			for range rapid.IntRange(1, 3).Draw(t, m.Key) {
				kinds := Kinds()
				k := kinds[rapid.IntRange(0, len(kinds)-2).Draw(t, "kind")]
				*into = append(*into, Piece{anyOf(t, k), rapid.IntRange(0, 3).Draw(t, "count")})
			}
		case nil:
			draw(t, m.Parts)
		}
	}
}

// scale makes every length k times as long, and every area k² times as large.
func scale(measures []Measure, k float64) {
	for _, m := range measures {
		switch into := m.Into.(type) {
		case *q.Length:
			*into *= q.Length(k)
		case *q.Area:
			*into *= q.Area(k * k)
		case *[]Tube:
			for i := range *into {
				scale((*into)[i].Measures(), k)
			}
		case *[]Piece:
			for _, p := range *into {
				scale(p.Shape.Measures(), k)
			}
		case nil:
			scale(m.Parts, k)
		}
	}
}

// same fails unless a and b differ by less than the share tolerance.
func same(t *rapid.T, what string, a, b q.Area, tolerance float64) {
	t.Helper()
	if !(math.Abs(float64(a/b)-1) <= tolerance) {
		t.Errorf("%s: %v m2 and %v m2", what, a, b)
	}
}

func TestAnyShape(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anyShape(t)
		a := s.Area()
		if r := Range(s); !(a > 0 && r.Low > 0 && r.Low <= a && a <= r.High) || math.IsInf(float64(a), 0) {
			t.Errorf("%T has an area of %v m2, in %v", s, a, r)
		}
		if form := s.Form(); form != panel && form != tube && form != lattice && form != solid {
			t.Errorf("%T has the form %q", s, form)
		}
		k := rapid.Float64Range(0.2, 5).Draw(t, "scale")
		scale(s.Measures(), k)
		same(t, "scaled", s.Area(), a*q.Area(k*k), 1e-9)
	})
}

func TestOpeningsReduce(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anyShape(t)
		share := rapid.Float64Range(0.01, 0.99).Draw(t, "share")
		hole := s.Area() * q.Area(share) / q.Area(faces(s))
		cut := &Cut{s, []Piece{{&Measured{hole}, 1}}}
		same(t, "what is left", cut.Area(), s.Area()*q.Area(1-share), 1e-9)
		if err := (&Cut{s, []Piece{{&Measured{hole}, int(1/share) + 1}}}).Check(); err == nil {
			t.Error("openings larger than the whole pass")
		}
	})
}

func TestSumOfParts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b, n := anyShape(t), anyShape(t), rapid.IntRange(1, 5).Draw(t, "count")
		sum := &Sum{[]Piece{{a, n}, {b, 0}}}
		same(t, "sum", sum.Area(), q.Area(n)*a.Area()+b.Area(), 1e-12)
	})
}

// The inside of a shell is at most as large as its outside, and both sides are
// the one and the other with the open edges once.
func TestInsideAndOutside(t *testing.T) {
	kinds := map[string]func(shell Shell, d, l q.Length, ends int) Shape{
		"cylinder": func(s Shell, d, l q.Length, e int) Shape { return &Cylinder{d, l, e, s} },
		"frustum":  func(s Shell, d, l q.Length, e int) Shape { return &Frustum{d, d / 2, l, e, s} },
		"cone":     func(s Shell, d, l q.Length, e int) Shape { return &Cone{d, l, min(e, 1), s} },
		"dome":     func(s Shell, d, l q.Length, e int) Shape { return &Dome{d, l, s} },
		"helmet": func(s Shell, d, l q.Length, e int) Shape {
			return &Helmet{Length: d, Width: d / 2, Height: d/2 + l, Below: l / 4, Shell: s}
		},
	}
	for name, shell := range kinds {
		t.Run(name, func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				d := q.Length(rapid.Float64Range(0.05, 1).Draw(t, "diameter"))
				l := q.Length(rapid.Float64Range(0.05, 1).Draw(t, "length"))
				e := rapid.IntRange(0, 2).Draw(t, "ends")
				wall := q.Length(rapid.Float64Range(0, 0.1).Draw(t, "wall"))
				with := func(side Side, t q.Length) Shape { return shell(Shell{side, t}, d, l, e) }
				if with(Outside, wall).Check() != nil {
					t.Skip("a wall that fills it")
				}
				outside, inside, both := with(Outside, wall).Area(), with(Inside, wall).Area(), with(Both, wall).Area()
				if inside > outside*(1+1e-12) {
					t.Errorf("inside %v m2, outside %v m2", inside, outside)
				}
				edges := outside - with(Outside, 0).Area()
				if edges < 0 {
					t.Errorf("edges of %v m2", edges)
				}
				same(t, "both sides", both+edges, outside+inside, 1e-9)
				same(t, "no wall", with(Inside, 0).Area(), with(Outside, 0).Area(), 1e-9)
			})
		})
	}
}

// Shapes that come to the same in the limit.
func TestShapesMeet(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := q.Length(rapid.Float64Range(0.01, 2).Draw(t, "diameter"))
		l := q.Length(rapid.Float64Range(0.01, 2).Draw(t, "length"))
		e := rapid.IntRange(0, 2).Draw(t, "ends")
		meet := func(what string, a, b Shape, tolerance float64) {
			t.Helper()
			same(t, what, a.Area(), b.Area(), tolerance)
		}

		meet("round ellipsoid and sphere", &Ellipsoid{d, d, d, false}, &Sphere{d}, 1e-9)
		meet("half of a round ellipsoid and dome", &Ellipsoid{d, d, d / 2, true}, &Dome{Diameter: d, Height: d / 2}, 1e-9)
		meet("dome and helmet", &Dome{Diameter: d, Height: d / 2}, &Helmet{Length: d, Width: d, Height: d / 2}, 1e-9)
		meet("flat dome and disc", &Dome{Diameter: d, Height: d * 1e-6}, &Disc{Diameter: d}, 1e-9)
		meet("straight frustum and cylinder", &Frustum{d, d, l, e, Shell{}}, &Cylinder{Diameter: d, Length: l, Ends: e}, 1e-9)
		meet("pointed frustum and cone", &Frustum{d, d * 1e-9, l, min(e, 1), Shell{}}, &Cone{Diameter: d, Height: l, Ends: min(e, 1)}, 1e-6)
		meet("flat cone and disc", &Cone{Diameter: d, Height: d * 1e-6}, &Disc{Diameter: d}, 1e-9)
		meet("thin box and both faces of a plate", &Box{d, l, 1e-12}, &Plate{d, l, Sheet{BothFaces: true}}, 1e-6)
		meet("box and plate with its edges", &Box{d, l, 0.01}, &Plate{d, l, Sheet{true, 0.01}}, 1e-9)
		meet("trapezium of equal edges and plate", &Trapezium{d, d, l, Sheet{true, 0.01}}, &Plate{d, l, Sheet{true, 0.01}}, 1e-9)
		meet("short cylinder and disc", &Cylinder{Diameter: d, Length: 0.01, Ends: 2}, &Disc{d, Sheet{true, 0.01}}, 1e-9)
		meet("prism of many sides and cylinder", &Prism{100, d * q.Length(math.Sin(math.Pi/100)), l, e}, &Cylinder{Diameter: d, Length: l, Ends: e}, 1e-3)
		meet("prism of four sides and box", &Prism{4, d, l, 2}, &Box{d, d, l}, 1e-9)
		meet("slab of a disc and disc", &Slab{q.Area(math.Pi / 4 * d * d), math.Pi * d, 0.01}, &Disc{d, Sheet{true, 0.01}}, 1e-9)
		meet("frame of one tube and cylinder", &Frame{[]Tube{{Diameter: d, Length: l}}, 0}, &Cylinder{Diameter: d, Length: l}, 1e-9)
		meet("tapered tube and frustum", &Frame{[]Tube{{Diameter: d, To: l, Length: l}}, 0}, &Frustum{l, d, l, 0, Shell{}}, 1e-9)
		// Pappus: a ring is a tube as long as its middle line.
		meet("ring and the tube it is bent of", &Ring{Diameter: l + d, Depth: d}, &Cylinder{Diameter: d, Length: math.Pi * l}, 1e-9)
		meet("paper and roll", &Paper{0.05, l, d, 0.05}, &Roll{d, l, 0}, 1e-9)
	})
}

// The nearer a prism comes to a cylinder round it, the larger it is.
func TestPrismGrowsToItsCylinder(t *testing.T) {
	last := q.Area(0)
	for n := 3; n <= maxSides; n++ {
		s := Prism{n, q.Length(math.Sin(math.Pi / float64(n))), 1, 2}
		if s.Area() <= last || s.Area() >= (&Cylinder{Diameter: 1, Length: 1, Ends: 2}).Area() {
			t.Errorf("%d sides: %v m2 after %v m2", n, s.Area(), last)
		}
		last = s.Area()
	}
}

// A taper by Pappus: its way round halfway times its slant.
func TestTaperByPappus(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		length := rapid.Float64Range(0.01, 1)
		a, b, l := length.Draw(t, "d1"), length.Draw(t, "d2"), length.Draw(t, "l")
		f := &Frustum{q.Length(a), q.Length(b), q.Length(l), 0, Shell{}}
		middle := (a/2 + b/2) / 2
		same(t, "taper", f.Area(), q.Area(2*math.Pi*middle*math.Sqrt(l*l+(a-b)*(a-b)/4)), 1e-9)
	})
}
