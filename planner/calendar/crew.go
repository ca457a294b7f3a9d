package calendar

import (
	"slices"
	"sort"
	"time"
)

// crew is how many painters are at work, over time.
type crew struct {
	size  int    // painters there are
	steps []step // in order of time; before the first, and from the last on, nobody works
}

// step is the number of painters at work from a time until the next step.
type step struct {
	from time.Duration
	busy int
}

// add puts n more painters to work for a span; a negative n takes them off.
func (c *crew) add(s span, n int) {
	if s.from == s.to {
		return
	}
	first := c.cut(s.from)
	last := c.cut(s.to)
	for i := first; i < last; i++ {
		c.steps[i].busy += n
	}
}

// cut makes a step begin at t, and returns its index.
func (c *crew) cut(t time.Duration) int {
	i := sort.Search(len(c.steps), func(i int) bool { return c.steps[i].from >= t })
	if i < len(c.steps) && c.steps[i].from == t {
		return i
	}
	at := step{from: t}
	if i > 0 {
		at.busy = c.steps[i-1].busy
	}
	c.steps = slices.Insert(c.steps, i, at)
	return i
}

// earliest returns the first time from t on when a painter is free for work in
// working hours.
func (c *crew) earliest(h Hours, t, work time.Duration) time.Duration {
	for t = h.next(t, work); ; {
		full, ok := c.firstFull(span{t, t + work})
		if !ok {
			return t
		}
		// A start before the end of that time would run into it as well.
		t = h.next(full.to, work)
	}
}

// latest returns the last time up to t when a painter is free for work in
// working hours.
func (c *crew) latest(h Hours, t, work time.Duration) time.Duration {
	for t = h.last(t, work); ; {
		full, ok := c.firstFull(span{t, t + work})
		if !ok {
			return t
		}
		t = h.last(full.from-work, work)
	}
}

// firstFull returns the first step within s in which every painter is at work.
func (c *crew) firstFull(s span) (span, bool) {
	i := sort.Search(len(c.steps), func(i int) bool { return c.steps[i].from > s.from })
	for i = max(i-1, 0); i < len(c.steps) && c.steps[i].from < s.to; i++ {
		if c.steps[i].busy >= c.size {
			return span{c.steps[i].from, c.steps[i+1].from}, true
		}
	}
	return span{}, false
}
