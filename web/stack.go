package web

import (
	"fmt"
	"html/template"
	"slices"
	"strings"

	"coatwright/planner"
	q "coatwright/quantity"
)

// Measures of a section drawing, in SVG units.
const (
	stackWidth  = 340.0
	bandRight   = 114.0 // where the films end and their labels begin
	bandStep    = 9.0   // how far each film stands back from the one below, at most
	bandSteps   = 58.0  // how far all of them may stand back
	bandLowest  = 38.0  // least height of a film: two lines of text
	bandHighest = 96.0  // height of the thickest film
	baseHeight  = 40.0  // of the surface
	stackMargin = 6.0
	labelLength = 26   // letters of a label's first line
	figureRun   = 32   // letters of its second line
	designInset = 16.0 // how far a design's film ends before the film below it
	pileStep    = 7.0  // ... and before the design's film below it
)

// StackSVG draws the films of one part in section, each linked to the step
// that lays it. It is empty for a part that gets no film.
func StackSVG(p *planner.Plan, part string, s *q.System) template.HTML {
	films := filmsOn(p, part)
	if len(films) == 0 {
		return ""
	}
	for i, f := range films {
		films[i].Colour = laidColour(p, f)
	}
	bands := layBands(films)
	base := rectangle{stackMargin, bands[0].bottom(), bandRight - stackMargin, baseHeight}
	d := newDrawing("stack", "Films on "+part+" in section, "+describe(films, s), stackWidth, base.bottom()+stackMargin)
	for _, b := range slices.Backward(bands) {
		d.band(b, s)
	}
	d.rect("base", base, "")
	d.path("base-hatch", hatch(base, 9))
	d.text("label", bandRight+10, base.y+18, shorten(surface(p, part), labelLength))
	return d.HTML()
}

// describe lists films from the bottom up, for whoever cannot see the drawing.
func describe(films []planner.Film, s *q.System) string {
	var list []string
	for _, f := range films {
		list = append(list, filmName(f)+" "+q.Show(s, q.Length(f.DryUm*1e-6)))
	}
	return "from the surface up: " + strings.Join(list, ", ")
}

func filmName(f planner.Film) string {
	if f.Design == "" {
		return f.Title
	}
	return f.Title + " for " + f.Design
}

func (d *drawing) band(b band, s *q.System) {
	name, layer := b.Title, ""
	figures := fmt.Sprintf("%s · %s", coats(b.Coats), q.Show(s, q.Length(b.DryUm*1e-6)))
	d.link("#"+b.Step, filmName(b.Film)+", "+figures)
	if b.Design != "" {
		name, layer = designNames(b.Design)
		figures = shorten(layer, figureRun-len([]rune(figures))-3) + " · " + figures
	}
	d.outline("band", b.outline(), drawable(b.Colour))
	for _, r := range append([]rectangle{b.rectangle}, b.beside...) {
		d.marks(b.Film, r)
	}
	d.path("leader", fmt.Sprintf("M%s %sH%s", num(b.x+b.w), num(b.y+13), num(bandRight+7)))
	d.text("label", bandRight+10, b.y+17, shorten(name, labelLength))
	d.text("figures", bandRight+10, b.y+32, figures)
	d.unlink()
}

// marks tell films apart where colour cannot: on grey paper, or in a film that
// has none.
func (d *drawing) marks(f planner.Film, r rectangle) {
	switch {
	case f.Role == "clear":
		d.path("sheen", hatch(r, 16))
	case f.Role == "candy":
		d.path("tint", hatch(r, 6))
	case f.Role == "effect":
		d.flecks(r, "")
	case f.Colour == "":
		d.path("grain", flecks(r, int(r.w*r.h/60), 0))
	}
}

func coats(n int) string {
	if n == 1 {
		return "1 coat"
	}
	return fmt.Sprintf("%d coats", n)
}
