package drying

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	q "coatwright/quantity"
)

func TestGrid(t *testing.T) {
	s := State{In: 1800, By: Evaporation, Film: 1.2}
	temperatures, humidities := steps(q.Celsius(10), 5, 5), []q.Fraction{0.2, 0.5, 0.8, 1}
	g := s.Grid(Reference(), temperatures, humidities)
	for i, row := range g.Times {
		for j, got := range row {
			a := Reference()
			a.Temperature, a.Humidity = temperatures[i], humidities[j]
			if want := s.Time(a); got != want {
				t.Errorf("at %v, %v: %v, want %v", temperatures[i], humidities[j], got, want)
			}
			if j > 0 && got < row[j-1] {
				t.Errorf("shorter in damper air at row %d", i)
			}
			if i > 0 && got > g.Times[i-1][j] {
				t.Errorf("longer in warmer air at column %d", j)
			}
		}
		if !math.IsInf(float64(row[3]), 1) {
			t.Errorf("%v in full air, want +Inf", row[3])
		}
	}
	least, most, ok := g.Ends()
	if !ok || least != g.Times[4][0] || most != g.Times[0][2] {
		t.Errorf("ends %v, %v, %v", least, most, ok)
	}
}

func TestGridWhereNothingDries(t *testing.T) {
	g := State{In: 1800, By: Evaporation}.Grid(Reference(), []q.Temperature{280, 290}, []q.Fraction{1})
	if _, _, ok := g.Ends(); ok {
		t.Error("a grid of +Inf has ends")
	}
}

// On the line of a time the time is that, and the dampest air for longer is
// damper.
func TestMostHumidity(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := State{In: 1800, By: Evaporation}
		a := at(rapid.Float64Range(5, 40).Draw(t, "celsius"), 50, rapid.Float64Range(0, 3).Draw(t, "speed"))
		within := q.Time(rapid.Float64Range(600, 20000).Draw(t, "within"))
		most, ok := s.MostHumidity(a, within)
		if !ok {
			a.Humidity = 0
			if s.Time(a) <= within {
				t.Fatal("dry air would do")
			}
			return
		}
		a.Humidity = most
		if got := float64(s.Time(a) / within); got > 1 || got < 0.999 {
			t.Fatalf("at %v it takes %v of the time", most, got)
		}
		if later, ok := s.MostHumidity(a, within*2); !ok || later < most {
			t.Fatalf("%v for twice the time, %v for once", later, most)
		}
	})
}

func TestMostHumidityForACure(t *testing.T) {
	s := State{In: 3600, By: Cure}
	if most, ok := s.MostHumidity(Reference(), 3600); !ok || most != 1 {
		t.Errorf("%v, %v; want any air", most, ok)
	}
	if _, ok := s.MostHumidity(Reference(), 3599); ok {
		t.Error("no air cures faster for being dry")
	}
}
