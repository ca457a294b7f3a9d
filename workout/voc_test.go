package workout

import (
	"strings"
	"testing"

	"coatwright/planner/library"
	q "coatwright/quantity"
)

// Published: paintcenter.org/rj/mar04b.php. 8.52 lb/gal, 20.8 % of solids and
// 53.0 % of water by mass: 2.232 lb/gal, and 4.8748 less water.
func TestVOCByMass(t *testing.T) {
	lib := builtIn(t)
	us := []string{"of", byMass, "weighs", "8.52 lb/gal", "solid", "20.8 %", "wet", "53.0 %", "amount", "1 US gal"}
	p := answered(t, vocSheet, lib, us...)
	wantNear(t, "as sprayed", figureOf(t, p, "as-sprayed").Value.SI/poundPerGallon, 2.232, 1e-3)
	wantNear(t, "less water", figureOf(t, p, "less-water").Value.SI/poundPerGallon, 4.8748, 1e-3)
	wantNear(t, "emitted from a gallon, in lb", figureOf(t, p, "emitted").Value.SI/0.45359237, 2.232, 1e-3)
	sameAnswers(t, vocSheet, lib, 1e-3, []string{"of", byMass, "weighs", "1020.9 g/L", "solid", "20.8 %", "wet", "53.0 %", "amount", "3.7854 L"}, us)

	// Worked independently, with water of 1 kg/L: 1050 g/L, 45 % leaves, 30 % is
	// water.
	p = answered(t, vocSheet, lib, "of", byMass, "weighs", "1.05 kg/L", "solid", "55 %", "wet", "30 %")
	wantNear(t, "as sprayed", figureOf(t, p, "as-sprayed").Value.SI, 157.5, 1e-9)
	wantNear(t, "less water", figureOf(t, p, "less-water").Value.SI, 229.9, 2e-3)
}

// Published: Fla. Admin. Code 62-296.500 and 30 TAC 115.423: 3 lb/gal of solvent
// of 7.36 lb/gal are 5.06 lb for each gallon of solids.
func TestVOCPerSolids(t *testing.T) {
	lib := builtIn(t)
	p := answered(t, vocSheet, lib, "of", byVolume, "holds", "3 lb/gal", "wet", "0 %", "solid", "60 %")
	f := figureOf(t, p, "per-solids")
	wantNear(t, "per solids", f.Value.SI/poundPerGallon, 5.0642, 1e-4)
	if len(f.Remarks) != 1 || !strings.Contains(f.Remarks[0], "60 %") || !strings.Contains(f.Remarks[0], "599 g/L") {
		t.Errorf("by the solids that are stated: %q, want 599 g/L", f.Remarks)
	}
	if p = answered(t, vocSheet, lib, "of", byVolume, "holds", "882 g/L", "wet", "0 %"); hasFigure(p, "per-solids") {
		t.Error("what is all solvent has a figure for each litre of solids")
	}
}

// Published: finishing guidebook 2013, appendix B. 1 gal with 2.5 lb/gal and
// 0.25 gal with 6.8 make 3.36 lb/gal.
func TestVOCOfMix(t *testing.T) {
	lib := thinned(library.Material{VOC: 2.5 * poundPerGallon}, library.Material{VOC: 6.8 * poundPerGallon}, only[q.Fraction](0.25))
	p := answered(t, vocSheet, lib)
	if p.Values["of"] != "paint" || p.Values["with"] != "gun" {
		t.Errorf("it starts with %q for %q, want the paint for the gun", p.Values["of"], p.Values["with"])
	}
	f := figureOf(t, p, "as-sprayed")
	wantNear(t, "VOC of the mix", f.Value.SI/poundPerGallon, 3.36, 1e-9)
	if f.Range != nil {
		t.Errorf("what is exact has the range %v", f.Range)
	}
	if hasFigure(p, "mix-water") {
		t.Error("a mix without water says how much water is in it")
	}
}

// Worked by hand: a paint with 200 g/L and 40 % water, and water to thin it, 0 to
// 100 % of it. Whatever the water, it counts 200/0.6 = 333.3 g/L less water.
func TestWaterDoesNotThinVOC(t *testing.T) {
	lib := thinned(library.Material{VOC: 200, Water: 0.4}, library.Material{Water: 1}, q.Range[q.Fraction]{Low: 0, High: 1})
	p := answered(t, vocSheet, lib)
	wet, less, water := figureOf(t, p, "as-sprayed"), figureOf(t, p, "less-water"), figureOf(t, p, "mix-water")
	wantNear(t, "as sprayed, at the least", wet.Range.Low.SI, 100, 1e-9)
	wantNear(t, "as sprayed, at the most", wet.Range.High.SI, 200, 1e-9)
	wantNear(t, "less water", less.Value.SI, 200/0.6, 1e-9)
	wantNear(t, "water, at the most", water.Range.High.SI, 0.7, 1e-9)
}

// The standing of a note says how far off its figures may be.
func TestVOCStanding(t *testing.T) {
	lib := thinned(library.Material{VOC: 300, Density: 1000, Standing: "guess"}, library.Material{VOC: 800, Density: 850, Standing: "guess"}, only[q.Fraction](0))
	lib.Words.Standing = []library.Standing{{Name: "guess", Amount: q.Range[q.Fraction]{Low: 0.9, High: 1.2}, Is: "A guess."}}
	p := answered(t, vocSheet, lib)
	f := figureOf(t, p, "as-sprayed")
	wantNear(t, "at the least", f.Range.Low.SI, 270, 1e-9)
	wantNear(t, "at the most", f.Range.High.SI, 360, 1e-9)
	if len(p.Answer.Says) != 2 || p.Answer.Says[1] != "Standing of the notes' figures: guess. A guess." {
		t.Errorf("says %q", p.Answer.Says)
	}
	// No more leaves than there is.
	p = answered(t, vocSheet, lib, "of", "thinner")
	wantNear(t, "thinner, at the most", figureOf(t, p, "as-sprayed").Range.High.SI, 850, 1e-9)
}

func TestVOCAgainstLimits(t *testing.T) {
	lib := thinned(library.Material{VOC: 400, Category: "top-coat"}, library.Material{VOC: 800}, q.Range[q.Fraction]{Low: 0, High: 0.2})
	for _, c := range []struct {
		name    string
		entries []string
		level   string // of the verdict, "" for none
		says    string
		column  string // verdicts of the table, in its order
	}{
		{"unclear", nil, "care", "from 20 g/L under to 46.7 g/L over the limit", "unclear over"},
		{"under", []string{"of", byVolume, "holds", "150 g/L", "kind", "top-coat"}, "", "270 g/L under the limit", "under under"},
		{"over", []string{"of", byVolume, "holds", "300 g/L", "wet", "50 %", "kind", "top-coat"}, "care", "180 g/L over the limit", "over over"},
		{"counted with its water", []string{"of", byVolume, "holds", "300 g/L", "wet", "50 %", "kind", "cleaner"}, "care", "100 g/L over the limit of 200 g/L for the kind \"cleaner\" (a law)", "over over"},
		{"of no kind", []string{"of", byVolume}, "", "Nobody said what kind of product it is.", "under over"},
	} {
		t.Run(c.name, func(t *testing.T) {
			a := answered(t, vocSheet, lib, c.entries...).Answer
			level, says := "", strings.Join(a.Says, " ")
			if a.Verdict != nil {
				level, says = a.Verdict.Level, a.Verdict.Says
			}
			if level != c.level || !strings.Contains(says, c.says) || strings.Contains(says, a.Defers) {
				t.Errorf("%q: %s, want %q: ... %s", level, says, c.level, c.says)
			}
			var column []string
			for _, row := range a.Tables[0].Rows {
				column = append(column, row[3].(string))
			}
			if got := strings.Join(column, " "); got != c.column {
				t.Errorf("the table says %s, want %s", got, c.column)
			}
		})
	}
}

func TestVOCTells(t *testing.T) {
	lib := builtIn(t)
	checkTold(t, vocSheet, lib, []told{
		{[]string{"amount", "0 mL"}, "amount", `Found "0 mL", expected 1 mL to 1 m³.`},
		{[]string{"of", "papyrus"}, "of", `Found "papyrus", expected one of the list.`},
		{[]string{"of", byVolume, "wet", "60 %", "solid", "50 %"}, "wet", "Found shares of the volume that make 110 % together, expected no more than 100 %."},
		{[]string{"of", byVolume, "holds", "9 kg/L"}, "holds", `Found "9 kg/L", expected 0 to 1500 g/L.`},
		{[]string{"of", byVolume, "holds", "700 g/L", "weighs", "0.6 kg/L"}, "weighs", "Found at least 700 g/L of VOC, water and exempt compounds in a liquid of 600 g/L; expected no more than all of it."},
		{[]string{"of", byVolume, "wet", "100 %"}, "wet", "Found up to 100 % of water and 0 % of exempt compounds with 420 g/L of VOC; expected the three to share the volume."},
		{[]string{"of", byMass, "solid", "80 %", "wet", "30 %"}, "wet", "Found solids of 80 %, water of 30 % and exempt compounds of 0 %; expected shares of the mass that make no more than 100 %."},
		{[]string{"of", byMass, "weighs", "12 kg/L"}, "weighs", `Found "12 kg/L", expected 0.5 to 3 kg/L.`},
		{[]string{"of", byMass, "weighs", ""}, "weighs", "Found nothing, expected density."},
	})
}
