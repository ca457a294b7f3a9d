package workout

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"coatwright/nearest"
	"coatwright/planner/library"
	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// Entry is what was entered in a sheet, while it is read.
type Entry struct {
	lib      *library.Library
	given    func(key string) (string, bool)
	fields   []Field
	values   map[string]string
	problems map[string]string
}

// entered is what stands in a field.
func (e *Entry) entered(f Field) string {
	if text, ok := e.given(f.Key); ok {
		return strings.TrimSpace(text)
	}
	return f.Default
}

// choice is what was chosen of choices before the fields are known, for a sheet
// that asks other things by choice; def where nothing was.
func (e *Entry) choice(key, def string) string {
	if text, ok := e.given(key); ok && strings.TrimSpace(text) != "" {
		return strings.TrimSpace(text)
	}
	return def
}

// text is what stands in a field; a field that must be filled in and is not is a
// problem.
func (e *Entry) text(key string) string {
	i := slices.IndexFunc(e.fields, func(f Field) bool { return f.Key == key })
	if i < 0 {
		panic("workout: no field " + key)
	}
	f, text := e.fields[i], e.values[key]
	if text == "" && !f.Optional {
		e.fail(key, "Found nothing, expected %s.", strings.ToLower(f.Label))
	}
	if text != "" && len(f.Choices) > 0 && !slices.ContainsFunc(f.Choices, func(c Choice) bool { return c.Value == text }) {
		var values []string
		for _, c := range f.Choices {
			values = append(values, c.Value)
		}
		e.fail(key, "Found %q, expected one of the list%s.", text, nearest.Hint(nearest.To(text, values)))
	}
	return text
}

// fail reports a problem of a field; the first one stands.
func (e *Entry) fail(key, format string, args ...any) {
	if e.problems[key] == "" {
		e.problems[key] = strings.Replace(fmt.Sprintf(format, args...), "?.", "?", 1) // a hint asks
	}
}

// sound reports whether nothing was wrong so far.
func (e *Entry) sound() bool { return len(e.problems) == 0 }

// number reads a number of low to high; a field left empty is 0.
func (e *Entry) number(key string, low, high float64) float64 {
	text := e.text(key)
	if text == "" {
		return 0
	}
	x, err := strconv.ParseFloat(text, 64)
	if err != nil || !(x >= low && x <= high) {
		e.fail(key, "Found %q, expected a number from %g to %g.", text, low, high)
		return low
	}
	return x
}

// read reads a quantity in any unit; a field left empty is 0.
func read[Q q.Quantity](e *Entry, key string) Q {
	text := e.text(key)
	if text == "" {
		return 0
	}
	v, err := q.Parse[Q](text)
	e.take(key, err)
	return v
}

// readRange reads a quantity or a range of it; a field left empty is zero.
func readRange[Q q.Quantity](e *Entry, key string) q.Range[Q] {
	text := e.text(key)
	if text == "" {
		return q.Range[Q]{}
	}
	r, err := q.ParseRange[Q](text)
	e.take(key, err)
	return r
}

// within reads a quantity that must lie in a range.
func within[Q q.Quantity](e *Entry, key string, r q.Range[Q]) Q {
	v := read[Q](e, key)
	if !r.Holds(v) && e.values[key] != "" {
		e.fail(key, "Found %q, expected %s.", e.values[key], q.ShowRange(q.Metric, r))
	}
	return v
}

// take makes a problem of an error.
func (e *Entry) take(key string, err error) {
	var wrong *q.Error
	switch {
	case err == nil:
	case errors.As(err, &wrong):
		e.fail(key, "Found %q, expected %s%s.", wrong.Found, wrong.Expected, nearest.Hint(wrong.Nearest))
	default:
		text := err.Error()
		e.fail(key, "%s.", strings.ToUpper(text[:1])+text[1:])
	}
}

// entered is the origin of what stands in a field.
func entered(key string) trace.Origin { return trace.Origin{From: trace.FromEntry, At: key} }

// fromNote is the origin of what a note says.
func fromNote(path, standing string) trace.Origin {
	return trace.Origin{From: trace.FromNote, At: path, Standing: standing}
}

// fromFigure is the origin of what another figure is.
func fromFigure(key string) trace.Origin { return trace.Origin{From: trace.FromFigure, At: key} }
