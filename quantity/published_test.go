package quantity

import (
	"math"
	"testing"
)

// near reports whether a and b agree to the seven figures to which NIST SP 811
// prints the factors that are not exact.
func near(a, b float64) bool { return math.Abs(a-b) <= 1e-6*math.Abs(b) }

// read parses s as the quantity Q and widens it.
func read[Q Quantity](s string) (float64, error) {
	v, err := Parse[Q](s)
	return float64(v), err
}

// factor is a quantity and what it is in SI.
type factor struct {
	in   string
	want float64
	of   *dimension
	read func(string) (float64, error)
}

func printed[Q Quantity](in string, want float64) factor {
	var q Q
	return factor{in, want, q.dimension(), read[Q]}
}

// published are conversion factors as printed in NIST SP 811 (2008), appendix
// B.8, in SI, and quotients of two of them; the temperatures follow from its
// appendix B.9. Quoted from memory. The SI prefixes and the litre are exact by
// definition.
var published = []factor{
	printed[Length]("1 in", 2.54e-2),
	printed[Length]("1 ft", 3.048e-1),
	printed[Length]("1 mil", 2.54e-5),
	printed[Length]("1 um", 1e-6),
	printed[Length]("1 µm", 1e-6),
	printed[Length]("1 mm", 1e-3),
	printed[Length]("1 cm", 1e-2),
	printed[Length]("1 m", 1),
	printed[Area]("1 ft2", 9.290304e-2),
	printed[Area]("1 in2", 6.4516e-4),
	printed[Area]("1 m2", 1),
	printed[Area]("1 m²", 1),
	printed[Area]("1 dm2", 1e-2),
	printed[Area]("1 cm2", 1e-4),
	printed[Area]("1 cm²", 1e-4),
	printed[Area]("1 ft²", 9.290304e-2),
	printed[Area]("1 in²", 6.4516e-4),
	printed[Volume]("1 US gal", 3.785412e-3),
	printed[Volume]("1 fl oz", 2.957353e-5),
	printed[Volume]("1 L", 1e-3),
	printed[Volume]("1 l", 1e-3),
	printed[Volume]("1 mL", 1e-6),
	printed[Volume]("1 ml", 1e-6),
	printed[Volume]("1 US qt", 9.463529e-4),
	printed[Volume]("1 US pt", 4.731765e-4),
	printed[Volume]("1 m3", 1),
	printed[Volume]("1 m³", 1),
	printed[Volume]("1 ft3", 2.831685e-2),
	printed[Volume]("1 ft³", 2.831685e-2),
	printed[Mass]("1 lb", 4.535924e-1),
	printed[Mass]("1 oz", 2.834952e-2),
	printed[Mass]("1 g", 1e-3),
	printed[Mass]("1 kg", 1),
	printed[Time]("1 s", 1),
	printed[Time]("1 min", 60),
	printed[Time]("1 h", 3600),
	printed[Time]("1 d", 86400),
	printed[Temperature]("0 C", 273.15),
	printed[Temperature]("23 °C", 296.15),
	printed[Temperature]("32 F", 273.15),
	printed[Temperature]("212 °F", 373.15),
	printed[Temperature]("-40 F", 233.15),
	printed[Temperature]("-40 C", 233.15),
	printed[Temperature]("300 K", 300),
	printed[Difference]("3 K", 3),
	printed[Difference]("3 C", 3),
	printed[Difference]("3 °C", 3),
	printed[Difference]("1 F", 5.555556e-1),
	printed[Difference]("9 °F", 5),
	printed[Pressure]("1 psi", 6.894757e3),
	printed[Pressure]("1 bar", 1e5),
	printed[Pressure]("1 kPa", 1e3),
	printed[Pressure]("1 Pa", 1),
	printed[Pressure]("1 hPa", 100),
	printed[Pressure]("1 mbar", 100),
	printed[Pressure]("1 inHg", 3.386389e3),
	printed[Speed]("1 ft/min", 5.08e-3),
	printed[Speed]("1 km/h", 2.777778e-1),
	printed[Speed]("1 m/s", 1),
	printed[Speed]("1 mm/s", 1e-3),
	printed[Speed]("1 in/s", 2.54e-2),
	printed[Density]("1 lb/gal", 1.198264e2),
	printed[Density]("1 kg/L", 1e3),
	printed[Density]("1 g/mL", 1e3),
	printed[Density]("1 g/L", 1),
	printed[Density]("1 kg/m3", 1),
	printed[Concentration]("1 g/L", 1),
	printed[Concentration]("1 kg/L", 1e3),
	printed[Concentration]("1 lb/gal", 1.198264e2),
	printed[Concentration]("1 mg/m3", 1e-6),
	printed[Concentration]("1 mg/m³", 1e-6),
	printed[Fraction]("35 %", 0.35),
	printed[Spread]("1 m2/L", 1e3),
	printed[Spread]("1 m²/L", 1e3),
	printed[Spread]("1 ft2/gal", 9.290304e-2/3.785412e-3),
	printed[Spread]("1 ft²/gal", 9.290304e-2/3.785412e-3),
	printed[Flow]("60 mL/min", 1e-6),
	printed[Flow]("60 L/min", 1e-3),
	printed[Flow]("1 mL/h", 1e-6/3600),
	printed[Flow]("1 L/h", 1e-3/3600),
	printed[Flow]("60 fl oz/min", 2.957353e-5),
	printed[Flow]("60 gal/h", 6.309020e-5),
	printed[AirFlow]("60 L/min", 1e-3),
	printed[AirFlow]("1 L/s", 1e-3),
	printed[AirFlow]("1 m3/min", 1.666667e-2),
	printed[AirFlow]("1 m³/min", 1.666667e-2),
	printed[AirFlow]("1 m3/h", 2.777778e-4),
	printed[AirFlow]("1 m³/h", 2.777778e-4),
	printed[AirFlow]("1 m3/s", 1),
	printed[AirFlow]("1 m³/s", 1),
	printed[AirFlow]("1 ft3/min", 4.719474e-4),
	printed[AirFlow]("1 ft³/min", 4.719474e-4),
	printed[AirFlow]("1 cfm", 4.719474e-4),
	printed[TimePerArea]("1 min/m2", 60),
	printed[TimePerArea]("1 min/m²", 60),
	printed[TimePerArea]("1 h/m2", 3600),
	printed[TimePerArea]("1 min/ft2", 60/9.290304e-2),
	printed[TimePerArea]("1 h/m²", 3600),
	printed[TimePerArea]("1 min/ft²", 60/9.290304e-2),
	printed[SurfaceEnergy]("1 mJ/m2", 1e-3),
	printed[SurfaceEnergy]("1 mN/m", 1e-3),
	printed[SurfaceEnergy]("1 dyn/cm", 1e-3),
	printed[SurfaceEnergy]("1 mJ/m²", 1e-3),
	printed[Viscosity]("1 cSt", 1e-6),
	printed[Viscosity]("1 mm2/s", 1e-6),
	printed[Viscosity]("1 mm²/s", 1e-6),
	printed[MolarEnergy]("1 kcal/mol", 4.184e3),
	printed[MolarEnergy]("1 kJ/mol", 1e3),
	printed[MolarEnergy]("1 J/mol", 1),
	printed[VapourYield]("1 L/L", 1),
	printed[VapourYield]("1 m3/L", 1e3),
	printed[VapourYield]("1 m³/L", 1e3),
	printed[VapourYield]("1 ft3/gal", 2.831685e-2/3.785412e-3),
	printed[VapourYield]("1 ft³/gal", 2.831685e-2/3.785412e-3),
	printed[PerArea]("3 /m2", 3),
	printed[PerArea]("3/m²", 3),
	printed[PerArea]("1 /ft2", 1/9.290304e-2),
	printed[PerArea]("1 /ft²", 1/9.290304e-2),
	printed[Number]("2.5", 2.5),
	printed[Gloss]("85 GU", 85),
	printed[Gloss]("85", 85),
	printed[Grit]("320", 320),
}

func TestPublished(t *testing.T) {
	for _, c := range published {
		if got, err := c.read(c.in); err != nil || !near(got, c.want) {
			t.Errorf("Parse(%q) as %s = %v, %v, want %v", c.in, c.of.name, got, err, c.want)
		}
	}
}

// A unit that the table above leaves out would go unchecked.
func TestPublishedHasEveryUnit(t *testing.T) {
	seen := map[meaning]bool{}
	for _, c := range published {
		_, name := split(c.in)
		u, _ := c.of.unit(name)
		seen[meaning{c.of, u}] = true
	}
	for _, d := range dimensions {
		for _, u := range d.units {
			if !seen[meaning{d, u}] {
				t.Errorf("%s: no published factor for %q", d.name, u.name)
			}
		}
	}
}

// A dimension that the list leaves out would be neither shown nor checked.
func TestDimensionsAreAllThatTypesHave(t *testing.T) {
	listed := map[*dimension]bool{}
	for _, d := range dimensions {
		listed[d] = true
	}
	of := map[*dimension]bool{}
	for _, c := range published {
		of[c.of] = true
		if !listed[c.of] {
			t.Errorf("%s is not among the dimensions", c.of.name)
		}
	}
	if len(of) != len(dimensions) || len(dimensionOf) != len(dimensions) {
		t.Errorf("%d types, %d dimensions, %d kinds, want as many of each", len(of), len(dimensions), len(dimensionOf))
	}
}

func TestExampleOfEachDimension(t *testing.T) {
	for _, d := range dimensions {
		number, unit := split(d.example)
		if _, err := convert(d.example, number, unit, d); err != nil {
			t.Errorf("the example of %s: %v", d.name, err)
		}
	}
}
