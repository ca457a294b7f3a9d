package drying

import (
	"math"
	"testing"

	"coatwright/planner/air"
	q "coatwright/quantity"
)

func BenchmarkFactor(b *testing.B) {
	a := at(21, 55, 0.3)
	for b.Loop() {
		Factor(Evaporation, a)
	}
}

// steps are n values from low on, so far apart.
func steps[Q q.Quantity](low, apart Q, n int) []Q {
	out := make([]Q, n)
	for i := range out {
		out[i] = low + apart*Q(i)
	}
	return out
}

func BenchmarkGrid(b *testing.B) {
	s := State{In: 1200, By: Evaporation}
	temperatures, humidities := steps(q.Celsius(5), 3, 12), steps[q.Fraction](0.1, 0.09, 10)
	for b.Loop() {
		s.Grid(Reference(), temperatures, humidities)
	}
}

// day is air that swings between day and night.
func day(after q.Time) air.Air {
	swing := math.Sin(2 * math.Pi * float64(after) / 86400)
	return air.Air{Temperature: q.Celsius(15 + 8*swing), Humidity: q.Fraction(0.6 - 0.2*swing), Speed: 0.2}
}

func benchmarkWeek(b *testing.B, p Pace) {
	s := State{In: 30 * 86400, By: p}
	for b.Loop() {
		s.Done(day, 7*86400)
	}
}

func BenchmarkWeekOfCure(b *testing.B)  { benchmarkWeek(b, Cure) }
func BenchmarkWeekOfWater(b *testing.B) { benchmarkWeek(b, Evaporation) }

func BenchmarkBake(b *testing.B) {
	s := State{In: 12 * 3600, By: Cure}
	o := Oven{Room: Reference(), Flash: State{In: 600, By: Solvent}, HeatUp: 900, Film: q.Celsius(60)}
	for b.Loop() {
		if _, err := s.Bake(o); err != nil {
			b.Fatal(err)
		}
	}
}
