package colour

import (
	"fmt"

	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// SurfaceFormula is what the clear's surface does to light on its way out.
var SurfaceFormula = trace.Formula{
	Text:   "R = (1 - k2) Ri / (1 - k2 Ri)",
	Source: "Saunderson, Journal of the Optical Society of America 32 (1942) 727-736, of light that has gone in; from memory",
	Note:   "background/how-candy-makes-its-colour",
}

// How much of the light on its way out the surface of the clear throws back
// down, into the film again.
const (
	// Mirroring is for flakes that lie flat. They send light straight back, and
	// a surface of n = 1.5 returns only 4 % of what meets it squarely (Fresnel),
	// which is left out.
	Mirroring q.Fraction = 0

	// Scattering is for a ground that sends light to all sides, as white does
	// and flakes that lie anyhow. It is 1 - (1 - 0.0918)/n² at n = 1.5, for
	// light that meets a surface from all sides (Judd, Journal of Research of
	// the National Bureau of Standards 29 (1942) 329; from memory).
	Scattering q.Fraction = 0.596
)

// Ground is what candy lies on, as it looks under clear. The 4 % that a gloss
// surface reflects itself is no part of any colour here: nobody looks at the
// lamp in it.
type Ground struct {
	Reflectance Spectrum
	Returned    q.Fraction // Mirroring, Scattering or between
	Off         DeltaE     // how far Reflectance looks from the swatch: 0 for every colour that a surface can have
}

// NewGround is a ground that looks like a swatch and returns so much of the
// light on its way out, from 0 to less than 1.
func NewGround(s Swatch, returned q.Fraction) (Ground, error) {
	if !(returned >= 0 && returned < 1) {
		return Ground{}, fmt.Errorf("a ground whose surface returns %.3g %% of the light; expected 0 or more and less than 100 %%: %.3g %% over flakes that lie flat, %.3g %% over what scatters",
			returned.Percent(), Mirroring.Percent(), Scattering.Percent())
	}
	r, off := s.Reflectance()
	return Ground{r, returned, off}, nil
}

// below is what g reflects seen from within the film: the formula backwards.
func (g Ground) below() Spectrum {
	s, k := g.Reflectance, float64(g.Returned)
	for i, r := range s {
		s[i] = r / (1 - k + k*r)
	}
	return s
}

// above is how a reflectance within the film is seen from outside.
func above(below Spectrum, returned q.Fraction) Spectrum {
	k := float64(returned)
	for i, r := range below {
		below[i] = (1 - k) * r / (1 - k*r)
	}
	return below
}
