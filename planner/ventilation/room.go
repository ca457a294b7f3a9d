package ventilation

import (
	"fmt"
	"math"

	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// Space is a room or a booth, and the air that goes through it.
type Space struct {
	Volume q.Volume
	Flow   q.AirFlow         // of clean air; zero for none
	Mixing q.Range[q.Number] // Mixed for a booth swept by its air, Room for a room
}

// ChangesFormula is that of Space.Changes.
var ChangesFormula = trace.Formula{
	Text:   "n = Q/V",
	Source: "US CDC, MMWR 43 (RR-13), 1994, table S3-1",
	Note:   "background/how-air-clears",
}

// Changes returns how many times each hour the air is changed.
func (s Space) Changes() q.Number {
	const hour = 3600 // s
	return q.Number(float64(s.Flow) / float64(s.Volume) * hour)
}

// ClearingFormula is that of Space.Clear.
var ClearingFormula = trace.Formula{
	Text:   "t = K (V/Q) ln(C1/C2)",
	Source: "US CDC, MMWR 43 (RR-13), 1994, table S3-1; K is the mixing factor",
	Note:   "background/how-air-clears",
}

// Clearing is how long a space takes until what is in its air has thinned.
type Clearing struct {
	Time  q.Range[q.Time] // from the better to the worse mixed
	Defer string
}

// Clear returns how long the air takes from one share of vapour to another when
// nothing more evaporates: C(t) = C1 exp(-Q t/(K V)). It is +Inf without a flow,
// or down to nothing. Paint that is still wet goes on giving off vapour, and
// vapour that is heavier than air stays in pits and corners: both take longer.
// It is an error when a share is outside 0 to 100 %, or the space is none.
// Source: see ClearingFormula.
func (s Space) Clear(from, to q.Fraction) (Clearing, error) {
	if err := s.check(); err != nil {
		return Clearing{}, err
	}
	for _, share := range []q.Fraction{from, to} {
		if !(share >= 0 && share <= 1) {
			return Clearing{}, fmt.Errorf("found %.6g %% of vapour in the air; expected 0 to 100 %%", share.Percent())
		}
	}
	changes := math.Log(float64(from) / float64(to))
	if to >= from {
		changes = 0
	}
	with := func(mixing q.Number) q.Time {
		if changes == 0 {
			return 0
		}
		return q.Time(float64(mixing) * float64(s.Volume) / float64(s.Flow) * changes)
	}
	return Clearing{q.Range[q.Time]{Low: with(s.Mixing.Low), High: with(s.Mixing.High)}, Defer}, nil
}

// Says puts the clearing into words, up to the next minute, with Defer at its
// end.
func (c Clearing) Says() string {
	if math.IsInf(float64(c.Time.High), 1) {
		return "It does not clear. " + c.Defer
	}
	least, most := upToMinute(c.Time.Low).String(), upToMinute(c.Time.High).String()
	if least != most {
		least += " to " + most
	}
	return fmt.Sprintf("At least %s to clear, once nothing more evaporates. %s", least, c.Defer)
}

// upToMinute is for showing: a time that is a least is not shown shorter.
func upToMinute(t q.Time) q.Time { return q.Time(math.Ceil(t.Minutes()) * 60) }

// FillingFormula is that of Space.After.
var FillingFormula = trace.Formula{
	Text:   "C = (K G/Q) (1 - exp(-Q t/(K V))) + C0 exp(-Q t/(K V))",
	Source: "engineeringtoolbox.com/room-polution-concentration-d_120.html; K is the mixing factor, G the vapour that comes in",
	Note:   "background/how-air-clears",
}

// Level is the share of the air that vapour makes up.
type Level struct {
	Vapour q.Range[q.Fraction] // from the better to the worse mixed
	Defer  string
}

// After returns the share of vapour in the air after a time, with vapour coming
// in steadily and a share of start in it already. Without a flow it only fills.
// The room that the vapour itself takes is not counted, so shares far above
// what burns are too high; at most all of the air is vapour.
// Source: see FillingFormula.
func (s Space) After(t q.Time, vapour q.AirFlow, start q.Fraction) (Level, error) {
	if err := s.check(); err != nil {
		return Level{}, err
	}
	if !(t >= 0) || !sound(float64(vapour)) || !(start >= 0 && start <= 1) {
		return Level{}, fmt.Errorf("found %g s, %g m3/s of vapour and a start at %.6g %%; expected 0 or more, and a start of 0 to 100 %%", float64(t), float64(vapour), start.Percent())
	}
	at := func(mixing q.Number) q.Fraction {
		return q.Fraction(min(1, s.share(float64(t), float64(vapour), float64(start), float64(mixing))))
	}
	return Level{q.Range[q.Fraction]{Low: at(s.Mixing.Low), High: at(s.Mixing.High)}, Defer}, nil
}

// share is C of FillingFormula.
func (s Space) share(t, vapour, start, mixing float64) float64 {
	flow := float64(s.Flow) / mixing
	if flow == 0 && vapour == 0 {
		return start
	}
	if flow == 0 {
		return start + vapour*t/float64(s.Volume)
	}
	gone := -math.Expm1(-flow * t / float64(s.Volume))
	return vapour/flow*gone + start*(1-gone)
}

// OfLEL returns the level as a share of the vapour's LEL, above 1 where it burns.
// A level of 25 % of it is where the fire codes want the air to stay below.
func (l Level) OfLEL(v Vapour) q.Range[q.Fraction] {
	return q.Range[q.Fraction]{Low: l.Vapour.Low / v.LEL, High: l.Vapour.High / v.LEL}
}

func (s Space) check() error {
	if !(s.Volume > 0) || !sound(float64(s.Volume)) || !sound(float64(s.Flow)) {
		return fmt.Errorf("found a space of %g m3 with %g m3/s of air; expected more than 0, and 0 or more", float64(s.Volume), float64(s.Flow))
	}
	return checkMixing(s.Mixing)
}
