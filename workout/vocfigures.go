package workout

import (
	"fmt"

	"coatwright/planner/trace"
	"coatwright/planner/voc"
	q "coatwright/quantity"
)

// asSprayed is the figure of the VOC as sprayed.
func (v *vocOf) asSprayed(by trace.Formula, inputs []trace.Input) trace.Figure {
	var all []q.Concentration
	for _, l := range v.liquids {
		all = append(all, l.VOC)
	}
	return spanned(trace.Figure{Key: "as-sprayed", Name: "VOC as sprayed, water counted in", Formula: by, Inputs: inputs}, all)
}

// lessWater is the figure of the VOC less water.
func (v *vocOf) lessWater() trace.Figure {
	all := v.withoutWater()
	f := spanned(trace.Figure{Key: "less-water", Name: "VOC less water and exempt solvent", Formula: v.without, Inputs: v.less}, all)
	if heaviest := q.Concentration(liquids.High); spannedBy(all).High > heaviest {
		f.Remarks = []string{"No solvent weighs that much: the share of water cannot be right."}
	}
	return f
}

func (v *vocOf) withoutWater() []q.Concentration {
	var all []q.Concentration
	for _, l := range v.liquids {
		all = append(all, l.LessWater().High)
	}
	return all
}

// perSolids is the figure of the VOC for each litre of what stays on the part,
// by the density that the law takes for the solvents. It is not ok for a liquid
// without solids.
func (v *vocOf) perSolids() (f trace.Figure, ok bool) {
	var all []q.Concentration
	for _, less := range v.withoutWater() {
		s := voc.PerSolids(less, voc.AssumedSolvent)
		if s > maxPerSolids {
			return f, false
		}
		all = append(all, s)
	}
	f = spanned(trace.Figure{Key: "per-solids", Name: "VOC for each litre of solids", Formula: voc.PerSolidsFormula, Inputs: []trace.Input{
		taken("C", "VOC less water and exempt solvent", v.lessWater()),
		trace.In("D", "density that the law takes for solvents", voc.AssumedSolvent, trace.Origin{From: trace.FromSource}),
	}}, all)
	if v.solids > 0 {
		measured := voc.PerMeasuredSolids(v.liquids[0].VOC, v.solids)
		f.Remarks = []string{fmt.Sprintf("By the solids that are stated, %s of the volume, it is %s.", q.Show(q.Metric, v.solids), q.Show(q.Metric, measured))}
	}
	return f, true
}

// maxPerSolids is above what any paint has, in g/L: what has more is a solvent.
const maxPerSolids q.Concentration = 20e3

// emitted is the figure of what the amount mixed gives off.
func (v *vocOf) emitted(amount q.Volume) trace.Figure {
	var all []q.Mass
	for _, l := range v.liquids {
		all = append(all, l.Emitted(amount))
	}
	f := spanned(trace.Figure{Key: "emitted", Name: "Solvent that goes into the air", Formula: voc.EmittedFormula, Inputs: []trace.Input{
		taken("VOC", "as sprayed", v.figures[0]), trace.In("V", "amount mixed", amount, entered("amount")),
	}}, all)
	f.Remarks = []string{"From what misses the part as from what lands on it. What cleans the gun comes on top."}
	return f
}
