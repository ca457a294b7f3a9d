package calendar

import (
	"errors"
	"fmt"
	"time"
)

// Schedule places activities in the order of the list, each at the earliest
// time that its lags, the hours and the painters allow, also in a gap between
// those before it (serial schedule generation, Kelley 1963). The slots are in
// the order of the activities, and none starts before start. Each Lag.After is
// the index of an activity earlier in the list.
//
// Where an activity comes too late for a maximum lag, it goes before other work
// that keeps the painters from it; where that is not the reason, the activity
// before it is moved later. Everything from there on is placed again. With
// painters enough for all, every activity gets the earliest time that it can
// have. At last, what floats is moved as late as the rest allows.
//
// It returns a *TooLongError or a *WindowError when the shop cannot do the
// work. The latter is not a proof where painters are short: a plan may exist
// that this method misses.
func Schedule(acts []Activity, shop Shop, start time.Time) ([]Slot, error) {
	if err := check(acts, shop); err != nil {
		return nil, err
	}
	origin := monday(start)
	p := newPlacing(acts, shop, start.Sub(origin))
	if err := p.all(); err != nil {
		return nil, err
	}
	p.float()
	slots := make([]Slot, len(acts))
	for i := range acts {
		s := p.span(i)
		slots[i] = Slot{Start: origin.Add(s.from), End: origin.Add(s.to)}
	}
	return slots, nil
}

// check finds what no placing can help.
func check(acts []Activity, shop Shop) error {
	if shop.Painters < 1 {
		return errors.New("calendar: a shop needs at least one painter")
	}
	longest := shop.Hours.Longest()
	for i, a := range acts {
		if a.Work < 0 {
			return fmt.Errorf("calendar: %s: work of %v is less than nothing", a.ID, a.Work)
		}
		if a.Work > longest {
			return &TooLongError{ID: a.ID, Work: a.Work, Longest: longest}
		}
		for _, l := range a.Lags {
			if l.After < 0 || l.After >= i || l.Min < 0 || l.Max < 0 {
				return fmt.Errorf("calendar: %s: %+v is not a wait after one of the %d activities before it", a.ID, l, i)
			}
			before := acts[l.After]
			if best := shop.Hours.shortest(before.Work, a.Work, l.Min); l.Max > 0 && best > l.Max {
				return &WindowError{ID: a.ID, After: before.ID, Min: l.Min, Max: l.Max, Best: best}
			}
		}
	}
	return nil
}

// shortest returns the shortest time, of at least wait, between two pieces of
// work that the hours allow in any week.
func (h Hours) shortest(before, after, wait time.Duration) time.Duration {
	if after == 0 || h.always() {
		return wait
	}
	best := forever
	for _, s := range h.spans {
		// The nearer the wait ends to an opening, the less of it is lost.
		ideal := s.from - wait - before
		for _, at := range []time.Duration{h.last(ideal, before), h.next(ideal, before)} {
			end := at + before
			best = min(best, h.next(end+wait, after)-end)
		}
	}
	return best
}
