package mix

import (
	"math"

	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// Reading is a pour as a tool can show it.
type Reading[Q q.Quantity] struct {
	Name  string
	Exact Q          // the mark that the recipe asks for
	Mark  Q          // the line nearest to it: never more than half a step away
	Pour  Q          // from line to line
	Off   q.Fraction // how far Pour is from the recipe's, for the rounding alone; below 0 for too little
	Worst q.Fraction // how far it may be, as each mark is read to half a step
}

// WorstFormula is how a Reading's Worst comes about.
var WorstFormula = trace.Formula{
	Text:   "error ≤ (step/2 below + step/2 above) / pour; an empty cup and a scale at zero are exact",
	Source: "reading to half a division: nobel.scas.bcit.ca/chem0010/equipment/gradCylinder.htm",
	Note:   "background/how-small-a-mix-can-be",
}

// ByCup returns the pours by the lines of a cup. Where the total is not on a
// line, all pours are off by what the total is off by. There are none where
// volumes are not known.
func ByCup(pours []Pour, c Cup) []Reading[q.Volume] {
	return readings(pours, c.ruler(), func(p Pour) (of, mark q.Volume) { return p.Volume, p.Mark })
}

// ByScale returns the pours by what a scale shows that was set to zero once, none
// where masses are not known.
func ByScale(pours []Pour, s Scale) []Reading[q.Mass] {
	return readings(pours, s.ruler(), func(p Pour) (of, mark q.Mass) { return p.Mass, p.MarkMass })
}

func readings[Q q.Quantity](pours []Pour, r ruler, amount func(Pour) (of, mark Q)) []Reading[Q] {
	if len(pours) == 0 {
		return nil
	}
	if _, total := amount(pours[len(pours)-1]); total == 0 {
		return nil
	}
	out := make([]Reading[Q], len(pours))
	var below, reached Q // the exact mark below, and the line
	for i, p := range pours {
		of, mark := amount(p)
		line := Q(r.nearest(float64(mark)))
		out[i] = Reading[Q]{p.Name, mark, line, line - reached, off(line-reached, of), worst(r, float64(below), float64(mark), float64(of))}
		below, reached = mark, line
	}
	return out
}

// off is the share by which a pour misses what it was to be.
func off[Q q.Quantity](poured, of Q) q.Fraction {
	if of == 0 {
		return 0
	}
	return q.Fraction(poured/of - 1)
}

// worst is the most that a pour from one mark to another can be off.
func worst(r ruler, below, mark, of float64) q.Fraction {
	if of == 0 {
		return 0
	}
	return q.Fraction((r.half(below) + r.half(mark)) / of)
}

// Farthest returns the reading whose rounding is farthest off, and false where
// there is none.
func Farthest[Q q.Quantity](readings []Reading[Q]) (Reading[Q], bool) {
	var far Reading[Q]
	for i, r := range readings {
		if i == 0 || math.Abs(float64(r.Off)) > math.Abs(float64(far.Off)) {
			far = r
		}
	}
	return far, len(readings) > 0
}
