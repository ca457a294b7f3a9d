package compressor

import (
	"coatwright/planner/air"
	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// dryAir is the gas constant of dry air, in J/(kg K).
// Source: ASHRAE Fundamentals (2017) ch. 1, equation 1.
const dryAir = 287.042

// WaterFormula is that of Condensed.
var WaterFormula = trace.Formula{
	Text:   "m = (p - pw) V/(R T) (W - Ws), Ws of saturated air at the tank's pressure and temperature",
	Source: "mass balance of the water, with the humidity ratios of ASHRAE Fundamentals (2017) ch. 1",
	Note:   "background/water-in-compressed-air",
}

// Condensed returns the water that settles out of a volume of free air, drawn in
// as a says, once it is in a tank at an absolute pressure and has cooled to the
// tank's temperature. It is zero where the tank holds all of it as vapour.
// What stays as vapour is at its dew point: it settles in the line when that is
// colder than the tank.
// Source: see WaterFormula.
func Condensed(a air.Air, free q.Volume, pressure q.Pressure, tank q.Temperature) q.Mass {
	if air.SaturationPressure(tank) >= pressure {
		return 0 // as warm as water boils at this pressure
	}
	saturated := air.Air{Temperature: tank, Humidity: 1, Pressure: pressure}
	settles := max(0, a.HumidityRatio()-saturated.HumidityRatio())
	return q.Mass(dryMass(a, free) * settles)
}

// dryMass is the dry air in a volume of moist air, in kg.
// Source: ASHRAE Fundamentals (2017) ch. 1, the ideal gas equation of dry air.
func dryMass(a air.Air, v q.Volume) float64 {
	room := Tank{Atmosphere: a.Pressure}.atmosphere()
	return float64(room-a.VapourPressure()) * float64(v) / (dryAir * float64(a.Temperature))
}

// Drains returns the water that settles in the tank of a compressor in an hour,
// in kg (a kilogram is a litre), when the pump runs for a share of it. The air is
// that of the room, at the compressor's atmosphere; the tank is at its highest
// pressure, where most settles. Drain it at least as often as that matters:
// what is left in the tank rusts it, and goes on to the gun.
func (c Compressor) Drains(a air.Air, tank q.Temperature, running q.Fraction) q.Mass {
	const hour = 3600 // s
	a.Pressure = c.atmosphere()
	drawn := q.Volume(float64(c.Delivers) * hour * float64(running))
	return Condensed(a, drawn, c.CutOut+c.atmosphere(), tank)
}
