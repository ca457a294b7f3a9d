package area

import (
	"math"

	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// Sheet is how a flat part is painted: on one face or both, and on its edges
// where its thickness is given.
type Sheet struct {
	BothFaces bool
	Thickness q.Length // 0: its edges are left out
}

// Faces is on how many faces it is painted.
func (s *Sheet) Faces() int {
	if s.BothFaces {
		return 2
	}
	return 1
}

// painted is the area of a sheet of which face is one face and around the way
// round it.
func (s *Sheet) painted(face q.Area, around q.Length) q.Area {
	return q.Area(s.Faces())*face + q.Area(around*s.Thickness)
}

func (s *Sheet) sheet() Sheet { return *s }

func (s *Sheet) measures() []Measure {
	return []Measure{
		{Key: "both-faces", Symbol: "F", Title: "Both faces", Says: "Whether the back is painted as well.", Optional: true, Into: &s.BothFaces},
		lengthOf(&s.Thickness, "thickness", "t", "Thickness", "Where the edges are painted as well; left out, they are not counted.").orNone(),
	}
}

// PlateFormula is how the area of a Plate comes about. F is 1 for one face, 2
// for both.
var PlateFormula = trace.Formula{Text: "A = F l w + 2 (l + w) t", Source: "elementary geometry", Note: noteParts}

// Plate is a flat part with square corners.
type Plate struct {
	Length, Width q.Length
	Sheet
}

// Kind is "plate".
func (*Plate) Kind() Kind {
	return Kind{Key: "plate", Title: "Plate", Says: "A flat part with square corners: a sign, a panel, a mudguard opened flat."}
}

// Measures are its length, its width and how it is painted.
func (s *Plate) Measures() []Measure {
	return append([]Measure{
		lengthOf(&s.Length, "length", "l", "Length", "Along the longer edge."),
		lengthOf(&s.Width, "width", "w", "Width", "Across the length."),
	}, s.measures()...)
}

// Check refuses what lies outside the limits.
func (s *Plate) Check() error { return check(s.Measures()) }

// Area returns F l w + 2 (l + w) t.
func (s *Plate) Area() q.Area {
	return s.painted(q.Area(s.Length*s.Width), 2*(s.Length+s.Width))
}

// Form is "panel".
func (*Plate) Form() string { return panel }

// Formula is PlateFormula.
func (*Plate) Formula() trace.Formula { return PlateFormula }

// DiscFormula is how the area of a Disc comes about. F is 1 for one face, 2 for
// both.
var DiscFormula = trace.Formula{Text: "A = F π d²/4 + π d t", Source: "elementary geometry", Note: noteParts}

// Disc is a flat round part.
type Disc struct {
	Diameter q.Length
	Sheet
}

// Kind is "disc".
func (*Disc) Kind() Kind {
	return Kind{Key: "disc", Title: "Disc", Says: "A flat round part: a lid, a wheel cover, a round sign."}
}

// Measures are its diameter and how it is painted.
func (s *Disc) Measures() []Measure {
	return append([]Measure{
		lengthOf(&s.Diameter, "diameter", "d", "Diameter", "Across the middle."),
	}, s.measures()...)
}

// Check refuses what lies outside the limits.
func (s *Disc) Check() error { return check(s.Measures()) }

// Area returns F π d²/4 + π d t.
func (s *Disc) Area() q.Area {
	return s.painted(q.Area(math.Pi/4*s.Diameter*s.Diameter), math.Pi*s.Diameter)
}

// Form is "panel".
func (*Disc) Form() string { return panel }

// Formula is DiscFormula.
func (*Disc) Formula() trace.Formula { return DiscFormula }

// TrapeziumFormula is how the area of a Trapezium comes about. F is 1 for one
// face, 2 for both.
var TrapeziumFormula = trace.Formula{
	Text:   "A = F (a + c)/2 · h + (a + c + 2 √(h² + ((a - c)/2)²)) t",
	Source: handbook + ", A-1; the slanting edges are those of one with equal sides",
	Note:   noteParts,
}

// Trapezium is a flat part with two parallel edges, a triangle where the second
// has no length.
type Trapezium struct {
	Base, Top, Height q.Length
	Sheet
}

// Kind is "trapezium".
func (*Trapezium) Kind() Kind {
	return Kind{
		Key: "trapezium", Title: "Trapezium or triangle",
		Says:  "A flat part with two parallel edges of different length; without the second it is a triangle.",
		Omits: "Its slanting edges are taken as equally long; only what is painted of the edges depends on it.",
	}
}

// Measures are its parallel edges, the way between them and how it is painted.
func (s *Trapezium) Measures() []Measure {
	return append([]Measure{
		lengthOf(&s.Base, "base", "a", "Base", "The one parallel edge."),
		lengthOf(&s.Top, "top", "c", "Top", "The other parallel edge; left out, the part is a triangle.").orNone(),
		lengthOf(&s.Height, "height", "h", "Height", "From edge to edge, square to them."),
	}, s.measures()...)
}

// Check refuses what lies outside the limits.
func (s *Trapezium) Check() error { return check(s.Measures()) }

// Area returns F (a + c)/2 h, and the edges times t.
func (s *Trapezium) Area() q.Area {
	slant := q.Length(math.Hypot(float64(s.Height), float64(s.Base-s.Top)/2))
	return s.painted(q.Area((s.Base+s.Top)/2*s.Height), s.Base+s.Top+2*slant)
}

// Form is "panel".
func (*Trapezium) Form() string { return panel }

// Formula is TrapeziumFormula.
func (*Trapezium) Formula() trace.Formula { return TrapeziumFormula }
