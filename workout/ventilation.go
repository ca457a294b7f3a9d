package workout

import (
	"fmt"

	"coatwright/planner/library"
	"coatwright/planner/trace"
	"coatwright/planner/ventilation"
	q "coatwright/quantity"
)

// boothSheet says how much air the openings of a booth take.
var boothSheet = &Sheet{
	Slug: "booth-air", Title: "Air through a booth",
	Lead:   "How much air the openings of a spray booth take at the least, by the published rules, and what a fan makes of it.",
	Note:   "background/how-much-air-a-booth-takes",
	fields: boothFields,
	answer: boothAnswer,
}

// ownVelocity is chosen where a local rule has another velocity.
const ownVelocity = "own"

var (
	openings = q.Range[q.Length]{Low: 0.05, High: 50}
	slots    = q.Range[q.Area]{Low: 0, High: 1000}
	fans     = q.Range[q.AirFlow]{Low: 0, High: 300}
	inward   = q.Range[q.Speed]{Low: 0.05, High: 5}
)

func boothFields(e *Entry) []Field {
	var rules []Choice
	for _, v := range e.lib.Words.BoothVelocities {
		rules = append(rules, Choice{Value: v.Name, Title: v.Is, Group: v.Source})
	}
	rules = append(rules, Choice{ownVelocity, "A velocity that I enter", "From the local code"})
	fields := []Field{
		{Key: "width", Label: "Width of the opening", Hint: "3 m or 10 ft", Default: "3 m"},
		{Key: "height", Label: "Height of the opening", Hint: "2.4 m or 8 ft", Default: "2.4 m"},
		{Key: "slots", Label: "Other openings, together", Hint: "0.2 m2 or 2 ft2", Optional: true},
		{Key: "rule", Label: "Spraying and booth", Choices: rules, Default: firstOf(rules)},
	}
	if chosen(e, "rule", firstOf(rules)) == ownVelocity {
		fields = append(fields, Field{Key: "velocity", Label: "Air velocity in the openings", Hint: "0.5 m/s or 100 ft/min", Default: "0.5 m/s"})
	}
	return append(fields, Field{Key: "fan", Label: "What the fan draws now", Hint: "5000 m3/h or 3000 cfm, with the filters as they are", Optional: true})
}

func boothAnswer(e *Entry) *Answer {
	width, height, others := within(e, "width", openings), within(e, "height", openings), within(e, "slots", slots)
	rule, from := velocityOf(e)
	fan := within(e, "fan", fans)
	if !e.sound() {
		return nil
	}
	open := openFigure(width, height, others)
	area := q.Area(open.Value.SI)
	need, err := rule.Through(area)
	if err != nil {
		e.take("rule", err)
		return nil
	}
	a := &Answer{Defers: ventilation.Defer, Figures: []trace.Figure{open, airFigure(open, rule, need, from)}}
	if fan > 0 {
		a.Figures = append(a.Figures, faceFigure(open, fan))
		a.Verdict = judgeFan(need, fan)
	}
	a.Tables = append(a.Tables, velocityTable(e.lib.Words, area))
	return a
}

// velocityOf is the rule that was chosen, and where its velocity comes from.
func velocityOf(e *Entry) (ventilation.Velocity, trace.Origin) {
	name := e.text("rule")
	for _, v := range e.lib.Words.BoothVelocities {
		if v.Name == name {
			return ruleOf(v), trace.Origin{From: trace.FromSource}
		}
	}
	if name != ownVelocity {
		return ventilation.Velocity{}, trace.Origin{}
	}
	v := within(e, "velocity", inward)
	return ventilation.Velocity{For: "the velocity entered", Design: v, Range: q.Range[q.Speed]{Low: v, High: v}}, entered("velocity")
}

func ruleOf(v library.BoothVelocity) ventilation.Velocity {
	return ventilation.Velocity{For: v.Is, Design: v.Design, Range: v.Range, Source: v.Source}
}

func openFigure(width, height q.Length, others q.Area) trace.Figure {
	f := trace.Figure{
		Key: "open", Name: "Openings of the booth", Value: q.ValueOf(q.Area(width*height) + others),
		Formula: trace.Formula{Text: "A = w h + others", Source: "geometry", Note: ventilation.FaceFormula.Note},
		Inputs:  []trace.Input{trace.In("w", "width", width, entered("width")), trace.In("h", "height", height, entered("height"))},
	}
	if others > 0 {
		f.Inputs = append(f.Inputs, trace.In("", "other openings", others, entered("slots")))
	}
	return f
}

// airFigure is the air that a booth should be designed for, and the range in
// which it complies.
func airFigure(open trace.Figure, rule ventilation.Velocity, need ventilation.Need, from trace.Origin) trace.Figure {
	area := q.Area(open.Value.SI)
	velocity := trace.In("v", "air velocity in the openings", rule.Design, from)
	f := trace.Figure{
		Key: "air", Name: "Air to design for", Value: q.ValueOf(rule.DesignFlow(area)), Formula: ventilation.FaceFormula,
		Remarks: []string{"It has to come in again, clean and warm, on the other side.", "Filters load: it must still flow just before they are changed."},
	}
	velocity.Range, f.Range = spanOf(rule.Range), spanOf(need.Flow)
	f.Inputs = []trace.Input{taken("A", "openings", open), velocity}
	return f
}

// faceFigure is the velocity that a fan makes.
func faceFigure(open trace.Figure, fan q.AirFlow) trace.Figure {
	formula := ventilation.FaceFormula
	formula.Text = "v = Q/A"
	return trace.Figure{
		Key: "face", Name: "Air velocity that the fan makes", Value: q.ValueOf(ventilation.FaceVelocity(fan, q.Area(open.Value.SI))), Formula: formula,
		Inputs:  []trace.Input{trace.In("Q", "what the fan draws", fan, entered("fan")), taken("A", "openings", open)},
		Remarks: []string{"The mean: measure it in several places, for corners can be dead."},
	}
}

// judgeFan says how far a fan stays behind. One that does not is no permission.
func judgeFan(need ventilation.Need, fan q.AirFlow) *Verdict {
	short := need.Short(fan)
	switch {
	case short.Low > 0:
		return &Verdict{"no", fmt.Sprintf("The fan stays %s behind the least that the rule asks for.", q.Show(q.Metric, short.Low))}
	case fan > need.Flow.High:
		return &Verdict{"care", "The fan draws more than the rule's range. Faster air carries paint past the part, and the filters must be made for it."}
	}
	return &Verdict{"care", "The fan reaches what the rule asks for, on average. That says nothing of what may be breathed there."}
}

// velocityTable holds the openings against every rule.
func velocityTable(words *library.Vocabulary, area q.Area) Table {
	t := Table{Title: "By each of the rules", Columns: []string{"Spraying and booth", "Velocity to design for", "Complies with", "Air to design for"}}
	for _, v := range words.BoothVelocities {
		t.Rows = append(t.Rows, []any{v.Is, q.ValueOf(v.Design), q.ShowRange(q.Metric, v.Range), q.ValueOf(ruleOf(v).DesignFlow(area))})
	}
	return t
}
