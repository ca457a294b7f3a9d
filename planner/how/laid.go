package how

import (
	"fmt"

	"coatwright/planner"
	"coatwright/planner/film"
	"coatwright/planner/gun"
	"coatwright/planner/library"
	"coatwright/planner/mix"
	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// laid explains what a step that lays a film says of it.
func (e *explainer) laid() {
	m, tool := e.material(), e.tool(e.step)
	if e.step.Coats == 0 || m == nil || tool == nil {
		return
	}
	e.add(trace.Figure{
		Key: "dry-film", Name: "Dry film, all coats", Value: q.ValueOf(m.Build * q.Length(e.step.Coats)), Formula: film.StackFormula,
		Inputs: []trace.Input{trace.In("DFT", "dry film of one full coat", m.Build, ofMaterial(m)), e.coats()},
	}, q.ValueOf(q.Length(e.step.DryUm*1e-6)))
	parts := planner.MixParts(m, e.lib, tool.Slug)
	solids, err := mix.Solids(parts)
	if err != nil {
		return
	}
	e.solids(parts, solids)
	e.wet(m, solids)
	e.flash(m, tool)
	e.hides(m)
	e.candied(m)
	e.setting(tool)
	e.spraying(tool)
}

// setting tells how the applicator is set: as its note says, in the middle.
func (e *explainer) setting(tool *library.Tool) {
	a := tool.Applicator
	note := trace.Formula{Text: "the middle of the range", Source: "common practice, no published source", Note: "background/one-pass"}
	take(e, "pressure", "Pressure at the inlet", a.Pressure, e.step.Pressure*1e3, note, tool)
	take(e, "fan", "Fan or cone on the part", a.Fan, e.step.FanMM*1e-3, note, tool)
	take(e, "distance", "Distance from nozzle to part", a.Distance, e.step.DistanceMM*1e-3, note, tool)
	take(e, "overlap", "Overlap of the passes", a.Overlap, e.step.Overlap/100, note, tool)
}

// take adds a figure that is the middle of a range of an applicator's note.
func take[Q q.Quantity](e *explainer, key, name string, r q.Range[Q], planned float64, f trace.Formula, tool *library.Tool) {
	if r.IsZero() {
		return
	}
	e.add(trace.Figure{Key: key, Name: name, Value: q.ValueOf(r.Middle()), Range: trace.SpanOf(r.Low, r.High), Formula: f,
		Inputs: []trace.Input{trace.InRange("", "by the applicator's note", r, ofTool(tool))}}, q.ValueOf(Q(planned)))
}

// solids explains the solids of the mix.
func (e *explainer) solids(parts []mix.Part, solids q.Fraction) {
	shares, err := mix.Shares(parts)
	if err != nil {
		return
	}
	f := trace.Figure{Key: "solids", Name: "Solids by volume, as sprayed", Value: q.ValueOf(solids), Formula: mix.SolidsFormula}
	for i, p := range parts {
		m := e.lib.Materials[p.Name]
		f.Inputs = append(f.Inputs, trace.In("share", "share of "+m.Title, shares[i], ofMaterial(e.material())), trace.In("VS", "solids of "+m.Title, m.SolidsByVolume, ofMaterial(m)))
	}
	e.add(f, f.Value)
}

// wet explains the wet film and how near it is to running.
func (e *explainer) wet(m *library.Material, solids q.Fraction) {
	f := trace.Figure{
		Key: "wet-film", Name: "Wet film of one coat", Value: q.ValueOf(film.WetFilm(m.Build, solids)), Formula: film.WetFormula,
		Inputs:  []trace.Input{trace.In("DFT", "dry film of one full coat", m.Build, ofMaterial(m)), trace.In("VS", "solids by volume, as sprayed", solids, ofFigure("solids"))},
		Remarks: []string{fmt.Sprintf("An upright face of it runs above %s wet.", q.Show(q.Metric, m.Sag))},
	}
	e.add(f, q.ValueOf(q.Length(e.step.WetUm*1e-6)))
	c := film.Coat{Build: m.Build, Sag: m.Sag, Solids: solids}
	e.add(trace.Figure{
		Key: "most", Name: "Thickest coat that does not run, dry", Value: q.ValueOf(c.Most()), Formula: film.MostFormula,
		Inputs: []trace.Input{trace.In("", "wet film above which it runs", m.Sag, ofMaterial(m)), trace.In("VS", "solids by volume, as sprayed", solids, ofFigure("solids"))},
	}, q.ValueOf(c.Most()))
	rate := film.SpreadingRate(solids, m.Build)
	e.add(trace.Figure{
		Key: "spreading-rate", Name: "Spreading rate of one coat, if all of it landed", Value: q.ValueOf(rate), Formula: film.SpreadFormula,
		Inputs: []trace.Input{trace.In("VS", "solids by volume, as sprayed", solids, ofFigure("solids")), trace.In("DFT", "dry film of one full coat", m.Build, ofMaterial(m))},
	}, q.ValueOf(rate))
}

// spraying explains how fast the hand must go, how long the trigger is pulled,
// and the air that takes.
func (e *explainer) spraying(tool *library.Tool) {
	a := tool.Applicator
	if a.Flow.IsZero() || a.Speed.IsZero() || e.step.WetUm <= 0 || len(e.step.Extents) == 0 {
		return
	}
	transfer := a.Transfer[e.step.Extents[0].Form]
	set := gun.Setting{Flow: a.Flow.Middle(), Fan: a.Fan.Middle(), Overlap: a.Overlap.Middle(), Transfer: transfer.Middle()}
	wet := q.Length(e.step.WetUm * 1e-6)
	flow, fan := trace.InRange("Q", "paint, trigger pulled", a.Flow, ofTool(tool)), trace.InRange("w", "fan or cone on the part", a.Fan, ofTool(tool))
	lands := trace.InRange("TE", "share that lands on a "+e.step.Extents[0].Form, transfer, ofTool(tool))
	speed := set.SpeedFor(wet)
	f := trace.Figure{
		Key: "hand", Name: "Pace of the hand for one coat", Value: q.ValueOf(speed), Formula: gun.SpeedFormula,
		Inputs: []trace.Input{flow, lands, trace.In("WFT", "wet film of one coat", wet, ofFigure("wet-film")), fan, trace.InRange("overlap", "overlap of the passes", a.Overlap, ofTool(tool))},
	}
	if advice, err := (gun.Gun{Flow: a.Flow, Fan: a.Fan, Overlap: a.Overlap, Speed: a.Speed}).For(wet, transfer.Middle()); err == nil {
		f.Remarks = append(f.Remarks, advice.Say(q.Metric))
	}
	e.add(f, f.Value)
	sprayed := q.Volume(0)
	for _, x := range e.step.Extents {
		sprayed += q.Volume(x.M2 * float64(wet) * float64(e.step.Coats) / float64(a.Transfer[x.Form].Middle()))
	}
	trigger := gun.TriggerTime(sprayed, set.Flow)
	e.add(trace.Figure{
		Key: "trigger", Name: "Trigger pulled, all coats", Value: q.ValueOf(trigger), Formula: gun.TriggerFormula,
		Inputs: []trace.Input{trace.In("sprayed", "mix that leaves the applicator", sprayed, ofFigure("wet-film")), flow},
	}, q.ValueOf(trigger))
	if a.Air.IsZero() {
		return
	}
	air := gun.AirUsed(a.Air.Middle(), trigger)
	e.add(trace.Figure{
		Key: "air", Name: "Free air, all coats", Value: q.ValueOf(air), Formula: gun.AirFormula,
		Inputs: []trace.Input{trace.InRange("demand", "free air, trigger pulled", a.Air, ofTool(tool)), trace.In("t", "trigger pulled", trigger, ofFigure("trigger"))},
	}, q.ValueOf(air))
}
