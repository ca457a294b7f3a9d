package colour

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	q "coatwright/quantity"
)

// Worked by hand: a coat that lets 90 %, 80 % and 50 % down and up again leaves
// 66 %, 41 % and 6 % after four, and of a ground that reflects 60 % so much of
// that.
func TestFilmFollowsBeersLaw(t *testing.T) {
	c := Candy{Film: coats(1), Passed: flat(0.9)}
	c.Passed[10], c.Passed[30] = 0.8, 0.5
	work := coating(t, c, Ground{Reflectance: flat(0.6)}, coats(1))
	four := work.Reflectance(4)
	for band, want := range map[int]float64{0: 0.6 * 0.6561, 10: 0.6 * 0.4096, 30: 0.6 * 0.0625} {
		near(t, "after four coats", four[band], want, 1e-12)
	}
	near(t, "after half a coat", work.Reflectance(0.5)[30], 0.6*math.Sqrt(0.5), 1e-12)
}

// Worked by hand: over white that scatters, a coat that lets half through and
// k2 = 0.6 leaves 0.4 × 0.5 / (1 - 0.3), which is deeper than over a mirror.
func TestFilmOverWhat(t *testing.T) {
	c := Candy{Film: coats(1), Passed: flat(0.5)}
	work := coating(t, c, Ground{Reflectance: flat(1), Returned: 0.6}, coats(1))
	near(t, "over white", work.Reflectance(1)[20], 0.285714, 1e-6)
}

func anyCoating(t *rapid.T) Coating {
	passed := Spectrum(rapid.SliceOfN(rapid.Float64Range(leastPassed, 1), Bands, Bands).Draw(t, "passed"))
	work, err := Candy{Film: anyFilm(t), Passed: passed}.Over(anyGround(t), anyFilm(t))
	if err != nil {
		t.Fatal(err)
	}
	return work
}

// A coat more never adds light: at no wavelength, and not in all.
func TestStripOnlyGetsDarker(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		work := anyCoating(t)
		strip := work.Strip(12)
		if len(strip) != 13 {
			t.Fatal("the strip has", len(strip), "steps, want 13")
		}
		before := work.Reflectance(0)
		for n, step := range strip {
			if step.Coats != n {
				t.Errorf("step %d is of %d coats", n, step.Coats)
			}
			now := work.Reflectance(q.Number(n))
			nearXYZ(t, "strip against reflectance", step.XYZ, now.XYZ(), 1e-9)
			near(t, "depth", float64(step.Depth), float64(work.Depth(q.Number(n))), 1e-12*float64(step.Depth))
			if n == 0 {
				if step.Change != 0 {
					t.Errorf("the bare ground differs by %v", step.Change)
				}
				continue
			}
			for band := range now {
				if now[band] > before[band]*(1+1e-14) {
					t.Errorf("coat %d: band %d rises from %v to %v", n, band, before[band], now[band])
				}
			}
			if step.XYZ.Y > strip[n-1].XYZ.Y || step.Lab.L > strip[n-1].Lab.L {
				t.Errorf("coat %d is lighter: %+v after %+v", n, step, strip[n-1])
			}
			near(t, "change", float64(step.Change), float64(Difference(strip[n-1].Lab, step.Lab)), 1e-12)
			before = now
		}
	})
}

// A film on a film is one film of both.
func TestFilmsAddUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g, film, coat := anyGround(t), anyFilm(t), anyFilm(t)
		passed := Spectrum(rapid.SliceOfN(rapid.Float64Range(leastPassed, 1), Bands, Bands).Draw(t, "passed"))
		c := Candy{Film: film, Passed: passed}
		first, second := q.Number(rapid.Float64Range(0, 3).Draw(t, "first")), q.Number(rapid.Float64Range(0, 3).Draw(t, "second"))
		half := coating(t, c, g, coat).Reflectance(first)
		both := coating(t, c, Ground{Reflectance: half, Returned: g.Returned}, coat).Reflectance(second)
		for band, want := range coating(t, c, g, coat).Reflectance(first + second) {
			near(t, "both films", both[band], want, 1e-12)
		}
	})
}

// Six coats of half the strength look as three of the full strength do.
func TestStrengthForCoats(t *testing.T) {
	g := ground(t, "#c9ccd0")
	c := candy(t, "#c01020", g, coats(3))
	full, weak := coating(t, c, g, coats(1)), coating(t, c, g, Film{1, 9 * um, 0.5})
	for n := q.Number(0); n <= 6; n++ {
		nearLab(t, "weak", weak.Lab(2*n), full.Lab(n), 1e-9)
	}
	nearLab(t, "three coats", full.Lab(3), swatch(t, "#c01020").Colour.Lab(), 1e-6)
}

// Over a darker ground the same candy looks darker.
func TestGroundDecides(t *testing.T) {
	bright, dull := ground(t, "#d8dade"), ground(t, "#808488")
	c := candy(t, "#c01020", ground(t, "#c9ccd0"), coats(3))
	a, b := coating(t, c, bright, coats(1)).Strip(6), coating(t, c, dull, coats(1)).Strip(6)
	for n := range a {
		if a[n].Lab.L <= b[n].Lab.L {
			t.Errorf("after %d coats L is %v over the bright ground, %v over the dull one", n, a[n].Lab.L, b[n].Lab.L)
		}
	}
}

func TestOverRefuses(t *testing.T) {
	g := ground(t, "#c9ccd0")
	c := candy(t, "#c01020", g, coats(3))
	for _, film := range []Film{{1, -9 * um, 1}, {1, 9 * um, q.Number(math.NaN())}, {q.Number(math.Inf(1)), 9 * um, 1}} {
		if _, err := c.Over(g, film); err == nil {
			t.Errorf("%+v is no error", film)
		}
	}
	_, err := c.Over(g, Film{1, -9 * um, 1})
	const want = "a coat of candy: found 1 coats of -9 µm at a strength of 1; expected each to be 0 or more"
	if err == nil || err.Error() != want {
		t.Errorf("Over refuses with\n\t%v\nwant\n\t%s", err, want)
	}
	// A coat of nothing changes nothing.
	for _, step := range coating(t, c, g, Film{1, 0, 1}).Strip(3) {
		if step.Screen.String() != "#c9ccd0" || step.Change > 1e-9 {
			t.Errorf("a coat of nothing: %+v", step)
		}
	}
}

// The strip of a red candy over silver, as a painter would see it: the first
// coats change most, every one deepens, and the third is the swatch.
func TestStrip(t *testing.T) {
	g := ground(t, "#c9ccd0")
	strip := coating(t, candy(t, "#b01020", g, coats(3)), g, coats(1)).Strip(12)
	if strip[0].Screen.String() != "#c9ccd0" || strip[3].Screen.String() != "#b01020" {
		t.Errorf("ground and swatch are %v and %v", strip[0].Screen, strip[3].Screen)
	}
	for n := 2; n <= 12; n++ {
		if strip[n].Change >= strip[n-1].Change {
			t.Errorf("coat %d changes by %v, the one before by %v", n, strip[n].Change, strip[n-1].Change)
		}
	}
	if len(coating(t, candy(t, "#b01020", g, coats(3)), g, coats(1)).Strip(-1)) != 0 {
		t.Error("a strip of fewer than no coats has steps")
	}
}

// A film that is reckoned every 5 nm, as the CIE's tables go, looks nearly the
// same down to twelve coats; worked independently. The last swatch is as red as
// its ground allows, so that its film has steep edges.
func TestTenNanometresAreFineEnough(t *testing.T) {
	matching, lights := table(t, "cie1931_2deg_5nm.csv"), table(t, "illuminants_5nm.csv")
	g := ground(t, "#c9ccd0")
	for text, most := range map[string]DeltaE{"#b01020": 0.4, "#0040c0": 0.4, "#008030": 0.4, "#800080": 0.4, "#d4001a": 1.4} {
		c := candy(t, text, g, coats(3))
		work := coating(t, c, g, coats(1))
		for n := 0.0; n <= 12; n++ {
			var got XYZ
			var normal float64
			for i, m := range matching {
				light := float(t, lights[i]["D65"])
				absorbed := -(math.Log(c.Passed[i/2]) + math.Log(c.Passed[(i+1)/2])) / 2 / 3
				r := light * (g.Reflectance[i/2] + g.Reflectance[(i+1)/2]) / 2 * math.Exp(-absorbed*n)
				normal += light * float(t, m["ybar"])
				got = XYZ{got.X + r*float(t, m["xbar"]), got.Y + r*float(t, m["ybar"]), got.Z + r*float(t, m["zbar"])}
			}
			k := 100 / normal
			if d := Difference(XYZ{k * got.X, k * got.Y, k * got.Z}.Lab(), work.Lab(q.Number(n))); d > most {
				t.Errorf("%s, %v coats: %v apart, want at most %v", text, n, d, most)
			}
		}
	}
}
