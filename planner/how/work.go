package how

import (
	"fmt"
	"math"
	"strings"

	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// workFormula is how long hands take.
var workFormula = trace.Formula{
	Text:   "t = fixed + per area × A + pace × A × coats, up to the next whole minute",
	Source: "common practice, no published source",
	Note:   "background/how-long-work-takes",
}

// work explains the hands-on time.
func (e *explainer) work() {
	w, s := e.note.Work, e.step
	area := q.Area(s.Area())
	t := w.Fixed + q.Time(float64(w.PerArea)*float64(area))
	inputs := []trace.Input{trace.In("fixed", "whatever the size", w.Fixed, ofStep(e.note))}
	if w.PerArea > 0 {
		inputs = append(inputs, trace.In("per area", "for each square metre", w.PerArea, ofStep(e.note)))
	}
	if tool := e.tool(s); tool != nil && s.Coats > 0 {
		pace := tool.Applicator.Pace
		t += q.Time(float64(pace) * float64(area) * float64(s.Coats))
		inputs = append(inputs, trace.In("pace", "one coat on a square metre", pace, ofTool(tool)), e.coats())
	}
	if area > 0 && len(inputs) > 1 {
		inputs = append(inputs, trace.In("A", "area: "+strings.Join(s.Parts, ", "), area, ofJob("parts")))
	}
	planned := q.Time(s.WorkMin * 60)
	f := trace.Figure{Key: "work", Name: "Hands on", Value: q.ValueOf(wholeMinutes(t)), Formula: workFormula, Inputs: inputs}
	if low, high := e.stepTimes(); low != high {
		f.Range = trace.SpanOf(planned*q.Time(low), planned*q.Time(high))
	}
	e.add(f, q.ValueOf(planned))
}

// stepTimes are how far off the times in step notes may be.
func (e *explainer) stepTimes() (low, high q.Fraction) {
	r := e.lib.Words.StandingOf(e.lib.Words.StepTimes).Time
	return r.Low, r.High
}

// wholeMinutes is t as a plan has it: nobody works to the second.
func wholeMinutes(t q.Time) q.Time { return q.Time(math.Ceil(t.Minutes()-1e-6) * 60) }

// coats is the number of coats, from the job where it asks for one, else from
// the effect, the finish or the material's note.
func (e *explainer) coats() trace.Input {
	m, n := e.material(), q.Number(e.step.Coats)
	from := trace.Origin{From: trace.FromJob, At: fmt.Sprintf("coats of the %s", e.step.For)}
	if m != nil && m.Coats == e.step.Coats {
		from = ofMaterial(m)
	}
	return trace.In("n", "coats", n, from)
}
