package drying

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"coatwright/planner/air"
	q "coatwright/quantity"
)

var paces = []Pace{Evaporation, Solvent, Cure}

// near fails unless got is within a share tolerance of want.
func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance*want) {
		t.Errorf("%s = %.5g, want %.5g within %g %%", what, got, want, 100*tolerance)
	}
}

func at(celsius, percent, speed float64) air.Air {
	return air.Air{Temperature: q.Celsius(celsius), Humidity: q.Fraction(percent / 100), Speed: q.Speed(speed)}
}

func TestReferenceAirChangesNothing(t *testing.T) {
	for _, p := range append(paces, "standing") {
		if got := Factor(p, Reference()); got != 1 {
			t.Errorf("Factor(%s, reference) = %v, want 1", p, got)
		}
	}
}

// Worked out beside the program: the ratio of the brackets for the air speed,
// times exp(E/R (1/T - 1/296.15)) with E = 43 kJ/mol.
func TestSolvent(t *testing.T) {
	for _, c := range []struct{ celsius, percent, speed, want float64 }{
		{23, 90, 0.1, 1}, // damp does not matter
		{23, 50, 0.5, 0.75582},
		{33, 50, 0.1, 1 / 1.76899},
		{13, 50, 0.1, 1.84095},
		{33, 50, 0.5, 0.75582 / 1.76899},
	} {
		near(t, "Factor", Factor(Solvent, at(c.celsius, c.percent, c.speed)), c.want, 1e-5)
	}
}

func TestNothingDriesInSaturatedAir(t *testing.T) {
	if got := Factor(Evaporation, at(20, 100, 1)); !math.IsInf(got, 1) {
		t.Errorf("Factor = %v, want +Inf", got)
	}
	if got := Time(1200, Evaporation, at(20, 100, 1), 1, 1); !math.IsInf(float64(got), 1) {
		t.Errorf("Time = %v, want +Inf", got)
	}
	if got := Time(0, Evaporation, at(20, 100, 1), 1, 1); got != 0 {
		t.Errorf("Time for nothing = %v, want 0", got)
	}
}

func TestTimeGoesByTheFilm(t *testing.T) {
	const um = 1e-6
	for _, c := range []struct {
		pace            Pace
		build, refBuild q.Length
		want            q.Time
	}{
		{Evaporation, 30 * um, 15 * um, 1200},
		{Solvent, 30 * um, 15 * um, 1200},
		{Cure, 30 * um, 15 * um, 600},
		{Evaporation, 0, 0, 600}, // no build given
	} {
		got := Time(600, c.pace, Reference(), c.build, c.refBuild)
		near(t, string(c.pace), float64(got), float64(c.want), 1e-9)
	}
}

// Warmer, drier or windier air is never slower, from 5 to 40 C and 5 to 95 %.
func TestBetterAirIsNeverSlower(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		celsius := rapid.Float64Range(5, 40)
		percent := rapid.Float64Range(5, 95)
		speed := rapid.Float64Range(0, 5)
		worse := at(celsius.Draw(t, "celsius"), percent.Draw(t, "percent"), speed.Draw(t, "speed"))
		better := worse
		switch rapid.SampledFrom([]string{"warmer", "drier", "windier"}).Draw(t, "change") {
		case "warmer":
			better.Temperature = max(worse.Temperature, q.Celsius(celsius.Draw(t, "warmer")))
		case "drier":
			better.Humidity = min(worse.Humidity, q.Fraction(percent.Draw(t, "drier")/100))
		case "windier":
			better.Speed = max(worse.Speed, q.Speed(speed.Draw(t, "windier")))
		}
		for _, p := range paces {
			if b, w := Factor(p, better), Factor(p, worse); b > w*(1+1e-9) {
				t.Errorf("%s: factor %v in %+v, but %v in %+v", p, b, better, w, worse)
			}
		}
	})
}
