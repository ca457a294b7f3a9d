package workout

import (
	"fmt"
	"slices"

	"coatwright/planner/drying"
	"coatwright/planner/mix"
	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// mixSheet says what to pour for a mix, by cup and by scale, and how well either
// can hold its ratio.
var mixSheet = &Sheet{
	Slug: "mix", Title: "A mix card",
	Lead:   "What to pour to which mark, what the scale shows, whether so little can be measured at all, and when to mix the next batch.",
	Note:   "background/ratios-and-marks",
	fields: mixFields,
	answer: mixAnswer,
}

// How much is mixed: a total, all that is left of a part, or a cup full.
const (
	byTotal = "total"
	byRest  = "rest"
	byCup   = "cup"
)

var (
	mixAmounts = q.Range[q.Volume]{Low: 1e-6, High: 1}
	mixErrors  = q.Range[q.Fraction]{Low: 0.001, High: 0.5}
	longWork   = q.Range[q.Time]{Low: 0, High: 30 * 24 * 3600}
	potLives   = q.Range[q.Time]{Low: 60, High: 3650 * 24 * 3600}
)

func mixFields(e *Entry) []Field {
	fields := recipeFields(e, mixed)
	fields = append(fields, Field{Key: "by", Label: "How much", Default: byTotal, Choices: []Choice{
		{Value: byTotal, Title: "a total by volume"}, {Value: byRest, Title: "all that is left of one part"}, {Value: byCup, Title: "what the cup holds"},
	}})
	switch r := recipeOf(e, e.choice("of", fields[0].Default)); e.choice("by", byTotal) {
	case byRest:
		fields = append(fields, restFields(r)...)
	case byTotal:
		fields = append(fields, Field{Key: "amount", Label: "Mix to make", Hint: "500 mL or 17 fl oz", Default: "500 mL"})
	}
	fields = append(fields, Field{Key: "holds", Label: "Mixing cup, filled as high as you mean to", Hint: "600 mL or 20 fl oz",
		Optional: e.choice("by", byTotal) != byCup, Default: map[bool]string{true: "600 mL"}[e.choice("by", byTotal) == byCup]})
	fields = append(fields, toolFields(e)...)
	fields = append(fields, Field{Key: "off", Label: "A pour may be off by", Hint: "of the pour: 5 %", Default: q.Show(q.Metric, e.lib.Words.Limits.Parts)})
	return append(fields, keepFields(e, Field{Key: "work", Label: "From the first trigger to the last", Hint: "with the waits between coats: 1 h", Default: "1 h"})...)
}

// restFields ask which part sets how much is mixed, and how much of it is left.
func restFields(r recipe) []Field {
	var parts []Choice
	for _, p := range r.parts {
		parts = append(parts, Choice{Value: p.Name, Title: r.title(p.Name)})
	}
	if len(parts) == 0 {
		return nil // the ratio cannot be read, which is told at it
	}
	return []Field{
		{Key: "part", Label: "The part", Choices: parts, Default: firstOf(parts)},
		{Key: "amount", Label: "Left of it", Hint: "130 mL or 4.4 fl oz", Default: "130 mL"},
	}
}

// keepFields ask for what decides how long a mix keeps, and for more with it.
func keepFields(e *Entry, more Field) []Field {
	fields := []Field{more, {Key: "air", Label: "Air of the room", Hint: "21 C or 70 F", Default: "21 C"}}
	if e.choice("of", "") != ownRatio && e.lib.Materials[e.choice("of", fieldOf(e))] != nil {
		return fields
	}
	return append(fields,
		Field{Key: "life", Label: "Pot life at 23 °C", Hint: "2 h; left empty: it keeps", Optional: true},
		Field{Key: "stand", Label: "To stand before use", Hint: "15 min", Optional: true})
}
