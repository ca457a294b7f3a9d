package calendar

import (
	"fmt"
	"time"
)

// verify finds what is wrong with a schedule: waits too short or too long, work
// before the start or out of hours, more painters than there are. It knows the
// rules and nothing of the method.
func verify(acts []Activity, shop Shop, start time.Time, slots []Slot) error {
	if len(slots) != len(acts) {
		return fmt.Errorf("%d slots for %d activities", len(slots), len(acts))
	}
	for i, a := range acts {
		s := slots[i]
		if s.Start.Before(start) {
			return fmt.Errorf("%d starts at %v, before %v", i, s.Start, start)
		}
		if got := s.End.Sub(s.Start); got != a.Work {
			return fmt.Errorf("%d takes %v, want %v", i, got, a.Work)
		}
		if got := Span(shop.Hours, s.Start, s.End); got != a.Work {
			return fmt.Errorf("%d: %v of %v within hours", i, got, a.Work)
		}
		for _, l := range a.Lags {
			if wait := s.Start.Sub(slots[l.After].End); wait < l.Min || l.Max > 0 && wait > l.Max {
				return fmt.Errorf("%d: wait of %v after %d, want %v to %v", i, wait, l.After, l.Min, l.Max)
			}
		}
		if n := working(acts, slots, s.Start); n > shop.Painters {
			return fmt.Errorf("%d painters at %v, want %d at most", n, s.Start, shop.Painters)
		}
	}
	return nil
}

// working counts the painters at work at t. They are the most when work starts.
func working(acts []Activity, slots []Slot, t time.Time) int {
	n := 0
	for i, s := range slots {
		if acts[i].Work > 0 && !t.Before(s.Start) && t.Before(s.End) {
			n++
		}
	}
	return n
}

// makespan returns the end of the last slot.
func makespan(slots []Slot) time.Time {
	var end time.Time
	for _, s := range slots {
		if s.End.After(end) {
			end = s.End
		}
	}
	return end
}
