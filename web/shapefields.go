package web

import (
	"cmp"
	"net/url"
	"slices"
	"strings"

	"coatwright/planner/area"
	q "coatwright/quantity"
)

// ShapeChoices are the kinds of shape that a part may have.
var ShapeChoices = func() []Choice {
	var out []Choice
	for _, k := range area.Kinds() {
		out = append(out, Choice{Value: k.Key, Title: k.Title, Says: k.Says})
	}
	return out
}()

// shapeField is a field for a measure that one or more kinds of shape have.
type shapeField struct {
	key, of, label string
	kinds          []string // by their keys
	hints          []Hint
}

// Hint says what a field is for to somebody who chose a kind of shape or of
// design, and all there is to say before one is chosen.
type Hint struct {
	Show   string // the kinds; "" for before one is chosen
	Says   string
	Always bool // holds whatever is chosen
	Away   bool // put away: another kind is chosen
}

// shapeFields are the fields of every measure of every kind, in an order that
// suits each kind.
var shapeFields = func() []shapeField {
	kinds := area.Kinds()
	var orders [][]string
	for _, k := range kinds {
		var order []string
		for _, m := range area.Fields(k.Measures) {
			order = append(order, m.Key)
		}
		orders = append(orders, order)
	}
	var out []shapeField
	for _, key := range merged(orders) {
		out = append(out, shapeFieldOf(key, kinds))
	}
	return out
}()

// merged is all words of some lists, each once, before another as long as no
// list has them the other way round.
func merged(lists [][]string) []string {
	var out []string
	for {
		lists = slices.DeleteFunc(lists, func(l []string) bool { return len(l) == 0 })
		if len(lists) == 0 {
			return out
		}
		first := lists[0][0]
		for _, l := range lists {
			behind := func(other []string) bool { return slices.Contains(other[1:], l[0]) }
			if !slices.ContainsFunc(lists, behind) {
				first = l[0]
				break
			}
		}
		out = append(out, first)
		for i, l := range lists {
			lists[i] = slices.DeleteFunc(l, func(word string) bool { return word == first })
		}
	}
}

// shapeFieldOf is the field of the measure that is called so in any of the kinds.
func shapeFieldOf(key string, kinds []area.Kind) shapeField {
	f := shapeField{key: key}
	var titles []string
	for _, k := range kinds {
		measures := area.Fields(k.Measures)
		i := slices.IndexFunc(measures, func(m area.Measure) bool { return m.Key == key })
		if i < 0 {
			continue
		}
		m := measures[i]
		if len(f.kinds) == 0 {
			f.of, f.label = m.Of(), m.Title
		}
		f.kinds, titles = append(f.kinds, k.Key), append(titles, k.Title)
		f.hint(k.Key, m)
	}
	of := Hint{Says: strings.Join(titles, ", ") + "."}
	if len(f.hints) == 1 { // holds for whatever is chosen
		f.hints[0].Always = true
	}
	f.hints = append([]Hint{of}, f.hints...)
	return f
}

// hint adds what a kind says of the field.
func (f *shapeField) hint(kind string, m area.Measure) {
	says := m.Says
	if m.Title != f.label {
		says = m.Title + ". " + says
	}
	if f.lines() {
		says += " " + area.LineHint(m)
	}
	for i, h := range f.hints {
		if h.Says == says {
			f.hints[i].Show += " " + kind
			return
		}
	}
	f.hints = append(f.hints, Hint{Show: kind, Says: says})
}

func (f *shapeField) lines() bool { return f.of == "tubes" || f.of == "shapes" }

// Kind is the kind of shape that the row's part has.
func (r Row) Kind() string {
	if kind, ok := area.KindNamed(r.Form.Get(r.Prefix + "shape")); ok {
		return kind.Key
	}
	return ShapeChoices[0].Value
}

// Shape is the field for the kind of shape.
func (r Row) Shape() Field {
	f := r.Of("shape", "Shape", "", ShapeChoices)
	f.Hints = []Hint{{Says: "Each measure with its unit, 400 mm or 16 in.", Always: true}}
	for _, c := range ShapeChoices {
		f.Hints = append(f.Hints, Hint{Show: c.Value, Says: c.Says, Away: c.Value != r.Kind()})
	}
	return f
}

// Measured are the fields of the row for what is measured of its shape, whichever
// it is.
func (r Row) Measured() []Field {
	kind := r.Kind()
	var out []Field
	for _, s := range shapeFields {
		f := r.In(s.key, s.label, "", strings.Join(s.kinds, " "))
		f.Of = s.of
		for _, h := range s.hints {
			h.Away = !h.Always && h.Show != "" && !slices.Contains(strings.Fields(h.Show), kind)
			f.Hints = append(f.Hints, h)
		}
		if s.of == "side" {
			for _, side := range area.Sides() {
				f.Options = append(f.Options, Choice{Value: side, Title: words(side)})
			}
			f.None = "Not said: the outside"
		}
		out = append(out, f)
	}
	return out
}

// Worked is the area of one of the row's part, as its shape has it; nil where
// that is not known.
func (r Row) Worked() *q.Value {
	worked, ok := r.Areas[r.Name]
	if !ok {
		return nil
	}
	v := q.ValueOf(worked)
	return &v
}

// AreaLink leads to the sheet that says how the area of the row's part comes
// about: with what was measured, where that can be read.
func (r Row) AreaLink() string {
	kind := r.Kind()
	query := url.Values{"kind": {kind}}
	if _, ok := r.Areas[r.Name]; ok {
		for _, s := range shapeFields {
			if slices.Contains(s.kinds, kind) {
				query.Set(s.key, cmp.Or(r.Form.Get(r.Prefix+s.key), unsaid[s.of]))
			}
		}
	}
	return "/work-out/area?" + query.Encode()
}

// unsaid is what holds of a measure that was left out and that the sheet has
// choices for.
var unsaid = map[string]string{"yes or no": "no", "side": string(area.Outside)}
