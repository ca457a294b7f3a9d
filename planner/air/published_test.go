package air

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	q "coatwright/quantity"
)

const psychro = "../../testdata/psychro/"

// rows reads a check table by its column names.
func rows(t *testing.T, name string) []map[string]string {
	t.Helper()
	f, err := os.Open(name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	table := csv.NewReader(f)
	table.Comment = '#'
	records, err := table.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var out []map[string]string
	for _, r := range records[1:] {
		row := map[string]string{}
		for i, column := range records[0] {
			row[column] = r[i]
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

// Computed by a reference library; see testdata/psychro/README.md.
func TestSaturationPressure(t *testing.T) {
	for _, r := range rows(t, psychro+"saturation.csv") {
		want := number(t, r["p_ws_Pa"])
		got := SaturationPressure(q.Celsius(number(t, r["t_C"])))
		near(t, "SaturationPressure at "+r["t_C"]+" C", float64(got), want, 1e-6*want)
	}
}

// Computed by a reference library; see testdata/psychro/README.md.
func TestGrid(t *testing.T) {
	for _, r := range rows(t, psychro+"grid.csv") {
		a := Air{
			Temperature: q.Celsius(number(t, r["t_db_C"])),
			Humidity:    q.Fraction(number(t, r["rh_pct"]) / 100),
			Pressure:    q.Pressure(number(t, r["p_Pa"])),
		}
		at := " at " + r["t_db_C"] + " C " + r["rh_pct"] + " %"
		near(t, "wet bulb"+at, a.WetBulb().Celsius(), number(t, r["t_wb_C"]), 0.005)
		near(t, "dew point"+at, a.DewPoint().Celsius(), number(t, r["t_dp_C"]), 0.005)
		near(t, "vapour pressure"+at, float64(a.VapourPressure()), number(t, r["p_w_Pa"]), 0.001)
		near(t, "humidity ratio"+at, a.HumidityRatio(), number(t, r["w_kg_per_kg"]), 1e-7)
		near(t, "enthalpy"+at, a.Enthalpy(), number(t, r["h_J_per_kg"]), 0.1)
		near(t, "specific volume"+at, a.SpecificVolume(), number(t, r["v_m3_per_kg"]), 1e-6)
		near(t, "over the dew point"+at, float64(a.OverDewPoint(a.Temperature)), number(t, r["dew_spread_K"]), 0.005)
	}
}

// Each row of published.csv carries its source and its tolerance.
func TestPublished(t *testing.T) {
	for _, r := range rows(t, psychro+"published.csv") {
		t.Run(r["id"], func(t *testing.T) {
			got := compute(t, r["quantity"], inputs(t, r["inputs"]))
			switch r["unit"] {
			case "F":
				got = got*9/5 + 32
			case "inHg":
				got /= 3386.389 // Pa in a conventional inch of mercury; NIST SP 811, appendix B
			}
			want := number(t, r["value"])
			near(t, r["quantity"], got, want, tolerance(t, r["tolerance"], want))
		})
	}
}

// tolerance reads "0.01 rel" or "1 abs".
func tolerance(t *testing.T, text string, want float64) float64 {
	amount, kind, _ := strings.Cut(text, " ")
	if kind == "rel" {
		return number(t, amount) * want
	}
	return number(t, amount)
}

// inputs reads "tdb=61F depression=6F" into temperatures; a depression is
// turned into the wet bulb. Every pressure in the table is the standard one.
func inputs(t *testing.T, text string) map[string]q.Temperature {
	in := map[string]q.Temperature{}
	for _, field := range strings.Fields(text) {
		name, value, _ := strings.Cut(field, "=")
		if name == "depression" {
			in["twb"] = in["tdb"] - q.Temperature(number(t, strings.TrimSuffix(value, "F"))*5/9)
		} else if name == "t" || name == "tdb" || name == "twb" {
			x, err := q.Parse[q.Temperature](value)
			if err != nil {
				t.Fatal(err)
			}
			in[name] = x
		}
	}
	return in
}

func compute(t *testing.T, quantity string, in map[string]q.Temperature) float64 {
	switch quantity {
	case "sat_vapour_pressure_ice", "sat_vapour_pressure_water":
		return float64(SaturationPressure(in["t"]))
	case "sat_humidity_ratio":
		return Air{Temperature: in["t"], Humidity: 1}.HumidityRatio()
	case "humidity_ratio":
		return withWetBulb(in["tdb"], in["twb"]).HumidityRatio()
	case "dew_point":
		return withWetBulb(in["tdb"], in["twb"]).DewPoint().Celsius()
	case "relative_humidity":
		return float64(withWetBulb(in["tdb"], in["twb"]).Humidity)
	}
	t.Fatalf("nothing computes a %q", quantity)
	return 0
}

// withWetBulb finds the air that has a wet bulb temperature, by halving.
func withWetBulb(dry, wet q.Temperature) Air {
	low, high := Air{Temperature: dry}, Air{Temperature: dry, Humidity: 1}
	for high.Humidity-low.Humidity > 1e-6 {
		middle := Air{Temperature: dry, Humidity: (low.Humidity + high.Humidity) / 2}
		if middle.WetBulb() < wet {
			low = middle
		} else {
			high = middle
		}
	}
	return high
}
