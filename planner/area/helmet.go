package area

import (
	"fmt"
	"math"

	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// HelmetFormula is how the area of a Helmet comes about.
var HelmetFormula = trace.Formula{
	Text: "outside: A = ∫∫ √((1 - u²)((b c cos φ)² + (a c sin φ)²) + (a b u)²) du dφ, φ once round, u from -k/c to 1, " +
		"a = l/2, b = w/2, c = h - k; a = b = C/(2 π) of a circumference C; " +
		"inside: with a - t, b - t, c - t; edge: the rim's outer ellipse less its inner one",
	Source: "surface integral of an ellipsoid, by Simpson's rule",
	Note:   noteShells,
}

// Helmet is an open shell: an ellipsoid cut off flat at its rim, at its widest
// line or somewhat below.
type Helmet struct {
	Length, Width q.Length // at the widest line, outside
	Circumference q.Length // instead of them, of a shell that is as good as round
	Height        q.Length // from the plane of the rim to the crown, outside
	Below         q.Length // of it, from the widest line down to the rim
	Shell
}

// Kind is "helmet".
func (*Helmet) Kind() Kind {
	return Kind{
		Key: "helmet", Title: "Helmet or open shell", Says: "A shell that rises from an oval rim and may narrow again below its widest line.",
		Omits: "The shell is taken as an ellipsoid cut off flat, its inside as one smaller by the wall all round: peaks, ridges and scoops come on top, and whatever is open is taken off as an opening.",
	}
}

// Measures are those of its widest line, its height and how it is painted.
func (s *Helmet) Measures() []Measure {
	return append([]Measure{
		lengthOf(&s.Length, "length", "l", "Length", "From front to back at the widest line, outside.").optional(),
		lengthOf(&s.Width, "width", "w", "Width", "From side to side at the widest line, outside.").optional(),
		lengthOf(&s.Circumference, "circumference", "C", "Circumference", "Instead of length and width: a tape round the outside at the widest line. A shell a quarter longer than wide has up to 1 % less area than this says.").optional(),
		lengthOf(&s.Height, "height", "h", "Height", "From the plane on which the rim stands straight up to the crown."),
		lengthOf(&s.Below, "below", "k", "Below the widest line", "How much of the height lies below the widest line; left out, the rim is the widest line.").orNone(),
	}, s.measures()...)
}

// Check refuses what lies outside the limits, too few measures or too many, a
// rim below the lowest point, and a wall that fills the shell.
func (s *Helmet) Check() error {
	if err := check(s.Measures()); err != nil {
		return err
	}
	switch both := s.Length > 0 && s.Width > 0; {
	case s.Circumference == 0 && !both:
		return &Error{"length", "no measures of the widest line", "length and width, or circumference"}
	case s.Circumference > 0 && (s.Length > 0 || s.Width > 0):
		return &Error{"circumference", q.Show(q.Metric, s.Circumference), "either length and width or circumference, not both"}
	case 2*s.Below >= s.Height:
		return &Error{"below", q.Show(q.Metric, s.Below), fmt.Sprintf("less than half the height, %s", q.Show(q.Metric, s.Height/2))}
	}
	a, b, c := s.axes()
	if most := q.Length(min(a, b, c-float64(s.Below))); s.Thickness >= most {
		return &Error{"thickness", q.Show(q.Metric, s.Thickness), fmt.Sprintf("a wall of less than %s, at which nothing is left inside", q.Show(q.Metric, most))}
	}
	return nil
}

// axes are the half axes of the outside.
func (s *Helmet) axes() (a, b, c float64) {
	c = float64(s.Height - s.Below)
	if s.Circumference > 0 {
		r := float64(s.Circumference) / (2 * math.Pi)
		return r, r, c
	}
	return float64(s.Length) / 2, float64(s.Width) / 2, c
}

// Area returns that of the sides that are painted, and of the edge: see
// HelmetFormula.
func (s *Helmet) Area() q.Area {
	a, b, c := s.axes()
	t, k := float64(s.Thickness), float64(s.Below)
	edge := rim(a, b, c, k) - rim(a-t, b-t, c-t, k)
	var outside, inside float64
	if s.Painted != Inside {
		outside = crown(a, b, c, k)
	}
	if s.Painted == Inside || s.Painted == Both {
		inside = crown(a-t, b-t, c-t, k)
	}
	return s.painted(q.Area(outside), q.Area(inside), q.Area(edge))
}

// crown is the surface of an ellipsoid of half axes a, b, c, from its top along c
// down to the plane that lies k below its middle.
func crown(a, b, c, k float64) float64 {
	meridian := func(angle float64) float64 {
		sin, cos := math.Sincos(angle)
		flat := b*b*c*c*cos*cos + a*a*c*c*sin*sin
		return integral(func(u float64) float64 {
			return math.Sqrt((1-u*u)*flat + a*a*b*b*u*u)
		}, -k/c, 1, 32)
	}
	return 4 * integral(meridian, 0, math.Pi/2, 16)
}

// rim is what the ellipse in the plane of the rim encloses.
func rim(a, b, c, k float64) float64 { return math.Pi * a * b * (1 - k*k/(c*c)) }

// Form is "solid".
func (*Helmet) Form() string { return solid }

// Formula is HelmetFormula.
func (*Helmet) Formula() trace.Formula { return HelmetFormula }
