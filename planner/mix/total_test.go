package mix

import (
	"testing"

	"pgregory.net/rapid"

	q "coatwright/quantity"
)

// Published: a gallon of paint at 4:1:1 takes 32 fl oz of reducer, and at 3:1:1
// about 42.7 (ehow.com/how_7878930_mix-singlestage-paint.html).
func TestTotalFor(t *testing.T) {
	for ratio, want := range map[string]float64{"4:1:1": 32, "3:1:1": 42.7} {
		parts, err := ParseRatio(ratio, OfFirst)
		if err != nil {
			t.Fatal(err)
		}
		total, err := TotalFor(parts, "A", usGallon)
		if err != nil {
			t.Fatal(err)
		}
		pours, err := Pours(parts, total)
		if err != nil {
			t.Fatal(err)
		}
		near(t, ratio, float64(pours[1].Volume)/ounce, want, 1e-3)
	}
}

func TestTotalForRefuses(t *testing.T) {
	for _, c := range []struct {
		name   string
		amount q.Volume
		want   string
	}{
		{"bsae", 1, `found "bsae"; expected a part of the mix: base, none; did you mean "base"?`},
		{"none", 1, `part 2 of the mix, "none": the mix takes none of it; expected a part that it takes`},
		{"base", -1, `part 1 of the mix, "base": found -1; expected a volume, 0 or more`},
	} {
		_, err := TotalFor([]Part{{Name: "base", Parts: 1}, {Name: "none"}}, c.name, c.amount)
		if err == nil || err.Error() != c.want {
			t.Errorf("TotalFor refuses with\n\t%v\nwant\n\t%s", err, c.want)
		}
	}
}

// Worked by hand: 2 to 1 with 10 % of the base, 3.2 parts in all.
func TestMost(t *testing.T) {
	for _, c := range []struct {
		name string
		left map[string]q.Volume
		cup  q.Volume
		want float64
		by   string
	}{
		{"130 mL of base", map[string]q.Volume{"base": 130 * ml}, 0, 208, "base"},
		{"and little hardener", map[string]q.Volume{"base": 130 * ml, "hardener": 50 * ml}, 0, 160, "hardener"},
		{"and a cup", map[string]q.Volume{"base": 130 * ml, "hardener": 50 * ml}, 150 * ml, 150, ""},
		{"a cup alone", nil, 600 * ml, 600, ""},
		{"none of the base", map[string]q.Volume{"base": 0}, 600 * ml, 0, "base"},
	} {
		got, err := Most(clear, c.left, c.cup)
		if err != nil {
			t.Fatal(err)
		}
		near(t, c.name, got.Total.Millilitres(), c.want, 1e-9)
		if got.By != c.by {
			t.Errorf("%s: by %q, want %q", c.name, got.By, c.by)
		}
	}
	for name, left := range map[string]map[string]q.Volume{"no limit": nil, "misspelt": {"bsae": 1}, "below nothing": {"base": -1}} {
		if got, err := Most(clear, left, 0); err == nil {
			t.Errorf("%s: %+v is no error", name, got)
		}
	}
	if _, err := Most(clear, nil, -1); err == nil {
		t.Error("a cup below nothing is no error")
	}
}

// The most takes no more than is left of any part, and all of what limits it.
func TestMostUsesUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		parts := anyMix(t)
		left := map[string]q.Volume{}
		for _, p := range parts {
			if rapid.Bool().Draw(t, "known") {
				left[p.Name] = q.Volume(rapid.Float64Range(1e-6, 1e-3).Draw(t, "left"))
			}
		}
		size := q.Volume(rapid.Float64Range(1e-6, 1e-3).Draw(t, "size"))
		most, err := Most(parts, left, size)
		if err != nil {
			t.Fatal(err)
		}
		pours, err := Pours(parts, most.Total)
		if err != nil {
			t.Fatal(err)
		}
		if most.Total > size {
			t.Errorf("%v in a cup of %v", most.Total, size)
		}
		for _, p := range pours {
			if v, known := left[p.Name]; known && p.Volume > v*(1+1e-9) {
				t.Errorf("%v of %s, and %v is left", p.Volume, p.Name, v)
			}
			if p.Name == most.By {
				near(t, "what limits", float64(p.Volume), float64(left[p.Name]), 1e-9)
				total, err := TotalFor(parts, p.Name, p.Volume)
				if err != nil {
					t.Fatal(err)
				}
				near(t, "total for it", float64(total), float64(most.Total), 1e-9)
			}
		}
	})
}
