package drying

import (
	"math"
	"strings"
	"testing"

	"coatwright/planner/air"
	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// Worked by hand from the inputs alone, the formula gives the time.
func TestInputsGiveTheTime(t *testing.T) {
	a := at(17, 65, 0.4)
	r := RatesIn(a)
	from := Origins{Time: trace.Origin{From: trace.FromNote, At: "material/x"}, Air: trace.Origin{From: trace.FromRoom}, Film: trace.Origin{From: trace.FromJob}}
	for _, p := range append(paces, "standing") {
		in := map[string]float64{}
		for _, i := range r.Inputs(1800, p, 30e-6, 20e-6, from) {
			in[i.Symbol] = i.Value.SI
			if i.Name == "" || i.Origin.From == "" {
				t.Errorf("%s: input %+v lacks a name or an origin", p, i)
			}
			if !strings.Contains(FormulaOf(p).Text, strings.TrimRight(i.Symbol, "0_")) && p != Evaporation && p != "standing" {
				t.Errorf("%s: %s is not in %q", p, i.Symbol, FormulaOf(p).Text)
			}
		}
		near(t, string(p), byHand(p, in), float64(r.Time(1800, p, 30e-6, 20e-6)), 1e-9)
	}
}

func byHand(p Pace, in map[string]float64) float64 {
	const R = 8.314462618
	bracket := func(v float64) float64 { return 0.089 + 0.0782*v }
	switch p {
	case Evaporation:
		leaves := func(t, rh, v, wet float64) float64 {
			drive := float64(air.SaturationPressure(q.Temperature(wet))) - rh*float64(air.SaturationPressure(q.Temperature(t)))
			return bracket(v) * drive / (1e3 * (2501 - 2.326*(wet-273.15)))
		}
		wet0 := float64(Reference().WetBulb())
		return in["t0"] * leaves(in["t_0"], in["RH0"], in["v0"], wet0) / leaves(in["t"], in["RH"], in["v"], in["t_wet"]) * in["d"] / in["d0"]
	case Solvent:
		return in["t0"] * bracket(in["v0"]) / bracket(in["v"]) * math.Exp(in["H"]/R*(1/in["T"]-1/in["T0"])) * in["d"] / in["d0"]
	case Cure:
		return in["t0"] * math.Exp(in["E"]/R*(1/in["T"]-1/in["T0"]))
	}
	return in["t0"]
}

// Every formula has a text, a source and a note.
func TestFormulas(t *testing.T) {
	for _, f := range []trace.Formula{WaterFormula, SolventFormula, CureFormula, FilmFormula, EquivalentFormula, EnergyFormula, PotLifeFormula, CourseFormula, FanFormula, BakeFormula} {
		if f.Text == "" || f.Source == "" || !strings.HasPrefix(f.Note, "background/") {
			t.Errorf("incomplete: %+v", f)
		}
	}
}
