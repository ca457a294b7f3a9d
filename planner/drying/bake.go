package drying

import (
	"cmp"
	"errors"
	"fmt"
	"math"

	"coatwright/planner/air"
	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// BakeFormula is how Bake comes about.
var BakeFormula = trace.Formula{
	Text:   "hold = t(T) (1 - flash/t(room) - integral over the warming of dt/t)",
	Source: CureFormula.Source + "; shares add up",
	Note:   "background/forced-drying",
}

// Oven is heat that is asked for. What counts is the warmth that the metal, or
// whatever the part is of, reaches: not that of the oven's air, nor the setting
// of a lamp. Under infrared, set the distance by a probe on the part; how far
// away a lamp stands is not worked out here.
type Oven struct {
	Room   air.Air       // where the film flashes off
	Flash  State         // what must have left the film before it is warmed, or it pops; zero for nothing
	At     q.Temperature // that the part is to reach; zero for as warm as is allowed
	HeatUp q.Time        // from the room's warmth until then
	Film   q.Temperature // the warmest that the film may get; zero for no heat at all
	Part   q.Temperature // ... and the part; zero where nothing limits it
}

// Limit is what a bake could not be warmer for.
type Limit string

// The limits.
const (
	ByWish Limit = "wish" // no more was asked for
	ByFilm Limit = "film"
	ByPart Limit = "part"
)

// Bake is a schedule: the film flashes off in the room, then the part is warmed
// up, then held. The time to cool down is not counted, nor is the cure in it. To
// be sure of a film whose energy is not known, hold it for Hold.High; a bake on
// its data sheet wins.
type Bake struct {
	At      q.Temperature
	Limit   Limit
	Flash   q.Time
	HeatUp  q.Time
	Hold    Estimate
	Whole   Estimate // all three
	Without Estimate // in the room, without heat
}

// Bake plans how a film is brought to s by heat, as warm as is asked for and
// both the film and the part allow. What the flash-off and the warming have
// done is taken off the hold.
func (s State) Bake(o Oven) (Bake, error) {
	at, limit := o.warmest()
	switch {
	case o.Film == 0:
		return Bake{}, errors.New("found heat for a film that is to have none; expected it to dry in the room")
	case at <= o.Room.Temperature:
		return Bake{}, fmt.Errorf("found at most %s (by the %s) in a room of %s; expected a bake warmer than the room", degrees(at), limit, degrees(o.Room.Temperature))
	}
	flash := o.Flash.Time(o.Room)
	if math.IsInf(float64(flash), 1) {
		return Bake{}, fmt.Errorf("found air in which the film never flashes off (%s); expected it to do so before heat, or it pops", conditions(o.Room))
	}
	b := Bake{At: at, Limit: limit, Flash: flash, HeatUp: o.HeatUp, Without: s.Times(o.Room)}
	b.Hold = s.estimate(func(s State) q.Time { return s.hold(o.Room, flash, o.HeatUp, at) })
	before := b.Flash + b.HeatUp
	b.Whole = Estimate{before + b.Hold.Low, before + b.Hold.Likely, before + b.Hold.High}
	return b, nil
}

// warmest is how warm the part may get, and for what.
func (o Oven) warmest() (q.Temperature, Limit) {
	at, limit := cmp.Or(o.At, q.Temperature(math.Inf(1))), ByWish
	if o.Film < at {
		at, limit = o.Film, ByFilm
	}
	if o.Part > 0 && o.Part < at {
		at, limit = o.Part, ByPart
	}
	return at, limit
}

// hold is how long a part must be held at a warmth for s after the film has
// flashed off in a room and the part has warmed up.
func (s State) hold(room air.Air, flash, heatUp q.Time, at q.Temperature) q.Time {
	full := s.Time(room.WarmedTo(at))
	if full == 0 {
		return 0
	}
	done := float64(flash/s.Time(room)) + s.warming(room, at, heatUp)
	return full * q.Time(max(0, 1-done))
}

// warming is the share of the way to s that a film goes while its part warms up
// from the room's warmth, at one pace: Simpson's rule in so many steps.
func (s State) warming(room air.Air, to q.Temperature, heatUp q.Time) float64 {
	const steps = 16
	rate := func(i int) float64 {
		return s.rate(room.WarmedTo(room.Temperature + (to-room.Temperature)*q.Temperature(i)/(2*steps)))
	}
	sum := 0.0
	for i := range steps {
		sum += rate(2*i) + 4*rate(2*i+1) + rate(2*i+2)
	}
	return float64(heatUp) * sum / (6 * steps)
}
