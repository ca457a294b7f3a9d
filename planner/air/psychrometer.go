package air

import (
	"fmt"

	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// Reading is what the two thermometers of a whirled psychrometer show. The air
// must pass the wet one at some 3 m/s, or the equations do not hold.
type Reading struct {
	Dry, Wet q.Temperature
	Pressure q.Pressure // barometric; zero stands for StandardPressure
	Ice      bool       // the wick is frozen
}

// Psychrometer is one published form of the psychrometer's equation.
type Psychrometer struct {
	Name string
	trace.Formula
	perKelvin float64 // how much more the constant is for each C of the wet bulb
}

// The published forms. They differ by what the constant gains with the wet
// bulb's warmth: 2 % of the correction at 18 C, less than 1 % of humidity.
var (
	WithWarmth = Psychrometer{
		Name: "constant that grows with the wet bulb",
		Formula: trace.Formula{
			Text:   "e = e_s(Tw) - 0.00066 (1 + 0.00115 Tw) (T - Tw) p",
			Source: "cales.arizona.edu/azmet/dewpoint.html; coefficients as in the glossary of the American Meteorological Society, glossary.ametsoc.org/wiki/Psychrometric_formula",
			Note:   "background/reading-a-psychrometer",
		},
		perKelvin: 0.00115,
	}
	Plain = Psychrometer{
		Name: "one constant",
		Formula: trace.Formula{
			Text:   "e = e_s(Tw) - 0.00066 (T - Tw) p",
			Source: "glossary of the American Meteorological Society, glossary.ametsoc.org/wiki/Psychrometric_formula",
			Note:   "background/reading-a-psychrometer",
		},
	}
)

// The psychrometer's constant in 1/K, with water and with ice on the wick.
// Source: as WithWarmth.
const (
	overWaterWick = 6.60e-4
	overIceWick   = 5.82e-4
)

// Air returns the air that a reading stands for. The error is a *q.Error: the
// wet bulb is the warmer one, or so cold that no air is so dry.
func (p Psychrometer) Air(r Reading) (Air, error) {
	switch {
	case r.Wet > r.Dry:
		return Air{}, &q.Error{
			Found:    fmt.Sprintf("a wet bulb of %.1f °C in air of %.1f °C", r.Wet.Celsius(), r.Dry.Celsius()),
			Expected: "a wet bulb no warmer than the dry one; are the two swapped?",
		}
	case r.Ice && r.Wet > triplePoint:
		return Air{}, &q.Error{
			Found:    fmt.Sprintf("ice on a wet bulb of %.1f °C", r.Wet.Celsius()),
			Expected: "a wet bulb below 0 °C under ice",
		}
	}
	a := Air{Temperature: r.Dry, Pressure: r.Pressure}
	curve := OverWater
	if r.Ice {
		curve = overIce
	}
	e := p.vapour(r, a.pressure(), curve)
	if e < 0 {
		return Air{}, &q.Error{
			Found:    fmt.Sprintf("a wet bulb of %.1f °C in air of %.1f °C", r.Wet.Celsius(), r.Dry.Celsius()),
			Expected: fmt.Sprintf("a wet bulb of at least %.1f °C: even air without water cools it no further", a.driestWetBulb(p, r, curve).Celsius()),
		}
	}
	a.Humidity = min(1, q.Fraction(e/SaturationPressure(r.Dry)))
	return a, nil
}

// vapour is the vapour pressure of the air at pressure, with a curve for that
// of a saturated surface.
func (p Psychrometer) vapour(r Reading, pressure q.Pressure, curve func(q.Temperature) q.Pressure) q.Pressure {
	constant := overWaterWick
	if r.Ice {
		constant = overIceWick
	}
	constant *= 1 + p.perKelvin*r.Wet.Celsius()
	return curve(r.Wet) - q.Pressure(constant*float64(r.Dry-r.Wet))*pressure
}

// driestWetBulb is what the wet bulb of r would show in air without water.
func (a Air) driestWetBulb(p Psychrometer, r Reading, curve func(q.Temperature) q.Pressure) q.Temperature {
	return lowest(coldest, r.Dry, func(wet q.Temperature) bool {
		r.Wet = wet
		return p.vapour(r, a.pressure(), curve) >= 0
	})
}
