package weather

import (
	"time"

	"coatwright/planner/air"
	q "coatwright/quantity"
)

// Start is an hour to start at.
type Start struct {
	At    time.Time
	Worst float64 // the score at its worst while the work lasts
	Held  bool    // some of that time lies outside the series
}

// look is how often the air is looked at while work lasts.
const look = 10 * time.Minute

// Best returns the start from which work of a length goes best: the one at which
// the worst score while it lasts is least, and the earliest of equals. A score
// judges an air, 0 for the best and more the worse it is, such as the strain of
// a room. Starts for which an end of the series must be held are taken only
// where there are no others. ok is false where there are no starts.
func (s Series) Best(starts []time.Time, lasts q.Time, score func(air.Air) float64) (best Start, ok bool) {
	for _, at := range starts {
		start := s.judge(at, lasts, score)
		if !ok || start.before(best) {
			best, ok = start, true
		}
	}
	return best, ok
}

func (a Start) before(b Start) bool {
	switch {
	case a.Held != b.Held:
		return b.Held
	case a.Worst != b.Worst:
		return a.Worst < b.Worst
	}
	return a.At.Before(b.At)
}

func (s Series) judge(at time.Time, lasts q.Time, score func(air.Air) float64) Start {
	out := Start{At: at}
	end := at.Add(lasts.Duration())
	judge := func(t time.Time) {
		a, where := s.At(t)
		out.Worst = max(out.Worst, score(a))
		out.Held = out.Held || where != Within
	}
	for t := at; t.Before(end); t = t.Add(look) {
		judge(t)
	}
	judge(end)
	return out
}
