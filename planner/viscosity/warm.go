package viscosity

import (
	"fmt"
	"math"

	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// WarmFormula is how Warmed works: Andrade's rule over a few degrees.
var WarmFormula = trace.Formula{
	Text:   "ν(T₂) = ν(T₁) exp(−k (T₂ − T₁)), k = 0.03 to 0.09 per K",
	Source: "ASTM D4212, 8.1, up to 5 % per °F; a cup maker's manual, 3 to 8 % per °C for standard oils",
	Note:   "background/viscosity-cups",
}

const (
	// slowest is the least that a liquid thins, in 1/K: 3 % per C is the lesser end
	// for standard oils (a cup maker's manual).
	slowest = 0.03

	// fastest is the most, in 1/K: "up to 5 % per °F" (ASTM D4212, 8.1) is 9 % per K.
	fastest = 0.09

	// farthest is how many kelvin the rule is carried: far enough for a cold shop
	// (ours; no source).
	farthest q.Difference = 10
)

// Warmed returns what a viscosity read at one temperature may be at another, in
// m2/s. It says how much a reading off temperature can mislead, and no more: a
// paint must be read at the temperature that its figure is for.
func Warmed(v q.Viscosity, from, to q.Temperature) (q.Range[q.Viscosity], error) {
	warmer := q.Difference(to - from)
	if !(max(warmer, -warmer) <= farthest) {
		return q.Range[q.Viscosity]{}, fmt.Errorf("found %.3g °C, read at %.3g °C; expected no more than %g °C between the two: bring the paint there and read it",
			to.Celsius(), from.Celsius(), float64(farthest))
	}
	at := func(k float64) q.Viscosity { return v * q.Viscosity(math.Exp(-k*float64(warmer))) }
	return q.Range[q.Viscosity]{Low: min(at(slowest), at(fastest)), High: max(at(slowest), at(fastest))}, nil
}
