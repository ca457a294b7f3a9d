package quantity

import (
	"cmp"
	"math"
	"strconv"
	"strings"

	"coatwright/nearest"
)

// dimension names what a quantity measures and the units it is written in.
type dimension struct {
	name    string
	example string
	units   []unit
}

// unit turns a written number into SI: si = (number + offset) * factor.
type unit struct {
	name   string
	factor float64
	offset float64
}

// Exact by definition: inch, foot, US gallon, pound and ounce
// (NIST SP 811, appendix B); psi follows from them and standard gravity.
const (
	inch     = 0.0254
	foot     = 12 * inch
	usGallon = 231 * inch * inch * inch
	pound    = 0.45359237
	psi      = pound * 9.80665 / (inch * inch)
)

var (
	length = dimension{"a length", "15 um", []unit{
		{"um", 1e-6, 0}, {"µm", 1e-6, 0}, {"mil", inch / 1000, 0}, {"mm", 1e-3, 0},
		{"cm", 1e-2, 0}, {"m", 1, 0}, {"in", inch, 0}, {"ft", foot, 0}}}
	area = dimension{"an area", "0.55 m2", []unit{
		{"m2", 1, 0}, {"m²", 1, 0}, {"dm2", 1e-2, 0}, {"cm2", 1e-4, 0}, {"ft2", foot * foot, 0}, {"in2", inch * inch, 0}}}
	volume = dimension{"a volume", "250 mL", []unit{
		{"mL", 1e-6, 0}, {"ml", 1e-6, 0}, {"L", 1e-3, 0}, {"l", 1e-3, 0},
		{"fl oz", usGallon / 128, 0}, {"US gal", usGallon, 0}}}
	mass = dimension{"a mass", "40 g", []unit{
		{"g", 1e-3, 0}, {"kg", 1, 0}, {"oz", pound / 16, 0}, {"lb", pound, 0}}}
	duration = dimension{"a time", "20 min", []unit{
		{"s", 1, 0}, {"min", 60, 0}, {"h", 3600, 0}, {"d", 86400, 0}}}
	temperature = dimension{"a temperature", "23 C", []unit{
		{"C", 1, 273.15}, {"°C", 1, 273.15}, {"K", 1, 0}, {"F", 5.0 / 9, 459.67}, {"°F", 5.0 / 9, 459.67}}}
	pressure = dimension{"a pressure", "200 kPa", []unit{
		{"kPa", 1e3, 0}, {"bar", 1e5, 0}, {"psi", psi, 0}, {"Pa", 1, 0}}}
	speed = dimension{"an air speed", "0.3 m/s", []unit{
		{"m/s", 1, 0}, {"ft/min", foot / 60, 0}, {"km/h", 1 / 3.6, 0}}}
	density = dimension{"a density", "1.2 kg/L", []unit{
		{"kg/L", 1e3, 0}, {"g/L", 1, 0}, {"g/mL", 1e3, 0}, {"kg/m3", 1, 0}, {"lb/gal", pound / usGallon, 0}}}
	fraction = dimension{"a percentage", "35 %", []unit{{"%", 0.01, 0}}}
	spread   = dimension{"a spreading rate", "10 m2/L", []unit{
		{"m2/L", 1e3, 0}, {"m²/L", 1e3, 0}, {"ft2/gal", foot * foot / usGallon, 0}}}
	flow = dimension{"a flow", "150 mL/min", []unit{
		{"mL/min", 1e-6 / 60, 0}, {"L/min", 1e-3 / 60, 0}}}
	timePerArea = dimension{"a time per area", "12 min/m2", []unit{
		{"min/m2", 60, 0}, {"min/m²", 60, 0}, {"h/m2", 3600, 0}, {"min/ft2", 60 / (foot * foot), 0}}}
	surfaceEnergy = dimension{"a surface energy", "38 mJ/m2", []unit{
		{"mJ/m2", 1e-3, 0}, {"mN/m", 1e-3, 0}, {"dyn/cm", 1e-3, 0}}}
	gloss = dimension{"a gloss at 60 degrees", "85 GU", []unit{{"GU", 1, 0}, {"", 1, 0}}}
	grit  = dimension{"a P-grit number", "320", []unit{{"", 1, 0}}}
)

// Parse reads one quantity such as "15 um" or "74 F" into SI. Nothing that is
// measured here can be below zero, a temperature below absolute zero.
// The error is an *Error.
func Parse[Q Quantity](s string) (Q, error) {
	var q Q
	number, unit := split(s)
	v, err := convert(s, number, unit, q.dimension())
	return Q(v), err
}

// ParseRange reads "5..10 %", or a single quantity as a range of no width.
// The low end must not exceed the high end. The error is an *Error.
func ParseRange[Q Quantity](s string) (Range[Q], error) {
	low, high, found := strings.Cut(s, "..")
	if !found {
		v, err := Parse[Q](s)
		return Range[Q]{v, v}, err
	}
	var q Q
	d := q.dimension()
	number, unit := split(high)
	h, err := convert(s, number, unit, d)
	if err != nil {
		return Range[Q]{}, err
	}
	lowNumber, extra := split(low)
	if extra != "" {
		return Range[Q]{}, &Error{Found: s, Expected: "the unit once, after the high end"}
	}
	l, err := convert(s, lowNumber, unit, d)
	if err != nil {
		return Range[Q]{}, err
	}
	if l > h {
		turned := strings.TrimSpace(number + ".." + lowNumber + " " + unit)
		return Range[Q]{}, &Error{Found: s, Expected: "a range with its low end first, such as " + strconv.Quote(turned)}
	}
	return Range[Q]{Q(l), Q(h)}, nil
}

// convert turns a number and the name of its unit into SI. They are part of
// the text found, which the error shows.
func convert(found, number, name string, d dimension) (float64, error) {
	v, err := strconv.ParseFloat(number, 64)
	if err != nil {
		return 0, &Error{Found: found, Expected: d.name + " such as " + strconv.Quote(d.example)}
	}
	for _, u := range d.units {
		if u.name != name {
			continue
		}
		si := (v + u.offset) * u.factor
		if si < 0 || math.IsInf(si, 0) {
			return 0, &Error{Found: found, Expected: d.name + " of zero or more, such as " + strconv.Quote(d.example)}
		}
		return si, nil
	}
	names := make([]string, len(d.units))
	for i, u := range d.units {
		names[i] = cmp.Or(u.name, "no unit")
	}
	e := &Error{Found: found, Expected: d.name + " in one of: " + strings.Join(names, ", ")}
	if n := nearest.To(name, names); n != "" {
		e.Nearest = strings.TrimSuffix(strings.TrimSpace(found), name) + n
	}
	return 0, e
}

// split parts "15 um" into its number and its unit. A comma goes with the
// number, which then is none: better than to read "1,5" as 1.
func split(s string) (number, unit string) {
	s = strings.TrimSpace(s)
	i := 0
	for i < len(s) && strings.IndexByte("+-.,0123456789", s[i]) >= 0 {
		i++
	}
	return s[:i], strings.TrimSpace(s[i:])
}
