package workout

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"coatwright/planner/area"
	q "coatwright/quantity"
)

// areaSheet says how much surface a part has, from what is measured of it.
var areaSheet = &Sheet{
	Slug: "area", Title: "Area of a part",
	Lead:   "How much surface there is to paint, from a tape, a calliper or a pair of scales.",
	Note:   "background/measuring-a-part",
	fields: areaFields,
	answer: areaAnswer,
}

// firstKind is the kind of shape that the sheet opens with.
const firstKind = "frame"

// measuredAs is the kind of shape that was chosen; firstKind where it is none.
func measuredAs(e *Entry) area.Kind {
	kind, ok := area.KindNamed(e.choice("kind", firstKind))
	if !ok {
		kind, _ = area.KindNamed(firstKind)
	}
	return kind
}

func areaFields(e *Entry) []Field {
	kind := measuredAs(e)
	var kinds []Choice
	for _, k := range area.Kinds() {
		kinds = append(kinds, Choice{Value: k.Key, Title: k.Title})
	}
	fields := []Field{{Key: "kind", Label: "Shape", Hint: kind.Says + " After another choice, work it out: the fields change with it.", Choices: kinds, Default: firstKind}}
	for _, m := range area.Fields(kind.Measures) {
		fields = append(fields, measureField(kind.Key, m))
	}
	return fields
}

// measureField asks for a measure of a kind of shape.
func measureField(kind string, m area.Measure) Field {
	f := Field{Key: m.Key, Label: m.Title, Hint: m.Says, Default: measuredFirst[kind][m.Key], Optional: m.Optional}
	switch m.Of() {
	case "length", "area", "mass", "percentage":
		if example := inBoth(m, f.Default); example != "" {
			f.Hint += " For example " + example + "."
		}
	case "yes or no":
		f.Choices, f.Default, f.Optional = []Choice{{Value: "no", Title: "No"}, {Value: "yes", Title: "Yes"}}, "no", false
	case "side":
		for _, side := range area.Sides() {
			f.Choices = append(f.Choices, Choice{Value: side, Title: capital(side)})
		}
		f.Default, f.Optional = string(area.Outside), false
	case "tubes", "shapes":
		f.Lines = true
		f.Hint += " " + area.LineHint(m)
	}
	return f
}

// inBoth is an example of a measure in metric and in US units: the one given, or
// a likely one.
func inBoth(m area.Measure, example string) string {
	if m.Read(example) != nil {
		return measuredElse[m.Key]
	}
	v, _ := m.Value()
	metric, us := q.Metric.Show(v), q.US.Show(v)
	if metric == us {
		return metric
	}
	return metric + " or " + us
}

// measuredFirst is what stands in the fields of a kind at first: a part as a shop
// may have it.
var measuredFirst = map[string]map[string]string{
	"area":      {"area": "0.55 m2"},
	"plate":     {"length": "600 mm", "width": "400 mm"},
	"disc":      {"diameter": "300 mm"},
	"trapezium": {"base": "600 mm", "top": "400 mm", "height": "300 mm"},
	"cylinder":  {"diameter": "30 mm", "length": "400 mm", "ends": "0"},
	"frustum":   {"diameter": "30 mm", "diameter2": "20 mm", "length": "400 mm", "ends": "0"},
	"cone":      {"diameter": "300 mm", "height": "200 mm", "ends": "0"},
	"ring":      {"diameter": "640 mm", "depth": "25 mm", "share": "100 %"},
	"frame": {"joints": "9", "tubes": "28.6 mm x 560 mm\n31.8 mm x 620 mm\n28.6 mm x 540 mm\n36 mm x 150 mm\n" +
		"22 to 14 mm x 420 mm x 2\n16 to 12 mm x 530 mm x 2"},
	"box":       {"length": "400 mm", "width": "300 mm", "height": "200 mm"},
	"prism":     {"sides": "6", "side": "20 mm", "length": "450 mm", "ends": "0"},
	"slab":      {"outline": "0.13 m2", "perimeter": "1.5 m", "thickness": "45 mm"},
	"body":      {"length": "490 mm", "upper": "280 mm", "waist": "240 mm", "lower": "370 mm", "thickness": "100 mm"},
	"sphere":    {"diameter": "60 mm"},
	"dome":      {"diameter": "400 mm", "height": "150 mm"},
	"ellipsoid": {"length": "500 mm", "width": "300 mm", "height": "200 mm"},
	"helmet":    {"length": "290 mm", "width": "230 mm", "height": "200 mm", "below": "40 mm"},
	"paper":     {"mass": "62 g", "sheet-length": "1 m", "sheet-width": "0.9 m", "sheet-mass": "36 g"},
	"roll":      {"width": "450 mm", "length": "2.4 m", "over": "10 %"},
	"sum":       {"sum": "cylinder 30 mm x 400 mm x 2\nplate 300 x 200 mm, both faces"},
}

// measuredElse is an example of what may be left out, by its key.
var measuredElse = map[string]string{
	"thickness": "2 mm or 0.08 in", "girth": "80 mm or 3.15 in", "circumference": "820 mm or 32.3 in",
	"upper-at": "100 mm or 4 in", "waist-at": "200 mm or 8 in", "lower-at": "370 mm or 14.5 in",
}

func areaAnswer(e *Entry) *Answer {
	kind := measuredAs(e)
	e.text("kind")
	shape := readShape(e, kind)
	if !e.sound() {
		return nil
	}
	a := &Answer{
		Says: []string{
			fmt.Sprintf("There is %s to paint.", q.Metric.Show(q.ValueOf(shape.Area()))),
			fanMeets(e, shape) + " How much paint it takes stands on the sheet of wet and dry film.",
		},
		Figures: surfaceFigures(shape, e.values),
		Shape:   shape,
	}
	if sides := bySide(shape); len(sides.Rows) > 0 {
		a.Tables = append(a.Tables, sides)
	}
	return a
}

// readShape reads a shape of a kind from the fields, and reports what is wrong at
// the field that is to blame.
func readShape(e *Entry, kind area.Kind) area.Shape {
	shape := kind.New()
	for _, m := range area.Fields(shape.Measures()) {
		if text := e.text(m.Key); text != "" && e.problems[m.Key] == "" {
			takeMeasure(e, m.Read(text))
		}
	}
	if e.sound() {
		takeMeasure(e, shape.Check())
	}
	return shape
}

// takeMeasure makes a problem of what is wrong with a measure.
func takeMeasure(e *Entry, err error) {
	var wrong *area.Error
	if !errors.As(err, &wrong) {
		return
	}
	field := area.PlaceOf(wrong.Key).Field
	if !slices.ContainsFunc(e.fields, func(f Field) bool { return f.Key == field }) {
		field = "kind"
	}
	told := capital(wrong.Told(e.values[field]))
	if !strings.HasSuffix(told, "?") {
		told += "."
	}
	e.fail(field, "%s", told)
}

// fanMeets says how the shape is counted where it is asked how much lands on it.
func fanMeets(e *Entry, shape area.Shape) string {
	for _, w := range e.lib.Words.Forms {
		if w.Name == shape.Form() {
			return fmt.Sprintf("For how much of a fan lands on it, it counts as %s: %s", w.Name, lowered(w.Is))
		}
	}
	return fmt.Sprintf("For how much of a fan lands on it, it counts as %s.", shape.Form())
}

// bySide is the area by which side of the shape is painted; without rows where
// it has only one.
func bySide(shape area.Shape) Table {
	t := Table{Title: "By what is painted of it", Columns: []string{"Painted", "Area"}}
	row := func(name string) {
		if shape.Check() == nil {
			t.Rows = append(t.Rows, []any{name, q.ValueOf(shape.Area())})
		}
	}
	for _, m := range shape.Measures() {
		switch into := m.Into.(type) {
		case *area.Side:
			was := *into
			for _, side := range area.Sides() {
				*into = area.Side(side)
				row(side)
			}
			*into = was
		case *bool:
			if strings.HasSuffix(m.Key, "faces") {
				was := *into
				*into = false
				row("one face")
				*into = true
				row("both faces")
				*into = was
			}
		}
	}
	return t
}
