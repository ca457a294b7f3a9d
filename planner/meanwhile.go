package planner

import (
	"fmt"
	"time"

	"coatwright/planner/calendar"
	"coatwright/planner/library"
)

// meanwhile says what stands or dries while item i is done.
func (b *builder) meanwhile(i int, slots []calendar.Slot) string {
	it := b.items[i]
	for j, other := range b.items {
		if j == i {
			continue
		}
		since := slots[i].Start.Sub(slots[j].End)
		switch {
		case since < 0:
		case other.step.Mixes && other.bench() && since < toMinutes(other.lead.Stand) && other.lead == it.lead:
			return fmt.Sprintf("the %s stands", lowerFirst(other.lead.Title))
		case it.bench() && !other.film.IsZero() && since < b.untilRecoat(other):
			return fmt.Sprintf("the %s dries", lowerFirst(other.film.Title))
		}
	}
	return ""
}

// untilRecoat is how long a film dries before the next may go on.
func (b *builder) untilRecoat(it *item) time.Duration {
	lag, ok := b.d.Lag(it.film.Coating, library.Recoat)
	if !ok {
		return 0
	}
	return toMinutes(lag)
}
