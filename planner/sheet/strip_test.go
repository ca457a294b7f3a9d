package sheet

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"coatwright/planner"
	q "coatwright/quantity"
)

// candied is an invented strip of two agreed coats.
func candied() planner.Strip {
	s := planner.Strip{
		Step: "spray", Title: "Candy colour", Candy: "#0f6f6b", Ground: "#8a8d90", Wanted: "#064b48", Agreed: 2,
		Nearest: &planner.StripMatch{Coats: 3, Left: 1.31, Best: 3.1, BestLeft: 1.25, Agreed: 7.4},
		Even:    &planner.StripEven{Variation: 10, Thin: 1.84, Thick: 1.71, Just: 5.632, Plain: 12.1},
		Sags:    []planner.StripSag{{Times: 1.5, Change: 7.04, Darker: 9.41}, {Times: 2, Change: 11.6, Darker: 16.6}},
		Remark:  "The swatch is too dark to tell how strong the candy is.",
	}
	for i, hex := range []string{"#8a8d90", "#567273", "#2e5d5b", "#064b48", "#003b38", "#002e2a", "#00231f"} {
		s.Coats = append(s.Coats, planner.StripCoat{Coats: i, Seen: planner.Seen{Hex: hex, OnScreen: i < 5, L: 58 - 7*float64(i), A: -4 * float64(i), B: -1}, Change: 16.1 - 3*float64(i)})
	}
	return s
}

func TestStripText(t *testing.T) {
	one := candied()
	one.Nearest.Coats, one.Remark = 1, ""
	for _, c := range []struct {
		strip planner.Strip
		want  []string
	}{
		{candied(), []string{
			"3 coats come nearest to the colour wanted, #064b48: 1.3 from it.",
			"Lay it even to 5.63 % either way, and no eye sees it; 10 % off shows as 1.8.",
			"A sag 1.5 times as thick looks 7.0 from the rest and loses 9.4 of L*.",
			"A sag 2 times as thick looks 11.6 from the rest and loses 16.6 of L*.",
			"The swatch is too dark to tell how strong the candy is.",
			"Changes are CIEDE2000: 1 just shows side by side, 2.3 most people see. Spray a test card, and let that decide.",
		}},
		{one, []string{
			"1 coat comes nearest to the colour wanted, #064b48: 1.3 from it.",
			"Lay it even to 5.63 % either way, and no eye sees it; 10 % off shows as 1.8.",
			"A sag 1.5 times as thick looks 7.0 from the rest and loses 9.4 of L*.",
			"A sag 2 times as thick looks 11.6 from the rest and loses 16.6 of L*.",
			"Changes are CIEDE2000: 1 just shows side by side, 2.3 most people see. Spray a test card, and let that decide.",
		}},
		{planner.Strip{Missing: "The job does not say."}, nil},
	} {
		if diff := cmp.Diff(c.want, StripText(c.strip, q.Metric)); diff != "" {
			t.Errorf("(-want +got):\n%s", diff)
		}
	}
}
