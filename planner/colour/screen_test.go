package colour

import (
	"encoding/json"
	"math"
	"testing"

	"pgregory.net/rapid"
)

// Published: the matrix of IEC 61966-2-1:1999, to four figures for a Y of 1, as
// https://lists.w3.org/Archives/Public/public-css-archive/2021Feb/0116.html and
// others give it. Ours is worked out from the primaries and a white whose Z is
// 1.0888, not 1.0890.
func TestScreenMatrix(t *testing.T) {
	want := matrix{{0.4124, 0.3576, 0.1805}, {0.2126, 0.7152, 0.0722}, {0.0193, 0.1192, 0.9505}}
	for i, row := range screen().light {
		for j, got := range row {
			near(t, "matrix", got/100, want[i][j], 2.5e-4)
		}
	}
	back := matrix{{3.2406, -1.5372, -0.4986}, {-0.9689, 1.8758, 0.0415}, {0.0557, -0.2040, 1.0570}}
	for i, row := range screen().drive {
		for j, got := range row {
			near(t, "matrix back", got*100, back[i][j], 6e-4)
		}
	}
}

// Published: the chromaticities of the primaries and of white, and Y of the
// primaries (IEC 61966-2-1:1999).
func TestPrimaries(t *testing.T) {
	for _, c := range []struct {
		colour  Screen
		x, y, Y float64
	}{
		{Screen{255, 0, 0}, 0.64, 0.33, 21.26},
		{Screen{0, 255, 0}, 0.30, 0.60, 71.52},
		{Screen{0, 0, 255}, 0.15, 0.06, 7.22},
		{Screen{255, 255, 255}, 0.3127, 0.3290, 100},
		{Screen{128, 128, 128}, 0.3127, 0.3290, 21.586}, // worked independently: ((128/255 + 0.055)/1.055)^2.4
		{Screen{10, 10, 10}, 0.3127, 0.3290, 0.30353},   // 10/255/12.92
	} {
		got := c.colour.XYZ()
		sum := got.X + got.Y + got.Z
		near(t, "x of "+c.colour.String(), got.X/sum, c.x, 5e-5)
		near(t, "y of "+c.colour.String(), got.Y/sum, c.y, 5e-5)
		near(t, "Y of "+c.colour.String(), got.Y, c.Y, 0.005)
	}
	if white := (Screen{255, 255, 255}).XYZ(); math.Abs(white.X-White().X)+math.Abs(white.Z-White().Z) > 1e-10 {
		t.Errorf("the screen's white is %v, what reflects everything %v", white, White())
	}
}

// Computed by a reference library; see testdata/colour/README.md.
func TestScreenColours(t *testing.T) {
	for _, r := range table(t, "screen_colours.csv") {
		var lab [2]Lab
		for i, n := range []string{"1", "2"} {
			lab[i] = swatch(t, r["hex"+n]).Colour.Lab()
			nearLab(t, r["hex"+n], lab[i], Lab{float(t, r["L"+n]), float(t, r["a"+n]), float(t, r["b"+n])}, 0.02)
		}
		near(t, r["hex1"]+" from "+r["hex2"], float64(Difference(lab[0], lab[1])), float(t, r["dE00"]), 0.01)
	}
}

func anyScreen(t *rapid.T) Screen {
	b := rapid.Uint8()
	return Screen{b.Draw(t, "R"), b.Draw(t, "G"), b.Draw(t, "B")}
}

func TestScreenGoesBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := anyScreen(t)
		if got, exact := c.XYZ().Screen(); got != c || !exact {
			t.Errorf("%v comes back as %v, exact: %v", c, got, exact)
		}
		if got, err := ParseScreen(c.String()); got != c || err != nil {
			t.Errorf("%v is read as %v: %v", c, got, err)
		}
	})
}

// A colour that no screen has keeps its lightness and hue as well as 8 bits can
// say them, and gives up chroma.
func TestBeyondTheScreen(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := Lab{rapid.Float64Range(20, 90).Draw(t, "L"), rapid.Float64Range(-150, 150).Draw(t, "a"), rapid.Float64Range(-150, 150).Draw(t, "b")}
		s, exact := c.XYZ().Screen()
		got := s.XYZ().Lab()
		near(t, "lightness", got.L, c.L, 0.6)
		if exact {
			nearLab(t, "colour", got, c, 1.6)
			return
		}
		if got.Chroma() > c.Chroma()+0.6 {
			t.Errorf("%+v becomes the purer %+v", c, got)
		}
		across := math.Abs(got.A*c.B-got.B*c.A) / c.Chroma()
		near(t, "distance from the hue", across, 0, 1.6)
	})
}

func TestLighterThanWhiteIsWhite(t *testing.T) {
	for c, want := range map[Lab]Screen{{140, 20, -30}: {255, 255, 255}, {-3, 0, 0}: {0, 0, 0}} {
		if got, exact := c.XYZ().Screen(); got != want || exact {
			t.Errorf("%+v is %v, exact: %v, want %v", c, got, exact, want)
		}
	}
}

func TestScreenInJSON(t *testing.T) {
	got, err := json.Marshal(Screen{201, 204, 8})
	if err != nil || string(got) != `"#c9cc08"` {
		t.Errorf("JSON is %s, %v", got, err)
	}
}
