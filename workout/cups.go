package workout

import (
	"cmp"
	"errors"
	"fmt"
	"maps"
	"slices"

	"coatwright/planner/library"
	"coatwright/planner/trace"
	"coatwright/planner/viscosity"
	q "coatwright/quantity"
)

// viscositySheet reads one efflux cup's seconds in all others.
var viscositySheet = &Sheet{
	Slug: "viscosity", Title: "Seconds in a cup",
	Lead:   "What a time in one efflux cup says of a paint, what every other cup would read, and which films spray as thin as that.",
	Note:   "background/viscosity-cups",
	fields: viscosityFields,
	answer: viscosityAnswer,
}

// firstThick is the paint that the sheet is first opened with: about as thin as
// many spray.
const firstThick q.Viscosity = 60e-6

// ownViscosity is chosen where a sheet gives the viscosity itself.
const ownViscosity = "viscosity"

var (
	cupTimes    = q.Range[q.Time]{Low: 1, High: 1000}
	viscosities = q.Range[q.Viscosity]{Low: 0.3e-6, High: 10e-3}
)

func viscosityFields(e *Entry) []Field {
	first := cupFor(firstThick).Name()
	fields := []Field{{Key: "cup", Label: "Cup", Default: first, Choices: append(cupChoices(), Choice{ownViscosity, "a viscosity that the sheet gives", "No cup"})}}
	if e.choice("cup", first) == ownViscosity {
		fields = append(fields, Field{Key: "thick", Label: "Kinematic viscosity", Hint: "60 mm2/s, which is 60 cSt", Default: "60 mm2/s"})
	} else {
		fields = append(fields, Field{Key: "reads", Label: "It ran for", Hint: "to the first break in the stream: 45 s", Default: "45 s"}, warmthField())
	}
	return append(fields, Field{Key: "weighs", Label: "Density of the paint", Hint: "for mPa s: 1.05 kg/L or 8.8 lb/gal", Optional: true})
}

// warmthField asks how warm the paint was in the cup.
func warmthField() Field {
	return Field{Key: "warm", Label: "The paint was at", Hint: "23 C or 73 F; left empty: as the cup's standard wants it", Optional: true}
}

// cupChoices are the cups that are known, by their kind.
func cupChoices() []Choice {
	var out []Choice
	for _, c := range viscosity.Cups() {
		out = append(out, Choice{c.Name(), c.Name(), c.Kind})
	}
	return out
}

// cupFor is the cup that reads a viscosity best, of those that read alike from
// one to another.
func cupFor(v q.Viscosity) viscosity.Cup {
	able := viscosity.Able(v)
	if len(able) == 0 {
		return viscosity.Cups()[0]
	}
	return slices.MinFunc(able, func(a, b viscosity.Reading) int { return cmp.Compare(a.Cup.Spread, b.Cup.Spread) }).Cup
}

// cupNamed is the cup that was chosen.
func cupNamed(name string) (viscosity.Cup, bool) {
	cups := viscosity.Cups()
	i := slices.IndexFunc(cups, func(c viscosity.Cup) bool { return c.Name() == name })
	if i < 0 {
		return viscosity.Cup{}, false
	}
	return cups[i], true
}

func viscosityAnswer(e *Entry) *Answer {
	cup, isCup := cupNamed(e.text("cup"))
	if !e.sound() {
		return nil
	}
	a := &Answer{}
	v, thick := q.Viscosity(0), trace.Input{}
	if isCup {
		at := readCup(e, cup, "reads")
		a.Says = append(a.Says, readWarm(e, at)...)
		if !e.sound() {
			return nil
		}
		f := cupFigure("thickness", "Kinematic viscosity", at, "reads")
		v = q.Viscosity(f.Value.SI)
		a.Figures, a.Tables, thick = []trace.Figure{f}, []Table{cupTable(others(at))}, taken("ν", "kinematic viscosity", f)
		a.Says = append(a.Says, cup.Cautions...)
	} else {
		v = within(e, "thick", viscosities)
		a.Tables, thick = []Table{cupTable(inAll(v))}, trace.In("ν", "kinematic viscosity", v, entered("thick"))
	}
	density := within(e, "weighs", liquids)
	if !e.sound() {
		return nil
	}
	if films := filmsAt(e.lib, v); len(films.Rows) > 0 {
		a.Tables = append(a.Tables, films)
	}
	if density > 0 {
		a.Figures = append(a.Figures, dynamicFigure(v, density, thick))
	}
	a.Says = append(a.Says, "A cup tells the truth of liquids that flow alike however they are stirred. A paint that sets to a gel in the can does not: stir it, run the cup at once, and compare it only with itself.")
	return a
}

// readCup reads how long a cup ran. A time for which the cup is not made is a
// problem of the field, which names a cup that is.
func readCup(e *Entry, cup viscosity.Cup, key string) viscosity.Reading {
	r := viscosity.Reading{Cup: cup, Time: within(e, key, cupTimes)}
	if e.problems[key] == "" && e.values[key] != "" {
		_, err := r.Viscosity()
		e.take(key, err)
	}
	return r
}

// readWarm reads how warm the paint was, and says what the cup would make of it at
// the warmth that its standard wants.
func readWarm(e *Entry, at viscosity.Reading) []string {
	warm := within(e, "warm", workable)
	if e.values["warm"] == "" || !e.sound() {
		return []string{fmt.Sprintf("The %s cup is read at %s.", at.Cup.Name(), metric(at.Cup.Temperature))}
	}
	v, err := at.Viscosity()
	if err != nil {
		return nil // told at the time
	}
	r, err := viscosity.Warmed(v, warm, at.Cup.Temperature)
	if e.take("warm", err); err != nil || r.Low == r.High {
		return nil
	}
	return []string{fmt.Sprintf("It was read at %s. At the %s of the cup's standard it may be %s: bring it there and read again before you trust a figure from a data sheet.",
		metric(warm), metric(at.Cup.Temperature), q.ShowRange(q.Metric, r))}
}

// cupFigure is the viscosity that a reading stands for; its time stands in a field.
func cupFigure(key, name string, r viscosity.Reading, field string) trace.Figure {
	v, _ := r.Viscosity() // was read, so the cup is made for it
	return trace.Figure{
		Key: key, Name: name, Value: q.ValueOf(v), Formula: r.Cup.Formula(),
		Inputs:  []trace.Input{inSecondsOf("t", "time in the "+r.Cup.Name()+" cup", r.Time, field)},
		Remarks: []string{fmt.Sprintf("Another cup of this name may read up to %s more or less.", metric(r.Cup.Spread))},
	}
}

// inSecondsOf is a cup's time as an input: figures show minutes, and a cup is read
// in seconds.
func inSecondsOf(symbol, name string, t q.Time, field string) trace.Input {
	return trace.In(symbol, name+", in seconds", q.Number(t), entered(field))
}

func dynamicFigure(v q.Viscosity, density q.Density, thick trace.Input) trace.Figure {
	return trace.Figure{
		Key: "dynamic", Name: "Dynamic viscosity, in mPa s", Value: q.ValueOf(q.Number(viscosity.DynamicOf(v, density) * 1e3)), Formula: viscosity.DynamicFormula,
		Inputs:  []trace.Input{thick, trace.In("ρ", "density of the paint", density, entered("weighs"))},
		Remarks: []string{"1 mPa s is 1 cP, which some sheets print."},
	}
}

// converted is what a cup reads of a paint; err is for one that is not made for it.
type converted struct {
	to   viscosity.Reading
	span q.Range[q.Time]
	err  error
}

// others are what all other cups read where one read at.
func others(at viscosity.Reading) []converted {
	var out []converted
	for _, c := range viscosity.Cups() {
		if c.Name() != at.Cup.Name() {
			got, err := viscosity.Convert(at, c)
			out = append(out, outOf(converted{got.To, got.Range, err}, c))
		}
	}
	return out
}

// inAll are what all cups read of a paint of viscosity v.
func inAll(v q.Viscosity) []converted {
	var out []converted
	for _, c := range viscosity.Cups() {
		t, err := c.Time(v)
		off := t * q.Time(c.Spread)
		out = append(out, outOf(converted{viscosity.Reading{Cup: c, Time: t}, q.Range[q.Time]{Low: t - off, High: t + off}, err}, c))
	}
	return out
}

// outOf gives what a cup is not made for the time that its equation has all the
// same.
func outOf(c converted, cup viscosity.Cup) converted {
	var wrong *viscosity.RangeError
	c.to.Cup = cup
	if errors.As(c.err, &wrong) {
		c.to.Time = wrong.Found.Time
	}
	return c
}

// cupTable is what the cups read, those first that are made for it.
func cupTable(all []converted) Table {
	slices.SortStableFunc(all, func(a, b converted) int { return cmp.Compare(unfit(a.err), unfit(b.err)) })
	t := Table{Title: "What the cups read, in seconds", Columns: []string{"Cup", "Reads", "may read", "Made for"}}
	for _, c := range all {
		name, made := c.to.Cup.Name(), fmt.Sprintf("%.0f to %.0f", float64(c.to.Cup.Range.Low), float64(c.to.Cup.Range.High))
		switch {
		case c.err == nil:
			t.Rows = append(t.Rows, []any{name, seconds(c.to.Time), seconds(c.span.Low) + " to " + seconds(c.span.High), made})
		case c.to.Time < c.to.Cup.Range.Low:
			t.Rows = append(t.Rows, []any{name, "runs out too fast", "", made})
		default:
			t.Rows = append(t.Rows, []any{name, "runs too long", "", made})
		}
	}
	return t
}

func unfit(err error) int {
	if err != nil {
		return 1
	}
	return 0
}

// seconds is a time in a cup as a stopwatch in the hand has it.
func seconds(t q.Time) string { return fmt.Sprintf("%.0f", float64(t)) }

// filmsAt are the films of the library that spray at a viscosity.
func filmsAt(lib *library.Library, v q.Viscosity) Table {
	t := Table{Title: "Films that spray as thin as this", Columns: []string{"Film", "Sprays at"}}
	for _, slug := range slices.Sorted(maps.Keys(lib.Materials)) {
		if m := lib.Materials[slug]; m.Viscosity.High > 0 && m.Viscosity.Holds(v) {
			t.Rows = append(t.Rows, []any{m.Title, q.ShowRange(q.Metric, m.Viscosity)})
		}
	}
	return t
}
