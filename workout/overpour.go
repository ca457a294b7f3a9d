package workout

import (
	"fmt"
	"slices"
	"strings"

	"coatwright/planner/mix"
	q "coatwright/quantity"
)

// overpourSheet says how to come back to the recipe from what is in the cup.
var overpourSheet = &Sheet{
	Slug: "over-pour", Title: "Too much in the cup",
	Lead:   "What to pour on when a pour went past its mark, what may be left as it is, and how to part what no longer fits the cup.",
	Note:   "background/when-you-poured-too-much",
	fields: overpourFields,
	answer: overpourAnswer,
}

// What is known of each part in the cup.
const (
	onTheScale = "scale"   // what the scale showed after it, set to zero once
	atTheMark  = "marks"   // the mark that the cup reached
	byVolumes  = "volumes" // how much of it went in
	byMasses   = "masses"
)

var (
	inCup   = q.Range[q.Volume]{Low: 0, High: 1}
	onScale = q.Range[q.Mass]{Low: 0, High: 3000}
	since   = q.Range[q.Time]{Low: 0, High: 365 * 24 * 3600}
)

func overpourFields(e *Entry) []Field {
	fields, r := recipeFields(e)
	first := onTheScale
	if r.material == nil {
		first = atTheMark // grams say nothing without densities
	}
	fields = append(fields, Field{Key: "known", Label: "What I know is", Default: first, Choices: []Choice{
		{Value: onTheScale, Title: "what the scale showed after each pour"}, {Value: atTheMark, Title: "the mark of the cup after each pour"},
		{Value: byMasses, Title: "how much of each, weighed"}, {Value: byVolumes, Title: "how much of each, by volume"},
	}})
	fields = append(fields, pouredFields(r, e.choice("known", first))...)
	fields = append(fields,
		Field{Key: "holds", Label: "The cup holds", Hint: "600 mL or 20 fl oz; left empty: any amount", Optional: true},
		Field{Key: "off", Label: "Parts may be off by", Hint: "a share of the part: 5 %, if the data sheet says no less", Default: q.Show(q.Metric, e.lib.Words.Limits.Parts)},
		Field{Key: "since", Label: "Since the pot life began", Hint: "10 min", Optional: true})
	return append(fields, keepFields(r)...)
}

// pouredFields ask for each part what is known of it. At first the second part
// has gone a tenth past its mark, and what follows is not yet in.
func pouredFields(r recipe, known string) []Field {
	const example = 320e-6 // m3 of mix
	pours, err := mix.Pours(r.parts, example)
	if err != nil {
		return nil // told at the ratio
	}
	if len(pours) > 1 {
		v, m := pours[1].Volume/10, pours[1].Mass/10
		pours[1].Volume, pours[1].Mark, pours[1].Mass, pours[1].MarkMass = pours[1].Volume+v, pours[1].Mark+v, pours[1].Mass+m, pours[1].MarkMass+m
	}
	var fields []Field
	for i, p := range pours {
		f := Field{Key: "in-" + p.Name, Optional: true}
		var first string
		switch known {
		case atTheMark:
			f.Label, f.Hint, first = "Cup at, after "+r.the(p.Name), "300 mL or 10 fl oz; empty: not yet in", q.Show(q.Metric, p.Mark)
		case byVolumes:
			f.Label, f.Hint, first = capital(r.name(p.Name))+" in it", "100 mL or 3.4 fl oz; empty: none", q.Show(q.Metric, p.Volume)
		case byMasses:
			f.Label, f.Hint, first = capital(r.name(p.Name))+" in it", "100 g or 3.5 oz; empty: none", onDisplay(rounded(p.Mass))
		default:
			f.Label, f.Hint, first = "Scale at, after "+r.the(p.Name), "305 g or 10.8 oz; empty: not yet in", onDisplay(rounded(p.MarkMass))
		}
		if i < 2 && first != onDisplay(0) {
			f.Default = first
		}
		fields = append(fields, f)
	}
	return fields
}

// cupful is what is in a cup, and what was to be.
type cupful struct {
	recipe
	keeping
	poured []q.Volume // of each part
	from   string     // what is known of each
	holds  q.Volume
	off    q.Fraction
	since  q.Time
	asked  bool // since was entered
	fix    mix.Correction
}

func overpourAnswer(e *Entry) *Answer {
	c := readCupful(e)
	if !e.sound() {
		return nil
	}
	var err error
	if c.fix, err = mix.Correct(c.parts, c.poured, c.holds, c.off); err != nil {
		e.take("of", err)
		return nil
	}
	a := &Answer{Verdict: c.judge(), Defers: c.warnings(), Tables: c.tables(), Card: c.card()}
	a.Says = append(c.says(), c.alive()...)
	a.Figures = c.figures(e)
	return a
}

func readCupful(e *Entry) cupful {
	c := cupful{recipe: readRecipe(e), from: e.text("known")}
	if !e.sound() {
		return c
	}
	c.poured = c.readPoured(e)
	c.holds, c.off, c.since = within(e, "holds", mixAmounts), within(e, "off", mixErrors), within(e, "since", since)
	c.asked = e.values["since"] != ""
	c.keeping = readKeeping(e, c.recipe)
	if e.sound() {
		c.check(e)
	}
	return c
}

// check tells at its field what cannot be in a cup.
func (c cupful) check(e *Entry) {
	total := c.inIt()
	switch {
	case total == 0:
		e.fail("in-"+c.parts[0].Name, "Found an empty cup, expected what was poured of at least one part.")
	case c.holds > 0 && total > c.holds:
		e.fail("holds", "Found %s in a cup of %s, expected no more than it holds.", metric(total), metric(c.holds))
	}
}

// inIt is all that is in the cup.
func (c cupful) inIt() q.Volume {
	var total q.Volume
	for _, v := range c.poured {
		total += v
	}
	return total
}

// readPoured reads what is in the cup of each part.
func (c cupful) readPoured(e *Entry) []q.Volume {
	if c.from == onTheScale || c.from == byMasses {
		masses := readEach(e, c.parts, onScale)
		for i, p := range c.parts {
			if masses[i] > 0 && p.Density == 0 {
				e.fail("density-"+p.Name, "Found nothing, expected the density: without it grams say nothing of the ratio.")
			}
		}
		if !e.sound() {
			return nil
		}
		if c.from == byMasses {
			masses = runningOn(masses)
		} else {
			rising(e, c.parts, masses)
		}
		return taking(e, func() ([]q.Volume, error) { return mix.FromScale(c.parts, masses) })
	}
	volumes := readEach(e, c.parts, inCup)
	if c.from == byVolumes || !e.sound() {
		return volumes
	}
	rising(e, c.parts, volumes)
	return taking(e, func() ([]q.Volume, error) { return mix.FromMarks(c.parts, volumes) })
}

// taking is what comes of a computation; nil where something is wrong.
func taking[T any](e *Entry, compute func() ([]T, error)) []T {
	if !e.sound() {
		return nil
	}
	out, err := compute()
	e.take("known", err)
	return out
}

// readEach reads what is known of each part, 0 where nothing is.
func readEach[Q q.Quantity](e *Entry, parts []mix.Part, limits q.Range[Q]) []Q {
	out := make([]Q, len(parts))
	for i, p := range parts {
		out[i] = within(e, "in-"+p.Name, limits)
	}
	return out
}

// runningOn are the sums of what came so far.
func runningOn[Q q.Quantity](each []Q) []Q {
	var sum Q
	out := make([]Q, len(each))
	for i, v := range each {
		sum += v
		out[i] = sum
	}
	return out
}

// rising makes readings of which the empty ones are those before them: nothing
// was poured. One that falls is a problem of its field.
func rising[Q q.Quantity](e *Entry, parts []mix.Part, readings []Q) {
	var before Q
	for i, p := range parts {
		switch key := "in-" + p.Name; {
		case e.values[key] == "":
			readings[i] = before
		case readings[i] < before:
			e.fail(key, "Found %q after %s, expected readings that rise, with nothing set to zero in between. If it went in earlier than the recipe has it, enter how much there is of each.", e.values[key], metric(before))
		}
		before = readings[i]
	}
}

// judge says in a line what to do.
func (c cupful) judge() *Verdict {
	if c.dead() {
		return &Verdict{"no", "The pot life is over: nothing that you pour on brings it back. Throw it away as the data sheet says."}
	}
	switch c.fix.Verdict {
	case mix.Leave:
		return &Verdict{"go", "Within the range: leave it."}
	case mix.PourOn:
		return &Verdict{"go", "Within the range so far: pour on by the table below."}
	case mix.AddTo:
		return &Verdict{"care", "Out of the range. Pour on " + c.list(c.fix.Least.Add) + ", and it is back in the range."}
	case mix.Overfull:
		return &Verdict{"care", fmt.Sprintf("Out of the range, and the cup does not hold what is missing: take %s out first, or part it into %s.",
			metric(c.fix.Least.Out), countOf(c.fix.Least.Cups, "cup", "cups"))}
	}
	return &Verdict{"no", "Out of the range, and no adding mends it. Start again, and keep this out of the gun."}
}

// list says what to pour: "20 mL of base and 22 mL of thinner".
func (c cupful) list(pours []mix.Pour) string {
	var says []string
	for _, p := range pours {
		says = append(says, metric(p.Volume)+" of "+c.name(p.Name))
	}
	if n := len(says); n > 1 {
		says = append(says[:n-2], says[n-2]+" and "+says[n-1])
	}
	return strings.Join(says, ", ")
}

// says tells the ways to mend it.
func (c cupful) says() []string {
	var says []string
	least, exact := c.fix.Least, c.fix.Exact
	if least != nil && least.Out > 0 {
		says = append(says, fmt.Sprintf("To go on in this cup: stir it well, take out %s, and pour on %s. What you take out has the ratio of what stays: it is not lost if you mend it in a cup of its own.",
			metric(least.Out), c.list(least.Add)))
		says = append(says, fmt.Sprintf("To keep all of it: stir it well, part it evenly into %d cups, and pour into each %s.", least.Cups, c.list(least.Each)))
	}
	switch {
	case exact == nil || least == nil:
	case len(exact.Add) == 0:
		says = append(says, "It is just as the recipe has it.")
	case c.fix.Verdict == mix.Leave:
		says = append(says, "To have it just as the recipe has it: "+c.list(exact.Add)+". That is not needed.")
	}
	return append(says, "The mix is only right if it is stirred: scrape wall and bottom before you pour on, and after.")
}

// alive says whether the pot life runs.
func (c cupful) alive() []string {
	switch {
	case c.life == 0 || c.dead():
		return nil
	case !c.begun():
		return []string{"The pot life has not begun: what starts it is not in yet."}
	}
	says := "The pot life has begun, and what you pour on does not set it back: it ends " + c.life.String() + " after it began"
	if c.asked {
		says += ", in " + (c.life - c.since).String()
	}
	return []string{says + "."}
}

// begun reports whether the pot life runs: from when the part is in that starts
// it, and where no part is known to, from the first on.
func (c cupful) begun() bool {
	starts := func(p mix.Part) bool { return p.Starts }
	return c.fix.Running || !slices.ContainsFunc(c.parts, starts)
}

// dead reports whether the pot life is over.
func (c cupful) dead() bool { return c.life > 0 && c.asked && c.since >= c.life && c.begun() }

// card is the cup as it is, and what is poured on by the least remedy.
func (c cupful) card() *Card {
	r := c.fix.Least
	if r == nil {
		return nil
	}
	card := &Card{There: c.inIt() - r.Out, Holds: c.holds}
	for _, p := range r.Add {
		card.Pours = append(card.Pours, CardPour{Name: c.title(p.Name), Mark: p.Mark})
	}
	return card
}
