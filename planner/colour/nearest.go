package colour

import (
	"math"

	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// NearestFormula is how many coats come nearest to a colour.
var NearestFormula = trace.Formula{
	Text:   "n = argmin ΔE00(colour under n coats, colour wanted)",
	Source: "Beer-Lambert law and CIEDE2000; searched at every quarter of a coat, then by golden section",
	Note:   "background/how-candy-makes-its-colour",
}

// Match is how near a coating comes to a colour.
type Match struct {
	Coats    int // whole ones, 1 or more
	Left     DeltaE
	Best     q.Number // coats, of which parts count; the most that was allowed where the colour lies deeper
	BestLeft DeltaE
}

const (
	quarters = 4    // of a coat: how close together the search looks first
	fine     = 1e-6 // of a coat: where it stops
)

// Nearest returns how many coats, up to most, come nearest to a colour, the
// fewest of equals. Most is 1 or more.
func (c Coating) Nearest(wanted Lab, most int) Match {
	m := Match{Coats: 1, Left: DeltaE(math.Inf(1)), BestLeft: DeltaE(math.Inf(1))}
	part := c.passedBy(1.0 / quarters)
	for i, below := 0, c.below; i <= quarters*max(most, 1); i, below = i+1, below.times(part) {
		d := Difference(above(below, c.ground.Returned).XYZ().Lab(), wanted)
		if i > 0 && i%quarters == 0 && d < m.Left {
			m.Coats, m.Left = i/quarters, d
		}
		if d < m.BestLeft {
			m.Best, m.BestLeft = q.Number(i)/quarters, d
		}
	}
	low, high := max(m.Best-1.0/quarters, 0), min(m.Best+1.0/quarters, q.Number(max(most, 1)))
	best := golden(low, high, func(coats q.Number) DeltaE { return Difference(c.Lab(coats), wanted) })
	if d := Difference(c.Lab(best), wanted); d < m.BestLeft {
		m.Best, m.BestLeft = best, d
	}
	return m
}

// golden returns where a function that falls and then rises is least, by
// golden section.
func golden(low, high q.Number, f func(q.Number) DeltaE) q.Number {
	section := q.Number(math.Phi - 1)
	a, b := high-section*(high-low), low+section*(high-low)
	fa, fb := f(a), f(b)
	for high-low > fine {
		if fa <= fb {
			high, b, fb = b, a, fa
			a = high - section*(high-low)
			fa = f(a)
		} else {
			low, a, fa = a, b, fb
			b = low + section*(high-low)
			fb = f(b)
		}
	}
	return (low + high) / 2
}
