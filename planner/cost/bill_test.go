package cost

import (
	"encoding/json"
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/govalues/decimal"
	"pgregory.net/rapid"

	q "coatwright/quantity"
)

func span[Q q.Quantity](low, likely, high Q) Span[Q] { return Span[Q]{low, likely, high} }

// job is the job that is worked out by hand in TestAsked.
func job(t testing.TB) []Item {
	return []Item{
		Used{What: "clear", Volume: span[q.Volume](280e-6, 320e-6, 400e-6), Price: mustPrice(t, "38 EUR/L")},
		Bought{What: "sealer", Volume: span[q.Volume](0.9e-3, 1.3e-3, 1.6e-3), Cans: cans(t,
			"250 mL for 10.20 EUR", "500 mL for 17.50 EUR", "1 L for 29.90 EUR")},
		Pieces{What: "paper P600", Piece: "sheet", Fixed: 1, PerArea: 3, Area: 0.55, Price: mustPrice(t, "1.20 EUR")},
		Hours{What: "hands", Kind: Work, Time: span[q.Time](5*3600, 6*3600+20*60, 8*3600), Rate: mustPrice(t, "45 EUR/h")},
		Hours{What: "booth", Kind: Booth, Time: Exactly[q.Time](5400), Rate: mustPrice(t, "22.50 EUR/h")},
	}
}

func terms(t testing.TB) Terms {
	return Terms{Currency: "EUR", Overhead: mustPercent(t, "15 %"), MarkUp: mustPercent(t, "20 %"), Tax: mustPercent(t, "19 %")}
}

// Worked by hand:
//
//	clear       320 mL at 38 EUR/L               12.16
//	sealer      1.3 L: a can of 1 L              29.90
//	            and one of 500 mL                17.50
//	paper       1 + 3 × 0.55 = 2.65, so 3         3.60
//	hands       6 h 20 min at 45 EUR/h          285.00
//	booth       1.5 h at 22.50 EUR/h             33.75
//	                                            381.91
//	overhead    15 %, 57.2865                    57.29
//	mark-up     20 % of 439.20                   87.84
//	net                                         527.04
//	tax         19 %, 100.1376                  100.14
//	                                            627.18
func TestAsked(t *testing.T) {
	got, err := Asked(job(t), terms(t))
	if err != nil {
		t.Fatal(err)
	}
	var lines []string
	for _, l := range got.Likely.Lines {
		lines = append(lines, l.What+" "+l.Amount.String())
	}
	want := []string{"clear 12.16 EUR", "sealer 29.90 EUR", "sealer 17.50 EUR", "paper P600 3.60 EUR", "hands 285.00 EUR", "booth 33.75 EUR"}
	if diff := cmp.Diff(want, lines); diff != "" {
		t.Errorf("lines (-want +got):\n%s", diff)
	}
	for _, c := range []struct {
		what string
		got  Money
		want string
	}{
		{"cost", got.Likely.Cost, "381.91 EUR"},
		{"overhead", got.Likely.Overhead.Amount, "57.29 EUR"},
		{"what the mark-up is on", got.Likely.MarkUp.On, "439.20 EUR"},
		{"mark-up", got.Likely.MarkUp.Amount, "87.84 EUR"},
		{"net", got.Likely.Net, "527.04 EUR"},
		{"tax", got.Likely.Tax.Amount, "100.14 EUR"},
		{"total", got.Likely.Total, "627.18 EUR"},
		// The least: 10.64 + 29.90 + 3.60 + 225.00 + 33.75 = 302.89; 45.43; 69.66; 417.98; 79.42.
		{"least net", got.Low.Net, "417.98 EUR"},
		{"least total", got.Low.Total, "497.40 EUR"},
		// The most: 15.20 + 57.60 (1 L, 500 mL, 250 mL) + 3.60 + 360.00 + 33.75 = 470.15; 70.52; 108.13; 648.80; 123.27.
		{"most net", got.High.Net, "648.80 EUR"},
		{"most total", got.High.Total, "772.07 EUR"},
	} {
		if c.got.String() != c.want {
			t.Errorf("%s is %s, want %s", c.what, c.got, c.want)
		}
	}
}

func TestLinesSayWhatTheyAreFor(t *testing.T) {
	got, err := Asked(job(t), terms(t))
	if err != nil {
		t.Fatal(err)
	}
	lines := got.Likely.Lines
	for i, want := range []Line{
		{What: "clear", Kind: Material, Quantity: q.ValueOf(q.Volume(320e-6)), Price: mustPrice(t, "38 EUR/L")},
		{What: "sealer", Kind: Material, Quantity: q.ValueOf(q.Number(1)), Piece: "can", Holds: q.ValueOf(q.Volume(1e-3)), Price: mustPrice(t, "29.90 EUR")},
		{What: "sealer", Kind: Material, Quantity: q.ValueOf(q.Number(1)), Piece: "can", Holds: q.ValueOf(q.Volume(500e-6)), Price: mustPrice(t, "17.50 EUR")},
		{What: "paper P600", Kind: Consumable, Quantity: q.ValueOf(q.Number(3)), Piece: "sheet", Price: mustPrice(t, "1.20 EUR")},
		{What: "hands", Kind: Work, Quantity: q.ValueOf(q.Time(22800)), Price: mustPrice(t, "45 EUR/h")},
		{What: "booth", Kind: Booth, Quantity: q.ValueOf(q.Time(5400)), Price: mustPrice(t, "22.50 EUR/h")},
	} {
		want.Amount = lines[i].Amount
		if lines[i] != want {
			t.Errorf("line %d is %+v, want %+v", i+1, lines[i], want)
		}
	}
}

// Half a cent goes to the even one: common practice among accountants.
func TestHalfToEven(t *testing.T) {
	for millilitres, want := range map[float64]string{
		125: "0.12 EUR", 135: "0.14 EUR", 145: "0.14 EUR", 155: "0.16 EUR", 125.1: "0.13 EUR", 124.9: "0.12 EUR",
	} {
		q1, err := Asked([]Item{Used{What: "clear", Volume: Exactly(q.Volume(millilitres / 1e6)), Price: mustPrice(t, "1 EUR/L")}}, Terms{Currency: "EUR"})
		if err != nil || q1.Likely.Total.String() != want {
			t.Errorf("%g mL at 1 EUR/L is %s, %v, want %s", millilitres, q1.Likely.Total, err, want)
		}
	}
}

// In yen there are no smaller coins, in dinars there are a thousand.
func TestOtherCoins(t *testing.T) {
	for _, c := range []struct{ price, want string }{
		{"1501 JPY/h", "2252 JPY"}, {"1500 JPY/h", "2250 JPY"}, {"1.001 KWD/h", "1.502 KWD"},
	} {
		price := mustPrice(t, c.price)
		got, err := Asked([]Item{Hours{What: "hands", Kind: Work, Time: Exactly[q.Time](5400), Rate: price}}, Terms{Currency: price.Money.Currency})
		if err != nil || got.Likely.Total.String() != c.want {
			t.Errorf("90 min at %s is %s, %v, want %s", c.price, got.Likely.Total, err, c.want)
		}
	}
}

func TestNothingCostsNothing(t *testing.T) {
	got, err := Asked(nil, terms(t))
	if err != nil || got.High.Total.String() != "0.00 EUR" {
		t.Errorf("nothing costs %s, %v", got.High.Total, err)
	}
}

// Definition: a quarter on top of 80 is 20, a fifth of the 100 that is asked.
func TestMarginOf(t *testing.T) {
	for markUp, want := range map[string]string{"25 %": "20 %", "100 %": "50 %", "0 %": "0 %", "60 %": "37.5 %"} {
		got, err := MarginOf(mustPercent(t, markUp))
		if err != nil || got.String() != want {
			t.Errorf("a mark-up of %s is a margin of %s, %v, want %s", markUp, got, err, want)
		}
	}
	for _, points := range []decimal.Decimal{decimal.MustNew(-100, 0), decimal.MustNew(9e18, 0), decimal.MustParse("9999999999999999999")} {
		if got, err := MarginOf(Percent{points}); err == nil {
			t.Errorf("a mark-up of %s %% is a margin of %s", points, got)
		}
	}
}

func TestAskedRefuses(t *testing.T) {
	litre := Exactly[q.Volume](1e-3)
	for _, c := range []struct {
		name  string
		item  Item
		terms Terms
		want  string
	}{
		{"no currency", Used{What: "clear", Volume: litre, Price: mustPrice(t, "38 EUR/L")}, Terms{},
			`found the currency ""; expected one such as "EUR"`},
		{"two currencies", Used{What: "clear", Volume: litre, Price: mustPrice(t, "38 USD/L")}, terms(t),
			"clear: found a price in USD; expected EUR, the currency of the quote"},
		{"cans in another", Bought{What: "clear", Volume: litre, Cans: cans(t, "1 L for 38 USD")}, terms(t),
			"clear: found a price in USD; expected EUR, the currency of the quote"},
		{"no cans", Bought{What: "clear", Volume: litre}, terms(t),
			"clear: found no sizes of cans; expected one or more"},
		{"cans for less than none", Bought{What: "clear", Volume: Exactly[q.Volume](-1), Cans: cans(t, "1 L for 38 EUR")}, terms(t),
			"clear: found from -1 over -1 to -1; expected 0 or more, the least first and the most last"},
		{"liquid by the hour", Used{What: "clear", Volume: litre, Price: mustPrice(t, "38 EUR/h")}, terms(t),
			`clear: found a price of "38 EUR/h"; expected one for a volume, such as "38 EUR/L"`},
		{"hours by the litre", Hours{What: "hands", Time: Exactly[q.Time](1), Rate: mustPrice(t, "38 EUR/L")}, terms(t),
			`hands: found a price of "38 EUR/L"; expected one for a time, such as "45 EUR/h"`},
		{"pieces by the litre", Pieces{What: "tape", Fixed: 1, Price: mustPrice(t, "38 EUR/L")}, terms(t),
			`tape: found a price of "38 EUR/L"; expected one for a number, such as "1.20 EUR"`},
		{"no price", Used{What: "clear", Volume: litre}, terms(t),
			`clear: found a price of "0 "; expected one for a volume, such as "38 EUR/L"`},
		{"a price for no litre", Used{What: "clear", Volume: litre, Price: Price{mustMoney(t, "38 EUR"), "L", q.Value{Of: "volume"}}}, terms(t),
			`clear: found a price of "38.00 EUR/L"; expected one for a volume, such as "38 EUR/L"`},
		{"the most below the least", Used{What: "clear", Volume: span[q.Volume](2, 1, 3), Price: mustPrice(t, "38 EUR/L")}, terms(t),
			"clear: found from 2 over 1 to 3; expected 0 or more, the least first and the most last"},
		{"never ready", Hours{What: "hands", Time: Exactly(q.Time(math.Inf(1))), Rate: mustPrice(t, "38 EUR/h")}, terms(t),
			"hands: found from +Inf over +Inf to +Inf; expected 0 or more, the least first and the most last"},
		{"fewer than no pieces", Pieces{What: "tape", Fixed: -1, Price: mustPrice(t, "1 EUR")}, terms(t),
			"tape: found -1 pieces; expected 0 or more"},
		{"a price below nothing", Pieces{What: "tape", Fixed: 1, Price: each(Money{decimal.NegOne, "EUR"})}, terms(t),
			"tape: found a price of -1 EUR; expected 0 or more"},
		{"a rate below nothing", Pieces{What: "tape", Fixed: 1, Price: mustPrice(t, "1 EUR")}, Terms{Currency: "EUR", Tax: Percent{decimal.NegOne}},
			"found a rate of -1 %; expected 0 % or more"},
		{"all the money there is", Pieces{What: "tape", Fixed: 2e6, Price: mustPrice(t, "1000000000 EUR")}, terms(t),
			"tape: found 2000000000000000 EUR; expected no more than 1000000000000000"},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := Asked([]Item{c.item}, c.terms)
			if err == nil || err.Error() != c.want {
				t.Errorf("error is\n\t%v\nwant\n\t%s", err, c.want)
			}
		})
	}
}

// A quantity so large that the library itself gives up is refused too.
func TestAskedRefusesOverflow(t *testing.T) {
	for _, n := range []q.Number{1e12, 1e18, 1e30} {
		if got, err := Asked([]Item{Pieces{What: "tape", Fixed: n, Price: mustPrice(t, "1000000000 EUR")}}, terms(t)); err == nil {
			t.Errorf("%g pieces cost %s", float64(n), got.Likely.Total)
		}
	}
}

func TestQuoteKeepsInJSON(t *testing.T) {
	want, err := Asked(job(t), terms(t))
	if err != nil {
		t.Fatal(err)
	}
	text, err := json.Marshal(want)
	if err != nil {
		t.Fatal(err)
	}
	var back Quote
	if err := json.Unmarshal(text, &back); err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(want, back, cmp.Comparer(func(a, b decimal.Decimal) bool { return a == b })); diff != "" {
		t.Errorf("after JSON (-want +got):\n%s", diff)
	}
}

var currencyOfTests = rapid.SampledFrom([]Currency{"EUR", "JPY", "KWD"})

func anyPercent(t *rapid.T, what string) Percent {
	return Percent{decimal.MustNew(rapid.Int64Range(0, 15000).Draw(t, what), 2)}
}

func anySpan[Q q.Quantity](t *rapid.T, most float64) Span[Q] {
	low := rapid.Float64Range(0, most).Draw(t, "low")
	likely := low + rapid.Float64Range(0, most).Draw(t, "to likely")
	return Span[Q]{Q(low), Q(likely), Q(likely + rapid.Float64Range(0, most).Draw(t, "to high"))}
}

func anyPrice(t *rapid.T, c Currency, unit string, per q.Value) Price {
	amount := decimal.MustNew(rapid.Int64Range(0, 20_000_000).Draw(t, "price"), 4)
	return Price{Money{amount, c}, unit, per}
}

func anyItems(t *rapid.T, c Currency) []Item {
	hour, litre, piece := q.ValueOf(q.Time(3600)), q.ValueOf(q.Volume(1e-3)), q.ValueOf(q.Number(1))
	return rapid.SliceOfN(rapid.Custom(func(t *rapid.T) Item {
		switch rapid.IntRange(0, 3).Draw(t, "kind") {
		case 0:
			return Used{"paint", anySpan[q.Volume](t, 0.01), anyPrice(t, c, "L", litre)}
		case 1:
			sizes := rapid.SliceOfN(rapid.Custom(func(t *rapid.T) Can {
				return Can{q.Volume(rapid.IntRange(4, 20).Draw(t, "size")) * 50e-6, anyPrice(t, c, "", piece).Money}
			}), 1, 3).Draw(t, "cans")
			return Bought{"paint", anySpan[q.Volume](t, 0.005), sizes}
		case 2:
			return Pieces{"tape", "roll", q.Number(rapid.IntRange(0, 3).Draw(t, "fixed")), q.PerArea(rapid.Float64Range(0, 5).Draw(t, "per area")), q.Area(rapid.Float64Range(0, 10).Draw(t, "area")), anyPrice(t, c, "", piece)}
		default:
			return Hours{"hands", Work, anySpan[q.Time](t, 40000), anyPrice(t, c, "h", hour)}
		}
	}), 0, 6).Draw(t, "items")
}

func anyTerms(t *rapid.T) Terms {
	return Terms{currencyOfTests.Draw(t, "currency"), anyPercent(t, "overhead"), anyPercent(t, "markup"), anyPercent(t, "tax")}
}

// Whoever gets the bill can add it up, in coins that there are.
func TestBillsAddUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		terms := anyTerms(t)
		quote, err := Asked(anyItems(t, terms.Currency), terms)
		if err != nil {
			t.Fatal(err)
		}
		for _, b := range []Bill{quote.Low, quote.Likely, quote.High} {
			cost := decimal.Zero
			for _, l := range b.Lines {
				inCoins(t, l.Amount)
				cost = plus(t, cost, l.Amount.Amount)
			}
			net := plus(t, plus(t, cost, b.Overhead.Amount.Amount), b.MarkUp.Amount.Amount)
			total := plus(t, net, b.Tax.Amount.Amount)
			for _, m := range []Money{b.Cost, b.Overhead.Amount, b.MarkUp.Amount, b.Net, b.Tax.Amount, b.Total} {
				inCoins(t, m)
			}
			if b.Cost.Amount.Cmp(cost) != 0 || b.Net.Amount.Cmp(net) != 0 || b.Total.Amount.Cmp(total) != 0 {
				t.Errorf("cost %s, net %s, total %s, but added up %s, %s, %s", b.Cost, b.Net, b.Total, cost, net, total)
			}
			if b.Tax.On != b.Net || b.Overhead.On != b.Cost {
				t.Errorf("tax on %s of %s net, overhead on %s of %s cost", b.Tax.On, b.Net, b.Overhead.On, b.Cost)
			}
		}
	})
}

// Each addition is its rate of what it is on, to half a coin.
func TestAdditionsAreTheirRate(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		terms := anyTerms(t)
		quote, err := Asked(anyItems(t, terms.Currency), terms)
		if err != nil {
			t.Fatal(err)
		}
		b := quote.Likely
		for _, a := range []Addition{b.Overhead, b.MarkUp, b.Tax} {
			on, _ := a.On.Amount.Float64()
			rate, _ := a.Rate.Points.Float64()
			amount, _ := a.Amount.Amount.Float64()
			half := math.Pow10(-terms.Currency.Digits()) / 2
			if math.Abs(amount-on*rate/100) > half*(1+1e-6) {
				t.Errorf("%s of %s is %s", a.Rate, a.On, a.Amount)
			}
		}
	})
}

func TestMoreIsNotCheaper(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		terms := anyTerms(t)
		items := anyItems(t, terms.Currency)
		quote, err := Asked(items, terms)
		if err != nil {
			t.Fatal(err)
		}
		if quote.Low.Total.Amount.Cmp(quote.Likely.Total.Amount) > 0 || quote.Likely.Total.Amount.Cmp(quote.High.Total.Amount) > 0 {
			t.Errorf("low %s, likely %s, high %s", quote.Low.Total, quote.Likely.Total, quote.High.Total)
		}
		dearer := terms
		switch rapid.IntRange(0, 3).Draw(t, "what more") {
		case 0:
			dearer.Overhead = Percent{plus(t, dearer.Overhead.Points, decimal.One)}
		case 1:
			dearer.MarkUp = Percent{plus(t, dearer.MarkUp.Points, decimal.One)}
		case 2:
			dearer.Tax = Percent{plus(t, dearer.Tax.Points, decimal.One)}
		case 3:
			items = append(items, anyItems(t, terms.Currency)...)
		}
		more, err := Asked(items, dearer)
		if err != nil {
			t.Fatal(err)
		}
		if more.Likely.Total.Amount.Cmp(quote.Likely.Total.Amount) < 0 {
			t.Errorf("more costs %s, less %s", more.Likely.Total, quote.Likely.Total)
		}
	})
}

func plus(t *rapid.T, a, b decimal.Decimal) decimal.Decimal {
	sum, err := a.Add(b)
	if err != nil {
		t.Fatal(err)
	}
	return sum
}

// inCoins fails unless m has just the digits of its currency.
func inCoins(t *rapid.T, m Money) {
	if m.Amount.Scale() != m.Currency.Digits() {
		t.Errorf("%s is in no coins", m)
	}
}

func BenchmarkAsked(b *testing.B) {
	items, terms := job(b), terms(b)
	for b.Loop() {
		if _, err := Asked(items, terms); err != nil {
			b.Fatal(err)
		}
	}
}
