package mix

import (
	"errors"
	"fmt"
	"maps"
	"slices"

	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// MostFormula is how Most and TotalFor come about.
var MostFormula = trace.Formula{
	Text:   "total = min over parts of (what is left of it / its share), and the cup",
	Source: "definition of a ratio",
	Note:   "background/ratios-and-marks",
}

// TotalFor returns the total of a mix that takes so much of one part.
func TotalFor(parts []Part, name string, amount q.Volume) (q.Volume, error) {
	i, err := find(parts, name)
	if err != nil {
		return 0, err
	}
	shares, err := Shares(parts)
	if err != nil {
		return 0, err
	}
	if err := sound(float64(amount), "a volume"); err != nil {
		return 0, wrong(i, parts[i], err)
	}
	if shares[i] == 0 {
		return 0, wrong(i, parts[i], errors.New("the mix takes none of it; expected a part that it takes"))
	}
	return amount / q.Volume(shares[i]), nil
}

// Limit is the most that can be mixed, and what stops at it.
type Limit struct {
	Total q.Volume
	By    string // the part that runs out; "" where it is the cup
}

// Most returns the most that can be mixed of what is left in the cans, by the
// parts' names, in a cup of a size. A part that is not named is no limit, and
// neither is a cup of size zero.
func Most(parts []Part, left map[string]q.Volume, size q.Volume) (Limit, error) {
	if err := sound(float64(size), "the size of the cup"); err != nil {
		return Limit{}, err
	}
	shares, err := Shares(parts)
	if err != nil {
		return Limit{}, err
	}
	most, limited := Limit{Total: size}, size > 0
	for _, name := range slices.Sorted(maps.Keys(left)) {
		i, err := find(parts, name)
		if err != nil {
			return Limit{}, err
		}
		if err := sound(float64(left[name]), "a volume"); err != nil {
			return Limit{}, wrong(i, parts[i], err)
		}
		if shares[i] == 0 {
			continue
		}
		if total := left[name] / q.Volume(shares[i]); !limited || total < most.Total {
			most, limited = Limit{total, name}, true
		}
	}
	if !limited {
		return Limit{}, fmt.Errorf("found no cup and nothing left of a part that the mix takes; expected one of them, to know how much to mix")
	}
	return most, nil
}
