package web

import (
	"fmt"
	"html"
	"html/template"
	"math"
	"strconv"
	"strings"
)

// drawing writes SVG. Colours and line widths are the style sheet's, by class;
// only what the job decides (a film's colour) is written as an attribute.
type drawing struct{ b strings.Builder }

// newDrawing starts a drawing of width x height units with an accessible name.
// The height may be given to finish instead, when it is not known yet.
func newDrawing(class, label string, width, height float64) *drawing {
	d := &drawing{}
	d.printf(`<svg class="%s" role="group" aria-label="%s" viewBox="0 0 %s %s">`,
		class, html.EscapeString(label), num(width), num(height))
	return d
}

func (d *drawing) printf(format string, args ...any) { fmt.Fprintf(&d.b, format, args...) }

func (d *drawing) rect(class string, r rectangle, fill string) {
	d.printf(`<rect class="%s" x="%s" y="%s" width="%s" height="%s"`, class, num(r.x), num(r.y), num(r.w), num(r.h))
	if fill != "" {
		d.printf(` fill="%s"`, html.EscapeString(fill))
	}
	d.printf(`/>`)
}

// outline is a path that is filled.
func (d *drawing) outline(class, data, fill string) {
	d.printf(`<path class="%s" d="%s"`, class, data)
	if fill != "" {
		d.printf(` fill="%s"`, html.EscapeString(fill))
	}
	d.printf(`/>`)
}

func (d *drawing) path(class, data string) {
	if data != "" {
		d.printf(`<path class="%s" d="%s"/>`, class, data)
	}
}

func (d *drawing) text(class string, x, y float64, s string) {
	d.printf(`<text class="%s" x="%s" y="%s">%s</text>`, class, num(x), num(y), html.EscapeString(s))
}

// link opens a link around what is drawn until unlink.
func (d *drawing) link(href, label string) {
	d.printf(`<a href="%s"><title>%s</title>`, html.EscapeString(href), html.EscapeString(label))
}

func (d *drawing) unlink() { d.printf(`</a>`) }

// HTML ends the drawing. Everything variable in it was escaped as it was written.
func (d *drawing) HTML() template.HTML {
	d.printf(`</svg>`)
	return template.HTML(d.b.String())
}

// rectangle is an upright rectangle with y down, as SVG has it.
type rectangle struct{ x, y, w, h float64 }

func (r rectangle) bottom() float64 { return r.y + r.h }

// num writes a coordinate to a tenth of a unit: finer cannot be seen.
func num(x float64) string {
	return strconv.FormatFloat(math.Round(x*10)/10, 'f', -1, 64)
}

// hatch is path data of lines falling to the left at 45 degrees, gap apart,
// clipped to r.
func hatch(r rectangle, gap float64) string {
	var b strings.Builder
	for c := gap; c < r.w+r.h; c += gap {
		x1, y1 := r.x+min(c, r.w), r.y+max(0, c-r.w)
		x2, y2 := r.x+max(0, c-r.h), r.y+min(c, r.h)
		fmt.Fprintf(&b, "M%s %sL%s %s", num(x1), num(y1), num(x2), num(y2))
	}
	return b.String()
}

// flecks scatters light and dark flakes over r; light ones of a colour where
// one is given.
func (d *drawing) flecks(r rectangle, colour string) {
	d.path("fleck-dark", flecks(r, int(r.w*r.h/70), 2.4))
	d.printf(`<path class="fleck" d="%s"`, flecks(rectangle{r.x + 2, r.y + 1, r.w - 4, r.h - 2}, int(r.w*r.h/50), 2))
	if colour != "" {
		d.printf(` stroke="%s"`, html.EscapeString(colour))
	}
	d.printf(`/>`)
}

// flecks is path data of strokes of a length (dots, for 0) scattered over r,
// always the same: the golden ratio spreads them without a pattern that the
// eye finds.
func flecks(r rectangle, count int, length float64) string {
	const golden = 0.618033988749895
	var b strings.Builder
	for i := range count {
		u := math.Mod(float64(i+1)*golden, 1)
		v := (float64(i) + 0.5) / float64(count)
		x, y := r.x+3+v*(r.w-9), r.y+2.5+u*(r.h-5)
		fmt.Fprintf(&b, "M%s %sl%s %s", num(x), num(y), num(length), num(length*float64(i%3-1)/3))
	}
	return b.String()
}

// shorten cuts s to at most n letters, and says so with an ellipsis.
func shorten(s string, n int) string {
	r := []rune(s)
	if len(r) <= n {
		return s
	}
	return strings.TrimRight(string(r[:n-1]), " ") + "…"
}
