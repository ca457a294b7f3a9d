package quantity

import (
	"math"
	"slices"
	"strconv"
	"strings"
)

// System is the units that a person measures in. It only shows: what is held
// stays in SI, and Parse takes any unit from anybody.
type System struct {
	Name  string // in an address or a setting: "us"
	Title string
	shows map[string][]step
}

// step is a unit that a system shows from a magnitude on, in SI.
type step struct {
	from   float64
	unit   string
	factor float64
	offset float64
}

// The systems.
var (
	Metric = &System{"metric", "Metric: µm, mL, g, kPa, °C", metric}
	Bar    = &System{"bar", "Metric with bar: µm, mL, g, bar, °C", with(metric, "pressure", steps(pressure, "hPa", 2000.0, "bar"))}
	US     = &System{"us", "US: mil, fl oz, oz, psi, °F", us}
)

// Systems are all of them, the first the one of who did not choose.
func Systems() []*System { return []*System{Metric, Bar, US} }

// SystemNamed is the system of that name, Metric where there is none.
func SystemNamed(name string) *System {
	if i := slices.IndexFunc(Systems(), func(s *System) bool { return s.Name == name }); i >= 0 {
		return Systems()[i]
	}
	return Metric
}

var metric = map[string][]step{
	length.kind():        steps(length, "µm", 0.9995e-3, "mm", 0.9995, "m"),
	area.kind():          steps(area, "cm²", 0.01, "m²"),
	volume.kind():        steps(volume, "mL", 9.995e-3, "L", 0.9995, "m³"),
	mass.kind():          steps(mass, "g", 9.995, "kg"),
	temperature.kind():   steps(temperature, "°C"),
	difference.kind():    steps(difference, "°C"),
	pressure.kind():      steps(pressure, "Pa", 10e3, "kPa"),
	speed.kind():         steps(speed, "m/s"),
	density.kind():       steps(density, "kg/L"),
	concentration.kind(): steps(concentration, "mg/m³", 0.1, "g/L"),
	fraction.kind():      steps(fraction, "%"),
	spread.kind():        steps(spread, "m²/L"),
	flow.kind():          steps(flow, "mL/min"),
	airFlow.kind():       steps(airFlow, "L/min", 0.0166, "m³/h"),
	timePerArea.kind():   steps(timePerArea, "min/m²"),
	surfaceEnergy.kind(): steps(surfaceEnergy, "mJ/m²"),
	viscosity.kind():     steps(viscosity, "mm²/s"),
	molarEnergy.kind():   steps(molarEnergy, "kJ/mol"),
	vapourYield.kind():   steps(vapourYield, "L/L"),
	perArea.kind():       steps(perArea, "/m²"),
	number.kind():        steps(number, ""),
	gloss.kind():         steps(gloss, "GU"),
	grit.kind():          steps(grit, ""),
}

var us = func() map[string][]step {
	m := metric
	for _, own := range []struct {
		of    dimension
		steps []step
	}{
		{length, steps(length, "mil", 39.95*inch/1000, "in", 0.9995*3*foot, "ft")},
		{area, steps(area, "in²", 0.5*foot*foot, "ft²")},
		{volume, steps(volume, "fl oz", 0.9995*usGallon, "US gal", 10*foot*foot*foot, "ft³")},
		{mass, steps(mass, "oz", 9.995*pound, "lb")},
		{temperature, steps(temperature, "°F")},
		{difference, steps(difference, "°F")},
		{pressure, steps(pressure, "psi")},
		{speed, steps(speed, "ft/min")},
		{density, steps(density, "lb/gal")},
		{concentration, steps(concentration, "mg/m³", 0.1, "lb/gal")},
		{spread, steps(spread, "ft²/gal")},
		{flow, steps(flow, "fl oz/min")},
		{airFlow, steps(airFlow, "ft³/min")},
		{timePerArea, steps(timePerArea, "min/ft²")},
		{vapourYield, steps(vapourYield, "ft³/gal")},
		{perArea, steps(perArea, "/ft²")},
	} {
		m = with(m, own.of.kind(), own.steps)
	}
	return m
}()

// with is shows with another choice for one kind.
func with(shows map[string][]step, kind string, own []step) map[string][]step {
	out := map[string][]step{}
	for k, s := range shows {
		out[k] = s
	}
	out[kind] = own
	return out
}

// steps are units of d from nothing on, each but the first after the magnitude
// in SI from which it is used.
func steps(d dimension, first string, rest ...any) []step {
	out := []step{stepOf(d, 0, first)}
	for i := 0; i+1 < len(rest); i += 2 {
		out = append(out, stepOf(d, rest[i].(float64), rest[i+1].(string)))
	}
	return out
}

func stepOf(d dimension, from float64, name string) step {
	i := slices.IndexFunc(d.units, func(u unit) bool { return u.name == name })
	return step{from, name, d.units[i].factor, d.units[i].offset}
}

// Show writes v to three figures, in the unit that s has for one of its size:
// "15 µm", "0.59 mil". A time is said as a painter would.
func (s *System) Show(v Value) string {
	if v.Of == duration.kind() {
		return Time(v.SI).String()
	}
	number, unit := s.In(v)
	return joined(three(number), unit)
}

// Show writes a quantity as s.Show does.
func Show[Q Quantity](s *System, v Q) string { return s.Show(ValueOf(v)) }

// ShowRange writes "5 to 10 %".
func ShowRange[Q Quantity](s *System, r Range[Q]) string {
	low, unit := s.In(ValueOf(r.Low))
	high, highUnit := s.In(ValueOf(r.High))
	if unit != highUnit || r.Low == r.High {
		if r.Low == r.High {
			return Show(s, r.Low)
		}
		return Show(s, r.Low) + " to " + Show(s, r.High)
	}
	return joined(three(low)+" to "+three(high), unit)
}

// In is v as a number and the unit that s has for one of its size. A kind that
// s does not list stays in SI.
func (s *System) In(v Value) (number float64, unit string) {
	choice := step{factor: 1}
	for _, c := range s.shows[v.Of] {
		if math.Abs(v.SI) >= c.from {
			choice = c
		}
	}
	return v.SI/choice.factor - choice.offset, choice.unit
}

// joined puts a unit behind a number.
func joined(number, unit string) string {
	if strings.HasPrefix(unit, "/") {
		return number + unit
	}
	return strings.TrimSpace(number + " " + unit)
}

// three writes x to three figures, whole numbers in full.
func three(x float64) string {
	digits := 2
	for m := math.Abs(x); m >= 9.995 && digits > 0; m /= 10 {
		digits--
	}
	if m := math.Abs(x); m != 0 && m < 0.9995 {
		digits = 2 - int(math.Floor(math.Log10(m)+1e-9))
	}
	if digits > 12 {
		return "0"
	}
	text := strconv.FormatFloat(x, 'f', digits, 64)
	if strings.Contains(text, ".") {
		text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	}
	if text == "-0" {
		return "0"
	}
	return text
}
