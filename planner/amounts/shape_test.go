package amounts

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	q "coatwright/quantity"
)

// near fails unless got is within a share tolerance of want.
func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance*math.Abs(want)) {
		t.Errorf("%s = %.7g, want %.7g within %g %%", what, got, want, 100*tolerance)
	}
}

// Textbook geometry, worked independently, save where a source is given.
func TestArea(t *testing.T) {
	for _, c := range []struct {
		name      string
		shape     Shape
		want      float64 // m2
		tolerance float64
		form      string
	}{
		{"plate, one face", Plate{Length: 0.6, Width: 0.4}, 0.24, 1e-9, "panel"},
		{"plate, both faces", Plate{Length: 0.6, Width: 0.4, BothFaces: true}, 0.48, 1e-9, "panel"},
		{"cylinder, side", Cylinder{Diameter: 0.2, Length: 0.5}, 0.31416, 2e-5, "tube"},
		{"cylinder, one end", Cylinder{Diameter: 0.2, Length: 0.5, Ends: 1}, 0.34558, 2e-5, "tube"},
		{"cylinder, both ends", Cylinder{Diameter: 0.2, Length: 0.5, Ends: 2}, 0.37699, 2e-5, "tube"},
		{"frustum", Frustum{Diameter1: 0.6, Diameter2: 0.4, Length: 0.24}, 0.40841, 2e-5, "tube"},
		{"cone", Frustum{Diameter1: 0.6, Length: 0.4}, 0.47124, 2e-5, "tube"},
		{"sphere", Sphere{Diameter: 0.5}, 0.78540, 2e-5, "solid"},
		{"box", Box{Length: 0.6, Width: 0.4, Height: 0.02}, 0.52, 1e-9, "solid"},
		// Published: planetcalc.com/149, semi-axes 3, 4, 5.
		{"ellipsoid, by the formula", Ellipsoid{6, 8, 10}, 199.501704, 1e-8, "solid"},
		// The exact integral, within what Thomsen's formula may be off.
		{"ellipsoid, exact", Ellipsoid{6, 8, 10}, 199.4552, 0.01061, "solid"},
		{"prolate, exact", Ellipsoid{6, 6, 10}, 165.793, 0.01061, "solid"},
		{"oblate, exact", Ellipsoid{10, 10, 6}, 234.736, 0.01061, "solid"},
	} {
		t.Run(c.name, func(t *testing.T) {
			near(t, "area", float64(c.shape.Area()), c.want, c.tolerance)
			if got := c.shape.Form(); got != c.form {
				t.Errorf("form = %q, want %q", got, c.form)
			}
		})
	}
}

func TestShapesMeet(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := q.Length(rapid.Float64Range(0.01, 2).Draw(t, "diameter"))
		l := q.Length(rapid.Float64Range(0.01, 2).Draw(t, "length"))
		same := func(what string, a, b Shape) {
			if r := float64(a.Area() / b.Area()); math.Abs(r-1) > 1e-9 {
				t.Errorf("%s: %v m2 and %v m2", what, a.Area(), b.Area())
			}
		}
		same("round ellipsoid and sphere", Ellipsoid{d, d, d}, Sphere{d})
		same("straight frustum and cylinder", Frustum{d, d, l}, Cylinder{Diameter: d, Length: l})
		same("thin box and both faces of a plate", Box{d, l, 0}, Plate{d, l, true})
	})
}
