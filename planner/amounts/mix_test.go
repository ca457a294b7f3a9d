package amounts

import (
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"pgregory.net/rapid"

	q "coatwright/quantity"
)

var clear = []Part{
	{Name: "base", Density: 990, Solids: 0.60, VOC: 400, Parts: 2},
	{Name: "hardener", Density: 1070, Solids: 0.70, VOC: 350, Parts: 1},
	{Name: "thinner", Density: 850, VOC: 850, Of: "base", Share: 0.10},
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
		{"base", 200 * ml, 0.198, 200 * ml, 0.198},
		{"hardener", 100 * ml, 0.107, 300 * ml, 0.305},
		{"thinner", 20 * ml, 0.017, 320 * ml, 0.322},
	}
	if diff := cmp.Diff(want, got, about[q.Volume](), about[q.Mass]()); diff != "" {
		t.Errorf("Pours (-want +got):\n%s", diff)
	}
}

// A share may be of a part that is itself a share.
func TestResolveShareOfShare(t *testing.T) {
	got, err := Resolve([]Part{
		{Name: "binder", Parts: 1}, {Name: "tint", Of: "binder", Share: 0.50}, {Name: "reducer", Of: "tint", Share: 0.20},
	})
	if err != nil {
		t.Fatal(err)
	}
	want := []float64{1 / 1.6, 0.5 / 1.6, 0.1 / 1.6}
	if diff := cmp.Diff(want, got, cmpopts.EquateApprox(1e-12, 0)); diff != "" {
		t.Errorf("Resolve (-want +got):\n%s", diff)
	}
}

func TestResolveRefuses(t *testing.T) {
	for _, c := range []struct {
		name  string
		parts []Part
		want  string
	}{
		{"no parts", nil,
			"the mix has nothing in it; expected at least one part above 0 parts"},
		{"all zero", []Part{{Name: "base"}, {Name: "thinner", Of: "base", Share: 0.1}},
			"the mix has nothing in it; expected at least one part above 0 parts"},
		{"nothing earlier", []Part{{Name: "thinner", Of: "base", Share: 0.1}, {Name: "base", Parts: 1}},
			`part 1 of the mix, "thinner": found a share of "base"; expected the first part in parts by volume`},
		{"misspelt", []Part{{Name: "base", Parts: 1}, {Name: "thinner", Of: "bsae", Share: 0.1}},
			`part 2 of the mix, "thinner": found a share of "bsae"; expected an earlier part: base; did you mean "base"?`},
		{"of itself", []Part{{Name: "base", Parts: 1}, {Name: "thinner", Of: "thinner", Share: 0.1}},
			`part 2 of the mix, "thinner": found a share of "thinner"; expected an earlier part: base`},
		{"both", []Part{{Name: "base", Parts: 1}, {Name: "thinner", Parts: 2, Of: "base", Share: 0.1}},
			`part 2 of the mix, "thinner": found both 2 parts and 10 % of "base"; expected one of them`},
		{"twice", []Part{{Name: "base", Parts: 1}, {Name: "base", Parts: 2}},
			`part 2 of the mix, "base": poured twice; expected each part once`},
		{"negative", []Part{{Name: "base", Parts: -1}},
			`part 1 of the mix, "base": found -1; expected parts by volume, 0 or more`},
		{"not a number", []Part{{Name: "base", Parts: 1}, {Name: "thinner", Of: "base", Share: q.Fraction(math.NaN())}},
			`part 2 of the mix, "thinner": found NaN; expected a share of base, 0 or more`},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := Resolve(c.parts)
			if err == nil || err.Error() != c.want {
				t.Errorf("Resolve refuses with\n\t%v\nwant\n\t%s", err, c.want)
			}
		})
	}
}

func TestPoursRefusesVolume(t *testing.T) {
	for _, total := range []float64{-1, math.Inf(1), math.NaN()} {
		if _, err := Pours(clear, q.Volume(total)); err == nil {
			t.Errorf("Pours of %v m3 is no error", total)
		}
	}
}

// Worked by hand: (2 x 0.60 + 1 x 0.70)/3.2.
func TestSolidsOfMix(t *testing.T) {
	got, err := SolidsOfMix(clear)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "solids", float64(got), 1.9/3.2, 1e-12)
}

// Published: finishing guidebook 2013, appendix B. In the second example the
// water is left out, as its figure is "less water".
func TestVOCOfMix(t *testing.T) {
	for _, c := range []struct {
		name      string
		parts     []Part
		want      float64 // lb/US gal
		tolerance float64
	}{
		{"thinned", []Part{{Name: "paint", Parts: 1, VOC: 2.5 * poundGal}, {Name: "thinner", Parts: 0.25, VOC: 6.8 * poundGal}}, 3.36, 1e-9},
		{"two components", []Part{{Name: "a", Parts: 3, VOC: 3.1 * poundGal}, {Name: "b", Parts: 1, VOC: 1.8 * poundGal}}, 2.75, 0.01},
	} {
		got, err := VOCOfMix(c.parts)
		if err != nil {
			t.Fatal(err)
		}
		near(t, c.name, float64(got)/poundGal, c.want, c.tolerance)
	}
}

// anyMix draws a mix whose first part is always in parts.
func anyMix(t *rapid.T) []Part {
	names := []string{"a", "b", "c", "d"}
	parts := make([]Part, rapid.IntRange(1, len(names)).Draw(t, "count"))
	for i := range parts {
		parts[i] = Part{Name: names[i], Density: q.Density(rapid.Float64Range(700, 2000).Draw(t, "density"))}
		if i > 0 && rapid.Bool().Draw(t, "share") {
			parts[i].Of = names[rapid.IntRange(0, i-1).Draw(t, "of")]
			parts[i].Share = q.Fraction(rapid.Float64Range(0, 2).Draw(t, "share of it"))
		} else {
			parts[i].Parts = rapid.Float64Range(0.01, 100).Draw(t, "parts")
		}
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
		same := func(what string, got, want float64) {
			if math.Abs(got-want) > 1e-9*(math.Abs(want)+float64(total)) {
				t.Errorf("%s: %v, want %v", what, got, want)
			}
		}
		byName := map[string]Pour{}
		var volume q.Volume
		var mass q.Mass
		for i, p := range pours {
			if p.Volume < 0 || p.Mark < volume || p.MarkMass < mass {
				t.Errorf("marks fall at %s: %+v", p.Name, pours)
			}
			volume, mass, byName[p.Name] = volume+p.Volume, mass+p.Mass, p
			same("mark", float64(p.Mark), float64(volume))
			same("mass mark", float64(p.MarkMass), float64(mass))
			same("mass", float64(p.Mass), float64(p.Volume)*float64(parts[i].Density))
			if of := parts[i].Of; of != "" {
				same("share", float64(p.Volume), float64(byName[of].Volume)*float64(parts[i].Share))
			} else {
				same("ratio", float64(p.Volume)*parts[0].Parts, float64(pours[0].Volume)*parts[i].Parts)
			}
		}
		same("total", float64(volume), float64(total))
	})
}

func BenchmarkPours(b *testing.B) {
	for b.Loop() {
		if _, err := Pours(clear, 320*ml); err != nil {
			b.Fatal(err)
		}
	}
}
