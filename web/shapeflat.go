package web

import (
	"coatwright/planner/area"
	q "coatwright/quantity"
)

// back is how far the back of something flat stands behind its front, to the
// right and up.
const (
	backRight = 11.0
	backUp    = 8.0
)

func (d *drawing) plate(s *area.Plate) {
	w, h := fit(s.Length, s.Width, shapeRoom, shapeTall)
	r := rectangle{shapeMiddle - w/2, 104 - h/2, w, h}
	if s.Thickness > 0 {
		d.path("side", pathOf("M", r.x, r.y, "l", backRight, -backUp, "h", w, "v", h, "L", r.x+w, r.bottom(), "V", r.y, "Z"))
		d.path("edge", pathOf("M", r.x+w, r.y, "l", backRight, -backUp))
		d.pointed("t", r.x+w+38, r.y-22, r.x+w+backRight/2, r.y-backUp/2)
	}
	d.rect("face", r, "")
	d.dimension("l", r.x, r.bottom(), r.x+w, r.bottom(), 16)
	d.dimension("w", r.x, r.y, r.x, r.bottom(), 16)
}

func (d *drawing) disc(s *area.Disc) {
	const r = 62.0
	if s.Thickness > 0 {
		d.path("side", ellipse(shapeMiddle+backRight, 96-backUp, r, r))
		d.pointed("t", shapeMiddle+r+34, 40, shapeMiddle+r*.71+backRight/2, 96-r*.71-backUp/2)
	}
	d.path("face", ellipse(shapeMiddle, 96, r, r))
	d.dimension("d", shapeMiddle-r, 96, shapeMiddle+r, 96, r+16)
}

func (d *drawing) trapezium(s *area.Trapezium) {
	wide := max(s.Base, s.Top)
	w, h := fit(wide, s.Height, shapeRoom, 110)
	base, top := w*float64(s.Base/wide), w*float64(s.Top/wide)
	y := 100 + h/2
	outline := pathOf("M", shapeMiddle-base/2, y, "H", shapeMiddle+base/2, "L", shapeMiddle+top/2, y-h, "H", shapeMiddle-top/2, "Z")
	if s.Thickness > 0 {
		d.path("side", pathOf("M", shapeMiddle+base/2, y, "l", backRight, -backUp, "L", shapeMiddle+top/2+backRight, y-h-backUp,
			"H", shapeMiddle-top/2+backRight, "L", shapeMiddle-top/2, y-h, "H", shapeMiddle+top/2, "Z"))
		d.pointed("t", shapeMiddle+base/2+34, y-22, shapeMiddle+base/2+backRight/2, y-backUp/2)
	}
	d.path("face", outline)
	d.dimension("a", shapeMiddle-base/2, y, shapeMiddle+base/2, y, 16)
	if top > 0 {
		d.dimension("c", shapeMiddle-top/2, y-h, shapeMiddle+top/2, y-h, -16)
	}
	d.path("behind", pathOf("M", shapeMiddle, y-h, "V", y))
	d.letter("h", shapeMiddle+12, y-h/2)
}

// blob is the outline of a board sawn to any shape, of 190 x 110 units around a
// point.
func blob(x, y float64) string {
	return pathOf("M", x-95, y+10, "c", 0.0, -40.0, 20.0, -62.0, 56.0, -60.0, "c", 24.0, 1.0, 30.0, 20.0, 56.0, 14.0,
		"c", 40.0, -9.0, 74.0, 0.0, 76.0, 36.0, "c", 2.0, 40.0, -36.0, 54.0, -70.0, 46.0, "c", -30.0, -7.0, -40.0, 10.0, -68.0, 10.0,
		"c", -32.0, 0.0, -50.0, -16.0, -50.0, -46.0, "Z")
}

func (d *drawing) slab() {
	d.path("side", blob(shapeMiddle+backRight, 104-backUp))
	d.path("face", blob(shapeMiddle, 104))
	d.letter("S", shapeMiddle, 104)
	d.pointed("P", 40, 168, shapeMiddle-68, 148)
	d.pointed("t", 312, 66, shapeMiddle+98, 88)
}

// patch is an area of which nobody says what it looks like.
func (d *drawing) patch() {
	d.path("face", blob(shapeMiddle, 104))
	d.letter("A", shapeMiddle, 104)
}

func (d *drawing) paper(s *area.Paper) {
	w, h := fit(max(s.SheetLength, s.SheetWidth), min(s.SheetLength, s.SheetWidth), 120, 110)
	r := rectangle{158 - w, 100 - h/2, w, h}
	d.rect("face", r, "")
	d.letter("M", r.x+w/2, r.y+h/2)
	d.dimension("l", r.x, r.bottom(), r.x+w, r.bottom(), 16)
	d.dimension("w", r.x, r.y, r.x, r.bottom(), 16)
	d.path("side", pathOf("M", 206.0, 70.0, "l", 52.0, -14.0, 40.0, 22.0, -22.0, 34.0, -58.0, -6.0, "Z"))
	d.path("side", pathOf("M", 226.0, 122.0, "l", 62.0, 4.0, 6.0, 30.0, -74.0, 10.0, "Z"))
	d.letter("m", 252, 84)
	d.letter("m", 258, 144)
}

func (d *drawing) roll() {
	d.path("face", pathOf("M", 92.0, 50.0, "H", 290.0, "V", 140.0, "H", 92.0, "Z"))
	d.path("face", pathOf("M", 70.0, 50.0, "A", 22.0, 8.0, "0 0 1 ", 114.0, 50.0, "V", 140.0, "A", 22.0, 8.0, "0 0 1 ", 70.0, 140.0, "Z"))
	d.path("side", ellipse(92, 50, 22, 8))
	d.path("edge", ellipse(92, 50, 9, 3.4))
	d.dimension("l", 114, 140, 290, 140, 24)
	d.dimension("w", 290, 140, 290, 50, 16)
}

// box draws its width as going back, at half its length.
func (d *drawing) box(s *area.Box) {
	const slant = 0.42 // of the width, to the right and up
	w, h := fit(s.Length+s.Width*slant, s.Height+s.Width*slant, shapeRoom, shapeTall)
	scale := min(shapeRoom/float64(s.Length+s.Width*slant), shapeTall/float64(s.Height+s.Width*slant))
	drawn := func(x q.Length) float64 { return max(shapeLeast, scale*float64(x)) }
	l, tall, back := drawn(s.Length), drawn(s.Height), max(8, slant*scale*float64(s.Width))
	x, y := shapeMiddle-w/2, 104-h/2+back // of the front's corner
	d.path("side", pathOf("M", x, y, "l", back, -back, "h", l, "v", tall, "l", -back, back, "Z"))
	d.path("edge", pathOf("M", x+l, y, "l", back, -back))
	d.rect("face", rectangle{x, y, l, tall}, "")
	d.dimension("l", x, y+tall, x+l, y+tall, 16)
	d.dimension("h", x, y, x, y+tall, 16)
	d.dimension("w", x+l+back, y+tall-back, x+l, y+tall, -14)
}
