package workout

import (
	"fmt"
	"strings"

	"coatwright/planner/mix"
	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// figures are those that the card rests on. None is left out where it is known.
func (c mixCard) figures(e *Entry) []trace.Figure {
	var out []trace.Figure
	add := func(f trace.Figure, err error) {
		e.take("of", err)
		if err == nil {
			out = append(out, f)
		}
	}
	if c.rest != "" {
		out = append(out, c.totalFigure())
	}
	if c.material != nil {
		add(c.solidsFigure())
	}
	for _, p := range c.parts {
		if p.Of != "" {
			add(c.wholeFigure(p))
		}
	}
	out = append(out, c.worstCupFigure())
	for _, l := range c.lines {
		add(c.leastCupFigure(l))
	}
	if c.weighable() {
		out = append(out, c.worstScaleFigure())
		add(c.leastScaleFigure())
		add(c.densityFigure())
	}
	if c.life > 0 {
		out = append(out, c.lifeFigure())
	}
	if len(c.in.Batches) > 1 {
		out = append(out, c.batchFigure())
	}
	return out
}

func (c mixCard) totalFigure() trace.Figure {
	return trace.Figure{
		Key: "makes", Name: "Mix that the rest makes", Value: q.ValueOf(c.total), Formula: mix.MostFormula,
		Inputs: append([]trace.Input{trace.In("", "left of "+c.name(c.rest), c.given, entered("amount"))}, c.ratioInputs()...),
	}
}

// of are the recipe and what each part holds.
func of[Q q.Quantity](r recipe, symbol string, holds func(mix.Part) Q) []trace.Input {
	inputs := r.ratioInputs()
	for _, p := range r.parts {
		inputs = append(inputs, trace.In(symbol, "of "+r.name(p.Name), holds(p), r.partFrom(p.Name)))
	}
	return inputs
}

func (c mixCard) solidsFigure() (trace.Figure, error) {
	solids, err := mix.Solids(c.parts)
	return trace.Figure{
		Key: "mix-solids", Name: "Solids by volume of the mix", Value: q.ValueOf(solids), Formula: mix.SolidsFormula,
		Inputs: of(c.recipe, "VS", func(p mix.Part) q.Fraction { return p.Solids }),
	}, err
}

func (c mixCard) densityFigure() (trace.Figure, error) {
	density, err := mix.Density(c.parts)
	return trace.Figure{
		Key: "mix-density", Name: "Density of the mix", Value: q.ValueOf(density), Formula: mix.DensityFormula,
		Inputs:  of(c.recipe, "ρ", func(p mix.Part) q.Density { return p.Density }),
		Remarks: []string{"Weigh a full measure of each part: the grams to a millilitre of your own cans go before those of the notes."},
	}, err
}

// wholeFigure is the share that a part has of the whole mix.
func (c mixCard) wholeFigure(p mix.Part) (trace.Figure, error) {
	s, err := mix.StrengthsOf(c.parts, p.Name)
	return trace.Figure{
		Key: "whole-" + p.Name, Name: capital(c.name(p.Name)) + ", share of the whole mix", Value: q.ValueOf(s.Chosen.OfWhole),
		Range: spanOf(q.Range[q.Fraction]{Low: s.Low.OfWhole, High: s.High.OfWhole}), Formula: mix.PercentFormula, Inputs: c.ratioInputs(),
		Remarks: []string{fmt.Sprintf("The recipe takes its %s of %s, which is not the whole.", metric(p.Share), c.name(p.Of))},
	}, err
}

func (c mixCard) worstCupFigure() trace.Figure {
	r, by := c.worstByCup()
	return trace.Figure{
		Key: "off-cup", Name: "Most that a pour can be off by the cup", Value: q.ValueOf(r.Worst), Formula: mix.WorstFormula,
		Inputs: []trace.Input{
			trace.In("step", "lines apart, at the mark of "+c.name(r.Name), by.every.Step(r.Exact), by.from),
			trace.In("pour", c.name(r.Name), c.poured(r.Name).Volume, c.ratioFrom(r.Name)),
		},
		Remarks: []string{fmt.Sprintf("That is %s, by the lines in %s, with the eye level with the line.", c.the(r.Name), by.unit)},
	}
}

func (c mixCard) worstScaleFigure() trace.Figure {
	r, _ := c.worstByScale()
	return trace.Figure{
		Key: "off-scale", Name: "Most that a pour can be off by the scale", Value: q.ValueOf(r.Worst), Formula: mix.WorstFormula,
		Inputs: []trace.Input{
			trace.In("step", "of the scale", c.scale.Resolution, entered("scale")),
			trace.In("pour", c.name(r.Name), c.poured(r.Name).Mass, c.ratioFrom(r.Name)),
		},
		Remarks: []string{fmt.Sprintf("That is %s. For the display alone: a draught, a bench that is not level and a worn scale come on top.", c.the(r.Name))},
	}
}

// poured is the pour of a part.
func (c mixCard) poured(name string) mix.Pour {
	for _, p := range c.pours {
		if p.Name == name {
			return p
		}
	}
	return mix.Pour{}
}

func (c mixCard) leastCupFigure(l lines) (trace.Figure, error) {
	least, err := mix.LeastByCup(c.parts, l.every, c.off)
	return trace.Figure{
		Key: "least-cup-" + strings.ReplaceAll(strings.ToLower(l.unit), " ", "-"), Name: "Least that the cup can measure, by its lines in " + l.unit,
		Value: q.ValueOf(least.Total), Formula: mix.LeastFormula,
		Inputs: append([]trace.Input{
			trace.In("step", "lines apart, where it is read", l.every.Step(least.Total), l.from), trace.In("allowed error", "", c.off, entered("off")),
		}, c.ratioInputs()...),
		Remarks: c.setBy(least.Part),
	}, err
}

func (c mixCard) leastScaleFigure() (trace.Figure, error) {
	least, err := mix.LeastByScale(c.parts, c.scale, c.off)
	return trace.Figure{
		Key: "least-scale", Name: "Least that the scale can measure", Value: q.ValueOf(least.Total), Formula: mix.LeastFormula,
		Inputs: append([]trace.Input{
			trace.In("step", "of the scale", c.scale.Resolution, entered("scale")), trace.In("allowed error", "", c.off, entered("off")),
		}, of(c.recipe, "ρ", func(p mix.Part) q.Density { return p.Density })...),
		Remarks: c.setBy(least.Part),
	}, err
}

// setBy says which part sets the least mix.
func (c mixCard) setBy(part string) []string {
	if part == "" {
		return nil
	}
	return []string{fmt.Sprintf("It is set by %s.", c.the(part))}
}

func (c mixCard) batchFigure() trace.Figure {
	f := trace.Figure{Key: "batches", Name: "Batches", Value: q.ValueOf(q.Number(len(c.in.Batches))), Formula: mix.BatchFormula}
	total := entered("amount")
	switch c.by {
	case byRest:
		total = fromFigure("makes")
	case byCup:
		total = entered("holds")
	}
	f.Inputs = []trace.Input{trace.In("total", "", c.total, total), trace.In("work", "first trigger to last", c.work, entered("work"))}
	if c.holds > 0 {
		f.Inputs = append(f.Inputs, trace.In("cup", "", c.holds, entered("holds")))
	}
	if c.life > 0 {
		from := c.noted()
		if c.material == nil {
			from = entered("stand")
		}
		f.Inputs = append(f.Inputs, taken("pot life", "", c.lifeFigure()), trace.In("stand", "", c.stand, from))
	}
	return f
}
