package critique

import (
	"fmt"
	"slices"

	"coatwright/planner"
	"coatwright/planner/library"
)

// Recoated is the plan with another number of coats in one step. The work, the
// dry film and what is poured for it go with the coats; the cup's own loss does
// not, so more coats come out a little rich. The error says what does not fit.
func Recoated(p *planner.Plan, lib *library.Library, step string, coats int) (*planner.Plan, error) {
	at := planner.StepAt(p.Steps, step)
	switch {
	case at < 0:
		return nil, fmt.Errorf("the plan has no step %q", step)
	case p.Steps[at].Coats == 0:
		return nil, fmt.Errorf("%q lays no coats", step)
	case coats < 1:
		return nil, fmt.Errorf("found %d coats, expected at least one", coats)
	}
	edited := *p
	edited.Steps = slices.Clone(p.Steps)
	s := &edited.Steps[at]
	ratio := float64(coats) / float64(s.Coats)
	fixed := 0.0
	if note := (&bench{plan: p, lib: lib}).note(at); note != nil {
		fixed = min(note.Work.Fixed.Minutes(), s.WorkMin)
	}
	s.Coats, s.DryUm, s.WorkMin = coats, s.DryUm*ratio, fixed+(s.WorkMin-fixed)*ratio
	for k := at - 1; k >= 0; k-- {
		if m := edited.Steps[k].Mix; m != nil && edited.Steps[k].Material == s.Material {
			edited.Steps[k].Mix = scaled(m, ratio)
			break
		}
	}
	return &edited, nil
}

// scaled is a mix of ratio times as much.
func scaled(m *planner.Mix, ratio float64) *planner.Mix {
	out := *m
	out.Lines = slices.Clone(m.Lines)
	for i := range out.Lines {
		l := &out.Lines[i]
		l.ML, l.G, l.MarkML, l.MarkG = l.ML*ratio, l.G*ratio, l.MarkML*ratio, l.MarkG*ratio
	}
	out.TotalML, out.TotalG = m.TotalML*ratio, m.TotalG*ratio
	out.LowML, out.HighML = m.LowML*ratio, m.HighML*ratio
	return &out
}

// LongestWait is which of the waits of step i takes longest, -1 where none takes
// time. A wait for a step that does not come before it is none.
func LongestWait(steps []planner.Step, i int) int {
	at := -1
	waits := steps[i].Waits
	for k, w := range waits {
		if w.Min > 0 && planner.StepAt(steps[:i], w.After) >= 0 && (at < 0 || w.Min > waits[at].Min) {
			at = k
		}
	}
	return at
}

// Rewaited is the plan with the wait of one step so many minutes long: its
// longest takes that, and none of the others more. The error says what does not
// fit.
func Rewaited(p *planner.Plan, step string, minutes float64) (*planner.Plan, error) {
	i := planner.StepAt(p.Steps, step)
	switch {
	case i < 0:
		return nil, fmt.Errorf("the plan has no step %q", step)
	case LongestWait(p.Steps, i) < 0:
		return nil, fmt.Errorf("%q waits for nothing", step)
	case minutes < 0:
		return nil, fmt.Errorf("found a wait of %g minutes, expected none or more", minutes)
	}
	edited := *p
	edited.Steps = slices.Clone(p.Steps)
	s := &edited.Steps[i]
	s.Waits = slices.Clone(s.Waits)
	at := LongestWait(p.Steps, i)
	for k := range s.Waits {
		if w := &s.Waits[k]; k == at || w.Min > minutes {
			w.Min, w.Low, w.High, w.How = minutes, minutes, minutes, "set by hand"
		}
	}
	return &edited, nil
}
