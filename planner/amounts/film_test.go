package amounts

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	q "coatwright/quantity"
)

const (
	mil       = 25.4e-6                                       // m
	um        = 1e-6                                          // m
	ml        = 1e-6                                          // m3
	usGallon  = 231 * 0.0254 * 0.0254 * 0.0254                // m3
	ft2PerGal = 0.3048 * 0.3048 / usGallon                    // m2 per m3
	poundGal  = 0.45359237 / (231 * 0.0254 * 0.0254 * 0.0254) // kg/m3
)

func TestSpreadingRate(t *testing.T) {
	for _, c := range []struct {
		source    string
		solids    q.Fraction
		dft       q.Length
		want      float64
		unit      float64
		tolerance float64
	}{
		{"scribd.com/document/343849341", 1, 1 * mil, 1604, ft2PerGal, 2e-4},
		{"scribd.com/document/343849341", 0.65, 5 * mil, 208.52, ft2PerGal, 2e-4},
		{"scribd.com/document/343849341", 0.65, 125 * um, 5.2, 1000, 1e-9},
		{"scribd.com/document/104802451", 0.35, 1 * mil, 561, ft2PerGal, 1e-3},
		{"scribd.com/document/104802451", 0.35, 2 * mil, 281, ft2PerGal, 2e-3},
	} {
		near(t, c.source, float64(SpreadingRate(c.solids, c.dft))/c.unit, c.want, c.tolerance)
	}
}

func TestWetFilm(t *testing.T) {
	thinned := func(solids, thinner q.Fraction) q.Fraction {
		vs, err := SolidsOfMix([]Part{{Name: "paint", Parts: 1, Solids: solids}, {Name: "thinner", Of: "paint", Share: thinner}})
		if err != nil {
			t.Fatal(err)
		}
		return vs
	}
	// Worked independently: 50 um dry at 40 %, plain and thinned by 10 %.
	near(t, "wet film", WetFilm(50*um, 0.40).Micrometres(), 125, 1e-9)
	near(t, "wet film, thinned", WetFilm(50*um, thinned(0.40, 0.10)).Micrometres(), 137.5, 1e-9)
	// Published formula, scribd.com/document/104802451: 8 mil wet, 35 %, thinned
	// by 10 %, is 8 x 0.35/1.10 dry. (The page prints 2.8, from other solids.)
	near(t, "wet film, published", float64(WetFilm(8*0.35/1.10*mil, thinned(0.35, 0.10))), 8*mil, 1e-9)
}

func TestNeeded(t *testing.T) {
	// Worked independently: 10 m2, 50 um, 40 %, 65 % lands.
	_, likely, _ := Needed(10, 50*um, 0.40, q.Range[q.Fraction]{Low: 0.65, High: 0.65}, 0)
	near(t, "volume", likely.Litres(), 1.923, 2e-4)

	// Published: corrosionpedia.com/definition/2294, 100 ft2 a gallon with 30 %
	// lost covers 70 ft2.
	const ft2 = 0.3048 * 0.3048
	dft := q.Length(1 / (100 * ft2PerGal))
	_, likely, _ = Needed(70*ft2, dft, 1, q.Range[q.Fraction]{Low: 0.70, High: 0.70}, 0)
	near(t, "gallons", float64(likely)/usGallon, 1, 1e-9)

	low, likely, high := Needed(1, 40*um, 0.40, q.Range[q.Fraction]{Low: 0.20, High: 0.50}, 20*ml)
	near(t, "low", low.Millilitres(), 100/0.50+20, 1e-9)
	near(t, "likely", likely.Millilitres(), 100/0.35+20, 1e-9)
	near(t, "high", high.Millilitres(), 100/0.20+20, 1e-9)
}

func TestNothingLands(t *testing.T) {
	_, likely, _ := Needed(1, 40*um, 0.40, q.Range[q.Fraction]{}, 0)
	if !math.IsInf(float64(likely), 1) {
		t.Errorf("needed = %v, want +Inf", likely)
	}
}

func TestBatches(t *testing.T) {
	for _, c := range []struct {
		total, cup q.Volume
		want       int
	}{
		{0, 600 * ml, 0}, {1 * ml, 600 * ml, 1}, {600 * ml, 600 * ml, 1}, {601 * ml, 600 * ml, 2},
		{3 * (0.1 + 0.2) * 1e-3, 0.3e-3, 3}, // a sliver over 900 mL
		{900 * ml, 0, 1},
	} {
		if got := Batches(c.total, c.cup); got != c.want {
			t.Errorf("Batches(%v mL, %v mL) = %d, want %d", c.total.Millilitres(), c.cup.Millilitres(), got, c.want)
		}
	}
}

// The steps of a mixing cup: common practice, no published source.
func TestRoundUp(t *testing.T) {
	for _, c := range []struct{ v, step, want float64 }{
		{0, 1, 0}, {0.2, 1, 1}, {17, 1, 17}, {49.2, 1, 50}, {50, 5, 50}, {51, 5, 55},
		{248, 5, 250}, {250, 5, 250}, {250.5, 10, 260}, {1204, 10, 1210},
	} {
		near(t, "step", Graduation(q.Volume(c.v*ml)).Millilitres(), c.step, 1e-9)
		near(t, "rounded", RoundUp(q.Volume(c.v*ml)).Millilitres(), c.want, 1e-9)
	}
}

func TestRoundUpProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := q.Volume(rapid.Float64Range(0, 5000).Draw(t, "mL") * ml)
		got := RoundUp(v)
		if over := got - v; over < -1e-12 || over > Graduation(v) {
			t.Errorf("RoundUp(%v) = %v, more than a step of %v away or below", v, got, Graduation(v))
		}
		if again := RoundUp(got); math.Abs(float64(again-got)) > 1e-15 {
			t.Errorf("RoundUp(RoundUp(%v)) = %v, want %v", v, again, got)
		}
	})
}
