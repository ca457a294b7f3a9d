package area

import (
	"fmt"
	"math"

	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// FrameFormula is how the area of a Frame comes about: Aᵢ is the area of one
// tube, nᵢ how many there are of it, S the mean section of all of them.
var FrameFormula = trace.Formula{
	Text:   "A = Σ nᵢ Aᵢ - j S, S = Σ nᵢ π/4 ((dᵢ + Dᵢ)/2)² / Σ nᵢ",
	Source: "the tubes by " + handbook + ", A-4; a section off for each joint: common practice, no published source",
	Note:   noteFrames,
}

// Frame is built of tubes.
//
// Where a tube ends on another, it covers about its own section of it. The exact
// patch is that section on a much thicker tube and 4/π of it on one as thick
// (half of what two such tubes that cross have in common, 16 r² in all:
// mathworld.wolfram.com/SteinmetzSolid.html). The ends that meet there are not
// painted, and those of a frame are open or plugged.
type Frame struct {
	Tubes  []Tube
	Joints int // how many ends of tubes sit on another tube
}

// Kind is "frame".
func (*Frame) Kind() Kind {
	return Kind{
		Key: "frame", Title: "Frame of tubes", Says: "Tubes joined to one another: a bicycle frame, a chair, a rack.",
		Omits: "Lugs, gussets, bosses, plates and welds come on top; tubes are measured from joint to joint along the outside.",
	}
}

// Measures are its tubes and its joints.
func (s *Frame) Measures() []Measure {
	return []Measure{
		{Key: "tubes", Title: "Tubes", Says: "Each with its diameter and its length.", Parts: new(Tube).Measures(), Into: &s.Tubes},
		count(&s.Joints, 0, MaxCount, "joints", "j", "Joints", "How many ends of tubes sit on another tube: each hides about one section of tube. Left out, nothing is taken off."),
	}
}

// Check refuses what lies outside the limits, and more joints than the tubes
// have surface for.
func (s *Frame) Check() error {
	if err := check(s.Measures()); err != nil {
		return err
	}
	ends := 0
	for i := range s.Tubes {
		ends += 2 * s.Tubes[i].count()
	}
	if s.Joints > ends {
		return &Error{"joints", fmt.Sprint(s.Joints), fmt.Sprintf("at most %d, the ends that the tubes have", ends)}
	}
	if s.hidden() >= s.tubes() {
		return &Error{"joints", fmt.Sprint(s.Joints), "fewer joints, which leave something of the tubes to be painted"}
	}
	return nil
}

// Area returns that of the tubes less a mean section for each joint: see
// FrameFormula.
func (s *Frame) Area() q.Area { return s.tubes() - s.hidden() }

func (s *Frame) tubes() q.Area {
	var sum q.Area
	for i := range s.Tubes {
		sum += s.Tubes[i].Area() * q.Area(s.Tubes[i].count())
	}
	return sum
}

// hidden is what the joints cover.
func (s *Frame) hidden() q.Area {
	var sections q.Area
	n := 0
	for i := range s.Tubes {
		sections += s.Tubes[i].section() * q.Area(s.Tubes[i].count())
		n += s.Tubes[i].count()
	}
	return q.Area(s.Joints) * sections / q.Area(n)
}

func (s *Frame) pieces() []named {
	var out []named
	for i := range s.Tubes {
		out = append(out, named{fmt.Sprintf("tubes[%d]", i), Piece{&s.Tubes[i], s.Tubes[i].Count}})
	}
	return out
}

// Form is "lattice".
func (*Frame) Form() string { return lattice }

// Formula is FrameFormula.
func (*Frame) Formula() trace.Formula { return FrameFormula }

// TubeFormula is how the area of one Tube comes about.
var TubeFormula = trace.Formula{
	Text:   "A = π (d + D)/2 · √(((d - D)/2)² + l²); D = d where it does not taper",
	Source: handbook + ", A-4",
	Note:   noteFrames,
}

// Tube is one tube of a frame, or several alike. Its ends are not painted.
type Tube struct {
	Diameter q.Length
	To       q.Length // the diameter that it tapers to; 0 for none
	Length   q.Length
	Count    int // 0 for one
}

// Kind is "tube", which stands in a frame only.
func (*Tube) Kind() Kind { return Kind{Key: "tube", Title: "Tube"} }

// Measures are its diameters, its length and its count.
func (s *Tube) Measures() []Measure {
	return []Measure{
		lengthOf(&s.Diameter, "diameter", "d", "Diameter", "Across the outside, or the way round divided by 3.14."),
		lengthOf(&s.To, "to", "D", "Tapers to", "The diameter at its other end; left out, it does not taper.").optional(),
		lengthOf(&s.Length, "length", "l", "Length", "From joint to joint; of a bent tube, along its middle line."),
		count(&s.Count, 1, MaxCount, "count", "", "Count", "How many there are of it; left out, one."),
	}
}

// Check refuses what lies outside the limits.
func (s *Tube) Check() error { return check(s.Measures()) }

func (s *Tube) count() int { return max(1, s.Count) }

// ends are its diameters.
func (s *Tube) ends() (from, to q.Length) {
	if s.To == 0 {
		return s.Diameter, s.Diameter
	}
	return s.Diameter, s.To
}

// Area returns that of one: see TubeFormula.
func (s *Tube) Area() q.Area {
	from, to := s.ends()
	return tapered{wide: float64(from) / 2, narrow: float64(to) / 2, height: float64(s.Length)}.outside()
}

// section is that of one in the middle of its length.
func (s *Tube) section() q.Area {
	from, to := s.ends()
	d := (from + to) / 2
	return q.Area(math.Pi / 4 * d * d)
}

// Form is "tube".
func (*Tube) Form() string { return tube }

// Formula is TubeFormula.
func (*Tube) Formula() trace.Formula { return TubeFormula }
