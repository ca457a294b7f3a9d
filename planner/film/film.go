// Package film owns how thick: what a film of paint is when wet and when dry,
// how much paint it takes, in how many coats it can be laid, and when it hides.
//
// What is known of a paint or a gun is passed in. Nothing here rounds, save
// RoundUp, which a caller uses where a volume is shown to somebody who will
// pour it.
package film

import (
	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// SpreadFormula is SpreadingRate's. The source prints it once with 100 and works
// it with 1000; in SI the factor falls away.
var SpreadFormula = trace.Formula{
	Text:   "S = 1000 VS / DFT, in m²/L and µm",
	Source: "scribd.com/document/343849341",
	Note:   "background/film-build",
}

// SpreadingRate returns the surface that a volume of paint covers when all of it
// lands: vs is its solids by volume, dry the dry film. It is +Inf for no film.
func SpreadingRate(vs q.Fraction, dry q.Length) q.Spread {
	return q.Spread(float64(vs) / float64(dry))
}

// PracticalFormula is Practical's.
var PracticalFormula = trace.Formula{
	Text:   "S practical = S × TE = S × (1 − loss)",
	Source: "corrosionpedia.com/definition/2294",
	Note:   "background/how-much-lands",
}

// Practical returns the surface that a volume of paint covers when only a share
// of it lands. The range is that of the share.
func Practical(s q.Spread, transfer q.Range[q.Fraction]) q.Range[q.Spread] {
	return q.Range[q.Spread]{Low: s * q.Spread(transfer.Low), High: s * q.Spread(transfer.High)}
}

// WetFormula is WetFilm's with Thinned in it.
var WetFormula = trace.Formula{
	Text:   "WFT = DFT × (1 + t) / VS",
	Source: "scribd.com/document/104802451",
	Note:   "background/film-build",
}

// WetFilm returns the wet film that dries to dry: vs is the solids by volume of
// the mix as sprayed. It is +Inf for a mix without solids.
func WetFilm(dry q.Length, vs q.Fraction) q.Length {
	return dry / q.Length(vs)
}

// DryFormula is DryFilm's with Thinned in it.
var DryFormula = trace.Formula{
	Text:   "DFT = WFT × VS / (1 + t)",
	Source: "scribd.com/document/104802451",
	Note:   "background/film-build",
}

// DryFilm returns what a wet film dries to: vs is the solids by volume of the
// mix as sprayed.
func DryFilm(wet q.Length, vs q.Fraction) q.Length {
	return wet * q.Length(vs)
}

// Thinned returns the solids by volume of a paint that had vs, once a share of
// its own volume of a thinner without solids is in.
// Source: the (1 + t)/VS of WetFormula, turned over.
func Thinned(vs, share q.Fraction) q.Fraction {
	return vs / (1 + share)
}
