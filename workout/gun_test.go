package workout

import (
	"strings"
	"testing"

	"coatwright/planner/library"
)

// Worked by hand. A face of 0.6 by 1 m and a fan of 20 cm that overlaps by half: 11
// passes, each triggered for a tenth more at each end, so that 20 s of 26.4 are over
// the face. Of all 45.45 % land, which is 60 % of what is sprayed over it. 50 um of
// 150 mL/min then take 0.3 m/s; 66 mL are sprayed, and 30 mL land.
func TestGunWorked(t *testing.T) {
	lib := builtIn(t)
	si := own("with", "hvlp-gun", "wet", "50 um", "along", "0.6 m", "across", "1 m", "flow", "150 mL/min", "fan", "200 mm", "overlap", "50 %",
		"overrun", "60 mm", "turn", "0.5 s", "lands", "45.4545454545 %")
	p := answered(t, gunSheet, lib, si...)
	wantFigure(t, p, "passes", 11, 0)
	wantFigure(t, p, "landing", 0.6, 1e-9)
	wantFigure(t, p, "hand-speed", 0.3, 1e-9)
	wantFigure(t, p, "pass-film", 25*um, 1e-9)
	wantFigure(t, p, "crossing-film", 50*um, 1e-9)
	wantFigure(t, p, "trigger", 26.4, 1e-9)
	wantFigure(t, p, "over-face", 20, 1e-9)
	wantFigure(t, p, "paint", 66*mL, 1e-9)
	wantVerdict(t, p, "go", "50 µm wet takes a hand of 0.3 m/s, which a hand can do (0.2 to 0.5 m/s).")
	// 280 to 400 L/min for 26.4 s, at most for 31.4 s with the turns.
	wantFigure(t, p, "air", 340e-3*26.4/60, 1e-9)
	wantRange(t, p, "air", 280e-3*26.4/60, 400e-3*31.4/60, 1e-9)
	if hasFigure(p, "crossings") {
		t.Error("a coat that one time over the face lays has crossings")
	}
	us := own("with", "hvlp-gun", "wet", "1.968503937 mil", "along", "23.62204724 in", "across", "3.280839895 ft", "flow", "5.07210339 fl oz/min", "fan", "7.87401575 in",
		"overlap", "50 %", "overrun", "2.362204724 in", "turn", "0.5 s", "lands", "45.4545454545 %")
	sameAnswers(t, gunSheet, lib, 1e-7, si, us)
}

// Published: a textbook of collision repair, chapter 28
// (g-wonlinetextbooks.com, auto-collision-repair-refinishing-2022/711): a hand with
// an HVLP gun goes at about 1.5 ft/s, with a conventional one at 1. Both lie within
// the gun's note; and a full coat of its note's own films takes no hand far from
// it.
func TestGunAgainstTheTextbook(t *testing.T) {
	lib := builtIn(t)
	const foot = 0.3048 // m
	if hand := lib.Tools["hvlp-gun"].Applicator.Speed; !hand.Holds(1.5*foot) || !hand.Holds(1*foot) {
		t.Errorf("the note has a hand of %v, the textbook one of 0.30 to 0.46 m/s", hand)
	}
	p := answered(t, gunSheet, lib, "of", "two-pack-gloss-clear", "with", "hvlp-gun", "form", "panel")
	if v := figureOf(t, p, "hand-speed").Value.SI; v < 0.8*1.5*foot || v > 1.25*1.5*foot {
		t.Errorf("a full coat of clear takes a hand of %v m/s, the textbook has 0.46", v)
	}
}

// In one coat, what lands dries to the film: volume of solids is area times film.
func TestGunBalances(t *testing.T) {
	lib := builtIn(t)
	for _, m := range lib.Materials {
		if m.Build == 0 || m.SolidsByVolume == 0 || m.Role == "" {
			continue
		}
		p := answered(t, gunSheet, lib, "of", m.Slug)
		if p.Answer.Verdict.Level == "no" {
			continue
		}
		n := 1.0
		if hasFigure(p, "crossings") {
			n = figureOf(t, p, "crossings").Value.SI
		}
		wantNear(t, m.Slug+" in all", n*figureOf(t, p, "crossing-film").Value.SI, figureOf(t, p, "wet-film").Value.SI, 1e-9)
		film, solids := figureOf(t, p, "wet-film").Value.SI, figureOf(t, p, "mix-solids").Value.SI
		wantNear(t, m.Slug+" dries", film*solids, float64(m.Build), 1e-9)
	}
}

// Worked by hand: of a fan of 20 cm in passes half over one another 3 cm wide only
// 15 % is over the face, so 25 to 45 % cannot land; the widest face of the note
// catches 60 to 70 %.
func TestGunThatMisses(t *testing.T) {
	lib := builtIn(t)
	entries := own("with", "hvlp-gun", "form", "tube", "wet", "50 um", "along", "1 m", "across", "30 mm", "fan", "200 mm", "overlap", "50 %", "overrun", "0 mm")
	p := answered(t, gunSheet, lib, entries...)
	wantFigure(t, p, "landing", 0.65, 1e-9)
	wantRange(t, p, "landing", 0.60, 0.70, 1e-9)
	wantVerdict(t, p, "care", "")
	if !tells(p, "Only 15 % of the paint is sprayed over the face") {
		t.Errorf("says %q", p.Answer.Says)
	}
	narrow := answered(t, gunSheet, lib, append(own("fan", "40 mm"), entries[2:10]...)...)
	if tells(narrow, "Only") {
		t.Errorf("a fan turned down: %q", narrow.Answer.Says)
	}
	checkTold(t, gunSheet, lib, []told{{append(entries, "lands", "35 %"), "lands",
		"Share that lands in all: found 35 %; expected up to 15 %, as no more is sprayed over a face 30 mm wide with a fan of 200 mm: a narrower fan or a shorter overrun is meant."}})
}

func TestGunVerdicts(t *testing.T) {
	lib := builtIn(t)
	face := []string{"with", "hvlp-gun", "form", "panel", "fan", "200 mm", "overlap", "50 %", "flow", "120 to 200 mL/min"}
	for _, c := range []struct{ wet, level, says string }{
		{"45 um", "go", "which a hand can do"},
		{"90 um", "go", "which a hand can do"},
		{"20 um", "no", "Take a wider fan, less overlap or a smaller applicator."},
		{"35 um", "care", "turn the needle in"},
		{"115 um", "care", "turn the needle out"},
		{"300 um", "care", "or take a larger applicator."},
	} {
		p := answered(t, gunSheet, lib, append(own("wet", c.wet), face...)...)
		wantVerdict(t, p, c.level, c.says)
		if got := hasFigure(p, "crossings"); got != strings.Contains(p.Answer.Verdict.Says, "coats") {
			t.Errorf("%s: crossings %v, and says %q", c.wet, got, p.Answer.Verdict.Says)
		}
	}
	runs := answered(t, gunSheet, lib, "of", "two-pack-gloss-clear", "with", "hvlp-gun", "wet", "130 um")
	wantVerdict(t, runs, "no", "130 µm wet are more than the 120 µm above which this film runs")
	large := answered(t, gunSheet, lib, "of", "candy-concentrate", "with", "airbrush", "along", "300 mm", "across", "400 mm", "overrun", "10 mm")
	wantVerdict(t, large, "care", "")
	if !tells(large, "The face is 0.12 m², and the note has this applicator lay such a film evenly up to 0.06 m².") {
		t.Errorf("says %q", large.Answer.Says)
	}
}

// A coat too thick for one time over the face goes on in equal parts.
func TestGunCrossings(t *testing.T) {
	lib := builtIn(t)
	p := answered(t, gunSheet, lib, own("with", "airbrush", "form", "panel", "wet", "200 um", "along", "0.8 m", "across", "0.6 m")...)
	wantFigure(t, p, "crossings", 2, 0)
	wantFigure(t, p, "crossing-film", 100*um, 1e-9)
	wantFigure(t, p, "paint", 0.8*0.6*200*um/0.525, 1e-9)
}

// What the notes do not say is asked for.
func TestGunTells(t *testing.T) {
	lib := builtIn(t)
	const missing = "Found nothing, expected it to be filled in: no note says it of this film."
	checkTold(t, gunSheet, lib, []told{
		{own(), "wet", missing},
		{[]string{"along", "0 m"}, "along", `Found "0 m", expected 5 mm to 20 m.`},
		{[]string{"along", "10 mm", "overrun", "110 mm"}, "overrun", `Found "110 mm", expected no more than ten times the length of a pass.`},
		{[]string{"overlap", "99 %"}, "overlap", `Found "99 %", expected 0 to 95 %.`},
		{[]string{"flow", "0 mL/min"}, "flow", `Found "0 mL/min", expected 0.1 to 5000 mL/min.`},
		{[]string{"turn", "2 min"}, "turn", `Found "2 min", expected 0 min to 1 min.`},
	})
	bare := *lib
	bare.Tools = map[string]*library.Tool{"x": {Slug: "x", Title: "X gun", Applicator: &library.Applicator{Cup: 1e-4, Transfer: lib.Tools["hvlp-gun"].Applicator.Transfer}}}
	p := filledIn(t, gunSheet, &bare)
	for _, key := range []string{"flow", "fan", "with"} {
		if p.Problems[key] == "" {
			t.Errorf("an applicator whose note says nothing: %v", p.Problems)
		}
	}
	wantNear(t, "what lands on the form that catches most", float64(lib.Tools["hvlp-gun"].Applicator.Transfer[widestForm(lib.Tools["hvlp-gun"])].High), 0.70, 1e-9)
}
