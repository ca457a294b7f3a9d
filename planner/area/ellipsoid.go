package area

import (
	"math"

	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// EllipsoidFormula is how the area of an Ellipsoid comes about.
var EllipsoidFormula = trace.Formula{
	Text: "A = 4 π (((a b)^p + (a c)^p + (b c)^p)/3)^(1/p), p = 1.6075, a = l/2, b = w/2, c = h/2; " +
		"half: A/2, c = h",
	Source: "Thomsen (2004), at most 1.061 % off (planetcalc.com/149)",
	Note:   noteShells,
}

// thomsenError is the most that Thomsen's formula is off.
const thomsenError = 0.01061

// Ellipsoid is egg-like, or half of that: a shell that rises from an oval rim.
type Ellipsoid struct {
	Length, Width, Height q.Length // from side to side
	Half                  bool     // Height is then that of the half
}

// Kind is "ellipsoid".
func (*Ellipsoid) Kind() Kind {
	return Kind{
		Key: "ellipsoid", Title: "Egg or half egg", Says: "Anything round but longer one way than another: a tank, a float; half of it is an oval shell.",
		Omits: "The formula is an approximation, at most 1.061 % off.",
	}
}

// Measures are its three axes.
func (s *Ellipsoid) Measures() []Measure {
	return []Measure{
		lengthOf(&s.Length, "length", "l", "Length", "From end to end."),
		lengthOf(&s.Width, "width", "w", "Width", "From side to side at the widest."),
		lengthOf(&s.Height, "height", "h", "Height", "From bottom to top; of a half, from its rim to its top."),
		{Key: "half", Title: "Only half of it", Says: "Half, without the flat face where it was cut.", Optional: true, Into: &s.Half},
	}
}

// Check refuses what lies outside the limits.
func (s *Ellipsoid) Check() error { return check(s.Measures()) }

// Area returns it by Thomsen's formula: see EllipsoidFormula.
func (s *Ellipsoid) Area() q.Area {
	a, b, c := float64(s.Length)/2, float64(s.Width)/2, float64(s.Height)/2
	if s.Half {
		return q.Area(thomsen(a, b, 2*c) / 2)
	}
	return q.Area(thomsen(a, b, c))
}

func thomsen(a, b, c float64) float64 {
	const p = 1.6075
	mean := (math.Pow(a*b, p) + math.Pow(a*c, p) + math.Pow(b*c, p)) / 3
	return 4 * math.Pi * math.Pow(mean, 1/p)
}

// span is where the exact area lies.
func (s *Ellipsoid) span() q.Range[q.Area] {
	a := s.Area()
	return q.Range[q.Area]{Low: a / (1 + thomsenError), High: a / (1 - thomsenError)}
}

// Form is "solid".
func (*Ellipsoid) Form() string { return solid }

// Formula is EllipsoidFormula.
func (*Ellipsoid) Formula() trace.Formula { return EllipsoidFormula }
