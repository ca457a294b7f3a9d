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
			s.bracket(t.windowX+trackWidth*float64(v.track), top, bottom)
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
	s.text("off-label", t.labelX, d.offTop+19, duration(d.next.Sub(d.to).Minutes())+" off")
}

// bracket marks a window, with a heavy tick where it closes.
func (d *drawing) bracket(x, top, bottom float64) {
	d.path("window", fmt.Sprintf("M%s %sh-5V%sh5", num(x+6), num(top), num(bottom)))
	d.path("window-end", fmt.Sprintf("M%s %sh9v-3h-9z", num(x-1), num(bottom+1)))
}

// drawLabel writes a step's name beside the lanes, leads it to its start, and
// says by when it must start where a window closes on that day.
func (t *timeline) drawLabel(s *drawing, l timeLabel) {
	step := t.plan.Steps[l.step]
	name, by := fmt.Sprintf("%d %s", l.step+1, step.Title), t.closes(l.step)
	s.path("leader", fmt.Sprintf("M%s %sL%s %s", num(t.labelX-8), num(l.at), num(t.labelX-2), num(l.y-4)))
	of := ""
	if step.Design != "" {
		of = ", " + step.Design
	}
	s.link("#"+step.ID, name+of+", "+span(step.Start, step.End))
	s.text("time-label", t.labelX, l.y, shorten(name, t.letters()-len(by)-1))
	if by != "" {
		s.text("late-label", timeWidth, l.y, by)
	}
	s.unlink()
}

// closes says by when a step must start; "" where nothing presses.
func (t *timeline) closes(step int) string {
	for _, v := range t.window {
		if v.step == step {
			return "by " + clock(v.to)
		}
	}
	return ""
}

// letters is how many letters a label has room for.
func (t *timeline) letters() int { return int((timeWidth - t.labelX) / letter) }
