package area

import (
	"fmt"
	"math"

	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// tapered is a round tube of radius wide at its one end and narrow at the other,
// which are height apart along the axis, in m. An end that is closed has a flat
// cover.
type tapered struct {
	wide, narrow, height     float64
	wideClosed, narrowClosed bool
}

// slant is the length of the wall from end to end.
func (c tapered) slant() float64 { return math.Hypot(c.wide-c.narrow, c.height) }

// outside is the wall, π (R + r) s, and the covers.
func (c tapered) outside() q.Area {
	a := math.Pi * (c.wide + c.narrow) * c.slant()
	if c.wideClosed {
		a += math.Pi * c.wide * c.wide
	}
	if c.narrowClosed {
		a += math.Pi * c.narrow * c.narrow
	}
	return q.Area(a)
}

// within is what a wall of thickness t leaves free inside: a tube that tapers
// alike, shorter by the covers, and ends in a point where the wall fills it.
func (c tapered) within(t float64) tapered {
	in := c
	low, high := 0.0, c.height
	if c.wideClosed {
		low = t
	}
	if c.narrowClosed {
		high -= t
	}
	steep := (c.wide - c.narrow) / c.height
	base := c.wide - c.drop(t) // the inner radius where the outer one is wide
	if base < steep*high {
		high = base / steep
	}
	in.wide, in.narrow, in.height = base-steep*low, base-steep*high, high-low
	return in
}

// drop is by how much a wall of thickness t, measured square to itself, makes
// the radius smaller.
func (c tapered) drop(t float64) float64 { return t * c.slant() / c.height }

// edges is the ring of wall at each open end.
func (c tapered) edges(t float64) q.Area {
	ring := func(r float64, closed bool) float64 {
		if closed {
			return 0
		}
		inner := max(0, r-c.drop(t))
		return math.Pi * (r*r - inner*inner)
	}
	return q.Area(ring(c.wide, c.wideClosed) + ring(c.narrow, c.narrowClosed))
}

// check refuses a wall of thickness t that leaves nothing free inside, neither at
// the narrow end nor between closed ends.
func (c tapered) check(t q.Length) error {
	r := c.narrow
	if r == 0 {
		r = c.wide
	}
	if most := q.Length(r * c.height / c.slant()); t >= most {
		return &Error{"thickness", q.Show(q.Metric, t), fmt.Sprintf("a wall of less than %s, at which nothing is left inside", q.Show(q.Metric, most))}
	}
	if c.within(float64(t)).height <= 0 {
		return &Error{"thickness", q.Show(q.Metric, t), "a wall that leaves something free between closed ends"}
	}
	return nil
}

// round is the area of a shell that has c as its outside.
func (s *Shell) round(c tapered) q.Area {
	t := float64(s.Thickness)
	return s.painted(c.outside(), c.within(t).outside(), c.edges(t))
}

// CylinderFormula is how the area of a Cylinder comes about; e is how many of
// its ends are closed.
var CylinderFormula = trace.Formula{
	Text: "outside: A = π d l + e π d²/4; " +
		"inside: A = π (d - 2 t)(l - e t) + e π (d - 2 t)²/4; " +
		"open edges: (2 - e) π t (d - t)",
	Source: handbook + ", A-4",
	Note:   noteParts,
}

// Cylinder is a tube or a rod. A bent tube is one too, as long as its middle
// line (Pappus).
type Cylinder struct {
	Diameter, Length q.Length
	Ends             int // how many of them are closed and painted
	Shell
}

// Kind is "cylinder".
func (*Cylinder) Kind() Kind {
	return Kind{Key: "cylinder", Title: "Tube or rod", Says: "Anything round that keeps its diameter; a bent tube counts with the length of its middle line."}
}

// Measures are its diameter, its length, its ends and how it is painted.
func (s *Cylinder) Measures() []Measure {
	return append([]Measure{
		lengthOf(&s.Diameter, "diameter", "d", "Diameter", "Across the outside, or the way round divided by 3.14."),
		lengthOf(&s.Length, "length", "l", "Length", "Along the axis; of a bend, halfway between its inner and its outer side."),
		count(&s.Ends, 0, 2, "ends", "e", "Closed ends", "How many of the two ends are closed and painted: 0, 1 or 2."),
	}, s.measures()...)
}

// Check refuses what lies outside the limits, and a wall that fills the tube.
func (s *Cylinder) Check() error {
	if err := check(s.Measures()); err != nil {
		return err
	}
	return s.tapered().check(s.Thickness)
}

func (s *Cylinder) tapered() tapered {
	r := float64(s.Diameter) / 2
	return tapered{r, r, float64(s.Length), s.Ends > 0, s.Ends > 1}
}

// Area returns that of the sides that are painted, with closed ends and open
// edges: see CylinderFormula.
func (s *Cylinder) Area() q.Area { return s.round(s.tapered()) }

// Form is "tube".
func (*Cylinder) Form() string { return tube }

// Formula is CylinderFormula.
func (*Cylinder) Formula() trace.Formula { return CylinderFormula }

// FrustumFormula is how the area of a Frustum comes about; e is how many of its
// ends are closed, the wider one first.
var FrustumFormula = trace.Formula{
	Text: "outside: A = π (d₁ + d₂)/2 · s + π dᵢ²/4 for each closed end, s = √(((d₁ - d₂)/2)² + l²); " +
		"inside: the same with each diameter less 2 t s/l, and l less t for each closed end; " +
		"open edges: the outer ring less the inner, π/4 (dᵢ² - (dᵢ - 2 t s/l)²)",
	Source: handbook + ", A-4",
	Note:   noteParts,
}

// Frustum is a tube that tapers from one diameter to another.
type Frustum struct {
	Diameter1, Diameter2, Length q.Length
	Ends                         int // how many of them are closed and painted, the wider one first
	Shell
}

// Kind is "frustum".
func (*Frustum) Kind() Kind {
	return Kind{Key: "frustum", Title: "Tapered tube", Says: "Anything round that tapers evenly: a fork blade, a chair leg, a lampshade, a funnel."}
}

// Measures are its diameters, its length, its ends and how it is painted.
func (s *Frustum) Measures() []Measure {
	return append([]Measure{
		lengthOf(&s.Diameter1, "diameter", "d₁", "Diameter at one end", "Across the outside, or the way round divided by 3.14."),
		lengthOf(&s.Diameter2, "diameter2", "d₂", "Diameter at the other end", "As at the first."),
		lengthOf(&s.Length, "length", "l", "Length", "Along the axis, not along the slanting wall."),
		count(&s.Ends, 0, 2, "ends", "e", "Closed ends", "How many of the two ends are closed and painted: 0, 1 (the wider) or 2."),
	}, s.measures()...)
}

// Check refuses what lies outside the limits, and a wall that fills the tube.
func (s *Frustum) Check() error {
	if err := check(s.Measures()); err != nil {
		return err
	}
	return s.tapered().check(s.Thickness)
}

func (s *Frustum) tapered() tapered {
	wide, narrow := max(s.Diameter1, s.Diameter2), min(s.Diameter1, s.Diameter2)
	return tapered{float64(wide) / 2, float64(narrow) / 2, float64(s.Length), s.Ends > 0, s.Ends > 1}
}

// Area returns that of the sides that are painted, with closed ends and open
// edges: see FrustumFormula.
func (s *Frustum) Area() q.Area { return s.round(s.tapered()) }

// Form is "tube".
func (*Frustum) Form() string { return tube }

// Formula is FrustumFormula.
func (*Frustum) Formula() trace.Formula { return FrustumFormula }

// ConeFormula is how the area of a Cone comes about; e is 1 where its base is
// closed.
var ConeFormula = trace.Formula{
	Text: "outside: A = π d/2 · s + e π d²/4, s = √((d/2)² + h²); " +
		"inside: the same for what the wall leaves free, which has that slope and a base of d - 2 t s/h; " +
		"open edge: π/4 (d² - (d - 2 t s/h)²)",
	Source: handbook + ", A-4",
	Note:   noteParts,
}

// Cone is round and comes to a point.
type Cone struct {
	Diameter, Height q.Length
	Ends             int // 1 where the base is closed and painted
	Shell
}

// Kind is "cone".
func (*Cone) Kind() Kind {
	return Kind{Key: "cone", Title: "Cone", Says: "Anything round that comes to a point: a finial, a nose, a pointed lid."}
}

// Measures are its diameter, its height, its base and how it is painted.
func (s *Cone) Measures() []Measure {
	return append([]Measure{
		lengthOf(&s.Diameter, "diameter", "d", "Diameter of the base", "Across the outside, or the way round divided by 3.14."),
		lengthOf(&s.Height, "height", "h", "Height", "From the base straight up to the point, not along the slant."),
		count(&s.Ends, 0, 1, "ends", "e", "Closed base", "Write 1 where the base is closed and painted, else 0."),
	}, s.measures()...)
}

// Check refuses what lies outside the limits, and a wall that fills the cone.
func (s *Cone) Check() error {
	if err := check(s.Measures()); err != nil {
		return err
	}
	return s.tapered().check(s.Thickness)
}

func (s *Cone) tapered() tapered {
	return tapered{float64(s.Diameter) / 2, 0, float64(s.Height), s.Ends > 0, false}
}

// Area returns that of the sides that are painted, with a closed base or its
// open edge: see ConeFormula.
func (s *Cone) Area() q.Area { return s.round(s.tapered()) }

// Form is "solid".
func (*Cone) Form() string { return solid }

// Formula is ConeFormula.
func (*Cone) Formula() trace.Formula { return ConeFormula }
