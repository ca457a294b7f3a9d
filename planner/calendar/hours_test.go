package calendar

import (
	"testing"
	"time"

	"pgregory.net/rapid"
)

// quarter is the grid of the tests that try every time.
const quarter = 15 * time.Minute

// someHours are hours with breaks, with nights, over the end of the week, and
// without an end.
var someHours = []string{
	"Mon-Fri 08:00-17:00",
	"Mon-Thu 07:30-12:00 12:30-16:00; Fri 07:30-13:00",
	"Sat,Sun 09:00-12:00",
	"Tue 20:00-24:00; Wed 00:00-05:00",
	"Sun 22:00-24:00; Mon 00:00-06:00 12:00-13:00",
	"Mon-Sun 00:00-24:00",
}

// open tells whether the shop works all through s, by looking at each quarter of
// an hour whether some span of its week, or of the week before, holds it.
func open(h Hours, s span) bool {
	for t := s.from; t < s.to; t += quarter {
		inside := false
		for _, w := range h.spans {
			clock := t - floor(t, week)*week
			inside = inside || w.from <= clock && clock < w.to || clock+week < w.to
		}
		if !inside {
			return false
		}
	}
	return true
}

// drawWork draws work that fits the hours: quarters of an hour, at most 9 hours.
func drawWork(t *rapid.T, h Hours, name string) time.Duration {
	return quarter * time.Duration(rapid.Int64Range(0, int64(min(h.Longest(), 9*time.Hour)/quarter)).Draw(t, name))
}

// Against trying every quarter of an hour: next is the first that is open for
// all of the work, last the last.
func TestNextAndLast(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h, err := ParseHours(rapid.SampledFrom(someHours).Draw(t, "hours"))
		if err != nil {
			t.Fatal(err)
		}
		from := quarter * time.Duration(rapid.IntRange(-800, 800).Draw(t, "from"))
		work := drawWork(t, h, "work")
		next, last := from, from
		for !open(h, span{next, next + work}) {
			next += quarter
		}
		for !open(h, span{last, last + work}) {
			last -= quarter
		}
		if got := h.next(from, work); got != next {
			t.Fatalf("next(%v, %v) = %v, want %v", from, work, got, next)
		}
		if got := h.last(from, work); got != last {
			t.Fatalf("last(%v, %v) = %v, want %v", from, work, got, last)
		}
	})
}

// Against trying every quarter of an hour of a week for the end of the first
// work.
func TestShortest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h, err := ParseHours(rapid.SampledFrom(someHours).Draw(t, "hours"))
		if err != nil {
			t.Fatal(err)
		}
		before, after := drawWork(t, h, "before"), drawWork(t, h, "after")
		wait := quarter * time.Duration(rapid.IntRange(0, 900).Draw(t, "wait"))
		want := forever
		for at := time.Duration(0); at < week; at += quarter {
			if end := at + before; open(h, span{at, end}) {
				want = min(want, h.next(end+wait, after)-end)
			}
		}
		if got := h.shortest(before, after, wait); got != want {
			t.Fatalf("shortest(%v, %v, %v) = %v, want %v", before, after, wait, got, want)
		}
	})
}

func TestSpan(t *testing.T) {
	const weekly, lunch = "Mon-Fri 08:00-17:00", "Mon-Thu 07:30-12:00 12:30-16:00; Fri 07:30-13:00"
	for _, c := range []struct {
		hours, from, to string
		want            time.Duration
	}{
		{weekly, "2026-12-01 08:00", "2026-12-01 17:00", 9 * time.Hour},
		{weekly, "2026-12-01 16:30", "2026-12-02 08:15", 45 * time.Minute},
		{weekly, "2026-12-04 16:00", "2026-12-07 09:00", 2 * time.Hour}, // over a weekend
		{weekly, "2026-12-05 08:00", "2026-12-06 17:00", 0},
		{weekly, "2026-12-01 08:00", "2026-12-15 08:00", 90 * time.Hour},
		{weekly, "2026-12-02 08:00", "2026-12-01 08:00", 0},
		{lunch, "2026-12-01 11:00", "2026-12-01 13:00", time.Hour + 30*time.Minute},
		{"Sun 22:00-24:00; Mon 00:00-06:00", "2026-12-07 01:00", "2026-12-14 05:30", 12*time.Hour + 30*time.Minute},
		{"Mon-Sun 00:00-24:00", "2026-12-01 08:00", "2026-12-15 09:00", 14*day + time.Hour},
	} {
		if got := Span(hours(t, c.hours), at(t, c.from), at(t, c.to)); got != c.want {
			t.Errorf("Span(%q, %s, %s) = %v, want %v", c.hours, c.from, c.to, got, c.want)
		}
	}
	if got := Span(Hours{}, at(t, "2026-12-01 08:00"), at(t, "2026-12-15 08:00")); got != 0 {
		t.Errorf("Span of a shop that never opens = %v, want 0", got)
	}
}

// at reads a time. 2026-12-01 is a Tuesday.
func at(tb testing.TB, s string) time.Time {
	tb.Helper()
	t, err := time.Parse("2006-01-02 15:04", s)
	if err != nil {
		tb.Fatal(err)
	}
	return t
}

func TestOpens(t *testing.T) {
	at := func(s string) time.Time {
		v, err := time.Parse("2006-01-02T15:04", s)
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
	for _, c := range []struct{ hours, from, want string }{
		{"Mon-Fri 08:00-17:00", "2026-12-01T08:00", "2026-12-02T08:00"}, // a Tuesday
		{"Mon-Fri 08:00-17:00", "2026-12-01T07:59", "2026-12-01T08:00"},
		{"Mon-Fri 08:00-17:00", "2026-12-04T12:00", "2026-12-07T08:00"},
		{"Mon-Fri 08:00-12:00 13:00-17:00", "2026-12-01T09:00", "2026-12-01T13:00"},
		{"Mon-Sun 00:00-24:00", "2026-12-01T09:00", "2026-12-01T09:00"},
	} {
		h, err := ParseHours(c.hours)
		if err != nil {
			t.Fatal(err)
		}
		if got := h.Opens(at(c.from)); !got.Equal(at(c.want)) {
			t.Errorf("%s opens after %s at %s, want %s", c.hours, c.from, got, c.want)
		}
	}
}
