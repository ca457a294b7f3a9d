// Package ventilation owns how much air a booth or a room takes so that what
// evaporates there cannot burn, and how long the air takes to clear.
//
// Every result carries Defer. None says that something is allowed, or safe to
// breathe: solvents and hardeners harm at a small part of what burns. Rules and
// solvents come in as data. Nothing here rounds.
//
// Air and vapour are taken at the pressure and temperature of the room, and the
// lower explosive limit as it is there: it is taken as constant up to 120 C
// (Wyoming rules for oil and gas well drilling, 2013, as given by iadclexicon.org),
// and no room where somebody sprays is warmer.
package ventilation

import (
	"fmt"
	"math"

	q "coatwright/quantity"
)

// Defer is what every result carries.
const Defer = "This is the least to check with the local authority and a qualified ventilation engineer, never a permission. It is about fire: air that cannot burn can still harm whoever breathes it."

// Need is an air flow that something asks for, against fire.
type Need struct {
	Flow  q.Range[q.AirFlow] // from the least on
	Defer string
}

// Short returns how far a flow stays behind the least and the most of the need;
// zero where it does not, which is no permission.
func (n Need) Short(has q.AirFlow) q.Range[q.AirFlow] {
	return q.Range[q.AirFlow]{Low: max(0, n.Flow.Low-has), High: max(0, n.Flow.High-has)}
}

// Says puts the need into words, in the units of s, with Defer at its end.
func (n Need) Says(s *q.System) string {
	if math.IsInf(float64(n.Flow.High), 1) {
		return "No flow of air is enough. " + n.Defer
	}
	return fmt.Sprintf("At least %s of air. %s", q.ShowRange(s, n.Flow), n.Defer)
}

// sound reports whether x is a number of 0 or more.
func sound(x float64) bool { return x >= 0 && !math.IsInf(x, 1) }

// rising reports whether r is a range of sound numbers, its low end first.
func rising[Q q.Quantity](r q.Range[Q]) bool {
	return sound(float64(r.Low)) && sound(float64(r.High)) && r.Low <= r.High
}
