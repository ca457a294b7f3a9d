package workout

import (
	"fmt"

	"coatwright/planner/trace"
	"coatwright/planner/ventilation"
	q "coatwright/quantity"
)

// blowing is a coat sprayed in a space that air goes through.
type blowing struct {
	coatOf
	ventilation.Space
	paint        q.Volume
	spray, flash q.Time
	left         q.Fraction
}

// quarter is the share of the lower explosive limit that the fire codes want the
// air to stay below. Source: fire code text MC 502.7.3.3.
const quarter q.Fraction = 0.25

var levelFormula = trace.Formula{
	Text:   "level = C/LEL",
	Source: "fire code text MC 502.7.3.3, which wants it below 25 percent",
	Note:   ventilation.DilutionFormula.Note,
}

func (b blowing) answer() (*Answer, error) {
	rate, err := b.rate()
	if err != nil {
		return nil, err
	}
	rateFigure := b.rateFigure(rate)
	a := &Answer{Defers: ventilation.Defer, Says: []string{
		"This is about fire alone. Air that is far from burning can still make you ill: vapour harms at a small part of what burns, and mist and hardener at less.",
	}}
	level, vapour, err := b.level(rate, rateFigure)
	if err != nil {
		return nil, err
	}
	a.Verdict = judgeVapour(level)
	needs, err := b.needs(rateFigure, rate)
	if err != nil {
		return nil, err
	}
	a.Figures = append([]trace.Figure{level}, needs...)
	if b.Flow > 0 {
		clears, err := b.clearing()
		if err != nil {
			return nil, err
		}
		a.Figures = append(a.Figures, clears, b.changes())
	} else {
		a.Says = append(a.Says, "Without air that leaves it, the space does not clear.")
	}
	a.Figures = append(a.Figures, vapour, rateFigure, b.lel, b.yield, b.leaves)
	return a, nil
}

// rate is how fast the solvent leaves, with as little and as much of it in the mix
// as the recipe allows.
func (b blowing) rate() (q.Range[q.Flow], error) {
	of := func(solvent q.Fraction) (q.Range[q.Flow], error) {
		return ventilation.Spraying{Paint: b.paint, Solvent: solvent, Spray: b.spray, Flash: b.flash}.Rate()
	}
	least, err := of(b.solvent.Low)
	if err != nil {
		return least, err
	}
	most, err := of(b.solvent.High)
	return q.Range[q.Flow]{Low: least.Low, High: most.High}, err
}

func (b blowing) rateFigure(rate q.Range[q.Flow]) trace.Figure {
	return trace.Figure{
		Key: "rate", Name: "Solvent that leaves, at the most", Value: q.ValueOf(rate.High), Range: spanOf(rate), Formula: ventilation.RateFormula,
		Inputs: []trace.Input{
			trace.In("V", "amount sprayed", b.paint, entered("sprayed")), taken("s", "solvent in it", b.leaves),
			trace.In("", "spraying", b.spray, entered("spray")), trace.In("", "flash", b.flash, entered("flash")),
		},
		Remarks: []string{"From all of it leaving through spraying and flash, to all of it leaving as it is sprayed."},
	}
}

// level is how near the air comes to what burns, and the vapour that is in it by
// then: at the least when the solvent leaves evenly until the flash ends, at the
// most when all of it leaves as it is sprayed.
func (b blowing) level(rate q.Range[q.Flow], by trace.Figure) (level, vapour trace.Figure, err error) {
	even, err := b.After(b.spray+b.flash, b.vapour.From(rate.Low), 0)
	if err != nil {
		return level, vapour, err
	}
	worst, err := b.After(b.spray, b.vapour.From(rate.High), 0)
	if err != nil {
		return level, vapour, err
	}
	in := q.Range[q.Fraction]{Low: even.Vapour.Low, High: worst.Vapour.High}
	vapour = trace.Figure{
		Key: "vapour-in-air", Name: "Vapour in the air by then, at the most", Value: q.ValueOf(in.High), Range: spanOf(in), Formula: ventilation.FillingFormula,
		Inputs: []trace.Input{
			taken("", "solvent that leaves, for G", by), taken("", "vapour from a volume of it, for G", b.yield),
			trace.In("V", "the space", b.Volume, entered("space")), trace.In("Q", "air that leaves it", b.Flow, entered("flow")),
			most("K", "mixing", b.Mixing, entered("moves")), trace.In("t", "spraying", b.spray, entered("spray")),
		},
	}
	of := ventilation.Level{Vapour: in}.OfLEL(b.vapour)
	level = trace.Figure{
		Key: "level", Name: "Share of what burns, at the most", Value: q.ValueOf(of.High), Range: spanOf(of), Formula: levelFormula,
		Inputs:  []trace.Input{taken("C", "vapour in the air", vapour), taken("LEL", "what burns", b.lel)},
		Remarks: []string{"The mean of the space. At the gun, in a pit and along the floor there is more, whatever the fan does.", "From clean air on: a coat that follows soon adds to what the last one left."},
	}
	return level, vapour, nil
}

// judgeVapour never lets anybody off: what does not burn may still harm.
func judgeVapour(level trace.Figure) *Verdict {
	most := q.Fraction(level.Value.SI)
	shown := q.Show(q.Metric, most)
	switch {
	case most >= 1:
		return &Verdict{"no", fmt.Sprintf("At the worst the vapour reaches %s of what burns: a spark can set the air of the whole space on fire.", shown)}
	case most >= quarter:
		return &Verdict{"no", fmt.Sprintf("At the worst the vapour reaches %s of what burns. The fire codes want the air below %s of it.", shown, q.Show(q.Metric, quarter))}
	}
	return &Verdict{"care", fmt.Sprintf("At the worst the vapour reaches %s of what burns, below the %s that the fire codes name. That is about fire, and no answer to what may be breathed.", shown, q.Show(q.Metric, quarter))}
}

// needs are the flows that keep the air at a quarter of what burns.
func (b blowing) needs(by trace.Figure, rate q.Range[q.Flow]) ([]trace.Figure, error) {
	var out []trace.Figure
	for _, n := range []struct {
		key, name string
		mixing    q.Range[q.Number]
	}{
		{"air-swept", "Air that a booth needs which it sweeps, at the least", ventilation.Mixed},
		{"air-mixed", "Air that a room needs with a fan somewhere, at the least", ventilation.Room},
	} {
		need, err := ventilation.Dilute(b.vapour, rate, n.mixing)
		if err != nil {
			return nil, err
		}
		f := trace.Figure{
			Key: n.key, Name: n.name, Value: q.ValueOf(need.Flow.High), Range: spanOf(need.Flow), Formula: ventilation.DilutionFormula,
			Inputs: []trace.Input{taken("LEL", "what burns", b.lel), taken("v", "vapour from a volume of solvent", b.yield), taken("", "solvent that leaves", by)},
		}
		if n.mixing.High > 1 {
			f.Inputs = append(f.Inputs, most("", "times as much, for how it mixes", n.mixing, trace.Origin{From: trace.FromSource}))
			f.Remarks = []string{"Air takes the short way from inlet to outlet: 3 to 10 times as much is common in industrial ventilation (from memory)."}
		}
		out = append(out, f)
	}
	return out, nil
}

// clearing is how long the air takes until little is left.
func (b blowing) clearing() (trace.Figure, error) {
	c, err := b.Clear(1, b.left)
	if err != nil {
		return trace.Figure{}, err
	}
	return trace.Figure{
		Key: "clear", Name: "Time to clear", Value: q.ValueOf(c.Time.High), Range: spanOf(c.Time), Formula: ventilation.ClearingFormula,
		Inputs: []trace.Input{
			trace.In("V", "the space", b.Volume, entered("space")), trace.In("Q", "air that leaves it", b.Flow, entered("flow")),
			most("K", "mixing", b.Mixing, entered("moves")), trace.In("C2/C1", "left", b.left, entered("left")),
		},
		Remarks: []string{"From when nothing more evaporates: wet paint, rags and an open cup begin it anew. For what may be breathed a measured time counts, and not this."},
	}, nil
}

func (b blowing) changes() trace.Figure {
	return trace.Figure{
		Key: "changes", Name: "Changes of air in an hour", Value: q.ValueOf(b.Changes()), Formula: ventilation.ChangesFormula,
		Inputs: []trace.Input{trace.In("Q", "air that leaves it", b.Flow, entered("flow")), trace.In("V", "the space", b.Volume, entered("space"))},
	}
}

// limitFigure is the least share of the air that burns.
func limitFigure(lel q.Fraction, inputs []trace.Input) trace.Figure {
	return trace.Figure{Key: "lel", Name: "What burns: the least share of the air", Value: q.ValueOf(lel), Formula: ventilation.BlendFormula, Inputs: inputs}
}

// yieldFigure is how much vapour a volume of solvent makes.
func yieldFigure(v q.VapourYield, inputs []trace.Input) trace.Figure {
	formula := ventilation.YieldFormula
	formula.Text = "v = sum(V v)/sum(V), each v by (rho/M) R T/p"
	return trace.Figure{Key: "yield", Name: "Vapour from a volume of solvent", Value: q.ValueOf(v), Formula: formula, Inputs: inputs}
}

// solventFigure is how much of what is sprayed evaporates and burns.
func solventFigure(all []q.Fraction, inputs []trace.Input) trace.Figure {
	return spanned(trace.Figure{Key: "solvent-share", Name: "Solvent in what is sprayed", Inputs: inputs, Formula: trace.Formula{
		Text:   "s = 1 - solids - water, of each part; s = sum(v s)/sum(v)",
		Source: `WAC 296-62-11019, after 29 CFR 1910.94(c)(6): "diminished by the quantity of solids and nonflammables"`,
		Note:   ventilation.RateFormula.Note,
	}}, all)
}
