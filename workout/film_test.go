package workout

import (
	"strings"
	"testing"
)

// Published, end to end, entered in either system.
func TestFilmPublished(t *testing.T) {
	lib := builtIn(t)
	for _, c := range []struct {
		source    string
		si, us    []string
		figure    string
		want      float64
		tolerance float64
	}{
		{"scribd.com/document/343849341: 65 %, 5 mil is 208.52 ft2/gal; 125 um is 5.2 m2/L",
			own("solids", "65 %", "build", "127 um", "coats", "1"), own("solids", "65 %", "build", "5 mil", "coats", "1"),
			"spreads", 208.52 * ft2gl, 2e-4},
		{"corrosionpedia.com/definition/2294: 30 % lost of 100 ft2/gal leaves 70",
			own("solids", "50 %", "build", "203.73 um", "coats", "1", "lands", "70 %"), own("solids", "50 %", "build", "8.02085 mil", "coats", "1", "lands", "70 %"),
			"spreads-sprayed", 70 * ft2gl, 1e-4},
		{"paintcenter.org/rj/may04jj.php: 52 %, 1.5 mil, 35 % lands, 194.5 ft2/gal",
			own("solids", "52 %", "build", "38.1 um", "coats", "1", "lands", "35 %"), own("solids", "52 %", "build", "1.5 mil", "coats", "1", "lands", "35 %"),
			"spreads-sprayed", 194.5 * ft2gl, 1e-3},
		// 8 x 0.35/1.10; the page prints 2.8, from other solids.
		{"formula of scribd.com/document/104802451: 8 mil wet, 35 %, thinned by 10 %",
			own("solids", "31.818181818 %", "build", "64.6545454545 um", "coats", "1", "comb", "203.2 um"), own("solids", "31.818181818 %", "build", "2.54545454545 mil", "coats", "1", "comb", "8 mil"),
			"comb-dry", 8 * 0.35 / 1.10 * mil, 1e-8},
		{"the same, from dry to wet",
			own("solids", "31.818181818 %", "build", "64.6545454545 um", "coats", "1"), own("solids", "31.818181818 %", "build", "2.54545454545 mil", "coats", "1"),
			"wet-film", 8 * mil, 1e-8},
	} {
		t.Run(c.source, func(t *testing.T) {
			wantFigure(t, answered(t, filmSheet, lib, c.si...), c.figure, c.want, c.tolerance)
			sameAnswers(t, filmSheet, lib, 1e-5, c.si, c.us)
		})
	}
}

// Worked by hand: 0.55 m2 in three coats of 25 um at 46 % are 41.25 mL of solids
// in 89.67 mL of mix; 20 to 35 % of it land, and 15 mL stay in the gun.
func TestFilmNeeded(t *testing.T) {
	lib := builtIn(t)
	p := answered(t, filmSheet, lib, own("with", "hvlp-gun", "form", "lattice", "solids", "46 %", "build", "25 um", "sag", "120 um", "coats", "3")...)
	const lands = 41.25 / 0.46 * mL
	wantFigure(t, p, "needed", lands/0.275+15*mL, 1e-9)
	wantRange(t, p, "needed", lands/0.35+15*mL, lands/0.20+15*mL, 1e-9)
	wantFigure(t, p, "all-dry", 75*um, 1e-9)
	wantFigure(t, p, "most-dry", 120*0.46*um, 1e-9)
	wantVerdict(t, p, "go", "54.3 µm wet, under the 120 µm")

	twice := answered(t, filmSheet, lib, own("with", "hvlp-gun", "form", "lattice", "solids", "46 %", "build", "25 um", "coats", "3", "cleanings", "2")...)
	wantFigure(t, twice, "needed", lands/0.275+30*mL, 1e-9)
	if hasFigure(twice, "most-dry") || twice.Answer.Verdict != nil || !tells(twice, "Nobody says above which wet film") {
		t.Error("a film of which nobody knows the sag limit is held against one")
	}
}

// What a note says is as far off as its standing allows; what was entered is not.
func TestFilmStanding(t *testing.T) {
	lib := builtIn(t)
	entries := []string{"of", "two-pack-gloss-clear", "with", "hvlp-gun", "form", "panel", "area", "1 m2", "coats", "2"}
	p := answered(t, filmSheet, lib, entries...)
	const lands = 50 / (1.47 / 3.2) * mL
	wantFigure(t, p, "needed", lands/0.65+15*mL, 1e-9)
	wantRange(t, p, "needed", 0.9*lands/0.70+15*mL, 1.2*lands/0.60+15*mL, 1e-9)
	sheet := answered(t, filmSheet, lib, append(entries, "build", "25 um", "solids", "45.9375 %")...)
	wantRange(t, sheet, "needed", lands/0.70+15*mL, lands/0.60+15*mL, 1e-9)
	if hasFigure(sheet, "mix-solids") {
		t.Error("solids that were entered are worked out as well")
	}
}

// Worked by hand: 60 um at 46 % are 130 um wet, of which 120 run; twice that is
// three coats of 87 um.
func TestFilmVerdicts(t *testing.T) {
	lib := builtIn(t)
	film := func(more ...string) *Page {
		return answered(t, filmSheet, lib, append(own("solids", "46 %", "sag", "120 um", "coats", "2"), more...)...)
	}
	wantVerdict(t, film("build", "60 um"), "no", "130 µm wet, and above 120 µm it runs on an upright face. Lay the same film in 3 coats of 87 µm wet.")
	wantVerdict(t, film("build", "25 um", "comb", "125 to 150 um"), "no", "The comb reads at least 125 µm")
	wantVerdict(t, film("build", "25 um", "comb", "100 to 125 um"), "care", "The comb reads up to 125 µm")
	wantVerdict(t, film("build", "25 um", "comb", "50 to 60 um"), "go", "")

	// A ground of 30 % with 5 to 10 % of thinner, 15 um dry, is 52.5 to 55 um wet,
	// and 53.8 in the middle.
	ground := []string{"of", "waterborne-ground", "with", "hvlp-gun", "sag", "54 um"}
	p := answered(t, filmSheet, lib, ground...)
	wantRange(t, p, "wet-film", 52.5*um, 55*um, 1e-9)
	wantVerdict(t, p, "care", "of the mix at its thinnest lies 55 µm wet")
}

// Readings beside a full coat of 25 um, at 50 %.
func TestFilmComb(t *testing.T) {
	lib := builtIn(t)
	for reading, says := range map[string]string{"30 to 40 um": "Thinner", "45 to 55 um": "lies within", "60 to 70 um": "Thicker", "50 um": "lies within"} {
		p := answered(t, filmSheet, lib, own("solids", "50 %", "build", "25 um", "coats", "1", "comb", reading)...)
		if f := figureOf(t, p, "comb-dry"); !strings.Contains(f.Remarks[0], says) {
			t.Errorf("%s is told as %q, want %q", reading, f.Remarks[0], says)
		}
	}
}

// Worked by hand: 89.67 mL on the part are 450 mL sprayed at 20 %.
func TestFilmFills(t *testing.T) {
	lib := builtIn(t)
	for _, c := range []struct{ with, area, says string }{
		{"hvlp-gun", "0.55 m2", "The cup of 600 mL holds it in one fill."},
		{"hvlp-gun", "1 m2", "That is 2 fills of the cup of 600 mL."},
		{"hvlp-gun", "0.80 m2", "That is 1 to 2 fills of the cup of 600 mL."},
		{"airbrush", "100 cm2", "The cup of 30 mL holds it in one fill."},
	} {
		p := answered(t, filmSheet, lib, own("with", c.with, "form", "lattice", "area", c.area, "solids", "46 %", "build", "25 um", "coats", "3")...)
		if f := figureOf(t, p, "needed"); f.Remarks[1] != c.says {
			t.Errorf("%s with the %s: %q, want %q", c.area, c.with, f.Remarks[1], c.says)
		}
	}
}

func TestFilmTells(t *testing.T) {
	lib := builtIn(t)
	const missing = "Found nothing, expected it to be filled in: no note says it of this film."
	checkTold(t, filmSheet, lib, []told{
		{own("solids", "46 %", "coats", "1"), "build", missing},
		{own("build", "25 um", "coats", "1"), "solids", missing},
		{own("build", "25 um", "solids", "46 %"), "coats", missing},
		{[]string{"solids", "0 %"}, "solids", `Found "0 %", expected 1 to 100 %.`},
		{[]string{"solids", "46 g/L"}, "solids", `Found "46 g/L", expected a percentage in one of: %.`},
		{[]string{"build", "5 cm"}, "build", `Found "5 cm", expected 0.1 µm to 5 mm.`},
		{[]string{"area", "0 m2"}, "area", `Found "0 m2", expected 1 cm² to 10000 m².`},
		{[]string{"coats", "2.5"}, "coats", `Found "2.5", expected a whole number from 1 to 50.`},
		{[]string{"coats", "NaN"}, "coats", `Found "NaN", expected a number from 1 to 50.`},
		{[]string{"lands", "0..35 %"}, "lands", `Found "0..35 %", expected 1 to 100 %.`},
		{[]string{"comb", "0 um"}, "comb", `Found "0 um", expected 0.1 µm to 5 mm.`},
		{[]string{"cleanings", "0"}, "cleanings", `Found "0", expected a number from 1 to 50.`},
		{[]string{"of", "£"}, "of", `Found "£", expected one of the list.`},
		{[]string{"form", "£"}, "form", `Found "£", expected one of the list.`},
	})
}
