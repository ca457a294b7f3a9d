package air

import (
	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// coldest is where the formulas for saturation begin, -100 C in K. Air so dry
// that its dew point lies below is given this one.
const coldest q.Temperature = 173.15

// hottest is where they end, 200 C in K.
const hottest q.Temperature = 473.15

// DewPointFormula is how DewPoint comes about.
var DewPointFormula = trace.Formula{
	Text:   "p_ws(t_dew) = RH p_ws(t)",
	Source: "ASHRAE Handbook, Fundamentals (2017), ch. 1, eq. 5 and 6",
	Note:   "background/dew-point-and-cold-parts",
}

// DewPoint returns the temperature at which water (below 0 C, frost) begins to
// settle on a surface, in K.
func (a Air) DewPoint() q.Temperature {
	pw := a.VapourPressure()
	return lowest(coldest, hottest, func(t q.Temperature) bool { return SaturationPressure(t) >= pw })
}

// WetBulbFormula is how WetBulb comes about above 0 C.
var WetBulbFormula = trace.Formula{
	Text:   "W = ((2501 - 2.326 t*) Ws* - 1.006 (t - t*)) / (2501 + 1.86 t - 4.186 t*)",
	Source: "ASHRAE Handbook, Fundamentals (2017), ch. 1, eq. 33; over ice eq. 35",
	Note:   "background/why-waterborne-slows-in-damp-air",
}

// WetBulb returns the thermodynamic wet bulb temperature in K: what a wet
// surface cools to when nothing else warms it. Below 0 C the surface is ice.
func (a Air) WetBulb() q.Temperature {
	if t := a.wetBulbOver(water); t.Celsius() >= 0 {
		return t
	}
	return a.wetBulbOver(ice)
}

// A wetting is what covers the wet bulb: the saturation pressure over it at t
// and the humidity ratio of air at dry bulb t (C) that cools it to tw (C), where
// saturated air has the humidity ratio ws.
type wetting struct {
	saturation    func(t q.Temperature) q.Pressure
	humidityRatio func(t, tw, ws float64) float64
}

// ASHRAE Fundamentals (2017) ch. 1, equations 33 and 35.
var (
	water = wetting{OverWater, func(t, tw, ws float64) float64 {
		return ((2501-2.326*tw)*ws - 1.006*(t-tw)) / (2501 + 1.86*t - 4.186*tw)
	}}
	ice = wetting{overIce, func(t, tw, ws float64) float64 {
		return ((2830-0.24*tw)*ws - 1.006*(t-tw)) / (2830 + 1.86*t - 2.1*tw)
	}}
)

// wetBulbOver is the wet bulb temperature of a surface that stays water, or
// stays ice, on both sides of 0 C.
func (a Air) wetBulbOver(s wetting) q.Temperature {
	w, p := a.HumidityRatio(), a.pressure()
	return lowest(coldest, a.Temperature, func(tw q.Temperature) bool {
		ws := humidityRatio(s.saturation(tw), p)
		return s.humidityRatio(a.Temperature.Celsius(), tw.Celsius(), ws) >= w
	})
}

// lowest returns the lowest temperature in low..high at which reached is true,
// to within 1e-9 K, and high itself when there is none. Where reached is true
// it must stay so above.
func lowest(low, high q.Temperature, reached func(q.Temperature) bool) q.Temperature {
	for high-low > 1e-9 {
		if middle := (low + high) / 2; reached(middle) {
			high = middle
		} else {
			low = middle
		}
	}
	return high
}
