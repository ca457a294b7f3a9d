package drying

import (
	"cmp"
	"fmt"
	"math"
	"strings"

	q "coatwright/quantity"
)

// Forced is what a film's note allows to make it dry sooner.
type Forced struct {
	Air     bool          // moving air
	Heat    q.Temperature // the warmest that the film may get; zero for no heat
	Because string        // why not, or what to mind; "" where the note says nothing
}

// Means is what a film may be hurried with.
type Means string

// The means.
const (
	Fan  Means = "fan"
	Heat Means = "heat"
)

// Help is what one means does for one state.
type Help struct {
	With    Means
	Allowed bool
	Because string  // what the note says of it
	Speed   q.Speed // of a fan, at the part
	Bake    *Bake   // of heat; nil where there is none
	Time    Estimate
	Saves   q.Time // of the likely time in the room; zero or less where it is no help
	Says    string // a sentence with the figures
}

// Hurry says what a fan of a speed at the part, and heat, may do for s in the
// room of an oven. The film's own limit is the note's, whatever the oven says.
func (s State) Hurry(f Forced, o Oven, fan q.Speed) []Help {
	f.Because = cmp.Or(f.Because, "its note says nothing of hurrying it")
	o.Film = f.Heat
	return []Help{s.fan(f, o, fan), s.heat(f, o)}
}

func (s State) fan(f Forced, o Oven, speed q.Speed) Help {
	h := Help{With: Fan, Allowed: f.Air, Because: f.Because, Speed: speed}
	if !f.Air {
		h.Says = "No fan: " + f.Because + "."
		return h
	}
	before := s.Times(o.Room)
	moved := o.Room
	moved.Speed = max(moved.Speed, speed)
	h.Time = s.Times(moved)
	switch {
	case math.IsInf(float64(h.Time.Likely), 1):
		h.Says = "Not even a fan helps: this air is full of water (" + conditions(o.Room) + ")."
	case s.By != Evaporation && s.By != Solvent:
		h.Says = "A fan gains nothing: " + nothingLeaves(s.By) + "."
	case speed <= o.Room.Speed:
		h.Says = fmt.Sprintf("A fan of %s m/s gains nothing: the air moves at %s m/s already.", speedText(speed), speedText(o.Room.Speed))
	default:
		h.Saves = before.Likely - h.Time.Likely
		h.Says = fmt.Sprintf("A fan, %s m/s at the part: %s instead of %s.", speedText(speed), said(h.Time.Likely), said(before.Likely))
	}
	return h
}

// nothingLeaves says why moving air does nothing for a pace.
func nothingLeaves(p Pace) string {
	if p == Cure {
		return "the film waits for a reaction, and that goes by warmth"
	}
	return "nothing has to leave the film"
}

func (s State) heat(f Forced, o Oven) Help {
	h := Help{With: Heat, Allowed: f.Heat > 0, Because: f.Because}
	if !h.Allowed {
		h.Says = "No heat: " + f.Because + "."
		return h
	}
	b, err := s.Bake(o)
	if err != nil {
		h.Says = "No heat here: " + err.Error() + "."
		return h
	}
	h.Bake, h.Time = &b, b.Whole
	switch h.Saves = b.Without.Likely - b.Whole.Likely; {
	case h.Saves <= 0:
		h.Says = fmt.Sprintf("Heat gains nothing: in the room it takes %s, with flash-off and warming up %s.", said(b.Without.Likely), said(b.Whole.Likely))
	default:
		h.Says = b.String() + fmt.Sprintf(" In the room it takes %s.", said(b.Without.Likely))
	}
	return h
}

// limits says in words what a bake is limited by.
var limits = map[Limit]string{
	ByWish: "as asked",
	ByFilm: "the most that the film may get",
	ByPart: "the most that the part may get",
}

// String says the schedule in words.
func (b Bake) String() string {
	text := ""
	if b.Flash > 0 {
		text = "Let it flash off for " + said(b.Flash) + ", then "
	}
	text += fmt.Sprintf("warm the part to %s (%s) over %s, and hold it there for %s", degrees(b.At), limits[b.Limit], said(b.HeatUp), said(b.Hold.Likely))
	if b.Hold.Low < b.Hold.High {
		text += fmt.Sprintf(" (published energies: %s to %s)", said(b.Hold.Low), said(b.Hold.High))
	}
	return strings.ToUpper(text[:1]) + text[1:] + fmt.Sprintf(": %s in all.", said(b.Whole.Likely))
}

// said is a time as a painter would say it, for figures with so wide a range:
// to the minute, and in seconds where it is less than two.
func said(t q.Time) string {
	switch {
	case math.IsInf(float64(t), 1):
		return "for ever"
	case t < 120:
		return span(t)
	}
	return t.String()
}

func speedText(v q.Speed) string { return tenths(float64(v)) }
