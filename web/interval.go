package web

import (
	"slices"
	"time"

	"coatwright/planner"
)

// interval is a stretch of time in the timeline.
type interval struct {
	from, to time.Time
	step     int // index of the step it belongs to
	track    int // which of several side by side
}

// workIntervals are the hands-on stretches, a step each.
func workIntervals(p *planner.Plan) []interval {
	var out []interval
	for i, s := range p.Steps {
		out = append(out, interval{from: s.Start, to: s.End, step: i})
	}
	return sideBySide(out)
}

// dryIntervals are the waits that must pass: after each step, the longest.
func dryIntervals(p *planner.Plan) []interval {
	longest := map[string]interval{}
	eachWait(p, func(i int, w planner.Wait, after planner.Step) {
		v := interval{from: after.End, to: after.End.Add(minutes(w.Min)), step: i}
		if old, ok := longest[w.After]; w.Min > 0 && (!ok || v.to.After(old.to)) {
			longest[w.After] = v
		}
	})
	return sideBySide(inOrder(longest))
}

// windowIntervals run from when a step may first start to when it is too late:
// of each step's windows the tightest, where it closes on the step's own day.
// One that closes later presses nobody; the step's text still names it.
func windowIntervals(p *planner.Plan) []interval {
	tightest := map[string]interval{}
	eachWait(p, func(i int, w planner.Wait, after planner.Step) {
		s := p.Steps[i]
		v := interval{from: after.End.Add(minutes(w.Min)), to: after.End.Add(minutes(w.Max)), step: i}
		if w.Max == 0 || !sameDay(v.to, s.Start) {
			return
		}
		if old, ok := tightest[s.ID]; !ok || v.to.Before(old.to) {
			tightest[s.ID] = v
		}
	})
	return sideBySide(inOrder(tightest))
}

// eachWait calls f for every wait of a step i on an earlier step.
func eachWait(p *planner.Plan, f func(i int, w planner.Wait, after planner.Step)) {
	for i, s := range p.Steps {
		for _, w := range s.Waits {
			if k := planner.StepAt(p.Steps, w.After); k >= 0 {
				f(i, w, p.Steps[k])
			}
		}
	}
}

func inOrder(byStep map[string]interval) []interval {
	var out []interval
	for _, v := range byStep {
		out = append(out, v)
	}
	slices.SortFunc(out, func(a, b interval) int {
		if c := a.from.Compare(b.from); c != 0 {
			return c
		}
		return a.step - b.step
	})
	return out
}

// sideBySide gives each interval, in order, the first track that is free.
func sideBySide(in []interval) []interval {
	var ends []time.Time
	for i, v := range in {
		track := slices.IndexFunc(ends, func(end time.Time) bool { return !end.After(v.from) })
		if track < 0 {
			track = len(ends)
			ends = append(ends, time.Time{})
		}
		ends[track] = v.to
		in[i].track = track
	}
	return in
}

// tracks is how many tracks intervals take.
func tracks(in []interval) int {
	n := 0
	for _, v := range in {
		n = max(n, v.track+1)
	}
	return n
}
