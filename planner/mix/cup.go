package mix

import (
	"math"

	q "coatwright/quantity"
)

// Graduation says how far apart the lines of a cup stand up to a volume.
type Graduation struct{ UpTo, Every q.Volume }

// Cup is the lines of a mixing cup, from the bottom up. Above the last of them
// the lines go on as they were; a cup without any is read exactly.
type Cup []Graduation

// Step returns how far apart the lines stand where v is read; zero without any.
func (c Cup) Step(v q.Volume) q.Volume { return q.Volume(c.ruler().at(float64(v)).every) }

// Nearest returns the line nearest to v, the upper of two that are as near.
func (c Cup) Nearest(v q.Volume) q.Volume { return q.Volume(c.ruler().nearest(float64(v))) }

// Up returns the first line that is not below v.
func (c Cup) Up(v q.Volume) q.Volume { return q.Volume(c.ruler().up(float64(v))) }

// Down returns the last line that is not above v.
func (c Cup) Down(v q.Volume) q.Volume { return q.Volume(c.ruler().down(float64(v))) }

func (c Cup) ruler() ruler {
	var r ruler
	var last Graduation
	for _, g := range c {
		r = append(r, span{float64(last.UpTo), float64(g.UpTo), float64(g.Every)})
		last = g
	}
	return append(r, span{float64(last.UpTo), math.Inf(1), float64(last.Every)})
}

// Scale is a scale by its step; one of no step is read exactly.
type Scale struct{ Resolution q.Mass }

// Nearest returns what the scale shows for m.
func (s Scale) Nearest(m q.Mass) q.Mass { return q.Mass(s.ruler().nearest(float64(m))) }

func (s Scale) ruler() ruler { return ruler{{0, math.Inf(1), float64(s.Resolution)}} }

// ruler is the lines that a tool is read by, in SI, in spans that meet. A line
// stands at every multiple of a span's step, and where two spans meet.
type ruler []span

// span is the lines from one amount to another. Without a step there are none:
// every amount in it can be read.
type span struct{ from, to, every float64 }

// at is the span in which x is read.
func (r ruler) at(x float64) span {
	last := len(r) - 1
	for _, s := range r[:last] {
		if x <= s.to*(1+sliver) {
			return s
		}
	}
	return r[last]
}

func (r ruler) up(x float64) float64 {
	s := r.at(x)
	if s.every <= 0 {
		return x
	}
	return min(max(s.every*math.Ceil(x/s.every-sliver), s.from), s.to)
}

func (r ruler) down(x float64) float64 {
	s := r.at(x)
	if s.every <= 0 {
		return x
	}
	if x >= s.to*(1-sliver) {
		return s.to
	}
	return max(s.every*math.Floor(x/s.every+sliver), s.from)
}

func (r ruler) nearest(x float64) float64 {
	down, up := r.down(x), r.up(x)
	if x-down < (up-x)*(1-sliver) {
		return down
	}
	return up
}

// half is half a step where x is read, which is how far off a reading may be. An
// empty cup and a scale at zero are exact.
func (r ruler) half(x float64) float64 {
	if x == 0 {
		return 0
	}
	return r.at(x).every / 2
}
