package grit

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// LadderFormula is the rule that Ladder keeps to.
var LadderFormula = trace.Formula{
	Text:   "next number ≤ (1 + jump) × number; as few grades as that allows, then as even as they can be",
	Source: "common practice, no published source",
	Note:   "background/what-grit-means",
}

// Rung is one grade of a ladder.
type Rung struct {
	Grade Grade   `json:"grade"`
	Jump  float64 `json:"jump"` // how much its number is above the one before: 0.5 for half again; 0 on the first
}

// Ladder returns the P grades that lead from a coarse one to a fine one, both
// included: as few as there can be when no number is more than jump above the one
// before (1 is twice the number, 0.5 half again), and among those as even as can
// be. A neighbour in the scale may always follow, however small jump is.
func Ladder(from, to q.Grit, jump float64) ([]Rung, error) {
	first, last := find(P, from), find(P, to)
	for _, end := range []q.Grit{from, to} {
		if _, err := Numbered(P, end); err != nil {
			return nil, err
		}
	}
	if from > to {
		return nil, fmt.Errorf("found P%g to P%g; expected the coarse grade first: P%g to P%g", float64(from), float64(to), float64(to), float64(from))
	}
	if !(jump > 0) || math.IsInf(jump, 1) {
		return nil, fmt.Errorf("found a jump of %g; expected more than 0, such as 1 for twice the number", jump)
	}
	return rungs(climb(tables[P][first:last+1], jump)), nil
}

// way is the best way to a grade: how many steps it has, how uneven they are, and
// where the last came from.
type way struct {
	steps  int
	uneven float64
	before int
}

// climb picks from grades, in order, the first, the last and what is needed between.
func climb(grades []Grade, jump float64) []Grade {
	ways := make([]way, len(grades))
	for i := 1; i < len(grades); i++ {
		ways[i] = way{steps: math.MaxInt}
		for j := range i {
			if j != i-1 && !within(grades[j], grades[i], jump) {
				continue
			}
			// The sum of squares of steps with a given sum is least when they are even.
			step := math.Log(float64(grades[i].Number / grades[j].Number))
			w := way{ways[j].steps + 1, ways[j].uneven + step*step, j}
			if cmp.Or(cmp.Compare(w.steps, ways[i].steps), cmp.Compare(w.uneven, ways[i].uneven)) < 0 {
				ways[i] = w
			}
		}
	}
	picked := []Grade{grades[len(grades)-1]}
	for i := len(grades) - 1; i > 0; i = ways[i].before {
		picked = append(picked, grades[ways[i].before])
	}
	slices.Reverse(picked)
	return picked
}

// within reports whether b may follow a.
func within(a, b Grade, jump float64) bool {
	const sliver = 1e-9 // of arithmetic
	return float64(b.Number) <= float64(a.Number)*(1+jump)*(1+sliver)
}

// rungs adds to each grade its jump.
func rungs(grades []Grade) []Rung {
	out := make([]Rung, len(grades))
	for i, g := range grades {
		out[i].Grade = g
		if i > 0 {
			out[i].Jump = float64(g.Number/grades[i-1].Number) - 1
		}
	}
	return out
}
