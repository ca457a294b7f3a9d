package web

import (
	"fmt"
	"html/template"
	"math"
	"strconv"
	"strings"

	q "coatwright/quantity"
	"coatwright/workout"
)

// Measures of a chart of times, in SVG units. It is narrow, so that it is read on
// a phone without sliding it about.
const (
	chartWidth   = 340.0
	chartLeft    = 40.0 // the warmths stand left of it
	chartTop     = 26.0 // below the name of the axis
	plotWidth    = 272.0
	plotHeight   = 256.0
	neverWidth   = 18.0 // of the strip in which nothing dries
	chartSample  = 2.0  // lines of equal time are followed so finely
	hatchStep    = 4.0  // hatching is followed in such steps, and cut more finely
	chartLetter  = 7.5  // width of a letter
	labelHeight  = 17.0
	chartMargin  = 40.0 // below the plot, for its axis
	pointRadius  = 5.5
	labelPadding = 2.5
)

// hatchGaps are how far apart the lines of the bands' hatching stand: the longer
// it takes, the denser. The shortest band has none.
var hatchGaps = []float64{0, 22, 15, 10.5, 7.5, 5.5, 4}

// timeChart is a chart laid out for drawing.
type timeChart struct {
	*workout.Chart
	units *q.System
	plot  rectangle
	rates [][]float64 // of the way, in 1/s, by row and column; 0 where it never comes
	paths [][]float64 // of each line, its y at every sample of x
}

// chartSVG draws a chart of times: bands between lines of equal time, each hatched
// more densely than the one before, and the place of today's air. It is empty
// for no chart.
func chartSVG(c *workout.Chart, s *q.System) template.HTML {
	if c == nil || len(c.X.Values) < 2 || len(c.Y.Values) < 2 {
		return ""
	}
	t := newTimeChart(c, s)
	d := newDrawing("chart", t.label(), chartWidth, t.plot.bottom()+chartMargin)
	d.rect("plot", t.plot, "")
	for band := range len(t.Lines) + 1 {
		t.drawBand(d, band)
	}
	t.drawNever(d)
	for k := range t.Lines {
		d.path("equal", t.line(k))
	}
	d.path("frame", outlineOf(t.plot))
	t.drawAxes(d)
	t.drawBox(d)
	t.drawTimes(d)
	t.drawPoint(d)
	return d.HTML()
}

func newTimeChart(c *workout.Chart, s *q.System) *timeChart {
	t := &timeChart{Chart: c, units: s, plot: rectangle{chartLeft, chartTop, plotWidth, plotHeight}}
	for _, row := range c.Times {
		rates := make([]float64, len(row))
		for j, time := range row {
			if time != nil && time.SI > 0 {
				rates[j] = 1 / time.SI
			}
		}
		t.rates = append(t.rates, rates)
	}
	for _, line := range c.Lines {
		var path []float64
		for x := t.plot.x; x <= t.plot.x+t.plot.w; x += chartSample {
			path = append(path, t.reached(x, 1/line.SI))
		}
		t.paths = append(t.paths, path)
	}
	return t
}

// label says what the drawing shows, for whoever cannot see it.
func (t *timeChart) label() string {
	text := t.Title
	if t.Point != nil {
		text += ": " + t.pointText()
	}
	return text + ". The same figures stand in the table below."
}

// x and y are where a value stands.
func (t *timeChart) x(v q.Value) float64 { return t.plot.x + t.plot.w*along(t.X.Values, v) }
func (t *timeChart) y(v q.Value) float64 { return t.plot.bottom() - t.plot.h*along(t.Y.Values, v) }

// along is how far a value lies between the first and the last, from 0 to 1.
func along(values []q.Value, v q.Value) float64 {
	low, high := values[0].SI, values[len(values)-1].SI
	return min(1, max(0, (v.SI-low)/(high-low)))
}

// reached is the y at which a rate is reached at x, from the top where it is so
// only beyond. Rates go in a straight line over the humidity, as the pull of dry
// air does, and by even factors over the temperature, as reactions and vapour do.
func (t *timeChart) reached(x, rate float64) float64 {
	rows := len(t.rates)
	below := t.rate(0, x)
	if below >= rate {
		return t.plot.bottom()
	}
	for i := 1; i < rows; i++ {
		above := t.rate(i, x)
		if above >= rate {
			share := 1.0
			if below > 0 && above > below {
				share = math.Log(rate/below) / math.Log(above/below)
			}
			low, high := t.y(t.Y.Values[i-1]), t.y(t.Y.Values[i])
			return low + (high-low)*share
		}
		below = above
	}
	return t.plot.y
}

// rate is the rate in a row at x.
func (t *timeChart) rate(row int, x float64) float64 {
	values := t.X.Values
	for j := 1; j < len(values); j++ {
		if right := t.x(values[j]); x <= right || j == len(values)-1 {
			left := t.x(values[j-1])
			share := min(1, max(0, (x-left)/(right-left)))
			return t.rates[row][j-1]*(1-share) + t.rates[row][j]*share
		}
	}
	return 0
}

// pathAt is the y of a line at x.
func (t *timeChart) pathAt(k int, x float64) float64 {
	path := t.paths[k]
	at := min(max(0, (x-t.plot.x)/chartSample), float64(len(path)-1))
	i := min(int(at), len(path)-2)
	return path[i] + (path[i+1]-path[i])*(at-float64(i))
}

// band is the band that a place lies in, 0 for the shortest times.
func (t *timeChart) band(x, y float64) int {
	for k := range t.paths {
		if y <= t.pathAt(k, x) {
			return k
		}
	}
	return len(t.paths)
}

// line is path data of a line of equal time, without what runs along the edge of
// the plot.
func (t *timeChart) line(k int) string {
	var b strings.Builder
	drawn := false
	path := t.paths[k]
	inside := func(i int) bool {
		return i >= 0 && i < len(path) && path[i] > t.plot.y && path[i] < t.plot.bottom()
	}
	for i := range path {
		if !inside(i) && !inside(i-1) && !inside(i+1) {
			drawn = false
			continue
		}
		command := "L"
		if !drawn {
			command, drawn = "M", true
		}
		fmt.Fprintf(&b, "%s%s %s", command, num(t.plot.x+chartSample*float64(i)), num(path[i]))
	}
	return b.String()
}

// drawBand hatches a band.
func (t *timeChart) drawBand(d *drawing, band int) {
	gap := hatchGaps[min(band, len(hatchGaps)-1)]
	if gap == 0 {
		return
	}
	var b strings.Builder
	p := t.plot
	for c := gap; c < p.w+p.h; c += gap {
		x, y := p.x+min(c, p.w), p.y+max(0, c-p.w)
		length := x - (p.x + max(0, c-p.h))
		for _, piece := range t.pieces(x, y, length, band) {
			fmt.Fprintf(&b, "M%s %sL%s %s", num(x-piece[0]), num(y+piece[0]), num(x-piece[1]), num(y+piece[1]))
		}
	}
	d.path("band-hatch", b.String())
}

// pieces are from where to where a line that falls to the left from a place lies
// in a band, as distances across.
func (t *timeChart) pieces(x, y, length float64, band int) [][2]float64 {
	in := func(at float64) bool { return t.band(x-at, y+at) == band }
	var out [][2]float64
	inside := in(0)
	if inside {
		out = append(out, [2]float64{0, length})
	}
	for from := 0.0; from < length; from += hatchStep {
		to := min(from+hatchStep, length)
		if in(to) == inside {
			continue
		}
		low, high := from, to
		for high-low > 0.1 {
			if middle := (low + high) / 2; in(middle) == inside {
				low = middle
			} else {
				high = middle
			}
		}
		if inside {
			out[len(out)-1][1] = low
		} else {
			out = append(out, [2]float64{high, length})
		}
		inside = !inside
	}
	return out
}

// drawNever draws the strip for air in which nothing dries.
func (t *timeChart) drawNever(d *drawing) {
	if !t.Stops() {
		return
	}
	r := rectangle{t.plot.x + t.plot.w, t.plot.y, neverWidth, t.plot.h}
	d.rect("never", r, "")
	d.path("never-hatch", hatch(r, 6))
	d.path("never-hatch", mirrored(r, 6))
}

// mirrored is path data of lines rising to the left, gap apart, within r.
func mirrored(r rectangle, gap float64) string {
	var b strings.Builder
	for c := gap; c < r.w+r.h; c += gap {
		x1, y1 := r.x+max(0, r.w-c), r.y+max(0, c-r.w)
		x2, y2 := r.x+min(r.w, r.w+r.h-c), r.y+min(c, r.h)
		fmt.Fprintf(&b, "M%s %sL%s %s", num(x1), num(y1), num(x2), num(y2))
	}
	return b.String()
}

func outlineOf(r rectangle) string {
	return fmt.Sprintf("M%s %sh%sv%sh-%sZ", num(r.x), num(r.y), num(r.w), num(r.h), num(r.w))
}

// drawAxes writes the marked values of both measures.
func (t *timeChart) drawAxes(d *drawing) {
	for _, v := range t.X.Values {
		x := t.x(v)
		d.path("notch", fmt.Sprintf("M%s %sv4", num(x), num(t.plot.bottom())))
		d.text("axis middle", x, t.plot.bottom()+19, t.number(v))
	}
	for _, v := range t.Y.Values {
		y := t.y(v)
		d.path("notch", fmt.Sprintf("M%s %sh-4", num(t.plot.x), num(y)))
		d.text("axis end", t.plot.x-8, y+4, t.number(v))
	}
	d.text("axis-name", 2, 14, t.named(t.Y))
	d.text("axis-name middle", t.plot.x+t.plot.w/2, t.plot.bottom()+36, t.named(t.X))
}

// number is a marked value without its unit, to a tenth.
func (t *timeChart) number(v q.Value) string {
	x, _ := t.units.In(v)
	return strconv.FormatFloat(math.Round(x*10)/10, 'f', -1, 64)
}

// named is the name of an axis with its unit.
func (t *timeChart) named(a workout.Axis) string {
	if _, unit := t.units.In(a.Values[len(a.Values)-1]); unit != "" {
		return a.Name + ", " + unit
	}
	return a.Name
}

// drawBox draws where it is meant to be.
func (t *timeChart) drawBox(d *drawing) {
	if t.Box == nil {
		return
	}
	left, right := t.x(t.Box.X.Low), t.x(t.Box.X.High)
	top, bottom := t.y(t.Box.Y.High), t.y(t.Box.Y.Low)
	if left < right && top < bottom {
		d.path("own-range", outlineOf(rectangle{left, top, right - left, bottom - top}))
	}
}
