package workout

import (
	"math"
	"strings"
	"testing"

	q "coatwright/quantity"
)

// Worked by hand: 50 um at 46 % are 109 um wet and run above 90, which leaves
// 41.4 um dry; so 100 um take three coats of 33.3, each 72.5 um wet.
func TestCoatsForAFilm(t *testing.T) {
	lib := builtIn(t)
	si := own("wanted", "100 um", "build", "50 um", "solids", "46 %", "sag", "90 um")
	p := answered(t, coatsSheet, lib, si...)
	wantFigure(t, p, "most-dry", 41.4*um, 1e-9)
	wantFigure(t, p, "film-coats", 3, 0)
	wantFigure(t, p, "each-wet", 100/3.0/0.46*um, 1e-9)
	wantVerdict(t, p, "care", "109 µm wet and runs above 90 µm: lay 3 coats of 72.5 µm wet")
	if !tells(p, "3 coats of 72.5 µm wet dry to 100 µm, 33.3 µm each.") || !tells(p, "Nobody says how well this film hides") {
		t.Errorf("says %q", p.Answer.Says)
	}
	us := own("wanted", "3.937007874 mil", "build", "1.968503937 mil", "solids", "46 %", "sag", "3.5433070866 mil")
	sameAnswers(t, coatsSheet, lib, 1e-8, si, us)

	one := answered(t, coatsSheet, lib, own("wanted", "20 um", "build", "25 um", "solids", "50 %")...)
	wantFigure(t, one, "film-coats", 1, 0)
	wantVerdict(t, one, "", "")
	if !tells(one, "One coat of 40 µm wet dries to 20 µm.") {
		t.Errorf("says %q", one.Answer.Says)
	}
}

// Worked by hand, with Kubelka and Munk's solution: an ideal white that has 0.857143
// over black and 0.909091 over white at 15 um has SX = 6 there, and hides (98 %) at
// SX = (sqrt(809) - 5)/2.
func TestCoatsThatHide(t *testing.T) {
	lib := builtIn(t)
	si := own("wanted", "15 um", "build", "15 um", "solids", "30 %", "colour", "100 %", "ratio", "94.28571428571428 %", "at", "15 um")
	p := answered(t, coatsSheet, lib, si...)
	wantFigure(t, p, "hiding-film", 15*(math.Sqrt(809)-5)/2/6*um, 1e-9)
	wantFigure(t, p, "hiding-coats", 2, 0)
	wantVerdict(t, p, "care", "The film wanted does not hide: that takes 2 coats.")
	rows := p.Answer.Tables[0].Rows
	if len(rows) != 2 || rows[0][3] != "not yet" || rows[1][3] != "yes" {
		t.Errorf("coat by coat: %v", rows)
	}
	wantNear(t, "contrast of the first coat", rows[0][2].(q.Value).SI, 0.9428571, 1e-6)
	wantNear(t, "contrast of the second coat", rows[1][2].(q.Value).SI, 0.9807692, 1e-6)
	us := own("wanted", "0.59055118 mil", "build", "0.59055118 mil", "solids", "30 %", "colour", "100 %", "ratio", "94.28571428571428 %", "at", "0.59055118 mil")
	sameAnswers(t, coatsSheet, lib, 1e-7, si, us)
}

// Worked independently, by another program: from 92 to 98 % takes 1.314 times the
// film at Y = 0.1, 1.787 times at 0.8.
func TestLightColoursNeedMore(t *testing.T) {
	lib := builtIn(t)
	for colour, want := range map[string]float64{"10 %": 13.14, "80 %": 17.87, "#ffffff": 24.79} {
		p := answered(t, coatsSheet, lib, own("wanted", "30 um", "build", "10 um", "solids", "30 %", "colour", colour, "ratio", "92 %", "at", "10 um")...)
		wantFigure(t, p, "hiding-film", want*um, 5e-4)
	}
}

// The luminance of a colour: a screen's grey of 188 is 0.503 (IEC 61966-2-1, worked
// by hand), and L* = 50 is 0.1842 (CIE 15, worked by hand).
func TestColourByItsLuminance(t *testing.T) {
	lib := builtIn(t)
	for colour, want := range map[string]float64{
		"#bcbcbc": math.Pow((188.0/255+0.055)/1.055, 2.4), "L 50 a 20 b -30": math.Pow(66.0/116, 3), "#000000": 0.001, "#ffffff": 1, "18 %": 0.18,
	} {
		p := answered(t, coatsSheet, lib, "colour", colour)
		for _, in := range figureOf(t, p, "hiding-film").Inputs {
			if in.Symbol == "R∞" {
				wantNear(t, colour, in.Value.SI, want, 1e-4)
			}
		}
	}
}

// Grounds of a shade take less to hide than black and white do, and a film over
// what counts as hidden takes none.
func TestCoatsOverGrounds(t *testing.T) {
	lib := builtIn(t)
	film := func(more ...string) *Page {
		return answered(t, coatsSheet, lib, append(own("wanted", "30 um", "build", "10 um", "solids", "30 %", "ratio", "90 %", "at", "10 um"), more...)...)
	}
	over := func(more ...string) float64 { return figureOf(t, film(more...), "hiding-film").Value.SI }
	if far, near := over(), over("darkest", "30 %", "lightest", "50 %"); !(near > 0 && near < far) {
		t.Errorf("%v m over black and white, %v m over two greys", far, near)
	}
	even := film("darkest", "50 %", "lightest", "50.5 %")
	wantFigure(t, even, "hiding-coats", 0, 0)
	if f := figureOf(t, even, "hiding-coats"); len(f.Remarks) != 1 || !strings.Contains(f.Remarks[0], "so even") {
		t.Errorf("an even ground is told as %q", f.Remarks)
	}
	wantVerdict(t, even, "", "")
}

// What a note says of its film, and how thick is too thick.
func TestCoatsOfANote(t *testing.T) {
	lib := builtIn(t)
	p := answered(t, coatsSheet, lib, "of", "waterborne-ground", "with", "hvlp-gun")
	wantFigure(t, p, "film-coats", 2, 0)
	wantVerdict(t, p, "go", "The film wanted hides")
	dry := figureOf(t, p, "hiding-film")
	wantRange(t, p, "hiding-film", 0.9*dry.Value.SI, 1.2*dry.Value.SI, 1e-9)
	wantVerdict(t, answered(t, coatsSheet, lib, "of", "waterborne-ground", "with", "hvlp-gun", "wanted", "100 um"), "no", "7 coats are more than 2 times what the note has.")
	wantVerdict(t, answered(t, coatsSheet, lib, "of", "waterborne-ground", "with", "hvlp-gun", "colour", "90 %", "ratio", "30 %"), "care", "coats to hide, more than 2 times what the note has.")
	if rows := answered(t, coatsSheet, lib, "of", "waterborne-ground", "with", "hvlp-gun", "wanted", "1 mm").Answer.Tables[0].Rows; len(rows) != mostRows {
		t.Errorf("%d coats are listed one by one, want %d", len(rows), mostRows)
	}
}

func TestCoatsTell(t *testing.T) {
	lib := builtIn(t)
	const missing = "Found nothing, expected it to be filled in: no note says it of this film."
	film := func(more ...string) []string { return append(own("build", "10 um", "solids", "30 %"), more...) }
	checkTold(t, coatsSheet, lib, []told{
		{film(), "wanted", missing},
		{film("wanted", "30 um", "ratio", "90 %"), "at", missing},
		{film("wanted", "30 um", "at", "10 um"), "ratio", missing},
		{film("wanted", "30 um", "ratio", "100 %", "at", "10 um"), "ratio", `Found "100 %", expected 1 to 99.9 %.`},
		{[]string{"colour", "grey"}, "colour", `Found "grey", expected a colour such as #8a8d90, or how much light it reflects, such as 30 %.`},
		{[]string{"colour", "130 %"}, "colour", `Found "130 %", expected 0.1 to 100 %.`},
		{[]string{"colour", ""}, "colour", "Found nothing, expected its colour, or how much light that reflects."},
		{[]string{"darkest", "50 %", "lightest", "40 %"}, "lightest", `Found "40 %", expected the lightest place below to be lighter than the darkest.`},
		{[]string{"darkest", "#ffffff"}, "darkest", `Found "#ffffff", expected the lightest place below to be lighter than the darkest.`},
		{[]string{"wanted", "0 um"}, "wanted", `Found "0 um", expected 0.1 µm to 5 mm.`},
	})
}
