package film

import (
	"testing"

	"pgregory.net/rapid"

	q "coatwright/quantity"
)

func lengths(low, high q.Length) q.Range[q.Length] { return q.Range[q.Length]{Low: low, High: high} }

// Worked by hand: 2 coats of 15 to 20, 3 of 8 to 10, 2 of 25 to 30 um.
func TestHeights(t *testing.T) {
	got := Heights([]Layer{{lengths(15*um, 20*um), 2}, {lengths(8*um, 10*um), 3}, {lengths(25*um, 30*um), 2}})
	want := []q.Range[q.Length]{lengths(30*um, 40*um), lengths(54*um, 70*um), lengths(104*um, 130*um)}
	for i := range want {
		near(t, "low", float64(got[i].Low), float64(want[i].Low), 1e-12)
		near(t, "high", float64(got[i].High), float64(want[i].High), 1e-12)
	}
	if got := Heights(nil); len(got) != 0 {
		t.Errorf("heights of nothing = %v", got)
	}
}

func TestHeightsRise(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		layers := make([]Layer, rapid.IntRange(1, 8).Draw(t, "layers"))
		for i := range layers {
			low := anyOf[q.Length](t, "low", 0, 50*um)
			layers[i] = Layer{lengths(low, low+anyOf[q.Length](t, "spread", 0, 20*um)), rapid.IntRange(0, 5).Draw(t, "coats")}
		}
		var below q.Range[q.Length]
		for _, h := range Heights(layers) {
			if h.Low < below.Low || h.High < below.High || h.Low > h.High {
				t.Errorf("%v over %v", h, below)
			}
			below = h
		}
	})
}

func BenchmarkHeights(b *testing.B) {
	layers := []Layer{{lengths(15*um, 20*um), 2}, {lengths(8*um, 10*um), 3}, {lengths(25*um, 30*um), 2}}
	for b.Loop() {
		Heights(layers)
	}
}
