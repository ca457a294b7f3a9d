package film

import (
	"fmt"
	"math"

	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// Hidden is the contrast ratio from which a film counts as hiding.
// Source: ISO 6504-1 and ASTM D2805, whose hiding power is for 98 %.
const Hidden q.Fraction = 0.98

const (
	// Blackest is the least reflectivity that is reckoned with: no paint is
	// blacker, save by what its surface reflects (from memory).
	Blackest q.Fraction = 0.001

	// mostContrast is the highest contrast ratio that is reckoned with: no
	// instrument tells a higher one from 1, nor could it be turned into a film.
	mostContrast q.Fraction = 0.9999
)

// Chart is the two grounds that a film is laid over to see whether it hides, by
// their reflectance: Black is the darker.
type Chart struct{ Black, White q.Fraction }

// TestChart is the chart that contrast ratios are given for. ASTM D2805 asks for
// at most 1 % of the black and at least 78 % of the white; that it reckons with
// 0 and 80 % is from memory.
var TestChart = Chart{Black: 0, White: 0.80}

// ContrastFormula is Contrast's.
var ContrastFormula = trace.Formula{
	Text:   "C = R over black / R over white",
	Source: "ISO 6504-3; ASTM D2805",
	Note:   "background/hiding",
}

// Hiding is how well a paint hides, from one film that somebody measured.
type Hiding struct {
	Ratio q.Fraction // contrast ratio
	At    q.Length   // of this dry film

	// Reflectivity is the paint's, laid so thick that nothing shows through: the
	// luminance Y of its colour, from Blackest to 1. A paint with the same ratio at the same
	// film needs the more to hide the lighter it is: from 92 % to 98 %, 1.3 times
	// the film at Y = 0.1 and 1.8 times at Y = 0.8.
	Reflectivity q.Fraction

	Over Chart // on which Ratio was measured
}

// Contrast returns the contrast ratio of another dry film of the paint over a
// chart. It never falls as the film grows, since
//
//	d ln(Rb/Rw)/dX = S (Rw - Rb) (1/(Rb Rw) - 1)
//
// is never below 0, and it never exceeds 1.
func (h Hiding) Contrast(dry q.Length, over Chart) (q.Fraction, error) {
	scattering, err := h.scattering()
	if err != nil {
		return 0, err
	}
	if err := over.check(); err != nil {
		return 0, err
	}
	if !finite(dry) || dry < 0 {
		return 0, fmt.Errorf("dry film: found %g um; expected 0 um or more", dry.Micrometres())
	}
	o := OpticsOf(h.Reflectivity, scattering*q.Number(dry/h.At))
	return min(o.Over(over.Black)/o.Over(over.White), 1), nil
}

// HidingFormula is Film's.
var HidingFormula = trace.Formula{
	Text:   "X = X₀ × SX(C) / SX(C₀), SX(C) such that R over black / R over white = C",
	Source: "Kubelka and Munk's solution, turned over for SX; worked independently",
	Note:   "background/hiding",
}

// Film returns the dry film of the paint that reaches a contrast ratio over a
// chart; zero where the bare chart has it already.
func (h Hiding) Film(ratio q.Fraction, over Chart) (q.Length, error) {
	has, err := h.scattering()
	if err != nil {
		return 0, err
	}
	if err := over.check(); err != nil {
		return 0, err
	}
	if !(ratio > 0 && ratio <= mostContrast) {
		return 0, fmt.Errorf("contrast ratio to reach: found %g %%; expected above 0 and up to %g %%", ratio.Percent(), mostContrast.Percent())
	}
	if ratio <= over.Black/over.White {
		return 0, nil
	}
	return h.At * q.Length(over.scattering(ratio, h.Reflectivity)/has), nil
}

// Coats returns how many coats, each with a dry film of build, hide over a chart.
func (h Hiding) Coats(build q.Length, over Chart) (int, error) {
	dry, err := h.Film(Hidden, over)
	if err != nil {
		return 0, err
	}
	return Coats(dry, build)
}

// scattering is SX of the film that was measured.
func (h Hiding) scattering() (q.Number, error) {
	if err := h.Over.check(); err != nil {
		return 0, err
	}
	bare := h.Over.Black / h.Over.White
	switch {
	case !(h.Reflectivity >= Blackest && h.Reflectivity <= 1):
		return 0, fmt.Errorf("reflectivity of the paint: found %g %%; expected %g to 100 %%", h.Reflectivity.Percent(), Blackest.Percent())
	case !finite(h.At) || h.At <= 0:
		return 0, fmt.Errorf("dry film that was measured: found %g um; expected above 0 um", h.At.Micrometres())
	case !(h.Ratio > bare && h.Ratio <= mostContrast):
		return 0, fmt.Errorf("contrast ratio that was measured: found %g %%; expected above %.3g %%, which the bare chart has, and up to %g %%",
			h.Ratio.Percent(), bare.Percent(), mostContrast.Percent())
	}
	return h.Over.scattering(h.Ratio, h.Reflectivity), nil
}

func (c Chart) check() error {
	if c.Black >= 0 && c.Black < c.White && c.White <= 1 {
		return nil
	}
	return fmt.Errorf("chart: found grounds that reflect %g and %g %%; expected the darker first, both from 0 to 100 %%",
		c.Black.Percent(), c.White.Percent())
}

// scattering is the SX that gives a contrast ratio over c, more than the bare
// chart has, to a paint of a reflectivity.
//
// With t = tanh(bSX)/b, R = (Rg + t (1 - a Rg))/(1 + t (a - Rg)), and Rb = C Rw is
// A t² + B t - D = 0. Contrast rises with t, so the root wanted is the smaller
// one above 0, whatever the sign of A; and B is never below 0, so that this form
// of it loses no digits.
func (c Chart) scattering(ratio, reflectivity q.Fraction) q.Number {
	r, black, white, C := float64(reflectivity), float64(c.Black), float64(c.White), float64(ratio)
	a, b := (1/r+r)/2, (1-r)*(1+r)/(2*r)
	A := (1-a*black)*(a-white) - C*(1-a*white)*(a-black)
	B := (1 - black*white) * (1 - C)
	D := C*white - black
	t := 2 * D / (B + math.Sqrt(max(0, B*B+4*A*D)))
	if b == 0 {
		return q.Number(t)
	}
	return q.Number(math.Atanh(b*t) / b)
}
