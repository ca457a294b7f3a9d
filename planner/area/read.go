package area

import (
	"errors"
	"fmt"
	"strconv"
	"strings"

	"coatwright/nearest"
	q "coatwright/quantity"
)

// Read reads what somebody wrote of a measure into the shape that it is of: a
// quantity with its unit, a whole number, yes or no, a side, or the items of a
// list as Items reads them. The error is an *Error.
func (m Measure) Read(text string) error {
	if m.list() {
		items, err := Items(m, text)
		if err != nil {
			return err
		}
		return m.take(items)
	}
	return m.take(strings.TrimSpace(text))
}

// take reads a text, an Item of a group, or the []Item of a list.
func (m Measure) take(v any) error {
	err := m.fill(v)
	if err != nil {
		return err
	}
	m.Optional = m.Zero // what may be left out, but was not, is more than nothing
	return m.Check()
}

func (m Measure) fill(v any) error {
	switch into := m.Into.(type) {
	case *[]Tube:
		return fillTubes(m.Key, into, v)
	case *[]Piece:
		return fillPieces(m, into, v)
	case nil:
		return below(m.Key, takeAll(m.Parts, v))
	}
	text, ok := v.(string)
	if !ok {
		return &Error{m.Key, "a list", "one text"}
	}
	switch into := m.Into.(type) {
	case *q.Length:
		return fillQuantity(m.Key, into, text)
	case *q.Area:
		return fillQuantity(m.Key, into, text)
	case *q.Mass:
		return fillQuantity(m.Key, into, text)
	case *q.Fraction:
		return fillQuantity(m.Key, into, text)
	case *int:
		n, err := strconv.Atoi(text)
		if err != nil {
			return &Error{m.Key, quote(text), fmt.Sprintf("a whole number from %d to %d", m.Least, m.Most)}
		}
		*into = n
	case *bool:
		if text != "yes" && text != "no" {
			return &Error{m.Key, quote(text), "yes or no"}
		}
		*into = text == "yes"
	case *Side:
		*into = Side(text)
	}
	return nil
}

func fillQuantity[Q q.Quantity](key string, into *Q, text string) error {
	v, err := q.Parse[Q](text)
	var wrong *q.Error
	if errors.As(err, &wrong) {
		return &Error{key, quote(wrong.Found), wrong.Expected + nearest.Hint(wrong.Nearest)}
	}
	*into = v
	return nil
}

// takeAll reads the measures that were written in an item. It does not ask for
// those that are needed and missing: the check of the shape does.
func takeAll(measures []Measure, v any) error {
	item := written(v)
	for _, m := range measures {
		if v, is := item[m.Key]; is {
			if err := m.take(v); err != nil {
				return err
			}
		}
	}
	return nil
}

func fillTubes(key string, into *[]Tube, v any) error {
	items, _ := v.([]Item)
	*into = make([]Tube, len(items))
	for i, item := range items {
		if err := takeAll((*into)[i].Measures(), item); err != nil {
			return below(fmt.Sprintf("%s[%d]", key, i), err)
		}
	}
	return nil
}

func fillPieces(m Measure, into *[]Piece, v any) error {
	items, _ := v.([]Item)
	*into = nil
	for i, item := range items {
		p, err := pieceOf(m.Shapes, item)
		if err != nil {
			return below(fmt.Sprintf("%s[%d]", m.Key, i), err)
		}
		*into = append(*into, p)
	}
	return nil
}

// pieceOf reads a shape of one of the kinds, and how many there are of it.
func pieceOf(keys []string, item Item) (p Piece, err error) {
	for _, key := range keys {
		v, is := item[key]
		if !is {
			continue
		}
		kind, _ := KindNamed(key)
		p.Shape = kind.New()
		if kind.Bare() {
			err = takeAll(p.Shape.Measures(), item)
		} else {
			err = below(key, takeAll(p.Shape.Measures(), v))
		}
	}
	if text, is := item["count"].(string); is && err == nil {
		err = Measure{Key: "count", Least: 1, Most: MaxCount, Into: &p.Count}.take(text)
	}
	return p, err
}

// Fields are the measures of a kind as the fields of a form, those of a group
// under the name of both: "sheet-length".
func Fields(measures []Measure) []Measure {
	var out []Measure
	for _, m := range measures {
		if m.Into != nil {
			out = append(out, m)
			continue
		}
		for _, part := range m.Parts {
			part.Key = m.Key + "-" + part.Key
			out = append(out, part)
		}
	}
	return out
}
