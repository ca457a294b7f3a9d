package how

import (
	"fmt"
	"strings"

	"coatwright/planner"
	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// The formulas of what a step uses of a material, and of what a plan takes of it.
var (
	spreadFormula = trace.Formula{Text: "V = A / how far a litre goes", Source: "common practice, no published source", Note: "background/how-much-lands"}
	flushFormula  = trace.Formula{Text: "V of one flush", Source: "common practice, no published source", Note: "background/how-much-lands"}
)

// used explains the materials that a step takes besides a mix.
func (e *explainer) used() {
	for _, u := range e.step.Uses {
		slug, is := strings.CutPrefix(u.Note, "material/")
		if !is || u.ML <= 0 {
			continue
		}
		planned := q.Volume(u.ML * 1e-6)
		f := trace.Figure{Key: "use-" + slug, Name: u.Title + " that the step takes", Value: q.ValueOf(planned), Formula: flushFormula}
		area := q.Area(e.step.Area())
		for _, use := range e.note.Uses {
			if use.Material == slug && use.Spread > 0 {
				f.Formula, f.Value = spreadFormula, q.ValueOf(q.Volume(float64(area)/float64(use.Spread)))
				f.Inputs = []trace.Input{trace.In("A", "area: "+strings.Join(e.step.Parts, ", "), area, ofJob("parts")), trace.In("", "how far a litre goes", use.Spread, ofStep(e.note))}
			}
		}
		if tool := e.tool(e.laidBefore()); f.Inputs == nil && tool != nil {
			f.Value = q.ValueOf(tool.Applicator.Flush)
			f.Inputs = []trace.Input{trace.In("", "cleaner that one flush takes", tool.Applicator.Flush, ofTool(tool))}
		}
		if f.Inputs == nil {
			f.Inputs = []trace.Input{trace.In("", "as it was set", planned, ofJob("edited by hand"))}
		}
		e.add(f, q.ValueOf(planned))
	}
}

// laidBefore is the film that was last laid before the step.
func (e *explainer) laidBefore() planner.Step {
	for i := e.i - 1; i >= 0; i-- {
		if s := e.plan.Steps[i]; s.Coats > 0 {
			return s
		}
	}
	return planner.Step{}
}

// taken explains what the plan takes of each material: the sum over its mixes and
// over what its steps use.
func (e *explainer) taken() {
	for _, m := range e.plan.Materials {
		if m.ML <= 0 {
			continue
		}
		f := trace.Figure{Key: "material-" + m.Material, Name: m.Title + ", poured and used", Formula: sumFormula("V = Σ of the mixes and of what steps use", "background/how-much-lands")}
		var sum q.Volume
		add := func(i int, ml float64) {
			if ml > 0 {
				v := q.Volume(ml * 1e-6)
				sum += v
				f.Inputs = append(f.Inputs, trace.In("", fmt.Sprintf("step %d, %s", i+1, e.plan.Steps[i].Title), v, ofJob("its steps")))
			}
		}
		for i, s := range e.plan.Steps {
			if s.Mix != nil {
				for _, l := range s.Mix.Lines {
					if l.Material == m.Material {
						add(i, l.ML*s.Mix.Times())
					}
				}
			}
			for _, u := range s.Uses {
				if u.Note == "material/"+m.Material {
					add(i, u.ML)
				}
			}
		}
		f.Value = q.ValueOf(sum)
		f.Remarks = []string{fmt.Sprintf("Have %s ready: enough where every mix turns out at its most.", q.Show(q.Metric, q.Volume(m.BuyML*1e-6)))}
		e.add(f, q.ValueOf(q.Volume(m.ML*1e-6)))
	}
}
