package workout

import (
	"math"
	"strings"
	"testing"

	"coatwright/planner/library"
	"coatwright/planner/ventilation"
	q "coatwright/quantity"
)

// From memory: the worked example of 29 CFR 1910.94(c)(6)(ii), a solvent of
// 30.4 ft3/gal and an LEL of 1.4 %, takes 8,564 ft3 of air for a US gallon.
// Worked independently: half a gallon an hour takes 71.4 ft3/min.
func TestVapourDilution(t *testing.T) {
	lib := builtIn(t)
	solvent := []string{"of", ownSolvent, "limit", "1.4 %", "makes", "30.4 ft3/gal", "solvent", "100 %", "flash", "0 min"}
	p := answered(t, vapourSheet, lib, append(solvent, "sprayed", "1 US gal", "spray", "1 min")...)
	wantNear(t, "air for a gallon in a minute", figureOf(t, p, "air-swept").Value.SI/cfm, 8564, 1e-4)

	us := append(solvent, "sprayed", "0.5 US gal", "spray", "60 min", "space", "1059.44 ft3", "flow", "353.147 cfm")
	p = answered(t, vapourSheet, lib, us...)
	wantNear(t, "air for half a gallon an hour", figureOf(t, p, "air-swept").Value.SI/cfm, 71.4, 1e-3)
	room := figureOf(t, p, "air-mixed")
	wantNear(t, "in a room, at the least", room.Range.Low.SI/cfm, 3*71.4, 1e-3)
	wantNear(t, "in a room, at the most", room.Range.High.SI/cfm, 10*71.4, 1e-3)
	sameAnswers(t, vapourSheet, lib, 1e-4, []string{
		"of", ownSolvent, "limit", "1.4 %", "makes", "227.408 L/L", "solvent", "100 %", "flash", "0 min",
		"sprayed", "1892.706 mL", "spray", "1 h", "space", "30 m3", "flow", "600 m3/h"}, us)
}

// Published: US CDC, MMWR 43 (RR-13), 1994, table S3-1, in whole minutes, for
// perfect mixing; "could be as high as 10" times as long.
func TestVapourClears(t *testing.T) {
	lib := builtIn(t)
	left := map[string]string{"90_percent": "10 %", "99_percent": "1 %", "99.9_percent": "0.1 %"}
	for _, row := range table(t, "purge.csv") {
		flow := row["changes_per_hour"] + " m3/h"
		for column, share := range left {
			p := answered(t, vapourSheet, lib, "space", "1 m3", "flow", flow, "left", share, "moves", airSwept)
			wantNear(t, "changes", figureOf(t, p, "changes").Value.SI, read64(t, row["changes_per_hour"]), 1e-9)
			clear := figureOf(t, p, "clear")
			if got := math.Round(clear.Value.SI / 60); got != read64(t, row[column]) || clear.Range != nil {
				t.Errorf("%s, %s left: %v min (%v), want %s", flow, share, got, clear.Range, row[column])
			}
			p = answered(t, vapourSheet, lib, "space", "1 m3", "flow", flow, "left", share)
			wantNear(t, "badly mixed", figureOf(t, p, "clear").Range.High.SI, 10*clear.Value.SI, 1e-9)
		}
	}
}

// Published: engineeringtoolbox.com/room-polution-concentration-d_120.html, to
// four places, for 1 into a volume of 1 each hour. Here a thousandth of that, so
// that all of the air is never vapour: 10 m3 of it each hour, of 300 L/L, into
// 10 000 m3.
func TestVapourFills(t *testing.T) {
	lib := builtIn(t)
	for _, row := range table(t, "room.csv") {
		for _, minutes := range []string{"10", "40", "160"} {
			vapour := 10 * read64(t, minutes) / 60 // m3
			p := answered(t, vapourSheet, lib, "of", ownSolvent, "makes", "300 L/L", "solvent", "100 %", "limit", "2 %",
				"sprayed", q.Show(q.Metric, q.Number(vapour/300*1e6))+" mL", "space", "10000 m3", "spray", minutes+" min", "flash", "0 min",
				"flow", q.Show(q.Metric, q.Number(read64(t, row["changes_per_hour"])*1e4))+" m3/h", "moves", airSwept)
			got := figureOf(t, p, "vapour-in-air")
			if want := read64(t, row[minutes]); math.Abs(1e3*got.Value.SI-want) > 0.005*want+5e-5 {
				t.Errorf("%s changes after %s min: %.5f, want %.4f", row["changes_per_hour"], minutes, 1e3*got.Value.SI, want)
			}
			wantNear(t, "of the limit", figureOf(t, p, "level").Value.SI, got.Value.SI/0.02, 1e-9)
		}
	}
}

// Worked by hand: a paint of 50 % solids whose vapour has an LEL of 3 % and a
// yield of 300, and as much of a thinner of 50 % water, 1 % and 100. Of a litre
// of mix 250 mL of each evaporate. A quarter of the vapour is the thinner's:
// LEL 1/(0.75/3 + 0.25/1) = 2 %, 200 L/L, half of the mix.
func TestVapourOfMix(t *testing.T) {
	lib := thinned(
		library.Material{SolidsByVolume: 0.5, Vapour: library.Vapour{LEL: 0.03, Yield: 300}},
		library.Material{Water: 0.5, Vapour: library.Vapour{LEL: 0.01, Yield: 100}}, only[q.Fraction](1))
	p := answered(t, vapourSheet, lib, "sprayed", "300 mL", "spray", "10 min", "flash", "20 min")
	wantNear(t, "LEL", figureOf(t, p, "lel").Value.SI, 0.02, 1e-9)
	wantNear(t, "yield", figureOf(t, p, "yield").Value.SI, 200, 1e-9)
	wantNear(t, "solvent", figureOf(t, p, "solvent-share").Value.SI, 0.5, 1e-9)
	rate := figureOf(t, p, "rate")
	wantNear(t, "rate, at the most", rate.Range.High.SI*60e6, 15, 1e-9)
	wantNear(t, "rate, at the least", rate.Range.Low.SI*60e6, 5, 1e-9)
	// Worked by hand: nothing leaves a shut room. 150 mL make 30 L of vapour: 0.1 %
	// of 30 m3, a twentieth of the LEL.
	p = answered(t, vapourSheet, lib, "sprayed", "300 mL", "space", "30 m3", "flow", "0 m3/h")
	wantNear(t, "level in a shut room", figureOf(t, p, "level").Value.SI, 0.05, 1e-9)
	if hasFigure(p, "clear") || hasFigure(p, "changes") || !strings.Contains(strings.Join(p.Answer.Says, " "), "does not clear") {
		t.Errorf("a shut room clears: %q", p.Answer.Says)
	}
}

// A mix with a solvent of which nobody knows how it burns is not offered.
func TestVapourOffersWhatIsKnown(t *testing.T) {
	known := library.Vapour{LEL: 0.01, Yield: 100}
	for _, c := range []struct {
		name           string
		paint, thinner library.Material
		want           string
	}{
		{"both known", library.Material{Vapour: known}, library.Material{Vapour: known}, "paint"},
		{"thinner not known", library.Material{Vapour: known}, library.Material{}, ownSolvent},
		{"thinned with water", library.Material{Vapour: known}, library.Material{Water: 1}, "paint"},
		{"no solvent at all", library.Material{SolidsByVolume: 1}, library.Material{Water: 1}, ownSolvent},
	} {
		lib := thinned(c.paint, c.thinner, only[q.Fraction](0.1))
		if p := answered(t, vapourSheet, lib); p.Values["of"] != c.want {
			t.Errorf("%s: it starts with %q, want %q", c.name, p.Values["of"], c.want)
		}
	}
}

// It says loudly that it is about fire, and lets nobody off.
func TestVapourIsAboutFire(t *testing.T) {
	lib := builtIn(t)
	for _, c := range []struct {
		sprayed, level, says string
	}{
		{"10 mL", "care", "That is about fire, and no answer to what may be breathed."},
		{"1 L", "no", "The fire codes want the air below 25 % of it."},
		{"10 L", "no", "a spark can set the air of the whole space on fire."},
	} {
		p := answered(t, vapourSheet, lib, "of", ownSolvent, "sprayed", c.sprayed, "solvent", "100 %", "space", "20 m3", "flow", "100 m3/h")
		a := p.Answer
		if a.Verdict.Level != c.level || !strings.HasSuffix(a.Verdict.Says, c.says) {
			t.Errorf("%s: %v, want %s: ... %s", c.sprayed, *a.Verdict, c.level, c.says)
		}
		if !strings.HasPrefix(a.Says[0], "This is about fire alone.") || a.Defers != ventilation.Defer {
			t.Errorf("%s: says %q and defers %q", c.sprayed, a.Says, a.Defers)
		}
	}
}

func TestVapourTells(t *testing.T) {
	checkTold(t, vapourSheet, builtIn(t), []told{
		{[]string{"sprayed", "0 mL"}, "sprayed", `Found "0 mL", expected 1 mL to 1 m³.`},
		{[]string{"spray", "0 min"}, "spray", `Found "0 min", expected 1 min to 24 h.`},
		{[]string{"space", "0 m3"}, "space", `Found "0 m3", expected 0.1 to 100000 m³.`},
		{[]string{"left", "0 %"}, "left", `Found "0 %", expected 0.0001 to 99 %.`},
		{[]string{"of", ownSolvent, "limit", "60 %"}, "limit", `Found "60 %", expected 0.1 to 20 %.`},
		{[]string{"of", ownSolvent, "solvent", "0 %"}, "solvent", `Found "0 %", expected more than nothing.`},
		{[]string{"moves", "still"}, "moves", `Found "still", expected one of the list.`},
	})
}
