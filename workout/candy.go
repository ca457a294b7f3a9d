package workout

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"coatwright/planner"
	"coatwright/planner/colour"
	"coatwright/planner/library"
	"coatwright/planner/mix"
	q "coatwright/quantity"
)

// candySheet says what a candy looks like coat by coat.
var candySheet = &Sheet{
	Slug: "candy", Title: "Candy, coat by coat",
	Lead:   "What a candy looks like after each coat over your ground, how many come nearest to a colour, how evenly it must lie, and what a sag does to it. An estimate: a sprayed card decides.",
	Note:   "background/how-candy-makes-its-colour",
	fields: candyFields,
	answer: candyAnswer,
}

// What lies below a candy: flakes that send light straight back, or something
// that sends it to all sides.
const (
	flatBelow      = "flat"
	scatteredBelow = "scattered"
)

const (
	swatchHint   = "#b01020, L 37 a 57 b 34, or what an instrument read from 400 to 700 nm: 400:0.05, 410:0.06 and so on"
	redAtFirst   = "#b01020" // a swatch that somebody may try the sheet with
	silverUnsaid = "#c9ccd0" // a ground to try it over, where no note knows a candy
)

var (
	coatsOfCandy = q.Range[q.Number]{Low: 1, High: planner.MaxCoats}
	candyShares  = q.Range[q.Fraction]{Low: 0.001, High: 10}
)

func candyFields(e *Entry) []Field {
	choices := candyChoices(e.lib)
	first := firstOf(choices)
	m := e.lib.Materials[chosen(e, "candy", first)]
	ground, coats, surface := silverUnsaid, "3", flatBelow
	if m != nil {
		ground, coats = cmp.Or(m.Swatch.Over, ground), fmt.Sprint(m.Coats)
		if planner.Returns(planner.UsualGround(m, e.lib)) == colour.Scattering {
			surface = scatteredBelow
		}
	}
	tools := applicatorChoices(e.lib)
	fields := []Field{
		{Key: "candy", Label: "Candy", Choices: choices, Default: first},
		{Key: "looks", Label: "How its swatch looks", Hint: swatchHint, Default: redAtFirst, Lines: true},
		{Key: "ground", Label: "What it goes over", Hint: "a colour in the same ways", Default: ground, Lines: true},
		{Key: "surface", Label: "What that is", Default: surface, Choices: []Choice{
			{Value: flatBelow, Title: "flakes that lie flat"}, {Value: scatteredBelow, Title: "a plain colour, or flakes that lie anyhow"},
		}},
		{Key: "with", Label: "Applicator", Choices: tools, Default: firstOf(tools)},
	}
	if m != nil && concentrated(m) {
		fields = append(fields, Field{Key: "share", Label: "Share of it in the binder", Hint: "40 %; left empty: as its note says for the applicator", Optional: true})
	}
	return append(fields,
		Field{Key: "coats", Label: "Coats", Hint: fmt.Sprintf("1 to %d", planner.MaxCoats), Default: coats},
		Field{Key: "wanted", Label: "Colour wanted", Hint: "a colour in the same ways; left empty: none", Optional: true, Lines: true},
		Field{Key: "over", Label: "What its swatch lies over", Hint: "a colour; left empty: as its note says", Optional: true},
		Field{Key: "swatch-coats", Label: "Coats of its swatch", Hint: "3; left empty: as its note says", Optional: true},
		Field{Key: "build", Label: "Dry film of one coat", Hint: "9 um or 0.35 mil; left empty: as its note says", Optional: true})
}

// candyChoices are the materials of which the notes say what their swatch shows.
func candyChoices(lib *library.Library) []Choice {
	choices := sprayedChoices(lib, func(m *library.Material) bool { return m.Swatch.Over != "" && m.Build > 0 && m.SolidsByVolume > 0 })
	for i, c := range choices {
		choices[i].Group = capital(lib.Materials[c.Value].System)
	}
	slices.SortStableFunc(choices, func(a, b Choice) int { return cmp.Compare(b.Group, a.Group) })
	return choices
}

// concentrated reports whether a candy is a share of its binder, and does not
// come ready to spray.
func concentrated(m *library.Material) bool {
	return slices.ContainsFunc(m.Mix, func(p library.MixPart) bool { return p.Part == "base" && p.Of != "" })
}

// candy is a candy as somebody means to lay it.
type candy struct {
	planner.Candied
	material *library.Material
	from     planner.CandyOrigins
}

func candyAnswer(e *Entry) *Answer {
	c := readCandy(e)
	if !e.sound() {
		return nil
	}
	strip, err := c.Strip()
	if err != nil {
		e.take("over", err)
		return nil
	}
	figures, err := c.Figures(c.from)
	if err != nil {
		e.take("over", err)
		return nil
	}
	strip.Title, strip.Material = c.material.Title, c.material.Slug
	a := &Answer{Strip: &strip, Figures: figures, Tables: []Table{c.table(strip)}}
	a.Verdict = judgeCandy(strip)
	a.Says = candySays(strip)
	return a
}

func readCandy(e *Entry) candy {
	c := candy{material: e.lib.Materials[e.text("candy")]}
	tool := e.lib.Tools[e.text("with")]
	e.text("surface")
	if c.material == nil || tool == nil || !e.sound() {
		return c
	}
	m, note := c.material, fromNote("material/"+c.material.Slug, c.material.Standing)
	c.from = planner.CandyOrigins{
		Looks: entered("looks"), Over: note, Swatch: note, Ground: entered("ground"), Build: note, Mix: note, Recipe: note,
		Coats: entered("coats"), Wanted: entered("wanted"),
	}
	c.Looks, c.Ground.Looks = swatchIn(e, "looks"), swatchIn(e, "ground")
	c.Ground.Returns = colour.Mirroring
	if e.values["surface"] == scatteredBelow {
		c.Ground.Returns = colour.Scattering
	}
	c.readSwatch(e)
	c.readMix(e, tool.Slug)
	c.Agreed = whole(e, "coats", int(coatsOfCandy.Low), int(coatsOfCandy.High))
	if e.values["wanted"] != "" {
		lab := swatchIn(e, "wanted").Colour.Lab()
		c.Wanted = &lab
	}
	build := ownOr(e, "build", films, known[q.Length]{value: m.Build, from: note})
	c.Coat.Coats, c.Coat.Build, c.from.Build = 1, build.value, build.from
	return c
}

// swatchIn reads a colour.
func swatchIn(e *Entry, key string) colour.Swatch {
	s, err := colour.ParseSwatch(e.text(key))
	e.take(key, err)
	return s
}

// readSwatch reads what the candy's swatch is: as its note says, save for what
// was entered.
func (c *candy) readSwatch(e *Entry) {
	m := c.material
	swatch, err := planner.SwatchOf(m, e.lib)
	e.take("candy", err)
	c.Swatch = swatch
	if n := whole(e, "swatch-coats", int(coatsOfCandy.Low), int(coatsOfCandy.High)); e.values["swatch-coats"] != "" {
		c.Swatch.Coats, c.from.Swatch = n, entered("swatch-coats")
	}
	c.Over.Returns = planner.Returns(planner.UsualGround(m, e.lib))
	if e.values["over"] != "" {
		c.Over.Looks, c.from.Over = swatchIn(e, "over"), entered("over")
		return
	}
	c.Over.Looks, err = colour.ParseSwatch(m.Swatch.Over)
	e.take("candy", err)
}

// readMix reads how strong the candy is mixed.
func (c *candy) readMix(e *Entry, applicator string) {
	parts := planner.MixParts(c.material, e.lib, applicator)
	if concentrated(c.material) {
		if share := within(e, "share", candyShares); e.values["share"] != "" {
			i := slices.IndexFunc(parts, func(p mix.Part) bool { return p.Name == c.material.Slug })
			parts[i].Share, parts[i].Range = share, q.Range[q.Fraction]{}
			c.from.Mix = entered("share")
		}
	}
	if !e.sound() {
		return
	}
	mixed, err := planner.CandyMixOf(parts, c.material.Slug)
	e.take("with", err)
	c.Coat.Mix = mixed
}

// judgeCandy says how near the coats come to the colour wanted, nil where there
// is none.
func judgeCandy(s planner.Strip) *Verdict {
	m := s.Nearest
	if m == nil {
		return nil
	}
	count := countOf(m.Coats, "coat comes", "coats come")
	switch left := colour.DeltaE(m.Left); {
	case left > colour.PlainlyVisible:
		return &Verdict{"no", fmt.Sprintf("No count of coats looks like the colour wanted: %s nearest and still %.1f from it, which most people see. Another candy, or another ground.", count, m.Left)}
	case m.Coats != s.Agreed:
		return &Verdict{"care", fmt.Sprintf("%s nearest to the colour wanted, %.1f from it; the %d entered stay %.1f from it.", capital(count), m.Left, s.Agreed, m.Agreed)}
	}
	return &Verdict{"go", fmt.Sprintf("%s nearest to the colour wanted: %.1f from it.", capital(count), m.Left)}
}

// candySays says what a painter must mind.
func candySays(s planner.Strip) []string {
	says := []string{
		"This is an estimate from colours on a screen or an instrument: it knows neither your dye nor your flakes. Spray a test card with a stripe for each count of coats, clear it, and let that decide.",
	}
	if s.Even.Just < 100 {
		says = append(says, fmt.Sprintf("While the film varies by less than %.1f %% either way no eye sees it, even side by side. Where it is %.0f %% off it looks %.1f from the rest.", s.Even.Just, s.Even.Variation, max(s.Even.Thin, s.Even.Thick)))
	}
	sag := s.Sags[len(s.Sags)-1]
	return append(says, fmt.Sprintf("A sag in candy shows as a dark line: %g times as thick it loses %.1f of L* and looks %.1f from the rest.", sag.Times, sag.Darker, sag.Change))
}

// table goes from coat to coat.
func (c candy) table(s planner.Strip) Table {
	t := Table{Title: "Coat by coat, an estimate", Columns: []string{"Coats", "On a screen", "L*", "a*", "b*", "Change (CIEDE2000)"}}
	if c.Wanted != nil {
		t.Columns = append(t.Columns, "From the colour wanted")
	}
	for _, coat := range s.Coats {
		change, hex := "", coat.Hex
		if coat.Coats > 0 {
			change = tenths(coat.Change)
		}
		if !coat.OnScreen {
			hex += ", paler than it is"
		}
		row := []any{fmt.Sprint(coat.Coats), hex, tenths(coat.L), tenths(coat.A), tenths(coat.B), change}
		if c.Wanted != nil {
			row = append(row, tenths(float64(colour.Difference(colour.Lab{L: coat.L, A: coat.A, B: coat.B}, *c.Wanted))))
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}

// tenths writes a number to a tenth, without a minus before nothing.
func tenths(x float64) string { return fmt.Sprintf("%.1f", math.Round(10*x)/10+0) }
