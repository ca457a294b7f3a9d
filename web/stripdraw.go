package web

import (
	"fmt"
	"html/template"
	"math"
	"strings"

	"coatwright/planner"
	"coatwright/planner/colour"
)

// Measures of the swatch of a coat, in SVG units. It is stretched to its place.
const (
	patchSide  = 100.0
	wantedFrom = 70.0 // where the wanted colour is held against it
	sagHead    = 64.0 // where a sag has run to
	sagWide    = 4.5  // half the width of a sag, at its head, for each time it is as thick
)

// ShownStrip is a strip with where its figures are explained.
type ShownStrip struct {
	*planner.Strip
	Drawn  int    // coats
	Called string // what the agreed coats are called here
	howAt  func(key string) string
}

// HowAt is where a figure of the strip is explained, "" for nowhere.
func (s ShownStrip) HowAt(key string) string { return s.howAt(key) }

// ShownCoat is a coat of a strip with its swatch.
type ShownCoat struct {
	planner.StripCoat
	Agreed, Nearest bool
	Patch           template.HTML
}

// Shown are the coats that are drawn.
func (s ShownStrip) Shown() []ShownCoat {
	var out []ShownCoat
	for _, c := range s.Coats[:min(s.Drawn+1, len(s.Coats))] {
		shown := ShownCoat{StripCoat: c, Agreed: c.Coats == s.Agreed, Nearest: s.Nearest != nil && c.Coats == s.Nearest.Coats}
		shown.Patch = patchSVG(c.Seen, s.Wanted, s.sagsIn(c))
		out = append(out, shown)
	}
	return out
}

// Which says what a count of coats is: the agreed one, the nearest to the colour
// wanted, both; "" for neither.
func (s ShownStrip) Which(c ShownCoat) string {
	var is []string
	if c.Agreed {
		is = append(is, s.Called)
	}
	if c.Nearest {
		is = append(is, "nearest")
	}
	return strings.Join(is, ", ")
}

// sagsIn are the sags that are drawn in a coat: those of the agreed coats.
func (s ShownStrip) sagsIn(c planner.StripCoat) []planner.StripSag {
	if c.Coats != s.Agreed {
		return nil
	}
	return s.Sags
}

// Beyond reports whether a screen shows any of the coats paler than it is.
func (s ShownStrip) Beyond() bool {
	for _, c := range s.Shown() {
		if !c.OnScreen {
			return true
		}
	}
	return false
}

// SagTimes names how many times as thick the sags are.
func (s ShownStrip) SagTimes() string {
	var times []string
	for _, sag := range s.Sags {
		times = append(times, fmt.Sprintf("%g", sag.Times))
	}
	return strings.Join(times, " and ")
}

// CoatsOf says a number of coats.
func (ShownStrip) CoatsOf(n int) string { return coats(n) }

// Uneven is the larger change where the film is uneven.
func (s ShownStrip) Uneven() float64 { return max(s.Even.Thin, s.Even.Thick) }

// OfSwatch is the colour of one coat beside that of the candy's swatch, in
// percent.
func (s ShownStrip) OfSwatch() float64 { return 100 * s.Depth }

// OtherStrength reports whether the mix is plainly stronger or weaker than that
// of the swatch.
func (s ShownStrip) OtherStrength() bool { return math.Abs(s.Strength-1) >= 0.005 }

// patchSVG draws a coat: its colour, sags in it, and the wanted colour held
// against its lower edge. Once more it is drawn in grey, for paper without
// colour.
func patchSVG(c planner.Seen, wanted string, sags []planner.StripSag) template.HTML {
	d := &drawing{}
	d.printf(`<svg class="patch" aria-hidden="true" viewBox="0 0 %s %s" preserveAspectRatio="none">`, num(patchSide), num(patchSide))
	for _, tone := range []struct {
		class string
		of    func(hex string, lightness float64) string
	}{{"in-colour", func(hex string, _ float64) string { return drawable(hex) }}, {"in-grey", func(_ string, l float64) string { return greyOf(l) }}} {
		d.printf(`<g class="%s">`, tone.class)
		d.rect("coat", rectangle{0, 0, patchSide, patchSide}, tone.of(c.Hex, c.L))
		for i, s := range sags {
			x := patchSide * float64(i+1) / float64(len(sags)+1)
			d.outline("run", run(x, sagWide*s.Times), tone.of(s.Hex, s.L))
		}
		if wanted != "" {
			d.rect("held", rectangle{0, wantedFrom, patchSide, patchSide - wantedFrom}, tone.of(wanted, lightnessOf(wanted)))
		}
		d.printf(`</g>`)
	}
	return d.HTML()
}

// run is path data of a sag: a line from above that ends in a drop.
func run(x, half float64) string {
	neck, top := half/2, sagHead-2*half
	return fmt.Sprintf("M%s 0V%sC%s %s %s %s %s %sS%s %s %s %sV0Z", num(x-neck), num(top),
		num(x-half), num(top+half), num(x-half), num(sagHead), num(x), num(sagHead),
		num(x+half), num(top+half), num(x+neck), num(top))
}

// greyOf is a grey as light as a colour of lightness L*.
func greyOf(l float64) string {
	s, _ := (colour.Lab{L: l}).XYZ().Screen()
	return s.String()
}

// lightnessOf is L* of "#rrggbb", 0 for what is none.
func lightnessOf(hex string) float64 {
	s, err := colour.ParseScreen(hex)
	if err != nil {
		return 0
	}
	return s.XYZ().Lab().L
}
