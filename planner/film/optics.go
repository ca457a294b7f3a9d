package film

import (
	"math"

	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// ReflectanceFormula is Optics' Over, as it is printed in most places; Over has it
// multiplied out so that it also holds without scattering or absorption.
var ReflectanceFormula = trace.Formula{
	Text:   "R = (1 − Rg (a − b coth bSX)) / (a − Rg + b coth bSX), a = 1 + K/S, b = √(a² − 1)",
	Source: "Kubelka and Munk, Zeitschrift für technische Physik 12 (1931) 593-601; Kubelka, J. Opt. Soc. Am. 38 (1948) 448-457; the hyperbolic form from memory",
	Note:   "background/hiding",
}

// Optics is what a film does to light, by the theory of Kubelka and Munk: how
// much it absorbs and how much it scatters back, each a coefficient (K, S) times
// the film (X), so that both go in proportion to the film.
//
// The theory knows two streams of diffuse light and one colour of it, and no
// gloss: what the surface itself reflects is left in the reflectances. It does
// not hold for flakes that lie flat.
type Optics struct{ Absorption, Scattering q.Number }

// Over returns the reflectance of the film over a ground, both from 0 to 1.
func (o Optics) Over(ground q.Fraction) q.Fraction {
	k, s, g := float64(o.Absorption), float64(o.Scattering), float64(ground)
	// With bSX = √(K (K + 2S)) X and h = tanh(bSX)/bSX, times SX h above and below.
	h := tanhc(math.Sqrt(k * (k + 2*s)))
	return q.Fraction((g + h*(s-(k+s)*g)) / (1 + h*(k+s-s*g)))
}

// tanhc is tanh(x)/x, which is 1 at 0.
func tanhc(x float64) float64 {
	if x == 0 {
		return 1
	}
	return math.Tanh(x) / x
}

// ReflectivityFormula is OpticsOf's.
var ReflectivityFormula = trace.Formula{
	Text:   "K/S = (1 − R∞)² / 2R∞",
	Source: "Kubelka and Munk, Zeitschrift für technische Physik 12 (1931) 593-601",
	Note:   "background/hiding",
}

// OpticsOf returns the optics of a film that scatters so much, of a paint whose
// reflectivity, that of a film so thick that nothing shows through, is above 0
// and up to 1.
func OpticsOf(reflectivity q.Fraction, scattering q.Number) Optics {
	r := q.Number(reflectivity)
	return Optics{scattering * (1 - r) * (1 - r) / (2 * r), scattering}
}
