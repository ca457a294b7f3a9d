package area

import (
	"errors"
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"

	q "coatwright/quantity"
)

func TestCheck(t *testing.T) {
	plate := &Plate{Length: 0.6, Width: 0.4}
	for _, c := range []struct {
		name  string
		shape Shape
		want  Error
	}{
		{"nothing measured", &Plate{}, Error{"length", "0 µm", "a length above 0 and at most 20 m"}},
		{"below nothing", &Sphere{-0.1}, Error{"diameter", "-100 mm", "a length above 0 and at most 20 m"}},
		{"too small to measure", &Sphere{1e-200}, Error{"diameter", "0 µm", "a length above 0 and at most 20 m"}},
		{"no number", &Sphere{q.Length(math.NaN())}, Error{"diameter", "not known", "a length above 0 and at most 20 m"}},
		{"without end", &Sphere{q.Length(math.Inf(1))}, Error{"diameter", "without end", "a length above 0 and at most 20 m"}},
		{"too long", &Plate{Length: 560, Width: 0.4}, Error{"length", "560 m", "a length above 0 and at most 20 m"}},
		{"too thick", &Disc{0.5, Sheet{Thickness: 25}}, Error{"thickness", "25 m", "a length from 0 to 20 m"}},
		{"too large", &Measured{51}, Error{"area", "51 m²", "an area above 0 and at most 50 m²"}},
		{"too heavy", &Paper{0.01, 1, 1, 101}, Error{"sheet.mass", "101 kg", "a mass above 0 and at most 100 kg"}},
		{"too many ends", &Cylinder{Diameter: 0.1, Length: 1, Ends: 3}, Error{"ends", "3", "a whole number from 0 to 2"}},
		{"too few sides", &Prism{Side: 0.1, Length: 1}, Error{"sides", "0", "a whole number from 3 to 100"}},
		{"no such side", &Cylinder{Diameter: 0.1, Length: 1, Shell: Shell{Painted: "top"}}, Error{"painted", `"top"`, "one of outside, inside, both"}},

		{"full tube", &Cylinder{Diameter: 0.03, Length: 0.4, Shell: Shell{Thickness: 0.015}},
			Error{"thickness", "15 mm", "a wall of less than 15 mm, at which nothing is left inside"}},
		{"full tin", &Cylinder{Diameter: 1, Length: 0.4, Ends: 2, Shell: Shell{Thickness: 0.2}},
			Error{"thickness", "200 mm", "a wall that leaves something free between closed ends"}},
		{"full narrow end", &Frustum{Diameter1: 0.8, Diameter2: 0.2, Length: 0.4, Shell: Shell{Thickness: 0.09}},
			Error{"thickness", "90 mm", "a wall of less than 80 mm, at which nothing is left inside"}},
		{"full cone", &Cone{Diameter: 0.6, Height: 0.4, Shell: Shell{Thickness: 0.24}},
			Error{"thickness", "240 mm", "a wall of less than 240 mm, at which nothing is left inside"}},
		// A ball of 150 mm radius fits into this cone.
		{"full closed cone", &Cone{Diameter: 0.6, Height: 0.4, Ends: 1, Shell: Shell{Thickness: 0.1501}},
			Error{"thickness", "150 mm", "a wall that leaves something free between closed ends"}},
		{"full dome", &Dome{Diameter: 0.6, Height: 0.1, Shell: Shell{Thickness: 0.1}},
			Error{"thickness", "100 mm", "a wall of less than 100 mm, at which nothing is left inside"}},
		{"bar too deep for its ring", &Ring{Diameter: 0.1, Depth: 0.06}, Error{"depth", "60 mm", "at most half the diameter, 50 mm"}},
		{"girth too short", &Ring{Diameter: 0.6, Depth: 0.06, Girth: 0.1}, Error{"girth", "100 mm", "at least twice the depth, 120 mm"}},
		{"more than the ring", &Ring{Diameter: 0.6, Depth: 0.06, Share: 1.5}, Error{"share", "150 %", "a percentage above 0 and at most 100 %"}},
		{"perimeter too short", &Slab{0.1, 1, 0.04}, Error{"perimeter", "1 m", "at least 1.12 m, the way round a disc of that area"}},
		{"nothing used of the roll", &Roll{0.45, 2, 1}, Error{"over", "100 %", "less than 100 %, so that something covered the part"}},

		{"helmet without a size", &Helmet{Height: 0.15}, Error{"length", "no measures of the widest line", "length and width, or circumference"}},
		{"helmet without a width", &Helmet{Length: 0.28, Height: 0.15}, Error{"length", "no measures of the widest line", "length and width, or circumference"}},
		{"helmet with two sizes", &Helmet{Length: 0.28, Circumference: 0.8, Height: 0.15},
			Error{"circumference", "800 mm", "either length and width or circumference, not both"}},
		{"helmet without a rim", &Helmet{Circumference: 0.8, Height: 0.2, Below: 0.1}, Error{"below", "100 mm", "less than half the height, 100 mm"}},
		{"full helmet", &Helmet{Length: 0.28, Width: 0.22, Height: 0.2, Below: 0.06, Shell: Shell{Thickness: 0.081}},
			Error{"thickness", "81 mm", "a wall of less than 80 mm, at which nothing is left inside"}},

		{"body's widths out of order", &Body{Length: 0.5, Upper: 0.28, Waist: 0.24, Lower: 0.36, Thickness: 0.1, UpperAt: 0.25},
			Error{"upper-at", "250 mm", "less than 200 mm, where the waist lies"}},
		{"waist below the lower bout", &Body{Length: 0.5, Upper: 0.28, Waist: 0.24, Lower: 0.36, Thickness: 0.1, WaistAt: 0.4},
			Error{"waist-at", "400 mm", "less than 375 mm, where the lower bout lies"}},
		{"lower bout off the body", &Body{Length: 0.5, Upper: 0.28, Waist: 0.24, Lower: 0.36, Thickness: 0.1, LowerAt: 0.5},
			Error{"lower-at", "500 mm", "less than 500 mm, where the end of the body lies"}},

		{"frame of nothing", &Frame{}, Error{"tubes", "a list of 0", "a list of 1 to 60 tubes"}},
		{"frame of too much", &Frame{Tubes: make([]Tube, 61)}, Error{"tubes", "a list of 61", "a list of 1 to 60 tubes"}},
		{"tube without length", &Frame{Tubes: []Tube{{Diameter: 0.03, Length: 1}, {Diameter: 0.03}}},
			Error{"tubes[1].length", "0 µm", "a length above 0 and at most 20 m"}},
		{"more joints than ends", &Frame{[]Tube{{Diameter: 0.03, Length: 1, Count: 2}}, 5}, Error{"joints", "5", "at most 4, the ends that the tubes have"}},
		{"joints that hide all", &Frame{[]Tube{{Diameter: 0.1, Length: 0.05}}, 2}, Error{"joints", "2", "fewer joints, which leave something of the tubes to be painted"}},

		{"sum of nothing", &Sum{}, Error{"sum", "a list of 0", "a list of 1 to 60 shapes"}},
		{"sum of a sum", &Sum{[]Piece{{&Sum{[]Piece{{plate, 1}}}, 1}}}, Error{"sum[0].shape", "sum",
			"a shape: one of area, plate, disc, trapezium, cylinder, frustum, cone, ring, frame, box, prism, slab, body, sphere, dome, ellipsoid, helmet, paper, roll"}},
		{"sum of no shape", &Sum{[]Piece{{nil, 1}}}, Error{"sum[0].shape", "none",
			"a shape: one of area, plate, disc, trapezium, cylinder, frustum, cone, ring, frame, box, prism, slab, body, sphere, dome, ellipsoid, helmet, paper, roll"}},
		{"sum of too many", &Sum{[]Piece{{plate, 201}}}, Error{"sum[0].count", "201", "a whole number from 1 to 200"}},
		{"fault in a sum", &Sum{[]Piece{{plate, 1}, {&Sphere{30}, 1}}}, Error{"sum[1].sphere.diameter", "30 m", "a length above 0 and at most 20 m"}},

		{"opening as large as the plate", &Cut{plate, []Piece{{&Measured{0.12}, 2}}},
			Error{"openings", "0.24 m² in all", "openings of less than the 0.24 m² that they are in"}},
		{"ball for an opening", &Cut{plate, []Piece{{&Sphere{0.1}, 1}}}, Error{"openings[0].shape", "sphere", "a shape: one of area, plate, disc, trapezium"}},
		{"opening with both faces", &Cut{plate, []Piece{{&Disc{0.1, Sheet{BothFaces: true}}, 1}}},
			Error{"openings[0]", "an opening with both faces or a thickness", "an opening as it is seen from one side"}},
		{"opening with a thickness", &Cut{plate, []Piece{{&Cut{Of: &Disc{0.1, Sheet{Thickness: 0.1}}}, 1}}},
			Error{"openings[0]", "an opening with both faces or a thickness", "an opening as it is seen from one side"}},
		{"opening in nothing", &Cut{&Sphere{}, []Piece{{&Measured{0.12}, 2}}}, Error{"diameter", "0 µm", "a length above 0 and at most 20 m"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			var got *Error
			if err := c.shape.Check(); !errors.As(err, &got) {
				t.Fatalf("passes: %v", err)
			}
			if diff := cmp.Diff(c.want, *got); diff != "" {
				t.Errorf("(-want +got):\n%s", diff)
			}
			if want := c.want.Key + ": found " + c.want.Found + ", expected " + c.want.Expected; got.Error() != want {
				t.Errorf("says %q", got)
			}
		})
	}
}

// What looks odd and is allowed.
func TestCheckPasses(t *testing.T) {
	for name, s := range map[string]Shape{
		"a waist wider than the bouts": &Body{Length: 0.5, Upper: 0.2, Waist: 0.4, Lower: 0.3, Thickness: 0.1},
		"a ring without a hole":        &Ring{Diameter: 0.1, Depth: 0.05},
		"more than half a ball":        &Dome{Diameter: 0.1, Height: 0.3, Shell: Shell{Both, 0.001}},
		"a girth of a flat strip":      &Ring{Diameter: 0.6, Depth: 0.06, Girth: 0.12},
		"the perimeter of a disc":      &Slab{q.Area(math.Pi * 0.01), math.Pi * 0.2, 0.04},
		"all of a ring":                &Ring{Diameter: 0.6, Depth: 0.06, Share: 1},
		"an opening less an island":    &Cut{&Plate{Length: 0.6, Width: 0.4}, []Piece{{&Cut{&Disc{Diameter: 0.1}, []Piece{{&Disc{Diameter: 0.05}, 1}}}, 1}}},
	} {
		if err := s.Check(); err != nil || !(s.Area() > 0) {
			t.Errorf("%s: %v, %v m2", name, err, s.Area())
		}
	}
}
