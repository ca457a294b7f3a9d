package web

import (
	"cmp"
	"html/template"
	"math"
	"slices"
	"time"

	"coatwright/planner"
)

// Measures of the timeline, in SVG units. It is narrow, so that it is read on
// a phone without sliding it about.
const (
	timeWidth  = 330.0
	axisRight  = 42.0 // hours stand left of it
	hourHeight = 44.0 // the least for an hour
	dayTop     = 34.0 // below the name of the day
	offHeight  = 30.0 // of the strip for the hours off
	trackWidth = 12.0
	laneGap    = 6.0
	timeLine   = 16.0 // least distance between labels
	letter     = 6.6  // width of a letter of a label
)

// timeline is a plan laid out for drawing.
type timeline struct {
	plan              *planner.Plan
	work, dry, window []interval
	dryX, windowX     float64 // left of their lanes; work begins at axisRight
	labelX            float64
}

// timeDay is one day of the timeline. Time runs down from the first full hour
// to the last in which anything is done; the hours off until the next day are
// a strip of fixed height below.
type timeDay struct {
	from, to time.Time
	next     time.Time // when the next day begins; zero for the last
	hour     float64   // height of an hour
	offTop   float64   // where the strip begins
	labels   []timeLabel
}

// timeLabel is the name of a step beside the lanes.
type timeLabel struct {
	at, y float64 // of the step's start, and of the text
	step  int
}

// TimelineSVG draws when each step is done, a drawing for each day: lanes for
// hands-on work, for drying and standing, and for the windows that close.
func TimelineSVG(p *planner.Plan) template.HTML {
	if len(p.Steps) == 0 {
		return ""
	}
	t := newTimeline(p)
	var out template.HTML
	days := t.days()
	for i := range days {
		if i+1 < len(days) {
			days[i].next = days[i+1].from
		}
		t.label(&days[i])
		out += t.draw(days[i])
	}
	return out
}

func newTimeline(p *planner.Plan) *timeline {
	t := &timeline{plan: p, work: workIntervals(p), dry: dryIntervals(p), window: windowIntervals(p)}
	lane := func(x float64, in []interval) float64 {
		return x + trackWidth*float64(max(1, tracks(in))) + laneGap
	}
	t.dryX = lane(axisRight+4, t.work)
	t.windowX = lane(t.dryX, t.dry)
	t.labelX = lane(t.windowX, t.window) + 10
	return t
}

// days are the days on which anything is done.
func (t *timeline) days() []timeDay {
	byStart := slices.Clone(t.work)
	slices.SortStableFunc(byStart, func(a, b interval) int { return a.from.Compare(b.from) })
	var days []timeDay
	for _, v := range byStart {
		if len(days) == 0 || !sameDay(days[len(days)-1].from, v.from) {
			days = append(days, timeDay{from: v.from.Truncate(time.Hour), to: v.from, hour: hourHeight})
		}
		last := &days[len(days)-1]
		if end := v.to.Add(time.Hour - 1).Truncate(time.Hour); end.After(last.to) {
			last.to = end
		}
	}
	return days
}

// y is where an instant stands on the day.
func (d timeDay) y(at time.Time) float64 {
	switch {
	case at.Before(d.from):
		return dayTop
	case !at.After(d.to):
		return dayTop + d.hour*at.Sub(d.from).Hours()
	case d.next.IsZero():
		return d.offTop
	}
	share := at.Sub(d.to).Hours() / d.next.Sub(d.to).Hours()
	return d.offTop + offHeight*math.Min(share, 1)
}

// bottom is the height of the day's drawing.
func (d timeDay) bottom() float64 {
	if d.next.IsZero() {
		return d.offTop + 4
	}
	return d.offTop + offHeight
}

// cut is where the day shows v; not ok where it does not.
func (d timeDay) cut(v interval) (top, bottom float64, ok bool) {
	if !v.to.After(d.from) || !d.next.IsZero() && !v.from.Before(d.next) {
		return 0, 0, false
	}
	return d.y(v.from), d.y(v.to), true
}

// label places the day's labels, pushing each below the one before it, and
// then puts the strip below the last.
func (t *timeline) label(d *timeDay) {
	for _, v := range t.work {
		if !v.from.Before(d.from) && sameDay(v.from, d.from) {
			d.labels = append(d.labels, timeLabel{at: d.y(v.from), step: v.step})
		}
	}
	slices.SortStableFunc(d.labels, func(a, b timeLabel) int { return cmp.Compare(a.at, b.at) })
	y := dayTop - timeLine + 8
	for i := range d.labels {
		y = math.Max(y+timeLine, d.labels[i].at+8)
		d.labels[i].y = y
	}
	d.offTop = math.Max(dayTop+d.hour*d.to.Sub(d.from).Hours(), y) + 6
}
