package film

import (
	"testing"

	q "coatwright/quantity"
)

func TestFills(t *testing.T) {
	for _, c := range []struct {
		total, cup q.Volume
		want       int
	}{
		{0, 600 * ml, 0}, {1 * ml, 600 * ml, 1}, {600 * ml, 600 * ml, 1}, {601 * ml, 600 * ml, 2},
		{3 * (0.1 + 0.2) * 1e-3, 0.3e-3, 3}, // a sliver over 900 mL
		{900 * ml, 0, 1},
	} {
		if got := Fills(c.total, c.cup); got != c.want {
			t.Errorf("Fills(%v mL, %v mL) = %d, want %d", c.total.Millilitres(), c.cup.Millilitres(), got, c.want)
		}
	}
}
