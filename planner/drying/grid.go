package drying

import (
	"math"

	"coatwright/planner/air"
	q "coatwright/quantity"
)

// Grid is the time to a state over temperature and humidity, for a chart.
type Grid struct {
	Temperatures []q.Temperature // of the rows
	Humidities   []q.Fraction    // of the columns
	Times        [][]q.Time      // by row, then column; +Inf where nothing dries, which JSON cannot say
}

// Grid returns the times to s over rows of temperature and columns of humidity,
// at the speed and the pressure of a. Where both rise, a row never gets shorter
// to the right, nor a column longer downwards.
func (s State) Grid(a air.Air, temperatures []q.Temperature, humidities []q.Fraction) Grid {
	g := Grid{temperatures, humidities, make([][]q.Time, len(temperatures))}
	for i, t := range temperatures {
		g.Times[i] = make([]q.Time, len(humidities))
		for j, h := range humidities {
			a.Temperature, a.Humidity = t, h
			g.Times[i][j] = s.Time(a)
		}
	}
	return g
}

// Ends returns the shortest and the longest time in the grid that is not +Inf;
// ok is false where there is none.
func (g Grid) Ends() (least, most q.Time, ok bool) {
	for _, row := range g.Times {
		for _, t := range row {
			if math.IsInf(float64(t), 1) {
				continue
			}
			if !ok {
				least, most = t, t
			}
			least, most, ok = min(least, t), max(most, t), true
		}
	}
	return least, most, ok
}

// MostHumidity returns how humid air of the temperature, speed and pressure of a
// may be for s to be reached within a time: over several temperatures, the line
// of that time on a Grid. It is 1 for what humidity does not touch; ok is false
// where not even dry air is soon enough.
func (s State) MostHumidity(a air.Air, within q.Time) (most q.Fraction, ok bool) {
	a.Humidity = 1
	if s.Time(a) <= within {
		return 1, true
	}
	a.Humidity = 0
	if s.Time(a) > within {
		return 0, false
	}
	low, high := q.Fraction(0), q.Fraction(1)
	for high-low > 1e-6 {
		if a.Humidity = (low + high) / 2; s.Time(a) <= within {
			low = a.Humidity
		} else {
			high = a.Humidity
		}
	}
	return low, true
}
