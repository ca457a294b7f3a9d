package how

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"coatwright/planner"
	"coatwright/planner/air"
	"coatwright/planner/drying"
	"coatwright/planner/library"
	"coatwright/planner/route"
	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// waits explains how long each wait is, and until when it leaves time.
func (e *explainer) waits() {
	dries := planner.NewDrying(e.plan.Job, e.lib)
	wet := false
	for k, w := range e.step.Waits {
		i := planner.StepAt(e.plan.Steps, w.After)
		if i < 0 {
			continue
		}
		giver := e.plan.Steps[i]
		wet = e.shortest(k, w, giver, dries) || wet
		e.closes(k, w, giver, dries)
	}
	if wet {
		e.wetBulb()
	}
}

// wetBulb explains what a film cools to while water leaves it, once.
func (e *explainer) wetBulb() {
	if slices.ContainsFunc(e.figures, func(f trace.Figure) bool { return f.Key == "wet-bulb" }) {
		return
	}
	a := e.plan.Job.Room.Air
	e.add(trace.Figure{
		Key: "wet-bulb", Name: "Wet bulb", Value: q.ValueOf(a.WetBulb()), Formula: air.WetBulbFormula,
		Inputs: []trace.Input{trace.In("t", "temperature of the air", a.Temperature, ofRoom()), trace.In("RH", "humidity of the air", a.Humidity, ofRoom())},
	}, q.ValueOf(a.WetBulb()))
}

// shortest explains the least that a wait takes, and reports whether water leaving
// paces it.
func (e *explainer) shortest(k int, w planner.Wait, giver planner.Step, dries *planner.Drying) bool {
	if w.Min <= 0 {
		return false
	}
	f := trace.Figure{Key: fmt.Sprintf("wait-%d", k+1), Name: fmt.Sprintf("Wait after %s, until %s", lower(giver.Title), w.Until)}
	if w.Low != w.High {
		f.Range = trace.SpanOf(q.Time(w.Low*60), q.Time(w.High*60))
	}
	planned := q.Time(w.Min * 60)
	note, film := e.lib.Steps[strings.TrimPrefix(giver.Note, "step/")], e.coatingOf(giver)
	var took q.Time
	var pace string
	switch {
	case film.Material != nil && film.Dries[w.Until].In > 0:
		t := film.Dries[w.Until]
		took, _ = dries.Lag(film, w.Until)
		f.Formula, f.Inputs = dries.Trace(film, t, drying.Origins{Time: ofMaterial(film.Material), Air: ofRoom(), Film: ofMaterial(film.Material)})
		pace = t.By
	case giver.Mix != nil && e.lib.Materials[strings.TrimPrefix(giver.Material, "material/")] != nil:
		m := e.lib.Materials[strings.TrimPrefix(giver.Material, "material/")]
		took = m.Stand
		f.Inputs = []trace.Input{trace.In("", "stand after mixing", m.Stand, ofMaterial(m))}
		f.Formula.Note = "background/why-mixes-stand"
	case note != nil && note.Stands.In > 0:
		took = dries.Stands(note.Stands)
		f.Formula, f.Inputs = dries.TraceStand(note.Stands, drying.Origins{Time: ofStep(note), Air: ofRoom()})
		pace = note.Stands.By
	default:
		took = planned // set by hand
		f.Inputs = []trace.Input{trace.In("", "as it was set", planned, ofJob("edited by hand"))}
	}
	f.Value = q.ValueOf(wholeMinutes(took))
	e.add(f, q.ValueOf(planned))
	return drying.Pace(pace) == drying.Evaporation
}

// closes explains the longest that a wait may take.
func (e *explainer) closes(k int, w planner.Wait, giver planner.Step, dries *planner.Drying) {
	if w.Max <= 0 {
		return
	}
	longest := q.Time(w.Max * 60)
	f := trace.Figure{
		Key: fmt.Sprintf("closes-%d", k+1), Name: fmt.Sprintf("Not later than this after %s, %s", lower(giver.Title), w.Until), Value: q.ValueOf(longest),
		Formula: trace.Formula{Note: "background/what-a-recoat-window-is"},
	}
	note, film := e.lib.Steps[strings.TrimPrefix(giver.Note, "step/")], e.coatingOf(giver)
	switch {
	case film.Material != nil && w.Until == library.Recoat:
		f.Inputs = []trace.Input{trace.In("", "the window shuts, at 23 °C", film.Dries[library.Recoat].Closes, ofMaterial(film.Material))}
		if drying.Pace(film.Dries[library.Recoat].By) == drying.Cure {
			f.Formula = trace.Formula{Text: drying.PotLifeFormula.Text, Source: drying.CureFormula.Source, Note: f.Note}
			f.Inputs = append(f.Inputs, trace.In("T", "temperature of the room", e.plan.Job.Room.Temperature, ofRoom()))
		}
	case film.Material != nil:
		f.Inputs = []trace.Input{trace.In("", "before it is "+strings.TrimPrefix(w.Until, "before "), longest, ofMaterial(film.Material))}
	case giver.Mix != nil:
		f.Name = "Not later than this after mixing"
		f.Formula.Note = "background/why-mixes-stand"
		f.Inputs = []trace.Input{trace.In("", "pot life in this room", q.Time(giver.Mix.PotLife*60), trace.Origin{From: trace.FromNote, At: giver.Material}),
			trace.In("", "spraying it, waits between coats in it", q.Time(e.step.WorkMin*60), ofFigure("work"))}
		if note != nil {
			for _, fact := range slices.Sorted(maps.Keys(note.Lasts)) {
				f.Inputs = append(f.Inputs, trace.In("", "no mix is left in its cup longer", note.Lasts[fact], ofStep(note)))
			}
		}
	case note != nil:
		f.Inputs = []trace.Input{trace.In("", "so long it holds", longest, ofStep(note))}
	}
	e.add(f, f.Value)
}

// flash explains the wait between coats.
func (e *explainer) flash(m *library.Material, tool *library.Tool) {
	if e.step.Coats < 2 || m.Flash.In == 0 {
		return
	}
	dries := planner.NewDrying(e.plan.Job, e.lib)
	c := route.Coating{Material: m, Tool: tool}
	f := trace.Figure{Key: "flash", Name: "Wait between coats", Value: q.ValueOf(dries.Flash(c))}
	f.Formula, f.Inputs = dries.Trace(c, m.Flash, drying.Origins{Time: ofMaterial(m), Air: ofRoom(), Film: ofMaterial(m)})
	e.add(f, q.ValueOf(q.Time(e.step.FlashMin*60)))
	if drying.Pace(m.Flash.By) == drying.Evaporation {
		e.wetBulb()
	}
}

// coatingOf is the film that a step lays, without a material where it lays none
// or its note is gone.
func (e *explainer) coatingOf(s planner.Step) route.Coating {
	tool := e.tool(s)
	if s.Coats == 0 || tool == nil {
		return route.Coating{}
	}
	return route.Coating{Material: e.lib.Materials[strings.TrimPrefix(s.Material, "material/")], Tool: tool}
}
