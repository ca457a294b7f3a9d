package quantity

import (
	"errors"
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// near reports whether a and b agree to the seven figures to which NIST SP 811
// prints the factors that are not exact.
func near(a, b float64) bool { return math.Abs(a-b) <= 1e-6*math.Abs(b) }

// read parses s as the quantity Q and widens it.
func read[Q Quantity](s string) (float64, error) {
	v, err := Parse[Q](s)
	return float64(v), err
}

// published are conversion factors as printed in NIST SP 811 (2008), appendix
// B.8, in SI; the temperatures follow from its appendix B.9. Quoted from
// memory. The SI prefixes and the litre are exact by definition.
var published = []struct {
	in   string
	read func(string) (float64, error)
	want float64
}{
	{"1 in", read[Length], 2.54e-2},
	{"1 ft", read[Length], 3.048e-1},
	{"1 mil", read[Length], 2.54e-5},
	{"1 um", read[Length], 1e-6},
	{"1 µm", read[Length], 1e-6},
	{"1 mm", read[Length], 1e-3},
	{"1 cm", read[Length], 1e-2},
	{"1 m", read[Length], 1},
	{"1 ft2", read[Area], 9.290304e-2},
	{"1 in2", read[Area], 6.4516e-4},
	{"1 m2", read[Area], 1},
	{"1 m²", read[Area], 1},
	{"1 dm2", read[Area], 1e-2},
	{"1 cm2", read[Area], 1e-4},
	{"1 US gal", read[Volume], 3.785412e-3},
	{"1 fl oz", read[Volume], 2.957353e-5},
	{"1 L", read[Volume], 1e-3},
	{"1 l", read[Volume], 1e-3},
	{"1 mL", read[Volume], 1e-6},
	{"1 ml", read[Volume], 1e-6},
	{"1 lb", read[Mass], 4.535924e-1},
	{"1 oz", read[Mass], 2.834952e-2},
	{"1 g", read[Mass], 1e-3},
	{"1 kg", read[Mass], 1},
	{"1 s", read[Time], 1},
	{"1 min", read[Time], 60},
	{"1 h", read[Time], 3600},
	{"1 d", read[Time], 86400},
	{"0 C", read[Temperature], 273.15},
	{"23 °C", read[Temperature], 296.15},
	{"32 F", read[Temperature], 273.15},
	{"212 °F", read[Temperature], 373.15},
	{"-40 F", read[Temperature], 233.15},
	{"-40 C", read[Temperature], 233.15},
	{"300 K", read[Temperature], 300},
	{"1 psi", read[Pressure], 6.894757e3},
	{"1 bar", read[Pressure], 1e5},
	{"1 kPa", read[Pressure], 1e3},
	{"1 Pa", read[Pressure], 1},
	{"1 ft/min", read[Speed], 5.08e-3},
	{"1 km/h", read[Speed], 2.777778e-1},
	{"1 m/s", read[Speed], 1},
	{"1 lb/gal", read[Density], 1.198264e2},
	{"1 kg/L", read[Density], 1e3},
	{"1 g/mL", read[Density], 1e3},
	{"1 g/L", read[Density], 1},
	{"1 kg/m3", read[Density], 1},
	{"35 %", read[Fraction], 0.35},
	{"1 m2/L", read[Spread], 1e3},
	{"1 m²/L", read[Spread], 1e3},
	{"1 ft2/gal", read[Spread], 9.290304e-2 / 3.785412e-3},
	{"60 mL/min", read[Flow], 1e-6},
	{"60 L/min", read[Flow], 1e-3},
	{"1 min/m2", read[TimePerArea], 60},
	{"1 min/m²", read[TimePerArea], 60},
	{"1 h/m2", read[TimePerArea], 3600},
	{"1 min/ft2", read[TimePerArea], 60 / 9.290304e-2},
	{"1 mJ/m2", read[SurfaceEnergy], 1e-3},
	{"1 mN/m", read[SurfaceEnergy], 1e-3},
	{"1 dyn/cm", read[SurfaceEnergy], 1e-3},
	{"85 GU", read[Gloss], 85},
	{"85", read[Gloss], 85},
	{"320", read[Grit], 320},
}

func TestPublished(t *testing.T) {
	for _, c := range published {
		if got, err := c.read(c.in); err != nil || !near(got, c.want) {
			t.Errorf("Parse(%q) = %v, %v, want %v", c.in, got, err, c.want)
		}
	}
}

// A unit that the table above leaves out would go unchecked.
func TestPublishedHasEveryUnit(t *testing.T) {
	seen := map[string]bool{}
	for _, c := range published {
		_, unit := split(c.in)
		seen[unit] = true
	}
	for _, d := range dimensions() {
		for _, u := range d.units {
			if !seen[u.name] {
				t.Errorf("%s: no published factor for %q", d.name, u.name)
			}
		}
	}
}

func dimensions() []dimension {
	return []dimension{length, area, volume, mass, duration, temperature, pressure, speed,
		density, fraction, spread, flow, timePerArea, surfaceEnergy, gloss, grit}
}

func TestExampleOfEachDimension(t *testing.T) {
	for _, d := range dimensions() {
		number, unit := split(d.example)
		if _, err := convert(d.example, number, unit, d); err != nil {
			t.Errorf("the example of %s: %v", d.name, err)
		}
	}
}

func TestParseSpace(t *testing.T) {
	for _, s := range []string{"15um", " 15 um ", "15\tum", "+15 um", "15.0 um", "015 um"} {
		if got, err := Parse[Length](s); err != nil || !near(float64(got), 15e-6) {
			t.Errorf("Parse(%q) = %v, %v, want 15 um", s, got, err)
		}
	}
}

func TestParseErrors(t *testing.T) {
	const lengths = "a length in one of: um, µm, mil, mm, cm, m, in, ft"
	const times = "a time in one of: s, min, h, d"
	for _, c := range []struct {
		in   string
		read func(string) (float64, error)
		want Error
	}{
		{"", read[Length], Error{"", `a length such as "15 um"`, ""}},
		{"um", read[Length], Error{"um", `a length such as "15 um"`, ""}},
		{"1.2.3 um", read[Length], Error{"1.2.3 um", `a length such as "15 um"`, ""}},
		{"15", read[Length], Error{"15", lengths, ""}},
		{"15 UM", read[Length], Error{"15 UM", lengths, "15 um"}},
		{"15 umm", read[Length], Error{"15 umm", lengths, "15 um"}},
		{"15milk", read[Length], Error{"15milk", lengths, "15mil"}},
		{"1e3 m", read[Length], Error{"1e3 m", lengths, ""}},
		{"15,5 um", read[Length], Error{"15,5 um", `a length such as "15 um"`, ""}},
		{"-5 min", read[Time], Error{"-5 min", `a time of zero or more, such as "20 min"`, ""}},
		{"20 mins", read[Time], Error{"20 mins", times, "20 min"}},
		{"20 weeks", read[Time], Error{"20 weeks", times, ""}},
		{"NaN min", read[Time], Error{"NaN min", `a time such as "20 min"`, ""}},
		{"-274 C", read[Temperature], Error{"-274 C", `a temperature of zero or more, such as "23 C"`, ""}},
		{"23 c", read[Temperature], Error{"23 c", "a temperature in one of: C, °C, K, F, °F", "23 C"}},
		{"85 gu", read[Gloss], Error{"85 gu", "a gloss at 60 degrees in one of: GU, no unit", "85 GU"}},
		{"P320", read[Grit], Error{"P320", `a P-grit number such as "320"`, ""}},
	} {
		_, err := c.read(c.in)
		var got *Error
		if !errors.As(err, &got) {
			t.Errorf("Parse(%q): error %v, want an *Error", c.in, err)
			continue
		}
		if diff := cmp.Diff(c.want, *got); diff != "" {
			t.Errorf("Parse(%q) (-want +got):\n%s", c.in, diff)
		}
	}
}

func TestErrorText(t *testing.T) {
	_, err := Parse[Time]("20 mins")
	want := `found "20 mins", expected a time in one of: s, min, h, d; did you mean "20 min"?`
	if err == nil || err.Error() != want {
		t.Errorf("got  %v\nwant %s", err, want)
	}
}
