package viscosity

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"

	q "coatwright/quantity"
)

// rows reads a check table of testdata/viscosity by its column names.
func rows(t *testing.T, name string) []map[string]string {
	t.Helper()
	f, err := os.Open("../../testdata/viscosity/" + name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	records, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var out []map[string]string
	for _, record := range records[1:] {
		row := map[string]string{}
		for i, column := range records[0] {
			row[column] = record[i]
		}
		out = append(out, row)
	}
	return out
}

func number(t *testing.T, s string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return x
}

// near fails unless got is within tolerance of want.
func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s = %.6g, want %.6g within %.2g", what, got, want, tolerance)
	}
}

// cup is the cup of that name.
func cup(t testing.TB, name string) Cup {
	t.Helper()
	c, err := ParseCup(name)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// Each row of drain-times.csv is what a maker of standard oils prints.
func TestDrainTimes(t *testing.T) {
	for _, r := range rows(t, "drain-times.csv") {
		c, at := cup(t, r["cup"]), q.Time(number(t, r["seconds"]))
		want, tolerance := number(t, r["mm2_per_s"]), number(t, r["tolerance"])
		v, err := c.Viscosity(at)
		if err != nil {
			t.Error(err)
		}
		near(t, "viscosity of "+Reading{c, at}.String(), float64(v)/mm2, want, tolerance*want)
	}
}

// worked.csv says where each value is from.
func TestWorked(t *testing.T) {
	for _, r := range rows(t, "worked.csv") {
		c, at := cup(t, r["cup"]), q.Time(number(t, r["seconds"]))
		v, err := c.Viscosity(at)
		if err != nil {
			t.Error(err)
		}
		near(t, "viscosity of "+Reading{c, at}.String(), float64(v)/mm2, number(t, r["mm2_per_s"]), number(t, r["within"]))
	}
}

// ranges.csv says where each range is from, and names every cup.
func TestRanges(t *testing.T) {
	table := rows(t, "ranges.csv")
	for i, r := range table {
		c := cups[i]
		want := q.Range[q.Time]{Low: q.Time(number(t, r["from_s"])), High: q.Time(number(t, r["to_s"]))}
		if c.Name() != r["cup"] || c.Range != want {
			t.Errorf("cup %d is a %s of %v s, want a %s of %v s", i, c.Name(), c.Range, r["cup"], want)
		}
	}
	if len(table) != len(cups) {
		t.Errorf("%d cups are in the table of ranges, %d are known", len(table), len(cups))
	}
}

// ASTM D5125, 1.2: the ISO cups measure "viscosities up to 700 cSt".
func TestWidestISOCup(t *testing.T) {
	v, err := cup(t, "ISO 6 mm").Viscosity(100)
	if err != nil {
		t.Error(err)
	}
	near(t, "100 s in the 6 mm cup", float64(v)/mm2, 700, 20)
}

// ASTM D4212, 13.1.1: two laboratories should not differ by more than 33 % of
// their mean; the difference of two spreads by the root of 2 more than one.
func TestZahnSpreadAgreesWithReproducibility(t *testing.T) {
	near(t, "difference of two readings", math.Sqrt2*zahnSpread, 0.33, 0.015)
}

func TestBlendingNumber(t *testing.T) {
	for _, r := range rows(t, "blending-number.csv") {
		got := index(q.Viscosity(mm2 * number(t, r["mm2_per_s"])))
		near(t, "blending number of "+r["mm2_per_s"], got, number(t, r["number"]), number(t, r["within"]))
	}
}

// mixture is glycerol in water as one row of glycerol.csv has it: its viscosity,
// and the water that was added to the first row's mixture, as a share of that.
type mixture struct {
	viscosity q.Viscosity
	share     q.Fraction
}

func glycerol(t *testing.T) (thick q.Viscosity, water q.Viscosity, thinned []mixture) {
	const waterDensity = 998.2 // kg/m3 at 20 C, from memory
	table := rows(t, "glycerol.csv")
	density := func(r map[string]string) q.Density {
		return q.Density(waterDensity * number(t, r["gravity_20_20"]))
	}
	viscosity := func(r map[string]string) q.Viscosity {
		return KinematicOf(Dynamic(1e-3*number(t, r["mPa_s"])), density(r))
	}
	first, last := table[0], table[len(table)-1]
	strong := number(t, first["mass_percent"])
	for _, r := range table[1 : len(table)-1] {
		perKilogram := strong/number(t, r["mass_percent"]) - 1 // kg of water to a kg of the first mixture
		thinned = append(thinned, mixture{viscosity(r), q.Fraction(perKilogram * float64(density(first)) / waterDensity)})
	}
	return viscosity(first), viscosity(last), thinned
}

// Measured mixtures lie between the two rules.
func TestRulesHoldGlycerol(t *testing.T) {
	thick, water, thinned := glycerol(t)
	e, err := Estimate(thick, water)
	if err != nil {
		t.Fatal(err)
	}
	for _, m := range thinned {
		if r := e.Viscosity(m.share); !r.Holds(m.viscosity) {
			t.Errorf("with %s of water %s was measured, the rules say %s to %s", percent(m.share),
				squareMillimetres(m.viscosity), squareMillimetres(r.Low), squareMillimetres(r.High))
		}
		share, err := e.Share(m.viscosity)
		if err != nil {
			t.Error(err)
		}
		if !share.Holds(m.share) {
			t.Errorf("%s was measured with %s of water, the rules say %s to %s", squareMillimetres(m.viscosity),
				percent(m.share), percent(share.Low), percent(share.High))
		}
	}
}

// Calibrated with the least thinned mixture, the others come out within 3 %, one
// with four times the water.
func TestCalibrationForeseesGlycerol(t *testing.T) {
	thick, water, thinned := glycerol(t)
	first := thinned[0]
	c, err := Calibrated(reading(t, thick), reading(t, first.viscosity), first.share, water)
	if err != nil {
		t.Fatal(err)
	}
	for _, m := range thinned[1:] {
		got, want := float64(c.Viscosity(m.share).Low)/mm2, float64(m.viscosity)/mm2
		near(t, "viscosity with "+percent(m.share)+" of water", got, want, 0.03*want)
		share, err := c.Share(m.viscosity)
		if err != nil {
			t.Error(err)
		}
		near(t, "share of water for "+squareMillimetres(m.viscosity), float64(share.Low), float64(m.share), 0.03*float64(m.share))
	}
}

// reading is what the best cup reads of a liquid.
func reading(t *testing.T, v q.Viscosity) Reading {
	t.Helper()
	able := Able(v)
	if len(able) == 0 {
		t.Fatalf("no cup measures %s", squareMillimetres(v))
	}
	return able[0]
}
