package quantity

import (
	"maps"
	"math"
)

// System is the units that a person measures in. It only shows: what is held
// stays in SI, and Parse takes any unit from anybody.
type System struct {
	Name  string // in an address or a setting: "us"
	Title string
	use   use
	shows shows
}

// shows are the units in which a system shows each dimension, from the smallest
// magnitude up.
type shows map[*dimension][]step

// step is a unit and the magnitude in SI from which it is used: where the unit
// before it would be rounded up to the same, as 999.5 µm to 1 mm. A mixing
// scale and a cup are read in g and mL up to ten thousand.
type step struct {
	from float64
	unit string
}

// The systems.
var (
	Metric = &System{"metric", "Metric: µm, mL, g, kPa, °C", kpa, metric}
	Bar    = &System{"bar", "Metric with bar: µm, mL, g, bar, °C", bars, with(metric, shows{
		pressure: {{0, "hPa"}, {2e3, "bar"}},
	})}
	US = &System{"us", "US: mil, fl oz, oz, psi, °F", us, with(metric, customary)}
)

var metric = shows{
	length:        {{0, "µm"}, {0.9995e-3, "mm"}, {0.9995, "m"}},
	area:          {{0, "cm²"}, {0.01, "m²"}},
	volume:        {{0, "mL"}, {9.9995e-3, "L"}, {0.9995, "m³"}},
	mass:          {{0, "g"}, {9.9995, "kg"}},
	duration:      {{0, "min"}},
	temperature:   {{0, "°C"}},
	difference:    {{0, "°C"}},
	pressure:      {{0, "Pa"}, {10e3, "kPa"}},
	speed:         {{0, "m/s"}},
	density:       {{0, "kg/L"}},
	concentration: {{0, "mg/m³"}, {0.1, "g/L"}},
	fraction:      {{0, "%"}},
	spread:        {{0, "m²/L"}},
	airFlow:       {{0, "L/min"}, {1.0 / minute, "m³/h"}},
	flow:          {{0, "mL/min"}},
	timePerArea:   {{0, "min/m²"}},
	surfaceEnergy: {{0, "mJ/m²"}},
	viscosity:     {{0, "mm²/s"}},
	molarEnergy:   {{0, "kJ/mol"}},
	vapourYield:   {{0, "L/L"}},
	perArea:       {{0, "/m²"}},
	number:        {{0, ""}},
	gloss:         {{0, "GU"}},
	grit:          {{0, ""}},
}

var customary = shows{
	length:        {{0, "mil"}, {39.95 * inch / 1000, "in"}, {35.95 * inch, "ft"}},
	area:          {{0, "in²"}, {0.5 * foot2, "ft²"}},
	volume:        {{0, "fl oz"}, {usGallon, "US gal"}, {10 * foot3, "ft³"}},
	mass:          {{0, "oz"}, {10 * pound, "lb"}},
	temperature:   {{0, "°F"}},
	difference:    {{0, "°F"}},
	pressure:      {{0, "psi"}},
	speed:         {{0, "ft/min"}},
	density:       {{0, "lb/gal"}},
	concentration: {{0, "mg/m³"}, {0.1, "lb/gal"}},
	spread:        {{0, "ft²/gal"}},
	airFlow:       {{0, "ft³/min"}},
	flow:          {{0, "fl oz/min"}},
	timePerArea:   {{0, "min/ft²"}},
	vapourYield:   {{0, "ft³/gal"}},
	perArea:       {{0, "/ft²"}},
}

// with is base with some dimensions shown in another way.
func with(base, own shows) shows {
	out := maps.Clone(base)
	maps.Copy(out, own)
	return out
}

// Systems are all of them, the first the one of who did not choose.
func Systems() []*System { return []*System{Metric, Bar, US} }

// SystemNamed is the system of that name, Metric where there is none.
func SystemNamed(name string) *System {
	for _, s := range Systems() {
		if s.Name == name {
			return s
		}
	}
	return Metric
}

// In is v as a number and the unit that s has for one of its size, not rounded.
// A kind that nobody knows stays in SI, without a unit.
func (s *System) In(v Value) (number float64, unit string) {
	d := dimensionOf[v.Of]
	if d == nil {
		return v.SI, ""
	}
	u := s.unit(d, v.SI)
	return u.fromSI(v.SI), u.name
}

// unit is the unit that s has for si of d.
func (s *System) unit(d *dimension, si float64) unit {
	steps := s.shows[d]
	for len(steps) > 1 && math.Abs(si) >= steps[1].from {
		steps = steps[1:]
	}
	u, _ := d.unit(steps[0].unit)
	return u
}

// owns reports whether people who measure in s measure in u.
func (s *System) owns(u unit) bool { return s.use&u.use != 0 }
