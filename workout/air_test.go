package workout

import (
	"testing"

	q "coatwright/quantity"
)

func celsius(c float64) float64 { return float64(q.Celsius(c)) }

// wantWithin checks a figure of a temperature, or of a difference, to so many
// kelvins: a share of an absolute temperature says nothing.
func wantWithin(t *testing.T, p *Page, key string, want, kelvins float64) {
	t.Helper()
	if got := figureOf(t, p, key).Value.SI; !(got >= want-kelvins && got <= want+kelvins) {
		t.Errorf("%s %v: %s = %.4f, want %.4f within %g", p.Slug, p.Values, key, got, want, kelvins)
	}
}

// 25 C and 60 % at 101325 Pa: wet bulb 19.47, dew point 16.70 C, vapour pressure
// 1901.5 Pa, full 3169.2 Pa, 0.0118950 kg in 0.860778 m3 (a reference library that
// follows ASHRAE Fundamentals ch. 1; see testdata/psychro/README.md).
func TestAirOfTheReferenceLibrary(t *testing.T) {
	p := answered(t, airSheet, builtIn(t), "air", "25 C", "humidity", "60 %", "surface", "20 C")
	wantWithin(t, p, "wet-bulb", celsius(19.4711), 0.005)
	wantWithin(t, p, "dew-point", celsius(16.7011), 0.005)
	wantWithin(t, p, "over-dew-point", 20-16.7011, 0.005)
	wantWithin(t, p, "least-surface", celsius(19.7011), 0.005)
	wantFigure(t, p, "vapour-pressure", 1901.530, 1e-5)
	wantFigure(t, p, "full-pressure", 3169.216, 1e-5)
	wantFigure(t, p, "water", 0.0118950/0.860778, 1e-4)
	wantVerdict(t, p, "go", "3.3 K above the dew point")
}

// "Surface at least 3 C above the dew point" and air below 85 % (ISO 8502-4 and
// ISO 12944-7 as quoted by a trade article): at 23 C and 50 % the part must be at
// 15.01 C, worked independently by Magnus, which is within 0.1 K.
func TestAirVerdicts(t *testing.T) {
	lib := builtIn(t)
	for _, c := range []struct{ humidity, surface, level, says string }{
		{"50 %", "15.2 C", "go", "no water settles"},
		{"50 %", "14.8 C", "no", "at least 3 K"},
		{"50 %", "11 C", "no", "below the dew point"},
		{"86 %", "25 C", "care", "less than 85 %"},
	} {
		p := answered(t, airSheet, lib, "air", "23 C", "humidity", c.humidity, "surface", c.surface)
		wantVerdict(t, p, c.level, c.says)
	}
}

// The air that drying times are given for is the measure of itself, at any height
// (identity), and nothing leaves into full air.
func TestAirRatio(t *testing.T) {
	lib := builtIn(t)
	for _, height := range []string{"", "1500 m"} {
		p := answered(t, airSheet, lib, "air", "23 C", "humidity", "50 %", "airflow", "0.1 m/s", "altitude", height)
		wantFigure(t, p, "evaporation", 1, 1e-9)
	}
	if p := answered(t, airSheet, lib, "humidity", "100 %"); figureOf(t, p, "evaporation").Value.SI > 1e-6 {
		t.Errorf("into full air leaves %v", figureOf(t, p, "evaporation").Value)
	}
}

// The standard atmosphere has 89875 Pa at 1000 m (ASHRAE Fundamentals (2017) ch. 1,
// table 1). A barometer that was read stands before it.
func TestAirPressure(t *testing.T) {
	lib := builtIn(t)
	p := answered(t, airSheet, lib, "altitude", "1000 m")
	wantFigure(t, p, "pressure", 89875, 1e-5)
	low, read := figureOf(t, p, "wet-bulb").Value.SI, answered(t, airSheet, lib, "altitude", "1000 m", "barometer", "898.75 hPa")
	wantWithin(t, read, "wet-bulb", low, 1e-4)
	if hasFigure(read, "pressure") {
		t.Error("a pressure is worked out although a barometer was read")
	}
	if sea := figureOf(t, answered(t, airSheet, lib), "wet-bulb").Value.SI; !(low < sea) {
		t.Errorf("the wet bulb at 1000 m is %v, at the sea %v", low, sea)
	}
}

func TestAirInBothSystems(t *testing.T) {
	sameAnswers(t, airSheet, builtIn(t), 1e-4,
		[]string{"air", "25 C", "humidity", "60 %", "surface", "20 C", "airflow", "0.508 m/s", "altitude", "304.8 m"},
		[]string{"air", "77 F", "humidity", "60 %", "surface", "68 F", "airflow", "100 ft/min", "altitude", "1000 ft"})
}

// Warmed, the air keeps its water: 15 C and 75 % are 45.5 % at 23 C (worked by hand:
// 0.75 x 1705.4 / 2810.4 Pa, saturation pressures of ASHRAE table 3). The table
// has the nearest row of it.
func TestAirWarmed(t *testing.T) {
	p := answered(t, airSheet, builtIn(t), "air", "18 C", "humidity", "75 %")
	rows := p.Answer.Tables[0].Rows
	if len(rows) != len(warmer) {
		t.Fatalf("%d rows, want %d", len(rows), len(warmer))
	}
	row := rows[2] // 5 K warmer: 0.75 x 2064.29 / 2810.4
	if got := row[1].(q.Value).SI; got < 0.5505 || got > 0.5515 {
		t.Errorf("at %v the humidity is %v", row[0], got)
	}
	last := -1.0
	for _, r := range rows {
		if leaves := r[2].(q.Value).SI; leaves <= last {
			t.Errorf("at %v water leaves no faster than before", r[0])
		} else {
			last = leaves
		}
	}
	if hot := answered(t, airSheet, builtIn(t), "air", "58 C"); len(hot.Answer.Tables[0].Rows) != 2 {
		t.Errorf("from 58 C on: %d rows, want 2 up to 60 C", len(hot.Answer.Tables[0].Rows))
	}
}

func TestAirTells(t *testing.T) {
	checkTold(t, airSheet, builtIn(t), []told{
		{[]string{"air", "21"}, "air", `Found "21", expected a temperature in one of: C, °C, K, F, °F.`},
		{[]string{"air", "200 C"}, "air", `Found "200 C", expected -20 to 60 °C.`},
		{[]string{"humidity", "0.55"}, "humidity", `Found "0.55", expected a percentage in one of: %.`},
		{[]string{"humidity", "120 %"}, "humidity", `Found "120 %", expected 1 to 100 %.`},
		{[]string{"altitude", "9000 m"}, "altitude", `Found "9000 m", expected -430 to 5500 m.`},
		{[]string{"barometer", "30 psi"}, "barometer", `Found "30 psi", expected 50 to 110 kPa.`},
		{[]string{"airflow", "40 m/s"}, "airflow", `Found "40 m/s", expected 0 to 10 m/s.`},
	})
}
