package calendar

import (
	"fmt"
	"time"
)

// HoursError says what is wrong with the text of working hours.
type HoursError struct {
	Found    string // the part that cannot be read
	Expected string // what would be right in its place
	Nearest  string // the word probably meant; empty when none is near
}

func (e *HoursError) Error() string {
	text := fmt.Sprintf("working hours: found %q, expected %s", e.Found, e.Expected)
	if e.Nearest != "" {
		text += fmt.Sprintf("; nearest is %q", e.Nearest)
	}
	return text
}

// TooLongError says that an activity does not fit between an opening and the
// next closing.
type TooLongError struct {
	ID      string        // of the activity
	Work    time.Duration // what it takes in one go
	Longest time.Duration // the longest working span
}

func (e *TooLongError) Error() string {
	return fmt.Sprintf("%s takes %s in one go, and the longest working span is %s",
		e.ID, readable(e.Work), readable(e.Longest))
}

// WindowError says that an activity cannot start as soon after another as it
// must.
type WindowError struct {
	ID, After string        // the activity, and the one before it
	Min, Max  time.Duration // what the wait between them must be
	// Best is the shortest wait: that the hours allow, when no hour of the week
	// would do; else the shortest that was found.
	Best time.Duration
}

func (e *WindowError) Error() string {
	window := "within " + readable(e.Max)
	if e.Min > 0 {
		window = "from " + readable(e.Min) + " to " + readable(e.Max)
	}
	return fmt.Sprintf("%s must start %s after the end of %s, and the shortest wait found is %s",
		e.ID, window, e.After, readable(e.Best))
}
