package amounts

import (
	"math"

	q "coatwright/quantity"
)

// SpreadingRate returns the surface that a volume of paint covers when all of it
// lands: vs is its solids by volume, dft the dry film.
// Source: S = 1000 VS/DFT in m2/L and um (scribd.com/document/343849341); in SI
// the 1000 falls away.
func SpreadingRate(vs q.Fraction, dft q.Length) q.Spread {
	return q.Spread(float64(vs) / float64(dft))
}

// WetFilm returns the wet film that dries to dft, in m: vs is the solids by
// volume of the mix as sprayed.
// Source: WFT = DFT (1 + thinner)/VS (scribd.com/document/104802451), where
// VS/(1 + thinner) is what SolidsOfMix gives.
func WetFilm(dft q.Length, vs q.Fraction) q.Length {
	return dft / q.Length(vs)
}

// Needed returns the mix that area takes, in m3: dft is the dry film of all
// coats together, vs the solids by volume of the mix as sprayed, transfer the
// share of the solids that lands, and loss what stays in the cup and the gun.
// The likely need goes by the middle of transfer, the low one by its high end.
// The need is +Inf where nothing lands or the mix has no solids.
func Needed(area q.Area, dft q.Length, vs q.Fraction, transfer q.Range[q.Fraction], loss q.Volume) (low, likely, high q.Volume) {
	onPart := float64(area) / float64(SpreadingRate(vs, dft))
	with := func(share q.Fraction) q.Volume { return q.Volume(onPart/float64(share)) + loss }
	return with(transfer.High), with(transfer.Middle()), with(transfer.Low)
}

// Batches returns how many cups of mix a total takes, at least 1 where there is
// any. A cup of no size holds everything.
func Batches(total, cup q.Volume) int {
	if total <= 0 {
		return 0
	}
	if cup <= 0 {
		return 1
	}
	return max(1, int(math.Ceil(float64(total/cup)-sliver)))
}

// sliver is the share of a step or a cup that the arithmetic may leave over.
const sliver = 1e-9

// Graduation returns the step in which a volume is read off a mixing cup: 1 mL
// under 50 mL, 5 mL to 250 mL, 10 mL above (common practice, no published source).
func Graduation(v q.Volume) q.Volume {
	switch ml := v.Millilitres(); {
	case ml < 50*(1-sliver):
		return 1e-6
	case ml <= 250*(1+sliver):
		return 5e-6
	default:
		return 10e-6
	}
}

// RoundUp returns v as a painter would pour it: up to the next line of the cup.
func RoundUp(v q.Volume) q.Volume {
	step := Graduation(v)
	return step * q.Volume(math.Ceil(float64(v/step)-sliver))
}
