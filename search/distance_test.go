package search

import (
	"testing"

	"pgregory.net/rapid"
)

func TestDistances(t *testing.T) {
	for _, test := range []struct {
		word, other string
		full, start int
	}{
		{"candy", "candy", 0, 0},
		{"cnady", "candy", 1, 1},
		{"fisheys", "fisheye", 1, 1},
		{"fisheys", "fisheyes", 1, 1},
		{"poliprop", "polypropylene", 3, 1}, // beyond two it is not counted
		{"candy", "sandy", 1, 1},
		{"matt", "clear", 3, 3},
		{"grün", "grun", 1, 1},
	} {
		if full, start := newMeasure(test.word).distances(test.other, 2); full != test.full || start != test.start {
			t.Errorf("%s and %s: %d and %d slips, want %d and %d", test.word, test.other, full, start, test.full, test.start)
		}
	}
}

// TestDistancesAgainstDefinition compares with the recursive definition of
// optimal string alignment, and with its least over all beginnings.
func TestDistancesAgainstDefinition(t *testing.T) {
	const most = 2
	rapid.Check(t, func(t *rapid.T) {
		word := rapid.StringOfN(rapid.RuneFrom([]rune("abö")), 1, 6, -1).Draw(t, "word")
		other := rapid.StringOfN(rapid.RuneFrom([]rune("abö")), 1, 6, -1).Draw(t, "other")
		letters := []rune(other)
		wantFull := aligned([]rune(word), letters)
		wantStart := wantFull
		for i := range letters {
			wantStart = min(wantStart, aligned([]rune(word), letters[:i]))
		}
		full, start := newMeasure(word).distances(other, most)
		if full != min(wantFull, most+1) || start != min(wantStart, most+1) {
			t.Fatalf("%d and %d slips, want %d and %d, at most %d", full, start, wantFull, wantStart, most+1)
		}
	})
}

func aligned(a, b []rune) int {
	if len(a) == 0 || len(b) == 0 {
		return len(a) + len(b)
	}
	x, y := a[:len(a)-1], b[:len(b)-1]
	change := 1
	if a[len(a)-1] == b[len(b)-1] {
		change = 0
	}
	least := min(aligned(x, b)+1, aligned(a, y)+1, aligned(x, y)+change)
	if len(x) > 0 && len(y) > 0 && a[len(a)-1] == y[len(y)-1] && x[len(x)-1] == b[len(b)-1] {
		least = min(least, aligned(x[:len(x)-1], y[:len(y)-1])+1)
	}
	return least
}
