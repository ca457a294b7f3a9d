package calendar

import (
	"math"
	"sort"
	"time"
)

const (
	day  = 24 * time.Hour
	week = 7 * day
)

// forever is longer than any plan: the working span of a shop that never shuts.
const forever time.Duration = math.MaxInt64

// Hours are weekly working hours, in local wall-clock time. The zero Hours are
// those of a shop that never opens.
type Hours struct {
	// The unbroken working spans of a week, in order and apart from each
	// other, counted from Monday 00:00. A span goes on over midnight, and the
	// last one may run past the end of the week.
	spans []span
}

// span is a time from an origin, from included and to not.
type span struct{ from, to time.Duration }

// Longest returns the longest time that work can go on without a closing or a
// break. A shop that never shuts has no such limit, and the longest
// time.Duration stands for it.
func (h Hours) Longest() time.Duration {
	if h.always() {
		return forever
	}
	var longest time.Duration
	for _, s := range h.spans {
		longest = max(longest, s.to-s.from)
	}
	return longest
}

func (h Hours) always() bool {
	return len(h.spans) == 1 && h.spans[0].to-h.spans[0].from == week
}

// span returns working span k; spans are numbered on through all weeks, and 0
// is the first of the week that starts at the origin, a Monday 00:00.
func (h Hours) span(k int) span {
	n := len(h.spans)
	w := floor(k, n)
	s, shift := h.spans[k-w*n], time.Duration(w)*week
	return span{s.from + shift, s.to + shift}
}

// opened returns the number of the last working span that opens at or before t.
func (h Hours) opened(t time.Duration) int {
	w := floor(t, week)
	t -= w * week
	return int(w)*len(h.spans) - 1 +
		sort.Search(len(h.spans), func(i int) bool { return h.spans[i].from > t })
}

// next returns the earliest time from t on when work can start and be finished
// in one span. The work is at most Longest.
func (h Hours) next(t, work time.Duration) time.Duration {
	if work == 0 || h.always() {
		return t
	}
	for k := h.opened(t); ; k++ {
		s := h.span(k)
		if at := max(t, s.from); at+work <= s.to {
			return at
		}
	}
}

// last returns the latest time up to t when work can start and be finished in
// one span. The work is at most Longest.
func (h Hours) last(t, work time.Duration) time.Duration {
	if work == 0 || h.always() {
		return t
	}
	for k := h.opened(t); ; k-- {
		s := h.span(k)
		if at := min(t, s.to-work); at >= s.from {
			return at
		}
	}
}

// Opens returns the first instant after t at which the shop opens, t itself for
// one that never shuts.
func (h Hours) Opens(t time.Time) time.Time {
	if len(h.spans) == 0 || h.always() {
		return t
	}
	origin := monday(t)
	return origin.Add(h.span(h.opened(t.Sub(origin)) + 1).from)
}

// Span returns the working time between two instants, zero when to is not after
// from.
func Span(h Hours, from, to time.Time) time.Duration {
	if len(h.spans) == 0 {
		return 0
	}
	origin := monday(from)
	start, end := from.Sub(origin), to.Sub(origin)
	var sum time.Duration
	for k := h.opened(start); h.span(k).from < end; k++ {
		s := h.span(k)
		sum += max(0, min(s.to, end)-max(s.from, start))
	}
	return sum
}

// monday returns the start of t's week. The zero time is a Monday 00:00, so
// whole weeks from it are too.
func monday(t time.Time) time.Time { return t.Truncate(week) }

// floor returns a/b rounded down; the quotient of Go rounds towards zero.
func floor[T int | time.Duration](a, b T) T {
	if a%b < 0 {
		return a/b - 1
	}
	return a / b
}
