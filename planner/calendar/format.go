package calendar

import (
	"fmt"
	"slices"
	"strings"
	"time"
)

// String returns the hours in the form that ParseHours reads: days with the
// same hours together, groups by their first day, times as 08:00. The hours of
// a shop that never opens are the empty string.
func (h Hours) String() string {
	days := h.days()
	var groups []string
	for d, hours := range days {
		if hours != "" && slices.Index(days[:], hours) == d {
			groups = append(groups, alike(days, hours)+" "+hours)
		}
	}
	return strings.Join(groups, "; ")
}

// days returns the hours of each day, Monday first: "08:00-12:00 13:00-17:00".
func (h Hours) days() [7]string {
	var pieces [7][]string
	for _, s := range h.spans {
		for t := s.from; t < s.to; {
			d := t / day
			end := min(s.to, (d+1)*day)
			pieces[d%7] = append(pieces[d%7], clock(t-d*day)+"-"+clock(end-d*day))
			t = end
		}
	}
	var days [7]string
	for d, p := range pieces {
		slices.Sort(p) // the end of a span from Sunday comes before Monday's own
		days[d] = strings.Join(p, " ")
	}
	return days
}

// alike names the days that have these hours: "Mon-Wed,Fri".
func alike(days [7]string, hours string) string {
	var runs []string
	for d := 0; d < 7; d++ {
		if days[d] != hours {
			continue
		}
		first := d
		for d < 6 && days[d+1] == hours {
			d++
		}
		run := dayNames[first]
		if d > first {
			run += "-" + dayNames[d]
		}
		runs = append(runs, run)
	}
	return strings.Join(runs, ",")
}

// String returns a span of one day with its day: "Mon 08:00-12:00".
func (s span) String() string {
	d := s.from / day
	return dayNames[d%7] + " " + clock(s.from-d*day) + "-" + clock(s.to-d*day)
}

// clock writes a time of day: "07:30".
func clock(t time.Duration) string {
	return fmt.Sprintf("%02d:%02d", t/time.Hour, t%time.Hour/time.Minute)
}

// readable writes a duration in hours and whole minutes: "1 h 30 min".
func readable(d time.Duration) string {
	h, m := d/time.Hour, d%time.Hour/time.Minute
	switch {
	case m == 0 && h > 0:
		return fmt.Sprintf("%d h", h)
	case h == 0:
		return fmt.Sprintf("%d min", m)
	}
	return fmt.Sprintf("%d h %d min", h, m)
}
