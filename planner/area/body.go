package area

import (
	"fmt"
	"math"

	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// BodyFormula is how the area of a Body comes about: S is one face, P the way
// round it, E(p, q) the perimeter of an ellipse of half axes p and q.
var BodyFormula = trace.Formula{
	Text: "A = 2 S + P t; " +
		"S = π/4 (U x₁ + L (l - x₃)) + (U + W)/2 (x₂ - x₁) + (W + L)/2 (x₃ - x₂); " +
		"P = E(x₁, U/2)/2 + E(l - x₃, L/2)/2 + 2 (B₁ + B₂), " +
		"Bᵢ = ∫ √(Δx² + (3 Δw v (1 - v))²) dv from 0 to 1",
	Source: "an outline of half ellipses at the ends and smooth cubics between the widths; common practice, no published source",
	Note:   noteInstrument,
}

// Where along a body its widths lie when nobody says: the share of the length
// from the neck end. The waist at two fifths is an old rule of makers (Classical
// Guitar, spring 2017: "the waist located 2/5 of the way down the body"); the
// others are common practice, no published source.
const (
	upperAt = 1.0 / 5
	waistAt = 2.0 / 5
	lowerAt = 3.0 / 4
)

// Body is the body of an instrument: a top and a back of one outline, and sides
// between them. The outline is smooth, widest at the upper and the lower bout
// and narrowest at the waist, or widest there.
type Body struct {
	Length, Upper, Waist, Lower q.Length // Length along the middle, the others across
	UpperAt, WaistAt, LowerAt   q.Length // from the neck end; 0 for where they usually lie
	Thickness                   q.Length // of the body: the width of its sides
}

// Kind is "body".
func (*Body) Kind() Kind {
	return Kind{
		Key: "body", Title: "Instrument body", Says: "Top, back and sides of a guitar or a violin, from its length and its three widths. Where there are horns or cutaways, measure the outline and take a board of any outline.",
		Omits: "The outline is a smooth curve through the widths: corners, horns, cutaways, rounded edges and arched plates are not counted. An opening lies in one face, and counts twice where it goes through.",
	}
}

// Measures are its length, its widths and where they lie, and its thickness.
func (s *Body) Measures() []Measure {
	return []Measure{
		lengthOf(&s.Length, "length", "l", "Length", "Of the body alone, along the middle."),
		lengthOf(&s.Upper, "upper", "U", "Upper bout", "The widest place near the neck."),
		lengthOf(&s.Waist, "waist", "W", "Waist", "The narrowest place between the bouts."),
		lengthOf(&s.Lower, "lower", "L", "Lower bout", "The widest place away from the neck."),
		lengthOf(&s.Thickness, "thickness", "t", "Thickness", "From top to back; where it tapers, halfway."),
		lengthOf(&s.UpperAt, "upper-at", "x₁", "Upper bout from the neck end", "Along the middle; left out, a fifth of the length.").optional(),
		lengthOf(&s.WaistAt, "waist-at", "x₂", "Waist from the neck end", "Along the middle; left out, two fifths of the length.").optional(),
		lengthOf(&s.LowerAt, "lower-at", "x₃", "Lower bout from the neck end", "Along the middle; left out, three quarters of the length.").optional(),
	}
}

// Check refuses what lies outside the limits, and widths out of their order. A
// waist wider than the bouts may be.
func (s *Body) Check() error {
	if err := check(s.Measures()); err != nil {
		return err
	}
	x1, x2, x3 := s.Stations()
	for _, c := range []struct {
		key      string
		at, next q.Length
		what     string
	}{
		{"upper-at", x1, x2, "the waist"}, {"waist-at", x2, x3, "the lower bout"}, {"lower-at", x3, s.Length, "the end of the body"},
	} {
		if c.at >= c.next {
			return &Error{c.key, q.Show(q.Metric, c.at), fmt.Sprintf("less than %s, where %s lies", q.Show(q.Metric, c.next), c.what)}
		}
	}
	return nil
}

// Stations are where the upper bout, the waist and the lower bout lie, from the
// neck end.
func (s *Body) Stations() (upper, waist, lower q.Length) {
	or := func(at q.Length, share float64) q.Length {
		if at == 0 {
			return s.Length * q.Length(share)
		}
		return at
	}
	return or(s.UpperAt, upperAt), or(s.WaistAt, waistAt), or(s.LowerAt, lowerAt)
}

// Area returns 2 S + P t: see BodyFormula.
func (s *Body) Area() q.Area {
	o := s.outline()
	return q.Area(2*o.area() + o.perimeter()*float64(s.Thickness))
}

func (s *Body) outline() outline {
	x1, x2, x3 := s.Stations()
	return outline{
		ends:  [2]float64{float64(x1), float64(s.Length - x3)},
		sides: [2]float64{float64(x2 - x1), float64(x3 - x2)},
		width: [3]float64{float64(s.Upper), float64(s.Waist), float64(s.Lower)},
	}
}

// outline is a closed curve, alike on both sides of its middle line. Its ends
// are half ellipses, its sides run from width to width as w + Δw v² (3 - 2 v),
// level where they meet: all lengths in m.
type outline struct {
	ends  [2]float64 // how long each end is
	sides [2]float64 // and each stretch between widths
	width [3]float64
}

// area is what it encloses.
func (o outline) area() float64 {
	a := math.Pi / 4 * (o.ends[0]*o.width[0] + o.ends[1]*o.width[2])
	for i, length := range o.sides {
		a += length * (o.width[i] + o.width[i+1]) / 2
	}
	return a
}

// perimeter is the way round it.
func (o outline) perimeter() float64 {
	p := aroundEllipse(o.ends[0], o.width[0]/2)/2 + aroundEllipse(o.ends[1], o.width[2]/2)/2
	for i, length := range o.sides {
		change := o.width[i+1] - o.width[i]
		p += 2 * integral(func(v float64) float64 {
			return math.Hypot(length, 3*change*v*(1-v))
		}, 0, 1, 16)
	}
	return p
}

// Form is "solid".
func (*Body) Form() string { return solid }

// Formula is BodyFormula.
func (*Body) Formula() trace.Formula { return BodyFormula }
