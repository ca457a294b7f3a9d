package area

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// Place is where in a form the way to a measure leads.
type Place struct {
	Field   string // the field: "tubes"; "" for the shape as a whole
	Item    int    // of a list the item, counted from nought; -1 for all of the field
	Measure string // of the item the measure; "" for all of it
}

// PlaceOf is where the way to a measure leads, as an Error and a job document
// below the kind of the shape have it: "openings[0].disc.diameter" is the
// diameter of the first item of the field "openings".
func PlaceOf(way string) Place {
	field, rest, listed := strings.Cut(way, "[")
	p := Place{Field: strings.ReplaceAll(field, ".", "-"), Item: -1}
	if !listed {
		return p
	}
	number, below, _ := strings.Cut(rest, "]")
	if i, err := strconv.Atoi(number); err == nil {
		p.Item = i
	}
	below, _, _ = strings.Cut(below, "[")
	below = below[strings.LastIndex(below, ".")+1:]
	if !slices.Contains(Keys(), below) {
		p.Measure = below
	}
	return p
}

// Says is the line of the text in the field that the place is on: "line 2,
// diameter"; "" for all of a field.
func (p Place) Says(text string) string {
	if p.Item < 0 {
		return ""
	}
	says := fmt.Sprintf("line %d", LineOf(text, p.Item))
	if p.Measure != "" {
		says += ", " + strings.ReplaceAll(p.Measure, "-", " ")
	}
	return says
}

// Told is the error to somebody who sees the field in which the text stands:
// "line 2, diameter: found ..., expected ...".
func (e *Error) Told(text string) string {
	told := fmt.Sprintf("found %s, expected %s", e.Found, e.Expected)
	if line := PlaceOf(e.Key).Says(text); line != "" {
		return line + ": " + told
	}
	return told
}
