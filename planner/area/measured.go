package area

import (
	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// MeasuredFormula stands for an area that is taken as it was measured.
var MeasuredFormula = trace.Formula{Text: "A as measured", Source: "measured", Note: noteParts}

// Measured is an area that somebody has measured, or knows.
type Measured struct{ Surface q.Area }

// Kind is "area".
func (*Measured) Kind() Kind {
	return Kind{Key: "area", Title: "Area already measured", Says: "Whatever was measured before, or stands in the maker's papers."}
}

// Measures are the area.
func (s *Measured) Measures() []Measure {
	return []Measure{{Key: "area", Symbol: "A", Title: "Area", Says: "All of the surface that is painted.", Into: &s.Surface}}
}

// Check refuses what lies outside the limits.
func (s *Measured) Check() error { return check(s.Measures()) }

// Area is what was measured.
func (s *Measured) Area() q.Area { return s.Surface }

// Form is "solid".
func (*Measured) Form() string { return solid }

// Formula is MeasuredFormula.
func (*Measured) Formula() trace.Formula { return MeasuredFormula }

// PaperFormula is how the area of a Paper comes about.
var PaperFormula = trace.Formula{
	Text:   "A = m l w/M",
	Source: "Pandey and Singh, A simple, cost-effective method for leaf area estimation, Journal of Botany 2011, 658240",
	Note:   notePaper,
}

// Paper is a surface as large as the paper that covered it: what its pieces
// weigh, against a whole sheet of the same paper.
type Paper struct {
	Mass                    q.Mass // of the pieces
	SheetLength, SheetWidth q.Length
	SheetMass               q.Mass
}

// Kind is "paper".
func (*Paper) Kind() Kind {
	return Kind{
		Key: "paper", Title: "Weighed paper", Says: "Any shape at all: cover it with masking paper cut to fit, nowhere double, and weigh the pieces and a whole sheet of the same paper.",
		Omits: "The weight of tape and paint on the paper is not taken off; scales that show whole grams are up to half a gram off, so weigh a large sheet.",
	}
}

// Measures are the weight of the pieces, and the sheet.
func (s *Paper) Measures() []Measure {
	return []Measure{
		massOf(&s.Mass, "mass", "m", "Weight of the pieces", "All pieces that covered the part, without tape."),
		{Key: "sheet", Title: "Sheet", Says: "A whole sheet of the same paper, the larger the better.", Parts: []Measure{
			lengthOf(&s.SheetLength, "length", "l", "Length of the sheet", "Along its longer edge."),
			lengthOf(&s.SheetWidth, "width", "w", "Width of the sheet", "Across its length."),
			massOf(&s.SheetMass, "mass", "M", "Weight of the sheet", "On the same scales."),
		}},
	}
}

func massOf(into *q.Mass, key, symbol, title, says string) Measure {
	return Measure{Key: key, Symbol: symbol, Title: title, Says: says, Into: into}
}

// Check refuses what lies outside the limits.
func (s *Paper) Check() error { return check(s.Measures()) }

// Area returns m l w/M.
func (s *Paper) Area() q.Area {
	return q.Area(s.Mass/s.SheetMass) * q.Area(s.SheetLength*s.SheetWidth)
}

// Form is "solid".
func (*Paper) Form() string { return solid }

// Formula is PaperFormula.
func (*Paper) Formula() trace.Formula { return PaperFormula }

// RollFormula is how the area of a Roll comes about.
var RollFormula = trace.Formula{Text: "A = w l (1 - o)", Source: "common practice, no published source", Note: notePaper}

// Roll is a surface as large as the paper or the film that was used off a roll
// to cover it.
type Roll struct {
	Width, Length q.Length
	Over          q.Fraction // lay double, or was cut away
}

// Kind is "roll".
func (*Roll) Kind() Kind {
	return Kind{
		Key: "roll", Title: "Paper off a roll", Says: "Any shape at all: cover it with paper or film off a roll, and measure how much was used.",
		Omits: "As good as the guess of how much lay double or was cut away.",
	}
}

// Measures are what was used, and how much of it was too much.
func (s *Roll) Measures() []Measure {
	return []Measure{
		lengthOf(&s.Width, "width", "w", "Width of the roll", "As it stands on the roll."),
		lengthOf(&s.Length, "length", "l", "Length used", "All lengths that covered the part, end to end."),
		{Key: "over", Symbol: "o", Title: "Too much", Says: "How much of it lay double or was cut away.", Optional: true, Zero: true, Into: &s.Over},
	}
}

// Check refuses what lies outside the limits, and a roll that was all cut away.
func (s *Roll) Check() error {
	if err := check(s.Measures()); err != nil {
		return err
	}
	if s.Over >= 1 {
		return &Error{"over", q.Show(q.Metric, s.Over), "less than 100 %, so that something covered the part"}
	}
	return nil
}

// Area returns w l (1 - o).
func (s *Roll) Area() q.Area { return q.Area(s.Width*s.Length) * q.Area(1-s.Over) }

// Form is "solid".
func (*Roll) Form() string { return solid }

// Formula is RollFormula.
func (*Roll) Formula() trace.Formula { return RollFormula }
