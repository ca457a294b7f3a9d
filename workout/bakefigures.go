package workout

import (
	"math"

	"coatwright/planner/drying"
	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// bakeFigures are the warmth, the hold and the whole of a bake, and what it equals.
func (b baked) bakeFigures(bake drying.Bake) []trace.Figure {
	out := []trace.Figure{b.warmthFigure(bake), b.holdFigure(bake)}
	if drying.Pace(b.By) == drying.Cure {
		out = append(out, b.equalsFigure(bake))
	}
	out = append(out, b.wholeFigure(bake))
	if b.oven.Flash.By != "" && b.oven.Flash.In > 0 {
		out = append(out, b.flashFigure(bake))
	}
	return out
}

// warmthFormula is how warm a part may get.
var warmthFormula = trace.Formula{
	Text:   "T = the least of what is asked for, what the film may get, and what the part may get",
	Source: "the notes of the film and of the part; their data sheets win",
	Note:   drying.BakeFormula.Note,
}

func (b baked) warmthFigure(bake drying.Bake) trace.Figure {
	f := trace.Figure{
		Key: "warmth", Name: "Warmth of the part", Value: q.ValueOf(bake.At), Formula: warmthFormula,
		Inputs:  []trace.Input{trace.In("", "the most that the film may get", b.Forced.Heat, b.note()), b.part},
		Remarks: []string{"Measured on the part, at its warmest place: a lamp heats dark and thin places more. The oven's own reading does not count."},
	}
	if b.wish > 0 {
		f.Inputs = append(f.Inputs, trace.In("", "asked for", b.wish, entered("at")))
	}
	return f
}

func (b baked) warmth(bake drying.Bake) trace.Input {
	return trace.In("T", "warmth of the part", bake.At, fromFigure("warmth"))
}

// flashed is the flash-off as it goes into other figures.
func (b baked) flashed(bake drying.Bake) trace.Input {
	in := trace.In("flash", "flash-off before it", bake.Flash, fromFigure("flash-off"))
	switch {
	case b.oven.Flash.By == "" && b.oven.Flash.In > 0:
		in.Origin = entered("flash")
	case b.oven.Flash.In == 0:
		in.Origin = trace.Origin{From: trace.FromDefault}
	}
	return in
}

func (b baked) flashFigure(bake drying.Bake) trace.Figure {
	return trace.Figure{
		Key: "flash-off", Name: "Flash-off first", Value: q.ValueOf(bake.Flash), Formula: formulaOf(string(b.oven.Flash.By)),
		Inputs:  b.inputs(b.Flash.In, b.Flash.By),
		Remarks: []string{"Its note asks for so long between coats. Look as well: no warmth before the film is dull."},
	}
}

// heating is the time of the warming up.
func (b baked) heating() trace.Input {
	return trace.In("", "warming up", b.oven.HeatUp, entered("heat-up"))
}

// energy is the activation energy with its published range.
func energy() trace.Input {
	in := trace.In("E", "activation energy", q.MolarEnergy(drying.ActivationEnergy), trace.Origin{From: trace.FromSource, At: "published values for coatings"})
	in.Range = trace.SpanOf(drying.Energies().Low, drying.Energies().High)
	return in
}

// holdFigure is how long the part is held, from the best that the note's time and
// the published energies may turn out to the worst.
func (b baked) holdFigure(bake drying.Bake) trace.Figure {
	f := trace.Figure{
		Key: "hold", Name: "Hold it there for", Value: q.ValueOf(bake.Hold.Likely), Formula: drying.BakeFormula,
		Inputs: []trace.Input{
			trace.In("t0", "time in the reference air", b.In, b.note()), b.warmth(bake), b.flashed(bake), b.heating(),
			trace.In("", "the room", b.air.Temperature, entered("air")),
		},
		Remarks: []string{"A bake on its data sheet wins."},
	}
	if drying.Pace(b.By) == drying.Cure {
		f.Inputs = append(f.Inputs, energy())
		f.Remarks = append(f.Remarks, "To be sure of a film whose energy nobody has measured, hold it for the longest.")
	}
	if span := b.span(b.oven); span.Low < span.High {
		f.Range = trace.SpanOf(span.Low, span.High)
	}
	return f
}

// span is what the hold in an oven may turn out when the note's own time is off.
func (b baked) span(o drying.Oven) q.Range[q.Time] {
	at := func(off q.Fraction) drying.Estimate {
		s := b.state()
		s.In *= q.Time(off)
		bake, err := s.Bake(o)
		if err != nil {
			return drying.Estimate{} // never: the oven was asked before, and only the time is another
		}
		return bake.Hold
	}
	return q.Range[q.Time]{Low: at(b.standing.Time.Low).Low, High: at(b.standing.Time.High).High}
}

func (b baked) equalsFigure(bake drying.Bake) trace.Figure {
	held := trace.In("t", "held", bake.Hold.Likely, fromFigure("hold"))
	if b.held > 0 {
		held = trace.In("t", "held", b.held, entered("held"))
	}
	equal := drying.Equivalent(q.Time(held.Value.SI), bake.At)
	f := trace.Figure{
		Key: "equals", Name: "Without heat that equals", Value: q.ValueOf(equal.Likely), Formula: drying.EquivalentFormula,
		Inputs:  []trace.Input{held, b.warmth(bake), trace.In("T0", "temperature of the reference air", drying.Reference().Temperature, trace.Origin{From: trace.FromSource, At: "ISO 3270"}), energy()},
		Remarks: []string{"Without heat is at 23 °C. Its range is as wide as that of the published energies: it compares two bakes of one film, and does not stand for a data sheet."},
	}
	if equal.Low < equal.High {
		f.Range = trace.SpanOf(equal.Low, equal.High)
	}
	return f
}

// wholeFormula is how long a bake takes in all.
var wholeFormula = trace.Formula{Text: "whole = flash + warming up + hold", Source: "a sum; cooling down is not in it", Note: drying.BakeFormula.Note}

func (b baked) wholeFigure(bake drying.Bake) trace.Figure {
	f := trace.Figure{
		Key: "whole", Name: "In all", Value: q.ValueOf(bake.Whole.Likely), Formula: wholeFormula,
		Inputs: []trace.Input{b.flashed(bake), b.heating(), trace.In("", "hold", bake.Hold.Likely, fromFigure("hold"))},
	}
	if span := b.span(b.oven); span.Low < span.High {
		before := bake.Flash + bake.HeatUp
		f.Range = trace.SpanOf(before+span.Low, before+span.High)
	}
	return f
}

// table is the hold at other warmths, up to the most that is allowed.
func (b baked) table(most q.Temperature) Table {
	t := Table{Title: "The hold at other warmths", Columns: []string{"The part at", "Hold", "at the least", "at the most"}}
	o := b.oven
	row := func(at q.Temperature) {
		o.At = at
		if bake, err := b.state().Bake(o); err == nil {
			span := b.span(o)
			t.Rows = append(t.Rows, []any{q.ValueOf(bake.At), q.ValueOf(bake.Hold.Likely), q.ValueOf(span.Low), q.ValueOf(span.High)})
		}
	}
	const step = 10
	first := step * math.Ceil((b.air.Temperature.Celsius()+step/2)/step)
	for c := first; c < most.Celsius()-step/5; c += step {
		row(q.Celsius(c))
	}
	row(most)
	return t
}
