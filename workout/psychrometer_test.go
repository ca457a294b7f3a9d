package workout

import (
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// 68 F dry, 62 F wet is 71 % within 1.5 (US Army TM 5-3610-285-14);
// 47 F dry, 44 F wet has a dew point of 41 F within 1 (R. DeC. Ward (1899), table
// I).
func TestPsychrometerPublished(t *testing.T) {
	lib := builtIn(t)
	p := answered(t, psychrometerSheet, lib, "dry", "68 F", "wet", "62 F")
	if got := figureOf(t, p, "relative-humidity").Value.SI; got < 0.695 || got > 0.725 {
		t.Errorf("68 F dry, 62 F wet: %v", got)
	}
	p = answered(t, psychrometerSheet, lib, "dry", "47 F", "wet", "44 F")
	wantWithin(t, p, "dew-point", celsius(5), 5.0/9)
}

// 25 C dry, 18 C wet, 1013.25 hPa is 50.07 % by the formulas of
// cales.arizona.edu/azmet/dewpoint.html throughout, and 50.35 % with the plain
// constant and Magnus (worked independently). With each thermometer 0.2 K off,
// 48 to 52 %.
func TestPsychrometerWorked(t *testing.T) {
	lib := builtIn(t)
	p := answered(t, psychrometerSheet, lib, "dry", "25 C", "wet", "18 C", "barometer", "1013.25 hPa")
	wantFigure(t, p, "relative-humidity", 0.5007, 1e-3)
	wantRange(t, p, "relative-humidity", 0.4781, 0.5236, 1e-3)
	wantFigure(t, p, "vapour-pressure", 1586.2, 1e-3)
	if f := figureOf(t, p, "relative-humidity"); !strings.Contains(strings.Join(f.Remarks, " "), "gives 50.4 %") {
		t.Errorf("the second form is not told: %q", f.Remarks)
	}
	exact := answered(t, psychrometerSheet, lib, "dry", "25 C", "wet", "18 C", "off", "0 K")
	if r := figureOf(t, exact, "relative-humidity").Range; r.Low != r.High {
		t.Errorf("exact thermometers give %v to %v", r.Low, r.High)
	}
	sameAnswers(t, psychrometerSheet, lib, 1e-4,
		[]string{"dry", "25 C", "wet", "18 C", "off", "0.5 K", "altitude", "304.8 m"},
		[]string{"dry", "77 F", "wet", "64.4 F", "off", "0.9 F", "altitude", "1000 ft"})
}

// Over ice: worked by hand, 517.7 Pa over ice at -2 C (ASHRAE table 3, from memory)
// less 5.82e-4 (1 - 0.0023) 101325 x 2 is 400.0 Pa.
func TestPsychrometerOverIce(t *testing.T) {
	p := answered(t, psychrometerSheet, builtIn(t), "dry", "0 C", "wet", "-2 C", "wick", wickFrozen)
	wantFigure(t, p, "vapour-pressure", 400.0, 2e-3)
}

func TestPsychrometerTells(t *testing.T) {
	checkTold(t, psychrometerSheet, builtIn(t), []told{
		{[]string{"dry", "18 C", "wet", "25 C"}, "wet", "Found a wet bulb of 25.0 °C in air of 18.0 °C, expected a wet bulb no warmer than the dry one; are the two swapped?"},
		{[]string{"dry", "18 C", "wet", "12 C", "wick", wickFrozen}, "wet", "Found ice on a wet bulb of 12.0 °C, expected a wet bulb below 0 °C under ice."},
		{[]string{"dry", "30 C", "wet", "5 C"}, "wet", "Found a wet bulb of 5.0 °C in air of 30.0 °C, expected a wet bulb of at least 10.8 °C: even air without water cools it no further."},
		{[]string{"off", "5 K"}, "off", `Found "5 K", expected 0 to 3 °C.`},
	})
}

// The two sheets agree: what a psychrometer shows in some air is that air.
func TestPsychrometerAgreesWithTheAir(t *testing.T) {
	lib := builtIn(t)
	rapid.Check(t, func(t *rapid.T) {
		dry := rapid.Float64Range(8, 40).Draw(t, "dry")
		wet := dry - rapid.Float64Range(0, 6).Draw(t, "depression")
		r := psychrometerSheet.Fill(lib, func(key string) (string, bool) {
			v, ok := map[string]string{"dry": decimal(dry) + " C", "wet": decimal(wet) + " C"}[key]
			return v, ok
		})
		if r.Answer == nil {
			t.Skip("drier than any air")
		}
		i := 0
		for r.Answer.Figures[i].Key != "relative-humidity" {
			i++
		}
		humidity := r.Answer.Figures[i].Value.SI
		if humidity < 0.2 {
			t.Skip("very dry air, where tables differ too")
		}
		a := airSheet.Fill(lib, func(key string) (string, bool) {
			v, ok := map[string]string{"air": decimal(dry) + " C", "humidity": decimal(100*humidity) + " %"}[key]
			return v, ok
		})
		for _, f := range a.Answer.Figures {
			if f.Key == "wet-bulb" && (f.Value.SI-celsius(wet) > 0.4 || f.Value.SI-celsius(wet) < -0.4) {
				t.Fatalf("%v C dry, %v C wet is air whose wet bulb is %v", dry, wet, f.Value.SI-273.15)
			}
		}
	})
}

func decimal(x float64) string { return strconv.FormatFloat(x, 'f', 6, 64) }
