package web

import (
	"math"

	"coatwright/planner/area"
	q "coatwright/quantity"
)

// ringShare is how wide a circle looks that is seen nearly from the side.
const ringShare = 0.26

// lyingTop is where what lies begins, with room above for a letter.
const lyingTop = 40.0

// fitLying is how long and tall something long is drawn.
func fitLying(length, across q.Length) (w, h float64) { return fit(length, across, shapeRoom, 104) }

// lyingHeight is how tall its drawing is.
func lyingHeight(length, across q.Length) float64 {
	_, h := fitLying(length, across)
	return lyingTop + h + 44
}

// tapering draws a tube that lies, with one end towards the reader: its letters
// are those of the diameters.
func (d *drawing) tapering(from, to, length q.Length, closed bool, wall q.Length, letters [2]string) {
	wide := max(from, to)
	w, h := fitLying(length, wide)
	r1, r2 := max(5, h/2*float64(from/wide)), max(5, h/2*float64(to/wide))
	x1, x2, y := shapeMiddle-w/2, shapeMiddle+w/2, lyingTop+h/2
	d.path("face", pathOf("M", x1, y-r1, "L", x2, y-r2, "A", r2*ringShare, r2, "0 0 1 ", x2, y+r2, "L", x1, y+r1, "Z"))
	end := "hollow"
	if closed {
		end = "face"
	}
	d.path(end, ellipse(x1, y, r1*ringShare, r1))
	if wall > 0 && !closed {
		inner := r1 * max(0.4, 1-2*float64(wall/from))
		d.path("edge", ellipse(x1, y, inner*ringShare, inner))
		d.pointed("t", x1-34, y-r1-14, x1, y-(r1+inner)/2)
	}
	d.path("axis", pathOf("M", x1+r1*ringShare, y, "H", x2+r2*ringShare+10))
	d.dimension("l", x1, y+max(r1, r2), x2, y+max(r1, r2), 16)
	d.dimension(letters[0], x1, y-r1, x1, y+r1, r1*ringShare+14)
	d.dimension(letters[1], x2, y+r2, x2, y-r2, r2*ringShare+14)
}

func (d *drawing) cone(s *area.Cone) {
	w, h := fit(s.Diameter, s.Height, 180, 116)
	r, foot := w/2, 96+h/2
	d.path("face", pathOf("M", shapeMiddle-r, foot, "L", shapeMiddle, foot-h, "L", shapeMiddle+r, foot, "A", r, r*ringShare, "0 0 1 ", shapeMiddle-r, foot, "Z"))
	d.path("behind", upperArc(shapeMiddle, foot, r, r*ringShare))
	d.path("behind", pathOf("M", shapeMiddle, foot-h, "V", foot))
	d.dimension("d", shapeMiddle-r, foot, shapeMiddle+r, foot, r*ringShare+14)
	d.dimension("h", shapeMiddle+r, foot, shapeMiddle+r, foot-h, 16)
	if s.Thickness > 0 {
		d.pointed("t", shapeMiddle-r-20, foot-h/2, shapeMiddle-r+4, foot-2)
	}
}

func (d *drawing) ring(s *area.Ring) {
	const x, y, outer = 140.0, 98.0, 66.0
	bar := min(outer-2, max(8, 2*outer*float64(s.Depth/s.Diameter)))
	inner := outer - bar
	if s.Share == 0 || s.Share == 1 {
		d.path("face", ellipse(x, y, outer, outer)+ellipse(x, y, inner, inner))
	} else {
		d.path("behind", ellipse(x, y, outer, outer))
		d.path("face", sector(x, y, outer, inner, float64(s.Share)))
		d.letter("s", x, y)
	}
	d.dimension("D", x-outer, y, x+outer, y, outer+16)
	const across = 34.0 // the bar cut through, larger than it is
	section := rectangle{272 - across/2, 62 - across/2, across, across}
	d.path("behind", pathOf("M", x+outer*.8, y-outer*.6, "L", section.x-12, section.y+across/2))
	d.dimension("d", section.x, section.bottom(), section.x+across, section.bottom(), 20)
	if s.Girth == 0 {
		d.path("side", ellipse(272, 62, across/2, across/2))
		return
	}
	d.rect("side", section, "")
	d.path("girth", ellipse(272, 62, across*.78, across*.78))
	d.pointed("g", 322, 30, 272+across*.6, 62-across*.5)
}

// sector is path data of a share of a ring, from its top to the right.
func sector(x, y, outer, inner, share float64) string {
	sin, cos := math.Sincos(2 * math.Pi * share)
	large := "0 0 "
	if share > 0.5 {
		large = "0 1 "
	}
	return pathOf("M", x, y-outer, "A", outer, outer, large+"1 ", x+outer*sin, y-outer*cos,
		"L", x+inner*sin, y-inner*cos, "A", inner, inner, large+"0 ", x, y-inner, "Z")
}

// acrossPrism is the diameter of the circle around its end.
func acrossPrism(s *area.Prism) q.Length {
	return s.Side / q.Length(math.Sin(math.Pi/float64(s.Sides)))
}

// prism draws a bar that lies, its end towards the reader.
func (d *drawing) prism(s *area.Prism) {
	w, h := fitLying(s.Length, acrossPrism(s))
	x1, x2, y, r := shapeMiddle-w/2, shapeMiddle+w/2, lyingTop+h/2, max(12, h/2)
	n := min(s.Sides, 24)
	corner := func(i int) (dx, dy float64) {
		sin, cos := math.Sincos(2*math.Pi*float64(i)/float64(n) - math.Pi/2 + math.Pi/float64(n))
		return r * cos * 2 * ringShare, r * sin
	}
	var far, near []any
	for i := range n {
		dx, dy := corner(i)
		near = append(near, command(i), x1+dx, y+dy)
		far = append(far, command(i), x2+dx, y+dy)
	}
	d.path("side", pathOf(append(far, "Z")...))
	for i := range n { // those that the reader sees lie over the others
		dx, dy := corner(i)
		ex, ey := corner(i + 1)
		if dx+ex > 0 {
			d.path("face", pathOf("M", x1+dx, y+dy, "L", x2+dx, y+dy, "L", x2+ex, y+ey, "L", x1+ex, y+ey, "Z"))
		}
	}
	d.path("side", pathOf(append(near, "Z")...))
	_, low := corner(n / 2)
	d.dimension("l", x1, y+low, x2, y+low, 18)
	ax, ay := corner(n - 1)
	bx, by := corner(n - 2)
	d.pointed("a", x1+(ax+bx)/2-30, y+(ay+by)/2-16, x1+(ax+bx)/2, y+(ay+by)/2)
}

// command starts a line at its first point.
func command(i int) string {
	if i == 0 {
		return "M"
	}
	return "L"
}

func (d *drawing) sphere() {
	const r = 66.0
	d.path("face", ellipse(shapeMiddle, 96, r, r))
	d.path("behind", upperArc(shapeMiddle, 96, r, r*ringShare))
	d.path("edge", lowerArc(shapeMiddle, 96, r, r*ringShare))
	d.dimension("d", shapeMiddle-r, 96, shapeMiddle+r, 96, r+16)
}

func (d *drawing) dome(s *area.Dome) {
	radius := (s.Diameter*s.Diameter/4 + s.Height*s.Height) / (2 * s.Height)
	wide := s.Diameter
	if s.Height > radius {
		wide = 2 * radius
	}
	w, h := fit(wide, s.Height, shapeRoom, 112)
	rim := w / 2 * float64(s.Diameter/wide)
	ball := (rim*rim + h*h) / (2 * h)
	foot := 96 + h/2
	large := "0 0 1 "
	if h > ball {
		large = "0 1 1 "
	}
	d.path("face", pathOf("M", shapeMiddle-rim, foot, "A", ball, ball, large, shapeMiddle+rim, foot, "A", rim, rim*ringShare/2, "0 0 1 ", shapeMiddle-rim, foot, "Z"))
	d.path("behind", upperArc(shapeMiddle, foot, rim, rim*ringShare/2))
	d.dimension("d", shapeMiddle-rim, foot, shapeMiddle+rim, foot, rim*ringShare/2+16)
	d.dimension("h", shapeMiddle+max(rim, w/2), foot, shapeMiddle+max(rim, w/2), foot-h, 16)
	if s.Thickness > 0 {
		d.pointed("t", shapeMiddle-rim-26, foot-22, shapeMiddle-rim+2, foot-1)
	}
}

func (d *drawing) egg(s *area.Ellipsoid) {
	w, h := fit(s.Length, s.Height, 190, 116)
	depth := min(40, max(5, w/2*float64(s.Width/s.Length)*ringShare))
	y, bottom := 96.0, 96+h/2
	if s.Half {
		y, bottom = 78+h/2, 78+h/2+depth
		d.path("face", pathOf("M", shapeMiddle-w/2, y, "A", w/2, h, "0 0 1 ", shapeMiddle+w/2, y, "A", w/2, depth, "0 0 1 ", shapeMiddle-w/2, y, "Z"))
		d.dimension("h", shapeMiddle+w/2, y, shapeMiddle+w/2, y-h, 16)
	} else {
		d.path("face", ellipse(shapeMiddle, y, w/2, h/2))
		d.path("edge", lowerArc(shapeMiddle, y, w/2, depth))
		d.dimension("h", shapeMiddle+w/2, y+h/2, shapeMiddle+w/2, y-h/2, 16)
	}
	d.path("behind", upperArc(shapeMiddle, y, w/2, depth))
	d.path("dimension", pathOf("M", shapeMiddle-depth*.5, y+depth*.97, "L", shapeMiddle+depth*.5, y-depth*.97))
	d.letter("w", shapeMiddle+depth*.5+14, y-depth-4)
	d.dimension("l", shapeMiddle-w/2, bottom, shapeMiddle+w/2, bottom, 16)
}

// helmet draws the shell from its side.
func (d *drawing) helmet(s *area.Helmet) {
	length, width := s.Length, s.Width
	if s.Circumference > 0 {
		length = s.Circumference / math.Pi
		width = length
	}
	w, h := fit(length, s.Height, 170, 122)
	below := h * float64(s.Below/s.Height)
	a, c := w/2, h-below
	y, foot := 34+c, 34+h // the widest line, and the rim
	rim := a * math.Sqrt(1-below*below/(c*c))
	d.path("face", pathOf("M", shapeMiddle-rim, foot, "A", a, c, "0 1 1 ", shapeMiddle+rim, foot, "A", rim, rim*.12, "0 0 1 ", shapeMiddle-rim, foot, "Z"))
	d.path("behind", upperArc(shapeMiddle, foot, rim, rim*.12))
	depth := min(24, a*float64(width/length)*.2)
	d.path("behind", ellipse(shapeMiddle, y, a, depth))
	if s.Circumference > 0 {
		d.pointed("C", 36, y-30, shapeMiddle-a, y)
	} else {
		d.path("dimension", pathOf("M", shapeMiddle-depth*.6, y+depth*.97, "L", shapeMiddle+depth*.6, y-depth*.97))
		d.letter("w", shapeMiddle+depth*.6+13, y-depth-6)
		d.dimension("l", shapeMiddle-a, y, shapeMiddle+a, y, -(c + 14))
	}
	d.dimension("h", shapeMiddle+a, foot, shapeMiddle+a, foot-h, 18)
	if below > 0 {
		d.dimension("k", shapeMiddle-a, y, shapeMiddle-a, foot, 16)
	}
	if s.Thickness > 0 {
		d.pointed("t", shapeMiddle-rim-20, foot+18, shapeMiddle-rim+2, foot)
	}
}
