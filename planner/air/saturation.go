package air

import (
	"math"

	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// triplePoint is where the curves over ice and over water meet, in K. The
// Handbook parts them at 0 C, where they are apart by 0.01 %; parting them
// here keeps the curve in one piece.
const triplePoint q.Temperature = 273.16

// SaturationFormula is how SaturationPressure comes about over water.
var SaturationFormula = trace.Formula{
	Text:   "ln p_ws = C8/T + C9 + C10 T + C11 T^2 + C12 T^3 + C13 ln T, in Pa and K",
	Source: "Hyland and Wexler (1983), as in ASHRAE Handbook, Fundamentals (2017), ch. 1, eq. 6; over ice eq. 5",
	Note:   "background/what-the-air-holds",
}

// SaturationPressure returns the vapour pressure of water at t, in Pa: over ice
// up to 0.01 C, over water above. The formulas hold from -100 to 200 C.
// Source: Hyland and Wexler (1983), as in ASHRAE Fundamentals (2017) ch. 1.
func SaturationPressure(t q.Temperature) q.Pressure {
	if t < triplePoint {
		return overIce(t)
	}
	return OverWater(t)
}

// ASHRAE Fundamentals (2017) ch. 1, equation 5: ln p in Pa, T in K.
func overIce(t q.Temperature) q.Pressure {
	const (
		c1 = -5.6745359e3
		c2 = 6.3925247
		c3 = -9.6778430e-3
		c4 = 6.2215701e-7
		c5 = 2.0747825e-9
		c6 = -9.4840240e-13
		c7 = 4.1635019
	)
	T := float64(t)
	return q.Pressure(math.Exp(c1/T + c2 + c3*T + c4*T*T + c5*T*T*T + c6*T*T*T*T + c7*math.Log(T)))
}

// OverWater returns the vapour pressure over water that has not frozen, below
// 0 C also, in Pa. Weather services and most hygrometers reckon humidity by it
// at any temperature (guide of the World Meteorological Organization, from
// memory); SaturationPressure is lower there, by 10 % at -10 C.
//
// ASHRAE Fundamentals (2017) ch. 1, equation 6: ln p in Pa, T in K.
func OverWater(t q.Temperature) q.Pressure {
	const (
		c8  = -5.8002206e3
		c9  = 1.3914993
		c10 = -4.8640239e-2
		c11 = 4.1764768e-5
		c12 = -1.4452093e-8
		c13 = 6.5459673
	)
	T := float64(t)
	return q.Pressure(math.Exp(c8/T + c9 + c10*T + c11*T*T + c12*T*T*T + c13*math.Log(T)))
}
