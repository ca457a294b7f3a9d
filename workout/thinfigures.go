package workout

import (
	"cmp"
	"slices"

	"coatwright/planner/mix"
	"coatwright/planner/trace"
	"coatwright/planner/viscosity"
	q "coatwright/quantity"
)

// table is what the cup may read with more and more thinner.
func (t *thinningOf) table() Table {
	out := Table{Title: "Thinner, and what the cup may then read", Columns: []string{"", "Of the unthinned mix"}}
	if t.per < 1 {
		out.Columns = append(out.Columns, "Of "+t.of())
	}
	out.Columns = append(out.Columns, "In the cup", "Reads, in seconds")
	for _, r := range t.rungs() {
		row := []any{r.name, q.ValueOf(r.share)}
		if t.per < 1 {
			row = append(row, q.ValueOf(r.share/t.per))
		}
		v := t.rule.Viscosity(r.share)
		out.Rows = append(out.Rows, append(row, q.ValueOf(t.volume(r.share)), t.readsBetween(v)))
	}
	return out
}

// rung is a share of thinner that is worth a line.
type rung struct {
	name  string
	share q.Fraction
}

// rungs are the shares worth a line, from none up; of two alike the first.
func (t *thinningOf) rungs() []rung {
	out := []rung{{"None", 0}, {"Pour first", t.advice.Pour}}
	if !t.allowed.IsZero() {
		out = append(out, rung{"Least of the recipe", t.allowed.Low}, rung{"Most of the recipe", t.allowed.High})
	} else {
		out = append(out, rung{"At the most, for what it should run", t.advice.Share.High})
	}
	slices.SortStableFunc(out, func(a, b rung) int { return cmp.Compare(a.share, b.share) })
	return slices.CompactFunc(out, func(a, b rung) bool { return max(a.share-b.share, b.share-a.share) < 1e-6 })
}

// readsBetween is what the cup reads of a viscosity that lies in a range.
func (t *thinningOf) readsBetween(v q.Range[q.Viscosity]) string {
	low, _ := t.now.Cup.Time(v.Low) // beyond its range the equation still says about how long
	high, _ := t.now.Cup.Time(v.High)
	if seconds(low) == seconds(high) {
		return seconds(low)
	}
	return seconds(low) + " to " + seconds(high)
}

func (t *thinningOf) figures() []trace.Figure {
	now := cupFigure("thick", "Viscosity now", t.now, "reads")
	wants := t.wantsFigure(now)
	share := t.shareFigure(wants)
	figures := []trace.Figure{t.volumeFigure(share), share}
	if t.per < 1 {
		figures = append(figures, t.partFigure(share))
	}
	return append(figures, t.thenFigure(share, now), wants, t.aimFigure(), now)
}

// aimFigure is how the cup should run.
func (t *thinningOf) aimFigure() trace.Figure {
	low, _ := t.now.Cup.Time(t.aim.Low)
	high, _ := t.now.Cup.Time(t.aim.High)
	formula := t.now.Cup.Formula()
	formula.Text += ", solved for t"
	return spanned(trace.Figure{
		Key: "should", Name: "It should run, in seconds", Formula: formula,
		Inputs: []trace.Input{trace.InRange("ν", "viscosity to spray at", t.aim, t.aimFrom)},
	}, []q.Number{q.Number(t.advice.Want.Time), q.Number(low), q.Number(high)})
}

// wantsFigure is how much thinner the cup wants, whatever the recipe allows.
func (t *thinningOf) wantsFigure(now trace.Figure) trace.Figure {
	f := trace.Figure{
		Key: "cup-wants", Name: "Thinner that the cup wants, share of the unthinned mix", Formula: viscosity.LogFormula,
		Inputs: []trace.Input{
			taken("ν₁", "now", now), trace.In("ν₂", "of the thinner", t.thinner, entered("thinner")), trace.InRange("ν", "to spray at", t.aim, t.aimFrom),
		},
		Remarks: []string{"For the middle of what it should run."},
	}
	if t.rule.Pull > 0 {
		f.Formula = viscosity.PullFormula
		f.Inputs = append(f.Inputs, inSecondsOf("", "it ran with thinner in it", t.tried.Time, "then"), trace.In("", "thinner in it then", t.share, entered("tried")))
	} else {
		f.Text += "; at the other end " + viscosity.IndexFormula.Text
		f.Source += ". The other end: " + viscosity.IndexFormula.Source
	}
	r := t.advice.Share
	return spanned(f, []q.Fraction{r.Middle(), r.Low, r.High})
}

var firstFormula = trace.Formula{
	Text:   "the least that the cup wants, held to what the recipe allows",
	Source: "more can follow, and none can be taken out: common practice, no published source",
	Note:   viscosity.LogFormula.Note,
}

// shareFigure is how much thinner to pour first.
func (t *thinningOf) shareFigure(wants trace.Figure) trace.Figure {
	f := trace.Figure{
		Key: "share", Name: "The same as a share of the unthinned mix", Value: q.ValueOf(t.advice.Pour), Formula: firstFormula,
		Inputs: []trace.Input{taken("", "what the cup wants", wants)},
	}
	if !t.allowed.IsZero() {
		f.Inputs = append(f.Inputs, trace.InRange("", "what the recipe allows, of the unthinned mix", t.allowed, t.from))
	}
	return f
}

var partFormula = trace.Formula{
	Text:   "share of the part = share of the mix / share that the part has of it",
	Source: mix.PercentFormula.Source,
	Note:   mix.PercentFormula.Note,
}

// partFigure is the same as the recipe counts it.
func (t *thinningOf) partFigure(share trace.Figure) trace.Figure {
	return trace.Figure{
		Key: "share-of-part", Name: "And as a share of " + t.of(), Value: q.ValueOf(t.advice.Pour / t.per), Formula: partFormula,
		Inputs: []trace.Input{taken("", "share of the unthinned mix", share), trace.In("", "share that "+t.of()+" has of it", t.per, t.noted())},
	}
}

func (t *thinningOf) volumeFigure(share trace.Figure) trace.Figure {
	return trace.Figure{
		Key: "thinner-volume", Name: "Thinner to pour first", Value: q.ValueOf(t.volume(t.advice.Pour)),
		Formula: trace.Formula{Text: "V = share × V of the mix", Source: mix.PoursFormula.Source, Note: viscosity.LogFormula.Note},
		Inputs:  []trace.Input{taken("", "share", share), trace.In("", "unthinned mix in the cup", t.amount, entered("amount"))},
	}
}

// thenFigure is what the cup may read when that is in.
func (t *thinningOf) thenFigure(share, now trace.Figure) trace.Figure {
	f := trace.Figure{Key: "then-reads", Name: "The cup may then read, in seconds", Formula: viscosity.LogFormula, Inputs: []trace.Input{
		taken("x/(1 − x)", "thinner", share), taken("ν₁", "now", now), trace.In("ν₂", "of the thinner", t.thinner, entered("thinner")),
	}}
	if t.rule.Pull > 0 {
		f.Formula = viscosity.PullFormula
	}
	f.Text += "; the cup: " + t.now.Cup.Equation
	r := t.advice.Time
	return spanned(f, []q.Number{q.Number(r.Middle()), q.Number(r.Low), q.Number(r.High)})
}
