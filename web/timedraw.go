package web

import (
	"fmt"
	"html/template"
	"time"
)

// draw draws one day.
func (t *timeline) draw(d timeDay) template.HTML {
	s := newDrawing("timeline", day(d.from)+", steps over the hours", timeWidth, d.bottom())
	s.text("day", 0, 15, day(d.from))
	t.drawHours(s, d)
	for _, v := range t.dry {
		if top, bottom, ok := d.cut(v); ok {
			r := rectangle{t.dryX + trackWidth*float64(v.track), top, trackWidth - 3, bottom - top}
			s.rect("dry", r, "")
			s.path("dry-hatch", hatch(r, 5))
		}
	}
	for _, v := range t.window {
		if top, bottom, ok := d.cut(v); ok {
			s.bracket(t.windowX+trackWidth*float64(v.track), top, bottom, v.open)
		}
	}
	for _, v := range t.work {
		if top, bottom, ok := d.cut(v); ok {
			s.rect("work", rectangle{axisRight + 4 + trackWidth*float64(v.track), top, trackWidth - 2, max(bottom-top-1, 2)}, "")
		}
	}
	for _, l := range d.labels {
		t.drawLabel(s, l)
	}
	return s.HTML()
}

// drawHours draws the axis, and the strip of the hours off.
func (t *timeline) drawHours(s *drawing, d timeDay) {
	for at := d.from; !at.After(d.to); at = at.Add(time.Hour) {
		y := d.y(at)
		s.path("hour", fmt.Sprintf("M%s %sH%s", num(axisRight-4), num(y), num(t.labelX-8)))
		s.text("axis", 2, y+4, clock(at))
	}
	if d.next.IsZero() {
		return
	}
	s.rect("off", rectangle{0, d.offTop, timeWidth, offHeight}, "")
	s.text("off-label", t.labelX, d.offTop+19, shorten(fmt.Sprintf("%s off, until %s", duration(d.next.Sub(d.to).Minutes()), moment(d.next)), t.letters()))
}

// bracket marks a window: open at the left, closed by a heavy tick, or running
// on with an arrow head.
func (d *drawing) bracket(x, top, bottom float64, open bool) {
	d.path("window", fmt.Sprintf("M%s %sh-5V%sh5", num(x+6), num(top), num(bottom)))
	if open {
		d.path("window-end", fmt.Sprintf("M%s %sl4 6l4 -6z", num(x-3), num(bottom-6)))
		return
	}
	d.path("window-end", fmt.Sprintf("M%s %sh9v-3h-9z", num(x-1), num(bottom+1)))
}

// drawLabel writes a line beside the lanes and leads it to its instant.
func (t *timeline) drawLabel(s *drawing, l timeLabel) {
	step := t.plan.Steps[l.step]
	class := "time-label"
	if l.late {
		class = "late-label"
	}
	s.path("leader", fmt.Sprintf("M%s %sL%s %s", num(t.labelX-8), num(l.at), num(t.labelX-2), num(l.y-4)))
	s.link("#"+step.ID, l.text+", "+span(step.Start, step.End))
	s.text(class, t.labelX, l.y, shorten(l.text, t.letters()))
	s.unlink()
}

// letters is how many letters a label has room for.
func (t *timeline) letters() int { return int((timeWidth - t.labelX) / letter) }
