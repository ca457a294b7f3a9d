package workout

import (
	"math"
	"slices"

	"coatwright/planner/film"
	"coatwright/planner/library"
	"coatwright/planner/mix"
	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// coating is a film as somebody means to lay it: a material of the library, mixed
// for an applicator.
type coating struct {
	material *library.Material // nil for a film that no note knows
	tool     *library.Tool
	mixed    *trace.Figure // the solids of its mix; nil where they were entered
	solids   known[q.Fraction]
	build    known[q.Length] // dry film of one full coat
	sag      known[q.Length] // wet film above which it runs; zero where nobody knows
}

// known is a number, what it may turn out to be, and where it comes from. Where
// nobody knows it, it is zero.
type known[Q q.Quantity] struct {
	value Q
	span  q.Range[Q] // zero where value is all that is known
	from  trace.Origin
}

// ends are what k may turn out to be at the least and at the most.
func (k known[Q]) ends() q.Range[Q] {
	if k.span.IsZero() {
		return q.Range[Q]{Low: k.value, High: k.value}
	}
	return k.span
}

// in is k as what goes into a figure.
func (k known[Q]) in(symbol, name string) trace.Input {
	in := trace.In(symbol, name, k.value, k.from)
	if k.span.Low != k.span.High {
		in.Range = trace.SpanOf(k.span.Low, k.span.High)
	}
	return in
}

// ranged is a range of which the middle is the likeliest.
func ranged[Q q.Quantity](r q.Range[Q], from trace.Origin) known[Q] {
	return known[Q]{r.Middle(), r, from}
}

// ownFilm is chosen for a film that no note knows.
const ownFilm = "own-film"

var (
	films = q.Range[q.Length]{Low: 0.1e-6, High: 5e-3}
	solid = q.Range[q.Fraction]{Low: 0.01, High: 1}
)

// filmFields ask for a film and what lays it. First says which of the films that
// the notes know stands there at first.
func filmFields(e *Entry, first func(choices []Choice) string) []Field {
	choices := sprayedChoices(e.lib, func(m *library.Material) bool { return m.Build > 0 && m.SolidsByVolume > 0 && m.Role != "" })
	def := first(choices)
	choices = append(choices, Choice{ownFilm, "A film of which I have the figures", "From a data sheet"})
	if def == "" {
		def = ownFilm
	}
	tools := applicatorChoices(e.lib)
	return []Field{
		{Key: "of", Label: "Film", Choices: choices, Default: def},
		{Key: "with", Label: "Applicator", Choices: tools, Default: firstOf(tools)},
	}
}

// ownFields ask for figures that stand before those of a film's note.
func ownFields() []Field {
	return []Field{
		{Key: "build", Label: "Dry film of one coat", Hint: "25 um or 1 mil; left empty: as its note says", Optional: true},
		{Key: "solids", Label: "Solids by volume, as sprayed", Hint: "46 %; left empty: worked out from the mix", Optional: true},
		{Key: "sag", Label: "Wet film above which it runs", Hint: "120 um or 4.7 mil; left empty: as its note says", Optional: true},
	}
}

// readFilm reads which film is laid with what, with the figures of its note.
func readFilm(e *Entry) coating {
	c := coating{material: e.lib.Materials[e.text("of")], tool: e.lib.Tools[e.text("with")]}
	if c.material == nil || c.tool == nil || !e.sound() {
		return c
	}
	note := fromNote("material/"+c.material.Slug, c.material.Standing)
	c.build, c.sag = known[q.Length]{value: c.material.Build, from: note}, known[q.Length]{value: c.material.Sag, from: note}
	s, err := mixedFor(e.lib, c.material, c.tool.Slug)
	if err != nil {
		e.take("of", err)
		return c
	}
	f, all := s.solids()
	c.mixed, c.solids = &f, known[q.Fraction]{all[0], spannedBy(all), fromFigure(f.Key)}
	return c
}

// readOwn puts the figures that were entered in place of those of the note.
func (c *coating) readOwn(e *Entry) {
	c.build = ownOr(e, "build", films, c.build)
	c.solids = ownOr(e, "solids", solid, c.solids)
	c.sag = ownOr(e, "sag", films, c.sag)
	if c.solids.from.From == trace.FromEntry {
		c.mixed = nil
	}
	require(e, "build", c.build)
	require(e, "solids", c.solids)
}

// ownOr is what was entered in a field, else what somebody else says.
func ownOr[Q q.Quantity](e *Entry, key string, limits q.Range[Q], says known[Q]) known[Q] {
	if v := within(e, key, limits); e.values[key] != "" {
		return known[Q]{value: v, from: entered(key)}
	}
	return says
}

// ownRange is a range that was entered in a field, else what somebody else says.
func ownRange[Q q.Quantity](e *Entry, key string, limits q.Range[Q], says known[Q]) known[Q] {
	r := readRange[Q](e, key)
	if e.values[key] == "" {
		return says
	}
	if !(r.Low >= limits.Low*(1-sliver) && r.High <= limits.High*(1+sliver)) {
		e.fail(key, "Found %q, expected %s.", e.values[key], q.ShowRange(q.Metric, limits))
	}
	return ranged(r, entered(key))
}

// sliver is the share by which reading a unit may miss the end of a range.
const sliver = 1e-9

// require makes it a problem of a field that nobody says what it asks for.
func require[Q q.Quantity](e *Entry, key string, k known[Q]) {
	if k.value == 0 && e.problems["of"] == "" && e.problems["with"] == "" {
		e.fail(key, "Found nothing, expected it to be filled in: no note says it of this film.")
	}
}

// coat is one full coat.
func (c coating) coat() film.Coat {
	return film.Coat{Build: c.build.value, Sag: c.sag.value, Solids: c.solids.value}
}

// full is the dry film of the thickest coat that is laid: a full one, or one that
// just does not run.
func (c coating) full() q.Length { return min(c.build.value, c.coat().Most()) }

// off is how far the figures of the film's note may be off; not at all where all
// of them were entered.
func (c coating) off(words *library.Vocabulary, used ...trace.Origin) library.Standing {
	ofNote := func(o trace.Origin) bool { return o.From != trace.FromEntry }
	if c.material == nil || !slices.ContainsFunc(used, ofNote) {
		return words.StandingOf("")
	}
	return words.StandingOf(c.material.Standing)
}

// solids are those of each of the mixes, and the first of them with how it came
// about.
func (s sprayed) solids() (trace.Figure, []q.Fraction) {
	all := make([]q.Fraction, len(s.parts[0].shares))
	for _, p := range s.parts {
		for i, share := range p.shares {
			all[i] += share * p.SolidsByVolume
		}
	}
	f := spanned(trace.Figure{Key: "mix-solids", Name: "Solids by volume of the mix", Formula: mix.SolidsFormula}, all)
	f.Inputs = s.blended("VS", func(m *library.Material) (q.Value, *trace.Span) { return q.ValueOf(m.SolidsByVolume), nil })
	return f, all
}

// wetFigure is the wet film of one full coat.
func (c coating) wetFigure() trace.Figure {
	ends := c.solids.ends()
	f := trace.Figure{
		Key: "wet-film", Name: "Wet film of one coat", Formula: film.WetFormula,
		Inputs: []trace.Input{c.build.in("DFT", "dry film of one coat"), c.solids.in("VS / (1 + t)", "solids of the mix as sprayed")},
	}
	return spanned(f, []q.Length{c.coat().Wet(), film.WetFilm(c.build.value, ends.High), film.WetFilm(c.build.value, ends.Low)})
}

// mostFigure is the dry film of the thickest coat that does not run; the sag
// limit is known.
func (c coating) mostFigure() trace.Figure {
	ends := c.solids.ends()
	f := trace.Figure{
		Key: "most-dry", Name: "Most dry film that one coat can leave", Formula: film.MostFormula,
		Inputs:  []trace.Input{c.sag.in("sag limit", "wet film above which it runs"), c.solids.in("VS", "solids of the mix as sprayed")},
		Remarks: []string{"On an upright face. Cold, a thinner mix or a coat laid too soon bring it down."},
	}
	return spanned(f, []q.Length{c.coat().Most(), film.DryFilm(c.sag.value, ends.Low), film.DryFilm(c.sag.value, ends.High)})
}

// whole reads a whole number; a field left empty is 0.
func whole(e *Entry, key string, low, high int) int {
	x := e.number(key, float64(low), float64(high))
	if x != math.Trunc(x) {
		e.fail(key, "Found %q, expected a whole number from %d to %d.", e.values[key], low, high)
	}
	return int(x)
}

// metric writes a quantity for a sentence.
func metric[Q q.Quantity](v Q) string { return q.Show(q.Metric, v) }
