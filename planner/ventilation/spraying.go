package ventilation

import (
	"fmt"

	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// Spraying is a coat, and the time that its solvent takes to leave.
type Spraying struct {
	Paint   q.Volume   // of mix sprayed, with what misses the part: it evaporates too
	Solvent q.Fraction // of the mix's volume; see SolventShare
	Spray   q.Time     // while the gun sprays
	Flash   q.Time     // until the coat has flashed off; zero for none
}

// SolventShare returns the share of a mix's volume that evaporates and burns: what its
// solids and its water leave, zero where they leave nothing. So reads
// 29 CFR 1910.94(c)(6) in its state copy WAC 296-62-11019: "the quantity of
// solvent will be diminished by the quantity of solids and nonflammables".
func SolventShare(solids, water q.Fraction) q.Fraction {
	return max(0, 1-solids-water)
}

// RateFormula is that of Spraying.Rate.
var RateFormula = trace.Formula{
	Text:   "rate = V s/(spraying + flash) to V s/spraying",
	Source: "mass balance: all of the solvent leaves within spraying and flash; at worst it leaves as it is sprayed",
	Note:   "background/how-vapour-burns",
}

// Rate returns how fast solvent leaves, in m3 of liquid a second. The low end
// spreads all of it over spraying and flash. The high end lets all of it leave
// while the gun sprays, the worst that can be.
// Solvent that stays longer than the flash is counted as if it did not.
// It is an error when nothing takes any time.
func (s Spraying) Rate() (q.Range[q.Flow], error) {
	if !sound(float64(s.Paint)) || !(s.Solvent >= 0 && s.Solvent <= 1) {
		return q.Range[q.Flow]{}, fmt.Errorf("found %g m3 of paint with %.6g %% of solvent; expected 0 or more, and 0 to 100 %%", float64(s.Paint), s.Solvent.Percent())
	}
	if !(s.Spray > 0) || !sound(float64(s.Spray)) || !sound(float64(s.Flash)) {
		return q.Range[q.Flow]{}, fmt.Errorf("found %g s of spraying and %g s of flash; expected spraying of more than 0, and a flash of 0 or more", float64(s.Spray), float64(s.Flash))
	}
	solvent := float64(s.Paint) * float64(s.Solvent)
	return q.Range[q.Flow]{Low: q.Flow(solvent / float64(s.Spray+s.Flash)), High: q.Flow(solvent / float64(s.Spray))}, nil
}
