package web

import (
	"fmt"
	"html/template"
	"slices"
	"strings"

	"coatwright/planner"
)

// Measures of a section drawing, in SVG units.
const (
	stackWidth  = 340.0
	bandRight   = 124.0 // where the films end and their labels begin
	bandStep    = 9.0   // how far each film stands back from the one below, at most
	bandSteps   = 66.0  // how far all of them may stand back
	bandLowest  = 38.0  // least height of a film: two lines of text
	bandHighest = 96.0  // height of the thickest film
	baseHeight  = 40.0  // of the surface
	stackMargin = 6.0
	labelLength = 24 // letters of a label's first line
)

// band is a film in the drawing.
type band struct {
	planner.Film
	rectangle
}

// filmsOn are the films that part gets, bottom first.
func filmsOn(p *planner.Plan, part string) []planner.Film {
	var films []planner.Film
	for _, f := range p.Films {
		if slices.Contains(f.Parts, part) {
			films = append(films, f)
		}
	}
	return films
}

// layBands places films from the top down. Heights are in proportion to the
// dry films, save that none is too low for its label. Each film stands back
// from the one below, as a panel rubbed through at its edge shows them.
func layBands(films []planner.Film) []band {
	thickest := 0.0
	for _, f := range films {
		thickest = max(thickest, f.DryUm)
	}
	bands := make([]band, len(films))
	step := min(bandStep, bandSteps/float64(len(films)))
	y := stackMargin
	for i, f := range slices.Backward(films) {
		h := bandLowest
		if thickest > 0 {
			h = max(h, bandHighest*f.DryUm/thickest)
		}
		left := stackMargin + step*float64(i+1)
		bands[i] = band{f, rectangle{left, y, bandRight - left, h}}
		y += h
	}
	return bands
}

// StackSVG draws the films of one part in section, each linked to the step
// that lays it. It is empty for a part that gets no film.
func StackSVG(p *planner.Plan, part string) template.HTML {
	films := filmsOn(p, part)
	if len(films) == 0 {
		return ""
	}
	bands := layBands(films)
	base := rectangle{stackMargin, bands[0].bottom(), bandRight - stackMargin, baseHeight}
	d := newDrawing("stack", "Films on "+part+" in section, "+describe(films), stackWidth, base.bottom()+stackMargin)
	for _, b := range slices.Backward(bands) {
		d.band(b)
	}
	d.rect("base", base, "")
	d.path("base-hatch", hatch(base, 9))
	d.text("label", bandRight+10, base.y+18, shorten(surface(p, part), labelLength))
	return d.HTML()
}

// describe lists films from the bottom up, for whoever cannot see the drawing.
func describe(films []planner.Film) string {
	var list []string
	for _, f := range films {
		list = append(list, f.Title+" "+amount(f.DryUm)+" µm")
	}
	return "from the surface up: " + strings.Join(list, ", ")
}

func (d *drawing) band(b band) {
	figures := fmt.Sprintf("%s · %s µm", coats(b.Coats), amount(b.DryUm))
	d.link("#"+b.Step, b.Title+", "+figures)
	d.rect("band", b.rectangle, drawable(b.Colour))
	d.marks(b)
	d.path("leader", fmt.Sprintf("M%s %sH%s", num(bandRight), num(b.y+13), num(bandRight+7)))
	d.text("label", bandRight+10, b.y+17, shorten(b.Title, labelLength))
	d.text("figures", bandRight+10, b.y+32, figures)
	d.unlink()
}

// marks tell films apart where colour cannot: on grey paper, or in a film that
// has none.
func (d *drawing) marks(b band) {
	switch {
	case b.Role == "clear":
		d.path("sheen", hatch(b.rectangle, 16))
	case b.Role == "candy":
		d.path("tint", hatch(b.rectangle, 6))
	case b.Role == "effect":
		d.flecks(b.rectangle, "")
	case b.Colour == "":
		d.path("grain", flecks(b.rectangle, int(b.w*b.h/60), 0))
	}
}

func coats(n int) string {
	if n == 1 {
		return "1 coat"
	}
	return fmt.Sprintf("%d coats", n)
}

// coatedParts are the parts that get a film, as the films name them.
func coatedParts(p *planner.Plan) []string {
	var parts []string
	for _, f := range p.Films {
		for _, part := range f.Parts {
			if !slices.Contains(parts, part) {
				parts = append(parts, part)
			}
		}
	}
	return parts
}

// surface names what the part is made of. Several alike are named with their
// number: "fork blade (2)".
func surface(p *planner.Plan, part string) string {
	if p.Job != nil {
		for _, q := range p.Job.Parts {
			if part == q.Name || part == fmt.Sprintf("%s (%d)", q.Name, q.Count) {
				return words(q.Substrate)
			}
		}
	}
	return part
}

// stackKey is the same for parts whose drawings are the same but for the name.
func stackKey(p *planner.Plan, part string) string {
	key := surface(p, part)
	for _, f := range filmsOn(p, part) {
		key += "\n" + f.Step
	}
	return key
}
