package colour

import (
	"fmt"
	"math"

	q "coatwright/quantity"
)

// Coating is a candy laid over a ground in coats that are all alike.
type Coating struct {
	ground   Ground
	below    Spectrum // what the ground reflects, seen from within the film
	absorbed Spectrum // by one coat, down and up again: -ln T²
	depth    q.Number // of one coat, beside the film of the swatch
}

// Over lays c over a ground; coat is one coat, or any other amount that is to
// count as one.
func (c Candy) Over(g Ground, coat Film) (Coating, error) {
	depth := coat.Depth(c.Film)
	if d := float64(depth); !(d >= 0) || math.IsInf(d, 1) {
		return Coating{}, fmt.Errorf("a coat of candy: found %g coats of %g µm at a strength of %g; expected each to be 0 or more",
			float64(coat.Coats), coat.Build.Micrometres(), float64(coat.Strength))
	}
	out := Coating{ground: g, below: g.below(), depth: depth}
	for i, passed := range c.Passed {
		out.absorbed[i] = -math.Log(passed) * float64(depth)
	}
	return out, nil
}

// Depth returns how much colour so many coats have beside the film of the
// swatch.
func (c Coating) Depth(coats q.Number) q.Number { return coats * c.depth }

// Reflectance returns that of the ground under so many coats, 0 or more, of
// which parts count.
func (c Coating) Reflectance(coats q.Number) Spectrum {
	return above(c.below.times(c.passedBy(coats)), c.ground.Returned)
}

// passedBy is the share of light that so many coats let down and up again.
func (c Coating) passedBy(coats q.Number) Spectrum {
	s := c.absorbed
	for i, a := range s {
		s[i] = math.Exp(-a * float64(coats))
	}
	return s
}

// Lab returns the colour of the ground under so many coats.
func (c Coating) Lab(coats q.Number) Lab { return c.Reflectance(coats).XYZ().Lab() }
