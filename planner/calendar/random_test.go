package calendar

import (
	"errors"
	"slices"
	"testing"
	"time"

	"pgregory.net/rapid"
)

// size bounds the plans that are drawn.
type size struct {
	hours          []string
	acts, painters int
	grid           time.Duration // of work and waits
	windows        bool          // with maximum lags
	floats         bool
}

// drawPlan draws activities and a shop that has the hours for each of them.
func drawPlan(t *rapid.T, z size) ([]Activity, Shop) {
	h, err := ParseHours(rapid.SampledFrom(z.hours).Draw(t, "hours"))
	if err != nil {
		t.Fatal(err)
	}
	shop := Shop{Hours: h, Painters: rapid.IntRange(1, z.painters).Draw(t, "painters")}
	grid := func(name string, longest time.Duration) time.Duration {
		return z.grid * time.Duration(rapid.Int64Range(0, int64(longest/z.grid)).Draw(t, name))
	}
	acts := make([]Activity, rapid.IntRange(1, z.acts).Draw(t, "n"))
	for i := range acts {
		acts[i].Work = grid("work", min(h.Longest(), 4*time.Hour))
		acts[i].Float = z.floats && rapid.Bool().Draw(t, "float")
		for range min(i, rapid.IntRange(0, 2).Draw(t, "lags")) {
			l := Lag{After: rapid.IntRange(0, i-1).Draw(t, "after"), Min: grid("min", 6*time.Hour)}
			if z.windows && rapid.Bool().Draw(t, "window") {
				l.Max = l.Min + grid("room", 20*time.Hour)
			}
			acts[i].Lags = append(acts[i].Lags, l)
		}
	}
	return acts, shop
}

// Every schedule keeps the rules, and none is refused that has no windows.
func TestRandom(t *testing.T) {
	start := at(t, "2026-12-01 08:10")
	rapid.Check(t, func(t *rapid.T) {
		windows := rapid.Bool().Draw(t, "windows")
		acts, shop := drawPlan(t, size{hours: someHours, acts: 25, painters: 3, grid: 5 * time.Minute, windows: windows, floats: true})
		slots, err := Schedule(acts, shop, start)
		var window *WindowError
		if windows && errors.As(err, &window) {
			if window.Best <= window.Max {
				t.Fatalf("refused, yet within the window: %v", err)
			}
			return
		}
		if err != nil {
			t.Fatal(err)
		}
		if err := verify(acts, shop, start, slots); err != nil {
			t.Fatal(err)
		}
	})
}

// What floats cannot be put at any later quarter of an hour while the rest and
// the end of the plan stand still; and floating moves nothing else.
func TestFloat(t *testing.T) {
	start := at(t, "2026-12-01 08:00")
	rapid.Check(t, func(t *rapid.T) {
		acts, shop := drawPlan(t, size{hours: someHours, acts: 10, painters: 2, grid: quarter, windows: true, floats: true})
		slots, err := Schedule(acts, shop, start)
		if err != nil {
			t.Skip(err)
		}
		still := slices.Clone(acts)
		for i := range still {
			still[i].Float = false
		}
		early, err := Schedule(still, shop, start)
		if err != nil {
			t.Fatal(err)
		}
		if !makespan(early).Equal(makespan(slots)) {
			t.Fatalf("floating moves the end from %v to %v", makespan(early), makespan(slots))
		}
		for i, a := range acts {
			if !a.Float {
				if slots[i] != early[i] {
					t.Fatalf("floating moves %d from %v to %v", i, early[i], slots[i])
				}
				continue
			}
			for later := slots[i].Start.Add(quarter); !later.Add(a.Work).After(makespan(slots)); later = later.Add(quarter) {
				moved := slices.Clone(slots)
				moved[i] = Slot{Start: later, End: later.Add(a.Work)}
				if verify(acts, shop, start, moved) == nil {
					t.Fatalf("%d at %v could be at %v", i, slots[i].Start, later)
				}
			}
		}
	})
}
