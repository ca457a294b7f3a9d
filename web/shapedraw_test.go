package web

import (
	"fmt"

	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"coatwright/planner/area"
	q "coatwright/quantity"
)

// drawnShapes has each kind of shape as a line has it, and what looks different
// by what was measured.
var drawnShapes = map[string]string{
	"area":           "0.55 m2",
	"plate":          "plate 600 x 400 mm",
	"plate-edge":     "plate 600 x 40 mm, both faces, thickness 8 mm",
	"disc":           "disc 300 mm, thickness 20 mm",
	"trapezium":      "trapezium 600 x 300 mm, top 400 mm",
	"triangle":       "trapezium 600 x 300 mm, thickness 20 mm",
	"cylinder":       "cylinder 30 x 400 mm",
	"cylinder-wall":  "cylinder 200 x 100 mm, thickness 10 mm, painted both",
	"frustum":        "frustum 30 to 20 x 400 mm, ends 1",
	"cone":           "cone 300 x 200 mm, thickness 2 mm",
	"ring":           "ring 640 x 25 mm",
	"bend":           "ring 640 x 40 mm, girth 160 mm, share 70 %",
	"frame":          "frame, tubes (28.6 mm x 560 mm; 36 x 150 mm; 22 to 14 mm x 420 mm x 2), joints 5",
	"box":            "box 400 x 300 x 200 mm",
	"prism":          "prism 6 x 20 x 450 mm",
	"slab":           "slab 0.13 m2 x 1.5 m x 45 mm",
	"body":           "body 490 x 280 x 240 x 370 x 100 mm",
	"body-placed":    "body 356 x 168 x 112 x 208 x 30 mm, upper-at 60 mm, waist-at 150 mm, lower-at 250 mm",
	"sphere":         "sphere 60 mm",
	"dome":           "dome 400 x 150 mm, thickness 5 mm",
	"dome-deep":      "dome 300 x 250 mm",
	"ellipsoid":      "ellipsoid 500 x 300 x 200 mm",
	"ellipsoid-half": "ellipsoid 500 x 300 x 100 mm, half",
	"helmet":         "helmet 200 mm, length 290 mm, width 230 mm, below 40 mm, thickness 4 mm",
	"helmet-round":   "helmet 150 mm, circumference 820 mm",
	"paper":          "paper 62 g, sheet (1 m x 0.9 m x 36 g)",
	"roll":           "roll 450 mm x 2.4 m, over 10 %",
}

// countLetters are those of counts and of what was cut away: they are no lengths.
const countLetters = "n e o"

// shapeOfLine is a shape as a line has it.
func shapeOfLine(t interface{ Fatal(...any) }, line string) area.Shape {
	var s area.Sum
	if err := s.Measures()[0].Read(line); err != nil {
		t.Fatal(line, err)
	}
	return s.Pieces[0].Shape
}

func TestShapeDrawings(t *testing.T) {
	drawn := map[string]bool{"sum": true} // each of its pieces is drawn
	for name, line := range drawnShapes {
		t.Run(name, func(t *testing.T) {
			s := shapeOfLine(t, line)
			drawn[s.Kind().Key] = true
			d := ShapeDrawings(s, q.Metric)[0]
			likeFile(t, "shape-"+name+".svg", d.SVG)
			for _, l := range d.Legend {
				if l.Symbol != "" && !strings.Contains(countLetters, l.Symbol) && !strings.Contains(string(d.SVG), ">"+l.Symbol+"</text>") {
					t.Errorf("the letter %s for %s is not in the drawing", l.Symbol, l.Name)
				}
			}
		})
	}
	for _, key := range area.Keys() {
		if !drawn[key] {
			t.Errorf("no drawing of a %s", key)
		}
	}
}

func TestShapeDrawingsOfASum(t *testing.T) {
	var s area.Sum
	if err := s.Measures()[0].Read("cylinder 30 x 400 mm x 2\n1 ft2\n" + strings.Repeat("disc 3 in\n", 20)); err != nil {
		t.Fatal(err)
	}
	drawings := ShapeDrawings(&s, q.US)
	if len(drawings) != mostDrawn || drawings[0].Title != "2 × Tube or rod" || drawings[1].Title != "Area already measured" {
		t.Errorf("%d drawings: %q, %q", len(drawings), drawings[0].Title, drawings[1].Title)
	}
	want := []Letter{{"d", "Diameter", "1.18 in"}, {"l", "Length", "15.7 in"}, {"", "Painted", "outside"}}
	if diff := cmp.Diff(want, drawings[0].Legend); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}

func TestTubesAreListed(t *testing.T) {
	line := "frame, tubes (28.6 mm x 560 mm; 31.8 to 28 mm x 600 mm x 2" + strings.Repeat("; 10 mm x 100 mm", 12) + ")"
	d := ShapeDrawings(shapeOfLine(t, line), q.Metric)[0]
	want := []Letter{{"1", "Tube", "28.6 mm × 560 mm"}, {"2", "Tube", "31.8 mm to 28 mm × 600 mm, 2 of it"}}
	if diff := cmp.Diff(want, d.Legend[:2]); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
	if !strings.Contains(string(d.SVG), ">and 2 more</text>") || !strings.Contains(string(d.SVG), ">× 2</text>") {
		t.Error("the drawing does not say that there are more tubes")
	}
}

// TestShapesStayInTheirDrawing: whatever was measured, nothing is drawn outside of
// the picture, and no coordinate is out of reason.
func TestShapesStayInTheirDrawing(t *testing.T) {
	lines := []string{
		"plate %[1]v x %[2]v m, thickness %[3]v m", "disc %[1]v m, thickness %[2]v m", "trapezium %[1]v x %[2]v m, top %[3]v m", "cylinder %[1]v x %[2]v m",
		"frustum %[1]v to %[2]v x %[3]v m", "cone %[1]v x %[2]v m", "frame, tubes (%[1]v m x %[2]v m; %[3]v to %[1]v x %[2]v m)", "box %[1]v x %[2]v x %[3]v m", "prism 7 x %[1]v x %[2]v m",
		"body %[1]v x %[2]v x %[3]v x %[2]v x %[3]v m", "dome %[1]v x %[2]v m", "ellipsoid %[1]v x %[2]v x %[3]v m", "ellipsoid %[1]v x %[2]v x %[3]v m, half",
		"helmet %[3]v m, length %[1]v m, width %[2]v m", "paper 1 g, sheet (%[1]v x %[2]v m x 1 g)",
	}
	rapid.Check(t, func(t *rapid.T) {
		side := rapid.Custom(func(t *rapid.T) string {
			return strconv.FormatFloat(rapid.SampledFrom([]float64{0.002, 0.03, 0.5, 1, 20}).Draw(t, "side"), 'f', -1, 64)
		})
		line := fmt.Sprintf(rapid.SampledFrom(lines).Draw(t, "line"), side.Draw(t, "a"), side.Draw(t, "b"), side.Draw(t, "c"))
		line = strings.Split(line, "%!")[0]
		var sum area.Sum
		if sum.Measures()[0].Read(line) != nil {
			t.Skip("cannot be")
		}
		shape := sum.Pieces[0].Shape
		svg := string(ShapeDrawings(shape, q.Metric)[0].SVG)
		if strings.Contains(svg, "NaN") || strings.Contains(svg, "Inf") {
			t.Fatalf("%s: %s", line, svg)
		}
		if cut, is := shape.(*area.Cut); is {
			shape = cut.Of
		}
		for _, p := range points(t, svg) {
			if p[0] < 0 || p[0] > shapeWidth || p[1] < 0 || p[1] > heightOf(shape) {
				t.Errorf("%s: %v is outside of the drawing", line, p)
			}
		}
		for _, m := range regexp.MustCompile(`<text[^>]* x="([^"]+)" y="([^"]+)"`).FindAllStringSubmatch(svg, -1) {
			x, _ := strconv.ParseFloat(m[1], 64)
			y, _ := strconv.ParseFloat(m[2], 64)
			if x < 8 || x > shapeWidth-8 || y < 12 || y > heightOf(shape)-2 {
				t.Errorf("%s: a letter stands at %v, %v", line, x, y)
			}
		}
	})
}

func BenchmarkShapeDrawings(b *testing.B) {
	s := shapeOfLine(b, drawnShapes["frame"])
	for b.Loop() {
		ShapeDrawings(s, q.Metric)
	}
}
