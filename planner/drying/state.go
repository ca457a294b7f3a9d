package drying

import (
	"cmp"

	"coatwright/planner/air"
	q "coatwright/quantity"
)

// State is a dryness state of one film, as its note and its coat have it.
type State struct {
	In     q.Time        // in the reference air, with as much film as the note is for
	By     Pace          // what it waits for
	Energy q.MolarEnergy // of a cure, where it is known; zero for the published range
	Film   float64       // how many times as long for its thickness, see Thickness; zero stands for 1
}

// Time returns how long the state takes in a, +Inf where nothing dries.
func (s State) Time(a air.Air) q.Time {
	if s.In == 0 {
		return 0
	}
	film, energy := cmp.Or(s.Film, 1), cmp.Or(s.Energy, ActivationEnergy)
	return s.In * q.Time(film*factor(s.By, energy, a))
}

// Times returns Time with the ends that the published energies give.
func (s State) Times(a air.Air) Estimate {
	return s.estimate(func(s State) q.Time { return s.Time(a) })
}

// estimate works out a time for the likely state and, where it is a cure of an
// unknown energy, for the ends of the published range.
func (s State) estimate(of func(State) q.Time) Estimate {
	if s.By != Cure {
		t := of(s)
		return Estimate{t, t, t}
	}
	return overEnergies(s.Energy, func(e q.MolarEnergy) q.Time {
		s.Energy = e
		return of(s)
	})
}
