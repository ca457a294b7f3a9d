package voc

import (
	"math"

	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// poundPerGallon is 1 lb/US gal in kg/m3 (NIST SP 811: pound and US gallon).
const poundPerGallon = 0.45359237 / 3.785411784e-3

// AssumedSolvent is the density of solvents that laws assume where it is not
// measured, in kg/m3: 7.36 lb/US gal.
// Source: Fla. Admin. Code 62-296.500; 30 TAC 115.423.
const AssumedSolvent q.Density = 7.36 * poundPerGallon

// PerSolidsFormula is that of PerSolids.
var PerSolidsFormula = trace.Formula{
	Text:   "S = C/(1 - C/D), D = 7.36 lb/US gal",
	Source: "30 TAC 115.423; Fla. Admin. Code 62-296.500",
	Note:   "background/what-voc-counts",
}

// PerSolids returns the VOC for each volume of solids, in kg/m3 (g/L), of a
// liquid with lessWater of VOC less water and exempt compounds, whose solvents
// have the density solvent. It is +Inf when solvent fills all of it.
func PerSolids(lessWater q.Concentration, solvent q.Density) q.Concentration {
	solids := 1 - float64(lessWater)/float64(solvent)
	if solids <= 0 {
		return q.Concentration(math.Inf(1))
	}
	return lessWater / q.Concentration(solids)
}

// PerMeasuredSolids returns the same where the solids by volume are known:
// actual VOC over solids. It is +Inf for a liquid without solids.
func PerMeasuredSolids(actual q.Concentration, solids q.Fraction) q.Concentration {
	if solids <= 0 {
		return q.Concentration(math.Inf(1))
	}
	return actual / q.Concentration(solids)
}
