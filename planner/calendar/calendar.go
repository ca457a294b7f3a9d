// Package calendar owns when the steps of a plan happen: it places work in the
// working hours of a shop, by the painters there are, with the waits between.
//
// Work is done by one painter in one go, between an opening and the next
// closing. Waits are nobody's work and run through nights and weekends.
//
// Times are wall-clock times of the shop without a zone: callers give them in
// time.UTC, and get them back so. The package reads no clock, and the same
// input always gives the same slots.
package calendar

import "time"

// Activity is one piece of work.
type Activity struct {
	ID   string        // names the activity in errors
	Work time.Duration // hands-on; zero needs no painter and may fall when the shop is shut
	Lags []Lag         // what must come before
	// Float says that later does no harm: a mix, a flush. The activity is
	// placed as late as delays nothing else.
	Float bool
}

// Lag is a wait between two activities, from the end of the one to the start of
// the other.
type Lag struct {
	After int           // index of the earlier activity
	Min   time.Duration // the wait is at least this
	Max   time.Duration // and at most this; 0: no limit
}

// Shop is who works, and when.
type Shop struct {
	Hours    Hours
	Painters int // at least 1
}

// Slot is when an activity is done.
type Slot struct {
	Start, End time.Time
}
