package area

import (
	"fmt"
	"slices"
	"strings"

	q "coatwright/quantity"
)

// Measure is one thing to measure of a shape, and where it is kept.
type Measure struct {
	Key         string    // in a job document and a form: "diameter"
	Symbol      string    // in the shape's formula: "d"; "" for what no figure is made of
	Title       string    // "Diameter"
	Says        string    // how it is measured, in one line
	Optional    bool      // may be left out
	Zero        bool      // may be written as nothing: "0 mm"
	Least, Most int       // of a count
	Shapes      []string  // of a list of shapes: the keys of those that may stand in it
	Parts       []Measure // of a group its measures, of a list of tubes those of one
	// Into is where it is kept: a *q.Length, *q.Area, *q.Mass, *q.Fraction, *int,
	// *bool, *Side, *[]Tube or *[]Piece, and nil for a group.
	Into any
}

// Side says which side of a shell is painted.
type Side string

// The sides. No side at all stands for the outside.
const (
	Outside Side = "outside"
	Inside  Side = "inside"
	Both    Side = "both"
)

// Sides are the sides as a job document has them.
func Sides() []string { return []string{string(Outside), string(Inside), string(Both)} }

// Of is what is measured: "length", "area", "mass", "percentage", "count",
// "yes or no", "side", "tubes", "shapes" or "group".
func (m Measure) Of() string {
	switch into := m.Into.(type) {
	case *q.Length:
		return q.ValueOf(*into).Of
	case *q.Area:
		return q.ValueOf(*into).Of
	case *q.Mass:
		return q.ValueOf(*into).Of
	case *q.Fraction:
		return q.ValueOf(*into).Of
	case *int:
		return "count"
	case *bool:
		return "yes or no"
	case *Side:
		return "side"
	case *[]Tube:
		return "tubes"
	case *[]Piece:
		return "shapes"
	default:
		return "group"
	}
}

// Value is what was measured as it stands in the formula. Not ok for what was
// left out and for what is no number.
func (m Measure) Value() (v q.Value, ok bool) {
	switch into := m.Into.(type) {
	case *q.Length:
		v = q.ValueOf(*into)
	case *q.Area:
		v = q.ValueOf(*into)
	case *q.Mass:
		v = q.ValueOf(*into)
	case *q.Fraction:
		v = q.ValueOf(*into)
	case *int:
		v = q.ValueOf(q.Number(*into))
	case *bool: // as many faces
		v = q.ValueOf(q.Number(1))
		if *into {
			v = q.ValueOf(q.Number(2))
		}
	}
	return v, v.SI != 0
}

// Check says whether what was measured lies within its limits. The error is an
// *Error.
func (m Measure) Check() error {
	switch into := m.Into.(type) {
	case *q.Length:
		return within(m, "a length", *into, MaxLength)
	case *q.Area:
		return within(m, "an area", *into, MaxArea)
	case *q.Mass:
		return within(m, "a mass", *into, MaxMass)
	case *q.Fraction:
		return within(m, "a percentage", *into, 1)
	case *int:
		if *into < m.Least && !(m.Optional && *into == 0) || *into > m.Most {
			return &Error{m.Key, fmt.Sprint(*into), fmt.Sprintf("a whole number from %d to %d", m.Least, m.Most)}
		}
	case *Side:
		if *into != "" && !slices.Contains(Sides(), string(*into)) {
			return &Error{m.Key, fmt.Sprintf("%q", *into), "one of " + strings.Join(Sides(), ", ")}
		}
	case *[]Tube:
		return checkItems(m, len(*into), "tubes", func(i int) error { return (*into)[i].Check() })
	case *[]Piece:
		return checkItems(m, len(*into), "shapes", func(i int) error { return (*into)[i].check(m.Shapes) })
	case nil:
		return below(m.Key, check(m.Parts))
	}
	return nil
}

// nothing is what is too little to be measured, in SI: of such sides an area
// may come out as none at all.
const nothing = 1e-9

// within reports whether v is above zero, where it may not be nothing, and at
// most the limit.
func within[Q q.Quantity](m Measure, what string, v, most Q) error {
	if v > nothing && v <= most || v == 0 && (m.Zero || m.Optional) {
		return nil
	}
	limit := q.Show(q.Metric, most)
	expected := fmt.Sprintf("%s above 0 and at most %s", what, limit)
	if m.Zero {
		expected = fmt.Sprintf("%s from 0 to %s", what, limit)
	}
	return &Error{m.Key, q.Show(q.Metric, v), expected}
}

func checkItems(m Measure, n int, what string, item func(i int) error) error {
	if n == 0 && !m.Optional || n > MaxItems {
		return &Error{m.Key, fmt.Sprintf("a list of %d", n), fmt.Sprintf("a list of 1 to %d %s", MaxItems, what)}
	}
	for i := range n {
		if err := item(i); err != nil {
			return below(fmt.Sprintf("%s[%d]", m.Key, i), err)
		}
	}
	return nil
}

// check is the first fault of any of the measures.
func check(measures []Measure) error {
	for _, m := range measures {
		if err := m.Check(); err != nil {
			return err
		}
	}
	return nil
}

// Makers of measures.

func lengthOf(into *q.Length, key, symbol, title, says string) Measure {
	return Measure{Key: key, Symbol: symbol, Title: title, Says: says, Into: into}
}

func count(into *int, least, most int, key, symbol, title, says string) Measure {
	return Measure{Key: key, Symbol: symbol, Title: title, Says: says, Least: least, Most: most, Optional: true, Into: into}
}

// optional is m, which may be left out; written down, it is above zero.
func (m Measure) optional() Measure {
	m.Optional = true
	return m
}

// orNone is m, which may be left out or be nothing.
func (m Measure) orNone() Measure {
	m.Optional, m.Zero = true, true
	return m
}
