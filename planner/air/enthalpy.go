package air

import (
	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// EnthalpyFormula is how Enthalpy comes about.
var EnthalpyFormula = trace.Formula{
	Text:   "h = 1.006 t + W (2501 + 1.86 t), in kJ/kg and C",
	Source: "ASHRAE Handbook, Fundamentals (2017), ch. 1, eq. 30",
	Note:   "background/what-the-air-holds",
}

// Enthalpy returns the heat in the air with its vapour, in J for each kg of dry
// air, counted from dry air and water at 0 C.
func (a Air) Enthalpy() float64 {
	t := a.Temperature.Celsius()
	return 1e3 * (1.006*t + a.HumidityRatio()*(2501+1.86*t))
}

// VolumeFormula is how SpecificVolume comes about.
var VolumeFormula = trace.Formula{
	Text:   "v = 0.287042 T (1 + 1.607858 W) / p, in m3/kg, K and kPa",
	Source: "ASHRAE Handbook, Fundamentals (2017), ch. 1, eq. 26",
	Note:   "background/what-the-air-holds",
}

// SpecificVolume returns the space that 1 kg of dry air takes with its vapour,
// in m3/kg.
func (a Air) SpecificVolume() float64 {
	return 0.287042 * float64(a.Temperature) * (1 + 1.607858*a.HumidityRatio()) / a.pressure().Kilopascals()
}

// Density returns the mass of a volume of the air with its vapour, in kg/m3.
// Source: ASHRAE Fundamentals (2017) ch. 1, equation 11, rho = (1 + W)/v.
func (a Air) Density() q.Density {
	return q.Density((1 + a.HumidityRatio()) / a.SpecificVolume())
}

// Vapour returns the mass of water in a volume of the air, in kg/m3.
// Source: ASHRAE Fundamentals (2017) ch. 1, absolute humidity, d = W/v.
func (a Air) Vapour() q.Concentration {
	return q.Concentration(a.HumidityRatio() / a.SpecificVolume())
}
