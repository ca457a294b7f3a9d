package viscosity

import (
	"fmt"
	"math"

	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// Two published rules say how thin a mixture of two liquids is. The log rule is
// the simplest, has no constants, and takes a factor that a cup reading can find.
// The blending index was fitted to petroleum, and ASTM D7152 warns of it for
// liquids with particles in them, which paint is. Glycerol in water as measured
// lies between the two (see the tests), so without readings both ends are given.
// No rule knows of resin that a thinner does not dissolve, or of a paint that is a
// gel.
var (
	LogFormula = trace.Formula{
		Text:   "ln ν = (1 − x) ln ν₁ + x ln ν₂",
		Source: "Arrhenius (1887), by volume; one end of an estimate",
		Note:   "background/thinning",
	}
	IndexFormula = trace.Formula{
		Text:   "VBN = 14.534 ln(ln(ν + 0.8)) + 10.975; VBN = (1 − x) VBN₁ + x VBN₂",
		Source: "Refutas equation (Maples, Petroleum Refinery Process Economics, 2000), taken by volume as ASTM D7152 allows; other end of an estimate",
		Note:   "background/thinning",
	}
	PullFormula = trace.Formula{
		Text:   "ln ν = ((1 − x) ln ν₁ + α x ln ν₂)/((1 − x) + α x)",
		Source: "Lederer, Kolloid-Beihefte 34 (1932) 270; Roegiers (1946); α from two readings of a cup",
		Note:   "background/thinning",
	}
)

// Thinning is a paint and what it is thinned with.
type Thinning struct {
	Paint   q.Viscosity `json:"paint"`   // as it comes from the can, m2/s
	Thinner q.Viscosity `json:"thinner"` // m2/s
	Pull    float64     `json:"pull"`    // α, how much more than its volume the thinner counts; 0 where no readings say
	Tested  q.Fraction  `json:"tested"`  // the share that Pull was found with
}

// leastThinner is the viscosity at which the blending index ends, in m2/s: there
// ln(v + 0.8) is zero.
const leastThinner q.Viscosity = 0.2 * mm2

// Estimate is the thinning of a paint by a thinner of which nothing was read yet.
func Estimate(paint, thinner q.Viscosity) (Thinning, error) {
	if !(thinner > leastThinner) || !(paint > thinner) || math.IsInf(float64(paint), 0) {
		return Thinning{}, fmt.Errorf("found a paint of %s and a thinner of %s; expected a thinner over %s and a paint thicker than it",
			squareMillimetres(paint), squareMillimetres(thinner), squareMillimetres(leastThinner))
	}
	return Thinning{Paint: paint, Thinner: thinner}, nil
}

// Calibrated is the thinning of a paint that a cup was run with twice: as it comes
// from the can, and with thinner, share of the paint's own volume. The thinner's
// viscosity need not be known well: half or twice of it moves a share by little.
func Calibrated(paint, thinned Reading, share q.Fraction, thinner q.Viscosity) (Thinning, error) {
	thick, err := paint.Viscosity()
	if err != nil {
		return Thinning{}, fmt.Errorf("the paint from the can: %w", err)
	}
	thin, err := thinned.Viscosity()
	if err != nil {
		return Thinning{}, fmt.Errorf("the thinned paint: %w", err)
	}
	t, err := Estimate(thick, thinner)
	if err != nil {
		return Thinning{}, err
	}
	if !positive(float64(share)) {
		return Thinning{}, fmt.Errorf("found %s of thinner in the thinned paint; expected more than 0 %%, of the paint's own volume", percent(share))
	}
	if !(thin < thick) || !(thin > thinner) {
		return Thinning{}, fmt.Errorf("found %s with %s of thinner after %s without; expected less, and more than the thinner's own %s: stir, let it stand, and read both at one temperature",
			thinned, percent(share), paint, squareMillimetres(thinner))
	}
	t.Pull, t.Tested = t.pull(thin, share), share
	return t, nil
}

// pull is PullFormula solved for α. Here and below a share s of the paint is
// x/(1 − x), which takes the x out of the formulas.
func (t Thinning) pull(mixed q.Viscosity, share q.Fraction) float64 {
	return float64(t.shareByLog(mixed, 1) / share)
}

// Viscosity returns what the paint comes to with a share of thinner of its own
// volume, in m2/s: what the two rules say, or one value where readings were taken.
func (t Thinning) Viscosity(share q.Fraction) q.Range[q.Viscosity] {
	if t.Pull > 0 {
		v := t.byLog(share, t.Pull)
		return q.Range[q.Viscosity]{Low: v, High: v}
	}
	log, index := t.byLog(share, 1), t.byIndex(share)
	return q.Range[q.Viscosity]{Low: min(log, index), High: max(log, index)}
}

// byLog is PullFormula, which is LogFormula where pull is 1.
func (t Thinning) byLog(share q.Fraction, pull float64) q.Viscosity {
	w := pull * float64(share)
	return q.Viscosity(math.Exp((math.Log(float64(t.Paint)) + w*math.Log(float64(t.Thinner))) / (1 + w)))
}

// byIndex is IndexFormula.
func (t Thinning) byIndex(share q.Fraction) q.Viscosity {
	s := float64(share)
	return fromIndex((index(t.Paint) + s*index(t.Thinner)) / (1 + s))
}

// index is the viscosity blending number of v.
func index(v q.Viscosity) float64 { return 14.534*math.Log(math.Log(float64(v)/mm2+0.8)) + 10.975 }

// fromIndex turns index back.
func fromIndex(vbn float64) q.Viscosity {
	return q.Viscosity(mm2 * (math.Exp(math.Exp((vbn-10.975)/14.534)) - 0.8))
}

// Share returns the thinner, as a share of the paint's own volume, that brings the
// paint down to target: by the two rules, or one value where readings were taken.
// It is 0 for a paint that is as thin already.
func (t Thinning) Share(target q.Viscosity) (q.Range[q.Fraction], error) {
	if !(target > t.Thinner) {
		return q.Range[q.Fraction]{}, fmt.Errorf("found %s as the aim; expected more than the thinner's own %s, which no share of it can reach",
			squareMillimetres(target), squareMillimetres(t.Thinner))
	}
	if target >= t.Paint {
		return q.Range[q.Fraction]{}, nil
	}
	if t.Pull > 0 {
		s := t.shareByLog(target, t.Pull)
		return q.Range[q.Fraction]{Low: s, High: s}, nil
	}
	log, index := t.shareByLog(target, 1), t.shareByIndex(target)
	return q.Range[q.Fraction]{Low: min(log, index), High: max(log, index)}, nil
}

// shareByLog is PullFormula solved for the share.
func (t Thinning) shareByLog(target q.Viscosity, pull float64) q.Fraction {
	return q.Fraction(math.Log(float64(t.Paint/target)) / (pull * math.Log(float64(target/t.Thinner))))
}

// shareByIndex is IndexFormula solved for the share.
func (t Thinning) shareByIndex(target q.Viscosity) q.Fraction {
	return q.Fraction((index(t.Paint) - index(target)) / (index(target) - index(t.Thinner)))
}
