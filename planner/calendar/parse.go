package calendar

import (
	"cmp"
	"slices"
	"strconv"
	"strings"
	"time"

	"coatwright/nearest"
)

// dayNames are the days as they are written, Monday first, then in full.
var dayNames = []string{
	"Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun",
	"Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday",
}

// dashes lets a range be typed with an en dash or with room around its dash.
var dashes = strings.NewReplacer(" – ", "-", "–", "-", " - ", "-")

// ParseHours reads weekly working hours: groups of days, each with its spans,
// such as
//
//	Mon-Fri 08:00-17:00
//	Mon-Thu 07:30-12:00 12:30-16:00; Fri 07:30-13:00
//	Sat,Sun 9:00-12:00
//
// Spans that touch are one, also over midnight; 24:00 is the end of a day. An
// error is a *HoursError.
func ParseHours(s string) (Hours, error) {
	var spans []span
	for group := range strings.SplitSeq(dashes.Replace(s), ";") {
		of, err := parseGroup(strings.TrimSpace(group))
		if err != nil {
			return Hours{}, err
		}
		spans = append(spans, of...)
	}
	slices.SortFunc(spans, func(a, b span) int { return cmp.Compare(a.from, b.from) })
	for i := 1; i < len(spans); i++ {
		if earlier := spans[i-1]; spans[i].from < earlier.to {
			return Hours{}, &HoursError{
				Found:    spans[i].String(),
				Expected: "spans that do not overlap, after " + earlier.String(),
			}
		}
	}
	return Hours{spans: join(spans)}, nil
}

// parseGroup reads days and their spans: "Mon-Fri 08:00-12:00 13:00-17:00".
func parseGroup(group string) ([]span, error) {
	digit := strings.IndexAny(group, "0123456789")
	if digit <= 0 {
		return nil, &HoursError{Found: group, Expected: "days and then hours, as in Mon-Fri 08:00-17:00"}
	}
	days, err := parseDays(group[:digit])
	if err != nil {
		return nil, err
	}
	var spans []span
	for text := range strings.FieldsFuncSeq(group[digit:], func(r rune) bool { return r == ' ' || r == ',' }) {
		s, err := parseSpan(text)
		if err != nil {
			return nil, err
		}
		for _, d := range days {
			spans = append(spans, span{s.from + d, s.to + d})
		}
	}
	return spans, nil
}

// parseDays reads days and ranges of days, and returns when each starts. A
// range may run over the end of the week: "Sat-Mon".
func parseDays(text string) ([]time.Duration, error) {
	var starts []time.Duration
	for item := range strings.SplitSeq(text, ",") {
		first, last, ranged := strings.Cut(item, "-")
		from, err := parseDay(first)
		if err != nil {
			return nil, err
		}
		to := from
		if ranged {
			if to, err = parseDay(last); err != nil {
				return nil, err
			}
		}
		for d := from; ; d = (d + 1) % 7 {
			starts = append(starts, time.Duration(d)*day)
			if d == to {
				break
			}
		}
	}
	return starts, nil
}

// parseDay returns the number of a day, 0 for Monday.
func parseDay(name string) (int, error) {
	name = strings.TrimSpace(name)
	i := slices.IndexFunc(dayNames, func(d string) bool { return strings.EqualFold(d, name) })
	if i < 0 {
		return 0, &HoursError{
			Found:    name,
			Expected: "a day from Mon to Sun; days as Sat,Sun and ranges as Mon-Fri",
			Nearest:  nearest.To(name, dayNames),
		}
	}
	return i % 7, nil
}

// parseSpan reads an opening and a closing time of the same day.
func parseSpan(text string) (span, error) {
	open, shut, ok := strings.Cut(text, "-")
	if !ok {
		return span{}, &HoursError{Found: text, Expected: "an opening and a closing time, as in 08:00-17:00"}
	}
	from, err := parseClock(open)
	if err != nil {
		return span{}, err
	}
	to, err := parseClock(shut)
	if err != nil {
		return span{}, err
	}
	if to <= from {
		return span{}, &HoursError{
			Found:    text,
			Expected: "a closing time after the opening time; work over midnight is written as a span to 24:00 and one from 00:00 of the next day",
		}
	}
	return span{from, to}, nil
}

// parseClock reads a time of day, 0:00 to 24:00.
func parseClock(text string) (time.Duration, error) {
	hours, minutes, _ := strings.Cut(text, ":")
	h, errH := strconv.ParseUint(hours, 10, 8)
	m, errM := strconv.ParseUint(minutes, 10, 8)
	t := time.Duration(h)*time.Hour + time.Duration(m)*time.Minute
	if errH != nil || errM != nil || len(hours) > 2 || len(minutes) != 2 || m > 59 || t > day {
		return 0, &HoursError{Found: text, Expected: "a time of day from 00:00 to 24:00, as in 07:30"}
	}
	return t, nil
}

// join makes one span of spans that touch, at last over the end of the week.
// The spans are in order and do not overlap.
func join(spans []span) []span {
	var joined []span
	for _, s := range spans {
		if n := len(joined); n > 0 && joined[n-1].to == s.from {
			joined[n-1].to = s.to
		} else {
			joined = append(joined, s)
		}
	}
	if n := len(joined); n > 1 && joined[0].from == 0 && joined[n-1].to == week {
		joined[n-1].to += joined[0].to
		joined = joined[1:]
	}
	return joined
}
