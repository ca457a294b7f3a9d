package ventilation

import (
	"fmt"

	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// Velocity is what a rule asks of the air that enters the openings of a booth.
type Velocity struct {
	For    string // the work, the crossdraft and the booth that the rule speaks of
	Design q.Speed
	Range  q.Range[q.Speed] // in which a booth complies; a rule with only a least has it at both ends
	Source string
}

// FaceFormula is that of Velocity.Through.
var FaceFormula = trace.Formula{
	Text:   "Q = A v",
	Source: "finishing guidebook 2012, p. 213; velocities of 29 CFR 1910.94(c)(6)(i), table G-10, and 1910.107(b)(5)(i)",
	Note:   "background/how-much-air-a-booth-takes",
}

// Through returns the flow that all openings of a booth together, of the area
// given, take at the velocities of a rule: the least and the most of its range.
// The design velocity asks for DesignFlow. It is an error when the area or a
// velocity is none. A flow that meets the rule on average can still leave dead
// corners; the rule's crossdrafts are those at the opening.
// Source: see FaceFormula.
func (v Velocity) Through(openings q.Area) (Need, error) {
	if !(openings > 0) || !sound(float64(openings)) {
		return Need{}, fmt.Errorf("found openings of %g m2; expected more than 0", float64(openings))
	}
	if !rising(v.Range) || !(v.Range.Low > 0) {
		return Need{}, fmt.Errorf("the rule for %q: found %g to %g m/s; expected a range above 0, its low end first",
			v.For, float64(v.Range.Low), float64(v.Range.High))
	}
	return Need{q.Range[q.AirFlow]{Low: through(openings, v.Range.Low), High: through(openings, v.Range.High)}, Defer}, nil
}

// DesignFlow returns the flow at the velocity that a booth should be designed
// for, in m3/s.
func (v Velocity) DesignFlow(openings q.Area) q.AirFlow { return through(openings, v.Design) }

func through(openings q.Area, v q.Speed) q.AirFlow {
	return q.AirFlow(float64(openings) * float64(v))
}

// FaceVelocity returns the mean velocity that a flow makes in openings of an
// area, in m/s. A measured one, in several places, is better.
func FaceVelocity(flow q.AirFlow, openings q.Area) q.Speed {
	return q.Speed(float64(flow) / float64(openings))
}
