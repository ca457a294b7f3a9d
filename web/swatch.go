package web

import (
	"cmp"
	"errors"
	"html/template"
	"math"
	"regexp"
	"slices"

	"coatwright/planner"
	"coatwright/planner/colour"
	q "coatwright/quantity"
)

// Measures of a swatch, in SVG units.
const (
	swatchWidth  = 140.0
	swatchHeight = 64.0
	candySteps   = 3  // a swatch shows a transparent colour at one, two and three coats
	shineStrips  = 32 // a highlight is drawn in so many strips
)

// hexColour is what a colour must be to be drawn; anything else is left to the
// style sheet.
var hexColour = regexp.MustCompile(`^#[0-9a-fA-F]{6}$`)

func drawable(colour string) string {
	if hexColour.MatchString(colour) {
		return colour
	}
	return ""
}

// CandySwatch is what the swatch of an effect's candy shows: so many coats over a
// ground, "#rrggbb", of which the flakes lie flat or not.
type CandySwatch struct {
	Over  string
	Coats int
	Flat  bool
}

// Neutral tones stand where no colour is known.
const (
	neutralGround = "#77736c"
	neutralCandy  = "#555555"
)

// effectSwatch draws the films of an effect over each other, bottom first.
// Colours go with roles; "" or anything else that is no colour is a neutral tone.
func effectSwatch(roles, colours []string, candy CandySwatch) template.HTML {
	d := newSwatch()
	face := rectangle{0, 0, swatchWidth, swatchHeight}
	below := neutralGround
	for i, role := range roles {
		colour := ""
		if i < len(colours) {
			colour = drawable(colours[i])
		}
		switch {
		case role == "candy":
			d.candy(below, cmp.Or(colour, neutralCandy), candy)
		case slices.Contains(roles[i:], "candy"): // which is drawn as it looks over this
			below = cmp.Or(colour, below)
		case i == 0:
			d.rect("flat", face, colour)
			if role == "effect" {
				d.flecks(face, "")
			}
		case role == "effect":
			d.rect("wash", face, colour)
			d.flecks(face, colour)
		}
	}
	return d.HTML()
}

// candy lays a transparent colour that deepens from left to right, a coat at a
// time, with what glints through it.
func (d *drawing) candy(below, candy string, s CandySwatch) {
	seen := candySeen(below, candy, s)
	step := swatchWidth / candySteps
	for i, tone := range seen {
		r := rectangle{step * float64(i), 0, step + 0.1, swatchHeight}
		d.rect("flat", r, tone)
		if s.Flat {
			d.flecks(r, seen[max(i-1, 0)])
		}
	}
}

// candySeen is what a candy looks like at one, two and three coats of its
// swatch's kind; of its own colour where a swatch tells nothing.
func candySeen(below, candy string, s CandySwatch) [candySteps]string {
	out := [candySteps]string{candy, candy, candy}
	returns := colour.Scattering
	if s.Flat {
		returns = colour.Mirroring
	}
	looks, err := colour.ParseSwatch(candy)
	over, err2 := colour.ParseSwatch(s.Over)
	under, err3 := colour.ParseSwatch(below)
	if errors.Join(err, err2, err3) != nil {
		return out
	}
	coat := planner.CandyFilm{Coats: 1, Build: 1, Mix: planner.CandyMix{Share: 1, Solids: 1}}
	swatch := coat
	swatch.Coats = s.Coats
	_, work, err := planner.Candied{
		Looks: looks, Over: planner.CandyGround{Looks: over, Returns: returns}, Swatch: swatch,
		Ground: planner.CandyGround{Looks: under, Returns: returns}, Coat: coat,
	}.Work()
	if err != nil {
		return out
	}
	for i := range out {
		s, _ := work.Reflectance(q.Number(i + 1)).XYZ().Screen()
		out[i] = s.String()
	}
	return out
}

// finishSwatch draws the highlight of a lamp on a tube: narrow and bright on a
// gloss, broad and faint on a matt face. Gloss is in units at 60 degrees.
func finishSwatch(gloss float64) template.HTML {
	d := newSwatch()
	d.rect("flat", rectangle{0, 0, swatchWidth, swatchHeight}, "")
	share := min(max(gloss/100, 0), 1)
	width := swatchWidth * (0.03 + 0.27*(1-share)) // of the highlight
	bright := 0.3 + 0.7*share
	strip := swatchWidth / shineStrips
	for i := range shineStrips {
		off := (float64(i)+0.5)*strip - 0.36*swatchWidth
		light := bright * math.Exp(-off*off/(2*width*width))
		if light < 0.02 {
			continue
		}
		d.printf(`<rect class="shine" x="%s" y="0" width="%s" height="%s" opacity="%.2f"/>`,
			num(strip*float64(i)), num(strip+0.1), num(swatchHeight), light)
	}
	return d.HTML()
}

// newSwatch starts a drawing that only repeats what its label says.
func newSwatch() *drawing {
	d := &drawing{}
	d.printf(`<svg class="swatch" aria-hidden="true" viewBox="0 0 %s %s" preserveAspectRatio="xMidYMid slice">`, num(swatchWidth), num(swatchHeight))
	return d
}
