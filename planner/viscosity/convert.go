package viscosity

import (
	"slices"

	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// ConvertFormula is how Convert works; the two equations are those of the cups.
var ConvertFormula = trace.Formula{
	Text:   "t₂ such that ν₂(t₂) = ν₁(t₁)",
	Source: "the equations of both cups",
	Note:   "background/viscosity-cups",
}

// Conversion is a cup's reading as another cup would have it.
type Conversion struct {
	From      Reading         `json:"from"`
	To        Reading         `json:"to"`
	Viscosity q.Viscosity     `json:"viscosity"`
	Range     q.Range[q.Time] `json:"range"`    // what the other cup may read, both cups being as far off as their kind is
	Cautions  []string        `json:"cautions"` // of both cups
}

// Convert returns what a cup would read where another read from. The error is a
// *RangeError, for either cup.
func Convert(from Reading, to Cup) (Conversion, error) {
	v, err := from.Viscosity()
	if err != nil {
		return Conversion{}, err
	}
	t, err := to.Time(v)
	if err != nil {
		return Conversion{}, err
	}
	c := Conversion{From: from, To: Reading{to, t}, Viscosity: v, Range: q.Range[q.Time]{Low: t, High: t}}
	if from.Cup.Name() == to.Name() {
		return c, nil
	}
	c.Range = q.Range[q.Time]{Low: carried(from, to, -1), High: carried(from, to, +1)}
	c.Cautions = slices.Concat(from.Cup.Cautions, to.Cautions)
	return c, nil
}

// carried is what to would read where both cups are off by their spread, to the
// side of sign.
func carried(from Reading, to Cup, sign q.Time) q.Time {
	read := from.Time * (1 + sign*q.Time(from.Cup.Spread))
	return to.time(from.Cup.viscosity(read)) * (1 + sign*q.Time(to.Spread))
}
