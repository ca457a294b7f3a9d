package gun

import (
	"fmt"
	"math"

	q "coatwright/quantity"
)

// Gun is what an applicator can be set to, and how fast a hand can move it.
type Gun struct {
	Flow    q.Range[q.Flow]
	Fan     q.Range[q.Length]
	Overlap q.Range[q.Fraction]
	Speed   q.Range[q.Speed]
}

// Middle returns the setting in the middle of all ranges, for a share that lands.
func (g Gun) Middle(transfer q.Fraction) Setting {
	return Setting{g.Flow.Middle(), g.Fan.Middle(), g.Overlap.Middle(), g.Speed.Middle(), transfer}
}

// Wet returns the thinnest and the thickest wet film that one coat can leave.
func (g Gun) Wet(transfer q.Range[q.Fraction]) q.Range[q.Length] {
	thin := Setting{g.Flow.Low, g.Fan.High, g.Overlap.Low, g.Speed.High, transfer.Low}
	thick := Setting{g.Flow.High, g.Fan.Low, g.Overlap.High, g.Speed.Low, transfer.High}
	return q.Range[q.Length]{Low: thin.Wet(), High: thick.Wet()}
}

// Verdict is whether a wet film can be laid, and what it takes.
type Verdict string

// The verdicts.
const (
	Fits     Verdict = "fits"      // at the middle flow, with a hand that moves as hands do
	LessFlow Verdict = "less-flow" // the needle further in, with the fastest hand
	MoreFlow Verdict = "more-flow" // the needle further out, with the slowest hand
	TooWet   Verdict = "too-wet"   // even the least flow and the fastest hand lay more
	TooDry   Verdict = "too-dry"   // even the most flow and the slowest hand lay less
)

// Advice is how to lay a wet film.
type Advice struct {
	Wanted  q.Length
	Speed   q.Speed // that the wanted film takes at the middle flow
	Verdict Verdict
	Setting Setting // to use: it lays Wanted, or what comes nearest to it
	Coats   int     // of the setting that make up Wanted: 1 save where it is too dry
	hand    q.Range[q.Speed]
}

// For returns how to lay a wet film in one coat, with the fan and the overlap in
// the middle of their ranges. Speed is changed first, since the hand does that by
// itself, and the flow only where the hand cannot follow.
func (g Gun) For(wet q.Length, transfer q.Fraction) (Advice, error) {
	if err := g.check(transfer); err != nil {
		return Advice{}, err
	}
	if !positive(wet) {
		return Advice{}, fmt.Errorf("wanted wet film: found %g um; expected above 0 um", wet.Micrometres())
	}
	s := g.Middle(transfer)
	a := Advice{Wanted: wet, Speed: s.SpeedFor(wet), Verdict: Fits, Coats: 1, hand: g.Speed}
	s.Speed = min(max(a.Speed, g.Speed.Low), g.Speed.High)
	if s.Speed != a.Speed {
		a.Verdict = g.turn(&s, wet)
	}
	a.Setting = s
	if a.Verdict == TooDry {
		n := math.Ceil(float64(wet/s.Wet()) - sliver)
		if n > math.MaxInt32 {
			return Advice{}, fmt.Errorf("wanted wet film: found %g um; expected one that somebody can lay", wet.Micrometres())
		}
		a.Coats = int(n)
	}
	return a, nil
}

// turn sets the flow of s, whose hand is at an end of its range, as near as it
// goes to what a wet film takes.
func (g Gun) turn(s *Setting, wet q.Length) Verdict {
	takes := s.FlowFor(wet)
	s.Flow = min(max(takes, g.Flow.Low), g.Flow.High)
	switch {
	case takes < g.Flow.Low:
		return TooWet
	case takes > g.Flow.High:
		return TooDry
	case takes < g.Flow.Middle():
		return LessFlow
	}
	return MoreFlow
}

func (g Gun) check(transfer q.Fraction) error {
	low := Setting{g.Flow.Low, g.Fan.Low, g.Overlap.Low, g.Speed.Low, transfer}
	high := Setting{g.Flow.High, g.Fan.High, g.Overlap.High, g.Speed.High, transfer}
	if err := low.check(); err != nil {
		return err
	}
	if err := high.check(); err != nil {
		return err
	}
	if low.Flow > high.Flow || low.Fan > high.Fan || low.Overlap > high.Overlap || low.Speed > high.Speed {
		return fmt.Errorf("ranges of the applicator: found one from high to low; expected each from low to high")
	}
	return nil
}

// Say puts the advice in a sentence, in the units of a system.
func (a Advice) Say(u *q.System) string {
	s := a.Setting
	takes := fmt.Sprintf("%s wet takes a hand of %s", q.Show(u, a.Wanted), q.Show(u, a.Speed))
	hand := q.ShowRange(u, a.hand)
	switch a.Verdict {
	case LessFlow:
		return fmt.Sprintf("%s, faster than a hand goes (%s): turn the needle in to %s and move at %s.", takes, hand, q.Show(u, s.Flow), q.Show(u, s.Speed))
	case MoreFlow:
		return fmt.Sprintf("%s, slower than a hand goes (%s): turn the needle out to %s and move at %s.", takes, hand, q.Show(u, s.Flow), q.Show(u, s.Speed))
	case TooWet:
		return fmt.Sprintf("%s, faster than a hand goes (%s): even %s at %s lay %s. Take a wider fan, less overlap or a smaller applicator.",
			takes, hand, q.Show(u, s.Flow), q.Show(u, s.Speed), q.Show(u, s.Wet()))
	case TooDry:
		return fmt.Sprintf("%s, slower than a hand goes (%s): even %s at %s lay %s. Lay it in %d coats, or take a larger applicator.",
			takes, hand, q.Show(u, s.Flow), q.Show(u, s.Speed), q.Show(u, s.Wet()), a.Coats)
	}
	return fmt.Sprintf("%s, which a hand can do (%s).", takes, hand)
}
