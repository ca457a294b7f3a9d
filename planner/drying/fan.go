package drying

import (
	"coatwright/planner/air"
	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// FanFormula is how FanSpeed comes about.
var FanFormula = trace.Formula{
	Text:   "n = (0.089 + 0.0782 v) / (0.089 + 0.0782 v0)",
	Source: "Carrier (1918), as in ASHRAE Transactions 104(1A) (1998): the bracket alone, for the wet bulb does not feel the wind",
	Note:   "background/why-waterborne-slows-in-damp-air",
}

// FanSpeed returns how fast the air must move at the part for water or solvent
// to leave n times as fast as at speed still.
//
// "A small fan dries three to four times faster" (common practice, no published
// source) asks for 2.6 to 3.8 m/s against still air of 0.1 m/s: a breeze that
// is felt on the face. A fan of 2 to 3 m/s gives 2.5 to 3.3 times, at the lower end of
// what is said. A second published equation for free water, (25 + 19 v), asks
// for 2.9 to 4.4 m/s. So the two agree, as long as the speed is that at the
// part and not at the blades.
func FanSpeed(still q.Speed, n float64) q.Speed {
	return max(0, q.Speed((n*air.MassTransfer(still)-air.MassTransfer(0))/(air.MassTransfer(1)-air.MassTransfer(0))))
}
