package voc

import (
	"fmt"
	"math"

	q "coatwright/quantity"
)

// Defer is what every comparison ends in.
const Defer = "The law's own text and the local authority decide. These limits are for products that refinish vehicles; other work has others, or none."

// Category is a kind of product in a law, and the most VOC that it may hold
// ready to use: as sprayed, thinned and mixed.
type Category struct {
	Name   string
	Limit  q.Concentration
	Source string // the law and its table
	Water  bool   // the limit counts the whole volume, water too; else less water
	Exempt bool   // the law knows exempt compounds; else they are VOC like any
}

// Verdict says on which side of a limit a liquid is.
type Verdict string

// The verdicts. A liquid that holds just the limit is under it.
const (
	Under   Verdict = "under"
	Over    Verdict = "over"
	Unclear Verdict = "unclear" // what is not known of it decides
)

// Comparison is how a liquid stands against the limit of a category.
type Comparison struct {
	Category
	Counts  q.Range[q.Concentration] // the liquid's VOC as the category counts it
	Beyond  q.Range[q.Concentration] // Counts less the limit: above 0 is over, below 0 under
	Verdict Verdict
	Defer   string
}

// Count returns the VOC of a liquid as the category counts it, in g/L.
//
// European law (2004/42/EC) knows no exempt compounds: what boils up to 250 C is
// VOC (from memory), so their mass is added there. It counts less water, except
// in products that prepare and clean.
func (c Category) Count(l Liquid) q.Range[q.Concentration] {
	mass := q.Range[q.Concentration]{Low: l.VOC, High: l.VOC}
	out := l.Exempt
	if !c.Exempt {
		exempt := l.exemptMass()
		mass.Low, mass.High, out = mass.Low+exempt.Low, mass.High+exempt.High, 0
	}
	if c.Water {
		return mass
	}
	return q.Range[q.Concentration]{
		Low:  perVolume(mass.Low, 1-l.Water.Low-out),
		High: perVolume(mass.High, 1-l.Water.High-out),
	}
}

// Compare holds a liquid, as sprayed, against a category. It is an error when
// the liquid cannot be, or the category has no limit.
func Compare(l Liquid, c Category) (Comparison, error) {
	if err := l.Check(); err != nil {
		return Comparison{}, err
	}
	if !(c.Limit > 0) || math.IsInf(float64(c.Limit), 1) {
		return Comparison{}, fmt.Errorf("the category %q: found a limit of %g g/L; expected more than 0", c.Name, float64(c.Limit))
	}
	counts := c.Count(l)
	beyond := q.Range[q.Concentration]{Low: counts.Low - c.Limit, High: counts.High - c.Limit}
	return Comparison{c, counts, beyond, verdict(beyond), Defer}, nil
}

func verdict(beyond q.Range[q.Concentration]) Verdict {
	switch {
	case beyond.High <= 0:
		return Under
	case beyond.Low > 0:
		return Over
	}
	return Unclear
}

// Says puts the comparison into words, in the units of s, with Defer at its end.
func (c Comparison) Says(s *q.System) string {
	return fmt.Sprintf("As sprayed it counts %s of VOC%s: %s the limit of %s for %s (%s). %s",
		q.ShowRange(s, c.Counts), c.basis(), c.distance(s), q.Show(s, c.Limit), c.Name, c.Source, c.Defer)
}

func (c Comparison) basis() string {
	switch {
	case c.Water:
		return " with its water"
	case c.Exempt:
		return " less water and exempt compounds"
	}
	return " less water"
}

// distance is "46 g/L over", "120 to 150 g/L under", or how far to either side.
func (c Comparison) distance(s *q.System) string {
	switch {
	case c.Counts.Low == c.Limit && c.Counts.High == c.Limit:
		return "just at"
	case c.Verdict == Over:
		return q.ShowRange(s, c.Beyond) + " over"
	case c.Verdict == Under:
		return q.ShowRange(s, q.Range[q.Concentration]{Low: -c.Beyond.High, High: -c.Beyond.Low}) + " under"
	}
	return fmt.Sprintf("from %s under to %s over", q.Show(s, -c.Beyond.Low), q.Show(s, c.Beyond.High))
}
