// Package drying owns how long a film takes to a dryness state in today's air.
//
// A note gives the time at the reference air. What paces it (water leaving,
// solvent leaving, a reaction) says how the air changes that time. All of it
// is an estimate of a ratio: a thumb on a test card has the last word.
package drying

import (
	"math"

	"coatwright/planner/air"
	q "coatwright/quantity"
)

// Pace is what a dryness state waits for. A state paced by anything else takes
// the same time in any air.
type Pace string

// The paces.
const (
	Evaporation Pace = "evaporation" // water leaving
	Solvent     Pace = "solvent"     // solvent leaving
	Cure        Pace = "cure"        // a reaction
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

// Reference returns the air that times in notes are given for: 23 C and 50 %
// relative humidity (ISO 3270, from memory), still, which is taken as 0.1 m/s
// (common practice, no published source).
func Reference() air.Air {
	return air.Air{Temperature: q.Celsius(23), Humidity: 0.5, Speed: 0.1}
}

// Factor returns how many times as long a state paced by p takes in a as in the
// reference air. It is +Inf where nothing dries, as with water in saturated air.
func Factor(p Pace, a air.Air) float64 {
	ref := Reference()
	switch p {
	case Evaporation:
		return ref.Evaporation() / a.Evaporation()
	case Solvent:
		carried := air.MassTransfer(ref.Speed) / air.MassTransfer(a.Speed)
		return carried * slower(heatOfVaporisation, a.Temperature)
	case Cure:
		return slower(ActivationEnergy, a.Temperature)
	}
	return 1
}

// slower is how many times as slow something with energy e in J/mol goes at t
// as at the reference temperature: Arrhenius for a reaction, Clausius and
// Clapeyron for a vapour pressure; the two have one form.
//
//	k(T2)/k(T1) = exp(E/R (1/T1 - 1/T2))
func slower(e float64, t q.Temperature) float64 {
	return math.Exp(e / gasConstant * (1/float64(t) - 1/float64(Reference().Temperature)))
}

// Time returns how long a state that takes in, in the reference air and with a
// film of refBuild, takes in a with a film of build. The time goes by the film
// in proportion where something must leave it; a cure does not depend on it.
// The two films are both wet or both dry, as only their ratio matters; with no
// refBuild the film is as it should be.
func Time(in q.Time, p Pace, a air.Air, build, refBuild q.Length) q.Time {
	return RatesIn(a).Time(in, p, build, refBuild)
}

// Rates are the factors of every pace in one air, worked out once: the wet bulb
// takes a search.
type Rates struct {
	air    air.Air
	factor map[Pace]float64
}

// RatesIn works out the factors in a.
func RatesIn(a air.Air) Rates {
	r := Rates{a, map[Pace]float64{}}
	for _, p := range []Pace{Evaporation, Solvent, Cure} {
		r.factor[p] = Factor(p, a)
	}
	return r
}

// Factor is as the function of that name says.
func (r Rates) Factor(p Pace) float64 {
	if f, ok := r.factor[p]; ok {
		return f
	}
	return 1
}

// Time is as the function of that name says.
func (r Rates) Time(in q.Time, p Pace, build, refBuild q.Length) q.Time {
	if in == 0 {
		return 0
	}
	return in * q.Time(r.Factor(p)*film(p, build, refBuild))
}

// film is how many times as much must leave the film as from the one that the
// time is given for.
func film(p Pace, build, refBuild q.Length) float64 {
	if refBuild <= 0 || (p != Evaporation && p != Solvent) {
		return 1
	}
	return float64(build / refBuild)
}

// PotLife returns how long a mix keeps at t when it keeps at23 at 23 C: by
// Arrhenius above 23 C; below, no longer than at 23 C. A mix warms itself and a
// shop warms up, so a longer life in the cold is not relied on.
func PotLife(at23 q.Time, t q.Temperature) q.Time {
	return at23 * q.Time(min(1, slower(ActivationEnergy, t)))
}
