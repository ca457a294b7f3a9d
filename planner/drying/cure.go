package drying

import (
	"errors"
	"fmt"
	"math"

	"coatwright/planner/trace"
	q "coatwright/quantity"
)

const (
	// ActivationEnergy is how strongly cure feels temperature, in J/mol.
	// Published values span 29 to 77 kJ/mol (two-component fluorinated coating,
	// 7.0 kcal/mol; aromatic isocyanate and polyol), so that twice as fast for
	// each 10 C, which this value gives, is the middle of a range and not a law.
	ActivationEnergy = 50e3

	leastActivationEnergy = 29e3 // J/mol, see ActivationEnergy
	mostActivationEnergy  = 77e3 // J/mol, see ActivationEnergy

	// heatOfVaporisation stands for all solvents, in J/mol. It is near that of
	// n-butyl acetate; value from memory, no source looked up.
	heatOfVaporisation = 43e3

	// gasConstant is R in J/(mol K). Source: CODATA 2018, exact.
	gasConstant = 8.314462618
)

// Energies are the published ends of ActivationEnergy.
func Energies() q.Range[q.MolarEnergy] {
	return q.Range[q.MolarEnergy]{Low: leastActivationEnergy, High: mostActivationEnergy}
}

// Faster returns how many times as fast a reaction goes at one temperature as at
// another.
//
//	k(T2)/k(T1) = exp(E/R (1/T1 - 1/T2))
func Faster(e q.MolarEnergy, from, to q.Temperature) float64 {
	return math.Exp(float64(e) / gasConstant * (1/float64(from) - 1/float64(to)))
}

// slower is how many times as slow something with energy e goes at t as at the
// reference temperature: Arrhenius for a reaction, Clausius and Clapeyron for a
// vapour pressure; the two have one form.
func slower(e q.MolarEnergy, t q.Temperature) float64 {
	return Faster(e, t, Reference().Temperature)
}

// Estimate is a time and the ends of what it may turn out.
type Estimate struct{ Low, Likely, High q.Time }

// overEnergies works out a time for the likely energy and for both published
// ends, any of which may be the longest: what feels warmth least gains least in
// heat, and loses least in the cold before it. An energy that is known stands
// alone.
func overEnergies(known q.MolarEnergy, of func(q.MolarEnergy) q.Time) Estimate {
	if known > 0 {
		t := of(known)
		return Estimate{t, t, t}
	}
	least, likely, most := of(leastActivationEnergy), of(ActivationEnergy), of(mostActivationEnergy)
	return Estimate{min(least, likely, most), likely, max(least, likely, most)}
}

// EquivalentFormula is how Equivalent comes about.
var EquivalentFormula = trace.Formula{
	Text:   "t(23 C) = t exp(E/R (1/T0 - 1/T))",
	Source: CureFormula.Source,
	Note:   "background/forced-drying",
}

// Equivalent returns how long at 23 C cures a film as far as so long at t does.
// The range is wide, for so is that of the published energies: it compares two
// bakes of one film, and does not stand for a data sheet.
func Equivalent(held q.Time, t q.Temperature) Estimate {
	return overEnergies(0, func(e q.MolarEnergy) q.Time {
		return held * q.Time(Faster(e, Reference().Temperature, t))
	})
}

// EnergyFormula is how EnergyOf comes about: CureFormula, turned round.
var EnergyFormula = trace.Formula{
	Text:   "E = R ln(t1/t2) / (1/T1 - 1/T2)",
	Source: CureFormula.Source,
	Note:   "background/temperature-and-cure",
}

// Cured is a time that a data sheet gives to one state at one temperature.
type Cured struct {
	In q.Time
	At q.Temperature
}

// EnergyOf returns the activation energy that two times of one data sheet to the
// same state speak for, such as 7 d at 23 C and 40 min at 60 C.
func EnergyOf(cold, warm Cured) (q.MolarEnergy, error) {
	if cold.At > warm.At {
		cold, warm = warm, cold
	}
	if cold.In <= 0 || warm.In <= 0 {
		return 0, errors.New("found a cure that takes no time; expected two times above 0")
	}
	if warm.At-cold.At < 1 {
		return 0, fmt.Errorf("found two times at %.1f and %.1f °C; expected temperatures at least 1 K apart", cold.At.Celsius(), warm.At.Celsius())
	}
	if cold.In <= warm.In {
		return 0, fmt.Errorf("found %s at %.1f °C and %s at %.1f °C; expected the warmer cure to be the shorter", span(cold.In), cold.At.Celsius(), span(warm.In), warm.At.Celsius())
	}
	return q.MolarEnergy(gasConstant * math.Log(float64(cold.In/warm.In)) / (1/float64(cold.At) - 1/float64(warm.At))), nil
}

// PotLifeFormula is how PotLife comes about.
var PotLifeFormula = trace.Formula{
	Text:   "t = t(23 C) min(1, exp(E/R (1/T - 1/T0)))",
	Source: "Arrhenius; \"for every 10 degrees C rise in temperature, pot life is reduced by approximately half\", US guide specification UFGS-09971",
	Note:   "background/temperature-and-cure",
}

// PotLife returns how long a mix keeps at t when it keeps at23 at 23 C: by
// Arrhenius above 23 C; below, no longer than at 23 C. A mix warms itself and a
// shop warms up, so a longer life in the cold is not relied on.
func PotLife(at23 q.Time, t q.Temperature) q.Time {
	return at23 * q.Time(min(1, slower(ActivationEnergy, t)))
}
