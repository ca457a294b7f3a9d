package room

import (
	"math"

	q "coatwright/quantity"
)

// Strain says in one number how far a room is from what films like best, to tell
// the better of two: 0 in the middle of every range, 1 at an end of one, more
// outside. Below 0.8 it is a go for every film, up to 1 care is wanted. It is
// the worst of all its parts, for a film has no use for an average.
func Strain(r Room, films []Wants) float64 {
	worst, over := 0.0, r.Over()
	for _, w := range films {
		worst = max(worst, strain(w.Air, r.Temperature), strain(w.Humidity, r.Humidity), strain(w.Speed, r.Speed), w.strainOver(over))
	}
	return worst
}

// strain is how far x is from the middle of r, by half of its width.
func strain[Q q.Quantity](r q.Range[Q], x Q) float64 {
	if r.IsZero() || x == r.Middle() {
		return 0
	}
	if r.Low == 0 && x < r.Middle() {
		return 0 // from zero on there is no low end to be near
	}
	if r.Low == r.High {
		return math.Inf(1)
	}
	return float64(distance(x, r.Middle()) / (r.High - r.Middle()))
}

// strainOver is the strain of a part that lies so far over the dew point: 1 at
// what is wanted, ever less above, and 1 more for each such step below, or for
// each kelvin where nothing is asked.
func (w Wants) strainOver(over q.Difference) float64 {
	switch {
	case over < w.OverDewPoint-sliver:
		step := w.OverDewPoint
		if step == 0 {
			step = 1
		}
		return 1 + float64((w.OverDewPoint-over)/step)
	case w.OverDewPoint == 0:
		return 0
	}
	return float64(w.OverDewPoint / over)
}
