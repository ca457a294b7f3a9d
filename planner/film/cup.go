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
