package drying

import (
	"math"

	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// FilmFormula is how Thickness comes about.
var FilmFormula = trace.Formula{
	Text:   "t/t0 = (d/d0)^n, n from 1 (the air sets the pace) to 2 (the way out of the film does); 1 is used",
	Source: "drying in two stages: the rate of free water first, then diffusion (arxiv.org/abs/1411.1884); linear in time and then by its square root (drying of porous coatings, measured)",
	Note:   "background/film-build",
}

// Growth is how many times as long a film takes as another.
type Growth struct{ Low, Likely, High float64 }

// Thickness returns how many times as long a film of build takes as one of
// refBuild. What leaves a film at the pace of the air takes as long as there is
// of it: the first power, which is the likely one. What must wander through a
// film that has begun to set takes the square; a real state lies between, and
// nearer the square the later it is. A cure is the same in any film. With no
// refBuild the film is as it should be.
func Thickness(p Pace, build, refBuild q.Length) Growth {
	if refBuild <= 0 || (p != Evaporation && p != Solvent) {
		return Growth{1, 1, 1}
	}
	ratio := float64(build / refBuild)
	square := ratio * ratio
	return Growth{math.Min(ratio, square), ratio, math.Max(ratio, square)}
}
