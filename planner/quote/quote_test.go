package quote

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"coatwright/content"
	"coatwright/planner"
	"coatwright/planner/cost"
	"coatwright/planner/library"
)

func lib(t testing.TB) *library.Library {
	t.Helper()
	notes, err := content.Load(content.BuiltIn(), nil)
	if err != nil {
		t.Fatal(err)
	}
	return notes.Planner()
}

func plan(t testing.TB, name string, lib *library.Library) *planner.Plan {
	t.Helper()
	document, err := os.ReadFile(filepath.Join("../../testdata/jobs", name))
	if err != nil {
		t.Fatal(err)
	}
	job, err := planner.ParseJob(name, document, lib)
	if err != nil {
		t.Fatal(err)
	}
	p, err := planner.New(job, lib)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func rates(t testing.TB, lib *library.Library) *Rates {
	t.Helper()
	document, err := os.ReadFile("../../testdata/rates.yaml")
	if err != nil {
		t.Fatal(err)
	}
	r, err := ParseRates("rates.yaml", document, lib)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// A plan of two steps, worked by hand: 120 mL at 42 EUR/L is 5.04; 2 sheets at
// 0.90 are 1.80; 1 h 30 min at 48 EUR/h are 72.00, half an hour of booth at 15 is
// 7.50: 86.34. Overhead of 12 % is 10.36 (10.3608), the mark-up of 20 % on 96.70
// is 19.34, net 116.04, tax of 21 % is 24.37 (24.3684), in all 140.41.
func TestWorkedByHand(t *testing.T) {
	l := lib(t)
	p := &planner.Plan{
		Steps:     []planner.Step{{Coats: 2, End: (planner.Step{}).Start.Add(30 * 60 * 1e9)}},
		Materials: []planner.Material{{Material: "waterborne-ground", Title: "Ground", ML: 120, BuyML: 150}},
		Worn:      []planner.Worn{{Tool: "abrasive-paper", Title: "Paper", Piece: "sheet", Count: 2}, {Tool: "scale", Title: "Scale", Count: 1}},
		Totals:    planner.Totals{WorkMin: 90},
	}
	got, err := Of(p, rates(t, l), l)
	if err != nil {
		t.Fatal(err)
	}
	b := got.Likely
	for what, c := range map[string]struct {
		got  cost.Money
		want string
	}{
		"cost": {b.Cost, "86.34 EUR"}, "overhead": {b.Overhead.Amount, "10.36 EUR"}, "mark-up": {b.MarkUp.Amount, "19.34 EUR"},
		"net": {b.Net, "116.04 EUR"}, "tax": {b.Tax.Amount, "24.37 EUR"}, "total": {b.Total, "140.41 EUR"},
	} {
		if c.got.String() != c.want {
			t.Errorf("%s = %s, want %s", what, c.got, c.want)
		}
	}
	if len(got.Unpriced) != 1 || got.Unpriced[0].Note != "tool/scale" {
		t.Errorf("unpriced %v, want the scale", got.Unpriced)
	}
}

// Every example job is reckoned, the low bill is no more than the likely one and
// the high one no less, and each price stands in the plan.
func TestEveryJobIsReckoned(t *testing.T) {
	l := lib(t)
	files, _ := filepath.Glob("../../testdata/jobs/*.yaml")
	for _, file := range files {
		p := plan(t, filepath.Base(file), l)
		got, err := Of(p, rates(t, l), l)
		if err != nil {
			t.Errorf("%s: %v", file, err)
			continue
		}
		low, likely, high := got.Low.Total.Amount, got.Likely.Total.Amount, got.High.Total.Amount
		if low.Cmp(likely) > 0 || likely.Cmp(high) > 0 || !low.IsPos() {
			t.Errorf("%s: from %s over %s to %s", file, low, likely, high)
		}
		if err := Price(p, rates(t, l), l); err != nil || p.Totals.Cost == nil || p.Totals.Cost.Amount != likely.String() {
			t.Errorf("%s: the plan's cost is %v, %v, want %s", file, p.Totals.Cost, err, likely)
		}
	}
}

func TestRatesAreRefused(t *testing.T) {
	l := lib(t)
	for document, want := range map[string]string{
		"currency: EURO\n":                                      `rates:1:11: currency: found "EURO", expected`,
		"labour: 48 EUR/h\n":                                    `rates:1:1: currency: found nothing, expected the key "currency"`,
		"currency: EUR\nlabour: 48 EUR/L\n":                     "rates:2:9: labour: found \"48 EUR/L\", expected a price such as 48 EUR/h",
		"currency: EUR\nlabour: 48 USD/h\n":                     `rates:2:9: labour: found "48 USD/h", expected a price in EUR`,
		"currency: EUR\nmaterials: {perl: 40 EUR/L}\n":          `did you mean "pearl"?`,
		"currency: EUR\npieces: {abrasive-paper: 0.90 EUR/L}\n": "expected a price such as 0.90 EUR",
		"currency: EUR\ntax: 21\n":                              `rates:2:6: tax: found "21", expected`,
		"currency: EUR\nlabor: 40 EUR/h\n":                      `did you mean "labour"?`,
		"currency: EUR\nmaterials: {pearl: forty EUR/L}\n":      "materials.pearl",
		"currency: EUR\noverhead: 12 %\noverhead: 13 %\n":       "overhead",
		"":                  "rates",
		"currency: [EUR]\n": "expected",
	} {
		_, err := ParseRates("rates", []byte(document), l)
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q is refused with\n\t%v\nwant\n\t%s", document, err, want)
		}
	}
}

func FuzzParseRates(f *testing.F) {
	l := lib(f)
	f.Add("currency: EUR\nlabour: 48 EUR/h\nmaterials: {pearl: 96 EUR/L}\n")
	f.Add("currency: JPY\ntax: 10 %\n")
	p := plan(f, "touring-frame.yaml", l)
	f.Fuzz(func(t *testing.T, document string) {
		if r, err := ParseRates("rates", []byte(document), l); err == nil {
			if _, err := Of(p, r, l); err != nil && strings.Contains(err.Error(), "currency") {
				t.Errorf("rates that were read do not go together: %v", err)
			}
		}
	})
}

func BenchmarkOf(b *testing.B) {
	l := lib(b)
	p, r := plan(b, "touring-frame.yaml", l), rates(b, l)
	for b.Loop() {
		if _, err := Of(p, r, l); err != nil {
			b.Fatal(err)
		}
	}
}
