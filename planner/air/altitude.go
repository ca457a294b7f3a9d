package air

import (
	"fmt"
	"math"

	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// PressureFormula is how PressureAt comes about.
var PressureFormula = trace.Formula{
	Text:   "p = 101325 (1 - 2.25577e-5 Z)^5.2559, in Pa and m",
	Source: "ASHRAE Handbook, Fundamentals (2017), ch. 1, eq. 3: the standard atmosphere of ISO 2533",
	Note:   "background/what-the-air-holds",
}

// troposphere is where the formula for the pressure holds, in m.
var troposphere = q.Range[q.Length]{Low: -5000, High: 11000}

// PressureAt returns the pressure of the standard atmosphere so far above the
// sea, in Pa. Weather shifts the true one by some 3 %; a barometer knows.
func PressureAt(altitude q.Length) (q.Pressure, error) {
	if !troposphere.Holds(altitude) {
		return 0, &q.Error{
			Found:    fmt.Sprintf("%g m", float64(altitude)),
			Expected: fmt.Sprintf("an altitude from %g to %g m", float64(troposphere.Low), float64(troposphere.High)),
		}
	}
	return StandardPressure * q.Pressure(math.Pow(1-2.25577e-5*float64(altitude), 5.2559)), nil
}
