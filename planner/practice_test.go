package planner_test

import (
	"testing"

	"coatwright/planner"
	"coatwright/planner/drying"
	"coatwright/planner/library"
	"coatwright/planner/mix"
	"coatwright/planner/route"
	q "coatwright/quantity"
)

// TestTradeRules holds the built-in notes, and what is worked out of them, to the
// trade's rules of thumb. All are common practice, no published source.
func TestTradeRules(t *testing.T) {
	lib := builtIn(t)
	about := func(what string, got, low, high float64) {
		t.Helper()
		if got < low || got > high {
			t.Errorf("%s: %g, common practice has %g to %g", what, got, low, high)
		}
	}
	share := func(material, applicator, part string) float64 {
		for _, p := range planner.MixParts(lib.Materials[material], lib, applicator) {
			if p.Name == part {
				return p.Share.Percent()
			}
		}
		t.Errorf("there is no %s in %s", part, material)
		return 0
	}
	about("candy concentrate in the binder for a gun, %", share("candy-concentrate", "hvlp-gun", "candy-concentrate"), 28, 32)
	about("candy concentrate in the binder for an airbrush, %", share("candy-concentrate", "airbrush", "candy-concentrate"), 40, 50)
	about("thinner for a gun, %", share("candy-concentrate", "hvlp-gun", "waterborne-reducer"), 5, 10)
	about("thinner in a candy for an airbrush, %", share("candy-concentrate", "airbrush", "waterborne-reducer"), 2.5, 2.5)
	about("thinner in a metallic, %", share("fine-metallic", "hvlp-gun", "waterborne-reducer"), 9, 11)
	metallic := planner.MixParts(lib.Materials["fine-metallic"], lib, "hvlp-gun")
	about("metallic to clear binder", metallic[0].Parts/metallic[1].Parts, 4, 4)
	about("stand after mixing, min", lib.Materials["candy-concentrate"].Stand.Minutes(), 15, 15)
	about("airbrush, psi", float64(lib.Tools["airbrush"].Applicator.Pressure.Middle())/6894.757, 30, 40)
	about("coats of ground", float64(lib.Materials["waterborne-ground"].Coats), 2, 2)

	about("recoat of a waterborne ground, min", lag(t, lib, "waterborne-ground", library.Recoat, 0.1).Minutes(), 25, 40)
	about("tape on a waterborne candy with a fan, min", lag(t, lib, "candy-concentrate", "dry-to-tape", 2.5).Minutes(), 50, 90)
	about("waterborne film cured, h", lag(t, lib, "waterborne-ground", "cured", 0.1).Minutes()/60, 44, 52)
	fan, still := drying.Reference(), drying.Reference()
	fan.Speed = 3
	about("times as fast with a fan of 3 m/s", drying.Factor(drying.Evaporation, still)/drying.Factor(drying.Evaporation, fan), 3, 4)
}

// lag is how long a material takes to a state at 23 C and 50 %, in air of a speed.
func lag(t *testing.T, lib *library.Library, material, state string, speed q.Speed) q.Time {
	t.Helper()
	air := drying.Reference()
	air.Speed = speed
	job := &planner.Job{Applicators: []string{"hvlp-gun"}, Room: planner.Room{Air: air, Surface: air.Temperature}}
	got, ok := planner.NewDrying(job, lib).Lag(route.Coating{Material: lib.Materials[material], Tool: lib.Tools["hvlp-gun"]}, state)
	if !ok {
		t.Errorf("%s never is %s", material, state)
	}
	return got
}

// The concentrate goes into its binder before any thinner: common practice, no
// published source. An order that breaks the materials' own rule is put right.
func TestConcentrateNeverMeetsRawThinner(t *testing.T) {
	lib := builtIn(t)
	for slug, m := range lib.Materials {
		if len(m.Mix) == 0 {
			continue
		}
		for _, tool := range []string{"hvlp-gun", "airbrush"} {
			if breaches := mix.CheckOrder(planner.MixParts(m, lib, tool)); len(breaches) > 0 {
				t.Errorf("%s for the %s: %v", slug, tool, breaches)
			}
		}
	}
	turned := *lib.Materials["candy-concentrate"]
	turned.Mix = append([]library.MixPart{turned.Mix[0], turned.Mix[2]}, turned.Mix[1])
	parts := planner.MixParts(&turned, lib, "hvlp-gun")
	if last := parts[len(parts)-1].Name; last != "waterborne-reducer" {
		t.Errorf("written with the thinner before the concentrate, %s goes in last", last)
	}
}
