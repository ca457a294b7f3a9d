package film

import (
	"fmt"

	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// SolidsFormula is VolumeSolids'. ISO 3233-3, which took the place of ISO 23811,
// has a single mean density of the volatiles; its text was not seen.
var SolidsFormula = trace.Formula{
	Text:   "VS = 1 − ρ × Σ wᵢ / ρᵢ",
	Source: "paintcenter.org/rj/aug10b.php",
	Note:   "background/solids-by-volume",
}

// Volatile is something that leaves a paint as it dries: a solvent, or water.
type Volatile struct {
	Share   q.Fraction // of the paint's mass
	Density q.Density
}

// VolumeSolids returns the solids by volume of a paint of a density, which is
// all that its volatiles do not fill. It takes their volumes to add up, which
// leaves out what solvents and resin gain or lose by mixing; it does not hold
// for a film with air in it (above the critical pigment volume concentration),
// nor for one that gives something off as it cures.
func VolumeSolids(paint q.Density, volatiles []Volatile) (q.Fraction, error) {
	if !finite(paint) || paint <= 0 {
		return 0, fmt.Errorf("density of the paint: found %g kg/m3; expected above 0 kg/m3", float64(paint))
	}
	var leaves, mass q.Fraction
	for i, v := range volatiles {
		if !finite(v.Density) || v.Density <= 0 {
			return 0, fmt.Errorf("density of volatile %d: found %g kg/m3; expected above 0 kg/m3", i+1, float64(v.Density))
		}
		if !finite(v.Share) || v.Share < 0 || v.Share > 1 {
			return 0, fmt.Errorf("share of volatile %d: found %g %%; expected 0 to 100 %% of the paint's mass", i+1, v.Share.Percent())
		}
		mass += v.Share
		leaves += v.Share * q.Fraction(paint/v.Density)
	}
	if mass >= 1 {
		return 0, fmt.Errorf("volatiles: found %g %% of the paint's mass; expected less than 100 %%", mass.Percent())
	}
	if leaves >= 1 {
		return 0, fmt.Errorf("volatiles: found %g %% of the paint's volume; expected less than 100 %%: a density is off, or the paint is weighed with air in it", leaves.Percent())
	}
	return 1 - leaves, nil
}

// DryDensityFormula is DryDensity's.
var DryDensityFormula = trace.Formula{
	Text:   "ρ dry = ρ × NV / VS",
	Source: "conservation of mass; worked independently",
	Note:   "background/solids-by-volume",
}

// DryDensity returns what a dry film weighs: paint is the density of the liquid,
// nv its solids by mass, vs its solids by volume.
func DryDensity(paint q.Density, nv, vs q.Fraction) q.Density {
	return paint * q.Density(nv/vs)
}

// WeighedFormula is Weighed's.
var WeighedFormula = trace.Formula{
	Text:   "thickness = m / (A × ρ)",
	Source: "definition of density; paintcenter.org/rj/dec07n.php has it with VS, from the liquid's weight",
	Note:   "background/weighing-a-card",
}

// Weighed returns the film that made a card of an area heavier by gain: the wet
// film with the density of the mix, as long as nothing has dried, or the dry
// film with DryDensity's. With the step of the scale for gain it is the thinnest
// film that the scale can tell.
func Weighed(gain q.Mass, area q.Area, density q.Density) q.Length {
	return q.Length(float64(gain) / (float64(area) * float64(density)))
}
