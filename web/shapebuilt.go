package web

import (
	"fmt"
	"math"

	"coatwright/planner/area"
	q "coatwright/quantity"
)

// Where the tubes of a frame are listed to scale, in SVG units.
const (
	frameBars = 196.0
	barStep   = 24.0
	barLeft   = 38.0
	barRoom   = 240.0
	barLeast  = 2.0
)

// Below the outline of a body there is room for its length and its side.
const (
	bodyBelow = 52 + bodySide + 10
	bodySide  = 56.0
)

// bodyTop is where the outline of a body begins, below where its widths lie.
func bodyTop(s *area.Body) float64 {
	top := 20.0
	for _, at := range []q.Length{s.UpperAt, s.WaistAt, s.LowerAt} {
		if at > 0 {
			top += stationStep
		}
	}
	return top
}

// stationStep is how far the lines stand apart that say where the widths lie.
const stationStep = 18.0

// fitBody is how long and wide a body is drawn.
func fitBody(s *area.Body) (w, h float64) {
	return fit(s.Length, max(s.Upper, s.Waist, s.Lower), 230, 136)
}

// frame draws how a frame is measured, and below it the tubes that were entered
// to one scale, by number.
func (d *drawing) frame(s *area.Frame) {
	rear, shell, seat := [2]float64{52, 130}, [2]float64{150, 152}, [2]float64{116, 40}
	head, crown := [2]float64{246, 46}, [2]float64{258, 84}
	for _, t := range []struct {
		from, to [2]float64
		wide     float64
	}{{seat, rear, 5}, {shell, rear, 7}, {shell, seat, 11}, {seat, head, 11}, {crown, shell, 12}, {head, crown, 15}} {
		d.strut(t.from, t.to, t.wide)
	}
	for _, j := range [][2]float64{seat, head, crown, shell, rear} {
		d.path("joint", ellipse(j[0], j[1], 9, 9))
	}
	d.pointed("j", 78, 26, seat[0]-8, seat[1]-3)
	d.dimension("l", seat[0], seat[1], head[0], head[1], -20)
	d.pointed("d", 232, 138, 203, 121)
	d.bars(s.Tubes)
}

// strut draws a tube between two points.
func (d *drawing) strut(from, to [2]float64, wide float64) {
	length := math.Hypot(to[0]-from[0], to[1]-from[1])
	nx, ny := -(to[1]-from[1])/length*wide/2, (to[0]-from[0])/length*wide/2
	d.path("face", pathOf("M", from[0]+nx, from[1]+ny, "L", to[0]+nx, to[1]+ny, "L", to[0]-nx, to[1]-ny, "L", from[0]-nx, from[1]-ny, "Z"))
}

func (d *drawing) bars(tubes []area.Tube) {
	longest := 0.0
	for _, t := range tubes {
		longest = max(longest, float64(t.Length))
	}
	scale := barRoom / longest
	for i, t := range tubes[:min(len(tubes), mostDrawn)] {
		y := frameBars + barStep*(float64(i)+.5)
		to := t.To
		if to == 0 {
			to = t.Diameter
		}
		half := func(diameter float64) float64 { return min(barStep*.42, max(barLeast, scale*diameter)/2) }
		h1, h2, w := half(float64(t.Diameter)), half(float64(to)), max(barLeast, scale*float64(t.Length))
		d.path("face", pathOf("M", barLeft, y-h1, "L", barLeft+w, y-h2, "V", y+h2, "L", barLeft, y+h1, "Z"))
		d.letter(fmt.Sprint(i+1), 20, y)
		if t.Count > 1 {
			d.text("figures", barLeft+w+8, y+5, fmt.Sprintf("× %d", t.Count))
		}
	}
	if more := len(tubes) - mostDrawn; more > 0 {
		d.text("figures", barLeft, frameBars+barStep*(mostDrawn+.5)+5, fmt.Sprintf("and %d more", more))
	}
}

// body draws the outline of an instrument's body by its widths, and its side.
func (d *drawing) body(s *area.Body) {
	x1, x2, x3 := s.Stations()
	w, h := fitBody(s)
	across := h / float64(max(s.Upper, s.Waist, s.Lower))
	along := w / float64(s.Length)
	left, y := shapeMiddle-w/2, bodyTop(s)+h/2
	at := func(station float64) float64 { return left + along*station }
	u, v, l := across*float64(s.Upper)/2, across*float64(s.Waist)/2, across*float64(s.Lower)/2
	p1, p2, p3 := at(float64(x1)), at(float64(x2)), at(float64(x3))
	d.path("face", pathOf("M", left, y, "A", p1-left, u, "0 0 1 ", p1, y-u,
		"C", p1+(p2-p1)/3, y-u, " ", p2-(p2-p1)/3, y-v, " ", p2, y-v, "C", p2+(p3-p2)/3, y-v, " ", p3-(p3-p2)/3, y-l, " ", p3, y-l,
		"A", left+w-p3, l, "0 0 1 ", left+w, y, "A", left+w-p3, l, "0 0 1 ", p3, y+l,
		"C", p3-(p3-p2)/3, y+l, " ", p2+(p3-p2)/3, y+v, " ", p2, y+v, "C", p2-(p2-p1)/3, y+v, " ", p1+(p2-p1)/3, y+u, " ", p1, y+u,
		"A", p1-left, u, "0 0 1 ", left, y, "Z"))
	for _, line := range []struct {
		letter string
		x, r   float64
	}{{"U", p1, u}, {"W", p2, v}, {"L", p3, l}} {
		d.dimension(line.letter, line.x, y+line.r, line.x, y-line.r, 0)
	}
	high := y - max(u, v, l) - 8
	for _, station := range []struct {
		letter   string
		given, x float64
	}{{"x₁", float64(s.UpperAt), p1}, {"x₂", float64(s.WaistAt), p2}, {"x₃", float64(s.LowerAt), p3}} {
		if station.given > 0 {
			d.path("dimension", pathOf("M", left, high+4, "v", -8.0, "M", left, high, "H", station.x, "m", 0.0, -4.0, "v", 8.0))
			d.letter(station.letter, station.x+14, high-2)
			high -= stationStep
		}
	}
	low := y + max(u, v, l)
	d.dimension("l", left, low, left+w, low, 18)
	side := rectangle{left, low + 52, w, min(bodySide, max(8, along*float64(s.Thickness)))}
	d.rect("face", side, "")
	d.dimension("t", left+w, side.bottom(), left+w, side.y, 16)
}
