package colour

import (
	"math"

	"coatwright/planner/trace"
)

// SmoothestFormula is how a colour becomes a spectrum.
var SmoothestFormula = trace.Formula{
	Text:   "minimise Σ (z(i+1) - z(i))² with T (tanh(z) + 1)/2 = XYZ",
	Source: "Burns, Numerical methods for smoothest reflectance reconstruction, Color Research and Application 45 (2020) 8-21, method 3: least hyperbolic tangent slope squared",
	Note:   "background/a-spectrum-from-a-swatch",
}

// aim is what a spectrum of shares must add up to.
type aim struct {
	weights [3]Spectrum // of each band in each sum; the middle sum is Y
	sums    [3]float64
}

const (
	closeEnough = 1e-10 // of the whole Y, for a sum
	attempts    = 24    // of Newton's method, before a hard colour is given up
)

// smoothest returns the spectrum of shares between 0 and 1 that has the sums
// of a and the least slope, and 1. Where that one cannot be found (it can for
// every colour of a screen) it is the likeliest one, which has the sums too.
//
// Where no spectrum has the sums, it returns one for sums that lie only so far
// (0 to 1) on the way to them from the even spectrum of the same Y: a colour of
// the same lightness, greyer.
func smoothest(a *aim) (s Spectrum, reached float64) {
	a, even := a.normal()
	switch y := a.sums[1]; {
	case a.isEven():
		return flat(min(max(y, 0), 1)), 1
	case y <= 0 || y >= 1: // nothing but black and white is as dark and as light as they are
		return flat(min(max(y, 0), 1)), 0
	}
	start := point{logits: flat(math.Log(even / (1 - even)))}
	if p, ok := newton(start, a); ok {
		return p.shares(), 1
	}
	likely, reached := likeliest(a, even)
	if reached == 1 {
		if p, ok := byDegrees(start, a, even); ok {
			return p.shares(), 1
		}
	}
	return likely.shares(), reached
}

// byDegrees goes from an even spectrum to the sums of a in steps as long as
// Newton's method finds its way.
func byDegrees(p point, a *aim, even float64) (point, bool) {
	reached, step := 0.0, 0.5
	for range attempts {
		next := min(reached+step, 1)
		found, ok := newton(p, a.towards(even, next))
		switch {
		case !ok:
			step /= 2
		case next == 1:
			return found, true
		default:
			p, reached, step = found, next, 2*step
		}
	}
	return p, false
}

// normal is a with a whole Y of 1, and the even share that has its Y, as far as
// a finite logit can say it.
func (a *aim) normal() (out *aim, even float64) {
	ones := flat(1)
	whole := sum(&a.weights[1], &ones)
	out = &aim{}
	for k := range a.weights {
		out.weights[k] = a.weights[k].scaled(1 / whole)
		out.sums[k] = a.sums[k] / whole
	}
	return out, min(max(out.sums[1], 1e-9), 1-1e-9)
}

// isEven reports whether an even spectrum has the sums of a, as greys have.
// White and black have no other, and their logits would not end.
func (a *aim) isEven() bool {
	s := flat(min(max(a.sums[1], 0), 1))
	var missing triple
	for k := range missing {
		missing[k] = sum(&a.weights[k], &s) - a.sums[k]
	}
	return missing.within(closeEnough)
}

// towards is a with sums that lie a part of the way from those of an even
// spectrum.
func (a *aim) towards(even, part float64) *aim {
	out := *a
	evenly := flat(even)
	for k := range out.sums {
		from := sum(&a.weights[k], &evenly)
		out.sums[k] = from + part*(a.sums[k]-from)
	}
	return &out
}
