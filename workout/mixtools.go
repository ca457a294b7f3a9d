package workout

import (
	"cmp"
	"maps"
	"slices"
	"strconv"
	"strings"

	"coatwright/planner/library"
	"coatwright/planner/mix"
	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// tools are what a mix is measured with.
type tools struct {
	lines []lines // the sides of the cup
	scale mix.Scale
}

// lines are those of one side of a cup.
type lines struct {
	unit  string // in which they are marked
	one   q.Volume
	every mix.Cup
	from  trace.Origin
}

// ownLines is chosen for a cup that no note knows.
const ownLines = "own-lines"

// ounce is a US fluid ounce, by the definition of the gallon: 231 cubic inches.
const ounce q.Volume = 231 * 0.0254 * 0.0254 * 0.0254 / 128

var (
	lineSteps  = q.Range[q.Volume]{Low: 1e-8, High: 1e-2}
	scaleSteps = q.Range[q.Mass]{Low: 1e-6, High: 1}
)

// toolFields ask for the cup and the scale.
func toolFields(e *Entry) []Field {
	var cups []Choice
	scale := "1 g"
	for _, slug := range slices.Sorted(maps.Keys(e.lib.Tools)) {
		t := e.lib.Tools[slug]
		if len(t.Marks.Millilitres) > 0 {
			cups = append(cups, Choice{Value: slug, Title: t.Title + ", lines as its note says"})
		}
		if t.Resolution > 0 {
			scale = q.Show(q.Metric, t.Resolution)
		}
	}
	cups = append(cups, Choice{Value: ownLines, Title: "A cup with lines of its own"})
	fields := []Field{{Key: "cup", Label: "Measured in", Choices: cups, Default: firstOf(cups)}}
	if e.choice("cup", firstOf(cups)) == ownLines {
		fields = append(fields, Field{Key: "every", Label: "Its lines stand apart by", Hint: "5 mL or 0.5 fl oz", Default: "5 mL"})
	}
	return append(fields, Field{Key: "scale", Label: "The scale shows steps of", Hint: "0.1 g or 0.005 oz", Default: scale})
}

func readTools(e *Entry) tools {
	t := tools{scale: mix.Scale{Resolution: within(e, "scale", scaleSteps)}}
	if tool := e.lib.Tools[e.text("cup")]; tool != nil {
		from := fromNote("tool/"+tool.Slug, "")
		t.lines = []lines{
			{"mL", 1e-6, cupOf(tool.Marks.Millilitres), from}, {"fl oz", ounce, cupOf(tool.Marks.Ounces), from},
		}
	} else if e.problems["cup"] == "" {
		every := within(e, "every", lineSteps)
		t.lines = []lines{{"mL", 1e-6, mix.Cup{{UpTo: every, Every: every}}, entered("every")}}
		if strings.HasSuffix(e.values["every"], "oz") {
			t.lines[0].unit, t.lines[0].one = "fl oz", ounce
		}
	}
	return t
}

func cupOf(marks []library.Mark) mix.Cup {
	cup := make(mix.Cup, len(marks))
	for i, m := range marks {
		cup[i] = mix.Graduation{UpTo: m.UpTo, Every: m.Every}
	}
	return cup
}

// read is a line as it is printed on the cup.
func (l lines) read(line q.Volume) string { return plain(float64(line / l.one)) }

// plain writes a number as finely as cups and scales are marked.
func plain(x float64) string {
	text := strconv.FormatFloat(x, 'f', 4, 64)
	return strings.TrimSuffix(strings.TrimRight(text, "0"), ".")
}

// worst is the reading that may be farthest off.
func worst[Q q.Quantity](readings []mix.Reading[Q]) mix.Reading[Q] {
	return slices.MaxFunc(readings, func(a, b mix.Reading[Q]) int { return cmp.Compare(a.Worst, b.Worst) })
}
