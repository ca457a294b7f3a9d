package drying

import (
	"math"

	"coatwright/planner/air"
	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// Course is the air at a film, by the time since the film was laid. It has an
// answer for every time from zero on.
type Course func(after q.Time) air.Air

// CourseFormula is how Done and Reached come about.
var CourseFormula = trace.Formula{
	Text:   "share done = integral of dt / t(air at that time)",
	Source: "additivity of shares: exact for free water, and for any reaction of one activation energy",
	Note:   "background/temperature-and-cure",
}

const (
	// interval is how far apart the air of a course is looked at, with once
	// more halfway: what changes within it is smoothed over.
	interval q.Time = 600

	// longest is where a course is no longer followed.
	longest q.Time = 100 * 24 * 3600
)

// Done returns what share of the way to s a film has gone by a time after it was
// laid; above 1 it is there. It holds for what has one pace all along: a film
// that stood dry for a day does not go on where water has long left it.
func (s State) Done(c Course, until q.Time) float64 {
	if s.In == 0 {
		return 1
	}
	done, _ := s.follow(c, until, math.Inf(1))
	return done
}

// Reached returns when after it was laid a film reaches s, +Inf where that is
// not by limit, or not within 100 days.
func (s State) Reached(c Course, limit q.Time) q.Time {
	if s.In == 0 {
		return 0
	}
	_, at := s.follow(c, limit, 1)
	return at
}

// follow adds up shares until a time or until they come to enough, and says
// when they do; +Inf for never. Each interval is integrated by Simpson's rule.
func (s State) follow(c Course, until q.Time, enough float64) (done float64, at q.Time) {
	until = min(until, longest)
	first := s.rate(c(0))
	for t := q.Time(0); t < until; t += interval {
		step := min(interval, until-t)
		middle, last := s.rate(c(t+step/2)), s.rate(c(t+step))
		gained := float64(step) * (first + 4*middle + last) / 6
		if done+gained >= enough {
			return enough, t + step*q.Time(within(enough-done, float64(step), first, middle, last))
		}
		done, first = done+gained, last
	}
	return done, q.Time(math.Inf(1))
}

// rate is the share of the way that one second brings.
func (s State) rate(a air.Air) float64 { return 1 / float64(s.Time(a)) }

// within returns the part of a step after which the integral comes to share:
// that of the parabola through the three rates, which Simpson's rule is exact
// for.
func within(share, step, first, middle, last float64) float64 {
	low, high := 0.0, 1.0
	for range 50 {
		u := (low + high) / 2
		integral := step * u * (first + u*((-3*first+4*middle-last)/2+u*(2*first-4*middle+2*last)/3))
		if integral < share {
			low = u
		} else {
			high = u
		}
	}
	return high
}
