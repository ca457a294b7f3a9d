package workout

import (
	"fmt"

	"coatwright/planner/mix"
	q "coatwright/quantity"
)

// mixSheet says what to pour for a mix, by cup and by scale, and how well either
// holds its ratio.
var mixSheet = &Sheet{
	Slug: "mix", Title: "A mix card",
	Lead:   "What to pour to which mark, what the scale shows, whether so little can be measured at all, and when to mix the next batch.",
	Note:   "background/ratios-and-marks",
	fields: mixFields,
	answer: mixAnswer,
}

// How much is mixed: a total, as much as what is left of one part allows, or a
// cup full.
const (
	byTotal = "total"
	byRest  = "rest"
	byCup   = "cup"
)

var (
	mixAmounts = q.Range[q.Volume]{Low: 1e-6, High: 0.2}
	mixErrors  = q.Range[q.Fraction]{Low: 0.001, High: 0.5}
	working    = q.Range[q.Time]{Low: 0, High: 30 * 24 * 3600}
)

func mixFields(e *Entry) []Field {
	fields, r := recipeFields(e)
	fields = append(fields, Field{Key: "by", Label: "How much", Default: byTotal, Choices: []Choice{
		{Value: byTotal, Title: "a total by volume"}, {Value: byRest, Title: "all that is left of one part"}, {Value: byCup, Title: "a cup full"},
	}})
	holds := Field{Key: "holds", Label: "Mixing cup, as high as you fill it", Hint: "600 mL or 20 fl oz", Optional: true}
	switch e.choice("by", byTotal) {
	case byCup:
		holds.Optional, holds.Default = false, "600 mL"
	case byRest:
		fields = append(fields, restFields(r)...)
	default:
		fields = append(fields, Field{Key: "amount", Label: "Mix to make", Hint: "500 mL or 17 fl oz", Default: "500 mL"})
	}
	fields = append(append(fields, holds), toolFields(e)...)
	fields = append(fields,
		Field{Key: "off", Label: "A pour may be off by", Hint: "a share of the pour: 5 %", Default: q.Show(q.Metric, e.lib.Words.Limits.Parts)},
		Field{Key: "work", Label: "From the first trigger to the last", Hint: "with the waits between coats: 1 h", Default: "1 h"})
	return append(fields, keepFields(r)...)
}

// restFields ask which part sets how much is mixed, and how much of it is left.
// There are none for a ratio that cannot be read, which is told there.
func restFields(r recipe) []Field {
	var parts []Choice
	for _, p := range r.parts {
		parts = append(parts, Choice{Value: p.Name, Title: r.title(p.Name)})
	}
	if len(parts) == 0 {
		return nil
	}
	return []Field{
		{Key: "part", Label: "The part", Choices: parts, Default: firstOf(parts)},
		{Key: "amount", Label: "Left of it", Hint: "130 mL or 4.4 fl oz", Default: "130 mL"},
	}
}

// mixCard is a mix as it is measured, and when.
type mixCard struct {
	recipe
	keeping
	tools
	by    string
	rest  string     // the part that sets the total; "" where none does
	given q.Volume   // the total, what is left of the part, or the cup
	total q.Volume   // of all batches
	holds q.Volume   // the mixing cup; zero for any
	off   q.Fraction // by which a pour may be off
	work  q.Time
	in    mix.Batched
	pours []mix.Pour // of one batch
}

func mixAnswer(e *Entry) *Answer {
	c := readCard(e)
	if !e.sound() || !c.part(e) {
		return nil
	}
	a := &Answer{Verdict: c.judge(), Card: c.card(), Defers: c.warnings()}
	a.Says = append(c.amounts(), c.order()...)
	a.Says = append(a.Says, c.keeping.says()...)
	a.Tables = []Table{c.table(), c.readTable()}
	if len(c.in.Batches) > 1 {
		a.Tables = append(a.Tables, c.batchTable())
	}
	a.Tables = append(a.Tables, c.strengthTables(e)...)
	a.Figures = c.figures(e)
	return a
}

func readCard(e *Entry) mixCard {
	c := mixCard{recipe: readRecipe(e), by: e.text("by")}
	if !e.sound() {
		return c
	}
	switch c.by {
	case byRest:
		c.rest, c.given = e.text("part"), within(e, "amount", mixAmounts)
	case byTotal:
		c.given = within(e, "amount", mixAmounts)
	}
	c.holds = within(e, "holds", mixAmounts)
	if c.by == byCup {
		c.given = c.holds
	}
	c.tools = readTools(e)
	c.off, c.work = within(e, "off", mixErrors), within(e, "work", working)
	c.keeping = readKeeping(e, c.recipe)
	return c
}

// part works out the total, the batches and the pours of one. It is not ok where
// nobody could mix it so.
func (c *mixCard) part(e *Entry) bool {
	c.total = c.given
	var err error
	if c.rest != "" {
		c.total, err = mix.TotalFor(c.parts, c.rest, c.given)
		e.take("part", err)
	}
	if err == nil {
		c.in, err = mix.InBatches(mix.Batching{Total: c.total, Work: c.work, PotLife: c.life, Stand: c.stand, Size: c.holds})
		e.take(c.hurried(), err)
	}
	if err == nil {
		c.pours, err = mix.Pours(c.parts, c.in.Each)
		e.take("of", err)
	}
	return err == nil
}

// hurried is the field to be told at where no batches can be made: the warmth of
// the room where the mix dies as it stands, else the work.
func (c mixCard) hurried() string {
	if c.life > 0 && c.stand >= c.life {
		return "air"
	}
	return "work"
}

// judge says whether cup and scale hold the ratio.
func (c mixCard) judge() *Verdict {
	scale, byScale := c.worstByScale()
	line, _ := c.worstByCup()
	off := metric(c.off)
	switch {
	case line.Worst <= c.off:
		return &Verdict{"go", fmt.Sprintf("By the lines of the cup no pour can be off by more than %s: %s allowed.", metric(line.Worst), off)}
	case byScale && scale.Worst <= c.off:
		return &Verdict{"care", fmt.Sprintf("Weigh it: by the lines of the cup %s may be off by %s, and %s is allowed. By the scale it is %s at the most.",
			c.the(line.Name), metric(line.Worst), off, metric(scale.Worst))}
	case byScale:
		return &Verdict{"no", fmt.Sprintf("Too little to measure: by the cup %s may be off by %s, by the scale %s by %s, and %s is allowed. Mix more, or take a finer scale.",
			c.the(line.Name), metric(line.Worst), c.the(scale.Name), metric(scale.Worst), off)}
	}
	return &Verdict{"no", fmt.Sprintf("Too little for the lines of the cup: %s may be off by %s, and %s is allowed. Mix more, or enter the densities and weigh it.",
		c.the(line.Name), metric(line.Worst), off)}
}

// worstByScale is what the scale may be off by at the most; not ok without
// densities.
func (c mixCard) worstByScale() (mix.Reading[q.Mass], bool) {
	readings := mix.ByScale(c.pours, c.scale)
	if len(readings) == 0 {
		return mix.Reading[q.Mass]{}, false
	}
	return worst(readings), true
}

// worstByCup is what the better side of the cup may be off by at the most.
func (c mixCard) worstByCup() (mix.Reading[q.Volume], lines) {
	best, by := worst(mix.ByCup(c.pours, c.lines[0].every)), c.lines[0]
	for _, l := range c.lines[1:] {
		if r := worst(mix.ByCup(c.pours, l.every)); r.Worst < best.Worst {
			best, by = r, l
		}
	}
	return best, by
}

// amounts says how much is mixed.
func (c mixCard) amounts() []string {
	var says []string
	switch c.by {
	case byRest:
		says = append(says, fmt.Sprintf("%s of %s make %s of mix.", metric(c.given), c.name(c.rest), metric(c.total)))
	case byCup:
		says = append(says, "A cup that is full to the brim cannot be stirred.")
	}
	if n := len(c.in.Batches); n > 1 {
		why := "more does not fit the cup"
		if c.in.ByPotLife {
			why = "one mix does not keep until it is laid"
		}
		says = append(says, fmt.Sprintf("In %d equal batches of %s, as %s. The card is for one batch.", n, metric(c.in.Each), why))
	} else if dies := c.in.Batches[0].Dies; dies > 0 {
		says = append(says, fmt.Sprintf("One batch, used up %s after it is mixed. Its pot life ends after %s.", c.in.Batches[0].Until, dies))
	}
	return says
}

// order says what is poured first, and from when the pot life runs.
func (c mixCard) order() []string {
	says := []string{"Pour in the order of the card. The marks add up: cup and scale run on from pour to pour, and the scale is set to zero once, under the empty cup."}
	for _, p := range c.pours {
		if p.Starts {
			says = append(says, fmt.Sprintf("The pot life starts with %s.", c.the(p.Name)))
		}
	}
	return says
}

// card is what is drawn of the mix.
func (c mixCard) card() *Card {
	card := &Card{Holds: c.holds}
	for _, p := range c.pours {
		card.Pours = append(card.Pours, CardPour{Name: c.title(p.Name), Mark: p.Mark})
	}
	return card
}
