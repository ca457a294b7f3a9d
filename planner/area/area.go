// Package area owns how much surface a part has: from what a tape, a calliper or
// a pair of scales says of it to the area that is to be painted.
//
// A part is described by the shape it comes nearest to, or by several together.
// Every shape lists its measures once (Shape.Measures); a form, a reader of
// documents, a drawing and the account of a figure are all made from that list.
// Lengths are in m, areas in m2, masses in kg. Nothing is rounded.
//
// Area may be asked of a shape that Check has passed, and is then above zero.
package area

import (
	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// Shape is something whose surface can be reckoned. All shapes are of this
// package.
type Shape interface {
	// Kind says what the shape is called. Its measures and New come from Kinds.
	Kind() Kind
	// Measures lists what is measured of the shape, and where it is kept.
	Measures() []Measure
	// Check says what cannot be so: a wall thicker than its tube. The error is
	// an *Error.
	Check() error
	// Area is the surface to be painted, in m2.
	Area() q.Area
	// Form is how a spray fan meets it: "panel", "tube", "lattice" or "solid".
	Form() string
	// Formula is how Area comes about. Its symbols are those of the measures.
	Formula() trace.Formula
}

// The forms.
const (
	panel   = "panel"
	tube    = "tube"
	lattice = "lattice"
	solid   = "solid"
)

// faces is on how many faces s is painted: an opening takes its area from each.
func faces(s Shape) int {
	if f, ok := s.(interface{ Faces() int }); ok {
		return f.Faces()
	}
	return 1
}

// Range is where the area of s lies: its formula may be an approximation with a
// known limit. Low and High are the same where it is none.
func Range(s Shape) q.Range[q.Area] {
	switch s := s.(type) {
	case *Ellipsoid:
		return s.span()
	case *Sum:
		return sumOf(s.Pieces)
	case *Cut:
		whole, open, n := Range(s.Of), sumOf(s.Openings), q.Area(s.Faces())
		return q.Range[q.Area]{Low: whole.Low - n*open.High, High: whole.High - n*open.Low}
	default:
		a := s.Area()
		return q.Range[q.Area]{Low: a, High: a}
	}
}

func sumOf(pieces []Piece) q.Range[q.Area] {
	var sum q.Range[q.Area]
	for _, p := range pieces {
		r, n := Range(p.Shape), q.Area(p.count())
		sum.Low += n * r.Low
		sum.High += n * r.High
	}
	return sum
}

// Limits of what may be measured. They catch slips of the pen (a tube of 560 m),
// not ambition.
const (
	MaxLength q.Length = 20
	MaxArea   q.Area   = 50
	MaxMass   q.Mass   = 100
	MaxCount           = 200
	MaxItems           = 60 // of a list of shapes or of tubes
)

// Notes that explain the formulas.
const (
	noteParts      = "background/measuring-a-part"
	noteFrames     = "background/measuring-a-frame"
	noteShells     = "background/measuring-a-shell"
	noteInstrument = "background/measuring-an-instrument-body"
	notePaper      = "background/measuring-by-paper"
)

// handbook is where the formulas of solids are printed.
const handbook = "Korn and Korn, Mathematical Handbook for Scientists and Engineers (1961), appendix A"
