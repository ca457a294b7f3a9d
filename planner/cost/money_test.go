package cost

import (
	"encoding/json"
	"errors"
	"testing"

	q "coatwright/quantity"
)

func mustMoney(t testing.TB, s string) Money {
	t.Helper()
	m, err := ParseMoney(s)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

func mustPrice(t testing.TB, s string) Price {
	t.Helper()
	p, err := ParsePrice(s)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func mustPercent(t testing.TB, s string) Percent {
	t.Helper()
	p, err := ParsePercent(s)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func TestParseMoney(t *testing.T) {
	for in, want := range map[string]string{
		"12.50 EUR":   "12.50 EUR",
		"12.5 EUR":    "12.50 EUR",
		"EUR 12.50":   "12.50 EUR",
		"€12.50":      "12.50 EUR",
		"12.50 €":     "12.50 EUR",
		" 7 EUR ":     "7.00 EUR",
		"12.500 EUR":  "12.50 EUR",
		"0 USD":       "0.00 USD",
		"1500 JPY":    "1500 JPY",
		"JPY 1500":    "1500 JPY",
		"1.234 KWD":   "1.234 KWD",
		"1.2 KWD":     "1.200 KWD",
		"1000000 GBP": "1000000.00 GBP",
	} {
		got, err := ParseMoney(in)
		if err != nil || got.String() != want {
			t.Errorf("ParseMoney(%q) = %s, %v, want %s", in, got, err, want)
		}
	}
}

func TestParseMoneyRefuses(t *testing.T) {
	const example = `expected money with the code of its currency, such as "12.50 EUR"`
	for in, want := range map[string]string{
		"":               `found "", ` + example,
		"12.50":          `found "12.50", ` + example,
		"EUR":            `found "EUR", ` + example,
		"12,50 EUR":      `found "12,50 EUR", ` + example + `; did you mean "12.50 EUR"?`,
		"€ 12,50":        `found "€ 12,50", ` + example + `; did you mean "12.50 EUR"?`,
		"1,250 EUR":      `found "1,250 EUR", ` + example, // 1.25 or 1250
		"1,250.00 EUR":   `found "1,250.00 EUR", ` + example,
		"12.50 EURO":     `found "12.50 EURO", ` + example + `; did you mean "12.50 EUR"?`,
		"12.50 eur":      `found "12.50 eur", ` + example + `; did you mean "12.50 EUR"?`,
		"$12.50":         `found "$12.50", ` + example, // of which country
		"12.50 QQQ":      `found "12.50 QQQ", ` + example,
		"12.50 XXX":      `found "12.50 XXX", ` + example, // ISO 4217 for no currency
		"12.50 978":      `found "12.50 978", ` + example, // the number of EUR
		"-5 EUR":         `found "-5 EUR", ` + example,
		"1e3 EUR":        `found "1e3 EUR", ` + example,
		"EUR 5 EUR":      `found "EUR 5 EUR", ` + example,
		"12.505 EUR":     `found "12.505 EUR", expected EUR with no more than 2 digits behind the point`,
		"0.5 JPY":        `found "0.5 JPY", expected JPY with no more than 0 digits behind the point`,
		"1.2345 KWD":     `found "1.2345 KWD", expected KWD with no more than 3 digits behind the point`,
		"2000000000 EUR": `found "2000000000 EUR", expected no more than 1000000000 EUR`,
	} {
		_, err := ParseMoney(in)
		if err == nil || err.Error() != want {
			t.Errorf("ParseMoney(%q) refuses with\n\t%v\nwant\n\t%s", in, err, want)
		}
	}
}

// The digits that ISO 4217 gives, from memory.
func TestCoins(t *testing.T) {
	for code, want := range map[string]int{
		"EUR": 2, "USD": 2, "GBP": 2, "CHF": 2, "HUF": 2, "JPY": 0, "KRW": 0, "ISK": 0, "CLP": 0, "VND": 0, "XOF": 0,
		"KWD": 3, "BHD": 3, "TND": 3, "OMR": 3,
	} {
		c, err := ParseCurrency(code)
		if err != nil || c.Digits() != want {
			t.Errorf("%s has %d digits, %v, want %d", code, c.Digits(), err, want)
		}
	}
}

func TestParseCurrencyRefuses(t *testing.T) {
	for in, nearest := range map[string]string{"": "", "EURO": "EUR", "eur": "EUR", "XXX": "", "XTS": "", "978": ""} {
		_, err := ParseCurrency(in)
		var e *q.Error
		if !errors.As(err, &e) || nearest != "" && e.Nearest != nearest {
			t.Errorf("ParseCurrency(%q) refuses with %v, want near to %q", in, err, nearest)
		}
	}
}

func TestParsePrice(t *testing.T) {
	for _, c := range []struct {
		in, want string
		per      q.Value
	}{
		{"45 EUR/h", "45 EUR/h", q.ValueOf(q.Time(3600))},
		{"38 EUR/L", "38 EUR/L", q.ValueOf(q.Volume(1e-3))},
		{"0.0385 EUR/mL", "0.0385 EUR/mL", q.ValueOf(q.Volume(1e-6))},
		{"60 USD / US gal", "60 USD/US gal", q.ValueOf(q.Volume(231 * 0.0254 * 0.0254 * 0.0254))},
		{"0.75 EUR/min", "0.75 EUR/min", q.ValueOf(q.Time(60))},
		{"1.20 EUR", "1.20 EUR", q.ValueOf(q.Number(1))},
		{"€ 45/h", "45 EUR/h", q.ValueOf(q.Time(3600))},
	} {
		got, err := ParsePrice(c.in)
		if err != nil || got.String() != c.want || got.Per.Of != c.per.Of || got.Per.SI/c.per.SI-1 > 1e-12 {
			t.Errorf("ParsePrice(%q) = %s per %v, %v, want %s per %v", c.in, got, got.Per, err, c.want, c.per)
		}
	}
}

func TestParsePriceRefuses(t *testing.T) {
	const (
		example = `expected a price such as "38 EUR/L", "45 EUR/h" or "1.20 EUR"`
		units   = `expected a price for a unit of volume or of time, such as "38 EUR/L" or "45 EUR/h"`
	)
	for in, want := range map[string]string{
		"":                `found "", ` + example,
		"45/h":            `found "45/h", ` + example,
		"38,50 EUR/L":     `found "38,50 EUR/L", ` + example + `; did you mean "38.50 EUR/L"?`,
		"45 EURO/h":       `found "45 EURO/h", ` + example + `; did you mean "45 EUR/h"?`,
		"45 EUR/":         `found "45 EUR/", ` + units,
		"45 EUR/kg":       `found "45 EUR/kg", ` + units,
		"45 EUR/2 h":      `found "45 EUR/2 h", ` + units,
		"45 EUR/h/h":      `found "45 EUR/h/h", ` + units,
		"0.1234567 EUR/L": `found "0.1234567 EUR/L", expected a price with no more than 6 digits behind the point`,
	} {
		_, err := ParsePrice(in)
		if err == nil || err.Error() != want {
			t.Errorf("ParsePrice(%q) refuses with\n\t%v\nwant\n\t%s", in, err, want)
		}
	}
}

func TestParsePercent(t *testing.T) {
	for in, want := range map[string]string{"19 %": "19 %", "7.5%": "7.5 %", " 0 % ": "0 %", "1000 %": "1000 %"} {
		got, err := ParsePercent(in)
		if err != nil || got.String() != want {
			t.Errorf("ParsePercent(%q) = %s, %v, want %s", in, got, err, want)
		}
	}
	const expected = `expected a percentage from 0 to 1000 such as "19 %"`
	for in, want := range map[string]string{
		"":       `found "", ` + expected,
		"%":      `found "%", ` + expected,
		"19":     `found "19", ` + expected + `; did you mean "19 %"?`,
		"7,5 %":  `found "7,5 %", ` + expected + `; did you mean "7.5 %"?`,
		"-3 %":   `found "-3 %", ` + expected,
		"1001 %": `found "1001 %", ` + expected,
		"0.19 x": `found "0.19 x", ` + expected,
	} {
		_, err := ParsePercent(in)
		if err == nil || err.Error() != want {
			t.Errorf("ParsePercent(%q) refuses with\n\t%v\nwant\n\t%s", in, err, want)
		}
	}
}

// A price is kept as text, so that its digits are what they were.
func TestPriceKeepsInJSON(t *testing.T) {
	want := mustPrice(t, "0.0385 EUR/mL")
	text, err := json.Marshal(want)
	if err != nil {
		t.Fatal(err)
	}
	if got := string(text); got != `{"money":{"amount":"0.0385","currency":"EUR"},"unit":"mL","per":{"si":0.000001,"of":"volume"}}` {
		t.Errorf("in JSON it is %s", got)
	}
	var back Price
	if err := json.Unmarshal(text, &back); err != nil || back != want {
		t.Errorf("from JSON it is %v, %v", back, err)
	}
}

func FuzzParse(f *testing.F) {
	for _, s := range []string{"12.50 EUR", "€ 12,50", "45 EUR/h", "0.0385 EUR/mL", "19 %", "1e3 EUR", "/", "EUR 5 EUR", "٣ EUR"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		sound := func(what string, err, again error) {
			var e *q.Error
			if err != nil && !errors.As(err, &e) {
				t.Errorf("%q as %s: %v is no *q.Error", s, what, err)
			}
			if err == nil && again != nil {
				t.Errorf("%q as %s is read, but not what it is written as: %v", s, what, again)
			}
		}
		m, err := ParseMoney(s)
		back, again := ParseMoney(m.String())
		sound("money", err, again)
		if err == nil && (back != m || m.Amount.IsNeg() || m.Amount.Scale() != m.Currency.Digits() || !m.Currency.known()) {
			t.Errorf("%q is %s is %s", s, m, back)
		}
		p, err := ParsePrice(s)
		price, again := ParsePrice(p.String())
		sound("a price", err, again)
		if err == nil && (price != p || !(p.Per.SI > 0)) {
			t.Errorf("%q is %s is %s", s, p, price)
		}
		r, err := ParsePercent(s)
		rate, again := ParsePercent(r.String())
		sound("a percentage", err, again)
		if err == nil && (rate != r || r.Points.IsNeg()) {
			t.Errorf("%q is %s is %s", s, r, rate)
		}
	})
}

func BenchmarkParsePrice(b *testing.B) {
	for b.Loop() {
		if _, err := ParsePrice("38.50 EUR/L"); err != nil {
			b.Fatal(err)
		}
	}
}
