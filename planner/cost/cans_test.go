package cost

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/govalues/decimal"
	"pgregory.net/rapid"

	q "coatwright/quantity"
)

func cans(t testing.TB, sizes ...string) []Can {
	t.Helper()
	var out []Can
	for _, s := range sizes {
		volume, price, _ := strings.Cut(s, " for ")
		v, err := q.Parse[q.Volume](volume)
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, Can{v, mustMoney(t, price)})
	}
	return out
}

func says(stacks []Stack) string {
	var out []string
	for _, s := range stacks {
		out = append(out, fmt.Sprintf("%d × %.4g mL", s.Count, s.Can.Size.Millilitres()))
	}
	return strings.Join(out, ", ")
}

// Worked by hand.
func TestCheapest(t *testing.T) {
	usual := cans(t, "250 mL for 10.20 EUR", "500 mL for 17.50 EUR", "1 L for 29.90 EUR")
	for _, c := range []struct {
		name  string
		need  q.Volume
		sizes []Can
		want  string
	}{
		{"nothing", 0, usual, ""},
		{"one drop", 1e-9, usual, "1 × 250 mL"},
		{"just a can", 250e-6, usual, "1 × 250 mL"},
		{"a drop over", 250.001e-6, usual, "1 × 500 mL"},
		{"two for 27.70", 750e-6, usual, "1 × 500 mL, 1 × 250 mL"},
		{"29.90, where smaller ones are 35", 800e-6, usual, "1 × 1000 mL"},
		{"47.40, where large ones are 59.80", 1.3e-3, usual, "1 × 1000 mL, 1 × 500 mL"},
		{"a small one is dearer than a large one", 100e-6, cans(t, "100 mL for 9 EUR", "1 L for 8 EUR"), "1 × 1000 mL"},
		{"the same money, less left over", 600e-6, cans(t, "1 L for 20 EUR", "300 mL for 10 EUR"), "2 × 300 mL"},
		{"US sizes", 2.4 * 946.352946e-6, cans(t, "1 US pt for 12 USD", "1 US qt for 20 USD", "1 US gal for 60 USD"), "2 × 946.4 mL, 1 × 473.2 mL"},
		{"for nothing", 1.1e-3, cans(t, "1 L for 0 EUR"), "2 × 1000 mL"},
		{"sizes without a common step", 2.9e-3, cans(t, "0.9997 L for 10 EUR", "0.50003 L for 6 EUR"), "3 × 999.7 mL"},
		{"many steps", 95e-3, cans(t, "1 L for 10 EUR", "1.0001 mL for 0.02 EUR"), "95 × 1000 mL"},
		{"a size below a step", 4.7, cans(t, "50 L for 10 EUR", "1.0001 mL for 0.02 EUR"), "94 × 5e+04 mL"},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, err := Cheapest(c.need, c.sizes)
			if err != nil || says(got) != c.want {
				t.Errorf("%g mL are %s, %v, want %s", c.need.Millilitres(), says(got), err, c.want)
			}
		})
	}
}

func TestCheapestRefuses(t *testing.T) {
	litre := cans(t, "1 L for 10 EUR")
	for _, c := range []struct {
		need  q.Volume
		sizes []Can
		want  string
	}{
		{1e-3, nil, "found no sizes of cans; expected one or more"},
		{-1e-3, litre, "found a need of -1000 mL; expected 0 or more"},
		{q.Volume(math.NaN()), litre, "found a need of NaN mL; expected 0 or more"},
		{q.Volume(math.Inf(1)), litre, "found a need of +Inf mL; expected 0 or more"},
		{1e-3, []Can{{Size: 0}}, "found a can of 0 mL; expected 1 mL to 1 m3"},
		{1e-3, []Can{{Size: 2}}, "found a can of 2e+06 mL; expected 1 mL to 1 m3"},
		{1e-3, append(cans(t, "1 L for 10 USD"), litre...), "found cans priced in USD and in EUR; expected one currency"},
		{0.11, litre, "found a need of 110 L with cans of 1 L at most; expected no more than 100 of them"},
	} {
		_, err := Cheapest(c.need, c.sizes)
		if err == nil || err.Error() != c.want {
			t.Errorf("error is\n\t%v\nwant\n\t%s", err, c.want)
		}
	}
}

func TestCheapestRefusesOverflow(t *testing.T) {
	dear := []Can{{1e-3, Money{decimal.MustNew(9e18, 0), "EUR"}}}
	if got, err := Cheapest(2e-3, dear); err == nil {
		t.Errorf("twice all the money that can be reckoned with buys %s", says(got))
	}
}

// Against every choice of up to six cans of each size.
func TestCheapestIsCheapest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		sizes := make([]Can, rapid.IntRange(1, 3).Draw(t, "sizes"))
		for i := range sizes {
			sizes[i] = Can{
				Size:  q.Volume(rapid.IntRange(1, 12).Draw(t, "size")) * 50e-6,
				Price: Money{Amount: decimal.MustNew(rapid.Int64Range(0, 5000).Draw(t, "price"), 2)},
			}
		}
		need := q.Volume(rapid.IntRange(1, 300).Draw(t, "need")) * 1e-6
		got, err := Cheapest(need, sizes)
		if err != nil {
			t.Fatal(err)
		}
		cost, volume := totals(t, got)
		if volume < need*(1-1e-6) {
			t.Fatalf("%s cover %v m3, needed is %v", says(got), volume, need)
		}
		for choice := range 7 * 7 * 7 {
			other := []Stack{{sizes[0], choice % 7}}
			for i, n := range []int{choice / 7 % 7, choice / 49} {
				if i+1 < len(sizes) {
					other = append(other, Stack{sizes[i+1], n})
				}
			}
			otherCost, otherVolume := totals(t, other)
			if otherVolume < need*(1-1e-9) {
				continue
			}
			if c := otherCost.Cmp(cost); c < 0 || c == 0 && otherVolume < volume*(1-1e-6) {
				t.Errorf("%s for %s and %v m3, but %s for %s and %v m3", says(got), cost, volume, says(other), otherCost, otherVolume)
			}
		}
	})
}

// Of sizes without a common step, too, the cans cover the need, and none of them can
// be left.
func TestNoCanTooMany(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		sizes := make([]Can, rapid.IntRange(1, 3).Draw(t, "sizes"))
		for i := range sizes {
			sizes[i] = Can{
				Size:  q.Volume(rapid.Float64Range(0.2e-3, 1e-3).Draw(t, "size")),
				Price: Money{Amount: decimal.MustNew(rapid.Int64Range(0, 5000).Draw(t, "price"), 2)},
			}
		}
		need := q.Volume(rapid.Float64Range(0, 5e-3).Draw(t, "need"))
		got, err := Cheapest(need, sizes)
		if err != nil {
			t.Fatal(err)
		}
		_, volume := totals(t, got)
		if volume < need*(1-1e-6) {
			t.Errorf("%s cover %v m3, needed is %v", says(got), volume, need)
		}
		for _, s := range got {
			if volume-s.Can.Size >= need {
				t.Errorf("of %s one of %v m3 can be left, needed is %v", says(got), s.Can.Size, need)
			}
		}
	})
}

func totals(t *rapid.T, stacks []Stack) (decimal.Decimal, q.Volume) {
	cost, volume := decimal.Zero, q.Volume(0)
	for _, s := range stacks {
		var err error
		if cost, err = cost.AddMul(s.Can.Price.Amount, decimal.MustNew(int64(s.Count), 0)); err != nil {
			t.Fatal(err)
		}
		volume += s.Can.Size * q.Volume(s.Count)
	}
	return cost, volume
}

func BenchmarkCheapest(b *testing.B) {
	sizes := cans(b, "250 mL for 10.20 EUR", "500 mL for 17.50 EUR", "1 L for 29.90 EUR", "5 L for 130 EUR")
	for b.Loop() {
		if _, err := Cheapest(7.3e-3, sizes); err != nil {
			b.Fatal(err)
		}
	}
}

// The most steps that there can be.
func BenchmarkCheapestWithoutCommonStep(b *testing.B) {
	sizes := cans(b, "0.9997 L for 10 EUR", "0.50003 L for 6 EUR")
	for b.Loop() {
		if _, err := Cheapest(2.9e-3, sizes); err != nil {
			b.Fatal(err)
		}
	}
}
