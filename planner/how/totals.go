package how

import (
	"fmt"

	"coatwright/planner"
	"coatwright/planner/air"
	"coatwright/planner/film"
	"coatwright/planner/library"
	"coatwright/planner/trace"
	"coatwright/planner/voc"
	q "coatwright/quantity"
)

// sumFormula is how the totals of a plan come about.
func sumFormula(text, note string) trace.Formula {
	return trace.Formula{Text: text, Source: "arithmetic", Note: note}
}

// Totals explains the totals of a plan and the air of its room.
func Totals(p *planner.Plan, lib *library.Library) []trace.Figure {
	e := explainer{plan: p, lib: lib}
	e.hands()
	e.emitted()
	e.stack()
	e.margin()
	e.taken()
	return e.figures
}

// hands sums up the hands-on time by phase.
func (e *explainer) hands() {
	f := trace.Figure{Key: "work", Name: "Hands on", Formula: sumFormula("t = Σ of the steps", "background/how-long-work-takes")}
	byPhase := map[string]q.Time{}
	var sum q.Time
	for _, s := range e.plan.Steps {
		byPhase[s.Phase] += q.Time(s.WorkMin * 60)
		sum += q.Time(s.WorkMin * 60)
	}
	for _, w := range e.lib.Words.Phases {
		if t := byPhase[w.Name]; t > 0 {
			f.Inputs = append(f.Inputs, trace.In("", "steps of the phase "+w.Name, t, ofJob("its steps")))
		}
	}
	f.Value = q.ValueOf(sum)
	e.add(f, q.ValueOf(q.Time(e.plan.Totals.WorkMin*60)))
}

// emitted sums up the solvent of all mixes.
func (e *explainer) emitted() {
	f := trace.Figure{Key: "voc", Name: "Solvent that goes into the air", Formula: voc.EmittedFormula}
	var sum q.Mass
	for _, s := range e.plan.Steps {
		if s.Mix == nil {
			continue
		}
		mass := q.Mass(s.Mix.VOCgPerL * s.Mix.TotalML * s.Mix.Times() / 1e6)
		sum += mass
		f.Inputs = append(f.Inputs, trace.In("", fmt.Sprintf("step %d, %s", 1+planner.StepAt(e.plan.Steps, s.ID), stepFilm(s)), mass, ofJob("its mixes")))
	}
	if f.Inputs == nil {
		return
	}
	f.Value = q.ValueOf(sum)
	f.Remarks = []string{"Gun cleaner and wipes are not in it."}
	e.add(f, q.ValueOf(q.Mass(e.plan.Totals.VOCg*1e-3)))
}

func stepFilm(s planner.Step) string {
	if len(s.Films) > 0 {
		return s.Films[0]
	}
	return s.Title
}

// stack sums up the films of the part that has most.
func (e *explainer) stack() {
	thickest, most := "", 0.0
	for part, um := range planner.Builds(e.plan.Films) {
		if um > most || um == most && part < thickest {
			thickest, most = part, um
		}
	}
	if most == 0 {
		return
	}
	f := trace.Figure{Key: "dry-film", Name: "Films, dry, on " + thickest, Formula: film.StackFormula}
	var sum q.Length
	for _, l := range e.plan.Films {
		for _, part := range l.Parts {
			if part == thickest {
				d := q.Length(l.DryUm * 1e-6)
				sum += d
				f.Inputs = append(f.Inputs, trace.In("", l.Title, d, trace.Origin{From: trace.FromNote, At: "material/" + l.Material}))
			}
		}
	}
	f.Value = q.ValueOf(sum)
	e.add(f, q.ValueOf(q.Length(e.plan.Totals.DryUm*1e-6)))
}

// margin explains how far the part is from the dew point.
func (e *explainer) margin() {
	r := e.plan.Job.Room
	dew := r.DewPoint()
	inputs := []trace.Input{trace.In("t", "temperature of the air", r.Temperature, ofRoom()), trace.In("RH", "humidity of the air", r.Humidity, ofRoom())}
	e.add(trace.Figure{Key: "dew-point", Name: "Dew point", Value: q.ValueOf(dew), Formula: air.DewPointFormula, Inputs: inputs}, q.ValueOf(dew))
	over := q.ValueOf(q.Difference(r.Surface - dew))
	e.add(trace.Figure{Key: "over-dew-point", Name: "Part above the dew point", Value: over,
		Formula: trace.Formula{Text: "surface − dew point", Source: "ISO 8502-4, as quoted by a trade article: at least 3 K", Note: "background/dew-point-and-cold-parts"},
		Inputs:  []trace.Input{trace.In("", "surface of the part", r.Surface, trace.Origin{From: trace.FromRoom, At: "surface"}), trace.In("", "dew point", dew, ofFigure("dew-point"))},
	}, over)
}
