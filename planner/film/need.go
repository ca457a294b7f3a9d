package film

import (
	"fmt"

	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// NeedFormula is Order's Need. The source has area from gallons; this is it
// turned over, with what stays in the gun.
var NeedFormula = trace.Formula{
	Text:   "V = A × DFT × n / (VS × TE) + loss",
	Source: "paintcenter.org/rj/feb07f.cfm; the loss: common practice, no published source",
	Note:   "background/how-much-lands",
}

// Surface is a part's, or that of parts alike, with how much of the paint lands
// on it: that goes by the applicator and by the part's shape, over a whole job.
type Surface struct {
	Area     q.Area
	Transfer q.Range[q.Fraction]
}

// Order is a film to be laid, in coats alike, with one mix.
type Order struct {
	Surfaces []Surface
	Build    q.Length   // dry film of one coat
	Coats    int        // 0 or more
	Solids   q.Fraction // by volume, of the mix as sprayed

	// Loss is what stays in cup and passages when the applicator is cleaned, and
	// Cleanings is how often that is while this film is laid: at least once, and
	// once more for each mix that sets before the next. A refill of the cup loses
	// nothing, as it falls on what stayed of the fill before; so the loss goes by
	// the mix and not by the fill.
	Loss      q.Volume
	Cleanings int
}

// Need is how much mix an order takes, as it is sprayed.
type Need struct {
	OnPart  q.Volume // lands
	Sprayed Estimate // leaves the applicator
	Lost    q.Volume // stays in it
}

// Estimate is a volume that may turn out less or more.
type Estimate struct{ Low, Likely, High q.Volume }

// Mixed returns what to mix: all that is sprayed and all that stays behind.
func (n Need) Mixed() Estimate {
	return Estimate{n.Sprayed.Low + n.Lost, n.Sprayed.Likely + n.Lost, n.Sprayed.High + n.Lost}
}

// Need returns how much mix o takes; nothing is lost where nothing is laid. The
// likely volume goes by the middle of each surface's transfer, the low one by
// its high end. An error says what in the order cannot be.
func (o Order) Need() (Need, error) {
	if err := o.check(); err != nil {
		return Need{}, err
	}
	var n Need
	if o.Coats == 0 {
		return n, nil
	}
	spread := SpreadingRate(o.Solids, o.Build*q.Length(o.Coats))
	for _, s := range o.Surfaces {
		lands := float64(s.Area) / float64(spread)
		n.OnPart += q.Volume(lands)
		n.Sprayed.Low += q.Volume(lands / float64(s.Transfer.High))
		n.Sprayed.Likely += q.Volume(lands / float64(s.Transfer.Middle()))
		n.Sprayed.High += q.Volume(lands / float64(s.Transfer.Low))
	}
	if n.OnPart > 0 {
		n.Lost = o.Loss * q.Volume(o.Cleanings)
	}
	return n, nil
}

func (o Order) check() error {
	switch {
	case !share(o.Solids):
		return fmt.Errorf("solids by volume of the mix: found %g %%; expected above 0 and up to 100 %%", o.Solids.Percent())
	case !finite(o.Build) || o.Build <= 0:
		return fmt.Errorf("dry film of one coat: found %g um; expected above 0 um", o.Build.Micrometres())
	case o.Coats < 0:
		return fmt.Errorf("coats: found %d; expected 0 or more", o.Coats)
	case !finite(o.Loss) || o.Loss < 0:
		return fmt.Errorf("what stays in cup and passages: found %g mL; expected 0 mL or more", o.Loss.Millilitres())
	case o.Cleanings < 1:
		return fmt.Errorf("cleanings of the applicator: found %d; expected 1 or more", o.Cleanings)
	}
	for i, s := range o.Surfaces {
		if !finite(s.Area) || s.Area < 0 {
			return fmt.Errorf("area of surface %d: found %g m2; expected 0 m2 or more", i+1, float64(s.Area))
		}
		if t := s.Transfer; !share(t.Low) || !share(t.High) || t.Low > t.High {
			return fmt.Errorf("share that lands on surface %d: found %g to %g %%; expected a range above 0 and up to 100 %%",
				i+1, t.Low.Percent(), t.High.Percent())
		}
	}
	return nil
}
