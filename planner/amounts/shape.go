// Package amounts owns how much: the area of a part, the film it takes, the
// mix that lays it, and what to pour to which mark.
//
// Nothing here rounds, save RoundUp, which a caller uses where a volume is
// shown to somebody who will pour it.
package amounts

import (
	"math"

	q "coatwright/quantity"
)

// Shape is a solid that a part is near enough to. Its lengths are in m.
type Shape interface {
	// Area is the surface to be painted, in m2.
	Area() q.Area
	// Form is how a spray fan meets it: "panel", "tube" or "solid".
	Form() string
}

// Plate is a flat part; its edges do not count.
type Plate struct {
	Length, Width q.Length
	BothFaces     bool
}

// Area returns that of one face, or of both.
func (s Plate) Area() q.Area {
	a := q.Area(s.Length * s.Width)
	if s.BothFaces {
		return 2 * a
	}
	return a
}

// Form returns "panel".
func (s Plate) Form() string { return "panel" }

// Cylinder is a tube or a rod, of which none, one or both ends are painted.
type Cylinder struct {
	Diameter, Length q.Length
	Ends             int
}

// Area returns that of the side, 2 pi r h, and of the ends.
func (s Cylinder) Area() q.Area {
	r, h := float64(s.Diameter)/2, float64(s.Length)
	return q.Area(2*math.Pi*r*h + float64(s.Ends)*math.Pi*r*r)
}

// Form returns "tube".
func (s Cylinder) Form() string { return "tube" }

// Frustum is a tube that tapers from one diameter to another, its ends open.
// Length is along the axis.
type Frustum struct{ Diameter1, Diameter2, Length q.Length }

// Area returns that of the side, pi (R + r) sqrt((R - r)^2 + h^2).
func (s Frustum) Area() q.Area {
	R, r, h := float64(s.Diameter1)/2, float64(s.Diameter2)/2, float64(s.Length)
	return q.Area(math.Pi * (R + r) * math.Hypot(R-r, h))
}

// Form returns "tube".
func (s Frustum) Form() string { return "tube" }

// Sphere is a ball.
type Sphere struct{ Diameter q.Length }

// Area returns 4 pi r^2.
func (s Sphere) Area() q.Area {
	return q.Area(math.Pi * float64(s.Diameter*s.Diameter))
}

// Form returns "solid".
func (s Sphere) Form() string { return "solid" }

// Ellipsoid is egg-like; its lengths are whole axes, from side to side.
type Ellipsoid struct{ Length, Width, Height q.Length }

// Area returns it by Thomsen's formula, 4 pi (((ab)^p + (ac)^p + (bc)^p)/3)^(1/p)
// with p = 1.6075, which is at most 1.061 % off (planetcalc.com/149).
func (s Ellipsoid) Area() q.Area {
	const p = 1.6075
	a, b, c := float64(s.Length)/2, float64(s.Width)/2, float64(s.Height)/2
	mean := (math.Pow(a*b, p) + math.Pow(a*c, p) + math.Pow(b*c, p)) / 3
	return q.Area(4 * math.Pi * math.Pow(mean, 1/p))
}

// Form returns "solid".
func (s Ellipsoid) Form() string { return "solid" }

// Box is a block, painted on all six faces.
type Box struct{ Length, Width, Height q.Length }

// Area returns 2 (lw + lh + wh).
func (s Box) Area() q.Area {
	return 2 * q.Area(s.Length*s.Width+s.Length*s.Height+s.Width*s.Height)
}

// Form returns "solid".
func (s Box) Form() string { return "solid" }
