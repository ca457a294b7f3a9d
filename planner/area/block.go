package area

import (
	"fmt"
	"math"

	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// BoxFormula is how the area of a Box comes about.
var BoxFormula = trace.Formula{Text: "A = 2 (l w + l h + w h)", Source: "elementary geometry", Note: noteParts}

// Box is a block, painted on all six faces.
type Box struct{ Length, Width, Height q.Length }

// Kind is "box".
func (*Box) Kind() Kind {
	return Kind{Key: "box", Title: "Box", Says: "A block with square corners, all six faces: a case, a speaker. A face that stays bare is an opening."}
}

// Measures are its three edges.
func (s *Box) Measures() []Measure {
	return []Measure{
		lengthOf(&s.Length, "length", "l", "Length", "Along the longest edge."),
		lengthOf(&s.Width, "width", "w", "Width", "Across it."),
		lengthOf(&s.Height, "height", "h", "Height", "From bottom to top."),
	}
}

// Check refuses what lies outside the limits.
func (s *Box) Check() error { return check(s.Measures()) }

// Area returns 2 (l w + l h + w h).
func (s *Box) Area() q.Area {
	return 2 * q.Area(s.Length*s.Width+s.Length*s.Height+s.Width*s.Height)
}

// Form is "solid".
func (*Box) Form() string { return solid }

// Formula is BoxFormula.
func (*Box) Formula() trace.Formula { return BoxFormula }

// PrismFormula is how the area of a Prism comes about.
var PrismFormula = trace.Formula{
	Text:   "A = n a l + e n a²/(4 tan(π/n))",
	Source: handbook + ", A-2 and A-4",
	Note:   noteParts,
}

// maxSides is the most sides of a Prism: beyond, it is a cylinder.
const maxSides = 100

// Prism is a bar with as many equal sides as is said: three, six, eight.
type Prism struct {
	Sides        int
	Side, Length q.Length // Side is one edge of the end
	Ends         int      // how many of them are painted
}

// Kind is "prism".
func (*Prism) Kind() Kind {
	return Kind{Key: "prism", Title: "Bar with equal sides", Says: "A straight bar whose end is a regular triangle, square, hexagon and so on: a hexagonal leg, an eight-sided post."}
}

// Measures are its sides, its length and its ends.
func (s *Prism) Measures() []Measure {
	sides := count(&s.Sides, 3, maxSides, "sides", "n", "Sides", "How many equal sides its end has: 6 for a hexagon.")
	sides.Optional = false
	return []Measure{
		sides,
		lengthOf(&s.Side, "side", "a", "One side", "From corner to corner along one side of the end; of a hexagon the width across flats divided by 1.73."),
		lengthOf(&s.Length, "length", "l", "Length", "Along the bar."),
		count(&s.Ends, 0, 2, "ends", "e", "Painted ends", "How many of the two ends are painted: 0, 1 or 2."),
	}
}

// Check refuses what lies outside the limits.
func (s *Prism) Check() error { return check(s.Measures()) }

// Area returns n a l + e n a²/(4 tan(π/n)).
func (s *Prism) Area() q.Area {
	n, a := float64(s.Sides), float64(s.Side)
	end := n * a * a / (4 * math.Tan(math.Pi/n))
	return q.Area(n*a*float64(s.Length) + float64(s.Ends)*end)
}

// Form is "tube".
func (*Prism) Form() string { return tube }

// Formula is PrismFormula.
func (*Prism) Formula() trace.Formula { return PrismFormula }

// SlabFormula is how the area of a Slab comes about.
var SlabFormula = trace.Formula{Text: "A = 2 S + P t", Source: "elementary geometry", Note: noteInstrument}

// Slab is a board sawn to any outline: its two faces and its edge.
type Slab struct {
	Outline   q.Area // of one face
	Perimeter q.Length
	Thickness q.Length
}

// Kind is "slab".
func (*Slab) Kind() Kind {
	return Kind{
		Key: "slab", Title: "Board of any outline", Says: "A board sawn to an outline that was measured: both faces and the edge. Measure the face with squared or weighed paper, the edge with a tape.",
		Omits: "Rounded edges and carved faces are not counted; an opening in it lies in one face, and counts twice where it goes through.",
	}
}

// Measures are its outline and its thickness.
func (s *Slab) Measures() []Measure {
	return []Measure{
		{Key: "outline", Symbol: "S", Title: "Area of one face", Says: "What the outline encloses: trace it on squared paper, or weigh a paper cut to it.", Into: &s.Outline},
		lengthOf(&s.Perimeter, "perimeter", "P", "Perimeter", "Once round the edge with a tape."),
		lengthOf(&s.Thickness, "thickness", "t", "Thickness", "Of the board."),
	}
}

// Check refuses what lies outside the limits, and a perimeter too short for any
// outline of that area (isoperimetric inequality).
func (s *Slab) Check() error {
	if err := check(s.Measures()); err != nil {
		return err
	}
	if circle := q.Length(math.Sqrt(4 * math.Pi * float64(s.Outline))); s.Perimeter < circle*(1-sliver) {
		return &Error{"perimeter", q.Show(q.Metric, s.Perimeter), fmt.Sprintf("at least %s, the way round a disc of that area", q.Show(q.Metric, circle))}
	}
	return nil
}

// sliver is the share that the arithmetic may be off.
const sliver = 1e-9

// Area returns 2 S + P t.
func (s *Slab) Area() q.Area { return 2*s.Outline + q.Area(s.Perimeter*s.Thickness) }

// Form is "solid".
func (*Slab) Form() string { return solid }

// Formula is SlabFormula.
func (*Slab) Formula() trace.Formula { return SlabFormula }
