package gun

import (
	"fmt"
	"math"

	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// EvenFormula is Profile's: u is the distance from the middle of a pass, in half
// widths.
var EvenFormula = trace.Formula{
	Text:   "film of a pass ∝ (1 − u²)^(β − 1)",
	Source: "the beta model of spray patterns, as in Coatings 15 (2025) 581; the formula from memory",
	Note:   "background/one-pass",
}

// Profile is how thick one pass lies across its width, by the exponent β of the
// beta model.
type Profile float64

// The profiles.
const (
	Flat      Profile = 1   // alike from edge to edge: a fan as it should be
	Round     Profile = 1.5 // what an even round cone leaves as it passes
	Parabolic Profile = 2   // thick in the middle
)

// Evenness is how passes side by side add up, as shares of the mean film.
type Evenness struct {
	Thin, Thick q.Fraction // in the furrows and on the ridges
	Deviation   q.Fraction // standard deviation
}

// Evenness returns how even passes lie that overlap by a share of their width,
// before the film flows out; crossed coats are evener.
func (p Profile) Evenness(overlap q.Fraction) (Evenness, error) {
	if !(p >= 1 && p <= 20) {
		return Evenness{}, fmt.Errorf("profile of a pass: found β = %g; expected 1 (flat) to 20 (a spike)", float64(p))
	}
	if !(overlap >= 0 && overlap <= mostOverlap) {
		return Evenness{}, fmt.Errorf("overlap: found %g %%; expected 0 to %g %%", overlap.Percent(), mostOverlap.Percent())
	}
	if p == Flat {
		return flat(float64(overlap)), nil
	}
	return p.sampled(2 * float64(1-overlap)), nil
}

// flat is the evenness of flat passes: where 2.4 layers lie over a spot on the
// mean, 0.4 of the face has three and the rest two.
func flat(overlap float64) Evenness {
	layers := 1 / (1 - overlap)
	if whole := math.Round(layers); math.Abs(layers-whole) < sliver {
		layers = whole
	}
	few, many := math.Floor(layers), math.Ceil(layers)
	share := layers - few
	return Evenness{q.Fraction(few / layers), q.Fraction(many / layers), q.Fraction(math.Sqrt(share*(1-share)) / layers)}
}

// sampled is the evenness of passes that thin out to their edges, a pitch apart
// in half widths. Furrows and ridges may be cusps at an edge, so that the edge is
// looked at besides the points in between.
func (p Profile) sampled(pitch float64) Evenness {
	const points = 512
	edge := q.Fraction(p.sum(math.Mod(1, pitch), pitch))
	e := Evenness{Thin: edge, Thick: edge}
	var squares float64
	for i := range points {
		film := p.sum((float64(i)+0.5)/points*pitch, pitch)
		e.Thin, e.Thick = min(e.Thin, q.Fraction(film)), max(e.Thick, q.Fraction(film))
		squares += (film - 1) * (film - 1) / points
	}
	e.Deviation = q.Fraction(math.Sqrt(squares))
	return e
}

// sum is the film at x of passes a pitch apart, as a share of the mean: that of
// one pass is the integral of (1 - u²)^(β - 1) from -1 to 1, √π Γ(β)/Γ(β + ½),
// over the pitch.
func (p Profile) sum(x, pitch float64) float64 {
	b := float64(p)
	var film float64
	for k := math.Ceil((x - 1) / pitch); k*pitch < x+1; k++ {
		u := x - k*pitch
		film += math.Pow(max(0, 1-u*u), b-1)
	}
	return film * pitch * math.Gamma(b+0.5) / (math.Sqrt(math.Pi) * math.Gamma(b))
}
