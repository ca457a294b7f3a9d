package web

import (
	"maps"
	"math"
	"net/url"
	"slices"

	"coatwright/planner"
)

// CoveragePage is a grid of surfaces and effects: what can be planned, and what
// cannot.
type CoveragePage struct {
	Frame
	Choices                           Choices
	Finish, System, Clear, Applicator string // what is chosen; "" for any clear, all applicators
	Cells                             []CoverageCell
}

// CoverageCell is one surface with one effect.
type CoverageCell struct {
	Substrate  string  `json:"substrate"`
	Effect     string  `json:"effect"`
	WorkMin    float64 `json:"work_min"`
	ElapsedMin float64 `json:"elapsed_min"`
	Steps      int     `json:"steps"` // 0 where there is no plan
	Lacks      string  `json:"lacks"` // the fact that nothing gives; "" where there is a plan
	Reason     string  `json:"reason"`
}

// CoverageCellPage is one cell, planned on the fly.
type CoverageCellPage struct {
	Frame
	Plan   *planner.Plan
	Titles map[string]string // titles of notes by path
	Back   string            // address of the grid
	Form   url.Values        // the job, as the form posts it
}

func (CoveragePage) template() string     { return "coverage" }
func (CoverageCellPage) template() string { return "coverage-cell" }

// Days are the days from start to hand-over, the first and the last counted.
func (c CoverageCell) Days() float64 { return math.Ceil(c.ElapsedMin / (24 * 60)) }

// Hours is the work, to half an hour.
func (c CoverageCell) Hours() float64 { return math.Round(c.WorkMin/30) / 2 }

// Row is the cells of one surface, in the order of the effects.
func (p CoveragePage) Row(substrate string) []CoverageCell {
	return slices.DeleteFunc(slices.Clone(p.Cells), func(c CoverageCell) bool { return c.Substrate != substrate })
}

// Address is where a cell is planned.
func (p CoveragePage) Address(c CoverageCell) string {
	q := url.Values{"substrate": {c.Substrate}, "effect": {c.Effect}, "finish": {p.Finish}, "system": {p.System}}
	if p.Clear != "" {
		q.Set("clear", p.Clear)
	}
	if p.Applicator != "" {
		q.Set("applicator", p.Applicator)
	}
	return "/coverage/cell?" + q.Encode()
}

// Planned is how many of the cells have a plan.
func (p CoveragePage) Planned() int {
	n := 0
	for _, c := range p.Cells {
		if c.Lacks == "" {
			n++
		}
	}
	return n
}

// Picks are the selects above the grid.
func (p CoveragePage) Picks() []CoveragePick {
	clears := []Choice{{Value: "", Title: "Any"}}
	for _, c := range clearChoices {
		if c.Value != "" {
			clears = append(clears, c)
		}
	}
	all := append([]Choice{{Value: "", Title: "All of them"}}, p.Choices.Applicators...)
	return []CoveragePick{
		{"finish", "Finish", p.Finish, p.Choices.Finishes},
		{"system", "Paint system", p.System, p.Choices.Systems},
		{"clear", "Clear", p.Clear, clears},
		{"applicator", "Applicators at hand", p.Applicator, all},
	}
}

// CoveragePick is one select.
type CoveragePick struct {
	Name, Label, Value string
	Options            []Choice
}

// NameOf is the title of a note.
func (p CoverageCellPage) NameOf(kind, slug string) string {
	return PlanPage{Titles: p.Titles}.NameOf(kind, slug)
}

// Fields are the fields of the job, to be posted as they are.
func (p CoverageCellPage) Fields() []Figure {
	var out []Figure
	for _, name := range slices.Sorted(maps.Keys(p.Form)) {
		for _, value := range p.Form[name] {
			out = append(out, Figure{name, value})
		}
	}
	return out
}

// Part is the one part of the cell's job.
func (p CoverageCellPage) Part() planner.Part { return p.Plan.Job.Parts[0] }
