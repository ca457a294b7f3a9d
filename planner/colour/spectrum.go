// Package colour owns what a transparent colour (candy) looks like over a
// ground: coat by coat, how near to the colour that is wanted, how evenly it
// must be laid, and what a sag does to it.
//
// A colour that somebody names on a screen says nothing of its spectrum, and
// a film takes light away wavelength by wavelength. So a colour is first turned
// into the smoothest spectrum that looks like it, and all of it is an estimate:
// a sprayed card has the last word. It leaves out that flakes look different
// from each side, that dye fades, that pigment scatters, and that light through
// a film at a slant has further to go.
//
// Colours are those of the CIE 1931 observer (2 degrees) in daylight (D65).
package colour

import q "coatwright/quantity"

// Bands is how many wavelengths a Spectrum has: 380 to 780 nm by 10 nm. That is
// all that the CIE's tables have, at the step at which instruments and tables
// of metals give reflectance. A step of 5 nm would double the work; it moves the
// colour under twelve coats by 0.2 to 0.4 units of CIEDE2000, and by 1.3 under a
// film at the limit of what its swatch allows: less than the guess at a
// spectrum may be off.
const Bands = 41

// Spectrum is a share of light at each band: reflected, or passed. 1 is all.
type Spectrum [Bands]float64

// Wavelength returns where a band lies, in m.
func Wavelength(band int) q.Length { return q.Length(nanometres(band) * 1e-9) }

func nanometres(band int) float64 { return 380 + 10*float64(band) }

func (s Spectrum) scaled(by float64) Spectrum {
	for i := range s {
		s[i] *= by
	}
	return s
}

func (s Spectrum) times(t Spectrum) Spectrum {
	for i := range s {
		s[i] *= t[i]
	}
	return s
}

// flat is a spectrum that is the same at every band.
func flat(share float64) Spectrum {
	var s Spectrum
	for i := range s {
		s[i] = share
	}
	return s
}

// sum is that of a weight of each band by its share.
func sum(weights, shares *Spectrum) float64 {
	var out float64
	for i, w := range weights {
		out += w * shares[i]
	}
	return out
}
