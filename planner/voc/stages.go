package voc

import (
	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// MultiStageFormula is that of MultiStage.
var MultiStageFormula = trace.Formula{
	Text:   "VOC = (VOCbc + sum VOCmc + 2 VOCcc)/(M + 3)",
	Source: "40 CFR 59.104(a)(2), the denominator from memory; (VOCbc + 2 VOCcc)/3 as in San Luis Obispo County APCD rule 423",
	Note:   "background/what-voc-counts",
}

// MultiStage returns the VOC of a topcoat made of a base coat, midcoats and a
// clear coat, each less water and exempt compounds, in g/L. The clear counts
// twice. M is the number of midcoats.
func MultiStage(base q.Concentration, mids []q.Concentration, clearCoat q.Concentration) q.Concentration {
	sum := base + 2*clearCoat
	for _, m := range mids {
		sum += m
	}
	return sum / q.Concentration(len(mids)+3)
}
