package workout

import (
	"fmt"
	"slices"
	"strings"

	"coatwright/planner"
	"coatwright/planner/air"
	"coatwright/planner/drying"
	"coatwright/planner/library"
	"coatwright/planner/room"
	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// dryingSheet says how long a film takes to a dryness state in some air.
var dryingSheet = &Sheet{
	Slug: "drying", Title: "How long a film dries",
	Lead: "How long a film takes to a dryness state in your air, what makes it longer or shorter, and a chart for any other air.",
	Note: "background/why-waterborne-slows-in-damp-air",
	fields: func(e *Entry) []Field {
		return slices.Concat(dryingFields(e, anyDrying), roomFields(),
			[]Field{{Key: "film", Label: "Film, of a full coat", Hint: "100 %; 200 % for a coat of twice the thickness", Default: "100 %"}})
	},
	answer: dryingAnswer,
}

var coatShares = q.Range[q.Fraction]{Low: 0.05, High: 10}

// dryingFields ask for a film and one of the dryness states that its note has a
// time to. The film stands at its first choice that first says.
func dryingFields(e *Entry, first func(*library.Library, []Choice) string) []Field {
	films := sprayedChoices(e.lib, func(m *library.Material) bool { return m.Role != "" && len(m.Dries) > 0 })
	of := e.choice("of", first(e.lib, films))
	fields := []Field{{Key: "of", Label: "Film", Choices: films, Default: first(e.lib, films)}}
	if m := e.lib.Materials[of]; m != nil {
		states := stateChoices(e.lib.Words, m)
		fields = append(fields, Field{Key: "state", Label: "Until it is", Choices: states, Default: firstState(m, states)})
	}
	return fields
}

// anyDrying is the first film that an effect or a finish asks for and that waits
// for water: most can be said of it.
func anyDrying(lib *library.Library, choices []Choice) string {
	for _, c := range choices {
		m := lib.Materials[c.Value]
		if !lib.Words.Role(m.Role).Prep && drying.Pace(m.Dries[library.Recoat].By) == drying.Evaporation {
			return c.Value
		}
	}
	return firstOf(choices)
}

// stateChoices are the dryness states that m's note has a time to, from wet to
// cured.
func stateChoices(words *library.Vocabulary, m *library.Material) []Choice {
	var out []Choice
	for _, w := range words.Dryness {
		if _, ok := m.Dries[w.Name]; ok {
			out = append(out, Choice{Value: w.Name, Title: capital(spaced(w.Name))})
		}
	}
	return out
}

// firstState is the one that lets the next film on, where there is one.
func firstState(m *library.Material, states []Choice) string {
	if _, ok := m.Dries[library.Recoat]; ok {
		return library.Recoat
	}
	return firstOf(states)
}

// drier is a film on its way to a dryness state in some air.
type drier struct {
	*library.Material
	name string // of the state
	library.Drying
	air      air.Air
	film     q.Fraction // of a full coat
	laid     trace.Origin
	standing library.Standing
}

// readDrier reads a film, a state and the room; the material is nil where one of
// them is wrong.
func readDrier(e *Entry) drier {
	d := drier{Material: e.lib.Materials[e.text("of")], air: readRoom(e), film: 1}
	if d.Material == nil || e.problems["of"] != "" {
		d.Material = nil
		return d
	}
	d.name = e.text("state")
	if e.problems["state"] != "" {
		d.Material = nil
		return d
	}
	d.Drying, d.standing, d.laid = d.Dries[d.name], e.lib.Words.StandingOf(d.Standing), d.note()
	return d
}

func dryingAnswer(e *Entry) *Answer {
	d := readDrier(e)
	d.film, d.laid = within(e, "film", coatShares), entered("film")
	if d.Material == nil || !e.sound() {
		return nil
	}
	a := &Answer{Verdict: d.judge(), Chart: DryingChart(d.Material, d.name, d.air, d.film)}
	if time, ok := d.timeFigure(); ok {
		a.Figures = append(a.Figures, time)
		a.Says = append(a.Says, fmt.Sprintf("%s is %s after %s.", d.Title, spaced(d.name), between(time)))
	}
	a.Says = append(a.Says, d.says(e.lib.Words)...)
	if d.Closes > 0 {
		a.Figures = append(a.Figures, d.closesFigure())
	}
	if drying.Pace(d.By) == drying.Evaporation {
		a.Figures = append(a.Figures, d.wetFigure())
	}
	return a
}

// judge holds the air against what the film wants, on a part as warm as the air.
func (d drier) judge() *Verdict {
	if never(d.state(), d.state().Time(d.air)) {
		return &Verdict{"no", "Nothing dries in this air: it is full of water. Dry it, or warm it and let some of it out."}
	}
	judged := room.Assess(room.Room{Air: d.air, Surface: d.air.Temperature}, []room.Wants{planner.WantsOf(d.Material)})
	if len(judged.Findings) > 0 {
		worst := slices.MaxFunc(judged.Findings, func(a, b room.Finding) int { return int(a.Level - b.Level) })
		return &Verdict{worst.Level.String(), worst.What}
	}
	return &Verdict{"go", fmt.Sprintf("This air suits %s, on a part as warm as the air.", lowered(d.Title))}
}

// between is a time with its range, for a sentence.
func between(f trace.Figure) string {
	text := q.Metric.Show(f.Value)
	if f.Range != nil {
		text += fmt.Sprintf(", %s to %s", q.Metric.Show(f.Range.Low), q.Metric.Show(f.Range.High))
	}
	return text
}

// says is what the state means, and what a fan would do.
func (d drier) says(words *library.Vocabulary) []string {
	var out []string
	for _, w := range words.Dryness {
		if w.Name == d.name {
			out = append(out, fmt.Sprintf("%s: %s", capital(spaced(w.Name)), lowered(w.Is)))
		}
	}
	if fan := words.RoomChanges.Fan.Most; fan > 0 {
		help := d.state().Hurry(d.hurried(), drying.Oven{Room: d.air}, fan)
		out = append(out, help[0].Says)
	}
	return out
}

func (d drier) state() drying.State { return stateOf(d.Drying, d.film) }

// hurried is what the film's note allows, its reason as a piece of a sentence.
func (d drier) hurried() drying.Forced {
	return drying.Forced{Air: d.Forced.Air, Heat: d.Forced.Heat, Because: strings.TrimSuffix(d.Forced.Because, ".")}
}

// note is where the film's figures come from.
func (d drier) note() trace.Origin { return fromNote("material/"+d.Slug, d.Standing) }

// inputs are what goes into a time of that pace, in the order of its formula.
func (d drier) inputs(in q.Time, by string) []trace.Input {
	origins := drying.Origins{Time: d.note(), Air: entered("air"), Film: d.laid}
	inputs := drying.RatesIn(d.air).Inputs(in, drying.Pace(by), d.Build*q.Length(d.film), d.Build, origins)
	for i := range inputs {
		if at, own := entryOf[inputs[i].Symbol]; own && inputs[i].Origin == origins.Air {
			inputs[i].Origin = entered(at)
		}
	}
	return inputs
}

// entryOf is in which field a symbol of the drying formulas was entered.
var entryOf = map[string]string{"t": "air", "T": "air", "RH": "humidity", "v": "airflow"}

// asNotedFormula is that of a time which no air changes.
var asNotedFormula = trace.Formula{Text: "t = t0", Source: "the film's note: the air does not change it", Note: "background/reading-a-data-sheet"}

func formulaOf(by string) trace.Formula {
	if f := drying.FormulaOf(drying.Pace(by)); f != (trace.Formula{}) {
		return f
	}
	return asNotedFormula
}

// timeFigure is the time, from the best that the note's figures, the published
// energies and the film may turn out to the worst. There is none where nothing
// dries.
func (d drier) timeFigure() (trace.Figure, bool) {
	if never(d.state(), d.state().Time(d.air)) {
		return trace.Figure{}, false
	}
	times := d.state().Times(d.air)
	grown := drying.Thickness(drying.Pace(d.By), q.Length(d.film), 1)
	off := d.standing.Time
	low := times.Low * q.Time(grown.Low/grown.Likely) * q.Time(off.Low)
	high := times.High * q.Time(grown.High/grown.Likely) * q.Time(off.High)
	f := trace.Figure{
		Key: "time", Name: "Until it is " + spaced(d.name), Value: q.ValueOf(times.Likely), Formula: formulaOf(d.By), Inputs: d.inputs(d.In, d.By),
		Remarks: []string{capital(drying.RatesIn(d.air).How(d.In, drying.Pace(d.By), d.Build*q.Length(d.film), d.Build)) + "."},
	}
	if low < high {
		f.Range = trace.SpanOf(low, high)
	}
	if d.standing.Is != "" {
		f.Remarks = append(f.Remarks, fmt.Sprintf("The note's own time is a %s: it may turn out %s of that.", spaced(d.standing.Name), q.ShowRange(q.Metric, off)))
	}
	return f, true
}

// closesFigure is when the next film comes too late. Where a reaction shuts the
// window, a warm room does so sooner; a cold one is not trusted to hold it open.
func (d drier) closesFigure() trace.Figure {
	f := trace.Figure{Key: "closes", Name: "The window closes after", Value: q.ValueOf(d.Closes), Formula: asNotedFormula, Inputs: []trace.Input{trace.In("t0", "as its note says", d.Closes, d.note())}}
	if drying.Pace(d.By) == drying.Cure {
		f.Formula = drying.CureFormula
		f.Formula.Text = "t = t0 min(1, exp(E/R (1/T - 1/T0)))"
		f.Value = q.ValueOf(d.Closes * q.Time(min(1, drying.Factor(drying.Cure, d.air))))
		f.Inputs = d.inputs(d.Closes, d.By)
	}
	return f
}

func (d drier) wetFigure() trace.Figure {
	return trace.Figure{
		Key: "wet-bulb", Name: "Wet bulb, to which the film cools", Value: q.ValueOf(d.air.WetBulb()), Formula: air.WetBulbFormula,
		Inputs: []trace.Input{
			trace.In("t", "temperature of the air", d.air.Temperature, entered("air")), trace.In("RH", "humidity of the air", d.air.Humidity, entered("humidity")),
			trace.In("p", "pressure of the air", air.StandardPressure, trace.Origin{From: trace.FromDefault}),
		},
	}
}
