package web

import (
	"fmt"
	"html/template"

	"coatwright/planner"
	q "coatwright/quantity"
)

// Measures of a pouring cup, in SVG units.
const (
	cupWidth  = 210.0
	cupHeight = 168.0
	cupTop    = 14.0
	cupBottom = 158.0
	cupLeft   = 10.0
	cupRight  = 96.0 // at the rim
	cupTaper  = 8.0  // how much narrower each side is at the bottom
	cupFull   = 0.9  // how much of the cup the last mark stands at
	cupLine   = 16.0 // least distance between two marks' labels
)

// cupSVG draws the cup with the mark that each pour must reach. It is empty
// for a mix of nothing.
func cupSVG(m *planner.Mix, s *q.System) template.HTML {
	if m == nil || len(m.Lines) == 0 {
		return ""
	}
	full := m.Lines[len(m.Lines)-1].MarkML
	if full <= 0 {
		return ""
	}
	d := newDrawing("cup", "Cup with a mark for each pour", cupWidth, cupHeight)
	scale := cupFull * (cupBottom - cupTop) / full
	below, label := cupBottom, cupBottom+cupLine-4
	for i, pour := range m.Lines {
		y := cupBottom - scale*pour.MarkML
		d.path(fmt.Sprintf("pour pour-%d", i%3), cupSlice(y, below))
		if i%3 == 1 {
			left, right := cupSides(below)
			d.path("pour-hatch", hatch(rectangle{left, y, right - left, below - y}, 6))
		}
		label = min(label-cupLine, y+4)
		_, right := cupSides(y)
		d.path("leader", fmt.Sprintf("M%s %sH%sL%s %s", num(right-22), num(y), num(right), num(cupRight+12), num(label-4)))
		d.text("label", cupRight+16, label, fmt.Sprintf("%d to %s", i+1, m.Poured(s, pour.MarkML)))
		below = y
	}
	left, right := cupSides(cupBottom)
	d.path("glass", fmt.Sprintf("M%s %sL%s %sH%sL%s %s", num(cupLeft), num(cupTop), num(left), num(cupBottom), num(right), num(cupRight), num(cupTop)))
	return d.HTML()
}

// cupSides are the left and right walls at height y.
func cupSides(y float64) (left, right float64) {
	in := cupTaper * (y - cupTop) / (cupBottom - cupTop)
	return cupLeft + in, cupRight - in
}

// cupSlice is the outline of what lies between two heights of the cup.
func cupSlice(top, bottom float64) string {
	l1, r1 := cupSides(top)
	l2, r2 := cupSides(bottom)
	return fmt.Sprintf("M%s %sH%sL%s %sH%sZ", num(l1), num(top), num(r1), num(r2), num(bottom), num(l2))
}
