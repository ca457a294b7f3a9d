package weather

import (
	"regexp"
	"strconv"
	"strings"
	"time"
)

// What is expected of times, in words.
const (
	aStamp = "a date and time such as 2026-12-01T08:00, without a zone"
	aDate  = "a date such as 2026-12-01"
	aClock = "a time of day from 00:00 to 23:59, such as 08:00"
)

// parseStamp reads a date and time in one; a date alone is its midnight.
func parseStamp(text string) (time.Time, *Error) {
	text = strings.TrimSpace(text)
	for _, layout := range []string{"2006-01-02T15:04", stamp, "2006-01-02T15:04:05", "2006-01-02 15:04:05", time.DateOnly} {
		if t, err := time.Parse(layout, text); err == nil && sane(t) {
			return t, nil
		}
	}
	return time.Time{}, &Error{Found: text, Expected: aStamp, Nearest: iso(text)}
}

func parseDate(text string) (time.Time, *Error) {
	text = strings.TrimSpace(text)
	t, err := time.Parse(time.DateOnly, text)
	if err != nil || !sane(t) {
		return time.Time{}, &Error{Found: text, Expected: aDate, Nearest: iso(text)}
	}
	return t, nil
}

// sane reports whether a shop may have weather of that year.
func sane(t time.Time) bool { return t.Year() >= 1990 && t.Year() <= 2200 }

// clock is a time of day: 8, 8:00, 08:00 or 08:00:00.
var clock = regexp.MustCompile(`^(\d{1,2})(?::(\d{2}))?(?::(\d{2}))?$`)

func parseClock(text string) (time.Duration, *Error) {
	text = strings.TrimSpace(text)
	m := clock.FindStringSubmatch(text)
	if m == nil {
		return 0, &Error{Found: text, Expected: aClock}
	}
	var parts [3]int
	for i, s := range m[1:] {
		parts[i], _ = strconv.Atoi(s) // "" is 0; the pattern leaves only digits
	}
	if parts[0] > 23 || parts[1] > 59 || parts[2] > 59 {
		return 0, &Error{Found: text, Expected: aClock}
	}
	return time.Duration(parts[0])*time.Hour + time.Duration(parts[1])*time.Minute + time.Duration(parts[2])*time.Second, nil
}

var (
	dotted = regexp.MustCompile(`^(\d{1,2})\.(\d{1,2})\.(\d{4})(.*)$`) // day first, wherever dots are used
	zoned  = regexp.MustCompile(`^(.*\d)(?:Z|[+-]\d{2}:?\d{2})$`)
)

// iso is how a time that is written otherwise would be written here, "" where
// it could be meant in two ways.
func iso(text string) string {
	if m := zoned.FindStringSubmatch(text); m != nil {
		if _, problem := parseStamp(m[1]); problem == nil {
			return m[1]
		}
		return ""
	}
	m := dotted.FindStringSubmatch(text)
	if m == nil {
		return ""
	}
	two := func(s string) string { return ("0" + s)[len(s)-1:] }
	return m[3] + "-" + two(m[2]) + "-" + two(m[1]) + m[4]
}
