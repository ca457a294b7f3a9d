package air

import q "coatwright/quantity"

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

// Evaporation returns the rate at which water leaves a wet surface that has
// cooled to its wet bulb temperature, in kg/(m2 s). It is zero in saturated air.
//
// The equation is one for free water, not for a paint film, and measured still
// pools lost 74 % of what it says (ASHRAE Transactions 104(1A), 1998). Use it
// only for the ratio between two airs. A film that still dries is liquid, so
// the surface is taken as water below 0 C also.
func (a Air) Evaporation() float64 {
	return max(0, a.evaporation(a.wetBulbOver(water)))
}

// evaporation is the rate for a surface at temperature t; negative where water
// settles on it.
func (a Air) evaporation(t q.Temperature) float64 {
	pw, pa := overWater(t), a.VapourPressure()
	return MassTransfer(a.Speed) * float64(pw-pa) / LatentHeat(t)
}
