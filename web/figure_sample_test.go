package web

import (
	"slices"

	"coatwright/planner"
	"coatwright/planner/area"
	"coatwright/planner/cost"
	"coatwright/planner/library"
	"coatwright/planner/quote"
	"coatwright/planner/trace"
	q "coatwright/quantity"
	"coatwright/workout"
)

// sampleFigure has an input of every origin.
func sampleFigure() trace.Figure {
	in := func(symbol, name string, from trace.From, at string) trace.Input {
		return trace.In(symbol, name, q.Fraction(0.42), trace.Origin{From: from, At: at, Standing: "starting-value"})
	}
	return trace.Figure{
		Key: "wet-film", Name: "Wet film of one coat", Value: q.ValueOf(q.Length(59e-6)), Range: trace.SpanOf(q.Length(50e-6), q.Length(72e-6)),
		Formula: trace.Formula{Text: "WFT = DFT / VS", Source: "A handbook", Note: "background/film-build"},
		Inputs: []trace.Input{
			in("VS", "solids by volume", trace.FromNote, "material/pearl"), in("DFT", "dry film", trace.FromFigure, "wet-film"),
			in("A", "area", trace.FromJob, "parts"), in("φ", "humidity", trace.FromRoom, "humidity"), in("", "step of the scale", trace.FromShop, "scale"),
			in("", "density", trace.FromCan, ""), in("", "entered", trace.FromEntry, "solids"), in("", "constant", trace.FromSource, ""), in("", "usual", trace.FromDefault, ""),
			trace.InRange("TE", "transfer", q.Range[q.Fraction]{Low: 0.2, High: 0.5}, trace.Origin{From: trace.FromNote, At: "tool/fan-gun"}),
		},
		Remarks: []string{"Above 120 µm it runs."},
	}
}

// plannedFigure is a figure of a plan: nothing of it was entered on its page.
func plannedFigure() trace.Figure {
	f := sampleFigure()
	f.Inputs = slices.DeleteFunc(f.Inputs, func(in trace.Input) bool { return in.Origin.From == trace.FromEntry })
	return f
}

func workOutSamples() []Page {
	asked := []workout.Field{
		{Key: "solids", Label: "Solids by volume", Hint: "35 %", Default: "42 %"},
		{Key: "of", Label: "Material", Default: "a", Choices: []workout.Choice{{Value: "a", Title: "A", Group: "Clears"}, {Value: "b", Title: "B", Group: "Clears"}, {Value: "c", Title: "C", Group: "Grounds"}}},
		{Key: "readings", Label: "Readings", Optional: true, Lines: true},
	}
	sheet := &workout.Sheet{Slug: "film", Title: "Wet and dry film", Lead: "From one to the other.", Note: "background/film-build"}
	full := &workout.Page{Sheet: sheet, Fields: asked, Values: map[string]string{"solids": "42 %", "of": "b"}, Problems: map[string]string{}, Answer: &workout.Answer{
		Verdict: &workout.Verdict{Level: "care", Says: "It lies at 23 °C."}, Says: []string{"A sentence."}, Shape: &area.Plate{Length: 0.6, Width: 0.4}, Figures: []trace.Figure{sampleFigure()},
		Tables: []workout.Table{{Title: "Steps", Columns: []string{"What", "How much"}, Rows: [][]any{{"ground", q.ValueOf(q.Volume(1e-4))}}}}, Defers: "The data sheet wins.",
		Card: &workout.Card{Pours: []workout.CardPour{{Name: "Base", Mark: 2e-4}, {Name: "Hardener", Mark: 3e-4}}},
	}}
	wrong := &workout.Page{Sheet: &workout.Sheet{Slug: "x", Title: "X", Lead: "Y."}, Fields: asked, Values: map[string]string{"solids": "<x>"}, Problems: map[string]string{"solids": "Found <x>, expected a percentage."}}
	strip := sampleStrip("")
	figures, err := sampleCandy("").Figures(planner.CandyOrigins{})
	if err != nil {
		panic(err)
	}
	full.Answer.Strip, full.Answer.Figures = &strip, append(full.Answer.Figures, figures...)
	titles := map[string]string{"background/film-build": "Film build", "material/pearl": "Pearl"}
	return []Page{WorkOutPage{Frame: Frame{Path: "/work-out/film", Units: q.US}, Sheet: full, Titles: titles}, WorkOutPage{Sheet: wrong}}
}

func quoteSamples() []Page {
	plan := samplePlanPage().Plan
	priced := *plan
	priced.Worn = []planner.Worn{{Tool: "abrasive-paper", Title: "Abrasive paper", Piece: "sheet", Count: 3}}
	price := func(text string) cost.Price {
		p, err := cost.ParsePrice(text)
		if err != nil {
			panic(err)
		}
		return p
	}
	rates := &quote.Rates{Terms: cost.Terms{Currency: "EUR"}, Labour: price("48 EUR/h"), Pieces: map[string]cost.Price{"abrasive-paper": price("0.90 EUR")}}
	words := &library.Library{Words: &library.Vocabulary{}}
	q, err := quote.Of(&priced, rates, words)
	if err != nil {
		panic(err)
	}
	return []Page{
		QuotePage{Frame: Frame{Path: "/plan/k3v9/quote"}, ID: "k3v9", Plan: &priced, Quote: q, Values: map[string]string{"labour": "48 EUR/h"}},
		QuotePage{ID: "k3v9", Plan: plan, Values: map[string]string{"labour": "<x>"}, Problems: map[string]string{"labour": "Found <x>, expected a price."}},
	}
}
