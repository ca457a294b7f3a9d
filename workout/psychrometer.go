package workout

import (
	"errors"
	"fmt"
	"slices"

	"coatwright/planner/air"
	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// psychrometerSheet reads the humidity off two thermometers.
var psychrometerSheet = &Sheet{
	Slug: "psychrometer", Title: "Humidity by two thermometers",
	Lead: "What a whirled psychrometer, one thermometer dry and one in a wet wick, says of the air: a check on any hygrometer.",
	Note: "background/reading-a-psychrometer",
	fields: func(*Entry) []Field {
		return slices.Concat([]Field{
			{Key: "dry", Label: "Dry thermometer", Hint: "25 C or 77 F", Default: "25 C"},
			{Key: "wet", Label: "Wet thermometer", Hint: "the lowest that it shows after whirling: 18 C or 64.4 F", Default: "18 C"},
			{Key: "wick", Label: "The wick is", Default: wickWet, Choices: []Choice{{Value: wickWet, Title: "wet"}, {Value: wickFrozen, Title: "frozen"}}},
			{Key: "off", Label: "Each may be off by", Hint: "half the smallest line, or what its sheet says: 0.2 K or 0.4 F", Default: "0.2 K"},
		}, pressureFields())
	},
	answer: psychrometerAnswer,
}

// The states of a wick.
const (
	wickWet    = "wet"
	wickFrozen = "frozen"
)

var slack = q.Range[q.Difference]{Low: 0, High: 3}

// whirled is a reading, and the air that it stands for.
type whirled struct {
	air.Reading
	air      air.Air
	off      q.Difference
	pressure known[q.Pressure]
}

func psychrometerAnswer(e *Entry) *Answer {
	w := whirled{
		Reading: air.Reading{Dry: within(e, "dry", workable), Wet: within(e, "wet", workable), Ice: e.text("wick") == wickFrozen},
		off:     within(e, "off", slack),
	}
	var figures []trace.Figure
	w.pressure, figures = readPressure(e)
	if !e.sound() {
		return nil
	}
	w.Pressure = w.pressure.value
	var err error
	if w.air, err = air.WithWarmth.Air(w.Reading); err != nil {
		e.takeReading(err)
		return nil
	}
	humidity := w.humidityFigure()
	return &Answer{
		Says:    []string{"The air holds " + q.ShowRange(q.Metric, q.Range[q.Fraction]{Low: q.Fraction(humidity.Range.Low.SI), High: q.Fraction(humidity.Range.High.SI)}) + " humidity."},
		Figures: slices.Concat([]trace.Figure{humidity, w.dewFigure(), w.vapourFigure(), w.fullFigure()}, figures),
	}
}

// takeReading makes a problem of a reading that no air gives, told at the wet
// thermometer.
func (e *Entry) takeReading(err error) {
	var wrong *q.Error
	if errors.As(err, &wrong) {
		e.fail("wet", "Found %s, expected %s.", wrong.Found, wrong.Expected)
		return
	}
	e.take("wet", err)
}

func (w whirled) vapour() trace.Input {
	return trace.In("e", "vapour pressure of the air", w.air.VapourPressure(), fromFigure("vapour-pressure"))
}

func (w whirled) vapourFigure() trace.Figure {
	f := trace.Figure{
		Key: "vapour-pressure", Name: "Vapour pressure of the air", Value: w.vapour().Value, Formula: air.WithWarmth.Formula,
		Inputs: []trace.Input{
			trace.In("T", "dry thermometer", w.Dry, entered("dry")), trace.In("Tw", "wet thermometer", w.Wet, entered("wet")),
			w.pressure.in("p", "pressure of the air"),
		},
	}
	if w.Ice {
		f.Remarks = []string{"Over a frozen wick the constant is 0.000582, and e_s that over ice (glossary of the American Meteorological Society)."}
	}
	return f
}

func (w whirled) fullFigure() trace.Figure {
	return trace.Figure{
		Key: "full-pressure", Name: "Vapour pressure of air that is full", Value: q.ValueOf(air.SaturationPressure(w.Dry)), Formula: air.SaturationFormula,
		Inputs: []trace.Input{trace.In("t", "dry thermometer", w.Dry, entered("dry"))},
	}
}

// humidityFigure is the humidity, and what it may be with both thermometers off
// as far as they may be.
func (w whirled) humidityFigure() trace.Figure {
	formula := air.VapourFormula
	formula.Text = "RH = e / p_ws(t)"
	low, high := w.ends()
	f := trace.Figure{
		Key: "relative-humidity", Name: "Humidity", Value: q.ValueOf(w.air.Humidity), Range: trace.SpanOf(low, high), Formula: formula,
		Inputs: []trace.Input{w.vapour(), trace.In("p_ws(t)", "vapour pressure of air that is full", air.SaturationPressure(w.Dry), fromFigure("full-pressure"))},
		Remarks: []string{
			"The air must pass the wick at 3 m/s or more, and the wick must be clean and wet with clean water. In still air it reads too damp.",
		},
	}
	if plain, err := air.Plain.Air(w.Reading); err == nil {
		f.Remarks = append(f.Remarks, fmt.Sprintf("A second published form, with one constant, gives %.1f %%.", plain.Humidity.Percent()))
	}
	return f
}

// ends are the humidities of the readings at the ends of what the thermometers
// may be off. Where no air is so dry, it is 0.
func (w whirled) ends() (low, high q.Fraction) {
	at := func(dry, wet q.Difference) q.Fraction {
		r := w.Reading
		r.Dry += q.Temperature(dry)
		r.Wet = min(r.Wet+q.Temperature(wet), r.Dry)
		r.Ice = r.Ice && r.Wet <= q.Celsius(0)
		a, err := air.WithWarmth.Air(r)
		if err != nil {
			return 0
		}
		return a.Humidity
	}
	return at(w.off, -w.off), at(-w.off, w.off)
}

func (w whirled) dewFigure() trace.Figure {
	f := trace.Figure{
		Key: "dew-point", Name: "Dew point", Value: q.ValueOf(w.air.DewPoint()), Formula: air.DewPointFormula,
		Inputs: []trace.Input{
			trace.In("RH", "humidity", w.air.Humidity, fromFigure("relative-humidity")),
			trace.In("p_ws(t)", "vapour pressure of air that is full", air.SaturationPressure(w.Dry), fromFigure("full-pressure")),
		},
	}
	if w.air.DewPoint() < q.Celsius(0) {
		f.Remarks = []string{"Below freezing this is where frost settles."}
	}
	return f
}
