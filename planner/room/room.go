// Package room owns whether a room suits the films that are to be laid in it,
// and what would have to change for it to do so.
//
// What a film wants, and what a change costs, is passed in: both come from
// notes and from the shop. A change is worked out with the physics of package
// air and judged again as it would then be.
//
// Left out are how long a change takes, how it is spread over the room, and the
// part that follows the warmth of the air: a part is taken to stay as cold as it
// is when the air is warmed, and not to stay warmer than air that is cooled.
package room

import (
	"coatwright/planner/air"
	q "coatwright/quantity"
)

// Room is the air where a film is laid, and the part in it.
type Room struct {
	air.Air
	Surface q.Temperature // of the part
}

// Over returns how much warmer the part is than the dew point.
func (r Room) Over() q.Difference { return r.OverDewPoint(r.Surface) }

// Wants is what one film asks of the room. A zero range asks for nothing; a part
// must be no colder than the dew point even where nothing is asked.
type Wants struct {
	Film         string // as it stands in a sentence: "waterborne sealer"
	Note         string // "material/waterborne-sealer"
	Air          q.Range[q.Temperature]
	Humidity     q.Range[q.Fraction]
	OverDewPoint q.Difference // the least, of the part
	Speed        q.Range[q.Speed]
}

// Level is how well a room suits.
type Level int

// The levels. Care is within a range, but in the outer tenth of it.
const (
	Go Level = iota
	Care
	No
)

var levels = []string{"go", "care", "no"}

func (l Level) String() string { return levels[l] }

// MarshalText writes the level as a word.
func (l Level) MarshalText() ([]byte, error) { return []byte(l.String()), nil }

// edge is the share of a range at each end that asks for care.
const edge = 10

// grade says how x lies in r. A range from zero on has no low end to be near.
func grade[Q q.Quantity](r q.Range[Q], x Q) Level {
	switch inner := inside(r); {
	case r.IsZero():
		return Go
	case !r.Holds(x):
		return No
	case !inner.Holds(x):
		return Care
	}
	return Go
}

// inside is r without the ends that ask for care.
func inside[Q q.Quantity](r q.Range[Q]) q.Range[Q] {
	margin := (r.High - r.Low) / edge
	if r.Low > 0 {
		r.Low += margin
	}
	r.High -= margin
	return r
}
