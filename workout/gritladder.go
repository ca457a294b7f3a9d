package workout

import (
	"fmt"
	"maps"
	"slices"
	"strconv"

	"coatwright/planner/grit"
	"coatwright/planner/library"
	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// gritSheet says what a grade of paper is in another system, and which papers lead
// to it.
var gritSheet = &Sheet{
	Slug: "grit", Title: "Grades of paper",
	Lead:   "How coarse a grade is, what the other scale calls it, which papers lead from one grade to another, and which films want that scratch.",
	Note:   "background/what-grit-means",
	fields: gritFields,
	answer: gritAnswer,
}

// jumps are how far one paper may be above the one before: common practice, no
// published source.
var jumps = []Choice{
	{Value: "1", Title: "twice the number at the most: daily work"},
	{Value: "0.5", Title: "half again at the most: when it must be perfect"},
}

func gritFields(*Entry) []Field {
	return []Field{
		{Key: "grade", Label: "Grade", Hint: "P320, 320 grit, CAMI 400, or a grain such as 26 um", Default: "P180"},
		{Key: "to", Label: "From there to", Hint: "the last paper: P800", Default: "P800", Optional: true},
		{Key: "jump", Label: "Steps", Choices: jumps, Default: jumps[0].Value},
	}
}

func gritAnswer(e *Entry) *Answer {
	meant := readGrade(e, "grade")
	last := readGrade(e, "to")
	jump, _ := strconv.ParseFloat(e.text("jump"), 64) // one of the choices, which are numbers
	if !e.sound() {
		return nil
	}
	from := onP(meant)
	a := &Answer{Says: append(meant.Remarks, grit.NotComparable), Tables: []Table{gradeTable(meant)}}
	for i, g := range meant.Grades {
		a.Figures = append(a.Figures, grainFigures(g, i+1, meant.Size)...)
	}
	if len(last.Grades) > 0 {
		rungs, err := grit.Ladder(from.Number, onP(last).Number, jump)
		e.take("to", err)
		a.Tables = append(a.Tables, ladderTable(rungs))
		a.Says = append(a.Says, "Change direction a little with each paper: where the marks cross you see when those of the paper before are gone. Wipe in between.")
	}
	if films := filmsOver(e.lib, from); len(films.Rows) > 0 {
		a.Tables = append(a.Tables, films)
	}
	return a
}

// readGrade reads a grade or a grain; it is empty for an empty field.
func readGrade(e *Entry, key string) grit.Meaning {
	text := e.text(key)
	if text == "" {
		return grit.Meaning{}
	}
	m, err := grit.Parse(text)
	e.take(key, err)
	return m
}

// onP is the likeliest grade of a text on the P scale.
func onP(m grit.Meaning) grit.Grade {
	first := m.Grades[0]
	if first.System == grit.P {
		return first
	}
	same, _, err := first.Equivalent(grit.P)
	if err != nil {
		return first
	}
	return same
}

// beside is the scale that s is not.
func beside(s grit.System) grit.System {
	if s == grit.P {
		return grit.CAMI
	}
	return grit.P
}

// gradeTable is what a text may mean, on both scales.
func gradeTable(m grit.Meaning) Table {
	t := Table{Title: "On both scales", Columns: []string{"Grade", "Mean grain", "Nearest of the other", "Its grain"}}
	for _, g := range m.Grades {
		row := []any{g.Name(), q.ValueOf(g.Size), "none comes near", ""}
		if same, _, err := g.Equivalent(beside(g.System)); err == nil {
			row[2], row[3] = same.Name(), q.ValueOf(same.Size)
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}

// grainFigures are the grain of a grade, and the grade of the other scale that is
// nearest to it. Size is the grain that was asked for, zero where it was a grade.
func grainFigures(g grit.Grade, n int, size q.Length) []trace.Figure {
	grain := trace.Figure{
		Key: fmt.Sprintf("grain-%d", n), Name: "Mean grain of " + g.Name(), Value: q.ValueOf(g.Size), Formula: grit.SizeFormula,
		Inputs:  []trace.Input{trace.In("", "number of the grade", g.Number, entered("grade"))},
		Remarks: []string{"This grain is " + string(g.Standing) + ". The scratch is only a part as deep: pressure, pad, wear and surface decide."},
	}
	if size > 0 {
		grain.Inputs = []trace.Input{trace.In("", "grain asked for", size, entered("grade"))}
	}
	same, ratio, err := g.Equivalent(beside(g.System))
	if err != nil {
		return []trace.Figure{grain}
	}
	return []trace.Figure{grain, {
		Key: fmt.Sprintf("same-%d", n), Name: fmt.Sprintf("Nearest to %s on the %s scale", g.Name(), same.System), Value: q.ValueOf(same.Number), Formula: grit.EquivalentFormula,
		Inputs: []trace.Input{
			taken("size₁", "mean grain of "+g.Name(), grain),
			trace.In("size₂", "mean grain of "+same.Name(), same.Size, trace.Origin{From: trace.FromSource}),
		},
		Remarks: []string{fmt.Sprintf("Its grain is %.2f times as large.", ratio)},
	}}
}

// ladderTable is the papers from one grade to another.
func ladderTable(rungs []grit.Rung) Table {
	t := Table{Title: "From paper to paper", Columns: []string{"Paper", "Mean grain", "Above the one before"}}
	for i, r := range rungs {
		row := []any{r.Grade.Name(), q.ValueOf(r.Grade.Size), ""}
		if i > 0 {
			row[2] = q.ValueOf(q.Fraction(r.Jump))
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}

// filmsOver are the films of the library that want the scratch of a grade.
func filmsOver(lib *library.Library, g grit.Grade) Table {
	t := Table{Title: "Films that want " + g.Name() + " below them", Columns: []string{"Film", "Wants"}}
	for _, slug := range slices.Sorted(maps.Keys(lib.Materials)) {
		if m := lib.Materials[slug]; m.Key.High > 0 && m.Key.Holds(g.Number) {
			t.Rows = append(t.Rows, []any{m.Title, fmt.Sprintf("P%g to P%g", float64(m.Key.Low), float64(m.Key.High))})
		}
	}
	return t
}
