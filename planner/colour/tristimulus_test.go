package colour

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// whiteOf is the white of an illuminant by the tables of testdata.
func whiteOf(t *testing.T, illuminant string) XYZ {
	var matching [][3]float64
	for _, r := range table(t, "cie1931_2deg_5nm.csv") {
		matching = append(matching, [3]float64{float(t, r["xbar"]), float(t, r["ybar"]), float(t, r["zbar"])})
	}
	var light []float64
	for _, r := range table(t, "illuminants_5nm.csv") {
		light = append(light, float(t, r[illuminant]))
	}
	return observe(matching, light).white
}

// XYZ as summed by 5 nm, testdata/colour/README.md; that of A, and x and y:
// CIE 15:2004, table T.3, from memory.
func TestWhite(t *testing.T) {
	for _, c := range []struct {
		illuminant string
		xyz        XYZ
		tolerance  float64
		x, y       float64
	}{
		{"D65", XYZ{95.043, 100, 108.880}, 0.0005, 0.31272, 0.32903},
		{"D50", XYZ{96.420, 100, 82.512}, 0.0005, 0.34567, 0.35851},
		{"A", XYZ{109.85, 100, 35.58}, 0.006, 0.44758, 0.40745},
	} {
		got := whiteOf(t, c.illuminant)
		nearXYZ(t, c.illuminant, got, c.xyz, c.tolerance)
		sum := got.X + got.Y + got.Z
		near(t, "x of "+c.illuminant, got.X/sum, c.x, 2e-5)
		near(t, "y of "+c.illuminant, got.Y/sum, c.y, 2e-5)
	}
}

func TestEmbeddedTableIsTheCIEs(t *testing.T) {
	if got, want := White(), whiteOf(t, "D65"); got != want {
		t.Errorf("White() = %v, by the check tables %v", got, want)
	}
}

// A step of 10 nm must see a spectrum that goes straight between its bands as
// the tables' own 5 nm do.
func TestTenNanometresSumAsFive(t *testing.T) {
	matching, lights := table(t, "cie1931_2deg_5nm.csv"), table(t, "illuminants_5nm.csv")
	rapid.Check(t, func(t *rapid.T) {
		s := anySpectrum(t)
		var normal float64
		var want XYZ
		for i, m := range matching {
			light := float(t, lights[i]["D65"])
			r := light * (s[i/2] + s[(i+1)/2]) / 2
			normal += light * float(t, m["ybar"])
			want = XYZ{want.X + r*float(t, m["xbar"]), want.Y + r*float(t, m["ybar"]), want.Z + r*float(t, m["zbar"])}
		}
		k := 100 / normal
		nearXYZ(t, "any spectrum", s.XYZ(), XYZ{k * want.X, k * want.Y, k * want.Z}, 1e-10)
	})
}

// anySpectrum draws a reflectance with no rule to it.
func anySpectrum(t *rapid.T) Spectrum {
	return Spectrum(rapid.SliceOfN(rapid.Float64Range(0, 1), Bands, Bands).Draw(t, "reflectance"))
}

// Published: the example of the reference library colour-science (Python) for
// its summation by 1 nm in D65, with readings every 20 nm and a curve through
// them. Ours goes straight from reading to reading: up to 0.03.
func TestPublishedReflectance(t *testing.T) {
	s := swatch(t, "400:0.0641, 420:0.0645, 440:0.0562, 460:0.0537, 480:0.0559, 500:0.0651, 520:0.0705, 540:0.0772, "+
		"560:0.0870, 580:0.1128, 600:0.1360, 620:0.1511, 640:0.1688, 660:0.1996, 680:0.2397, 700:0.2852")
	nearXYZ(t, "the example", s.Colour, XYZ{10.8401846, 9.6837311, 6.2120912}, 0.03)
}

// metal is the reflectance in air of a metal of the check tables.
func metal(t tb, symbol string) Spectrum {
	var s Spectrum
	for i, r := range table(t, "metal_nk_reflectance_10nm.csv") {
		if nm := float(t, r["nm"]); math.Abs(nm*1e-9-float64(Wavelength(i))) > 1e-12 {
			t.Fatal("band ", i, " is not at ", nm, " nm")
		}
		s[i] = float(t, r[symbol+"_R_air"])
	}
	return s
}

// Published: what metals reflect of light that meets them squarely, in linear
// sRGB (Hoffman, Physically Based Shading Models in Film and Game Production,
// SIGGRAPH 2010, table 1, after Real-Time Rendering, third edition). Its optical
// constants of gold and silver are others than ours: wider tolerances.
func TestMetals(t *testing.T) {
	for _, c := range []struct {
		symbol    string
		rgb       [3]float64
		tolerance float64
	}{
		{"Al", [3]float64{0.91, 0.92, 0.92}, 0.01},
		{"Cu", [3]float64{0.95, 0.64, 0.54}, 0.02},
		{"Au", [3]float64{1.00, 0.71, 0.29}, 0.08},
		{"Ag", [3]float64{0.95, 0.93, 0.88}, 0.10},
	} {
		got := screen().drive.ofXYZ(metal(t, c.symbol).XYZ())
		for k, name := range []string{"red", "green", "blue"} {
			near(t, name+" of "+c.symbol, got[k], c.rgb[k], c.tolerance)
		}
	}
}

// Fine gold measures about L 84 to 90, a 5, b 34, a hue of 82 degrees (from
// memory). Copper lies nearer to red, silver and aluminium are grey and light.
func TestMetalsInCIELAB(t *testing.T) {
	gold, copper := metal(t, "Au").XYZ().Lab(), metal(t, "Cu").XYZ().Lab()
	near(t, "L of gold", gold.L, 87, 4)
	near(t, "a of gold", gold.A, 5, 1)
	near(t, "b of gold", gold.B, 34, 1)
	near(t, "hue of gold", gold.Hue(), 82, 1)
	if copper.Hue() > gold.Hue()-20 {
		t.Errorf("the hue of copper is %.0f, not nearer to red than that of gold, %.0f", copper.Hue(), gold.Hue())
	}
	for symbol, least := range map[string]float64{"Al": 96, "Ag": 99} {
		got := metal(t, symbol).XYZ().Lab()
		if got.L < least || got.Chroma() > 1 {
			t.Errorf("%s is %+v, want a grey of L %v or more", symbol, got, least)
		}
	}
}

// White is L 100 and black L 0 (CIE 15:2004); a Y of 18.42 is L 50, and where
// the cube root ends Y is 0.8856 and L 8 (worked independently).
func TestLab(t *testing.T) {
	grey := func(y float64) XYZ { return flat(y / 100).XYZ() }
	for _, c := range []struct {
		y, l, tolerance float64
	}{{100, 100, 1e-9}, {0, 0, 1e-9}, {18.4187, 50, 1e-4}, {0.885645, 8, 1e-5}, {0.1, 0.9033, 1e-4}} {
		nearLab(t, "grey", grey(c.y).Lab(), Lab{c.l, 0, 0}, c.tolerance)
	}
}

func TestLabGoesBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := Lab{rapid.Float64Range(0, 100).Draw(t, "L"), rapid.Float64Range(-120, 120).Draw(t, "a"), rapid.Float64Range(-120, 120).Draw(t, "b")}
		nearLab(t, "there and back", c.XYZ().Lab(), c, 1e-9)
		if h := c.Hue(); h < 0 || h >= 360 {
			t.Errorf("the hue of %+v is %v", c, h)
		}
	})
}
