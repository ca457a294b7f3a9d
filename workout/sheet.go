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

// Answer is what comes out. Keys are stable: added, never renamed.
type Answer struct {
	Verdict *Verdict       `json:"verdict"` // nil for a sheet that only reckons
	Says    []string       `json:"says"`
	Figures []trace.Figure `json:"figures"`
	Tables  []Table        `json:"tables"`
	Chart   *Chart         `json:"chart"`  // nil for none
	Card    *Card          `json:"card"`   // what is poured into one cup, to be drawn; nil for nothing
	Strip   *planner.Strip `json:"strip"`  // what a candy looks like coat by coat, to be drawn; nil for nothing
	Shape   area.Shape     `json:"-"`      // what was measured, to be drawn; nil for nothing
	Defers  string         `json:"defers"` // to whom the answer defers; "" where nobody can be hurt
}

// Verdict is a short answer. Level is "go", "care" or "no".
type Verdict struct {
	Level string `json:"level"`
	Says  string `json:"says"`
}

// Table is figures in rows. Cells are texts, or trace values that are shown in
// the reader's units.
type Table struct {
	Title   string   `json:"title"`
	Columns []string `json:"columns"`
	Rows    [][]any  `json:"rows"`
	Apart   bool     `json:"-"` // on a phone each row stands by itself, its cells below one another
}

// Card is what goes into one cup, in pouring order, in m3.
type Card struct {
	There q.Volume   `json:"there"` // what is in it before
	Pours []CardPour `json:"pours"`
	Holds q.Volume   `json:"holds"` // the cup; zero where nobody said
}

// CardPour is a pour of a card, and the mark that the cup is at after it.
type CardPour struct {
	Name string   `json:"name"`
	Mark q.Volume `json:"mark"`
}

// Chart is a time over two measures, for drawing and as a table.
type Chart struct {
	Title string       `json:"title"`
	X     Axis         `json:"x"`
	Y     Axis         `json:"y"`
	Times [][]*q.Value `json:"times"` // at the values of Y, then of X; nil where it never comes
	Lines []q.Value    `json:"lines"` // the times whose lines are drawn, the shortest first
	Point *Mark        `json:"point"` // nil for none
	Box   *Box         `json:"box"`   // where it is meant to be; nil where nobody says
}

// Axis is a measure and the values of it that are marked, the lowest first.
type Axis struct {
	Name   string    `json:"name"`
	Values []q.Value `json:"values"`
}

// Mark is one place on a chart, and its time: nil where it never comes.
type Mark struct {
	Name string   `json:"name"`
	X    q.Value  `json:"x"`
	Y    q.Value  `json:"y"`
	Time *q.Value `json:"time"`
}

// Box is a range of both measures.
type Box struct {
	Name string     `json:"name"`
	X    trace.Span `json:"x"`
	Y    trace.Span `json:"y"`
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
