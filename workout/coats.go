package workout

import (
	"fmt"
	"strings"

	"coatwright/planner/colour"
	"coatwright/planner/film"
	"coatwright/planner/library"
	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// coatsSheet says in how many coats a wanted film is laid, and how many hide.
var coatsSheet = &Sheet{
	Slug: "coats", Title: "Coats for a film, and coats that hide",
	Lead: "In how many coats a dry film can be laid without a run, and after how many nothing shows through.",
	Note: "background/hiding",
	fields: func(e *Entry) []Field {
		fields := append(filmFields(e, func(choices []Choice) string { return bestHiding(e.lib, choices) }),
			Field{Key: "wanted", Label: "Dry film wanted", Hint: "60 um or 2.4 mil; left empty: what its note's coats make", Optional: true})
		fields = append(fields, ownFields()...)
		return append(fields,
			Field{Key: "colour", Label: "Its colour, or how much light that reflects", Hint: "#8a8d90, L 58 a 0 b -2, or 30 %", Default: "#8a8d90"},
			Field{Key: "ratio", Label: "Contrast ratio that somebody measured", Hint: "95 %, over black and white; left empty: as its note says", Optional: true},
			Field{Key: "at", Label: "Dry film that it was measured at", Hint: "15 um or 0.6 mil", Optional: true},
			Field{Key: "darkest", Label: "Darkest place below", Hint: "#303030 or 5 %; left empty: the black of a test card", Optional: true},
			Field{Key: "lightest", Label: "Lightest place below", Hint: "#d0d0d0 or 60 %; left empty: the white of a test card", Optional: true})
	},
	answer: coatsAnswer,
}

var (
	ratios    = q.Range[q.Fraction]{Low: 0.01, High: 0.999}
	reflected = q.Range[q.Fraction]{Low: film.Blackest, High: 1}
)

// mostRows is how many coats are listed one by one.
const mostRows = 12

// bestHiding is the film that hides best, of equals the thinnest, of those that an
// effect or a finish asks for and that cover the whole part; where none hides, the
// first.
func bestHiding(lib *library.Library, choices []Choice) string {
	best := firstOf(choices)
	var most library.Hiding
	for _, c := range choices {
		m := lib.Materials[c.Value]
		r, h := lib.Words.Role(m.Role), m.Hides
		if !r.Prep && !r.Local && (h.Ratio > most.Ratio || h.Ratio == most.Ratio && h.At < most.At) {
			best, most = c.Value, h
		}
	}
	return best
}

// cover is a film that is to reach a thickness, and to hide.
type cover struct {
	coating
	wanted  known[q.Length]
	ratio   known[q.Fraction] // zero for a film that nobody says hides
	at      known[q.Length]
	colour  q.Fraction // how much light it reflects
	over    film.Chart
	grounds []trace.Input
}

func coatsAnswer(e *Entry) *Answer {
	c := readCover(e)
	if !e.sound() {
		return nil
	}
	laid, err := c.coat().For(c.wanted.value)
	if err != nil {
		e.take("wanted", err)
		return nil
	}
	a := &Answer{Says: []string{c.saysLaid(laid)}}
	if c.mixed != nil {
		a.Figures = append(a.Figures, *c.mixed)
	}
	if c.sag.value > 0 {
		a.Figures = append(a.Figures, c.mostFigure())
	}
	a.Figures = append(a.Figures, c.laidFigure(laid), c.eachFigure(laid))
	hides := 0
	if c.ratio.value > 0 {
		if hides, err = c.hide(a, e.lib.Words); err != nil {
			e.take("ratio", err)
			return nil
		}
		if t, err := c.table(max(laid.Coats, hides)); err == nil {
			a.Tables = append(a.Tables, t)
		}
	} else {
		a.Says = append(a.Says, "Nobody says how well this film hides: a transparent one never does. Spray it over black and white, and count.")
	}
	a.Verdict = c.judge(laid, hides, e.lib.Words.Limits)
	return a
}

func readCover(e *Entry) cover {
	c := cover{coating: readFilm(e)}
	c.readOwn(e)
	note := trace.Origin{}
	if m := c.material; m != nil {
		note = fromNote("material/"+m.Slug, m.Standing)
		c.wanted = known[q.Length]{value: m.Build * q.Length(m.Coats), from: note}
		c.ratio, c.at = known[q.Fraction]{value: m.Hides.Ratio, from: note}, known[q.Length]{value: m.Hides.At, from: note}
	}
	c.wanted = ownOr(e, "wanted", films, c.wanted)
	require(e, "wanted", c.wanted)
	c.ratio, c.at = ownOr(e, "ratio", ratios, c.ratio), ownOr(e, "at", films, c.at)
	switch {
	case c.ratio.value > 0:
		require(e, "at", c.at)
	case c.at.value > 0:
		require(e, "ratio", c.ratio)
	}
	c.colour = reflecting(e, "colour")
	c.readGrounds(e)
	return c
}

// readGrounds reads what lies below, else takes a test card.
func (c *cover) readGrounds(e *Entry) {
	c.over = film.TestChart
	from := map[string]trace.Origin{"darkest": {From: trace.FromSource}, "lightest": {From: trace.FromSource}}
	for key, ground := range map[string]*q.Fraction{"darkest": &c.over.Black, "lightest": &c.over.White} {
		if v := reflecting(e, key); e.values[key] != "" {
			*ground, from[key] = v, entered(key)
		}
	}
	if wrong := "lightest"; c.over.Black >= c.over.White {
		if e.values[wrong] == "" {
			wrong = "darkest"
		}
		e.fail(wrong, "Found %q, expected the lightest place below to be lighter than the darkest.", e.values[wrong])
	}
	c.grounds = []trace.Input{
		trace.In("Rg", "light that the darkest place reflects", c.over.Black, from["darkest"]),
		trace.In("Rg", "light that the lightest place reflects", c.over.White, from["lightest"]),
	}
}

// reflecting reads how much light something reflects: a share, or the luminance
// of a colour. What is entered as black reflects a little.
func reflecting(e *Entry, key string) q.Fraction {
	text := e.text(key)
	if text == "" || strings.Contains(text, "%") {
		return within(e, key, reflected)
	}
	s, err := colour.ParseSwatch(text)
	if err != nil {
		e.fail(key, "Found %q, expected a colour such as #8a8d90, or how much light it reflects, such as 30 %%.", text)
	}
	return min(max(q.Fraction(s.Colour.Y/100), reflected.Low), reflected.High)
}

// hiding is how well the film hides, as it was measured on a test card.
func (c cover) hiding() film.Hiding {
	return film.Hiding{Ratio: c.ratio.value, At: c.at.value, Reflectivity: c.colour, Over: film.TestChart}
}

// saysLaid says how the wanted film is laid.
func (c cover) saysLaid(laid film.Laid) string {
	if laid.Coats == 1 {
		return fmt.Sprintf("One coat of %s wet dries to %s.", metric(laid.Wet), metric(laid.Dry))
	}
	return fmt.Sprintf("%d coats of %s wet dry to %s, %s each.", laid.Coats, metric(laid.Wet), metric(c.wanted.value), metric(laid.Dry))
}

// one is the thickest coat that is laid, as what goes into a figure.
func (c cover) one() trace.Input {
	if c.coat().Runs() {
		return trace.In("one coat", "the most that one coat can leave", c.full(), fromFigure("most-dry"))
	}
	return c.build.in("one coat", "dry film of one full coat")
}

// laidFigure is how many coats the wanted film takes.
func (c cover) laidFigure(laid film.Laid) trace.Figure {
	f := trace.Figure{
		Key: "film-coats", Name: "Coats for the film wanted", Value: q.ValueOf(q.Number(laid.Coats)), Formula: film.CoatsFormula,
		Inputs: []trace.Input{c.wanted.in("wanted", "dry film wanted"), c.one()},
	}
	if laid.Held {
		f.Remarks = []string{"A full coat would run, so there are more and thinner ones."}
	}
	return f
}

// eachFigure is the wet film of each of the coats.
func (c cover) eachFigure(laid film.Laid) trace.Figure {
	ends := c.solids.ends()
	f := trace.Figure{
		Key: "each-wet", Name: "Wet film of each of them", Formula: film.WetFormula,
		Inputs: []trace.Input{
			trace.In("DFT", "dry film wanted, over the coats", laid.Dry, fromFigure("film-coats")), c.solids.in("VS / (1 + t)", "solids of the mix as sprayed"),
		},
	}
	return spanned(f, []q.Length{laid.Wet, film.WetFilm(laid.Dry, ends.High), film.WetFilm(laid.Dry, ends.Low)})
}

// hide adds to a how much of the film hides, and says in how many coats.
func (c cover) hide(a *Answer, words *library.Vocabulary) (int, error) {
	dry, err := c.hiding().Film(film.Hidden, c.over)
	if err != nil {
		return 0, err
	}
	off := c.off(words, c.ratio.from, c.at.from)
	thick := spanned(trace.Figure{
		Key: "hiding-film", Name: "Dry film that hides", Formula: film.HidingFormula,
		Inputs: append([]trace.Input{
			trace.In("C", "contrast ratio that counts as hiding", film.Hidden, trace.Origin{From: trace.FromSource}),
			c.ratio.in("C₀", "contrast ratio that was measured"), c.at.in("X₀", "dry film that it was measured at"),
			trace.In("R∞", "light that the colour reflects", c.colour, entered("colour")),
		}, c.grounds...),
		Remarks: []string{"Light colours need more. The theory is one of pigment that scatters: for flakes that lie flat, spray a card."},
	}, []q.Length{dry, dry * q.Length(off.Amount.Low), dry * q.Length(off.Amount.High)})
	if off.Name != "" {
		thick.Remarks = append(thick.Remarks, fmt.Sprintf("The range takes the film's figures as far off as their standing allows: %s, %s of what is written.", spaced(off.Name), q.ShowRange(q.Metric, off.Amount)))
	}
	counts := []q.Number{0, 0, 0}
	for i, share := range []q.Fraction{1, off.Amount.Low, off.Amount.High} {
		n, err := film.Coats(dry*q.Length(share), c.full())
		if err != nil {
			return 0, err
		}
		counts[i] = q.Number(n)
	}
	coats := spanned(trace.Figure{
		Key: "hiding-coats", Name: "Coats that hide", Formula: film.CoatsFormula,
		Inputs: []trace.Input{taken("wanted", "dry film that hides", thick), c.one()},
	}, counts)
	if dry == 0 {
		coats.Remarks = []string{"What lies below is so even that it counts as hidden without any film. Its colour shows through all the same."}
	}
	a.Figures = append(a.Figures, thick, coats)
	return int(counts[0]), nil
}

// table goes from coat to coat.
func (c cover) table(coats int) (Table, error) {
	t := Table{Title: "Coat by coat", Columns: []string{"Coats", "Dry film", "Contrast ratio", "Hides"}}
	for n := 1; n <= min(coats, mostRows); n++ {
		dry := c.full() * q.Length(n)
		ratio, err := c.hiding().Contrast(dry, c.over)
		if err != nil {
			return Table{}, err
		}
		hides := "not yet"
		if ratio >= film.Hidden*(1-sliver) {
			hides = "yes"
		}
		t.Rows = append(t.Rows, []any{fmt.Sprint(n), q.ValueOf(dry), q.ValueOf(ratio), hides})
	}
	return t, nil
}

// judge says what speaks against the film as it is wanted. Hides is how many
// coats hide, 0 where nobody knows.
func (c cover) judge(laid film.Laid, hides int, limits library.Limits) *Verdict {
	most := 0
	if c.material != nil {
		most = c.material.Coats * limits.Coats
	}
	switch {
	case most > 0 && laid.Coats > most:
		return &Verdict{"no", fmt.Sprintf("%d coats are more than %d times what the note has. %s", laid.Coats, limits.Coats, limits.Thick)}
	case laid.Held:
		return &Verdict{"care", fmt.Sprintf("A full coat lies %s wet and runs above %s: lay %d coats of %s wet.", metric(c.coat().Wet()), metric(c.sag.value), laid.Coats, metric(laid.Wet))}
	case most > 0 && hides > most:
		return &Verdict{"care", fmt.Sprintf("It takes %d coats to hide, more than %d times what the note has. %s Lay a ground of a shade near to it below.", hides, limits.Coats, limits.Thick)}
	case hides > laid.Coats:
		return &Verdict{"care", fmt.Sprintf("The film wanted does not hide: that takes %d coats.", hides)}
	case hides > 0:
		return &Verdict{"go", fmt.Sprintf("The film wanted hides: %s.", countOf(hides, "coat does", "coats do"))}
	}
	return nil
}

// countOf is a number with the word that goes with it.
func countOf(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}
