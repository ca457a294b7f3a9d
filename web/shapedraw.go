package web

import (
	"cmp"
	"fmt"
	"html/template"
	"strings"

	"coatwright/planner/area"
	q "coatwright/quantity"
)

// ShapeDrawing is a shape drawn with the letters of its measures, and what they
// stand for.
type ShapeDrawing struct {
	Title  string
	SVG    template.HTML
	Legend []Letter
}

// Letter is a letter of a drawing and what it stands for.
type Letter struct{ Symbol, Name, Value string }

// Measures of the drawing of a shape, in SVG units.
const (
	shapeWidth  = 340.0
	shapeHeight = 220.0
	shapeMiddle = shapeWidth / 2
	shapeRoom   = 210.0 // how wide what is drawn may be, without its letters
	shapeTall   = 124.0 // how tall
	shapeLeast  = 14.0  // how small a side may become
	mostDrawn   = 12    // pieces of a sum, tubes of a frame
)

// ShapeDrawings draw a shape with its measures in the units of s: of a sum each
// of its pieces.
func ShapeDrawings(shape area.Shape, s *q.System) []ShapeDrawing {
	sum, ok := shape.(*area.Sum)
	if !ok {
		return []ShapeDrawing{shapeDrawing(shape, 1, s)}
	}
	var out []ShapeDrawing
	for _, p := range sum.Pieces[:min(len(sum.Pieces), mostDrawn)] {
		out = append(out, shapeDrawing(p.Shape, p.Count, s))
	}
	return out
}

func shapeDrawing(shape area.Shape, count int, s *q.System) ShapeDrawing {
	drawn := ShapeDrawing{Title: shape.Kind().Title, Legend: legendOf(shape.Measures(), s)}
	if painted := paintedOf(shape); painted != "" {
		drawn.Legend = append(drawn.Legend, Letter{Name: "Painted", Value: painted})
	}
	if count > 1 {
		drawn.Title = fmt.Sprintf("%d × %s", count, drawn.Title)
	}
	if cut, is := shape.(*area.Cut); is {
		shape = cut.Of
	}
	label := []string{drawn.Title}
	for _, l := range drawn.Legend {
		label = append(label, strings.TrimSpace(l.Name+" "+l.Value))
	}
	d := newDrawing("shape", strings.Join(label, ", "), shapeWidth, heightOf(shape))
	d.shape(shape)
	drawn.SVG = d.HTML()
	return drawn
}

// legendOf is what the letters of a drawing stand for, and the tubes of a frame
// by their numbers.
func legendOf(measures []area.Measure, s *q.System) []Letter {
	var out []Letter
	for _, m := range measures {
		switch into := m.Into.(type) {
		case *[]area.Tube:
			for i, t := range *into {
				out = append(out, Letter{fmt.Sprint(i + 1), "Tube", tubeSays(t, s)})
			}
		case nil:
			out = append(out, legendOf(m.Parts, s)...)
		case *bool, *area.Side, *[]area.Piece:
		default:
			if v, measured := m.Value(); measured && m.Symbol != "" {
				out = append(out, Letter{m.Symbol, m.Title, s.Show(v)})
			}
		}
	}
	return out
}

func tubeSays(t area.Tube, s *q.System) string {
	says := s.Show(q.ValueOf(t.Diameter))
	if t.To > 0 {
		says += " to " + s.Show(q.ValueOf(t.To))
	}
	says += " × " + s.Show(q.ValueOf(t.Length))
	if t.Count > 1 {
		says += fmt.Sprintf(", %d of it", t.Count)
	}
	return says
}

// paintedOf says which side of a shape is painted; "" where there is but one.
func paintedOf(shape area.Shape) string {
	for _, m := range shape.Measures() {
		switch into := m.Into.(type) {
		case *area.Side:
			if *into == area.Both {
				return "inside and outside"
			}
			return string(cmp.Or(*into, area.Outside))
		case *bool:
			if m.Symbol != "" && *into {
				return "both faces"
			}
		}
	}
	return ""
}

// heightOf is how tall the drawing of a shape is.
func heightOf(shape area.Shape) float64 {
	switch s := shape.(type) {
	case *area.Cylinder:
		return lyingHeight(s.Length, s.Diameter)
	case *area.Frustum:
		return lyingHeight(s.Length, max(s.Diameter1, s.Diameter2))
	case *area.Prism:
		return lyingHeight(s.Length, acrossPrism(s))
	case *area.Frame:
		return frameBars + barStep*float64(min(len(s.Tubes), mostDrawn)+1)
	case *area.Body:
		_, h := fitBody(s)
		return bodyTop(s) + h + bodyBelow
	}
	return shapeHeight
}

// shape draws any shape.
func (d *drawing) shape(shape area.Shape) {
	switch s := shape.(type) {
	case *area.Plate:
		d.plate(s)
	case *area.Disc:
		d.disc(s)
	case *area.Trapezium:
		d.trapezium(s)
	case *area.Cylinder:
		d.tapering(s.Diameter, s.Diameter, s.Length, s.Ends > 0, s.Thickness, [2]string{"d", ""})
	case *area.Frustum:
		d.tapering(s.Diameter1, s.Diameter2, s.Length, s.Ends > 1 || s.Ends == 1 && s.Diameter1 >= s.Diameter2, s.Thickness, [2]string{"d₁", "d₂"})
	case *area.Cone:
		d.cone(s)
	case *area.Ring:
		d.ring(s)
	case *area.Frame:
		d.frame(s)
	case *area.Box:
		d.box(s)
	case *area.Prism:
		d.prism(s)
	case *area.Slab:
		d.slab()
	case *area.Body:
		d.body(s)
	case *area.Sphere:
		d.sphere()
	case *area.Dome:
		d.dome(s)
	case *area.Ellipsoid:
		d.egg(s)
	case *area.Helmet:
		d.helmet(s)
	case *area.Paper:
		d.paper(s)
	case *area.Roll:
		d.roll()
	default:
		d.patch()
	}
}
