package mix

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	q "coatwright/quantity"
)

// common is a mixing cup with lines at 1 mL to 50 mL, at 5 mL to 250 mL and at
// 10 mL above: common practice, no published source.
var common = Cup{{50 * ml, 1 * ml}, {250 * ml, 5 * ml}, {5000 * ml, 10 * ml}}

func TestCup(t *testing.T) {
	odd := Cup{{50 * ml, 20 * ml}, {90 * ml, 25 * ml}} // lines at 20, 40, 50, 75, 90, 100, 125
	for _, c := range []struct {
		name                        string
		cup                         Cup
		v, step, down, nearest, up_ float64
	}{
		{"empty", common, 0, 1, 0, 0, 0},
		{"a drop", common, 0.2, 1, 0, 0, 1},
		{"on a line", common, 17, 1, 17, 17, 17},
		{"below 50", common, 49.2, 1, 49, 49, 50},
		{"at 50", common, 50, 1, 50, 50, 50},
		{"above 50", common, 51, 5, 50, 50, 55},
		{"half way", common, 52.5, 5, 50, 55, 55},
		{"below 250", common, 248, 5, 245, 250, 250},
		{"at 250", common, 250, 5, 250, 250, 250},
		{"above 250", common, 250.5, 10, 250, 250, 260},
		{"litres", common, 1204, 10, 1200, 1200, 1210},
		{"above the last line", common, 5004, 10, 5000, 5000, 5010},
		{"up to where spans meet", odd, 47, 20, 40, 50, 50},
		{"from where spans meet", odd, 60, 25, 50, 50, 75},
		{"up to the last line", odd, 84, 25, 75, 90, 90},
		{"lines that go on", odd, 101, 25, 100, 100, 125},
		{"no lines", nil, 47.3, 0, 47.3, 47.3, 47.3},
	} {
		t.Run(c.name, func(t *testing.T) {
			v := q.Volume(c.v * ml)
			near(t, "step", c.cup.Step(v).Millilitres(), c.step, 1e-9)
			near(t, "down", c.cup.Down(v).Millilitres(), c.down, 1e-9)
			near(t, "nearest", c.cup.Nearest(v).Millilitres(), c.nearest, 1e-9)
			near(t, "up", c.cup.Up(v).Millilitres(), c.up_, 1e-9)
		})
	}
}

// anyCup draws a cup whose lines stand farther apart the higher they are.
func anyCup(t *rapid.T) Cup {
	var c Cup
	upTo, every := 0.0, 0.1
	for range rapid.IntRange(1, 4).Draw(t, "spans") {
		every *= rapid.SampledFrom([]float64{1, 2, 2.5, 5, 10}).Draw(t, "every")
		upTo += every * float64(rapid.IntRange(1, 60).Draw(t, "lines"))
		c = append(c, Graduation{q.Volume(upTo * ml), q.Volume(every * ml)})
	}
	return c
}

// lines are all lines of c to above v, found one by one.
func lines(c Cup, v q.Volume) []float64 {
	at := []float64{0}
	var from float64
	for i, g := range c {
		for n := math.Floor(from/float64(g.Every)) + 1; n*float64(g.Every) < float64(g.UpTo)*(1-1e-9); n++ {
			at = append(at, n*float64(g.Every))
		}
		at, from = append(at, float64(g.UpTo)), float64(g.UpTo)
		for n := math.Floor(from/float64(g.Every)) + 1; i == len(c)-1 && at[len(at)-1] < float64(v); n++ {
			at = append(at, n*float64(g.Every))
		}
	}
	return at
}

func TestCupAgainstItsLines(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := anyCup(t)
		v := q.Volume(rapid.Float64Range(0.001, 1.2).Draw(t, "of the last line")) * c[len(c)-1].UpTo
		down, up := math.Inf(-1), math.Inf(1)
		for _, l := range lines(c, v) {
			if l <= float64(v)*(1+1e-9) {
				down = max(down, l)
			}
			if l >= float64(v)*(1-1e-9) {
				up = min(up, l)
			}
		}
		near(t, "down", float64(c.Down(v)), down, 1e-8)
		near(t, "up", float64(c.Up(v)), up, 1e-8)
		got := c.Nearest(v)
		if away := math.Abs(float64(got - v)); away > float64(c.Step(v))/2*(1+1e-6) {
			t.Errorf("Nearest(%v) = %v, more than half a step of %v away", v, got, c.Step(v))
		}
		near(t, "nearest again", float64(c.Nearest(got)), float64(got), 1e-9)
	})
}

// Worked by hand: 320 mL by 5 mL to 250 and 10 above, and by a scale of 5 g.
func TestReadings(t *testing.T) {
	pours, err := Pours(clear, 324*ml) // 202.5, 101.25 and 20.25 mL
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range []struct{ mark, pour, off, worst float64 }{
		{205, 205, 2.5 / 202.5, 2.5 / 202.5},
		{300, 95, -6.25 / 101.25, (2.5 + 5) / 101.25},
		{320, 20, -0.25 / 20.25, (5 + 5) / 20.25},
	} {
		got := ByCup(pours, common)[i]
		near(t, "mark", got.Mark.Millilitres(), want.mark, 1e-9)
		near(t, "pour", got.Pour.Millilitres(), want.pour, 1e-9)
		near(t, "off", float64(got.Off), want.off, 1e-9)
		near(t, "worst", float64(got.Worst), want.worst, 1e-9)
	}
	// 200.475, 108.3375 and 17.2125 g, marks at 200.475, 308.8125 and 326.025.
	for i, want := range []struct{ mark, pour, off, worst float64 }{
		{200, 200, 200/200.475 - 1, 2.5 / 200.475},
		{310, 110, 110/108.3375 - 1, 5 / 108.3375},
		{325, 15, 15/17.2125 - 1, 5 / 17.2125},
	} {
		got := ByScale(pours, Scale{5 * gram})[i]
		near(t, "mark", got.Mark.Grams(), want.mark, 1e-9)
		near(t, "pour", got.Pour.Grams(), want.pour, 1e-9)
		near(t, "off", float64(got.Off), want.off, 1e-9)
		near(t, "worst", float64(got.Worst), want.worst, 1e-9)
	}
	far, ok := Farthest(ByScale(pours, Scale{5 * gram}))
	if !ok || far.Name != "thinner" {
		t.Errorf("Farthest = %+v, want the thinner", far)
	}
}

func TestScaleShows(t *testing.T) {
	for _, c := range []struct{ grams, step, want float64 }{{198.4, 1, 198}, {198.5, 1, 199}, {198.46, 0.1, 198.5}, {198.46, 0, 198.46}} {
		near(t, "shown", Scale{q.Mass(c.step * gram)}.Nearest(q.Mass(c.grams*gram)).Grams(), c.want, 1e-9)
	}
}

// Published: 10 mL in a cylinder with lines at 0.1 mL is read to 0.05 mL
// (nobel.scas.bcit.ca/chem0010/equipment/gradCylinder.htm); a 100 mL one with
// lines at 1 mL to 0.5 mL (hotelsabruzzo.com/what-is-the-uncertainty-of-graduated-cylinder).
func TestReadingToHalfADivision(t *testing.T) {
	for _, c := range []struct{ size, every, want float64 }{{10, 0.1, 0.05}, {100, 1, 0.5}} {
		pours, err := Pours([]Part{{Name: "water", Parts: 1}}, q.Volume(c.size*ml))
		if err != nil {
			t.Fatal(err)
		}
		r := ByCup(pours, Cup{{q.Volume(c.size * ml), q.Volume(c.every * ml)}})[0]
		near(t, "uncertainty", float64(r.Worst)*c.size, c.want, 1e-9)
	}
}

// A pour lies between two readings that are each rounded to the step d, so that
// over many totals its error spreads by 0.41 d: USP general chapter 41 takes
// this as the least repeatability of a balance (from memory).
func TestRoundingSpreadsAsABalance(t *testing.T) {
	var squares float64
	const count = 20000
	for i := range count {
		pours, err := Pours(clear, q.Volume(300+float64(i)*math.Pi)*ml)
		if err != nil {
			t.Fatal(err)
		}
		r := ByScale(pours, Scale{1 * gram})[1]
		off := float64(r.Off) * pours[1].Mass.Grams()
		squares += off * off
	}
	near(t, "spread", math.Sqrt(squares/count), 0.41, 0.01)
}

func TestReadingsOfNothing(t *testing.T) {
	noDensity := []Part{{Name: "base", Parts: 1}}
	pours, err := Pours(noDensity, 10*ml)
	if err != nil {
		t.Fatal(err)
	}
	if got := ByScale(pours, Scale{1 * gram}); got != nil {
		t.Errorf("readings of unknown masses: %+v", got)
	}
	if got := ByCup(nil, common); got != nil {
		t.Errorf("readings of no pours: %+v", got)
	}
	if _, ok := Farthest([]Reading[q.Mass]{}); ok {
		t.Error("a farthest of no readings")
	}
	// A part that the recipe leaves out, and a pour too small for the scale.
	pours, err = Pours([]Part{{Name: "base", Density: 1000, Parts: 1}, {Name: "none", Density: 1000}, {Name: "drop", Density: 1000, Of: "base", Share: 1e-3}}, 10.01*ml)
	if err != nil {
		t.Fatal(err)
	}
	got := ByScale(pours, Scale{1 * gram})
	if r := got[1]; r.Pour != 0 || r.Off != 0 || r.Worst != 0 {
		t.Errorf("nothing is read as %+v", r)
	}
	if r := got[2]; r.Pour != 0 || r.Off != -1 {
		t.Errorf("a drop is read as %+v", r)
	}
}

func TestReadingsProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		parts := anyMix(t)
		pours, err := Pours(parts, q.Volume(rapid.Float64Range(1e-6, 1e-2).Draw(t, "total")))
		if err != nil {
			t.Fatal(err)
		}
		c := anyCup(t)
		scale := Scale{q.Mass(rapid.SampledFrom([]float64{0, 0.01, 0.1, 1, 5}).Draw(t, "scale") * gram)}
		byCup, byScale := ByCup(pours, c), ByScale(pours, scale)
		var volume, mass float64
		for i, p := range pours {
			checkReading(t, byCup[i], float64(p.Volume), float64(c.Step(p.Mark)))
			checkReading(t, byScale[i], float64(p.Mass), float64(scale.Resolution))
			volume, mass = volume+float64(byCup[i].Pour), mass+float64(byScale[i].Pour)
			near(t, "lines add up", volume, float64(byCup[i].Mark), 1e-9)
			near(t, "grams add up", mass, float64(byScale[i].Mark), 1e-9)
		}
	})
}

// checkReading: a mark is at most half a step away, and a pour at most by Worst.
func checkReading[Q q.Quantity](t *rapid.T, r Reading[Q], of, step float64) {
	if away := math.Abs(float64(r.Mark - r.Exact)); away > step/2*(1+1e-6)+1e-15 {
		t.Errorf("%s: the mark is %v away, at a step of %v", r.Name, away, step)
	}
	if math.Abs(float64(r.Off)) > float64(r.Worst)*(1+1e-6)+1e-9 {
		t.Errorf("%s is off by %v, more than the worst, %v", r.Name, r.Off, r.Worst)
	}
	if !(math.Abs(float64(r.Pour)-of*(1+float64(r.Off))) <= 1e-12) {
		t.Errorf("%s pours %v for %v, and is off by %v", r.Name, r.Pour, of, r.Off)
	}
}

// Published: minimum weighable quantity = sensitivity x 100 %/error %, so 6 mg at
// 5 % is 120 mg, 10 mg at 5 % is 200 mg, 2.5 mg at 3 % is 83.3 mg
// (pharmacalculation.com/2024/01), and 6 mg at 1 % is 600 mg
// (basicmedicalkey.com/accurate-weighing-for-prescriptions). The step of a scale
// stands for the sensitivity: it is what a pour between two readings may be off.
func TestLeastIsMinimumWeighableQuantity(t *testing.T) {
	thirds := []Part{{Name: "a", Parts: 1, ByMass: true}, {Name: "b", Parts: 1, ByMass: true}, {Name: "c", Parts: 1, ByMass: true}}
	for _, c := range []struct {
		milligrams, percent, want float64
	}{{6, 5, 120}, {10, 5, 200}, {2.5, 3, 83.3}, {6, 1, 600}} {
		got, err := LeastByScale(thirds, Scale{q.Mass(c.milligrams * 1e-6)}, q.Fraction(c.percent/100))
		if err != nil {
			t.Fatal(err)
		}
		near(t, "least", float64(got.Total)/3*1e6, c.want, 1e-3)
	}
}

// Worked by hand. The thinner is 1/16 of the volume. By lines of 1 mL and within
// 10 % it must be 10 mL, and so the mix 160 mL; but from 50 mL on the lines are
// 5 mL apart, so 50 mL, and 800 mL; there they are 10 mL apart.
func TestLeast(t *testing.T) {
	for _, c := range []struct {
		name   string
		cup    Cup
		within q.Fraction
		want   float64
		part   string
	}{
		{"one step", Cup{{50 * ml, 1 * ml}}, 0.10, 160, "thinner"},
		{"a common cup", common, 0.10, 1600, "thinner"},
		{"before the lines get coarse", common, 0.40, 40, "thinner"},
		{"exact", nil, 0.02, 0, ""},
	} {
		got, err := LeastByCup(clear, c.cup, c.within)
		if err != nil {
			t.Fatal(err)
		}
		near(t, c.name, got.Total.Millilitres(), c.want, 1e-9)
		if got.Part != c.part {
			t.Errorf("%s: set by %q, want %q", c.name, got.Part, c.part)
		}
	}
	for _, within := range []float64{0, -0.1, math.NaN(), math.Inf(1)} {
		if _, err := LeastByCup(clear, common, q.Fraction(within)); err == nil {
			t.Errorf("least within %v is no error", within)
		}
	}
	_, err := LeastByScale(clear, Scale{1 * gram}, 0)
	if want := "found 0 % as what a pour may be off; expected a share above 0 %, such as 2 %"; err == nil || err.Error() != want {
		t.Errorf("least within 0 refuses with %v, want %s", err, want)
	}
}

// mostOff is the worst of all readings.
func mostOff[Q q.Quantity](readings []Reading[Q]) float64 {
	var most float64
	for _, r := range readings {
		most = max(most, float64(r.Worst))
	}
	return most
}

// The least total is good enough, and none below it is: LeastByCup and
// LeastByScale are the inverse of what ByCup and ByScale say.
func TestLeastIsTheInverse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		parts, c := anyMix(t), anyCup(t)
		within := rapid.Float64Range(0.005, 1.5).Draw(t, "within")
		least, err := LeastByCup(parts, c, q.Fraction(within))
		if err != nil {
			t.Fatal(err)
		}
		worst := func(total q.Volume) float64 {
			pours, err := Pours(parts, total)
			if err != nil {
				t.Fatal(err)
			}
			return mostOff(ByCup(pours, c))
		}
		if got := worst(least.Total); got > within*(1+1e-6) {
			t.Errorf("the least total is off by %v, more than %v", got, within)
		}
		smaller := least.Total * q.Volume(rapid.Float64Range(0.001, 1-1e-6).Draw(t, "smaller"))
		if got := worst(smaller); got <= within {
			t.Errorf("%v, which is less than %v, is off by %v only", smaller, least.Total, got)
		}

		scale := Scale{q.Mass(rapid.Float64Range(0.01, 5).Draw(t, "scale") * gram)}
		lightest, err := LeastByScale(parts, scale, q.Fraction(within))
		if err != nil {
			t.Fatal(err)
		}
		pours, err := PoursOfMass(parts, lightest.Total)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "worst by the scale", mostOff(ByScale(pours, scale)), within, 1e-9)
	})
}

// A cup whose lines get finer further up, as no real one does, has its least
// total where they do.
func TestLeastWhereLinesGetFiner(t *testing.T) {
	c := Cup{{100 * ml, 50 * ml}, {500 * ml, 1 * ml}}
	got, err := LeastByCup([]Part{{Name: "a", Parts: 1}}, c, 0.02)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "least", got.Total.Millilitres(), 100, 1e-6)
	if got := c.Step(got.Total).Millilitres(); got != 1 {
		t.Errorf("the step there is %v mL, want 1", got)
	}
}
