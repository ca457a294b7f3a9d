package quantity

import "strings"

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
	use    use
}

func (u unit) toSI(number float64) float64 { return (number + u.offset) * u.factor }
func (u unit) fromSI(si float64) float64   { return si/u.factor - u.offset }

// use is the systems in which people measure in a unit.
type use uint8

const (
	kpa  use = 1 << iota // Metric
	bars                 // Bar
	us                   // US
	si   = kpa | bars
	all  = si | us
)

// kind is what a dimension measures without its article: "length".
func (d *dimension) kind() string {
	_, kind, _ := strings.Cut(d.name, " ")
	return kind
}

// unit is the unit of d of that name.
func (d *dimension) unit(name string) (unit, bool) {
	for _, u := range d.units {
		if u.name == name {
			return u, true
		}
	}
	return unit{}, false
}

// Exact by definition: inch, foot, US gallon, pound and ounce
// (NIST SP 811, appendix B); psi follows from them and standard gravity.
const (
	inch     = 0.0254
	inch2    = inch * inch
	foot     = 12 * inch
	foot2    = foot * foot
	foot3    = foot * foot2
	usGallon = 231 * inch * inch2
	usOunce  = usGallon / 128 // of a fluid
	pound    = 0.45359237
	psi      = pound * 9.80665 / inch2
)

// inchMercury is the conventional inch of mercury, in Pa (NIST SP 811,
// appendix B.8).
const inchMercury = 3386.389

// In s.
const (
	minute = 60
	hour   = 60 * minute
	day    = 24 * hour
)

var (
	length = &dimension{"a length", "15 um", []unit{
		{"um", 1e-6, 0, si}, {"µm", 1e-6, 0, si}, {"mil", inch / 1000, 0, us}, {"mm", 1e-3, 0, si},
		{"cm", 1e-2, 0, si}, {"m", 1, 0, si}, {"in", inch, 0, us}, {"ft", foot, 0, us},
	}}
	area = &dimension{"an area", "0.55 m2", []unit{
		{"m2", 1, 0, si}, {"m²", 1, 0, si}, {"dm2", 1e-2, 0, si}, {"cm2", 1e-4, 0, si}, {"cm²", 1e-4, 0, si},
		{"ft2", foot2, 0, us}, {"ft²", foot2, 0, us}, {"in2", inch2, 0, us}, {"in²", inch2, 0, us},
	}}
	volume = &dimension{"a volume", "250 mL", []unit{
		{"mL", 1e-6, 0, si}, {"ml", 1e-6, 0, si}, {"L", 1e-3, 0, si}, {"l", 1e-3, 0, si},
		{"fl oz", usOunce, 0, us}, {"US pt", usGallon / 8, 0, us}, {"US qt", usGallon / 4, 0, us}, {"US gal", usGallon, 0, us},
		{"m3", 1, 0, si}, {"m³", 1, 0, si}, {"ft3", foot3, 0, us}, {"ft³", foot3, 0, us},
	}}
	// Prose says ounces of weight and of fluid, and nobody can tell which, so
	// no system takes them for foreign.
	mass = &dimension{"a mass", "40 g", []unit{
		{"g", 1e-3, 0, si}, {"kg", 1, 0, si}, {"oz", pound / 16, 0, all}, {"lb", pound, 0, us},
	}}
	duration = &dimension{"a time", "20 min", []unit{
		{"s", 1, 0, all}, {"min", minute, 0, all}, {"h", hour, 0, all}, {"d", day, 0, all},
	}}
	temperature = &dimension{"a temperature", "23 C", []unit{
		{"C", 1, 273.15, si}, {"°C", 1, 273.15, si}, {"K", 1, 0, si},
		{"F", 5.0 / 9, 459.67, us}, {"°F", 5.0 / 9, 459.67, us},
	}}
	difference = &dimension{"a difference of temperatures", "3 K", []unit{
		{"K", 1, 0, si}, {"C", 1, 0, si}, {"°C", 1, 0, si}, {"F", 5.0 / 9, 0, us}, {"°F", 5.0 / 9, 0, us},
	}}
	pressure = &dimension{"a pressure", "200 kPa", []unit{
		{"kPa", 1e3, 0, kpa}, {"bar", 1e5, 0, bars}, {"psi", psi, 0, us},
		{"hPa", 100, 0, si}, {"mbar", 100, 0, si}, {"inHg", inchMercury, 0, us}, {"Pa", 1, 0, si},
	}}
	speed = &dimension{"an air speed", "0.3 m/s", []unit{
		{"m/s", 1, 0, si}, {"mm/s", 1e-3, 0, si}, {"ft/min", foot / minute, 0, us}, {"in/s", inch, 0, us},
		{"km/h", 1e3 / hour, 0, si},
	}}
	density = &dimension{"a density", "1.2 kg/L", []unit{
		{"kg/L", 1e3, 0, si}, {"g/L", 1, 0, si}, {"g/mL", 1e3, 0, si}, {"kg/m3", 1, 0, si},
		{"lb/gal", pound / usGallon, 0, us},
	}}
	concentration = &dimension{"a mass per volume", "420 g/L", []unit{
		{"g/L", 1, 0, si}, {"kg/L", 1e3, 0, si}, {"lb/gal", pound / usGallon, 0, us},
		{"mg/m3", 1e-6, 0, all}, {"mg/m³", 1e-6, 0, all},
	}}
	fraction = &dimension{"a percentage", "35 %", []unit{{"%", 0.01, 0, all}}}
	spread   = &dimension{"a spreading rate", "10 m2/L", []unit{
		{"m2/L", 1e3, 0, si}, {"m²/L", 1e3, 0, si},
		{"ft2/gal", foot2 / usGallon, 0, us}, {"ft²/gal", foot2 / usGallon, 0, us},
	}}
	flow = &dimension{"a flow", "150 mL/min", []unit{
		{"mL/min", 1e-6 / minute, 0, si}, {"L/min", 1e-3 / minute, 0, si}, {"fl oz/min", usOunce / minute, 0, us},
		{"mL/h", 1e-6 / hour, 0, si}, {"L/h", 1e-3 / hour, 0, si}, {"gal/h", usGallon / hour, 0, us},
	}}
	airFlow = &dimension{"an air flow", "180 L/min", []unit{
		{"L/min", 1e-3 / minute, 0, si}, {"L/s", 1e-3, 0, si},
		{"m3/min", 1.0 / minute, 0, si}, {"m³/min", 1.0 / minute, 0, si},
		{"m3/h", 1.0 / hour, 0, si}, {"m³/h", 1.0 / hour, 0, si}, {"m3/s", 1, 0, si}, {"m³/s", 1, 0, si},
		{"ft3/min", foot3 / minute, 0, us}, {"ft³/min", foot3 / minute, 0, us}, {"cfm", foot3 / minute, 0, us},
	}}
	timePerArea = &dimension{"a time per area", "12 min/m2", []unit{
		{"min/m2", minute, 0, si}, {"min/m²", minute, 0, si}, {"h/m2", hour, 0, si}, {"h/m²", hour, 0, si},
		{"min/ft2", minute / foot2, 0, us}, {"min/ft²", minute / foot2, 0, us},
	}}
	surfaceEnergy = &dimension{"a surface energy", "38 mJ/m2", []unit{
		{"mJ/m2", 1e-3, 0, all}, {"mJ/m²", 1e-3, 0, all}, {"mN/m", 1e-3, 0, all}, {"dyn/cm", 1e-3, 0, all},
	}}
	viscosity = &dimension{"a kinematic viscosity", "60 mm2/s", []unit{
		{"mm2/s", 1e-6, 0, all}, {"mm²/s", 1e-6, 0, all}, {"cSt", 1e-6, 0, all},
	}}
	molarEnergy = &dimension{"an activation energy", "50 kJ/mol", []unit{
		{"kJ/mol", 1e3, 0, all}, {"kcal/mol", 4184, 0, all}, {"J/mol", 1, 0, all},
	}}
	vapourYield = &dimension{"a volume of vapour per volume of liquid", "200 L/L", []unit{
		{"L/L", 1, 0, si}, {"m3/L", 1e3, 0, si}, {"m³/L", 1e3, 0, si},
		{"ft3/gal", foot3 / usGallon, 0, us}, {"ft³/gal", foot3 / usGallon, 0, us},
	}}
	perArea = &dimension{"a number per area", "3 /m2", []unit{
		{"/m2", 1, 0, si}, {"/m²", 1, 0, si}, {"/ft2", 1 / foot2, 0, us}, {"/ft²", 1 / foot2, 0, us},
	}}
	number = &dimension{"a number", "2.5", []unit{{"", 1, 0, all}}}
	gloss  = &dimension{"a gloss at 60 degrees", "85 GU", []unit{{"GU", 1, 0, all}, {"", 1, 0, all}}}
	grit   = &dimension{"a P-grit number", "320", []unit{{"", 1, 0, all}}}
)

// dimensions are all of them. Where two share the name of a unit, prose means
// the first: "°C" stands for a temperature, "L/min" for air.
var dimensions = []*dimension{
	length, area, volume, mass, duration, temperature, difference, pressure, speed, density, concentration,
	fraction, spread, airFlow, flow, timePerArea, surfaceEnergy, viscosity, molarEnergy, vapourYield, perArea,
	number, gloss, grit,
}

var dimensionOf = func() map[string]*dimension {
	kinds := map[string]*dimension{}
	for _, d := range dimensions {
		kinds[d.kind()] = d
	}
	return kinds
}()
