package web

import (
	"math"

	"coatwright/planner"
)

// WhatIfPage says what other choices would change in a plan.
type WhatIfPage struct {
	Frame
	ID       string            // of the plan
	Plan     *planner.Plan     // of the job as it stands, with the notes of today
	Air      map[string]string // another day's air as it was typed: "air", "humidity", "airflow"
	Problems map[string]string // what is wrong with it, by field
	Rows     []WhatIfRow
}

// WhatIfRow is one choice, or several at once, and what they would change.
type WhatIfRow struct {
	With       string   // as planner.ParseAlternative reads it
	Choices    []Figure // in words
	Difference *planner.Difference
	Verdict    string // in a sentence
	Cures      bool   // there is no plan as the job stands, and there is one so
}

func (WhatIfPage) template() string { return "whatif" }

// AirFields are the fields of another day's air.
func (p WhatIfPage) AirFields() []AirField {
	return []AirField{
		{"air", "Air", "21 C or 70 F", p.Air["air"], p.Problems["air"]},
		{"humidity", "Humidity", "55 %", p.Air["humidity"], p.Problems["humidity"]},
		{"airflow", "Air over the part", "0.1 m/s is a still room", p.Air["airflow"], p.Problems["airflow"]},
	}
}

// AirField is one field of another day's air.
type AirField struct{ Name, Label, Hint, Value, Problem string }

// Answer is the answer in a word.
func (r WhatIfRow) Answer() string {
	switch {
	case r.Cures:
		return "can be done"
	case r.Difference.Answer == planner.Breaks:
		return "cannot be done"
	case r.Difference.Answer == planner.Instead:
		return "other steps"
	case r.Difference.Answer == planner.Misses:
		return "a risk"
	case len(r.Difference.Gone) > 0:
		return "fewer steps"
	}
	return "same steps"
}

// Broken reports whether there is no plan with the choices.
func (r WhatIfRow) Broken() bool { return r.Difference.Answer == planner.Breaks }

// Said reports whether there is more to say of it than figures.
func (r WhatIfRow) Said() bool {
	d := r.Difference
	return d.Refused != nil || len(d.Misses)+len(d.Gone)+len(d.Come) > 0
}

// Work, End and Risk are what the choices cost and spare.
func (r WhatIfRow) Work() string { return r.figure(r.Difference.WorkMin, "more", "less") }
func (r WhatIfRow) Risk() string { return r.figure(r.Difference.RiskMin, "more", "less") }

// End is how much later or sooner the job ends; there is nothing to compare it
// with where the job as it stands has no plan.
func (r WhatIfRow) End() string {
	if r.Cures {
		return ""
	}
	return r.figure(r.Difference.EndMin, "later", "sooner")
}

func (r WhatIfRow) figure(min float64, above, below string) string {
	switch {
	case r.Broken():
		return ""
	case math.Abs(min) < 0.5:
		return "same"
	case min > 0:
		return duration(min) + " " + above
	}
	return duration(-min) + " " + below
}
