package critique

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"time"

	"coatwright/planner"
	"coatwright/planner/calendar"
	"coatwright/planner/library"
)

// clock is when each step of the plan starts and ends.
type clock struct{ start, end []time.Time }

// time sets the clock anew: the steps in the order of the list, with the waits
// that they have, in the shop's hours. Where a window cannot be kept so, but is
// kept by the times that the plan has, those stand.
func (b *bench) time() (clock, []Finding) {
	c, found := b.anew()
	if own, ok := b.own(); ok && len(found) > 0 {
		return own, nil
	}
	return c, found
}

// own is the plan's own times; ok is false where they do not fit its steps.
func (b *bench) own() (c clock, ok bool) {
	free := map[string]time.Time{}
	for i, s := range b.plan.Steps {
		if s.Start.IsZero() || s.End.Sub(s.Start) < b.work(i) {
			return c, false
		}
		for _, w := range s.Waits {
			k := planner.StepAt(b.plan.Steps[:i], w.After)
			if k < 0 {
				continue
			}
			if since := s.Start.Sub(b.plan.Steps[k].End); since < minutes(w.Min) || w.Max > 0 && since > minutes(w.Max) {
				return c, false
			}
		}
		for _, p := range s.Parts {
			if b.isBench(b.note(i)) {
				continue
			}
			if s.Start.Before(free[p]) {
				return c, false
			}
			free[p] = s.End
		}
		c.start, c.end = append(c.start, s.Start), append(c.end, s.End)
	}
	return c, true
}

// work is how long step i takes, with the time between its coats.
func (b *bench) work(i int) time.Duration {
	s := b.plan.Steps[i]
	if planned := s.End.Sub(s.Start); s.Coats > 0 && planned > 0 {
		return planned // a film is laid in one go, and its minutes are rounded once
	}
	return time.Duration(math.Ceil(s.WorkMin+s.FlashMin*float64(max(s.Coats-1, 0))-1e-6)) * time.Minute
}

// anew is the clock that the calendar makes. A window that it cannot keep is a
// finding, and is left open for the rest.
func (b *bench) anew() (clock, []Finding) {
	acts, first, last := b.activities()
	var found []Finding
	for {
		slots, err := calendar.Schedule(acts, b.plan.Job.Shop, b.plan.Job.Start)
		var window *calendar.WindowError
		var long *calendar.TooLongError
		switch {
		case err == nil:
			return clockOf(slots, first, last), found
		case errors.As(err, &window):
			i := b.index(window.ID)
			found = append(found, b.finding(i, Breaks, "window", fmt.Sprintf(
				"It must start within %s of %q, and the hours, the waits and the other work leave no less than %s.", span(window.Max), b.titleOf(window.After), span(window.Best)), ""))
			openWindow(acts, window)
		case errors.As(err, &long):
			i := b.index(long.ID)
			found = append(found, b.finding(i, Breaks, "hours", fmt.Sprintf(
				"It takes %s in one go, and the longest working span is %s.", span(long.Work), span(long.Longest)), ""))
			for k := range acts {
				if acts[k].ID == long.ID {
					acts[k].Work = long.Longest
				}
			}
		default:
			return clockOf(make([]calendar.Slot, len(acts)), first, last), append(found, b.finding(-1, Breaks, "hours", err.Error(), ""))
		}
	}
}

func openWindow(acts []calendar.Activity, w *calendar.WindowError) {
	for i := range acts {
		for k, l := range acts[i].Lags {
			if acts[i].ID == w.ID && l.Max == w.Max && acts[l.After].ID == w.After {
				acts[i].Lags[k].Max = 0
			}
		}
	}
}

func clockOf(slots []calendar.Slot, first, last []int) clock {
	var c clock
	for i := range first {
		c.start = append(c.start, slots[first[i]].Start)
		c.end = append(c.end, slots[last[i]].End)
	}
	return c
}

// activities is the plan's steps for the calendar: work on a part, and the work
// of the one bench, in the order of the list, and every wait that a step has.
func (b *bench) activities() (acts []calendar.Activity, first, last []int) {
	onPart, atBench := map[string]int{}, -1
	for i, s := range b.plan.Steps {
		first = append(first, len(acts))
		note := b.note(i)
		for n, w := range planner.Spans(b.work(i), b.plan.Job.Shop.Hours, s.Coats > 0) {
			a := calendar.Activity{ID: s.ID, Work: max(w, 0), Float: note != nil && note.Mixes}
			if n > 0 {
				a.Lags = []calendar.Lag{{After: len(acts) - 1}}
			}
			acts = append(acts, a)
		}
		at := first[i]
		for _, w := range s.Waits {
			if k := planner.StepAt(b.plan.Steps[:i], w.After); k >= 0 {
				acts[at].Lags = append(acts[at].Lags, calendar.Lag{After: last[k], Min: minutes(w.Min), Max: minutes(w.Max)})
			}
		}
		last = append(last, len(acts)-1)
		if bench := b.isBench(note); bench || s.Coats > 0 {
			if atBench >= 0 {
				acts[at].Lags = append(acts[at].Lags, calendar.Lag{After: last[atBench]})
			}
			atBench = i
			if bench {
				continue
			}
		}
		for _, p := range s.Parts {
			if k, was := onPart[p]; was {
				acts[at].Lags = append(acts[at].Lags, calendar.Lag{After: last[k]})
			}
			onPart[p] = i
		}
	}
	return acts, first, last
}

// isBench reports whether a step is work on mixes and guns.
func (b *bench) isBench(note *library.Step) bool { return note != nil && note.OnBench(b.lib.Words) }

func minutes(m float64) time.Duration {
	return time.Duration(math.Round(max(m, 0))) * time.Minute
}

// note is the note of step i, nil where there is none.
func (b *bench) note(i int) *library.Step {
	return b.lib.Steps[strings.TrimPrefix(b.plan.Steps[i].Note, "step/")]
}

func (b *bench) index(id string) int {
	return planner.StepAt(b.plan.Steps, id)
}

func (b *bench) titleOf(id string) string {
	if i := b.index(id); i >= 0 {
		return b.plan.Steps[i].Title
	}
	return id
}
