package mix

import (
	"fmt"

	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// MeanFormula is how Mean comes about.
var MeanFormula = trace.Formula{
	Text:   "mean = Σ(share × value), shares by volume",
	Source: "finishing guidebook 2013, appendix B: VOC = Σ(v VOC)/Σ(v)",
	Note:   "background/ratios-and-marks",
}

// Mean returns a property of the mix that adds up by volume, such as a mass per
// volume: the mean of values, one for each part, weighted by volume.
func Mean[Q q.Quantity](parts []Part, values []Q) (Q, error) {
	if len(values) != len(parts) {
		return 0, fmt.Errorf("found %d values for %d parts; expected one for each", len(values), len(parts))
	}
	shares, err := Shares(parts)
	var sum Q
	for i, s := range shares {
		sum += Q(s) * values[i]
	}
	return sum, err
}

// SolidsFormula is how Solids comes about.
var SolidsFormula = trace.Formula{
	Text:   "VS = Σ(share × VS of the part), shares by volume",
	Source: "definition of volume solids; thinned, as WFT = DFT (1 + thinner)/VS (scribd.com/document/104802451)",
	Note:   "background/film-build",
}

// Solids returns the solids by volume of the mix.
func Solids(parts []Part) (q.Fraction, error) {
	values := make([]q.Fraction, len(parts))
	for i, p := range parts {
		values[i] = p.Solids
	}
	return Mean(parts, values)
}

// DensityFormula is how Density comes about.
var DensityFormula = trace.Formula{
	Text:   "ρ = Σ(share × ρ of the part), shares by volume",
	Source: "definition of density, volumes taken to add up",
	Note:   "background/ratios-and-marks",
}

// Density returns the density of the mix, in kg/m3. The error says where a part
// has none.
func Density(parts []Part) (q.Density, error) {
	values := make([]q.Density, len(parts))
	for i, p := range parts {
		if p.Density == 0 {
			return 0, wrong(i, p, fmt.Errorf("found no density; expected one, such as %q", "1.2 kg/L"))
		}
		values[i] = p.Density
	}
	return Mean(parts, values)
}
