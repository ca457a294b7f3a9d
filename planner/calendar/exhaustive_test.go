package calendar

import (
	"errors"
	"slices"
	"testing"
	"time"

	"pgregory.net/rapid"
)

// dailyHours repeat every day and change on the hour, so that a few days show
// all that can happen.
var dailyHours = []string{
	"Mon-Sun 08:00-12:00 13:00-17:00",
	"Mon-Sun 00:00-03:00 22:00-24:00",
	"Mon-Sun 00:00-24:00",
}

// horizon is where the exhaustive search ends. Four activities with waits of up
// to 26 h have a schedule before it if they have one at all: one that begins
// later can be moved a day earlier.
const horizon = week

// shortestPlan tries every hour for every activity, and returns the end of the
// shortest schedule; ok is false when there is none. Work and waits are whole
// hours.
func shortestPlan(acts []Activity, shop Shop, start time.Time) (best time.Time, ok bool) {
	best = start.Add(horizon)
	slots := make([]Slot, 0, len(acts))
	var try func()
	try = func() {
		i := len(slots)
		if i == len(acts) {
			best, ok = makespan(slots), true
			return
		}
		from, to := window(acts[i], slots, start, best)
		for t := from; !t.After(to) && t.Add(acts[i].Work).Before(best); t = t.Add(time.Hour) {
			slots = append(slots, Slot{Start: t, End: t.Add(acts[i].Work)})
			if verify(acts[:i+1], shop, start, slots) == nil {
				try()
			}
			slots = slots[:i]
		}
	}
	try()
	return best, ok
}

// window returns the first and the last start that the lags of an activity
// allow between from and to.
func window(a Activity, slots []Slot, from, to time.Time) (first, last time.Time) {
	for _, l := range a.Lags {
		end := slots[l.After].End
		if t := end.Add(l.Min); t.After(from) {
			from = t
		}
		if t := end.Add(l.Max); l.Max > 0 && t.Before(to) {
			to = t
		}
	}
	return from, to
}

// orders calls f with every order of the activities in which each comes after
// those it waits for.
func orders(acts []Activity, f func([]Activity)) {
	where := make([]int, len(acts)) // in the new list; -1: not yet there
	for i := range where {
		where[i] = -1
	}
	var list []Activity
	var extend func()
	extend = func() {
		if len(list) == len(acts) {
			f(list)
			return
		}
		for i, a := range acts {
			if where[i] >= 0 || slices.ContainsFunc(a.Lags, func(l Lag) bool { return where[l.After] < 0 }) {
				continue
			}
			b := a
			b.Lags = slices.Clone(a.Lags)
			for j := range b.Lags {
				b.Lags[j].After = where[a.Lags[j].After]
			}
			where[i] = len(list)
			list = append(list, b)
			extend()
			list = list[:len(list)-1]
			where[i] = -1
		}
	}
	extend()
}

// Serial generation gives active schedules, and some order of the list gives
// the shortest of all (Sprecher, Kolisch and Drexl, European Journal of
// Operational Research 80 (1995) 94-102; the citation is from memory). So the
// best over all orders is what an exhaustive search finds.
func TestSomeOrderIsShortest(t *testing.T) {
	start := at(t, "2026-12-01 08:00")
	rapid.Check(t, func(t *rapid.T) {
		acts, shop := drawPlan(t, size{hours: dailyHours, acts: 4, painters: 1, grid: time.Hour})
		want, ok := shortestPlan(acts, shop, start)
		if !ok {
			t.Fatal("no schedule, yet no windows")
		}
		var best time.Time
		orders(acts, func(list []Activity) {
			slots, err := Schedule(list, shop, start)
			if err != nil {
				t.Fatal(err)
			}
			if end := makespan(slots); best.IsZero() || end.Before(best) {
				best = end
			}
		})
		if !best.Equal(want) {
			t.Fatalf("best of all orders ends %v, want %v", best, want)
		}
	})
}

// For its own order, Schedule puts each activity at the first hour that keeps
// the rules beside those before it.
func TestEachAtTheFirstHour(t *testing.T) {
	start := at(t, "2026-12-01 08:00")
	rapid.Check(t, func(t *rapid.T) {
		acts, shop := drawPlan(t, size{hours: dailyHours, acts: 6, painters: 2, grid: time.Hour})
		got, err := Schedule(acts, shop, start)
		if err != nil {
			t.Fatal(err)
		}
		var want []Slot
		for i, a := range acts {
			for at := start; len(want) == i; at = at.Add(time.Hour) {
				with := append(want, Slot{Start: at, End: at.Add(a.Work)})
				if verify(acts[:i+1], shop, start, with) == nil {
					want = with
				}
			}
		}
		if !slices.Equal(got, want) {
			t.Fatalf("Schedule = %v, want %v", got, want)
		}
	})
}

// With painters for all, the repair of windows moves an activity only as far as
// every schedule must: the result is the shortest, and a refusal is a proof.
func TestWindowsWithPaintersForAll(t *testing.T) {
	start := at(t, "2026-12-01 08:00")
	rapid.Check(t, func(t *rapid.T) {
		acts, shop := drawPlan(t, size{hours: dailyHours, acts: 4, painters: 1, grid: time.Hour, windows: true})
		shop.Painters = len(acts)
		want, ok := shortestPlan(acts, shop, start)
		slots, err := Schedule(acts, shop, start)
		var window *WindowError
		switch {
		case errors.As(err, &window):
			if ok {
				t.Fatalf("refused: %v; a schedule ends %v", err, want)
			}
		case err != nil:
			t.Fatal(err)
		case !makespan(slots).Equal(want):
			t.Fatalf("ends %v, want %v", makespan(slots), want)
		}
	})
}
