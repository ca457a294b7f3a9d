package drying

import (
	"testing"

	"pgregory.net/rapid"

	q "coatwright/quantity"
)

// A state's time is that of Time, with the film's growth and a known energy.
func TestStateTime(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := at(rapid.Float64Range(5, 40).Draw(t, "celsius"), rapid.Float64Range(5, 95).Draw(t, "percent"), 0.2)
		build := q.Length(rapid.Float64Range(5e-6, 50e-6).Draw(t, "build"))
		p := rapid.SampledFrom(append(paces, "standing")).Draw(t, "pace")
		s := State{In: 1800, By: p, Film: Thickness(p, build, 15e-6).Likely}
		if got, want := float64(s.Time(a)), float64(Time(1800, p, a, build, 15e-6)); got < want*(1-1e-9) || got > want*(1+1e-9) {
			t.Fatalf("%s: %v, want %v", p, got, want)
		}
		e := s.Times(a)
		if !(e.Low <= e.Likely && e.Likely <= e.High) || e.Likely != s.Time(a) || p != Cure && e.Low != e.High {
			t.Fatalf("%s: %+v", p, e)
		}
	})
}

func TestKnownEnergyStandsAlone(t *testing.T) {
	s := State{In: 3600, By: Cure, Energy: 70e3}
	e := s.Times(at(33, 50, 0.1))
	near(t, "time", float64(e.Likely), 3600/2.531, 0.001) // worked independently, see TestArrhenius
	if e.Low != e.High {
		t.Errorf("%+v has a range", e)
	}
}
