package viscosity

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	q "coatwright/quantity"
)

// RangeError says that a cup is the wrong one for a liquid, and which is right.
type RangeError struct {
	Found   Reading
	Instead Reading // with a Cup of no Kind where no cup that is known will do
}

func (e *RangeError) Error() string {
	r := e.Found.Cup.Range
	text := fmt.Sprintf("found %s with the %s cup, expected %.3g to %s", seconds(e.Found.Time), e.Found.Cup.Name(), float64(r.Low), seconds(r.High))
	if e.Instead.Cup.Kind == "" {
		return text + "; no cup that is known measures this liquid"
	}
	return fmt.Sprintf("%s; run the %s cup instead: %s", text, e.Instead.Cup.Name(), seconds(e.Instead.Time))
}

// outside is the error for a time t that c is not made for, of a liquid of
// viscosity v.
func outside(c Cup, t q.Time, v q.Viscosity) error {
	e := &RangeError{Found: Reading{c, t}}
	if able := Able(v); len(able) > 0 {
		e.Instead = slices.MinFunc(able, func(a, b Reading) int {
			return cmp.Or(cmp.Compare(away(c, a.Cup), away(c, b.Cup)), cmp.Compare(a.Cup.Spread, b.Cup.Spread))
		})
	}
	return e
}

// away is how many cups of its kind another is from c; those of other kinds come
// after.
func away(c, other Cup) int {
	const otherKind = 1000
	if c.Kind != other.Kind {
		return otherKind
	}
	return max(c.Number-other.Number, other.Number-c.Number)
}

// Able returns what each cup that can measure a liquid of viscosity v would read,
// the one that reads nearest to the middle of its range first.
func Able(v q.Viscosity) []Reading {
	var able []Reading
	for _, c := range cups {
		if t := c.time(v); c.Range.Holds(t) {
			able = append(able, Reading{c, t})
		}
	}
	slices.SortStableFunc(able, func(a, b Reading) int { return cmp.Compare(off(a), off(b)) })
	return able
}

// off is how far r lies from the middle of its cup's range.
func off(r Reading) float64 { return math.Abs(math.Log(float64(r.Time) / r.Cup.centre())) }
