package web

import (
	"fmt"
	"slices"
	"strings"

	"coatwright/planner"
)

// band is a film in the drawing. A film of a design covers only a piece of the
// part; the next film that covers the part flows down beside it.
type band struct {
	planner.Film
	rectangle
	beside []rectangle // where it flows down beside designs, from the top
}

// layBands places films from the top down. Heights are in proportion to the
// dry films, save that none is too low for its label. Each film stands back
// from the one below, as a panel rubbed through at its edge shows them.
func layBands(films []planner.Film) []band {
	thickest := 0.0
	for _, f := range films {
		thickest = max(thickest, f.DryUm)
	}
	bands := make([]band, len(films))
	step := min(bandStep, bandSteps/float64(len(films)))
	y := stackMargin
	for i, f := range slices.Backward(films) {
		h := bandLowest
		if thickest > 0 {
			h = max(h, bandHighest*f.DryUm/thickest)
		}
		left := stackMargin + step*float64(i+1)
		bands[i] = band{Film: f, rectangle: rectangle{left, y, bandRight - left, h}}
		y += h
	}
	narrow(bands)
	return bands
}

// narrow draws the films of designs in, and lets the next film that covers the
// part flow down beside them.
func narrow(bands []band) {
	pile := 0 // films of designs since the last that covers the part
	for i := range bands {
		b := &bands[i]
		if b.Design != "" {
			b.w = max(b.w-designInset-pileStep*float64(pile), b.w/3)
			pile++
			continue
		}
		for _, under := range slices.Backward(bands[i-pile : i]) {
			b.beside = append(b.beside, rectangle{under.x + under.w, under.y, bandRight - under.x - under.w, under.h})
		}
		pile = 0
	}
}

// outline is path data around the band and what of it flows down beside
// designs, as stairs on its right.
func (b band) outline() string {
	var path strings.Builder
	fmt.Fprintf(&path, "M%s %sH%s", num(b.x), num(b.y), num(b.x+b.w))
	for _, r := range slices.Backward(b.beside) {
		fmt.Fprintf(&path, "V%sH%sV%s", num(r.bottom()), num(r.x), num(r.y))
	}
	fmt.Fprintf(&path, "V%sH%sZ", num(b.bottom()), num(b.x))
	return path.String()
}

// designNames are the names of the designs that a film is for, and of its
// layers: "dark fade: fade; heron: colours" is two of each.
func designNames(design string) (names, layers string) {
	var name, layer []string
	for _, d := range strings.Split(design, "; ") {
		n, l := d, ""
		if i := strings.LastIndex(d, ": "); i >= 0 {
			n, l = d[:i], d[i+2:]
		}
		name = append(name, n)
		if !slices.Contains(layer, l) {
			layer = append(layer, l)
		}
	}
	return strings.Join(name, ", "), strings.Join(layer, ", ")
}
