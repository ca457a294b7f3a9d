package quantity

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

// inchMercury is the conventional inch of mercury, in Pa (NIST SP 811,
// appendix B.8).
const inchMercury = 3386.389

var (
	length = dimension{"a length", "15 um", []unit{
		{"um", 1e-6, 0}, {"µm", 1e-6, 0}, {"mil", inch / 1000, 0}, {"mm", 1e-3, 0},
		{"cm", 1e-2, 0}, {"m", 1, 0}, {"in", inch, 0}, {"ft", foot, 0}}}
	area = dimension{"an area", "0.55 m2", []unit{
		{"m2", 1, 0}, {"m²", 1, 0}, {"dm2", 1e-2, 0}, {"cm2", 1e-4, 0}, {"cm²", 1e-4, 0}, {"ft2", foot * foot, 0}, {"ft²", foot * foot, 0},
		{"in2", inch * inch, 0}, {"in²", inch * inch, 0}}}
	volume = dimension{"a volume", "250 mL", []unit{
		{"mL", 1e-6, 0}, {"ml", 1e-6, 0}, {"L", 1e-3, 0}, {"l", 1e-3, 0},
		{"fl oz", usGallon / 128, 0}, {"US pt", usGallon / 8, 0}, {"US qt", usGallon / 4, 0}, {"US gal", usGallon, 0},
		{"m3", 1, 0}, {"m³", 1, 0}, {"ft3", foot * foot * foot, 0}, {"ft³", foot * foot * foot, 0}}}
	mass = dimension{"a mass", "40 g", []unit{
		{"g", 1e-3, 0}, {"kg", 1, 0}, {"oz", pound / 16, 0}, {"lb", pound, 0}}}
	duration = dimension{"a time", "20 min", []unit{
		{"s", 1, 0}, {"min", 60, 0}, {"h", 3600, 0}, {"d", 86400, 0}}}
	temperature = dimension{"a temperature", "23 C", []unit{
		{"C", 1, 273.15}, {"°C", 1, 273.15}, {"K", 1, 0}, {"F", 5.0 / 9, 459.67}, {"°F", 5.0 / 9, 459.67}}}
	pressure = dimension{"a pressure", "200 kPa", []unit{
		{"kPa", 1e3, 0}, {"bar", 1e5, 0}, {"psi", psi, 0}, {"hPa", 100, 0}, {"mbar", 100, 0}, {"inHg", inchMercury, 0}, {"Pa", 1, 0}}}
	speed = dimension{"an air speed", "0.3 m/s", []unit{
		{"m/s", 1, 0}, {"mm/s", 1e-3, 0}, {"ft/min", foot / 60, 0}, {"in/s", inch, 0}, {"km/h", 1 / 3.6, 0}}}
	density = dimension{"a density", "1.2 kg/L", []unit{
		{"kg/L", 1e3, 0}, {"g/L", 1, 0}, {"g/mL", 1e3, 0}, {"kg/m3", 1, 0}, {"lb/gal", pound / usGallon, 0}}}
	concentration = dimension{"a mass per volume", "420 g/L", []unit{
		{"g/L", 1, 0}, {"kg/L", 1e3, 0}, {"lb/gal", pound / usGallon, 0}, {"mg/m3", 1e-6, 0}, {"mg/m³", 1e-6, 0}}}
	fraction = dimension{"a percentage", "35 %", []unit{{"%", 0.01, 0}}}
	spread   = dimension{"a spreading rate", "10 m2/L", []unit{
		{"m2/L", 1e3, 0}, {"m²/L", 1e3, 0}, {"ft2/gal", foot * foot / usGallon, 0}, {"ft²/gal", foot * foot / usGallon, 0}}}
	flow = dimension{"a flow", "150 mL/min", []unit{
		{"mL/min", 1e-6 / 60, 0}, {"L/min", 1e-3 / 60, 0}, {"fl oz/min", usGallon / 128 / 60, 0}, {"mL/h", 1e-6 / 3600, 0},
		{"L/h", 1e-3 / 3600, 0}, {"gal/h", usGallon / 3600, 0}}}
	airFlow = dimension{"an air flow", "180 L/min", []unit{
		{"L/min", 1e-3 / 60, 0}, {"L/s", 1e-3, 0}, {"m3/min", 1.0 / 60, 0}, {"m³/min", 1.0 / 60, 0}, {"m3/h", 1.0 / 3600, 0},
		{"m³/h", 1.0 / 3600, 0}, {"m3/s", 1, 0}, {"m³/s", 1, 0}, {"ft3/min", foot * foot * foot / 60, 0},
		{"ft³/min", foot * foot * foot / 60, 0}, {"cfm", foot * foot * foot / 60, 0}}}
	timePerArea = dimension{"a time per area", "12 min/m2", []unit{
		{"min/m2", 60, 0}, {"min/m²", 60, 0}, {"h/m2", 3600, 0}, {"h/m²", 3600, 0},
		{"min/ft2", 60 / (foot * foot), 0}, {"min/ft²", 60 / (foot * foot), 0}}}
	surfaceEnergy = dimension{"a surface energy", "38 mJ/m2", []unit{
		{"mJ/m2", 1e-3, 0}, {"mJ/m²", 1e-3, 0}, {"mN/m", 1e-3, 0}, {"dyn/cm", 1e-3, 0}}}
	difference = dimension{"a difference of temperatures", "3 K", []unit{
		{"K", 1, 0}, {"C", 1, 0}, {"°C", 1, 0}, {"F", 5.0 / 9, 0}, {"°F", 5.0 / 9, 0}}}
	viscosity = dimension{"a kinematic viscosity", "60 mm2/s", []unit{
		{"mm2/s", 1e-6, 0}, {"mm²/s", 1e-6, 0}, {"cSt", 1e-6, 0}}}
	molarEnergy = dimension{"an activation energy", "50 kJ/mol", []unit{
		{"kJ/mol", 1e3, 0}, {"kcal/mol", 4184, 0}, {"J/mol", 1, 0}}}
	vapourYield = dimension{"a volume of vapour per volume of liquid", "200 L/L", []unit{
		{"L/L", 1, 0}, {"m3/L", 1e3, 0}, {"m³/L", 1e3, 0}, {"ft3/gal", foot * foot * foot / usGallon, 0}, {"ft³/gal", foot * foot * foot / usGallon, 0}}}
	perArea = dimension{"a number per area", "3 /m2", []unit{
		{"/m2", 1, 0}, {"/m²", 1, 0}, {"/ft2", 1 / (foot * foot), 0}, {"/ft²", 1 / (foot * foot), 0}}}
	number = dimension{"a number", "2.5", []unit{{"", 1, 0}}}
	gloss  = dimension{"a gloss at 60 degrees", "85 GU", []unit{{"GU", 1, 0}, {"", 1, 0}}}
	grit   = dimension{"a P-grit number", "320", []unit{{"", 1, 0}}}
)
