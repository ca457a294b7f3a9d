package colour

import (
	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// SagFormula is what a sag looks like.
var SagFormula = trace.Formula{
	Text:   "ΔE00(colour under k d, colour under d)",
	Source: "Beer-Lambert law and CIEDE2000; k is common practice, no published source",
	Note:   "background/how-even-is-even",
}

// Sag is a place where the film has run together.
type Sag struct {
	Times    q.Number // as thick as the even film
	Lab      Lab
	Screen   Screen
	OnScreen bool    // false where no screen shows it, and Screen is a paler colour
	Change   DeltaE  // from the even film beside it
	Darker   float64 // L* lost
}

// Sag returns how a place looks where so many coats lie so many times as thick.
func (c Coating) Sag(coats, times q.Number) Sag {
	even, there := c.Lab(coats), c.Reflectance(coats*times).XYZ()
	s := Sag{Times: times, Lab: there.Lab()}
	s.Screen, s.OnScreen = there.Screen()
	s.Change = Difference(even, s.Lab)
	s.Darker = even.L - s.Lab.L
	return s
}
