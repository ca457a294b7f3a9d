package planner

import (
	"fmt"
	"slices"

	"coatwright/nearest"
	"coatwright/planner/library"
	"coatwright/planner/route"
)

// Difference says what changes from one plan to another.
type Difference struct {
	Without string   `json:"without"` // the step that is left out; "" for none
	With    string   `json:"with"`    // the choices that are made otherwise; "" for none
	Title   string   `json:"title"`
	Answer  Answer   `json:"answer"`
	Breaks  []Reason `json:"breaks"` // needs that nothing else meets
	Misses  []Reason `json:"misses"` // wants that go unmet
	Gone    []Change `json:"gone"`   // steps that fall away
	Come    []Change `json:"come"`   // steps that take their place
	WorkMin float64  `json:"work_min"`
	EndMin  float64  `json:"end_min"`  // how much later the job ends; below zero: sooner
	RiskMin float64  `json:"risk_min"` // rework that the missed wants cost on average
	Refused *Refusal `json:"refused"`
}

// Answer is a what-if in a word.
type Answer string

// The answers.
const (
	Breaks  Answer = "breaks"  // a need is not met: the job cannot be done so
	Instead Answer = "instead" // something else takes its place
	Misses  Answer = "misses"  // it can be left out, at a risk
	Nothing Answer = "nothing" // it can be left out, and nothing is lost
)

// Change is a step that one plan has and the other has not.
type Change struct {
	Title string  `json:"title"`
	Note  string  `json:"note"`
	Film  string  `json:"film"` // what it lays, mixes or flushes; "" for none
	Work  float64 `json:"work_min"`
}

// UnknownStepError says that a plan has no step of that id.
type UnknownStepError struct{ ID, Nearest string }

func (e *UnknownStepError) Error() string {
	return fmt.Sprintf("the plan has no step %q%s", e.ID, nearest.Hint(e.Nearest))
}

// Without plans the job with one step left out, and says what that changes:
// nothing, an alternative with its time and risk, or the need that breaks. The
// error is an *UnknownStepError for an id that the job's plan has not.
func Without(job *Job, lib *library.Library, id string) (*Difference, error) {
	b, slots, refused, err := build(job, lib, nil, found{})
	if err != nil {
		return nil, err
	}
	if refused != nil {
		return nil, &UnknownStepError{ID: id}
	}
	i := b.index(id)
	if i < 0 {
		return nil, &UnknownStepError{id, nearest.To(id, b.ids)}
	}
	before := b.plan(slots)
	after, err := newPlan(job, lib, b.omissions(i))
	if err != nil {
		return nil, err
	}
	return leftOut(compare(before, after), before, id), nil
}

// omissions leaves item i out of the routes of its groups.
func (b *builder) omissions(i int) []route.Omission {
	out := make([]route.Omission, len(b.groups))
	for g, a := range b.items[i].actions {
		actions := b.groups[g].route.Actions
		o := route.Omission{Step: b.items[i].step.Slug, Next: actions[a].Next}
		if at := b.groups[g].filmBefore(a); at >= 0 {
			o.After = actions[at].Film.Slug
		}
		if at := b.groups[g].filmFrom(a + 1); at >= 0 {
			o.Before = actions[at].Film.Slug
		}
		for _, action := range actions {
			if !action.Film.IsZero() && action.Required < 0 {
				o.Preps = append(o.Preps, action.Film.Slug)
			}
		}
		out[g] = o
	}
	return out
}

// leftOut says of a difference that it comes from leaving out the step id: where
// there is no plan any more, the needs that the step met break.
func leftOut(d *Difference, before *Plan, id string) *Difference {
	step := before.Steps[StepAt(before.Steps, id)]
	d.Without, d.Title = id, step.Title
	if d.Refused != nil {
		for _, r := range step.Why {
			if !r.Want {
				d.Breaks = append(d.Breaks, r)
			}
		}
	}
	return d
}

// compare says what changes from one plan to another.
func compare(before, after *Plan) *Difference {
	d := &Difference{Breaks: []Reason{}, Misses: []Reason{}, Gone: []Change{}, Come: []Change{}, Refused: after.Refused}
	if after.Refused != nil {
		d.Answer = Breaks
		return d
	}
	d.Gone, d.Come = missing(before, after), missing(after, before)
	d.WorkMin = after.Totals.WorkMin - before.Totals.WorkMin
	d.EndMin = after.Totals.End.Sub(before.Totals.End).Minutes()
	d.RiskMin = after.Totals.RiskMin - before.Totals.RiskMin
	for _, r := range after.Missed {
		if !slices.Contains(before.Missed, r) {
			d.Misses = append(d.Misses, r)
		}
	}
	switch {
	case len(d.Come) > 0:
		d.Answer = Instead
	case d.RiskMin > 0 || len(d.Misses) > 0:
		d.Answer = Misses
	default:
		d.Answer = Nothing
	}
	return d
}

// missing is the steps of a that b has not, each counted as often as it occurs.
func missing(a, b *Plan) []Change {
	left := map[string]int{}
	key := func(s Step) string { return s.Note + " " + s.Material + " " + s.For }
	for _, s := range b.Steps {
		left[key(s)]++
	}
	out := []Change{}
	for _, s := range a.Steps {
		if left[key(s)]--; left[key(s)] < 0 {
			c := Change{Title: s.Title, Note: s.Note, Work: s.WorkMin}
			if len(s.Films) > 0 {
				c.Film = s.Films[0]
			}
			out = append(out, c)
		}
	}
	return out
}
