package web

import (
	"fmt"
	"net/url"
	"strconv"
	"time"

	"coatwright/planner"
	"coatwright/planner/critique"
)

// EditPage is a plan's steps to be moved, left out and changed, with the
// critique of what that does.
type EditPage struct {
	Frame
	ID       string // of the plan that is edited
	Job      string // its title
	Steps    []EditStep
	Changes  []string // made so far, in words
	Done     string   // the same, for the server
	Verdict  string   // the critique in a sentence
	Open     int      // needs that are not met and not kept so
	Findings []EditFinding
	Carried  []EditReason // reasons for what is not found at present
	Message  string       // why it is not saved, or not changed; "" for nothing
	Problems []EditProblem
	Before   planner.Totals
	After    planner.Totals
}

// EditStep is one step, and what stands in its fields.
type EditStep struct {
	*planner.Step
	N       int
	Place   string
	Coats   string // "" where it lays no film
	Wait    string // minutes; "" where it waits for nothing
	WaitFor string // what it waits for, in words
	Out     bool   // it is left out
	Starts  time.Time
	Ends    time.Time
	Faults  map[string]string // what is wrong with its fields: "place", "coats", "wait", "out"
}

// EditFinding is one finding with the fields that answer it.
type EditFinding struct {
	critique.Finding
	N    int    // of its step; 0 for the plan as a whole
	Do   string // the value of the button that makes the repair; "" for no repair
	Same bool   // the same repair stands at a finding above
	Keep EditReason
}

// EditReason is a field for why something is kept so.
type EditReason struct{ Name, Reason string }

// EditProblem is a field that cannot be read.
type EditProblem struct{ Anchor, Label, Message string }

func (EditPage) template() string { return "edit" }

// EditStepOf is step i of a plan with its fields as the plan has it.
func EditStepOf(p *planner.Plan, i int) EditStep {
	s := &p.Steps[i]
	out := EditStep{Step: s, N: i + 1, Place: strconv.Itoa(i + 1), Faults: map[string]string{}}
	if s.Coats > 0 {
		out.Coats = strconv.Itoa(s.Coats)
	}
	if at := critique.LongestWait(p.Steps, i); at >= 0 {
		w := s.Waits[at]
		out.Wait = strconv.FormatFloat(w.Min, 'f', -1, 64)
		out.WaitFor = fmt.Sprintf("%s, after step %d", w.Until, planner.StepAt(p.Steps, w.After)+1)
	}
	return out
}

// At is the step with its hours in a plan that has been timed anew.
func (s EditStep) At(timed *planner.Plan) EditStep {
	if i := planner.StepAt(timed.Steps, s.ID); i >= 0 {
		s.Starts, s.Ends = timed.Steps[i].Start, timed.Steps[i].End
	}
	return s
}

// editFields are the fields of a step, and what they are called.
var editFields = []struct{ name, label string }{{"place", "Place"}, {"coats", "Coats"}, {"wait", "Wait"}, {"out", "Leave out"}}

// Enter puts back what was entered, with what is wrong with it by field.
func (p *EditPage) Enter(form url.Values, problems map[string]string) {
	for i := range p.Steps {
		s := &p.Steps[i]
		for name, field := range map[string]*string{"place": &s.Place, "coats": &s.Coats, "wait": &s.Wait} {
			if form.Has(name + "-" + s.ID) {
				*field = form.Get(name + "-" + s.ID)
			}
		}
		s.Out = form.Get("out-"+s.ID) != ""
		for _, f := range editFields {
			message := problems[f.name+"-"+s.ID]
			if message == "" {
				continue
			}
			s.Faults[f.name] = message
			p.Problems = append(p.Problems, EditProblem{"#" + f.name + "-" + s.ID, fmt.Sprintf("Step %d, %s", s.N, f.label), message})
		}
	}
}

// Later is how much later the plan ends than it did, in minutes.
func (p EditPage) Later() float64 { return p.After.End.Sub(p.Before.End).Minutes() }

// More is how much more work the plan is than it was, in minutes.
func (p EditPage) More() float64 { return p.After.WorkMin - p.Before.WorkMin }

// Breaks reports whether a need is not met, and nobody said why that is kept.
func (f EditFinding) Breaks() bool { return f.Level == critique.Breaks }

// KeptReason is a kept reason with the step that it is about.
type KeptReason struct {
	planner.Kept
	N     int // of the step; 0 for the plan as a whole
	Title string
}

// KeptReasons are what an edited plan does against its notes, on purpose.
func (p PlanPage) KeptReasons() []KeptReason {
	var out []KeptReason
	for _, k := range p.Plan.Kept {
		s := p.Step(k.Step)
		out = append(out, KeptReason{k, s.N, s.Title})
	}
	return out
}

// Minus turns a figure about.
func (EditPage) Minus(x float64) float64 { return -x }

// Fault is the id of what is wrong with a field, "" for nothing.
func (s EditStep) Fault(field string) string {
	if s.Faults[field] == "" {
		return ""
	}
	return field + "-" + s.ID + "-problem"
}

// EditFault is what is wrong with a field, under its id.
type EditFault struct{ ID, Message string }

// FaultList is what is wrong with the step's fields, in their order.
func (s EditStep) FaultList() []EditFault {
	var out []EditFault
	for _, f := range editFields {
		if id := s.Fault(f.name); id != "" {
			out = append(out, EditFault{id, s.Faults[f.name]})
		}
	}
	return out
}
