package colour

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	q "coatwright/quantity"
)

// swatchLooks is how the film of a candy's own swatch looks over a ground.
func swatchLooks(t tb, c Candy, over Ground) Lab { return coating(t, c, over, c.Film).Lab(1) }

// Over its own ground a candy must look exactly like its swatch, from a silver
// metallic as from white, under either kind of surface.
func TestCandyLooksLikeItsSwatch(t *testing.T) {
	for _, over := range []string{"#c9ccd0", "#e8e8ec", "#ffffff"} {
		for _, returned := range []q.Fraction{Mirroring, Scattering} {
			g, err := NewGround(swatch(t, over), returned)
			if err != nil {
				t.Fatal(err)
			}
			for _, text := range []string{"#c01020", "#b5121b", "#0040c0", "#008030", "#800080", "#00a0a0", "#a06000", "#300008", "#101010", "L 35 a 50 b 20", over} {
				c := candy(t, text, g, coats(3))
				if c.Limit != InReach || c.Off != 0 || c.Remark() != "" {
					t.Errorf("%s over %s: %v, off by %v: %q", text, over, c.Limit, c.Off, c.Remark())
				}
				nearLab(t, text+" over "+over, swatchLooks(t, c, g), swatch(t, text).Colour.Lab(), 1e-5)
			}
		}
	}
}

// What a swatch cannot tell is said.
func TestCandyBeyondItsGround(t *testing.T) {
	for _, c := range []struct {
		swatch, over string
		limit        Limit
		most         DeltaE // how far off it may be
	}{
		{"#e01020", "#c9ccd0", TooLight, 4},
		{"#ffd000", "#c9ccd0", TooLight, 10},
		{"#00ff00", "#c9ccd0", TooLight, 10},
		{"#f0f0f0", "#c9ccd0", TooLight, 9},
		{"#0000ff", "#d4af37", TooLight, 22},
		{"#000000", "#c9ccd0", TooDark, 0.5},
		{"#010101", "#ffffff", TooDark, 0.5},
	} {
		g := ground(t, c.over)
		got := candy(t, c.swatch, g, coats(3))
		if got.Limit != c.limit || !(got.Off > 0) || got.Off > c.most {
			t.Errorf("%s over %s: %q and off by %v, want %q and at most %v", c.swatch, c.over, got.Limit, got.Off, c.limit, c.most)
		}
		near(t, "what it says of itself", float64(Difference(swatchLooks(t, got, g), swatch(t, c.swatch).Colour.Lab())), float64(got.Off), 1e-6)
	}
}

func TestCandyRemarks(t *testing.T) {
	for swatch, want := range map[string]string{
		"#e01020": "No film over its ground looks like the swatch, which is lighter or purer than what the ground sends back; the candy is taken as 2.",
		"#000000": "The swatch is too dark to tell how strong the candy is; it is taken to let through no less than 0.1 % of the light.",
	} {
		if got := candy(t, swatch, ground(t, "#c9ccd0"), coats(3)).Remark(); !strings.HasPrefix(got, want) {
			t.Errorf("%s: %q, want %q", swatch, got, want)
		}
	}
}

// A film that only takes light away never gives any, whatever the swatch.
func TestCandyPassesNoMoreThanAll(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		over := rapid.Uint8Range(40, 255)
		g, err := NewGround(SwatchOf(Screen{over.Draw(t, "R"), over.Draw(t, "G"), over.Draw(t, "B")}.XYZ()), q.Fraction(rapid.Float64Range(0, 0.6).Draw(t, "returned")))
		if err != nil {
			t.Fatal(err)
		}
		wanted := anyScreen(t).XYZ()
		c, err := NewCandy(SwatchOf(wanted), g, coats(3))
		if err != nil {
			t.Fatal(err)
		}
		for band, passed := range c.Passed {
			if !(passed >= leastPassed*(1-1e-9) && passed <= 1) {
				t.Errorf("band %d passes %v", band, passed)
			}
		}
		near(t, "off", float64(Difference(swatchLooks(t, c, g), wanted.Lab())), float64(c.Off), 1e-4)
	})
}

// Where both were read by an instrument, the film is their ratio: copper seen as
// a film over silver (see testdata/colour/README.md).
func TestMeasuredCandy(t *testing.T) {
	copper, silver := metal(t, "Cu"), metal(t, "Ag")
	g, err := NewGround(SwatchMeasured(silver), Mirroring)
	if err != nil {
		t.Fatal(err)
	}
	c, err := NewCandy(SwatchMeasured(copper), g, coats(2))
	if err != nil {
		t.Fatal(err)
	}
	for i, passed := range c.Passed {
		near(t, "passed", passed, copper[i]/silver[i], 1e-12)
	}
	if c.Limit != InReach || c.Off != 0 {
		t.Errorf("limit %q, off by %v", c.Limit, c.Off)
	}
	// Silver over copper would have to be lighter than its ground.
	other, err := NewCandy(SwatchMeasured(silver), Ground{Reflectance: copper}, coats(2))
	if err != nil || other.Limit != TooLight || other.Off < 5 {
		t.Errorf("silver over copper: %q, off by %v, %v", other.Limit, other.Off, err)
	}
}

// How good a guess is the smoothest film? Copper over silver as measured, and by
// their colours alone: at the depth of the swatch they look the same, at a third
// of it within a unit, at three times of it within two and a half.
func TestSmoothestFilmForecastsAMeasuredOne(t *testing.T) {
	copper, silver := metal(t, "Cu"), metal(t, "Ag")
	real := Ground{Reflectance: silver}
	measured, err := NewCandy(SwatchMeasured(copper), real, coats(3))
	if err != nil {
		t.Fatal(err)
	}
	guess, err := NewCandy(SwatchOf(copper.XYZ()), real, coats(3))
	if err != nil {
		t.Fatal(err)
	}
	for n, most := range map[q.Number]DeltaE{1: 1, 3: 1e-6, 9: 2.5} {
		a, b := coating(t, measured, real, coats(1)).Lab(n), coating(t, guess, real, coats(1)).Lab(n)
		if d := Difference(a, b); d > most {
			t.Errorf("%v coats look %v apart, want at most %v", n, d, most)
		}
	}
}

func TestNewCandyRefuses(t *testing.T) {
	red, silver := swatch(t, "#c01020"), ground(t, "#c9ccd0")
	for _, c := range []struct {
		name string
		over Ground
		film Film
		want string
	}{
		{"no coats", silver, Film{0, 9 * um, 1}, "the swatch of the candy: found 0 coats of 9 µm at a strength of 1; expected each above 0"},
		{"no build", silver, Film{3, 0, 1}, "the swatch of the candy: found 3 coats of 0 µm at a strength of 1; expected each above 0"},
		{"no strength", silver, Film{3, 9 * um, q.Number(math.NaN())}, "the swatch of the candy: found 3 coats of 9 µm at a strength of NaN; expected each above 0"},
		{"endless", silver, Film{q.Number(math.Inf(1)), 9 * um, 1}, "the swatch of the candy: found +Inf coats of 9 µm at a strength of 1; expected each above 0"},
		{"over black", ground(t, "#080808"), coats(3), "the swatch of the candy: found a ground that reflects 0.24 %; expected 1 % or more, as every candy over black is black"},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := NewCandy(red, c.over, c.film)
			if err == nil || err.Error() != c.want {
				t.Errorf("NewCandy refuses with\n\t%v\nwant\n\t%s", err, c.want)
			}
		})
	}
}
