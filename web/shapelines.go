package web

import (
	"fmt"
	"math"
	"strings"

	q "coatwright/quantity"
)

// pathOf is path data: commands and coordinates.
func pathOf(parts ...any) string {
	var b strings.Builder
	for _, part := range parts {
		switch part := part.(type) {
		case float64:
			b.WriteString(num(part) + " ")
		default:
			fmt.Fprint(&b, part)
		}
	}
	return strings.TrimSpace(strings.ReplaceAll(b.String(), " Z", "Z"))
}

// ellipse is path data of a whole ellipse.
func ellipse(x, y, rx, ry float64) string {
	return pathOf("M", x-rx, y, "A", rx, ry, "0 1 1 ", x+rx, y, "A", rx, ry, "0 1 1 ", x-rx, y, "Z")
}

// upperArc and lowerArc are path data of half an ellipse.
func upperArc(x, y, rx, ry float64) string {
	return pathOf("M", x-rx, y, "A", rx, ry, "0 0 1 ", x+rx, y)
}
func lowerArc(x, y, rx, ry float64) string {
	return pathOf("M", x-rx, y, "A", rx, ry, "0 0 0 ", x+rx, y)
}

// dimension marks how far it is from one point to another, along a line that
// stands off to the right of the way from the first to the second, and writes
// its letter beyond.
func (d *drawing) dimension(letter string, x1, y1, x2, y2, off float64) {
	length := math.Hypot(x2-x1, y2-y1)
	if letter == "" || length == 0 {
		return
	}
	nx, ny := -(y2-y1)/length, (x2-x1)/length
	ax, ay, bx, by := x1+nx*off, y1+ny*off, x2+nx*off, y2+ny*off
	var path []any
	if off != 0 {
		out := math.Copysign(5, off)
		for _, p := range [][2]float64{{x1, y1}, {x2, y2}} {
			path = append(path, "M", p[0]+nx*out, p[1]+ny*out, "L", p[0]+nx*(off+out), p[1]+ny*(off+out))
		}
	}
	path = append(path, "M", ax, ay, "L", bx, by)
	for _, p := range [][2]float64{{ax, ay}, {bx, by}} {
		path = append(path, "M", p[0]-4, p[1]+4, "L", p[0]+4, p[1]-4)
	}
	d.path("dimension", pathOf(path...))
	gap := math.Copysign(13, off)
	d.letter(letter, (ax+bx)/2+nx*gap, (ay+by)/2+ny*gap)
}

// letter writes the letter of a measure around a point.
func (d *drawing) letter(letter string, x, y float64) { d.text("letter", x, y+5, letter) }

// pointed writes a letter and a line from it to what it is of.
func (d *drawing) pointed(letter string, x, y, toX, toY float64) {
	length := max(1, math.Hypot(toX-x, toY-y))
	d.path("dimension", pathOf("M", x+(toX-x)/length*11, y+(toY-y)/length*11, "L", toX, toY))
	d.letter(letter, x, y)
}

// fit is how wide and tall something is drawn, in proportion as long as neither
// gets too small to be seen.
func fit(wide, tall q.Length, room, height float64) (w, h float64) {
	scale := min(room/float64(wide), height/float64(tall))
	return max(shapeLeast, scale*float64(wide)), max(shapeLeast, scale*float64(tall))
}
