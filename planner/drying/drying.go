// Package drying owns how long a film takes to a dryness state: in today's air,
// in air that changes over days, with a fan on it, and under heat.
//
// A note gives the time at the reference air. What paces it (water leaving,
// solvent leaving, a reaction) says how the air changes that time. All of it
// is an estimate of a ratio: a thumb on a test card has the last word.
//
// Left out are the closed room that fills with what leaves the film, the skin
// that shuts the last of it in, and the film that is warmer or colder than the
// air; for a film held at a known warmth, give the air that warmth. Late in
// drying a film feels the humidity less than free water does, and may not feel it
// at all (measured for a polymer in water, Phys. Rev. Lett. 131, 248102, 2023):
// most of the way, not all of it, goes by these figures.
package drying

import (
	"coatwright/planner/air"
	"coatwright/planner/trace"
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

// Reference returns the air that times in notes are given for: 23 C and 50 %
// relative humidity (ISO 3270, from memory), still, which is taken as 0.1 m/s
// (common practice, no published source).
func Reference() air.Air {
	return air.Air{Temperature: q.Celsius(23), Humidity: 0.5, Speed: 0.1}
}

// referenceRate is how fast water leaves in the reference air, in kg/(m2 s).
var referenceRate = Reference().Evaporation()

// WaterFormula is how Factor comes about for Evaporation.
var WaterFormula = trace.Formula{
	Text:   "t = t0 E0/E d/d0, E = (0.089 + 0.0782 v) (p_ws(t_wet) - p_w) / Y",
	Source: "Carrier (1918), as in ASHRAE Transactions 104(1A) (1998), as a ratio of two airs; the wet bulb by ASHRAE Handbook, Fundamentals (2017), ch. 1",
	Note:   "background/why-waterborne-slows-in-damp-air",
}

// SolventFormula is how Factor comes about for Solvent.
var SolventFormula = trace.Formula{
	Text:   "t = t0 (0.089 + 0.0782 v0)/(0.089 + 0.0782 v) exp(H/R (1/T - 1/T0)) d/d0",
	Source: "Clausius and Clapeyron for the vapour pressure, Carrier's bracket for the air's speed; the heat of vaporisation from memory",
	Note:   "background/temperature-and-cure",
}

// CureFormula is how Factor comes about for Cure.
var CureFormula = trace.Formula{
	Text:   "t = t0 exp(E/R (1/T - 1/T0))",
	Source: "Arrhenius, k(T2)/k(T1) = exp(E/R (1/T1 - 1/T2)); published activation energies of coatings span 29 to 77 kJ/mol",
	Note:   "background/temperature-and-cure",
}

// FormulaOf returns how a time of that pace comes about; zero for a pace that
// the air does not change.
func FormulaOf(p Pace) trace.Formula {
	switch p {
	case Evaporation:
		return WaterFormula
	case Solvent:
		return SolventFormula
	case Cure:
		return CureFormula
	}
	return trace.Formula{}
}

// Factor returns how many times as long a state paced by p takes in a as in the
// reference air. It is +Inf where nothing dries, as with water in saturated air.
func Factor(p Pace, a air.Air) float64 { return factor(p, ActivationEnergy, a) }

// factor is Factor for a cure of another activation energy.
func factor(p Pace, e q.MolarEnergy, a air.Air) float64 {
	ref := Reference()
	switch p {
	case Evaporation:
		return referenceRate / a.Evaporation()
	case Solvent:
		carried := air.MassTransfer(ref.Speed) / air.MassTransfer(a.Speed)
		return carried * slower(heatOfVaporisation, a.Temperature)
	case Cure:
		return slower(e, a.Temperature)
	}
	return 1
}

// Time returns how long a state that takes in, in the reference air and with a
// film of refBuild, takes in a with a film of build. The time goes by the film
// as Thickness says. The two films are both wet or both dry, as only their ratio
// matters; with no refBuild the film is as it should be.
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
	return in * q.Time(r.Factor(p)*Thickness(p, build, refBuild).Likely)
}
