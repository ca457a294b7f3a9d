// Package air owns what the air of a room does to a wet film: its vapour
// pressure, dew point and wet bulb, and how fast water leaves into it.
//
// The equations are those of the ASHRAE Handbook, Fundamentals (2017),
// chapter 1, in the ranges that a workshop has: -20 to 60 C near sea level.
package air

import q "coatwright/quantity"

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

// VapourPressure returns the partial pressure of the water vapour, in Pa.
func (a Air) VapourPressure() q.Pressure {
	return q.Pressure(a.Humidity) * SaturationPressure(a.Temperature)
}

// HumidityRatio returns kg of water vapour for each kg of dry air.
func (a Air) HumidityRatio() float64 {
	return humidityRatio(a.VapourPressure(), a.pressure())
}

func (a Air) pressure() q.Pressure {
	if a.Pressure == 0 {
		return StandardPressure
	}
	return a.Pressure
}

// ASHRAE Fundamentals (2017) ch. 1, equation 20.
func humidityRatio(pw, p q.Pressure) float64 {
	return 0.621945 * float64(pw/(p-pw))
}
