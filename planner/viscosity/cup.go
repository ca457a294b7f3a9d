package viscosity

import (
	"fmt"
	"math"

	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// Cup is a cup with a hole in its bottom. Its equation, in mm2/s and s, is
//
//	v = slope (t - offset) - drag/t
//
// where ASTM prints the first part and ISO a slope and a drag.
type Cup struct {
	Kind        string          `json:"kind"`        // "Ford"
	Number      int             `json:"number"`      // 4; of an ISO or a DIN cup the width of the hole in mm
	Range       q.Range[q.Time] `json:"range"`       // the times for which the equation holds
	Temperature q.Temperature   `json:"temperature"` // at which the standard has it read
	Spread      q.Fraction      `json:"spread"`      // how far the time in another cup of the same name may lie
	Equation    string          `json:"equation"`    // as its standard prints it
	Source      string          `json:"source"`
	Cautions    []string        `json:"cautions"`
	slope       float64         // mm2/s2
	offset      float64         // s
	drag        float64         // mm2
}

// Name is what painters call c: "Ford 4", "ISO 4 mm".
func (c Cup) Name() string {
	if c.Kind == iso || c.Kind == din {
		return fmt.Sprintf("%s %d mm", c.Kind, c.Number)
	}
	return fmt.Sprintf("%s %d", c.Kind, c.Number)
}

// Formula is c's equation for a trace.
func (c Cup) Formula() trace.Formula {
	return trace.Formula{Text: c.Equation, Source: c.Source, Note: "background/viscosity-cups"}
}

// Viscosity returns the kinematic viscosity of a liquid that runs out of c in t,
// in m2/s. The error, a *RangeError, is for a time that the equation is not made
// for; the viscosity is then the equation's all the same, and 0 where that gives
// none.
func (c Cup) Viscosity(t q.Time) (q.Viscosity, error) {
	v := c.viscosity(t)
	if !c.Range.Holds(t) {
		return v, outside(c, t, v)
	}
	return v, nil
}

// Time returns how long a liquid of viscosity v takes to run out of c. The error,
// a *RangeError, is for a time that the equation is not made for; the time is then
// the equation's all the same.
func (c Cup) Time(v q.Viscosity) (q.Time, error) {
	t := c.time(v)
	if !c.Range.Holds(t) {
		return t, outside(c, t, v)
	}
	return t, nil
}

// viscosity is c's equation, and 0 where it says less.
func (c Cup) viscosity(t q.Time) q.Viscosity {
	s := float64(t)
	if s <= 0 {
		return 0
	}
	return q.Viscosity(mm2 * max(0, c.slope*(s-c.offset)-c.drag/s))
}

// time is c's equation solved for the time: the root above zero of
//
//	slope t2 - (v + slope offset) t - drag = 0
func (c Cup) time(v q.Viscosity) q.Time {
	b := float64(v)/mm2 + c.slope*c.offset
	return q.Time((b + math.Sqrt(b*b+4*c.slope*c.drag)) / (2 * c.slope))
}

// centre is the middle of c's range, by ratio.
func (c Cup) centre() float64 { return math.Sqrt(float64(c.Range.Low) * float64(c.Range.High)) }
