package drying

import (
	"testing"

	"coatwright/planner/air"
	q "coatwright/quantity"
)

func TestHow(t *testing.T) {
	for _, c := range []struct {
		name            string
		in              q.Time
		pace            Pace
		air             air.Air
		build, refBuild q.Length
		want            string
	}{
		{"water", 1200, Evaporation, at(21, 55, 0.1), 1, 1,
			"20 min at 23 °C, 50 % RH, still; ×1.19 because water leaves 84 % as fast (21 °C, 55 % RH, 0.1 m/s; wet bulb 15.3 °C); in all 23.8 min"},
		{"water, wetter film", 1200, Evaporation, at(21, 55, 0.3), 1.25, 1,
			"20 min at 23 °C, 50 % RH, still; ×1.02 because water leaves 98 % as fast (21 °C, 55 % RH, 0.3 m/s; wet bulb 15.3 °C); ×1.25 because the film is 125 % of the one that this time is for; in all 25.6 min"},
		{"water, saturated", 1200, Evaporation, at(21, 100, 0.3), 1, 1,
			"20 min at 23 °C, 50 % RH, still; never in this air, which is full of water (21 °C, 100 % RH, 0.3 m/s)"},
		{"solvent", 7200, Solvent, at(18.5, 80, 0.1), 1, 1,
			"2 h at 23 °C, still; ×1.31 because solvent leaves 76 % as fast (18.5 °C, 0.1 m/s); in all 2.6 h"},
		{"cure", 7 * 86400, Cure, at(15, 50, 0.1), 2, 1,
			"7 d at 23 °C; ×1.76 because it cures 57 % as fast (15 °C, 50 kJ/mol; published 29 to 77 kJ/mol give ×1.39 to ×2.38); in all 12.3 d"},
		{"cure, warm", 48 * 3600, Cure, at(40, 50, 0.1), 1, 1,
			"48 h at 23 °C; ×0.33 because it cures 301 % as fast (40 °C, 50 kJ/mol; published 29 to 77 kJ/mol give ×0.18 to ×0.53); in all 15.9 h"},
		{"no pace", 90, "standing", at(15, 50, 0.1), 1, 1, "90 s in any air"},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := How(c.in, c.pace, c.air, c.build, c.refBuild); got != c.want {
				t.Errorf("How says\n\t%s\nwant\n\t%s", got, c.want)
			}
		})
	}
}
