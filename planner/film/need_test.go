package film

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	q "coatwright/quantity"
)

func lands(low, high q.Fraction) q.Range[q.Fraction] {
	return q.Range[q.Fraction]{Low: low, High: high}
}

func TestNeed(t *testing.T) {
	for _, c := range []struct {
		name              string
		order             Order
		low, likely, high float64 // mL mixed
		tolerance         float64
	}{
		// Worked independently: 10 m2, 50 um, 40 %, 65 % lands.
		{"one surface", Order{Surfaces: []Surface{{10, lands(0.65, 0.65)}}, Build: 50 * um, Coats: 1, Solids: 0.40, Cleanings: 1},
			1923, 1923, 1923, 2e-4},
		// Published: corrosionpedia.com/definition/2294, 100 ft2 a gallon with 30 %
		// lost covers 70 ft2.
		{"a gallon", Order{Surfaces: []Surface{{70 * ft2, lands(0.70, 0.70)}}, Build: 1 / (100 * ft2PerGal), Coats: 1, Solids: 1, Cleanings: 1},
			usGallon / ml, usGallon / ml, usGallon / ml, 1e-9},
		// Worked by hand: 1 m2, 40 um in two coats at 40 % is 100 mL on the part.
		{"small part", Order{Surfaces: []Surface{{1, lands(0.20, 0.50)}}, Build: 20 * um, Coats: 2, Solids: 0.40, Loss: 20 * ml, Cleanings: 1},
			100/0.50 + 20, 100/0.35 + 20, 100/0.20 + 20, 1e-9},
		{"two mixes, the gun cleaned between", Order{Surfaces: []Surface{{1, lands(0.20, 0.50)}}, Build: 20 * um, Coats: 2, Solids: 0.40, Loss: 20 * ml, Cleanings: 2},
			100/0.50 + 40, 100/0.35 + 40, 100/0.20 + 40, 1e-9},
		{"a lattice and a panel", Order{Surfaces: []Surface{{1, lands(0.20, 0.40)}, {2, lands(0.60, 0.70)}}, Build: 20 * um, Coats: 1, Solids: 0.40, Cleanings: 1},
			50/0.40 + 100/0.70, 50/0.30 + 100/0.65, 50/0.20 + 100/0.60, 1e-9},
		{"no coats", Order{Surfaces: []Surface{{1, lands(0.20, 0.50)}}, Build: 20 * um, Solids: 0.40, Loss: 20 * ml, Cleanings: 1}, 0, 0, 0, 0},
		{"no surface", Order{Build: 20 * um, Coats: 1, Solids: 0.40, Loss: 20 * ml, Cleanings: 1}, 0, 0, 0, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			n, err := c.order.Need()
			if err != nil {
				t.Fatal(err)
			}
			got := n.Mixed()
			near(t, "low", got.Low.Millilitres(), c.low, c.tolerance)
			near(t, "likely", got.Likely.Millilitres(), c.likely, c.tolerance)
			near(t, "high", got.High.Millilitres(), c.high, c.tolerance)
		})
	}
}

func TestNeedRefuses(t *testing.T) {
	good := func() Order {
		return Order{Surfaces: []Surface{{1, lands(0.2, 0.5)}}, Build: 20 * um, Coats: 2, Solids: 0.4, Cleanings: 1}
	}
	for _, c := range []struct {
		spoil func(o *Order)
		says  string
	}{
		{func(o *Order) { o.Solids = 0 }, "solids by volume of the mix: found 0 %; expected above 0 and up to 100 %"},
		{func(o *Order) { o.Solids = 1.5 }, "solids by volume of the mix: found 150 %; expected above 0 and up to 100 %"},
		{func(o *Order) { o.Build = 0 }, "dry film of one coat: found 0 um; expected above 0 um"},
		{func(o *Order) { o.Coats = -1 }, "coats: found -1; expected 0 or more"},
		{func(o *Order) { o.Loss = -1 * ml }, "what stays in cup and passages: found -1 mL; expected 0 mL or more"},
		{func(o *Order) { o.Cleanings = 0 }, "cleanings of the applicator: found 0; expected 1 or more"},
		{func(o *Order) { o.Surfaces[0].Area = q.Area(math.Inf(1)) }, "area of surface 1: found +Inf m2; expected 0 m2 or more"},
		{func(o *Order) { o.Surfaces[0].Transfer.Low = 0 }, "share that lands on surface 1: found 0 to 50 %; expected a range above 0 and up to 100 %"},
		{func(o *Order) { o.Surfaces[0].Transfer.High = 0.1 }, "share that lands on surface 1: found 20 to 10 %; expected a range above 0 and up to 100 %"},
		{func(o *Order) { o.Surfaces[0].Transfer.High = q.Fraction(math.NaN()) }, "share that lands on surface 1: found 20 to NaN %; expected a range above 0 and up to 100 %"},
	} {
		t.Run(c.says, func(t *testing.T) {
			o := good()
			c.spoil(&o)
			_, err := o.Need()
			refuses(t, err, c.says)
		})
	}
}

func anyTransfer(t *rapid.T) q.Range[q.Fraction] {
	low := anyOf[q.Fraction](t, "lands at least", 0.02, 1)
	return lands(low, anyOf[q.Fraction](t, "lands at most", float64(low), 1))
}

func anyOrder(t *rapid.T) Order {
	o := Order{
		Build: anyOf[q.Length](t, "build", 1*um, 200*um), Coats: rapid.IntRange(1, 6).Draw(t, "coats"),
		Solids: anyOf[q.Fraction](t, "solids", 0.02, 1), Loss: anyOf[q.Volume](t, "loss", 0, 50*ml),
		Cleanings: rapid.IntRange(1, 4).Draw(t, "cleanings"),
	}
	for range rapid.IntRange(1, 4).Draw(t, "surfaces") {
		o.Surfaces = append(o.Surfaces, Surface{anyOf[q.Area](t, "area", 0.001, 20), anyTransfer(t)})
	}
	return o
}

func need(t *rapid.T, o Order) Need {
	n, err := o.Need()
	if err != nil {
		t.Fatal(err)
	}
	return n
}

func TestNeedProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := anyOrder(t)
		n := need(t, o)
		m := n.Mixed()
		if !(n.OnPart*(1-1e-12) <= n.Sprayed.Low && m.Low <= m.Likely*(1+1e-12) && m.Likely <= m.High*(1+1e-12)) {
			t.Errorf("on the part %v, mixed %+v", n.OnPart, m)
		}
		// What lands dries to the film: volume of solids = area x dry film.
		var area q.Area
		for _, s := range o.Surfaces {
			area += s.Area
		}
		near(t, "solids on the part", float64(n.OnPart)*float64(o.Solids), float64(area)*float64(o.Build)*float64(o.Coats), 1e-9)

		better := o
		better.Surfaces = append([]Surface{}, o.Surfaces...)
		s := &better.Surfaces[0].Transfer
		*s = lands(anyOf[q.Fraction](t, "better low", float64(s.Low), float64(s.High)), anyOf[q.Fraction](t, "better high", float64(s.High), 1))
		if got := need(t, better).Mixed(); got.Low > m.Low*(1+1e-12) || got.Likely > m.Likely*(1+1e-12) || got.High > m.High*(1+1e-12) {
			t.Errorf("more lands and more is needed: %+v, was %+v", got, m)
		}
		more := o
		more.Coats++
		if got := need(t, more).Mixed(); got.Low <= m.Low {
			t.Errorf("one coat more needs %v, was %v", got.Low, m.Low)
		}
	})
}

func BenchmarkNeed(b *testing.B) {
	o := Order{Surfaces: []Surface{{0.55, lands(0.20, 0.35)}, {0.1, lands(0.60, 0.70)}}, Build: 25 * um, Coats: 3, Solids: 0.46, Loss: 15 * ml, Cleanings: 1}
	for b.Loop() {
		if _, err := o.Need(); err != nil {
			b.Fatal(err)
		}
	}
}
