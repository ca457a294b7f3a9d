package compressor

import (
	"fmt"
	"math"

	q "coatwright/quantity"
)

// Says puts the answer into words, in the units of s. Times to spray are shown
// down to the second or the minute, times to wait up to it.
func (a Answer) Says(s *q.System) string {
	switch a.Verdict {
	case Enough:
		return fmt.Sprintf("Enough: the pump runs %s of the time.%s", q.Show(s, a.Running), a.longest())
	case Pauses:
		return "Enough with pauses: " + a.pauses(s)
	}
	return "Not enough: " + a.lacks(s)
}

// longest says how long one pull may last, where that has an end.
func (a Answer) longest() string {
	if math.IsInf(float64(a.LongestPull), 1) {
		return ""
	}
	return fmt.Sprintf(" One pull of the trigger may last %s.", shown(a.LongestPull, math.Floor))
}

func (a Answer) pauses(s *q.System) string {
	spray, wait, running := shown(a.Spray, math.Floor), shown(a.Wait, math.Ceil), q.Show(s, a.Running)
	switch a.Cause {
	case LongPull:
		return fmt.Sprintf("one pull of the trigger lasts %s from a full tank. Before each long one wait up to %s, until the pump stops.", spray, wait)
	case RunsHot:
		return fmt.Sprintf("the pump may run %s of an hour. Spray %s of it, and let the pump rest for %s.", running, spray, wait)
	}
	return fmt.Sprintf("spray for up to %s from a full tank, then wait %s. The pump runs %s of the time.", spray, wait, running)
}

func (a Answer) lacks(s *q.System) string {
	least := q.Show(s, a.Least)
	switch a.Cause {
	case StopsEarly:
		return fmt.Sprintf("the pump stops at %s in the tank, and the gun and its line need %s.", q.Show(s, a.CutOut), least)
	case StartsLate:
		return fmt.Sprintf("the pump starts only when the tank is down to %s, and the gun and its line need %s. Set the pump to start earlier, or lose less in the line.", q.Show(s, a.CutIn), least)
	}
	return fmt.Sprintf("a full tank and the pump hold one pull of the trigger for %s, and one takes %s.", shown(a.LongestPull, math.Floor), shown(a.Pull, math.Ceil))
}

// shown is a time in whole seconds or, from two minutes on, whole minutes.
func shown(t q.Time, round func(float64) float64) string {
	if t < 120 {
		return fmt.Sprintf("%.0f s", round(float64(t)))
	}
	return q.Time(round(t.Minutes()) * 60).String()
}
