// Package workout owns what can be worked out beside a plan: each sheet asks for
// a few figures and answers with others, and with how they came about. It knows
// no HTTP and draws nothing.
package workout

import (
	"coatwright/planner"
	"coatwright/planner/area"
	"coatwright/planner/library"
	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// Sheet is one thing that can be worked out.
type Sheet struct {
	Slug, Title string
	Lead        string // what it is for, in a sentence
	Note        string // the note that explains it, "" for none
	fields      func(*Entry) []Field
	answer      func(*Entry) *Answer
}

// Field is one thing that a sheet asks for.
type Field struct {
	Key, Label string
	Hint       string // the unit, an example
	Default    string // what stands in it at first
	Choices    []Choice
	Optional   bool
	Lines      bool // of several lines
}

// Choice is one of a field's choices. Group heads those that belong together, ""
// for none.
type Choice struct{ Value, Title, Group string }

// Answer is what comes out.
type Answer struct {
	Verdict *Verdict // nil for a sheet that only reckons
	Says    []string
	Figures []trace.Figure
	Tables  []Table
	Chart   *Chart         // nil for none
	Card    *Card          // what is poured into one cup, to be drawn; nil for nothing
	Strip   *planner.Strip // what a candy looks like coat by coat, to be drawn; nil for nothing
	Shape   area.Shape     `json:"-"` // what was measured, to be drawn; nil for nothing
	Defers  string         // to whom the answer defers; "" where nobody can be hurt
}

// Verdict is a short answer. Level is "go", "care" or "no".
type Verdict struct{ Level, Says string }

// Table is figures in rows. Cells are texts, or trace values that are shown in
// the reader's units.
type Table struct {
	Title   string
	Columns []string
	Rows    [][]any
	Apart   bool // its rows are read one by one: on a phone each stands for itself
}

// Card is what goes into one cup, in pouring order.
type Card struct {
	There q.Volume // what is in it before
	Pours []CardPour
	Holds q.Volume // the cup; zero where nobody said
}

// CardPour is a pour of a card, and the mark that the cup is at after it.
type CardPour struct {
	Name string
	Mark q.Volume
}

// Chart is a time over two measures, for drawing and as a table.
type Chart struct {
	Title string
	X, Y  Axis
	Times [][]*q.Value // at the values of Y, then of X; nil where it never comes
	Lines []q.Value    // the times whose lines are drawn, the shortest first
	Point *Mark        // nil for none
	Box   *Box         // where it is meant to be; nil where nobody says
}

// Axis is a measure and the values of it that are marked, the lowest first.
type Axis struct {
	Name   string
	Values []q.Value
}

// Mark is one place on a chart, and its time: nil where it never comes.
type Mark struct {
	Name string
	X, Y q.Value
	Time *q.Value
}

// Box is a range of both measures.
type Box struct {
	Name string
	X, Y trace.Span
}

// Page is a sheet as it is filled in.
type Page struct {
	*Sheet
	Fields   []Field
	Values   map[string]string // by key, as entered, else the defaults
	Problems map[string]string // by key
	Answer   *Answer           // nil while there are problems
}

// Fill works a sheet out. What was not entered is taken at its default; given
// says what was entered.
func (s *Sheet) Fill(lib *library.Library, given func(key string) (string, bool)) *Page {
	e := &Entry{lib: lib, given: given, values: map[string]string{}, problems: map[string]string{}}
	e.fields = s.fields(e)
	p := &Page{Sheet: s, Fields: e.fields, Values: e.values, Problems: e.problems}
	for _, f := range e.fields {
		e.values[f.Key] = e.entered(f)
	}
	if answer := s.answer(e); len(e.problems) == 0 {
		p.Answer = answer
	}
	return p
}
