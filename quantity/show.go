package quantity

import (
	"math"
	"strings"
)

// Show writes v to three figures, in the unit that s has for one of its size:
// "15 µm", "0.591 mil". A temperature is written to a tenth of a degree, and a
// time said as a painter would.
func (s *System) Show(v Value) string {
	d := dimensionOf[v.Of]
	if text := beyond(v.SI); text != "" {
		return text
	}
	switch d {
	case nil:
		return figures(v.SI, 3)
	case duration:
		return Time(v.SI).String()
	}
	u := s.unit(d, v.SI)
	return behind(shown(d, u, v.SI), " ", u.name)
}

// Show writes a quantity as s.Show does.
func Show[Q Quantity](s *System, v Q) string { return s.Show(ValueOf(v)) }

// ShowRange writes "5 to 10 %": in the unit of the high end, unless the low one
// would become a small fraction of it.
func ShowRange[Q Quantity](s *System, r Range[Q]) string {
	d := r.Low.dimension()
	low, high := float64(r.Low), float64(r.High)
	if one := Show(s, r.High); Show(s, r.Low) == one {
		return one
	}
	u := s.unit(d, high)
	apart := low != 0 && u != s.unit(d, low) && u.fromSI(low) < 0.1
	if apart || d == duration || beyond(low) != "" || beyond(high) != "" {
		return Show(s, r.Low) + " to " + Show(s, r.High)
	}
	return behind(shown(d, u, low)+" to "+shown(d, u, high), " ", u.name)
}

// shown is the number that stands for si of d in unit u.
func shown(d *dimension, u unit, si float64) string {
	if d == temperature {
		return decimals(u.fromSI(si), 1)
	}
	return figures(u.fromSI(si), 3)
}

// behind puts a unit behind a number, after a gap where it takes one: "3/m²".
func behind(number, gap, unit string) string {
	if unit == "" || strings.HasPrefix(unit, "/") {
		gap = ""
	}
	return number + gap + unit
}

// beyond says in words what is no number that anybody could measure, and is
// empty for what is one.
func beyond(x float64) string {
	switch {
	case math.IsNaN(x):
		return "not known"
	case math.Abs(x) > 1e15: // as a time, thirty million years
		return "without end"
	}
	return ""
}
