package colour

import (
	"fmt"
	"math"

	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// FilmFormula is what a transparent film takes from the light.
var FilmFormula = trace.Formula{
	Text:   "R(λ) = Rg(λ) T(λ)^(2 d)",
	Source: "Beer-Lambert law, the film passed down and up again; Billmeyer, Beasley & Sheldon, Journal of the Optical Society of America 50 (1960) 70-72, found it to hold for dyes in a resin within about 1 unit",
	Note:   "background/how-candy-makes-its-colour",
}

// CandyFormula is what a swatch tells of a candy.
var CandyFormula = trace.Formula{
	Text:   "T(λ)² = Rs(λ) / Rg(λ), 0.001 to 1; without readings the smoothest with which the film looks like the swatch",
	Source: "Beer-Lambert law; Burns, Color Research and Application 45 (2020) 8-21",
	Note:   "background/a-spectrum-from-a-swatch",
}

// Candy is a transparent colour, known by how it looks over some ground.
type Candy struct {
	Film   Film     // of the swatch
	Passed Spectrum // the share of light that comes down and up again through that film: T²
	Off    DeltaE   // how far such a film over the swatch's ground looks from the swatch
	Limit  Limit    // why it does
}

// Limit is why a film cannot look as its swatch does.
type Limit string

// The limits.
const (
	InReach  Limit = ""          // it can
	TooLight Limit = "too-light" // the swatch is lighter or purer than what its ground sends back
	TooDark  Limit = "too-dark"  // the swatch is so dark that nothing can be told from it
)

// leastPassed is the least share of light that a swatch's film is taken to
// pass: below about 0.1 % a surface is black to an eye and to a screen, and
// does not tell how strong its colour is.
const leastPassed = 0.001

// darkestGround is the least Y, of 100, of a ground that a swatch may lie over.
const darkestGround = 1.0

// unseen is a difference that no eye sees and no instrument repeats.
const unseen DeltaE = 0.05

// NewCandy finds what a candy takes from the light by a swatch of it over a
// ground, and by how much film the swatch has. Where only the colour of the
// swatch is known it is the smoothest film that looks so; where the reflectance
// was read it is the ratio of both.
func NewCandy(swatch Swatch, over Ground, film Film) (Candy, error) {
	if d := float64(film.colour()); !(d > 0) || math.IsInf(d, 1) {
		return Candy{}, fmt.Errorf("the swatch of the candy: found %g coats of %g µm at a strength of %g; expected each above 0",
			float64(film.Coats), film.Build.Micrometres(), float64(film.Strength))
	}
	if y := over.Reflectance.XYZ().Y; y < darkestGround {
		return Candy{}, fmt.Errorf("the swatch of the candy: found a ground that reflects %.2g %%; expected %g %% or more, as every candy over black is black",
			y, darkestGround)
	}
	seen, limit := passedBy(swatch, over)
	c := Candy{Film: film, Limit: limit}
	if limit != InReach {
		c.Off = Difference(seen.times(over.Reflectance).XYZ().Lab(), swatch.Colour.Lab())
	}
	if limit == TooLight && c.Off < unseen {
		c.Limit = InReach
	}
	bare, covered := over.below(), Ground{seen.times(over.Reflectance), over.Returned, 0}.below()
	for i := range c.Passed {
		c.Passed[i] = 1
		if bare[i] > 0 {
			c.Passed[i] = covered[i] / bare[i]
		}
	}
	return c, nil
}

// passedBy is what a film lets through of what its ground sends back, seen from
// outside.
func passedBy(swatch Swatch, over Ground) (Spectrum, Limit) {
	if swatch.Measured != nil {
		return ratio(*swatch.Measured, over.Reflectance)
	}
	smooth, reached := smoothestPassed(swatch.Colour, over.Reflectance)
	if reached == 1 {
		return smooth, InReach
	}
	// No film looks so. The smooth one gave up colour to keep its lightness. To
	// divide spectra, and to take 1 where there would have to be more, keeps
	// the colour and gives up lightness. The nearer one is taken.
	reflectance, _ := swatch.Reflectance()
	divided, limit := ratio(reflectance, over.Reflectance)
	off := func(s Spectrum) DeltaE {
		return Difference(s.times(over.Reflectance).XYZ().Lab(), swatch.Colour.Lab())
	}
	if off(divided) < off(smooth) {
		return divided, limit
	}
	return smooth, limit
}

// smoothestPassed is the smoothest film, passing leastPassed to 1, that makes a
// ground look like c, and how far it got towards c.
func smoothestPassed(c XYZ, ground Spectrum) (s Spectrum, reached float64) {
	a := aim{observer().weights, c.sums()}
	black := ground.scaled(leastPassed).XYZ().sums()
	for k := range a.weights {
		a.weights[k] = a.weights[k].times(ground)
		a.sums[k] = (a.sums[k] - black[k]) / (1 - leastPassed)
	}
	s, reached = smoothest(&a)
	for i, share := range s {
		s[i] = leastPassed + (1-leastPassed)*share
	}
	return s, reached
}

// ratio is a reflectance beside that of its ground, and whether it had to be
// cut to leastPassed and 1.
func ratio(reflectance, ground Spectrum) (s Spectrum, limit Limit) {
	for i := range s {
		r := 1.0
		if ground[i] > 0 {
			r = reflectance[i] / ground[i]
		}
		s[i] = min(max(r, leastPassed), 1)
		switch {
		case r > 1:
			limit = TooLight
		case r < leastPassed && limit == InReach:
			limit = TooDark
		}
	}
	return s, limit
}

// Remark says in a sentence what the swatch could not tell, "" where it told
// all.
func (c Candy) Remark() string {
	switch c.Limit {
	case TooLight:
		return fmt.Sprintf("No film over its ground looks like the swatch, which is lighter or purer than what the ground sends back; the candy is taken as %.1f units of CIEDE2000 from it.", float64(c.Off))
	case TooDark:
		return fmt.Sprintf("The swatch is too dark to tell how strong the candy is; it is taken to let through no less than %g %% of the light.", q.Fraction(leastPassed).Percent())
	}
	return ""
}
