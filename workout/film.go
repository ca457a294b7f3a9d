package workout

import (
	"fmt"

	"coatwright/planner/film"
	"coatwright/planner/library"
	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// filmSheet goes from dry film to wet film and back, and says how far a litre goes
// and how much to mix.
var filmSheet = &Sheet{
	Slug: "film", Title: "Wet and dry film",
	Lead: "How thick to spray, what a wet reading dries to, how far a litre goes, and how much to mix.",
	Note: "background/film-build",
	fields: func(e *Entry) []Field {
		forms := formChoices(e.lib)
		fields := append(filmFields(e, func(choices []Choice) string { return tellingMix(e.lib, choices) }),
			Field{Key: "area", Label: "Area of the part", Hint: "0.55 m2 or 6 ft2", Default: "0.55 m2"},
			Field{Key: "form", Label: "Form of the part", Choices: forms, Default: firstOf(forms)},
			Field{Key: "coats", Label: "Coats", Hint: "3; left empty: as its note says", Optional: true})
		fields = append(fields, ownFields()...)
		return append(fields,
			Field{Key: "lands", Label: "Share of the paint that lands", Hint: "35 %, or 20 to 35 %; left empty: by applicator and form", Optional: true},
			Field{Key: "cleanings", Label: "Times that the gun is cleaned", Hint: "1, and 1 more for each mix that sets before the next", Default: "1"},
			Field{Key: "comb", Label: "Reading of the wet comb", Hint: "50 to 60 um, or 2 to 2.4 mil: the last wet tooth and the first dry one", Optional: true})
	},
	answer: filmAnswer,
}

var painted = q.Range[q.Area]{Low: 1e-4, High: 10e3}

const (
	mostCoats     = 50
	mostCleanings = 50
)

func formChoices(lib *library.Library) []Choice {
	var out []Choice
	for _, w := range lib.Words.Forms {
		out = append(out, Choice{Value: w.Name, Title: capital(w.Name) + ": " + lowered(w.Is)})
	}
	return out
}

// laying is a film on a part.
type laying struct {
	coating
	area      q.Area
	coats     known[q.Number]
	lands     known[q.Fraction] // of all that is sprayed
	cleanings int
	comb      known[q.Length] // zero where no comb was read
}

func filmAnswer(e *Entry) *Answer {
	l := readLaying(e)
	if !e.sound() {
		return nil
	}
	need, err := l.order().Need()
	if err != nil {
		e.take("area", err)
		return nil
	}
	wet := l.wetFigure()
	a := &Answer{Verdict: l.judge()}
	if l.mixed != nil {
		a.Figures = append(a.Figures, *l.mixed)
	}
	a.Figures = append(a.Figures, wet)
	if l.sag.value > 0 {
		a.Figures = append(a.Figures, l.mostFigure())
	} else {
		a.Says = append(a.Says, "Nobody says above which wet film this one runs. Look on its data sheet, or spray a card upright.")
	}
	if l.comb.value > 0 {
		a.Figures = append(a.Figures, l.combFigure())
	}
	rate := l.rateFigure()
	a.Figures = append(a.Figures, l.stackFigure(), rate, l.practicalFigure(rate), l.needFigure(need, e.lib.Words))
	return a
}

func readLaying(e *Entry) laying {
	l := laying{coating: readFilm(e)}
	l.readOwn(e)
	l.area = within(e, "area", painted)
	l.coats = readCoats(e, l.material)
	l.lands = readLands(e, l.tool)
	l.cleanings = whole(e, "cleanings", 1, mostCleanings)
	l.comb = ownRange(e, "comb", films, known[q.Length]{})
	return l
}

// readCoats reads how many coats are laid, else takes them from the film's note.
func readCoats(e *Entry, m *library.Material) known[q.Number] {
	coats := known[q.Number]{value: q.Number(whole(e, "coats", 1, mostCoats)), from: entered("coats")}
	if m != nil && e.values["coats"] == "" {
		coats = known[q.Number]{value: q.Number(m.Coats), from: fromNote("material/"+m.Slug, m.Standing)}
	}
	require(e, "coats", coats)
	return coats
}

// readLands reads what share lands, else takes it from the applicator's note by
// the form of the part.
func readLands(e *Entry, tool *library.Tool) known[q.Fraction] {
	form, says := e.text("form"), known[q.Fraction]{}
	if tool != nil {
		says = ranged(tool.Applicator.Transfer[form], fromNote("tool/"+tool.Slug, ""))
	}
	lands := ownRange(e, "lands", solid, says)
	if tool != nil && lands.value == 0 && e.problems["form"] == "" {
		e.fail("lands", "Found nothing, expected it to be filled in: the note on %s says nothing of this form.", lowered(tool.Title))
	}
	return lands
}

// order is what is to be laid.
func (l laying) order() film.Order {
	return film.Order{
		Surfaces: []film.Surface{{Area: l.area, Transfer: l.lands.ends()}},
		Build:    l.build.value, Coats: int(l.coats.value), Solids: l.solids.value,
		Loss: l.tool.Applicator.Loss, Cleanings: l.cleanings,
	}
}

// judge holds the coat, and what a comb read, against the sag limit; nil where
// nobody knows it.
func (l laying) judge() *Verdict {
	coat, limit := l.coat(), metric(l.sag.value)
	thinned := film.WetFilm(l.build.value, l.solids.ends().Low)
	switch {
	case l.sag.value == 0:
		return nil
	case l.comb.span.Low > l.sag.value:
		return &Verdict{"no", fmt.Sprintf("The comb reads at least %s, and above %s it runs on an upright face. Lay the part level while it is wet, if you can.", metric(l.comb.span.Low), limit)}
	case coat.Runs():
		return &Verdict{"no", fmt.Sprintf("A full coat lies %s wet, and above %s it runs on an upright face.%s", metric(coat.Wet()), limit, l.inThinner())}
	case l.comb.span.High > l.sag.value:
		return &Verdict{"care", fmt.Sprintf("The comb reads up to %s, and above %s it runs on an upright face.", metric(l.comb.span.High), limit)}
	case thinned > l.sag.value:
		return &Verdict{"care", fmt.Sprintf("A full coat of the mix at its thinnest lies %s wet, and above %s it runs on an upright face.", metric(thinned), limit)}
	}
	return &Verdict{"go", fmt.Sprintf("A full coat lies %s wet, under the %s above which it runs on an upright face.", metric(coat.Wet()), limit)}
}

// inThinner says in how many coats a film can be laid of which a full coat runs.
func (l laying) inThinner() string {
	laid, err := l.coat().For(l.build.value * q.Length(l.coats.value))
	if err != nil {
		return ""
	}
	return fmt.Sprintf(" Lay the same film in %d coats of %s wet.", laid.Coats, metric(laid.Wet))
}

// combFigure is what a wet film that was read dries to.
func (l laying) combFigure() trace.Figure {
	vs := l.solids.ends()
	f := trace.Figure{
		Key: "comb-dry", Name: "What the comb's reading dries to", Formula: film.DryFormula,
		Inputs: []trace.Input{
			l.comb.in("WFT", "reading of the wet comb"), l.solids.in("VS / (1 + t)", "solids of the mix as sprayed"),
		},
	}
	dry := q.Range[q.Length]{Low: film.DryFilm(l.comb.span.Low, vs.Low), High: film.DryFilm(l.comb.span.High, vs.High)}
	switch {
	case dry.High < l.build.value:
		f.Remarks = []string{fmt.Sprintf("Thinner than a full coat, which dries to %s.", metric(l.build.value))}
	case dry.Low > l.build.value:
		f.Remarks = []string{fmt.Sprintf("Thicker than a full coat, which dries to %s.", metric(l.build.value))}
	default:
		f.Remarks = []string{fmt.Sprintf("A full coat, which dries to %s, lies within the reading.", metric(l.build.value))}
	}
	return spanned(f, []q.Length{film.DryFilm(l.comb.value, l.solids.value), dry.Low, dry.High})
}

// stackFigure is the dry film of all coats.
func (l laying) stackFigure() trace.Figure {
	heights := film.Heights([]film.Layer{{Build: l.build.ends(), Coats: int(l.coats.value)}})
	return trace.Figure{
		Key: "all-dry", Name: "Dry film of all coats", Value: q.ValueOf(heights[0].Middle()), Formula: film.StackFormula,
		Inputs: []trace.Input{l.coats.in("n", "coats"), l.build.in("DFT", "dry film of one coat")},
	}
}

// rateFigure is how far a litre goes in one coat, if all of it lands.
func (l laying) rateFigure() trace.Figure {
	vs := l.solids.ends()
	rate := func(vs q.Fraction) q.Spread { return film.SpreadingRate(vs, l.build.value) }
	f := trace.Figure{
		Key: "spreads", Name: "How far the mix goes in one coat, if all of it lands", Formula: film.SpreadFormula,
		Inputs: []trace.Input{l.solids.in("VS", "solids of the mix as sprayed"), l.build.in("DFT", "dry film of one coat")},
	}
	return spanned(f, []q.Spread{rate(l.solids.value), rate(vs.Low), rate(vs.High)})
}

// practicalFigure is how far a litre goes, with what misses the part.
func (l laying) practicalFigure(rate trace.Figure) trace.Figure {
	goes := film.Practical(q.Spread(rate.Value.SI), l.lands.ends())
	f := trace.Figure{
		Key: "spreads-sprayed", Name: "How far it goes when it is sprayed", Formula: film.PracticalFormula,
		Inputs: []trace.Input{taken("S", "if all of it lands", rate), l.lands.in("TE", "share that lands")},
	}
	return spanned(f, []q.Spread{goes.Middle(), goes.Low, goes.High})
}

// needFigure is how much to mix: low and high take the applicator at its best and
// worst, and the film's figures as far off as their note's standing allows.
func (l laying) needFigure(n film.Need, words *library.Vocabulary) trace.Figure {
	off := l.off(words, l.build.from, l.solids.from)
	mixed := n.Mixed()
	low, high := n.Sprayed.Low*q.Volume(off.Amount.Low)+n.Lost, n.Sprayed.High*q.Volume(off.Amount.High)+n.Lost
	loss := fromNote("tool/"+l.tool.Slug, "")
	f := trace.Figure{
		Key: "needed", Name: "Mix needed", Formula: film.NeedFormula,
		Inputs: []trace.Input{
			trace.In("A", "area", l.area, entered("area")), l.build.in("DFT", "dry film of one coat"), l.coats.in("n", "coats"),
			l.solids.in("VS", "solids of the mix as sprayed"), l.lands.in("TE", "share that lands"),
			trace.In("loss", "stays in cup and passages, each time", l.tool.Applicator.Loss, loss),
			trace.In("", "times that the gun is cleaned", q.Number(l.cleanings), entered("cleanings")),
		},
		Remarks: []string{fmt.Sprintf("%s of it end up on the part.", metric(n.OnPart)), l.fills(mixed.Likely, high)},
	}
	if off.Name != "" {
		f.Remarks = append(f.Remarks, fmt.Sprintf("The range also takes the film's figures as far off as their standing allows: %s, %s of what is written.", spaced(off.Name), q.ShowRange(q.Metric, off.Amount)))
	}
	return spanned(f, []q.Volume{mixed.Likely, low, high})
}

// fills says how often the cup is filled.
func (l laying) fills(likely, high q.Volume) string {
	cup := l.tool.Applicator.Cup
	n, most := film.Fills(likely, cup), film.Fills(high, cup)
	switch {
	case cup == 0:
		return "The applicator's note does not say what its cup holds."
	case most == 1:
		return fmt.Sprintf("The cup of %s holds it in one fill.", metric(cup))
	case n == most:
		return fmt.Sprintf("That is %d fills of the cup of %s.", n, metric(cup))
	}
	return fmt.Sprintf("That is %d to %d fills of the cup of %s.", n, most, metric(cup))
}
