package how

import (
	"fmt"
	"strings"

	"coatwright/planner"
	"coatwright/planner/drying"
	"coatwright/planner/film"
	"coatwright/planner/library"
	"coatwright/planner/mix"
	"coatwright/planner/trace"
	"coatwright/planner/viscosity"
	"coatwright/planner/voc"
	q "coatwright/quantity"
)

// mixed explains the mix of a step that makes one.
func (e *explainer) mixed() {
	m := e.material()
	laid, ok := e.film()
	if e.step.Mix == nil || m == nil || !ok {
		return
	}
	tool := e.tool(laid)
	parts := planner.MixParts(m, e.lib, tool.Slug)
	solids, err := mix.Solids(parts)
	if err != nil {
		return
	}
	e.solids(parts, solids)
	e.pours(parts, e.need(m, tool, laid, solids))
	e.keeps(m)
	e.batches(m)
	e.air(parts)
	e.least(parts)
	e.cups(m)
}

// cups explains the seconds in each efflux cup.
func (e *explainer) cups(m *library.Material) {
	for _, c := range e.step.Mix.Cups {
		cup, err := viscosity.ParseCup(c.Cup)
		if err != nil {
			continue
		}
		low, _ := cup.Time(m.Viscosity.Low)
		high, _ := cup.Time(m.Viscosity.High)
		e.add(trace.Figure{
			Key: "cup-" + strings.ReplaceAll(strings.ToLower(c.Cup), " ", "-"), Name: "Runs out of the " + c.Cup + " cup", Value: q.ValueOf((low + high) / 2), Range: trace.SpanOf(low, high),
			Formula: cup.Formula(), Inputs: []trace.Input{trace.InRange("ν", "viscosity, ready to spray", m.Viscosity, ofMaterial(m))}, Remarks: cup.Cautions,
		}, q.ValueOf(q.Time((c.Low+c.High)/2)))
	}
}

// need explains how much mix the film takes.
func (e *explainer) need(m *library.Material, tool *library.Tool, laid planner.Step, solids q.Fraction) q.Volume {
	a, mixed := tool.Applicator, e.step.Mix
	order := film.Order{Build: m.Build, Coats: laid.Coats, Solids: solids, Loss: a.Loss, Cleanings: 1}
	var inputs []trace.Input
	for _, x := range laid.Extents {
		order.Surfaces = append(order.Surfaces, film.Surface{Area: q.Area(x.M2), Transfer: a.Transfer[x.Form]})
		inputs = append(inputs, trace.In("A", "area: "+strings.Join(x.Parts, ", "), q.Area(x.M2), ofJob("parts")),
			trace.InRange("TE", "share that lands on a "+x.Form, a.Transfer[x.Form], ofTool(tool)))
	}
	inputs = append(inputs, trace.In("DFT", "dry film of one full coat", m.Build, ofMaterial(m)), trace.In("n", "coats", q.Number(laid.Coats), ofJob("coats")),
		trace.In("VS", "solids by volume, as sprayed", solids, ofFigure("solids")), trace.In("loss", "stays in cup and passages", a.Loss, ofTool(tool)))
	takes, err := order.Need()
	if err != nil {
		return 0
	}
	off := e.lib.Words.StandingOf(m.Standing)
	f := trace.Figure{
		Key: "need", Name: "Mix that the film takes", Value: q.ValueOf(takes.Mixed().Likely), Formula: film.NeedFormula, Inputs: inputs,
		Range:   trace.SpanOf(q.Volume(mixed.LowML*1e-6), q.Volume(mixed.HighML*1e-6)),
		Remarks: []string{fmt.Sprintf("The range takes the applicator at its best and worst, and the can's figures at %.0f to %.0f %% of what the note says.", off.Amount.Low.Percent(), off.Amount.High.Percent())},
	}
	e.add(f, f.Value)
	return takes.Mixed().Likely
}

// pours explains the marks of the cup and the scale.
func (e *explainer) pours(parts []mix.Part, need q.Volume) {
	mixed := e.step.Mix
	shares, err := mix.Shares(parts)
	if err != nil {
		return
	}
	total := q.Volume(mixed.TotalML * 1e-6)
	pours, err := mix.Pours(parts, total)
	if err != nil || len(pours) != len(mixed.Lines) {
		return
	}
	e.add(trace.Figure{
		Key: "batch", Name: "One batch", Value: q.ValueOf(total), Formula: mix.BatchFormula,
		Inputs: []trace.Input{trace.In("", "mix that the film takes", need, ofFigure("need")), trace.In("", "batches", q.Number(mixed.Times()), ofFigure("batches")),
			trace.In("", "lines of the cup", q.Volume(mixed.LineML*1e-6), ofStep(e.note))},
		Remarks: []string{"The need by the number of batches, up to the next line of the cup."},
	}, q.ValueOf(total))
	for i, p := range pours {
		m, line := e.lib.Materials[p.Name], mixed.Lines[i]
		f := trace.Figure{
			Key: fmt.Sprintf("mark-%d", i+1), Name: fmt.Sprintf("Mark %d in the cup, with the %s", i+1, lower(m.Title)), Value: q.ValueOf(p.Mark), Formula: mix.PoursFormula,
			Inputs: []trace.Input{trace.In("share", "share of the mix", shares[i], ofMaterial(e.material())), trace.In("total", "one batch", total, ofFigure("batch"))},
		}
		if line.Starts {
			f.Remarks = append(f.Remarks, "The pot life starts with this pour.")
		}
		e.add(f, q.ValueOf(q.Volume(line.MarkML*1e-6)))
		e.add(trace.Figure{
			Key: fmt.Sprintf("scale-%d", i+1), Name: fmt.Sprintf("Scale after pour %d", i+1), Value: q.ValueOf(p.MarkMass), Formula: mix.PoursFormula,
			Inputs: []trace.Input{trace.In("V", "this pour", p.Volume, ofFigure(fmt.Sprintf("mark-%d", i+1))), trace.In("ρ", "density of "+m.Title, m.Density, ofMaterial(m))},
		}, q.ValueOf(q.Mass(line.MarkG*1e-3)))
	}
}

// keeps explains the pot life.
func (e *explainer) keeps(m *library.Material) {
	t := e.plan.Job.Room.Temperature
	e.add(trace.Figure{
		Key: "pot-life", Name: "Pot life in this room", Value: q.ValueOf(drying.PotLife(m.PotLife, t)), Formula: drying.PotLifeFormula,
		Inputs: []trace.Input{trace.In("t(23 C)", "pot life at 23 °C", m.PotLife, ofMaterial(m)), trace.In("T", "temperature of the room", t, ofRoom())},
	}, q.ValueOf(q.Time(e.step.Mix.PotLife*60)))
}

// batches explains how often it is mixed.
func (e *explainer) batches(m *library.Material) {
	mixed := e.step.Mix
	n := q.Number(mixed.Times())
	e.add(trace.Figure{
		Key: "batches", Name: "Batches", Value: q.ValueOf(n), Formula: mix.BatchFormula,
		Inputs:  []trace.Input{trace.In("pot life", "pot life in this room", q.Time(mixed.PotLife*60), ofFigure("pot-life")), trace.In("stand", "stand after mixing", m.Stand, ofMaterial(m))},
		Remarks: []string{"As few as are laid before their pot life ends, waits between coats counted in."},
	}, q.ValueOf(n))
}

// air explains what of the mix goes into the air.
func (e *explainer) air(parts []mix.Part) {
	liquid, err := planner.Sprayed(parts, e.lib)
	shares, err2 := mix.Shares(parts)
	if err != nil || err2 != nil {
		return
	}
	var vocs, waters []trace.Input
	for i, p := range parts {
		m := e.lib.Materials[p.Name]
		share := trace.In("v", "share of "+m.Title, shares[i], ofMaterial(e.material()))
		vocs = append(vocs, share, trace.In("VOC", "VOC of "+m.Title, m.VOC, ofMaterial(m)))
		waters = append(waters, share, trace.In("Vw", "water in "+m.Title, m.Water, ofMaterial(m)))
	}
	e.add(trace.Figure{Key: "voc", Name: "VOC as sprayed", Value: q.ValueOf(liquid.VOC), Formula: voc.BlendFormula, Inputs: vocs}, q.ValueOf(q.Concentration(e.step.Mix.VOCgPerL)))
	less := liquid.LessWater()
	f := trace.Figure{
		Key: "voc-less-water", Name: "VOC less water and exempt compounds", Value: q.ValueOf(less.Middle()), Formula: voc.LessWaterFormula,
		Inputs: append(waters, trace.In("VOC", "VOC as sprayed", liquid.VOC, ofFigure("voc"))), Remarks: e.limits(liquid),
	}
	e.add(f, q.ValueOf(q.Concentration(e.step.Mix.LessWaterGPerL)))
	mass := liquid.Emitted(q.Volume(e.step.Mix.TotalML * e.step.Mix.Times() * 1e-6))
	e.add(trace.Figure{
		Key: "voc-mass", Name: "Solvent that goes into the air, all of the mix", Value: q.ValueOf(mass), Formula: voc.EmittedFormula,
		Inputs: []trace.Input{trace.In("VOC", "VOC as sprayed", liquid.VOC, ofFigure("voc")), trace.In("V", "one batch", q.Volume(e.step.Mix.TotalML*1e-6), ofFigure("batch")), trace.In("", "batches", q.Number(e.step.Mix.Times()), ofFigure("batches"))},
	}, q.ValueOf(mass))
}

// limits sets the mix beside the law's limit for products of its kind.
func (e *explainer) limits(l voc.Liquid) []string {
	limit, ok := planner.LimitOf(e.material(), e.lib)
	if !ok {
		return nil
	}
	compared, err := voc.Compare(l, limit)
	if err != nil {
		return nil
	}
	return []string{compared.Says(q.Metric), compared.Defer}
}

// least explains the smallest mix that the scale can measure.
func (e *explainer) least(parts []mix.Part) {
	mixed, within := e.step.Mix, e.lib.Words.Limits.Parts
	if mixed.LeastML == 0 {
		return
	}
	step := q.Mass(mixed.ScaleG * 1e-3)
	least, err := mix.LeastByScale(parts, mix.Scale{Resolution: step}, within)
	density, err2 := mix.Density(parts)
	if err != nil || err2 != nil {
		return
	}
	from := ofStep(e.note)
	if e.plan.Job.Scale > 0 {
		from = trace.Origin{From: trace.FromShop, At: "scale"}
	}
	e.add(trace.Figure{
		Key: "least", Name: "Least that the scale can mix", Value: q.ValueOf(q.Volume(float64(least.Total) / float64(density))), Formula: mix.LeastFormula,
		Inputs: []trace.Input{trace.In("step", "step of the scale", step, from), trace.In("allowed error", "what the ratio may be off", within, trace.Origin{From: trace.FromDefault}), trace.In("ρ", "density of the mix", density, ofMaterial(e.material()))},
	}, q.ValueOf(q.Volume(mixed.LeastML*1e-6)))
}

func lower(s string) string { return strings.ToLower(s[:min(1, len(s))]) + s[min(1, len(s)):] }
