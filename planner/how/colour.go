package how

import (
	"slices"

	"coatwright/planner"
	"coatwright/planner/film"
	"coatwright/planner/library"
	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// candied explains what the strip of a candy says.
func (e *explainer) candied(m *library.Material) {
	lays := func(f planner.Film) bool { return f.Step == e.step.ID }
	i := slices.IndexFunc(e.plan.Films, lays)
	if i < 0 {
		return
	}
	c, missing, ok := e.plan.CandiedOf(e.plan.Films[i], e.lib)
	if !ok || missing != "" {
		return
	}
	colours := ofJob("colours")
	figures, err := c.Figures(planner.CandyOrigins{
		Looks: colours, Ground: colours, Wanted: colours, Coats: ofJob("coats"),
		Over: ofMaterial(m), Swatch: ofMaterial(m), Build: ofMaterial(m), Mix: ofMaterial(m), Recipe: ofMaterial(m),
	})
	if err != nil {
		return
	}
	planned := inStrip(e.plan.StripOf(e.step.ID))
	for _, f := range figures {
		was, kept := planned[f.Key]
		if !kept {
			was = f.Value.SI
		}
		e.add(f, q.Value{SI: was, Of: f.Value.Of})
	}
}

// inStrip is what a strip that was kept with the plan says, by the keys of the
// figures.
func inStrip(s *planner.Strip) map[string]float64 {
	if s == nil || s.Agreed >= len(s.Coats) {
		return nil
	}
	out := map[string]float64{
		"strength": s.Strength, "depth": s.Depth * float64(s.Agreed),
		"lightness": s.Coats[s.Agreed].L, "coat-change": s.Coats[s.Agreed].Change,
	}
	if s.Even != nil {
		out["evenness"], out["tolerance"], out["tolerance-plain"] = max(s.Even.Thin, s.Even.Thick), s.Even.Just/100, s.Even.Plain/100
	}
	if s.Nearest != nil {
		out["nearest"], out["left"] = float64(s.Nearest.Coats), s.Nearest.Left
	}
	if len(s.Sags) == len(planner.SagTimes) {
		out["sag-1"], out["sag-2"] = s.Sags[0].Change, s.Sags[1].Change
	}
	return out
}

// hides explains after how many coats nothing shows through.
func (e *explainer) hides(m *library.Material) {
	h, ok := planner.HidingOf(m, e.step.Colour)
	if !ok {
		return
	}
	coats, err := h.Coats(m.Build, h.Over)
	reached, err2 := h.Contrast(m.Build*q.Length(e.step.Coats), h.Over)
	if err != nil || err2 != nil {
		return
	}
	note, card := ofMaterial(m), trace.Origin{From: trace.FromSource}
	e.add(trace.Figure{
		Key: "hiding", Name: "Coats that hide a black and white card", Value: q.ValueOf(q.Number(coats)), Formula: film.HidingFormula,
		Inputs: []trace.Input{
			trace.In("C", "contrast ratio that counts as hiding", film.Hidden, card),
			trace.In("C₀", "contrast ratio that was measured", h.Ratio, note), trace.In("X₀", "dry film that it was measured at", h.At, note),
			trace.In("R∞", "light that the colour reflects", h.Reflectivity, ofJob("colours")),
			trace.In("Rg", "light that the black reflects", h.Over.Black, card), trace.In("Rg", "light that the white reflects", h.Over.White, card),
			trace.In("", "dry film of one full coat", m.Build, note),
		},
		Remarks: []string{"The coats of this plan come to " + q.Show(q.Metric, reached) + ". What lies over one even shade near to its own needs less."},
	}, q.ValueOf(q.Number(coats)))
}
