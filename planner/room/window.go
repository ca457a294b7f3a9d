package room

import (
	"fmt"

	"coatwright/planner/air"
	q "coatwright/quantity"
)

// window is where a room suits all of some films: what they want, put together.
// A zero range asks for nothing.
type window struct {
	air      q.Range[q.Temperature]
	humidity q.Range[q.Fraction]
	speed    q.Range[q.Speed]
	over     q.Difference
}

// windowOf is where a room is at most at a level for every film.
func windowOf(films []Wants, l Level) window {
	var w window
	for _, f := range films {
		w.air = both(w.air, at(f.Air, l))
		w.humidity = both(w.humidity, at(f.Humidity, l))
		w.speed = both(w.speed, at(f.Speed, l))
		w.over = max(w.over, f.OverDewPoint)
	}
	return w
}

// at is the part of r that is at most at a level.
func at[Q q.Quantity](r q.Range[Q], l Level) q.Range[Q] {
	if l == Go && !r.IsZero() {
		return inside(r)
	}
	return r
}

// both is what r and s have in common, low above high where that is nothing.
func both[Q q.Quantity](r, s q.Range[Q]) q.Range[Q] {
	switch {
	case r.IsZero():
		return s
	case s.IsZero():
		return r
	}
	common, _ := r.Meets(s)
	return common
}

// holds reports whether a room lies in the window.
func (w window) holds(r Room) bool {
	return (w.air.IsZero() || w.air.Holds(r.Temperature)) &&
		(w.humidity.IsZero() || w.humidity.Holds(r.Humidity)) &&
		(w.speed.IsZero() || w.speed.Holds(r.Speed)) &&
		w.dry(r)
}

// dry reports whether the part is far enough over the dew point, without the
// search that a dew point takes: a surface is over it where the air at the
// surface could hold more. A close call is left to the dew point itself.
func (w window) dry(r Room) bool {
	const near = 1e-4
	full := air.SaturationPressure(r.Surface - q.Temperature(w.over))
	switch share := r.VapourPressure() / full; {
	case share > 1+near:
		return false
	case share < 1-near:
		return true
	}
	return r.Over() >= w.over-sliver
}

// Conflict is two films that no one room suits.
type Conflict struct {
	Of   Subject `json:"of"`
	Low  string  `json:"low"`  // the film that wants less
	High string  `json:"high"` // ... and more
	Says string  `json:"says"`
}

// Conflicts are the pairs of films whose ranges do not meet: whatever is done,
// the room must change between them.
func Conflicts(films []Wants) []Conflict {
	out := []Conflict{}
	for i, a := range films {
		for _, b := range films[i+1:] {
			out = append(out, apart(OfAir, a, b, a.Air, b.Air, func(t q.Temperature) string { return whole(t.Celsius()) + " °C" })...)
			out = append(out, apart(OfHumidity, a, b, a.Humidity, b.Humidity, func(h q.Fraction) string { return whole(h.Percent()) + " % humidity" })...)
			out = append(out, apart(OfSpeed, a, b, a.Speed, b.Speed, func(v q.Speed) string { return whole(float64(v)) + " m/s" })...)
		}
	}
	return out
}

func apart[Q q.Quantity](of Subject, a, b Wants, r, s q.Range[Q], show func(Q) string) []Conflict {
	if _, meet := r.Meets(s); meet || r.IsZero() || s.IsZero() {
		return nil
	}
	if r.Low > s.Low {
		a, b, r, s = b, a, s, r
	}
	return []Conflict{{Of: of, Low: a.Film, High: b.Film,
		Says: fmt.Sprintf("No one room suits both: %s wants at most %s and %s at least %s. Change the room between them.", a.Film, show(r.High), b.Film, show(s.Low))}}
}
