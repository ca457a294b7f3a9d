package web

import (
	"html/template"
	"math"
	"regexp"
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

// effectSwatch draws the films of an effect over each other, bottom first.
// Colours go with roles; "" or anything else that is no colour is a neutral tone.
func effectSwatch(roles, colours []string) template.HTML {
	d := newSwatch()
	face := rectangle{0, 0, swatchWidth, swatchHeight}
	for i, role := range roles {
		colour := ""
		if i < len(colours) {
			colour = drawable(colours[i])
		}
		switch {
		case role == "candy":
			d.candy(colour)
		case i == 0:
			d.rect("flat", face, colour)
		}
		switch {
		case role == "effect" && i == 0:
			d.flecks(face, "")
		case role == "effect":
			d.rect("wash", face, colour)
			d.flecks(face, colour)
		}
	}
	return d.HTML()
}

// candy lays a transparent colour that deepens from left to right, a coat at a time.
func (d *drawing) candy(colour string) {
	step := swatchWidth / candySteps
	for i := range candySteps {
		x := step * float64(i)
		d.rect("candy", rectangle{x, 0, swatchWidth - x, swatchHeight}, colour)
	}
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
