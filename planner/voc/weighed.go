package voc

import (
	"errors"
	"fmt"

	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// WaterDensity is that of water at 20 C, in kg/m3; from memory, and what the
// 8.33 lb/US gal of published examples comes to.
const WaterDensity q.Density = 998.2

// Weighed is a liquid as a data sheet gives it by mass.
type Weighed struct {
	Density               q.Density
	Solids, Water, Exempt q.Fraction // of the mass; what they leave is VOC
	ExemptDensity         q.Density  // needed where there are exempt compounds
}

// WeighedFormula is that of Weighed.Liquid, for the VOC less water.
var WeighedFormula = trace.Formula{
	Text:   "VOC = (100 - solids - water) Dc/(100 - water Dc/Dw), solids and water in % of the mass",
	Source: "paintcenter.org/rj/mar04b.php, the mass form of 40 CFR 59.104(a)(1)",
	Note:   "background/what-voc-counts",
}

// Liquid turns shares of the mass into what a volume holds. It is an error when
// the shares make more than the whole, or their volumes do.
// Source: see WeighedFormula.
func (w Weighed) Liquid() (Liquid, error) {
	if err := w.check(); err != nil {
		return Liquid{}, err
	}
	in := func(mass q.Fraction) q.Concentration { return q.Concentration(float64(mass) * float64(w.Density)) }
	water := q.Fraction(float64(in(w.Water)) / float64(WaterDensity))
	l := Liquid{
		VOC:     in(max(0, 1-w.Solids-w.Water-w.Exempt)),
		Water:   q.Range[q.Fraction]{Low: water, High: water},
		Density: w.Density,
	}
	if w.Exempt > 0 {
		l.Exempt = q.Fraction(float64(in(w.Exempt)) / float64(w.ExemptDensity))
		l.ExemptMass = q.Range[q.Concentration]{Low: in(w.Exempt), High: in(w.Exempt)}
	}
	return l, l.Check()
}

// sliver is how far shares may make more than the whole by arithmetic alone.
const sliver = 1e-12

func (w Weighed) check() error {
	total := w.Solids + w.Water + w.Exempt
	switch {
	case !(w.Density > 0) || !sound(float64(w.Density)):
		return fmt.Errorf("found a density of %.6g kg/m3; expected more than 0", float64(w.Density))
	case !share(w.Solids) || !share(w.Water) || !share(w.Exempt) || total > 1+sliver:
		return fmt.Errorf("found solids of %.6g %%, water of %.6g %% and exempt compounds of %.6g %%; expected shares of the mass that make no more than 100 %%",
			w.Solids.Percent(), w.Water.Percent(), w.Exempt.Percent())
	case w.Exempt > 0 && (!(w.ExemptDensity > 0) || !sound(float64(w.ExemptDensity))):
		return errors.New("found exempt compounds without their density; expected it, as they are left out by volume")
	}
	return nil
}
