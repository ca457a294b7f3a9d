package drying

import (
	"testing"

	q "coatwright/quantity"
)

// "Applied twice as thick as recommended it will take at least twice as long to
// dry" (common practice, as a maker's page has it): the first power is the
// least. Measured films go by the first power and then by the square.
func TestThickness(t *testing.T) {
	const um = 1e-6
	for _, c := range []struct {
		pace            Pace
		build, refBuild q.Length
		want            Growth
	}{
		{Evaporation, 30 * um, 15 * um, Growth{2, 2, 4}},
		{Solvent, 10 * um, 20 * um, Growth{0.25, 0.5, 0.5}},
		{Evaporation, 15 * um, 15 * um, Growth{1, 1, 1}},
		{Cure, 30 * um, 15 * um, Growth{1, 1, 1}},
		{"standing", 30 * um, 15 * um, Growth{1, 1, 1}},
		{Evaporation, 30 * um, 0, Growth{1, 1, 1}},
	} {
		got := Thickness(c.pace, c.build, c.refBuild)
		near(t, "low", got.Low, c.want.Low, 1e-9)
		near(t, "likely", got.Likely, c.want.Likely, 1e-9)
		near(t, "high", got.High, c.want.High, 1e-9)
	}
}
