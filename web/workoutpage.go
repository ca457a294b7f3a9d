package web

import (
	"coatwright/planner/trace"
	"coatwright/workout"
)

// WorkOutIndex lists what can be worked out.
type WorkOutIndex struct {
	Frame
	Sheets []*workout.Sheet
}

// WorkOutPage is one sheet, with its answer when all is filled in.
type WorkOutPage struct {
	Frame
	Sheet  *workout.Page
	Titles map[string]string // of notes by path
}

func (WorkOutIndex) template() string { return "workouts" }
func (WorkOutPage) template() string  { return "workout" }

// SheetField is a field of a sheet as it is filled in.
type SheetField struct {
	workout.Field
	Value, Problem string
}

// Fields are the fields of the sheet as they are filled in.
func (p WorkOutPage) Fields() []SheetField {
	var out []SheetField
	for _, f := range p.Sheet.Fields {
		out = append(out, SheetField{f, p.Sheet.Values[f.Key], p.Sheet.Problems[f.Key]})
	}
	return out
}

// ChoiceGroup is choices that belong together.
type ChoiceGroup struct {
	Name    string
	Choices []workout.Choice
}

// Groups are the field's choices by group, in order.
func (f SheetField) Groups() []ChoiceGroup {
	var groups []ChoiceGroup
	for _, c := range f.Choices {
		if len(groups) == 0 || groups[len(groups)-1].Name != c.Group {
			groups = append(groups, ChoiceGroup{Name: c.Group})
		}
		last := &groups[len(groups)-1]
		last.Choices = append(last.Choices, c)
	}
	return groups
}

// Show hands a figure to its template.
func (p WorkOutPage) Show(f trace.Figure) ShownFigure { return ShownFigure{f, p.Titles, false} }

// NoteTitle is the title of the note that explains the sheet.
func (p WorkOutPage) NoteTitle() string { return titleOf(p.Titles, p.Sheet.Note) }

// Drawings draw what was measured; none where the answer is of no shape.
func (p WorkOutPage) Drawings() []ShapeDrawing {
	if p.Sheet.Answer == nil || p.Sheet.Answer.Shape == nil {
		return nil
	}
	return ShapeDrawings(p.Sheet.Answer.Shape, p.units())
}

// Strip is the strip of the answer, every coat of it; nil for none.
func (p WorkOutPage) Strip() *ShownStrip {
	s := p.Sheet.Answer.Strip
	if s == nil {
		return nil
	}
	return &ShownStrip{s, len(s.Coats) - 1, "chosen", func(key string) string { return "#" + key }}
}
