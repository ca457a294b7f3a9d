package area

import (
	"fmt"
	"slices"
	"strings"

	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// Piece is a shape, or several alike, in something that is made of shapes.
type Piece struct {
	Shape Shape
	Count int // 0 for one
}

func (p Piece) count() int { return max(1, p.Count) }

// area is that of all of them.
func (p Piece) area() q.Area { return p.Shape.Area() * q.Area(p.count()) }

// check refuses a shape that is not of the kinds, too many of it, and a shape
// that cannot be.
func (p Piece) check(kinds []string) error {
	if p.Shape == nil || !slices.Contains(kinds, p.Shape.Kind().Key) {
		found := "none"
		if p.Shape != nil {
			found = p.Shape.Kind().Key
		}
		return &Error{"shape", found, "a shape: one of " + strings.Join(kinds, ", ")}
	}
	if p.Count < 0 || p.Count > MaxCount {
		return &Error{"count", fmt.Sprint(p.Count), fmt.Sprintf("a whole number from 1 to %d", MaxCount)}
	}
	return below(p.Shape.Kind().Key, p.Shape.Check())
}

// named is a piece with the way to it: "openings[0]".
type named struct {
	key string
	Piece
}

// name names each of the pieces that stand under key.
func name(key string, pieces []Piece) []named {
	var out []named
	for i, p := range pieces {
		out = append(out, named{fmt.Sprintf("%s[%d].%s", key, i, p.Shape.Kind().Key), p})
	}
	return out
}

// total is the area of all pieces.
func total(pieces []Piece) q.Area {
	var sum q.Area
	for _, p := range pieces {
		sum += p.area()
	}
	return sum
}

// SumFormula is how the area of a Sum comes about.
var SumFormula = trace.Formula{Text: "A = Σ nᵢ Aᵢ", Source: "elementary geometry", Note: noteParts}

// Sum is a part of several shapes together, each painted as it says.
type Sum struct{ Pieces []Piece }

// Kind is "sum".
func (*Sum) Kind() Kind {
	return Kind{
		Key: "sum", Title: "Several shapes together", Says: "A part that falls into simple ones: a bracket of plates, a lamp of a tube and a dome.",
		Omits: "Where the shapes touch, both count as painted.",
	}
}

// Measures are its pieces.
func (s *Sum) Measures() []Measure {
	keys := slices.DeleteFunc(Keys(), func(key string) bool { return key == "sum" })
	return []Measure{{Key: "sum", Title: "Shapes", Says: "Each with its own measures.", Shapes: keys, Into: &s.Pieces}}
}

// Check refuses what any of its pieces does.
func (s *Sum) Check() error { return check(s.Measures()) }

// Area is that of all its pieces.
func (s *Sum) Area() q.Area { return total(s.Pieces) }

// Form is that of whichever piece has most of the area.
func (s *Sum) Form() string {
	var most Piece
	for _, p := range s.Pieces {
		if most.Shape == nil || p.area() > most.area() {
			most = p
		}
	}
	if most.Shape == nil {
		return solid
	}
	return most.Shape.Form()
}

// Formula is SumFormula.
func (*Sum) Formula() trace.Formula { return SumFormula }

func (s *Sum) pieces() []named { return name("", s.Pieces) }

// CutFormula is how the area of a Cut comes about: U is the shape uncut, F on
// how many faces it is painted.
var CutFormula = trace.Formula{Text: "A = U - F Σ nᵢ Aᵢ", Source: "elementary geometry", Note: noteParts}

// Cut is a shape with openings: holes, and places that stay bare. An opening in
// a plate or a shell goes through, and is taken off each face that is painted.
// The wall of a hole is not counted. Without openings it is the shape itself.
type Cut struct {
	Of       Shape
	Openings []Piece
}

// Kind is that of the shape.
func (s *Cut) Kind() Kind { return s.Of.Kind() }

// Measures are those of the shape, and its openings.
func (s *Cut) Measures() []Measure {
	return append(s.Of.Measures(), Measure{
		Key: "openings", Title: "Openings", Says: "Holes and places that stay bare, each as it is seen from one side.",
		Optional: true, Shapes: []string{"area", "plate", "disc", "trapezium"}, Into: &s.Openings,
	})
}

// Check refuses what the shape does, what an opening does, and openings larger
// than the shape.
func (s *Cut) Check() error {
	if err := s.Of.Check(); err != nil {
		return err
	}
	if err := check(s.Measures()); err != nil {
		return err
	}
	for i, p := range s.Openings {
		if flat, ok := uncut(p.Shape).(interface{ sheet() Sheet }); ok && flat.sheet() != (Sheet{}) {
			return &Error{fmt.Sprintf("openings[%d]", i), "an opening with both faces or a thickness", "an opening as it is seen from one side"}
		}
	}
	if whole, open := s.Of.Area(), s.open(); open >= whole {
		return &Error{"openings", q.Show(q.Metric, open) + " in all", "openings of less than the " + q.Show(q.Metric, whole) + " that they are in"}
	}
	return nil
}

// open is what the openings take off.
func (s *Cut) open() q.Area { return q.Area(faces(s.Of)) * total(s.Openings) }

// Faces is on how many faces the shape is painted.
func (s *Cut) Faces() int { return faces(s.Of) }

// Area is that of the shape less its openings.
func (s *Cut) Area() q.Area { return s.Of.Area() - s.open() }

// Form is that of the shape.
func (s *Cut) Form() string { return s.Of.Form() }

// Formula is CutFormula, or that of the shape where there are no openings.
func (s *Cut) Formula() trace.Formula {
	if len(s.Openings) == 0 {
		return s.Of.Formula()
	}
	return CutFormula
}

// uncut is the shape that s cuts, or s itself.
func uncut(s Shape) Shape {
	if c, ok := s.(*Cut); ok {
		return c.Of
	}
	return s
}
