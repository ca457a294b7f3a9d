package drying

import (
	"testing"

	"pgregory.net/rapid"
)

// "A small fan dries three to four times faster": common practice, no published
// source. Carrier's equation asks for 2.58 to 3.81 m/s, and gives 2.53 to 3.34
// times for a fan of 2 to 3 m/s, worked independently. The second published
// equation for free water, (25 + 19 v)(xs - x) (engineeringtoolbox.com), asks for
// 2.93 to 4.35 m/s, within a sixth of it.
func TestSmallFan(t *testing.T) {
	for _, c := range []struct {
		times, speed, second float64
	}{{3, 2.58, 2.93}, {4, 3.81, 4.35}} {
		got := float64(FanSpeed(0.1, c.times))
		near(t, "speed by Carrier", got, c.speed, 0.005)
		near(t, "speed by the second equation", (c.times*(25+19*0.1)-25)/19, c.second, 0.005)
		near(t, "the two", got/c.second, 1, 0.15)
	}
	for _, c := range []struct{ speed, times float64 }{{2, 2.53}, {3, 3.34}} {
		near(t, "gain", Factor(Evaporation, Reference())/Factor(Evaporation, at(23, 50, c.speed)), c.times, 0.005)
	}
}

// The gain of a fan is the same in any air and for solvent.
func TestFanSpeedGivesTheGain(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		still := at(rapid.Float64Range(5, 40).Draw(t, "celsius"), rapid.Float64Range(5, 95).Draw(t, "percent"), rapid.Float64Range(0, 1).Draw(t, "speed"))
		n := rapid.Float64Range(1, 10).Draw(t, "n")
		moved := still
		moved.Speed = FanSpeed(still.Speed, n)
		for _, p := range []Pace{Evaporation, Solvent} {
			if got := Factor(p, still) / Factor(p, moved); got < n*(1-1e-9) || got > n*(1+1e-9) {
				t.Fatalf("%s: %v times, want %v", p, got, n)
			}
		}
	})
}

func TestFanSpeedOfNoFan(t *testing.T) {
	if got := FanSpeed(0.1, 0.5); got != 0 {
		t.Errorf("half the pace of still air at %v m/s, want 0", got)
	}
	if got := FanSpeed(0.3, 1); got < 0.299999 || got > 0.300001 {
		t.Errorf("the pace as it is at %v m/s, want 0.3", got)
	}
}
