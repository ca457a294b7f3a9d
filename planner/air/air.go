// Package air owns what the air of a room does to a wet film: its vapour
// pressure, dew point and wet bulb, how fast water leaves into it, and what
// becomes of it when it is warmed, dried or let in from outside.
//
// The equations are those of the ASHRAE Handbook, Fundamentals (2017),
// chapter 1, in the ranges that a workshop has: -20 to 60 C near sea level. They
// take air and water vapour as ideal gases, which is good to about 0.5 %.
package air

import (
	"math"

	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// Air is the air at the part.
type Air struct {
	Temperature q.Temperature // dry bulb
	Humidity    q.Fraction    // relative; 1 is saturated
	Pressure    q.Pressure    // barometric; zero stands for 101325 Pa
	Speed       q.Speed       // along the surface
}

// StandardPressure is that of the standard atmosphere at sea level, in Pa.
// Source: ASHRAE Fundamentals (2017) ch. 1, table 1.
const StandardPressure q.Pressure = 101325

// VapourFormula is how VapourPressure comes about.
var VapourFormula = trace.Formula{
	Text:   "p_w = RH p_ws(t)",
	Source: "ASHRAE Handbook, Fundamentals (2017), ch. 1, eq. 22",
	Note:   "background/what-the-air-holds",
}

// VapourPressure returns the partial pressure of the water vapour, in Pa.
func (a Air) VapourPressure() q.Pressure {
	return q.Pressure(a.Humidity) * SaturationPressure(a.Temperature)
}

// RatioFormula is how HumidityRatio comes about.
var RatioFormula = trace.Formula{
	Text:   "W = 0.621945 p_w / (p - p_w)",
	Source: "ASHRAE Handbook, Fundamentals (2017), ch. 1, eq. 20",
	Note:   "background/what-the-air-holds",
}

// HumidityRatio returns kg of water vapour for each kg of dry air. It is +Inf
// where the vapour pressure is all of the pressure, as in steam.
func (a Air) HumidityRatio() float64 {
	return humidityRatio(a.VapourPressure(), a.pressure())
}

func (a Air) pressure() q.Pressure {
	if a.Pressure == 0 {
		return StandardPressure
	}
	return a.Pressure
}

// vapourRatio is the mass of a mole of water by that of dry air.
// Source: ASHRAE Fundamentals (2017) ch. 1, equation 20.
const vapourRatio = 0.621945

func humidityRatio(pw, p q.Pressure) float64 {
	if pw >= p {
		return math.Inf(1)
	}
	return vapourRatio * float64(pw/(p-pw))
}
