package colour

import (
	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// EvennessFormula is what an uneven film does to the colour.
var EvennessFormula = trace.Formula{
	Text:   "ΔE00(colour under d (1 ± v), colour under d)",
	Source: "Beer-Lambert law and CIEDE2000",
	Note:   "background/how-even-is-even",
}

// Evenness is how far places with less film and with more look from the rest.
type Evenness struct {
	Variation q.Fraction // of the film's thickness
	Thin      DeltaE     // where it is so much thinner
	Thick     DeltaE     // where it is so much thicker
}

// Evenness returns what a variation of the thickness, from 0 to 1, does after so
// many coats.
func (c Coating) Evenness(coats q.Number, variation q.Fraction) Evenness {
	return c.beside(c.Lab(coats), coats, variation)
}

// beside is how thinner and thicker places look beside an even one.
func (c Coating) beside(even Lab, coats q.Number, variation q.Fraction) Evenness {
	v := q.Number(variation)
	return Evenness{variation, Difference(c.Lab(coats*(1-v)), even), Difference(c.Lab(coats*(1+v)), even)}
}

// Tolerance returns by how much the thickness may vary, to either side, before
// any place looks further than limit from the rest. It is 1 where even no film
// and twice the film stay within it.
func (c Coating) Tolerance(coats q.Number, limit DeltaE) q.Fraction {
	even := c.Lab(coats)
	within := func(v q.Fraction) bool {
		e := c.beside(even, coats, v)
		return max(e.Thin, e.Thick) <= limit
	}
	low, high := q.Fraction(0), q.Fraction(1.0/128)
	for within(high) {
		if high == 1 {
			return 1
		}
		low, high = high, 2*high
	}
	for high-low > 1e-6 {
		if middle := (low + high) / 2; within(middle) {
			low = middle
		} else {
			high = middle
		}
	}
	return low
}
