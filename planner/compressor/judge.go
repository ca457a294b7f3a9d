package compressor

import (
	"cmp"
	"fmt"
	"math"

	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// Compressor is a pump that keeps a tank between two pressures.
type Compressor struct {
	Tank
	Delivers q.AirFlow  // free air, at the tank's pressure
	CutIn    q.Pressure // gauge: the pump starts when the tank falls to it
	CutOut   q.Pressure // gauge: the pump stops when the tank has reached it
	Duty     q.Fraction // share of an hour that the pump may run; zero for all of it
}

func (c Compressor) duty() q.Fraction { return cmp.Or(c.Duty, 1) }

// Use is what guns draw.
type Use struct {
	Air     q.AirFlow  // free air of all guns together, triggers pulled
	Trigger q.Fraction // share of the time that they are pulled, over a coat
	Least   q.Pressure // gauge, in the tank: what the gun needs and the line loses
	Pull    q.Time     // the longest that the trigger stays pulled; zero where not known
}

// mean is the free air drawn on average.
func (u Use) mean() q.AirFlow { return u.Air * q.AirFlow(u.Trigger) }

// Verdict says whether a compressor is enough.
type Verdict string

// The verdicts.
const (
	Enough    Verdict = "enough"
	Pauses    Verdict = "enough with pauses"
	NotEnough Verdict = "not enough"
)

// Cause says what a verdict other than Enough comes from.
type Cause string

// The causes.
const (
	DrawsMore  Cause = "draws more"  // more air is drawn on average than the pump delivers
	LongPull   Cause = "long pull"   // one pull of the trigger outlasts what pump and tank give
	RunsHot    Cause = "runs hot"    // the pump would run for more of the hour than it may
	StartsLate Cause = "starts late" // the pump starts only below what the gun needs
	StopsEarly Cause = "stops early" // the pump stops before it reaches what the gun needs
)

// Answer is how a compressor stands to a use.
type Answer struct {
	Compressor
	Use
	Verdict     Verdict
	Cause       Cause      // "" for Enough
	Spray       q.Time     // from a full tank until a pause is due; +Inf for Enough
	Wait        q.Time     // of the pause, triggers off, until the tank is full and the pump has rested
	LongestPull q.Time     // the longest single pull that holds the pressure; +Inf where the pump alone keeps up
	Running     q.Fraction // share of the time, pauses counted in, that the pump runs
}

// DutyFormula is that of Answer.Running for Enough.
var DutyFormula = trace.Formula{
	Text:   "share running = air drawn on average/air delivered = q T/FAD",
	Source: "mass balance over a cycle of the pressure switch; duty cycle = running time/(running + stopped)",
	Note:   "background/what-a-compressor-delivers",
}

// Judge says whether a compressor is enough for a use, and where it needs
// pauses, how long to spray and how long to wait.
//
// The draw is taken as even over a coat, at its average; a single pull is judged
// at the full draw of the guns. A pump that starts and stops delivers the same
// from the first second on. It is an error when a figure cannot be.
func Judge(c Compressor, u Use) (Answer, error) {
	if err := c.check(); err != nil {
		return Answer{}, err
	}
	if err := u.check(); err != nil {
		return Answer{}, err
	}
	a := Answer{Compressor: c, Use: u, Verdict: NotEnough}
	switch {
	case u.Least >= c.CutOut:
		a.Cause = StopsEarly
		return a, nil
	case u.Least > c.CutIn:
		a.Cause = StartsLate
		return a, nil
	}
	fromCutIn := c.pumped(u.Least, u.Air)
	fromFull := c.idle(u.Air) + fromCutIn
	a.LongestPull = fromCutIn
	switch {
	case u.Pull > fromFull:
		a.Cause, a.LongestPull = LongPull, fromFull
	case u.mean() > c.Delivers:
		a.LongestPull = fromFull
		a.pause(DrawsMore, u.mean())
	case u.Pull > fromCutIn || fromCutIn == 0:
		a.LongestPull = fromFull
		a.pause(LongPull, u.Air)
	case u.mean() > c.Delivers*q.AirFlow(c.duty()):
		a.rest()
	default:
		a.Verdict, a.Spray, a.Running = Enough, q.Time(math.Inf(1)), q.Fraction(u.mean()/c.Delivers)
	}
	return a, nil
}

// idle is how long a draw takes from a full tank until the pump starts.
func (c Compressor) idle(draw q.AirFlow) q.Time {
	return c.RunTime(c.CutOut, c.CutIn, draw, 0)
}

// pumped is how long a draw takes, from when the pump starts, to the least
// pressure; +Inf where the pump keeps up.
func (c Compressor) pumped(least q.Pressure, draw q.AirFlow) q.Time {
	if draw <= c.Delivers {
		return q.Time(math.Inf(1))
	}
	return c.RunTime(c.CutIn, least, draw, c.Delivers)
}

// pause fills in a cycle: from a full tank, with a draw above what the pump
// delivers, until the pressure is at its least; then a wait until the tank is
// full again, longer where the pump must rest.
func (a *Answer) pause(cause Cause, draw q.AirFlow) {
	a.Verdict, a.Cause = Pauses, cause
	pumping := a.pumped(a.Least, draw)
	fill := a.RefillTime(a.Least, a.CutOut, a.Delivers, 0)
	a.Spray = a.idle(draw) + pumping
	cycle := max(a.Spray+fill, (pumping+fill)/q.Time(a.duty()))
	a.Wait = cycle - a.Spray
	a.Running = q.Fraction((pumping + fill) / cycle)
}

// rest fills in an hour in which the pump delivers what is drawn, and then rests.
func (a *Answer) rest() {
	const hour q.Time = 3600
	a.Verdict, a.Cause, a.Running = Pauses, RunsHot, a.duty()
	a.Spray = hour * q.Time(a.Delivers*q.AirFlow(a.duty())/a.mean())
	a.Wait = hour - a.Spray
}

func (c Compressor) check() error {
	switch {
	case !positive(float64(c.Volume)):
		return fmt.Errorf("found a tank of %g m3; expected more than 0", float64(c.Volume))
	case !(c.Atmosphere >= 0) || math.IsInf(float64(c.Atmosphere), 1):
		return fmt.Errorf("found a room at %g Pa absolute; expected more than 0, or 0 for sea level", float64(c.Atmosphere))
	case !positive(float64(c.Delivers)):
		return fmt.Errorf("found a delivery of %g m3/s of free air; expected more than 0", float64(c.Delivers))
	case !(c.CutIn >= 0) || !(c.CutIn < c.CutOut) || math.IsInf(float64(c.CutOut), 1):
		return fmt.Errorf("found a pump that starts at %g Pa and stops at %g Pa; expected gauge pressures, the one it stops at higher", float64(c.CutIn), float64(c.CutOut))
	case !(c.Duty >= 0 && c.Duty <= 1):
		return fmt.Errorf("found a pump that may run %.6g %% of an hour; expected up to 100 %%, or 0 for all of it", c.Duty.Percent())
	}
	return nil
}

func (u Use) check() error {
	switch {
	case !(u.Air >= 0) || math.IsInf(float64(u.Air), 1):
		return fmt.Errorf("found guns that draw %g m3/s of free air; expected 0 or more", float64(u.Air))
	case !(u.Trigger >= 0 && u.Trigger <= 1):
		return fmt.Errorf("found triggers pulled for %.6g %% of the time; expected 0 to 100 %%", u.Trigger.Percent())
	case !(u.Least >= 0):
		return fmt.Errorf("found a least pressure of %g Pa; expected a gauge pressure of 0 or more", float64(u.Least))
	case !(u.Pull >= 0):
		return fmt.Errorf("found a pull of the trigger of %g s; expected 0 or more", float64(u.Pull))
	}
	return nil
}

func positive(x float64) bool { return x > 0 && !math.IsInf(x, 1) }
