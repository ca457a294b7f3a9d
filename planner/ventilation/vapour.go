package ventilation

import (
	"errors"
	"fmt"
	"math"

	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// Vapour is what solvents make when they leave.
type Vapour struct {
	LEL   q.Fraction    // lower explosive limit: the least share of the air that burns
	Yield q.VapourYield // volume of vapour from a volume of liquid, at the room's temperature
}

// MolarMass is in kg/mol.
type MolarMass float64

const (
	gasConstant = 8.314462618 // J/(mol K); CODATA 2018, exact

	// The tables of vapour yields are for 70 F and, as taken here, the standard
	// atmosphere: 29 CFR 1910.94(c)(6)(ii), from memory.
	tableTemperature q.Temperature = 294.26 // K
	standardPressure q.Pressure    = 101325 // Pa
)

// YieldFormula is that of YieldOf.
var YieldFormula = trace.Formula{
	Text:   "v = (rho/M) R T/p at 70 F and 101325 Pa",
	Source: "ideal gas; agrees with 29 CFR 1910.94(c)(6)(ii), table G-11, column 1 (from memory), within 2 % for most solvents",
	Note:   "background/how-vapour-burns",
}

// YieldOf returns the volume of vapour that a volume of liquid makes at 70 F
// (21 C) and sea level, by the ideal gas law, from its density and molar mass.
func YieldOf(liquid q.Density, m MolarMass) q.VapourYield {
	return q.VapourYield(float64(liquid) / float64(m) * gasConstant * float64(tableTemperature) / float64(standardPressure))
}

// Solvent is a volume of a liquid that evaporates whole.
type Solvent struct {
	Name   string
	Volume q.Volume // or parts by volume: only the ratios matter
	Vapour
}

// BlendFormula is that of the LEL in Blend.
var BlendFormula = trace.Formula{
	Text:   "LEL = 1/sum(x/LEL), x the share of the vapour",
	Source: "Le Chatelier, Annales des Mines (1891) 388-395, as given by chemeurope.com, Flammability limit",
	Note:   "background/how-vapour-burns",
}

// Blend returns the vapour of solvents that evaporate together: the mean of
// their yields, weighted by volume, and the LEL by Le Chatelier's rule, in which
// each counts by its share of the vapour, not of the liquid. Solvents that leave
// one after the other make other vapours on the way, some with a lower LEL.
// What does not burn is left out. It is an error when the LEL or the yield of a
// solvent is not known, or when there are none.
// Source: see BlendFormula.
func Blend(solvents []Solvent) (Vapour, error) {
	var liquid q.Volume
	var vapour, limits float64
	for i, s := range solvents {
		if !sound(float64(s.Volume)) {
			return Vapour{}, fmt.Errorf("solvent %d, %q: found a volume of %g; expected 0 or more", i+1, s.Name, float64(s.Volume))
		}
		if s.Volume == 0 {
			continue
		}
		if err := s.check(); err != nil {
			return Vapour{}, fmt.Errorf("solvent %d, %q: %w", i+1, s.Name, err)
		}
		v := float64(s.Volume) * float64(s.Yield)
		liquid, vapour, limits = liquid+s.Volume, vapour+v, limits+v/float64(s.LEL)
	}
	if liquid == 0 {
		return Vapour{}, errors.New("no solvent evaporates; expected at least one volume above 0")
	}
	return Vapour{q.Fraction(vapour / limits), q.VapourYield(vapour / float64(liquid))}, nil
}

// check refuses a vapour of which too little is known.
func (v Vapour) check() error {
	if !(v.LEL > 0 && v.LEL < 1) {
		return fmt.Errorf("found a lower explosive limit of %.6g %%; expected a share of the air between 0 and 100 %%", v.LEL.Percent())
	}
	if !(v.Yield > 0) || math.IsInf(float64(v.Yield), 1) {
		return fmt.Errorf("found %.6g volumes of vapour from a volume of liquid; expected more than 0", float64(v.Yield))
	}
	return nil
}
