package web

import (
	"fmt"
	"html"
	"math"

	q "coatwright/quantity"
)

// chartLabel is a text in a chart, by its middle.
type chartLabel struct {
	x, y float64
	text string
	band bool // of a band, and not of a line
}

// width and box are how much room a label takes.
func (l chartLabel) width() float64 { return chartLetter * float64(len([]rune(l.text))) }

func (l chartLabel) box() rectangle {
	w := l.width() + 2*labelPadding
	return rectangle{l.x - w/2, l.y - labelHeight/2, w, labelHeight}
}

func overlap(a, b rectangle) bool {
	return a.x < b.x+b.w && b.x < a.x+a.w && a.y < b.bottom() && b.y < a.bottom()
}

// labels are the times of the lines, and of the bands where there is room, along
// the diagonal from dry warm air to damp cold: every line crosses it once.
func (t *timeChart) labels() []chartLabel {
	var lines, all []chartLabel
	at := []float64{0}
	for k, time := range t.Lines {
		share := t.crossing(k)
		at = append(at, share)
		if share > 0 && share < 1 {
			lines = append(lines, t.labelAt(share, t.units.Show(time), false))
		}
	}
	at = append(at, 1)
	for _, l := range lines {
		if free(l, all) {
			all = append(all, l)
		}
	}
	for band := range len(t.Lines) + 1 {
		if at[band+1]-at[band] < 1e-6 {
			continue
		}
		l := t.labelAt((at[band]+at[band+1])/2, t.between(band), true)
		if free(l, all) {
			all = append(all, l)
		}
	}
	return all
}

func free(l chartLabel, others []chartLabel) bool {
	for _, o := range others {
		if overlap(l.box(), o.box()) {
			return false
		}
	}
	return true
}

// crossing is how far along the diagonal a line crosses it, from 0 to 1.
func (t *timeChart) crossing(k int) float64 {
	low, high := 0.0, 1.0
	for range 40 {
		middle := (low + high) / 2
		if x, y := t.diagonal(middle); y <= t.pathAt(k, x) {
			low = middle
		} else {
			high = middle
		}
	}
	return math.Round(low*1e6) / 1e6
}

func (t *timeChart) diagonal(share float64) (x, y float64) {
	return t.plot.x + t.plot.w*share, t.plot.y + t.plot.h*share
}

// labelAt is a label on the diagonal, kept within the plot.
func (t *timeChart) labelAt(share float64, text string, band bool) chartLabel {
	l := chartLabel{text: text, band: band}
	x, y := t.diagonal(share)
	return t.within(l, x, y)
}

// within puts a label at a place, or as near to it as the plot lets its paper lie.
func (t *timeChart) within(l chartLabel, x, y float64) chartLabel {
	const frame = 2
	across, up := l.box().w/2+frame, l.box().h/2+frame
	l.x = min(max(x, t.plot.x+across), t.plot.x+t.plot.w-across)
	l.y = min(max(y, t.plot.y+up), t.plot.bottom()-up)
	return l
}

// between says the times of a band.
func (t *timeChart) between(band int) string {
	switch n := len(t.Lines); {
	case n == 0:
		return ""
	case band == 0:
		return "under " + t.units.Show(t.Lines[0])
	case band == n:
		return "over " + t.units.Show(t.Lines[n-1])
	}
	return q.ShowRange(t.units, q.Range[q.Time]{Low: q.Time(t.Lines[band-1].SI), High: q.Time(t.Lines[band].SI)})
}

func (t *timeChart) drawTimes(d *drawing) {
	point, marked := t.pointLabel()
	for _, l := range t.labels() {
		if l.text == "" || marked && l.band && overlap(l.box(), point.box()) {
			continue
		}
		class := "equal-label"
		if l.band {
			class = "band-label"
		}
		d.label(class, l)
	}
}

// label writes a label on a piece of bare paper.
func (d *drawing) label(class string, l chartLabel) {
	d.rect("bare", l.box(), "")
	d.text(class+" middle", l.x, l.y+4.5, l.text)
}

// drawPoint marks today's air, with lines to both axes.
func (t *timeChart) drawPoint(d *drawing) {
	l, marked := t.pointLabel()
	if !marked {
		return
	}
	x, y := t.x(t.Point.X), t.y(t.Point.Y)
	d.path("guide", fmt.Sprintf("M%s %sH%sM%s %sV%s", num(t.plot.x), num(y), num(x), num(x), num(t.plot.bottom()), num(y)))
	d.printf(`<circle class="point" cx="%s" cy="%s" r="%s"><title>%s</title></circle>`, num(x), num(y), num(pointRadius), html.EscapeString(t.pointText()))
	d.label("point-label", l)
}

// pointText says today's air and its time.
func (t *timeChart) pointText() string {
	return fmt.Sprintf("%s, %s and %s, %s", t.Point.Name, t.units.Show(t.Point.Y), t.units.Show(t.Point.X), t.pointTime())
}

func (t *timeChart) pointTime() string {
	if t.Point.Time == nil {
		return "never"
	}
	return t.units.Show(*t.Point.Time)
}

// pointLabel is the label of today's air: beside it, on the side and at the height
// where it hides no time of a line.
func (t *timeChart) pointLabel() (chartLabel, bool) {
	if t.Point == nil {
		return chartLabel{}, false
	}
	x, y := t.x(t.Point.X), t.y(t.Point.Y)
	l := chartLabel{text: t.Point.Name + ": " + t.pointTime()}
	var lines []chartLabel
	for _, o := range t.labels() {
		if !o.band {
			lines = append(lines, o)
		}
	}
	var first chartLabel
	for i, dy := range []float64{-16, 16, -30, 30} {
		for _, side := range []float64{1, -1} {
			l = t.within(l, x+side*(l.width()/2+pointRadius+4), y+dy)
			if i == 0 && side == 1 {
				first = l
			}
			if free(l, lines) {
				return l, true
			}
		}
	}
	return first, true
}
