package film

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	q "coatwright/quantity"
)

func volumeSolids(t tester, paint q.Density, volatiles ...Volatile) q.Fraction {
	t.Helper()
	vs, err := VolumeSolids(paint, volatiles)
	if err != nil {
		t.Fatal(err)
	}
	return vs
}

func TestVolumeSolids(t *testing.T) {
	// Published: Fla. Admin. Code 62-296.500 and 30 TAC 115.423 turn C lb of
	// solvent in a gallon of coating into C/(1 - C/D) in a gallon of solids, D =
	// 7.36 lb/gal: 3 is 5.07. (Exactly 5.0642; their steps are rounded.)
	const c, d = 3 * poundGal, 7.36 * poundGal
	vs := volumeSolids(t, 9*poundGal, Volatile{c / (9 * poundGal), d})
	near(t, "solvent in a gallon of solids", c/float64(vs)/poundGal, 5.07, 2e-3)
	near(t, "the same, exactly", c/float64(vs)/poundGal, 5.0642, 1e-5)

	// Worked independently. 1200 kg/m3 with 48 % volatiles of 900 kg/m3: a litre
	// has 576 g or 640 mL of them.
	near(t, "one volatile", float64(volumeSolids(t, 1200, Volatile{0.48, 900})), 0.36, 1e-12)
	// 1050 kg/m3, 30 % water and 15 % of a solvent of 880: 315 mL and 178.98 mL.
	near(t, "two volatiles", float64(volumeSolids(t, 1050, Volatile{0.30, 1000}, Volatile{0.15, 880})), 0.50602, 1e-5)
	near(t, "none", float64(volumeSolids(t, 1200)), 1, 0)
}

func TestVolumeSolidsRefuses(t *testing.T) {
	for _, c := range []struct {
		paint     q.Density
		volatiles []Volatile
		says      string
	}{
		{0, nil, "density of the paint: found 0 kg/m3; expected above 0 kg/m3"},
		{1200, []Volatile{{0.4, 0}}, "density of volatile 1: found 0 kg/m3; expected above 0 kg/m3"},
		{1200, []Volatile{{0.4, 900}, {-0.1, 900}}, "share of volatile 2: found -10 %; expected 0 to 100 % of the paint's mass"},
		{1200, []Volatile{{0.5, 900}, {0.5, 900}}, "volatiles: found 100 % of the paint's mass; expected less than 100 %"},
		{1500, []Volatile{{0.75, 900}}, "volatiles: found 125 % of the paint's volume; expected less than 100 %: a density is off, or the paint is weighed with air in it"},
		{q.Density(math.NaN()), nil, "density of the paint: found NaN kg/m3; expected above 0 kg/m3"},
	} {
		_, err := VolumeSolids(c.paint, c.volatiles)
		refuses(t, err, c.says)
	}
}

// A litre of solids and solvent put together comes apart again.
func TestVolumeSolidsProperty(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		vs := anyOf[q.Fraction](t, "solids", 0.05, 0.95)
		solids, solvent := anyOf[q.Density](t, "solids' density", 1000, 4000), anyOf[q.Density](t, "solvent's density", 700, 1000)
		paint := solids*q.Density(vs) + solvent*q.Density(1-vs)
		nv := vs * q.Fraction(solids/paint)
		got, err := VolumeSolids(paint, []Volatile{{1 - nv, solvent}})
		if err != nil {
			t.Fatal(err)
		}
		near(t, "solids by volume", float64(got), float64(vs), 1e-9)
		near(t, "dry density", float64(DryDensity(paint, nv, got)), float64(solids), 1e-9)
	})
}

// Worked by hand: 1.5 g on 0.02 m2 at 1500 kg/m3, and 2.4 g of a mix of 1200 that
// is still wet.
func TestWeighed(t *testing.T) {
	near(t, "dry", Weighed(1.5e-3, 0.02, 1500).Micrometres(), 50, 1e-12)
	near(t, "wet", Weighed(2.4e-3, 0.02, 1200).Micrometres(), 100, 1e-12)
	near(t, "what a step of 0.1 g tells", Weighed(0.1e-3, 0.02, 1500).Micrometres(), 10.0/3, 1e-12)
}

// Published formula, paintcenter.org/rj/dec07n.php: mils = 1604 x pounds x VS /
// (lb/gal x ft2), from the weight of the liquid. (Its last line, in grams, has
// 453.6 above where it belongs below.) The dry film weighed is the same.
func TestWeighedLiquidOrDry(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		nv, vs := anyOf[q.Fraction](t, "by mass", 0.1, 0.9), anyOf[q.Fraction](t, "by volume", 0.1, 0.9)
		paint, area := anyOf[q.Density](t, "density", 800, 1600), anyOf[q.Area](t, "area", 0.001, 1)
		liquid := anyOf[q.Mass](t, "mass", 1e-4, 1)
		mils := 1604.17 * float64(liquid) / 0.45359237 * float64(vs) / (float64(paint) / poundGal * float64(area) / ft2)
		dry := Weighed(liquid*q.Mass(nv), area, DryDensity(paint, nv, vs))
		near(t, "dry film", float64(dry)/mil, mils, 1e-5)
		near(t, "by the wet film", float64(DryFilm(Weighed(liquid, area, paint), vs)), float64(dry), 1e-12)
	})
}

func BenchmarkVolumeSolids(b *testing.B) {
	volatiles := []Volatile{{0.30, 1000}, {0.15, 880}}
	for b.Loop() {
		if _, err := VolumeSolids(1050, volatiles); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkWeighed(b *testing.B) {
	for b.Loop() {
		Weighed(1.5e-3, 0.02, 1500)
	}
}
