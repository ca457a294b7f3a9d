package web

import "coatwright/planner"

// WithoutPage says what leaving out one step of a plan would change.
type WithoutPage struct {
	Frame
	ID         string // of the plan
	Job        string // its title
	Difference *planner.Difference
	Verdict    string // the answer in a sentence
}

func (WithoutPage) template() string { return "without" }

// Agreed reports whether a reason is for the job as agreed, and not for a step.
func (WithoutPage) Agreed(r planner.Reason) bool { return r.For == planner.Agreed }
