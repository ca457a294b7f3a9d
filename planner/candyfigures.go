package planner

import (
	"fmt"
	"slices"

	"coatwright/planner/colour"
	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// CandyOrigins are where the figures of a Candied come from.
type CandyOrigins struct {
	Looks  trace.Origin // of the candy's swatch
	Over   trace.Origin // of what that lies over
	Swatch trace.Origin // of how many coats that has
	Ground trace.Origin // of what the work lies over
	Build  trace.Origin
	Mix    trace.Origin // of a coat's mix
	Recipe trace.Origin // of the swatch's mix
	Coats  trace.Origin
	Wanted trace.Origin
}

// Figures explains what a strip says, and what it goes by. Their keys are
// "strength", "depth", "lightness", "coat-change", "nearest", "left",
// "evenness", "tolerance", "tolerance-plain", "sag-1" and "sag-2"; those of the
// wanted colour are left out where there is none.
func (c Candied) Figures(o CandyOrigins) ([]trace.Figure, error) {
	candy, work, err := c.Work()
	if err != nil {
		return nil, err
	}
	e := candyFigures{c, o, work}
	light := e.lightness()
	if r := candy.Remark(); r != "" {
		light.Remarks = append(light.Remarks, r)
	}
	out := []trace.Figure{e.strength(), e.depth(), light}
	if c.Agreed > 0 {
		out = append(out, e.change())
	}
	if c.Wanted != nil {
		out = append(out, e.nearest()...)
	}
	out = append(out, e.evenness(), e.tolerance("tolerance", "Film may vary before an eye sees it side by side", colour.JustVisible),
		e.tolerance("tolerance-plain", "Film may vary before most people see it", colour.PlainlyVisible))
	for i, times := range SagTimes {
		out = append(out, e.sag(i, times))
	}
	return out, nil
}

// candyFigures makes the figures.
type candyFigures struct {
	Candied
	from CandyOrigins
	work colour.Coating
}

func figureAt(key string) trace.Origin { return trace.Origin{From: trace.FromFigure, At: key} }

// difference is a difference of colours as a figure's value.
func difference(d colour.DeltaE) q.Value { return q.ValueOf(q.Number(d)) }

// ofLab are the three numbers of a colour.
func ofLab(name string, c colour.Lab, from trace.Origin) []trace.Input {
	return []trace.Input{
		trace.In("L*", name, q.Number(c.L), from), trace.In("a*", name, q.Number(c.A), from), trace.In("b*", name, q.Number(c.B), from),
	}
}

// after names some coats.
func after(coats int) string {
	switch coats {
	case 0:
		return "the bare ground"
	case 1:
		return "after 1 coat"
	}
	return fmt.Sprintf("after %d coats", coats)
}

func (e candyFigures) strength() trace.Figure {
	mixed, swatch := e.Coat.Mix, e.Swatch.Mix
	return trace.Figure{
		Key: "strength", Name: "Strength of the dry film, beside that of the swatch", Value: q.ValueOf(e.Candied.strength()), Formula: colour.StrengthFormula,
		Inputs: []trace.Input{
			trace.In("c", "candy, share of this mix", mixed.Share, e.from.Mix), trace.In("c", "candy, share of the swatch's mix", swatch.Share, e.from.Recipe),
			trace.In("Sc", "solids of the candy", mixed.Solids, e.from.Recipe),
			trace.In("Sb", "solids that the rest brings to this mix", mixed.Binder, e.from.Mix), trace.In("Sb", "solids that the rest brings to the swatch's mix", swatch.Binder, e.from.Recipe),
		},
		Remarks: []string{"More candy brings more solids along, so the film gets thicker too: strength grows by less than the share."},
	}
}

func (e candyFigures) depth() trace.Figure {
	return trace.Figure{
		Key: "depth", Name: "Colour " + after(e.Agreed) + ", beside that of the swatch", Value: q.ValueOf(e.work.Depth(q.Number(e.Agreed))), Formula: colour.DepthFormula,
		Inputs: []trace.Input{
			trace.In("", "coats", q.Number(e.Agreed), e.from.Coats), trace.In("", "dry film of one coat", e.Coat.Build, e.from.Build),
			trace.In("", "strength beside the swatch", e.Candied.strength(), figureAt("strength")),
			trace.In("", "coats of the swatch", q.Number(e.Swatch.Coats), e.from.Swatch), trace.In("", "dry film of a coat of the swatch", e.Swatch.Build, e.from.Recipe),
		},
	}
}

func (e candyFigures) lightness() trace.Figure {
	c := e.work.Lab(q.Number(e.Agreed))
	inputs := ofLab("the candy's swatch", e.Looks.Colour.Lab(), e.from.Looks)
	inputs = append(inputs, ofLab("what the swatch lies over", e.Over.Looks.Colour.Lab(), e.from.Over)...)
	inputs = append(inputs, ofLab("Rg: what the work lies over", e.Ground.Looks.Colour.Lab(), e.from.Ground)...)
	return trace.Figure{
		Key: "lightness", Name: "Lightness L* " + after(e.Agreed), Value: q.ValueOf(q.Number(c.L)), Formula: colour.FilmFormula,
		Inputs: append(inputs,
			trace.In("k2", "light that the surface returns on its way out", e.Ground.Returns, trace.Origin{From: trace.FromSource}),
			trace.In("d", "colour beside the swatch", e.work.Depth(q.Number(e.Agreed)), figureAt("depth"))),
		Remarks: []string{
			fmt.Sprintf("There a* is %.1f and b* is %.1f.", round(c.A, 1)+0, round(c.B, 1)+0),
			"An estimate: a colour without its spectrum is taken as the smoothest that looks so. Spray a test card.",
		},
	}
}

func (e candyFigures) change() trace.Figure {
	before, now := e.work.Lab(q.Number(e.Agreed-1)), e.work.Lab(q.Number(e.Agreed))
	return trace.Figure{
		Key: "coat-change", Name: "Change by the last coat (CIEDE2000)", Value: difference(colour.Difference(before, now)), Formula: colour.DifferenceFormula,
		Inputs: append(ofLab(after(e.Agreed-1), before, figureAt("depth")), ofLab(after(e.Agreed), now, figureAt("lightness"))...),
	}
}

func (e candyFigures) nearest() []trace.Figure {
	m := e.work.Nearest(*e.Wanted, max(MaxCoats, e.Agreed))
	wanted := ofLab("wanted", *e.Wanted, e.from.Wanted)
	return []trace.Figure{
		{
			Key: "nearest", Name: "Coats that come nearest to the colour wanted", Value: q.ValueOf(q.Number(m.Coats)), Formula: colour.NearestFormula,
			Inputs:  append(slices.Clone(wanted), e.film()),
			Remarks: []string{fmt.Sprintf("If parts of a coat counted it would be %.2f coats, and %.1f from it.", float64(m.Best), float64(m.BestLeft))},
		},
		{
			Key: "left", Name: "How far they stay from it (CIEDE2000)", Value: difference(m.Left), Formula: colour.DifferenceFormula,
			Inputs: append(slices.Clone(wanted), ofLab(after(m.Coats), e.work.Lab(q.Number(m.Coats)), figureAt("nearest"))...),
		},
	}
}

func (e candyFigures) evenness() trace.Figure {
	even := e.work.Evenness(q.Number(e.Agreed), Uneven)
	return trace.Figure{
		Key: "evenness", Name: fmt.Sprintf("Change where the film is %.0f %% off (CIEDE2000)", Uneven.Percent()), Value: difference(max(even.Thin, even.Thick)), Formula: colour.EvennessFormula,
		Inputs: []trace.Input{
			trace.In("v", "off by", Uneven, trace.Origin{From: trace.FromDefault}), e.film(),
		},
		Remarks: []string{fmt.Sprintf("Where it is thinner %.1f, where it is thicker %.1f.", float64(even.Thin), float64(even.Thick))},
	}
}

func (e candyFigures) tolerance(key, name string, limit colour.DeltaE) trace.Figure {
	f := trace.Figure{
		Key: key, Name: name, Value: q.ValueOf(e.work.Tolerance(q.Number(e.Agreed), limit)), Formula: colour.EvennessFormula,
		Inputs: []trace.Input{
			trace.In("ΔE00", "difference that may show", q.Number(limit), trace.Origin{From: trace.FromSource}), e.film(),
		},
		Remarks: []string{"To either side of the rest."},
	}
	if f.Value.SI == 1 {
		f.Remarks = []string{"Neither no film at all nor twice the film looks further than that from the rest."}
	}
	return f
}

// film is the colour of the agreed coats as what goes into a figure.
func (e candyFigures) film() trace.Input {
	return trace.In("d", "colour "+after(e.Agreed)+", beside the swatch", e.work.Depth(q.Number(e.Agreed)), figureAt("depth"))
}

func (e candyFigures) sag(i int, times q.Number) trace.Figure {
	sag := e.work.Sag(q.Number(e.Agreed), times)
	return trace.Figure{
		Key: fmt.Sprintf("sag-%d", i+1), Name: fmt.Sprintf("A sag %g times as thick, beside the rest (CIEDE2000)", float64(times)), Value: difference(sag.Change), Formula: colour.SagFormula,
		Inputs:  []trace.Input{trace.In("k", "times as thick", times, trace.Origin{From: trace.FromDefault}), e.film()},
		Remarks: []string{fmt.Sprintf("It loses %.1f of L*: a sag in candy shows as a dark line.", sag.Darker)},
	}
}
