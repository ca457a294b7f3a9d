// Package voc owns the volatile organic compounds of what is sprayed: how much
// of them a volume holds, how much less its water, and how a mix stands against
// the limit of a category.
//
// It judges nothing as allowed. Every comparison ends in Defer, and categories
// and limits come in as data. Nothing here rounds.
package voc

import (
	"fmt"
	"math"

	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// Liquid is what is in a paint, a thinner or a mix.
type Liquid struct {
	// VOC is the mass of volatile organic compounds in a volume of the whole
	// liquid, its water and exempt compounds included in the volume: the
	// "actual VOC" or "VOC of material" of a data sheet, in g/L.
	VOC q.Concentration

	// Water is its share of the volume. A range of some width says that it is
	// not well known; the zero range, that there is none.
	Water q.Range[q.Fraction]

	// Exempt is the share of the volume that is solvent which a law leaves out.
	Exempt q.Fraction

	// ExemptMass is the mass of the exempt compounds in a volume of the liquid.
	// The zero range says that only their volume is known.
	ExemptMass q.Range[q.Concentration]

	Density q.Density // zero where not known
}

// exemptDensity spans the solvents that one law or another exempts, in kg/m3;
// from memory. It is used only where their mass is not known.
var exemptDensity = q.Range[q.Density]{Low: 780, High: 1350}

// exemptMass is ExemptMass, or what the volume of the exempt compounds may weigh.
func (l Liquid) exemptMass() q.Range[q.Concentration] {
	if !l.ExemptMass.IsZero() {
		return l.ExemptMass
	}
	return q.Range[q.Concentration]{
		Low:  q.Concentration(float64(l.Exempt) * float64(exemptDensity.Low)),
		High: q.Concentration(float64(l.Exempt) * float64(exemptDensity.High)),
	}
}

// ActualFormula is that of Liquid.VOC.
var ActualFormula = trace.Formula{
	Text:   "VOC = (Wv - Ww - Wec)/V",
	Source: "South Coast AQMD, VOC calculations (aqmd.gov): VOC of material, the same as actual VOC",
	Note:   "background/what-voc-counts",
}

// LessWaterFormula is that of LessWater.
var LessWaterFormula = trace.Formula{
	Text:   "VOC = (Wv - Ww - Wec)/(V - Vw - Vec)",
	Source: "40 CFR 59.104(a)(1), its composition by EPA Method 24 (40 CFR 60, appendix A)",
	Note:   "background/what-voc-counts",
}

// LessWater returns the volatile organic compounds in a volume of what the
// liquid is without its water and exempt compounds, in g/L: the "regulatory
// VOC". It is a range where the share of water is one, and never below l.VOC.
// A liquid without VOC has none here either. Liquids that Check refuses have no
// sensible answer.
// Source: 40 CFR 59.104(a)(1); see LessWaterFormula.
func (l Liquid) LessWater() q.Range[q.Concentration] {
	with := func(water q.Fraction) q.Concentration { return perVolume(l.VOC, 1-water-l.Exempt) }
	return q.Range[q.Concentration]{Low: with(l.Water.Low), High: with(l.Water.High)}
}

// perVolume spreads a mass over the share of the volume that counts. Nothing
// stays nothing, also over no volume: water without its water.
func perVolume(mass q.Concentration, share q.Fraction) q.Concentration {
	if mass == 0 {
		return 0
	}
	return mass / q.Concentration(share)
}

// EmittedFormula is that of Emitted.
var EmittedFormula = trace.Formula{
	Text:   "m = VOC V",
	Source: "finishing guidebook 2013, appendix B: all of the VOC evaporates",
	Note:   "background/what-voc-counts",
}

// Emitted returns the volatile organic compounds that a volume of the liquid
// gives off until it is dry, in kg. All of them leave, from what misses the
// part as from what lands: so counts the EPA (finishing guidebook 2013,
// appendix B). Exempt compounds and water come on top.
func (l Liquid) Emitted(v q.Volume) q.Mass {
	return q.Mass(float64(l.VOC) * float64(v))
}

// ActualOf returns the actual VOC of a liquid whose sheet gives it only less
// water and exempt compounds: LessWaterFormula the other way round.
func ActualOf(lessWater q.Concentration, water, exempt q.Fraction) q.Concentration {
	return lessWater * q.Concentration(1-water-exempt)
}

// solventDensity spans organic solvents, in kg/m3; from memory. The laws assume
// 7.36 lb/US gal, see AssumedSolvent.
var solventDensity = q.Range[q.Density]{Low: 660, High: 1100}

// WaterLeft returns the share of the volume that solids, solvents and exempt
// compounds leave: the water of a waterborne liquid whose sheet does not state
// it. It is a range because the density of the solvents is not known. Where it
// is not even known whether the liquid holds water, the low end is zero.
func WaterLeft(actual q.Concentration, solids, exempt q.Fraction) q.Range[q.Fraction] {
	left := func(solvent q.Density) q.Fraction {
		return max(0, 1-solids-exempt-q.Fraction(float64(actual)/float64(solvent)))
	}
	return q.Range[q.Fraction]{Low: left(solventDensity.Low), High: left(solventDensity.High)}
}

// Check says what in a liquid cannot be: a share outside 0 to 100 %, water and
// exempt compounds that leave no room for the VOC, or what leaves outweighing it
// all by more than rounded figures do.
func (l Liquid) Check() error {
	switch {
	case !sound(float64(l.VOC)):
		return fmt.Errorf("found %.6g g/L of VOC; expected 0 or more", float64(l.VOC))
	case !share(l.Water.Low) || !share(l.Water.High) || l.Water.Low > l.Water.High:
		return fmt.Errorf("found water of %.6g to %.6g %%; expected 0 to 100 %% of the volume", l.Water.Low.Percent(), l.Water.High.Percent())
	case !share(l.Exempt):
		return fmt.Errorf("found exempt compounds of %.6g %%; expected 0 to 100 %% of the volume", l.Exempt.Percent())
	case l.Water.High+l.Exempt > 1 || l.Water.High+l.Exempt == 1 && l.VOC > 0:
		return fmt.Errorf("found up to %.6g %% of water and %.6g %% of exempt compounds with %.6g g/L of VOC; expected the three to share the volume",
			l.Water.High.Percent(), l.Exempt.Percent(), float64(l.VOC))
	case !sound(float64(l.ExemptMass.Low)) || !sound(float64(l.ExemptMass.High)) || l.ExemptMass.Low > l.ExemptMass.High:
		return fmt.Errorf("found exempt compounds of %.6g to %.6g g/L; expected 0 or more, the low end first", float64(l.ExemptMass.Low), float64(l.ExemptMass.High))
	case !sound(float64(l.Density)):
		return fmt.Errorf("found a density of %.6g kg/m3; expected more than 0, or 0 where it is not known", float64(l.Density))
	case l.Density > 0 && l.leaves() > (1+leeway)*l.Density:
		return fmt.Errorf("found at least %.6g g/L of VOC, water and exempt compounds in a liquid of %.6g g/L; expected no more than all of it",
			float64(l.leaves()), float64(l.Density))
	}
	return nil
}

// leeway is how far the figures of a data sheet may be rounded apart.
const leeway = 0.02

// leaves is the least that goes off from a volume of the liquid.
func (l Liquid) leaves() q.Density {
	return q.Density(l.VOC+l.exemptMass().Low) + q.Density(l.Water.Low)*WaterDensity
}

func sound(x float64) bool { return x >= 0 && !math.IsInf(x, 1) }

func share(f q.Fraction) bool { return f >= 0 && f <= 1 }
