// Package viscosity owns efflux cups: what a time in a cup says of a liquid, how
// one cup's seconds read in another, and how far thinner brings a paint down.
//
// A cup measures liquids that flow alike at any speed of stirring. A paint that
// sets to a gel in the can does not, and its seconds are good only for comparing
// it with itself. Nothing here knows of that, nor of solvent lost while the cup
// runs. All liquids of one computation are at one temperature.
package viscosity

import (
	"fmt"
	"math"

	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// Reading is how long a cup took to run empty, to the first break in the stream.
type Reading struct {
	Cup  Cup    `json:"cup"`
	Time q.Time `json:"time"` // s
}

// String says r as a data sheet does: "58 s Ford 3".
func (r Reading) String() string { return seconds(r.Time) + " " + r.Cup.Name() }

// Viscosity returns the kinematic viscosity that r stands for, in m2/s. The error
// is a *RangeError.
func (r Reading) Viscosity() (q.Viscosity, error) { return r.Cup.Viscosity(r.Time) }

// Dynamic is a dynamic viscosity in Pa s; 1 mPa s is 1 cP.
type Dynamic float64

// DynamicFormula is how Dynamic comes about.
var DynamicFormula = trace.Formula{
	Text:   "η = ν ρ",
	Source: "definition of kinematic viscosity",
	Note:   "background/viscosity-cups",
}

// DynamicOf returns the dynamic viscosity of a liquid of density d.
func DynamicOf(v q.Viscosity, d q.Density) Dynamic { return Dynamic(float64(v) * float64(d)) }

// KinematicOf returns the kinematic viscosity of a liquid of density d, in m2/s.
// It is +Inf for a liquid without mass.
func KinematicOf(v Dynamic, d q.Density) q.Viscosity { return q.Viscosity(float64(v) / float64(d)) }

// mm2 is 1 mm2/s in m2/s: the unit that the equations of the cups are printed in.
const mm2 = 1e-6

// seconds says a cup's time to three figures.
func seconds(t q.Time) string { return fmt.Sprintf("%.3g s", float64(t)) }

// squareMillimetres says a viscosity to three figures.
func squareMillimetres(v q.Viscosity) string { return fmt.Sprintf("%.3g mm²/s", float64(v)/mm2) }

// percent says a fraction to three figures.
func percent(f q.Fraction) string { return fmt.Sprintf("%.3g %%", f.Percent()) }

// positive reports whether x can be reckoned with as something there is some of.
func positive(x float64) bool { return x > 0 && !math.IsInf(x, 1) }
