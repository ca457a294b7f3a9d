package air

import (
	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// LatentHeat returns the heat that takes 1 kg of water at t into vapour, in J/kg.
// Source: ASHRAE Fundamentals (2017) ch. 1, the term of equation 33.
func LatentHeat(t q.Temperature) float64 {
	return 1e3 * (2501 - 2.326*t.Celsius())
}

// MassTransfer returns how readily vapour is carried off a wet surface by air
// at speed v, in W/(m2 Pa): the bracket of Carrier's equation.
// Source: Carrier (1918), W = (95 + 0.425 v)(pw - pa)/Y in inch-pound units, as
// in ASHRAE Transactions 104(1A) (1998); the SI form is the ASHRAE Handbook's,
// from memory, and agrees with the conversion within 0.6 %.
func MassTransfer(v q.Speed) float64 {
	return 0.089 + 0.0782*float64(v)
}

// EvaporationFormula is how Evaporation and EvaporationFrom come about.
var EvaporationFormula = trace.Formula{
	Text:   "E = (0.089 + 0.0782 v) (p_ws(t_surface) - p_w) / Y, in kg/(m2 s), m/s, kPa and kJ/kg",
	Source: "Carrier (1918), as in ASHRAE Transactions 104(1A) (1998)",
	Note:   "background/why-waterborne-slows-in-damp-air",
}

// Evaporation returns the rate at which water leaves a wet surface that has
// cooled to its wet bulb temperature, in kg/(m2 s). It is zero in saturated air.
//
// The equation is one for free water, not for a paint film, and measured still
// pools lost 74 % of what it says (ASHRAE Transactions 104(1A), 1998). Use it
// only for the ratio between two airs. A film that still dries is liquid, so
// the surface is taken as water below 0 C also.
func (a Air) Evaporation() float64 {
	return max(0, a.EvaporationFrom(a.wetBulbOver(water)))
}

// EvaporationFrom returns the rate at which water leaves a wet surface that is
// held at t, as by a warm part or a deep pool, in kg/(m2 s). Below zero the
// surface lies under the dew point and water settles on it. What Evaporation
// says of the equation holds here too.
func (a Air) EvaporationFrom(t q.Temperature) float64 {
	pw, pa := OverWater(t), a.VapourPressure()
	return MassTransfer(a.Speed) * float64(pw-pa) / LatentHeat(t)
}
