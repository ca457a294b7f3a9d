package web

import (
	"fmt"
	"html/template"

	"coatwright/planner"
	q "coatwright/quantity"
	"coatwright/workout"
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

// cupLevel is a level in a cup, and what is written beside it.
type cupLevel struct {
	mark  float64 // in any unit
	label string
}

// mixLevels are the marks that the pours of a mix must reach.
func mixLevels(m *planner.Mix, s *q.System) []cupLevel {
	if m == nil {
		return nil
	}
	var levels []cupLevel
	for i, pour := range m.Lines {
		levels = append(levels, cupLevel{pour.MarkML, fmt.Sprintf("%d to %s", i+1, m.Poured(s, pour.MarkML))})
	}
	return levels
}

// cardLevels are what is in the cup of a card, and the marks that the pours must
// reach.
func cardLevels(c *workout.Card, s *q.System) []cupLevel {
	var levels []cupLevel
	if c.There > 0 {
		levels = append(levels, cupLevel{float64(c.There), "in it " + q.Show(s, c.There)})
	}
	for i, pour := range c.Pours {
		levels = append(levels, cupLevel{float64(pour.Mark), fmt.Sprintf("%d to %s", i+1, q.Show(s, pour.Mark))})
	}
	return levels
}

// cupSVG draws a cup with its levels. The rim is at holds, in the unit of the
// marks; at 0 it is a little above the last mark. It is empty for a cup of
// nothing.
func cupSVG(levels []cupLevel, holds float64) template.HTML {
	if len(levels) == 0 {
		return ""
	}
	last := levels[len(levels)-1].mark
	if last <= 0 {
		return ""
	}
	rim := last / cupFull
	if holds > 0 {
		rim = max(holds, last)
	}
	d := newDrawing("cup", "Cup with a mark for each pour", cupWidth, cupHeight)
	scale := (cupBottom - cupTop) / rim
	below, label := cupBottom, cupBottom+cupLine-4
	for i, level := range levels {
		y := cupBottom - scale*level.mark
		d.path(fmt.Sprintf("pour pour-%d", i%3), cupSlice(y, below))
		if i%3 == 1 {
			left, right := cupSides(below)
			d.path("pour-hatch", hatch(rectangle{left, y, right - left, below - y}, 6))
		}
		label = min(label-cupLine, y+4)
		_, right := cupSides(y)
		d.path("leader", fmt.Sprintf("M%s %sH%sL%s %s", num(right-22), num(y), num(right), num(cupRight+12), num(label-4)))
		d.text("label", cupRight+16, label, level.label)
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
