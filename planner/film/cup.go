package film

import (
	"math"

	q "coatwright/quantity"
)

// Fills returns how many cups of mix a total takes, at least 1 where there is
// any. A cup of no size holds everything.
func Fills(total, cup q.Volume) int {
	if total <= 0 {
		return 0
	}
	if cup <= 0 {
		return 1
	}
	return max(1, int(math.Ceil(float64(total/cup)-sliver)))
}

// Mark says how far apart the lines of a mixing cup stand up to a volume; both
// are above zero.
type Mark struct{ UpTo, Every q.Volume }

// RoundUp returns v as a painter would pour it: up to the next line of a cup
// with those marks, which go from the finest up; the last also serves for what
// is more than it reaches to. Without marks v stays as it is.
func RoundUp(v q.Volume, marks []Mark) q.Volume {
	for i, m := range marks {
		if v <= m.UpTo*(1+sliver) || i == len(marks)-1 {
			return m.Every * q.Volume(math.Ceil(float64(v/m.Every)-sliver))
		}
	}
	return v
}
