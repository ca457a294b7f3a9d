package film

import (
	"math"

	q "coatwright/quantity"
)

// sliver is the share of a coat, a step or a cup that the arithmetic may leave
// over.
const sliver = 1e-9

// finite reports whether v is a number that something can have.
func finite[Q q.Quantity](v Q) bool {
	return !math.IsNaN(float64(v)) && !math.IsInf(float64(v), 0)
}

// share reports whether f is above nothing and no more than all.
func share(f q.Fraction) bool { return f > 0 && f <= 1 }
