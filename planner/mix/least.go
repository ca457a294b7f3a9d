package mix

import (
	"fmt"
	"math"
	"slices"

	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// Least is the smallest mix whose pours a tool can measure well enough.
type Least[Q q.Quantity] struct {
	Total Q
	Part  string // the part that sets it; "" where the tool is read exactly
}

// LeastFormula is how LeastByCup and LeastByScale come about: WorstFormula,
// solved for the total.
var LeastFormula = trace.Formula{
	Text:   "total = max over parts of (step/2 below + step/2 above) / (share × allowed error)",
	Source: "minimum weighable quantity = sensitivity × 100 % / error %: pharmacalculation.com/2024/01",
	Note:   "background/how-small-a-mix-can-be",
}

// LeastByCup returns the smallest total by volume of which no pour can be off by
// more than a share within. A bigger one may be worse: where its marks lie among
// lines that stand farther apart.
func LeastByCup(parts []Part, c Cup, within q.Fraction) (Least[q.Volume], error) {
	shares, err := Shares(parts)
	if err != nil {
		return Least[q.Volume]{}, err
	}
	total, i, err := least(shares, c.ruler(), within)
	return Least[q.Volume]{q.Volume(total), nameAt(parts, i)}, err
}

// LeastByScale returns the smallest total by mass, as LeastByCup does by volume.
func LeastByScale(parts []Part, s Scale, within q.Fraction) (Least[q.Mass], error) {
	shares, err := MassShares(parts)
	if err != nil {
		return Least[q.Mass]{}, err
	}
	total, i, err := least(shares, s.ruler(), within)
	return Least[q.Mass]{q.Mass(total), nameAt(parts, i)}, err
}

func nameAt(parts []Part, i int) string {
	if i < 0 {
		return ""
	}
	return parts[i].Name
}

// least goes from one total to the next at which a mark comes to another span
// of the ruler. Between them the error falls with the total.
func least(shares []q.Fraction, r ruler, within q.Fraction) (total float64, part int, err error) {
	if !(within > 0) || math.IsInf(float64(within), 1) {
		return 0, -1, fmt.Errorf("found %g %% as what a pour may be off; expected a share above 0 %%, such as 2 %%", within.Percent())
	}
	turns := turnsOf(shares, r)
	for i := 0; ; i++ {
		from, to := turns[i], math.Inf(1)
		inside := from*2 + 1
		if i+1 < len(turns) {
			to = turns[i+1]
			inside = to
		}
		total, part := enough(shares, r, inside, float64(within))
		if total <= from && from > 0 {
			total = from * (1 + 2*sliver) // the lines get finer here
		}
		if total <= to {
			return total, part, nil
		}
	}
}

// turnsOf are the totals, from 0 on, at which a mark reaches the end of a span.
func turnsOf(shares []q.Fraction, r ruler) []float64 {
	turns := []float64{0}
	var upTo float64
	for _, s := range shares {
		upTo += float64(s)
		for _, span := range r[:len(r)-1] {
			if upTo > 0 && span.to > 0 {
				turns = append(turns, span.to/upTo)
			}
		}
	}
	slices.Sort(turns)
	return turns
}

// enough is the total that the steps which hold at another one ask for, and the
// part that asks most.
func enough(shares []q.Fraction, r ruler, at, within float64) (total float64, part int) {
	part = -1
	var below float64
	for i, s := range shares {
		mark := below + float64(s)
		if s > 0 {
			steps := r.half(below*at) + r.half(mark*at)
			if t := steps / (float64(s) * within); t > total {
				total, part = t, i
			}
		}
		below = mark
	}
	return total, part
}
