package film

import (
	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// StackFormula is Heights'.
var StackFormula = trace.Formula{
	Text:   "D = Σ nᵢ × DFTᵢ",
	Source: "arithmetic",
	Note:   "background/film-build",
}

// Layer is a film in a stack.
type Layer struct {
	Build q.Range[q.Length] // dry film of one coat
	Coats int
}

// Heights returns how high the top of each layer lies over the substrate, for
// layers from the bottom up; the last is the whole stack. The ends of the ranges
// add up, as films of one hand tend to be off to the same side.
func Heights(layers []Layer) []q.Range[q.Length] {
	heights := make([]q.Range[q.Length], len(layers))
	var top q.Range[q.Length]
	for i, l := range layers {
		n := q.Length(l.Coats)
		top = q.Range[q.Length]{Low: top.Low + n*l.Build.Low, High: top.High + n*l.Build.High}
		heights[i] = top
	}
	return heights
}
