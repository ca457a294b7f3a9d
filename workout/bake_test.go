package workout

import (
	"strings"
	"testing"

	"coatwright/planner/library"
	q "coatwright/quantity"
)

// ovens is the small library with a part that stands much warmth and one that does
// not.
func ovens() *library.Library {
	lib := dryers()
	lib.Substrates = map[string]*library.Substrate{
		"hardy": {Slug: "hardy", Title: "Hardy", HeatLimit: q.Celsius(180)}, "shy": {Slug: "shy", Title: "Shy", HeatLimit: q.Celsius(45)}, "unsaid": {Slug: "unsaid", Title: "Unsaid"},
	}
	return lib
}

// 12 h at 23 C held at 60 C with nothing done before is 12 h by the factors worked
// independently: 9.54 for 50 kJ/mol, 3.70 for 29, 32.2 for 77; and half an hour there
// equals half an hour times each.
func TestBakeByFactors(t *testing.T) {
	p := answered(t, bakeSheet, ovens(), "of", "cure", "part", "hardy", "at", "60 C", "heat-up", "0 min", "flash", "0 min", "held", "30 min")
	wantFigure(t, p, "hold", 12*3600/9.54, 5e-3)
	wantRange(t, p, "hold", 12*3600/32.2, 12*3600/3.70, 5e-3)
	wantFigure(t, p, "equals", 1800*9.54, 5e-3)
	wantRange(t, p, "equals", 1800*3.70, 1800*32.2, 5e-3)
	wantWithin(t, p, "warmth", celsius(60), 1e-9)
	wantVerdict(t, p, "go", "up to 60 °C")
	if p.Answer.Defers == "" {
		t.Error("it defers to nobody")
	}
}

// What flash-off and warming have done is taken off, and the three add up.
func TestBakeAddsUp(t *testing.T) {
	p := answered(t, bakeSheet, ovens(), "of", "cure", "part", "hardy", "heat-up", "20 min")
	whole, hold, flash := figureOf(t, p, "whole").Value.SI, figureOf(t, p, "hold").Value.SI, figureOf(t, p, "flash-off").Value.SI
	wantNear(t, "the whole", whole, hold+flash+1200, 1e-9)
	at := answered(t, bakeSheet, ovens(), "of", "cure", "part", "hardy", "heat-up", "0 min", "flash", "0 min")
	if !(hold < figureOf(t, at, "hold").Value.SI) {
		t.Error("warming up takes nothing off the hold")
	}
	last := at.Answer.Tables[0].Rows
	for i := 1; i < len(last); i++ {
		if last[i][1].(q.Value).SI >= last[i-1][1].(q.Value).SI {
			t.Errorf("held longer at %v than at %v", last[i][0], last[i-1][0])
		}
	}
	if got := last[len(last)-1][0].(q.Value).SI; got != celsius(60) {
		t.Errorf("the table ends at %v", got)
	}
}

func TestBakeVerdicts(t *testing.T) {
	lib := ovens()
	lib.Materials["water"].Forced = library.Forced{Air: true, Because: "It blisters."}
	lib.Materials["solvent"].Forced = library.Forced{}
	for _, c := range []struct {
		entries     []string
		level, says string
	}{
		{[]string{"of", "water"}, "no", "No heat: It blisters."},
		{[]string{"of", "solvent"}, "no", "its note says nothing"},
		{[]string{"of", "cure", "part", "shy"}, "care", "No warmer than 45 °C, which is the most that the part may get"},
		{[]string{"of", "cure", "part", "shy", "at", "70 C"}, "care", "Not 70 °C: 45 °C is the most that the part may get"},
		{[]string{"of", "cure", "part", "hardy", "at", "70 C"}, "care", "60 °C is the most that the film may get"},
		{[]string{"of", "cure", "part", "hardy", "heat-up", "23 h"}, "care", "gains nothing"},
		{[]string{"of", "cure", "part", "hardy", "at", "20 C"}, "no", "warmer than the room"},
		{[]string{"of", "cure", "part", ownPart, "limit", "50 C"}, "care", "No warmer than 50 °C"},
	} {
		wantVerdict(t, answered(t, bakeSheet, lib, c.entries...), c.level, c.says)
	}
}

// No material of the notes is warmed whose note allows no heat, and none beyond
// what its note or the part allows.
func TestBakeOfEveryFilm(t *testing.T) {
	lib := builtIn(t)
	heated := 0
	for slug, m := range lib.Materials {
		if m.Role == "" || len(m.Dries) == 0 {
			continue
		}
		for part, s := range lib.Substrates {
			if s.HeatLimit == 0 {
				continue
			}
			p := answered(t, bakeSheet, lib, "of", slug, "part", part)
			if hasFigure(p, "warmth") {
				heated++
				if got := q.Temperature(figureOf(t, p, "warmth").Value.SI); got > m.Forced.Heat || got > s.HeatLimit {
					t.Errorf("%s on %s is warmed to %v C", slug, part, got.Celsius())
				}
			} else if m.Forced.Heat > 0 || !strings.HasPrefix(p.Answer.Verdict.Says, "No heat") {
				t.Errorf("%s on %s: %s", slug, part, p.Answer.Verdict.Says)
			}
		}
	}
	if heated == 0 {
		t.Error("nothing is warmed")
	}
}

func TestBakeInBothSystems(t *testing.T) {
	sameAnswers(t, bakeSheet, ovens(), 1e-4,
		[]string{"of", "cure", "part", ownPart, "limit", "80 C", "at", "50 C", "air", "20 C", "flash", "20 min"},
		[]string{"of", "cure", "part", ownPart, "limit", "176 F", "at", "122 F", "air", "68 F", "flash", "20 min"})
}

func TestBakeTells(t *testing.T) {
	checkTold(t, bakeSheet, ovens(), []told{
		{[]string{"part", "unsaid"}, "part", `Found "unsaid", expected one of the list.`},
		{[]string{"at", "600 C"}, "at", `Found "600 C", expected 0 to 250 °C.`},
		{[]string{"heat-up", "15"}, "heat-up", `Found "15", expected a time in one of: s, min, h, d.`},
		{[]string{"part", ownPart, "limit", ""}, "limit", "Found nothing, expected the warmest that the part may get."},
	})
}
