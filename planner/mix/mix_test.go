package mix

import (
	"fmt"
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	q "coatwright/quantity"
)

const (
	ml       = 1e-6                                          // m3
	gram     = 1e-3                                          // kg
	minute   = 60                                            // s
	hour     = 3600                                          // s
	usGallon = 231 * 0.0254 * 0.0254 * 0.0254                // m3
	ounce    = usGallon / 128                                // m3
	poundGal = 0.45359237 / (231 * 0.0254 * 0.0254 * 0.0254) // kg/m3
)

// clear is worked with throughout; the figures are made up.
var clear = []Part{
	{Name: "base", Density: 990, Solids: 0.60, Parts: 2},
	{Name: "hardener", Density: 1070, Solids: 0.70, Parts: 1, Into: []string{"base"}, Starts: true},
	{Name: "thinner", Density: 850, Of: "base", Share: 0.10, Range: q.Range[q.Fraction]{Low: 0.05, High: 0.15}, Thins: true},
}

// near fails unless got is within a share tolerance of want.
func near(t interface {
	Helper()
	Errorf(string, ...any)
}, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance*math.Abs(want)+1e-18) {
		t.Errorf("%s = %.9g, want %.9g within %g %%", what, got, want, 100*tolerance)
	}
}

// about compares quantities to a part in 1e12, as sums of fractions need.
func about[Q q.Quantity]() cmp.Option {
	return cmp.Comparer(func(a, b Q) bool { return math.Abs(float64(a-b)) <= 1e-12*math.Abs(float64(b)) })
}

// Worked by hand: 200 mL of base, 100 of hardener, a tenth of the base.
func TestPours(t *testing.T) {
	got, err := Pours(clear, 320*ml)
	if err != nil {
		t.Fatal(err)
	}
	want := []Pour{
		{"base", 200 * ml, 198 * gram, 200 * ml, 198 * gram, false},
		{"hardener", 100 * ml, 107 * gram, 300 * ml, 305 * gram, true},
		{"thinner", 20 * ml, 17 * gram, 320 * ml, 322 * gram, false},
	}
	if diff := cmp.Diff(want, got, about[q.Volume](), about[q.Mass]()); diff != "" {
		t.Errorf("Pours (-want +got):\n%s", diff)
	}
	byMass, err := PoursOfMass(clear, 322*gram)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(want, byMass, about[q.Volume](), about[q.Mass]()); diff != "" {
		t.Errorf("PoursOfMass (-want +got):\n%s", diff)
	}
}

// Published: a refinish painter's guide to ratios, 4:2:1: "pour the clear in to
// the 4 then the reducer in to the 6 then the hardener to the 7"
// (carpaint.blogspot.com/2006/12/mixing-paint-accurately.html).
func TestMarksAddUp(t *testing.T) {
	parts, err := ParseRatio("4:2:1", OfFirst)
	if err != nil {
		t.Fatal(err)
	}
	pours, err := Pours(parts, 7*ounce)
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range []float64{4, 6, 7} {
		near(t, pours[i].Name, float64(pours[i].Mark)/ounce, want, 1e-12)
	}
}

// Published: TM 55-1905-223-SDC 8-24, four parts to one: 400 g and 100 g are 500 g.
func TestPoursOfMassWithoutDensities(t *testing.T) {
	pours, err := PoursOfMass([]Part{{Name: "resin", Parts: 4, ByMass: true}, {Name: "hardener", Parts: 1, ByMass: true}}, 500*gram)
	if err != nil {
		t.Fatal(err)
	}
	want := []Pour{{Name: "resin", Mass: 400 * gram, MarkMass: 400 * gram}, {Name: "hardener", Mass: 100 * gram, MarkMass: 500 * gram}}
	if diff := cmp.Diff(want, pours, about[q.Mass]()); diff != "" {
		t.Errorf("PoursOfMass (-want +got):\n%s", diff)
	}
}

// Published: a recipe in parts by mass with the densities and the volume shares
// that follow (Wikipedia, "Parts per hundred rubber", de.zxc.wiki).
func TestSharesOfPartsByMass(t *testing.T) {
	rows := []struct{ parts, density, percent float64 }{
		{80, 1.1, 70.3}, {20, 0.95, 20.4}, {8, 1.9, 4.1}, {1, 0.99, 1.0}, {3, 1.3, 2.2}, {2, 0.95, 2.0},
	}
	var parts []Part
	for i, r := range rows {
		parts = append(parts, Part{Name: fmt.Sprint(i), Parts: r.parts, Density: q.Density(1000 * r.density), ByMass: true})
	}
	shares, err := Shares(parts)
	if err != nil {
		t.Fatal(err)
	}
	for i, r := range rows {
		if got := shares[i].Percent(); math.Abs(got-r.percent) > 0.05 {
			t.Errorf("part %d has %.3f %% of the volume, want %.1f", i, got, r.percent)
		}
	}
}

// Worked by hand, densities 1.0, 1.2 and 0.8 kg/L.
func TestSharesOfBothWays(t *testing.T) {
	base := Part{Name: "base", Density: 1000, Parts: 100}
	byMass := func(p Part) Part { p.ByMass = true; return p }
	hardener := Part{Name: "hardener", Density: 1200, Of: "base", Share: 0.60}
	thinner := Part{Name: "thinner", Density: 800, Of: "hardener", Share: 0.50}
	for _, c := range []struct {
		name  string
		parts []Part
		want  []float64 // volumes for 100 of base
	}{
		{"all by volume", []Part{base, hardener, thinner}, []float64{100, 60, 30}},
		{"a share by mass", []Part{base, byMass(hardener), thinner}, []float64{100, 50, 25}},
		{"shares by mass", []Part{base, byMass(hardener), byMass(thinner)}, []float64{100, 50, 37.5}},
		{"all by mass", []Part{byMass(base), byMass(hardener), byMass(thinner)}, []float64{100, 50, 37.5}},
		{"the whole after its share", []Part{thinner, hardener, base}, []float64{30, 60, 100}},
	} {
		t.Run(c.name, func(t *testing.T) {
			shares, err := Shares(c.parts)
			if err != nil {
				t.Fatal(err)
			}
			masses, err := MassShares(c.parts)
			if err != nil {
				t.Fatal(err)
			}
			var volume, mass float64
			for i, v := range c.want {
				volume, mass = volume+v, mass+v*float64(c.parts[i].Density)
			}
			for i, v := range c.want {
				near(t, c.parts[i].Name, float64(shares[i]), v/volume, 1e-12)
				near(t, c.parts[i].Name+" by mass", float64(masses[i]), v*float64(c.parts[i].Density)/mass, 1e-12)
			}
		})
	}
}

// A metallic to four parts, clear binder one part, 10 % thinner of the metallic;
// a candy of 30 % concentrate and 5 to 10 % thinner of the binder: common
// practice, no published source. The shares that follow are worked by hand.
func TestSharesInCommonPractice(t *testing.T) {
	for _, c := range []struct {
		name  string
		parts []Part
		want  []float64
	}{
		{"metallic", []Part{{Name: "metallic", Parts: 4}, {Name: "binder", Parts: 1}, {Name: "thinner", Of: "metallic", Share: 0.10}},
			[]float64{4 / 5.4, 1 / 5.4, 0.4 / 5.4}},
		{"candy for a gun", []Part{{Name: "binder", Parts: 100}, {Name: "concentrate", Of: "binder", Share: 0.30}, {Name: "thinner", Of: "binder", Share: 0.075}},
			[]float64{1 / 1.375, 0.30 / 1.375, 0.075 / 1.375}},
		{"candy for an airbrush", []Part{{Name: "binder", Parts: 100}, {Name: "concentrate", Of: "binder", Share: 0.50}, {Name: "thinner", Of: "binder", Share: 0.025}},
			[]float64{1 / 1.525, 0.50 / 1.525, 0.025 / 1.525}},
	} {
		shares, err := Shares(c.parts)
		if err != nil {
			t.Fatal(err)
		}
		for i, want := range c.want {
			near(t, c.name+": "+c.parts[i].Name, float64(shares[i]), want, 1e-12)
		}
	}
}

func TestSharesRefuse(t *testing.T) {
	nan := q.Fraction(math.NaN())
	for _, c := range []struct {
		name  string
		parts []Part
		want  string
	}{
		{"no parts", nil,
			"the mix has nothing in it; expected at least one part above 0 parts"},
		{"all zero", []Part{{Name: "base"}, {Name: "thinner", Of: "base", Share: 0.1}},
			"the mix has nothing in it; expected at least one part above 0 parts"},
		{"endless", []Part{{Name: "base", Parts: math.MaxFloat64}, {Name: "thinner", Parts: math.MaxFloat64}},
			"the mix has more parts than can be counted; expected a ratio in small numbers"},
		{"alone", []Part{{Name: "thinner", Of: "base", Share: 0.1}},
			`part 1 of the mix, "thinner": found a share of "base"; expected the only part in parts`},
		{"misspelt", []Part{{Name: "base", Parts: 1}, {Name: "thinner", Of: "bsae", Share: 0.1}},
			`part 2 of the mix, "thinner": found a share of "bsae"; expected another part: base; did you mean "base"?`},
		{"misspelt further on", []Part{{Name: "drier", Of: "thinner", Share: 0.1}, {Name: "thinner", Of: "bsae", Share: 0.1}, {Name: "base", Parts: 1}},
			`part 2 of the mix, "thinner": found a share of "bsae"; expected another part: drier, base; did you mean "base"?`},
		{"of itself", []Part{{Name: "base", Parts: 1}, {Name: "thinner", Of: "thinner", Share: 0.1}},
			`part 2 of the mix, "thinner": found a share of "thinner"; expected another part: base`},
		{"in a circle", []Part{{Name: "base", Parts: 1}, {Name: "a", Of: "b", Share: 0.1}, {Name: "b", Of: "c", Share: 0.1}, {Name: "c", Of: "b", Share: 0.1}},
			`part 4 of the mix, "c": found shares that go round in a circle: b of c of b; expected one of them in parts`},
		{"both", []Part{{Name: "base", Parts: 1}, {Name: "thinner", Parts: 2, Of: "base", Share: 0.1}},
			`part 2 of the mix, "thinner": found both 2 parts and 10 % of "base"; expected one of them`},
		{"of nothing", []Part{{Name: "base", Parts: 1, Share: 0.1}},
			`part 1 of the mix, "base": found a share of no part; expected the name of the part that it is a share of`},
		{"twice", []Part{{Name: "base", Parts: 1}, {Name: "base", Parts: 2}},
			`part 2 of the mix, "base": poured twice; expected each part once`},
		{"negative", []Part{{Name: "base", Parts: -1}},
			`part 1 of the mix, "base": found -1; expected parts by volume, 0 or more`},
		{"negative by mass", []Part{{Name: "base", Parts: -1, ByMass: true}},
			`part 1 of the mix, "base": found -1; expected parts by mass, 0 or more`},
		{"not a number", []Part{{Name: "base", Parts: 1}, {Name: "thinner", Of: "base", Share: nan}},
			`part 2 of the mix, "thinner": found NaN; expected a share of base, 0 or more`},
		{"a range turned round", []Part{{Name: "base", Parts: 1}, {Name: "thinner", Of: "base", Share: 0.1, Range: q.Range[q.Fraction]{Low: 0.2, High: 0.1}}},
			`part 2 of the mix, "thinner": found a range of 20 to 10 %; expected its low end first, 0 % or more`},
		{"a density below zero", []Part{{Name: "base", Parts: 1, Density: -1}},
			`part 1 of the mix, "base": found -1; expected a density, 0 or more`},
		{"parts of both ways", []Part{{Name: "base", Parts: 1}, {Name: "hardener", Parts: 1, ByMass: true}},
			`part 2 of the mix, "hardener": found parts by mass beside "base" in parts by volume; expected all of them one way`},
		{"no density", []Part{{Name: "base", Parts: 1, Density: 1000}, {Name: "hardener", Of: "base", Share: 0.5, ByMass: true}},
			`part 2 of the mix, "hardener": found no density of "hardener"; expected one, to go from parts by mass to parts by volume`},
		{"no density of the whole", []Part{{Name: "base", Parts: 1}, {Name: "hardener", Of: "base", Share: 0.5, ByMass: true, Density: 1000}},
			`part 2 of the mix, "hardener": found no density of "base"; expected one, to go from parts by volume to parts by mass`},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := Shares(c.parts)
			if err == nil || err.Error() != c.want {
				t.Errorf("Shares refuses with\n\t%v\nwant\n\t%s", err, c.want)
			}
		})
	}
}

// The pot life starts once, with the first part that starts it and is poured.
func TestPotLifeStartsOnce(t *testing.T) {
	pours, err := Pours([]Part{{Name: "base", Parts: 2}, {Name: "none", Starts: true}, {Name: "hardener", Parts: 1, Starts: true}, {Name: "drier", Parts: 1, Starts: true}}, 400*ml)
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range []bool{false, false, true, false} {
		if pours[i].Starts != want {
			t.Errorf("%s starts the pot life: %v, want %v", pours[i].Name, pours[i].Starts, want)
		}
	}
}

// What is wrong with a mix is wrong with all that is asked of it.
func TestWrongMixesAreRefusedThroughout(t *testing.T) {
	wrong := []Part{{Name: "base", Parts: 1}, {Name: "base", Parts: 1}}
	for name, err := range map[string]error{
		"Pours":        second(Pours(wrong, 1)),
		"PoursOfMass":  second(PoursOfMass(wrong, 1)),
		"Solids":       second(Solids(wrong)),
		"LeastByCup":   second(LeastByCup(wrong, common, 0.02)),
		"LeastByScale": second(LeastByScale(wrong, Scale{1}, 0.02)),
		"TotalFor":     second(TotalFor(wrong, "base", 1)),
		"Most":         second(Most(wrong, nil, 1)),
		"Correct":      second(Correct(wrong, volumes(1, 1), 0, 0)),
		"Rooms":        second(Rooms(wrong, volumes(1, 1))),
		"StrengthsOf":  second(StrengthsOf([]Part{{Name: "base"}, {Name: "thinner", Of: "base"}}, "thinner")),
	} {
		if err == nil {
			t.Errorf("%s of a wrong mix is no error", name)
		}
	}
}

func second[T any](_ T, err error) error { return err }

func TestPoursRefuseATotal(t *testing.T) {
	for _, total := range []float64{-1, math.Inf(1), math.NaN()} {
		if _, err := Pours(clear, q.Volume(total)); err == nil {
			t.Errorf("Pours of %v m3 is no error", total)
		}
		if _, err := PoursOfMass(clear, q.Mass(total)); err == nil {
			t.Errorf("PoursOfMass of %v kg is no error", total)
		}
	}
}

func TestMean(t *testing.T) {
	mean := func(parts []Part, values ...float64) float64 {
		t.Helper()
		numbers := make([]q.Number, len(values))
		for i, v := range values {
			numbers[i] = q.Number(v)
		}
		got, err := Mean(parts, numbers)
		if err != nil {
			t.Fatal(err)
		}
		return float64(got)
	}
	// Published: finishing guidebook 2013, appendix B: VOC in lb/US gal.
	near(t, "thinned", mean([]Part{{Name: "paint", Parts: 1}, {Name: "thinner", Parts: 0.25}}, 2.5*poundGal, 6.8*poundGal), 3.36*poundGal, 1e-9)
	near(t, "two components", mean([]Part{{Name: "a", Parts: 3}, {Name: "b", Parts: 1}}, 3.1*poundGal, 1.8*poundGal), 2.75*poundGal, 0.01)
	// Published: 3000 mL at 40 %, 1000 at 60 % and 1000 at 70 % make 50 %
	// (pharmanotes.org/2022/05/alligation-methods.html).
	near(t, "alcohol", mean([]Part{{Name: "a", Parts: 3000}, {Name: "b", Parts: 1000}, {Name: "c", Parts: 1000}}, 0.40, 0.60, 0.70), 0.50, 1e-12)

	if _, err := Mean(clear, []q.Number{1}); err == nil {
		t.Error("a value for one part of three is no error")
	}
}

// Worked by hand: (2 x 0.60 + 1 x 0.70)/3.2, and 322 g in 320 mL.
func TestSolidsAndDensity(t *testing.T) {
	solids, err := Solids(clear)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "solids", float64(solids), 1.9/3.2, 1e-12)
	density, err := Density(clear)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "density", float64(density), 322.0/320*1000, 1e-12)

	_, err = Density([]Part{{Name: "base", Parts: 1}})
	if want := `part 1 of the mix, "base": found no density; expected one, such as "1.2 kg/L"`; err == nil || err.Error() != want {
		t.Errorf("Density refuses with %v, want %s", err, want)
	}
}

// anyMix draws a mix that can be poured; the part in the root is in parts above 0.
func anyMix(t *rapid.T) []Part {
	names := []string{"a", "b", "c", "d", "e"}
	byMass := rapid.Bool().Draw(t, "parts by mass")
	parts := make([]Part, rapid.IntRange(1, len(names)).Draw(t, "count"))
	for i := range parts {
		p := Part{Name: names[i], Density: q.Density(rapid.Float64Range(700, 2000).Draw(t, "density"))}
		if i > 0 && rapid.Bool().Draw(t, "share") {
			p.Of = names[rapid.IntRange(0, i-1).Draw(t, "of")]
			p.Share = q.Fraction(rapid.Float64Range(0.01, 2).Draw(t, "share of it"))
			p.ByMass = rapid.Bool().Draw(t, "share by mass")
			if rapid.Bool().Draw(t, "ranged") {
				p.Range = q.Range[q.Fraction]{
					Low:  p.Share * q.Fraction(rapid.Float64Range(0, 1).Draw(t, "low")),
					High: p.Share * q.Fraction(rapid.Float64Range(1, 3).Draw(t, "high")),
				}
			}
		} else {
			p.Parts, p.ByMass = rapid.Float64Range(0.01, 100).Draw(t, "parts"), byMass
		}
		parts[i] = p
	}
	return parts
}

func TestPoursBalance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		parts := anyMix(t)
		total := q.Volume(rapid.Float64Range(1e-6, 1e-2).Draw(t, "total"))
		pours, err := Pours(parts, total)
		if err != nil {
			t.Fatal(err)
		}
		byName := map[string]Pour{}
		amount := func(p Pour, byMass bool) float64 {
			if byMass {
				return float64(p.Mass)
			}
			return float64(p.Volume)
		}
		var volume q.Volume
		var mass q.Mass
		for i, p := range pours {
			part := parts[i]
			if p.Volume < 0 || p.Mark < volume || p.MarkMass < mass {
				t.Errorf("marks fall at %s: %+v", p.Name, pours)
			}
			volume, mass, byName[p.Name] = volume+p.Volume, mass+p.Mass, p
			near(t, "mark", float64(p.Mark), float64(volume), 1e-9)
			near(t, "mass mark", float64(p.MarkMass), float64(mass), 1e-9)
			near(t, "mass", float64(p.Mass), float64(p.Volume)*float64(part.Density), 1e-9)
			if part.Of != "" {
				near(t, "share", amount(p, part.ByMass), amount(byName[part.Of], part.ByMass)*float64(part.Share), 1e-9)
			} else {
				near(t, "ratio", amount(p, part.ByMass)*parts[0].Parts, amount(pours[0], part.ByMass)*part.Parts, 1e-9)
			}
		}
		near(t, "total", float64(volume), float64(total), 1e-9)

		again, err := PoursOfMass(parts, mass)
		if err != nil {
			t.Fatal(err)
		}
		for i := range pours {
			near(t, "volume by way of mass", float64(again[i].Volume), float64(pours[i].Volume), 1e-9)
		}
		density, err := Density(parts)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "density", float64(density), float64(mass)/float64(volume), 1e-9)
	})
}
