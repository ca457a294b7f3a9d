// Package how owns where each figure of a plan comes from: the formula, what
// went into it, and the note, the job or the room that says so. It takes a plan
// as it is kept, so that a plan edited by hand is explained as it stands, and it
// uses the notes of today: what they now give otherwise is a remark.
package how

import (
	"fmt"
	"math"
	"strings"

	"coatwright/nearest"
	"coatwright/planner"
	"coatwright/planner/library"
	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// Step explains the figures of one step. The error is a *planner.UnknownStepError.
func Step(p *planner.Plan, lib *library.Library, id string) ([]trace.Figure, error) {
	i := planner.StepAt(p.Steps, id)
	if i < 0 {
		var known []string
		for _, s := range p.Steps {
			known = append(known, s.ID)
		}
		return nil, &planner.UnknownStepError{ID: id, Nearest: nearest.To(id, known)}
	}
	e := explainer{plan: p, lib: lib, i: i, step: p.Steps[i]}
	e.note = lib.Steps[strings.TrimPrefix(e.step.Note, "step/")]
	if e.note != nil {
		e.work()
		e.waits()
		e.mixed()
		e.laid()
		e.used()
	}
	return e.figures, nil
}

// explainer gathers the figures of a step.
type explainer struct {
	plan    *planner.Plan
	lib     *library.Library
	i       int
	step    planner.Step
	note    *library.Step
	figures []trace.Figure
}

// add adds a figure. Where the plan has another value than the notes of today
// come to, the plan's stands, with a remark.
func (e *explainer) add(f trace.Figure, planned q.Value) {
	if off := math.Abs(planned.SI - f.Value.SI); off > 1e-6*math.Abs(f.Value.SI)+1e-12 {
		f.Remarks = append(f.Remarks, fmt.Sprintf("The plan was kept with %s; the notes of today and this formula come to %s.", q.Metric.Show(planned), q.Metric.Show(f.Value)))
		f.Value = planned
	}
	e.figures = append(e.figures, f)
}

// material is the material that the step lays or mixes, nil where its note is
// gone.
func (e *explainer) material() *library.Material {
	return e.lib.Materials[strings.TrimPrefix(e.step.Material, "material/")]
}

// tool is the applicator of a step, nil for none.
func (e *explainer) tool(s planner.Step) *library.Tool {
	return e.lib.Tools[strings.TrimPrefix(s.Applicator, "tool/")]
}

// film is the step that lays what this step mixes, or the step itself; ok is
// false where nothing is laid.
func (e *explainer) film() (planner.Step, bool) {
	for _, s := range e.plan.Steps[e.i:] {
		if s.Coats > 0 && s.Material == e.step.Material && e.tool(s) != nil {
			return s, true
		}
	}
	return planner.Step{}, false
}

func ofMaterial(m *library.Material) trace.Origin {
	return trace.Origin{From: trace.FromNote, At: "material/" + m.Slug, Standing: m.Standing}
}

func ofTool(t *library.Tool) trace.Origin {
	return trace.Origin{From: trace.FromNote, At: "tool/" + t.Slug, Standing: commonPractice}
}

func ofStep(s *library.Step) trace.Origin {
	return trace.Origin{From: trace.FromNote, At: "step/" + s.Slug, Standing: commonPractice}
}

func ofFigure(key string) trace.Origin { return trace.Origin{From: trace.FromFigure, At: key} }
func ofJob(key string) trace.Origin    { return trace.Origin{From: trace.FromJob, At: key} }
func ofRoom() trace.Origin             { return trace.Origin{From: trace.FromRoom, At: "air"} }

// commonPractice is what step and tool notes rest on.
const commonPractice = "common-practice"
