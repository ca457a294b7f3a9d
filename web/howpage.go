package web

import "coatwright/planner/trace"

// HowPage explains the figures of one step of a plan, or of the plan as a whole.
type HowPage struct {
	Frame
	ID      string // of the plan
	Job     string // its title
	N       int    // of the step; 0 for the plan as a whole
	Step    string // its id
	Heading string
	Figures []trace.Figure
	Titles  map[string]string
}

func (HowPage) template() string { return "how" }

// Show hands a figure to its template, its how open.
func (p HowPage) Show(f trace.Figure) ShownFigure { return ShownFigure{f, p.Titles, true} }
