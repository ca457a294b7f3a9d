package area

import (
	"fmt"
	"math"

	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// SphereFormula is how the area of a Sphere comes about.
var SphereFormula = trace.Formula{Text: "A = π d²", Source: handbook + ", A-5 (from memory)", Note: noteParts}

// Sphere is a ball.
type Sphere struct{ Diameter q.Length }

// Kind is "sphere".
func (*Sphere) Kind() Kind {
	return Kind{Key: "sphere", Title: "Ball", Says: "Anything round from every side: a knob, a float."}
}

// Measures are its diameter.
func (s *Sphere) Measures() []Measure {
	return []Measure{lengthOf(&s.Diameter, "diameter", "d", "Diameter", "Across the middle, or the way round divided by 3.14.")}
}

// Check refuses what lies outside the limits.
func (s *Sphere) Check() error { return check(s.Measures()) }

// Area returns π d².
func (s *Sphere) Area() q.Area { return q.Area(math.Pi * s.Diameter * s.Diameter) }

// Form is "solid".
func (*Sphere) Form() string { return solid }

// Formula is SphereFormula.
func (*Sphere) Formula() trace.Formula { return SphereFormula }

// DomeFormula is how the area of a Dome comes about.
var DomeFormula = trace.Formula{
	Text: "outside: A = π (d²/4 + h²) = 2 π R h, R = (d²/4 + h²)/(2 h); " +
		"inside: A = 2 π (R - t)(h - t); edge: π t (2 R - t)",
	Source: handbook + ", A-5 (from memory)",
	Note:   noteShells,
}

// Dome is a part of a ball that a flat cut took off, and hollow: half a ball
// where its height is half its diameter.
type Dome struct {
	Diameter, Height q.Length // Diameter at the rim
	Shell
}

// Kind is "dome".
func (*Dome) Kind() Kind {
	return Kind{
		Key: "dome", Title: "Dome or bowl", Says: "Part of a hollow ball: a lampshade, a bowl, a bell; half a ball where the height is half the diameter.",
		Omits: "Its rim is flat and its inside follows the outside at the thickness of the wall.",
	}
}

// Measures are its rim, its height and how it is painted.
func (s *Dome) Measures() []Measure {
	return append([]Measure{
		lengthOf(&s.Diameter, "diameter", "d", "Diameter of the rim", "Across the outside of the rim."),
		lengthOf(&s.Height, "height", "h", "Height", "From the plane of the rim to the top, outside."),
	}, s.measures()...)
}

// Check refuses what lies outside the limits, and a wall that fills the dome.
func (s *Dome) Check() error {
	if err := check(s.Measures()); err != nil {
		return err
	}
	// The inside must still reach the plane of the rim.
	if most := min(s.Height, 2*s.radius()-s.Height); s.Thickness >= most {
		return &Error{"thickness", q.Show(q.Metric, s.Thickness), fmt.Sprintf("a wall of less than %s, at which nothing is left inside", q.Show(q.Metric, most))}
	}
	return nil
}

// radius is that of the ball.
func (s *Dome) radius() q.Length {
	return (s.Diameter*s.Diameter/4 + s.Height*s.Height) / (2 * s.Height)
}

// Area returns that of the sides that are painted, and of the edge: see
// DomeFormula.
func (s *Dome) Area() q.Area {
	R, h, t := s.radius(), s.Height, s.Thickness
	return s.painted(
		q.Area(2*math.Pi*R*h),
		q.Area(2*math.Pi*(R-t)*(h-t)),
		q.Area(math.Pi*t*(2*R-t)),
	)
}

// Form is "solid".
func (*Dome) Form() string { return solid }

// Formula is DomeFormula.
func (*Dome) Formula() trace.Formula { return DomeFormula }

// RingFormula is how the area of a Ring comes about.
var RingFormula = trace.Formula{
	Text:   "A = g π (D - d) s; round: g = π d",
	Source: "Pappus's centroid theorem (CRC Concise Encyclopedia of Mathematics, archive.lib.msu.edu/crcmath/math/math/p/p038.htm)",
	Note:   noteParts,
}

// Ring is a bar or a tube bent to a circle, or to part of one: a rim, a
// handlebar's bend.
type Ring struct {
	Diameter q.Length   // of the whole circle, outside
	Depth    q.Length   // of the bar, from the outside of the circle to its inside
	Girth    q.Length   // round the bar; 0 for a round one
	Share    q.Fraction // of the circle; 0 for all of it
}

// Kind is "ring".
func (*Ring) Kind() Kind {
	return Kind{
		Key: "ring", Title: "Ring or bend", Says: "A bar or tube bent to a circle or a part of one: a rim, a steering wheel, the bend of a handlebar.",
		Omits: "A bar that is not round is taken as alike towards the inside and the outside of the ring; the ends of a bend are not counted.",
	}
}

// Measures are its circle and its bar.
func (s *Ring) Measures() []Measure {
	return []Measure{
		lengthOf(&s.Diameter, "diameter", "D", "Diameter of the ring", "Across the whole circle, outside."),
		lengthOf(&s.Depth, "depth", "d", "Depth of the bar", "From the outer side of the ring to its inner side; of a round bar its diameter."),
		lengthOf(&s.Girth, "girth", "g", "Girth of the bar", "Once round the bar with a tape; left out, the bar is round.").optional(),
		{Key: "share", Symbol: "s", Title: "Share of the circle", Says: "Of a bend, how much of the whole circle it is: a quarter turn is 25 %. Left out, all of it.", Optional: true, Into: &s.Share},
	}
}

// Check refuses what lies outside the limits, a bar too deep for its ring, and a
// girth that cannot reach round the bar.
func (s *Ring) Check() error {
	if err := check(s.Measures()); err != nil {
		return err
	}
	if 2*s.Depth > s.Diameter {
		return &Error{"depth", q.Show(q.Metric, s.Depth), fmt.Sprintf("at most half the diameter, %s", q.Show(q.Metric, s.Diameter/2))}
	}
	if s.Girth > 0 && s.Girth < 2*s.Depth {
		return &Error{"girth", q.Show(q.Metric, s.Girth), fmt.Sprintf("at least twice the depth, %s", q.Show(q.Metric, 2*s.Depth))}
	}
	return nil
}

// Area returns g π (D - d) s: the girth times the way of its middle.
func (s *Ring) Area() q.Area {
	girth, share := s.Girth, q.Length(s.Share)
	if girth == 0 {
		girth = math.Pi * s.Depth
	}
	if share == 0 {
		share = 1
	}
	return q.Area(girth * math.Pi * (s.Diameter - s.Depth) * share)
}

// Form is "tube".
func (*Ring) Form() string { return tube }

// Formula is RingFormula.
func (*Ring) Formula() trace.Formula { return RingFormula }
