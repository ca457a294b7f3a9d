package air

import (
	"math"

	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// WarmedFormula is how WarmedTo comes about: the pressure of the vapour stays.
var WarmedFormula = trace.Formula{
	Text:   "RH2 = RH1 p_ws(t1) / p_ws(t2), at most 100 %",
	Source: "the same water in the air: ASHRAE Handbook, Fundamentals (2017), ch. 1, eq. 20 and 22 with W and p held",
	Note:   "background/what-the-air-holds",
}

// WarmedTo returns what the air becomes when it is warmed or cooled to t with
// the water that is in it. Cooled below its dew point it stays full, and what
// it cannot hold settles.
func (a Air) WarmedTo(t q.Temperature) Air {
	a.Humidity = min(1, q.Fraction(a.VapourPressure()/SaturationPressure(t)))
	a.Temperature = t
	return a
}

// WithRatio returns a with ratio kg of water for each kg of dry air instead of
// what it holds, and fog where it cannot hold that much: air that is full over
// water, which below 0 C is a little more than full over ice.
func (a Air) WithRatio(ratio float64) Air {
	pw := a.pressure() * q.Pressure(ratio/(vapourRatio+ratio)) // equation 20 turned round
	a.Humidity = q.Fraction(min(pw, OverWater(a.Temperature)) / SaturationPressure(a.Temperature))
	return a
}

// WaterFormula is how WaterTo comes about.
var WaterFormula = trace.Formula{
	Text:   "m = (W2 - W1) / v1",
	Source: "mass balance; v by ASHRAE Handbook, Fundamentals (2017), ch. 1, eq. 26",
	Note:   "background/what-the-air-holds",
}

// WaterTo returns the water to add to each m3 of a, as it stands, so that it
// holds as much as b does, in kg/m3; below zero it is to be removed.
func (a Air) WaterTo(b Air) q.Concentration {
	return q.Concentration((b.HumidityRatio() - a.HumidityRatio()) / a.SpecificVolume())
}

// MarginFormula is how a surface is judged by OverDewPoint.
var MarginFormula = trace.Formula{
	Text:   "t_surface - t_dew >= 3 K",
	Source: "ISO 8502-4 and ISO 12944-7, as quoted by a trade article; the 3 K also by a galvanizers' manual, manual.ingal.com.au/13.php",
	Note:   "background/dew-point-and-cold-parts",
}

// OverDewPoint returns how much warmer a surface is than the dew point; below
// zero water settles on it.
func (a Air) OverDewPoint(surface q.Temperature) q.Difference {
	return q.Difference(surface - a.DewPoint())
}

// LeastSurface returns how warm a surface must be to lie so far over the dew
// point.
func (a Air) LeastSurface(over q.Difference) q.Temperature {
	return a.DewPoint() + q.Temperature(over)
}

// MostHumidity returns how humid air of this temperature may be for a surface
// to lie so far over its dew point, at most 1.
func (a Air) MostHumidity(surface q.Temperature, over q.Difference) q.Fraction {
	dew := max(coldest, surface-q.Temperature(over))
	return q.Fraction(math.Min(1, float64(SaturationPressure(dew)/SaturationPressure(a.Temperature))))
}
