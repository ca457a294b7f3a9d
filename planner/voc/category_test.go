package voc

import (
	"encoding/csv"
	"os"
	"strconv"
	"strings"
	"testing"

	q "coatwright/quantity"
)

// limits reads testdata/hazard/voc_limits.csv; its sources stand on its top.
func limits(t *testing.T) map[string]Category {
	t.Helper()
	f, err := os.Open("../../testdata/hazard/voc_limits.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	records, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	out := map[string]Category{}
	for _, row := range records[1:] {
		limit, err := strconv.ParseFloat(row[2], 64)
		if err != nil {
			t.Fatal(err)
		}
		out[row[0]+" "+row[1]] = Category{Name: row[1], Limit: q.Concentration(limit), Source: row[0], Water: row[3] == "yes", Exempt: row[4] == "yes"}
	}
	return out
}

// Each limit is held by a liquid that counts just so much, and passed by one
// that counts a little more: as the directive says it, without water save for
// products that prepare and clean.
func TestLimits(t *testing.T) {
	all := limits(t)
	if len(all) != 14 {
		t.Fatalf("%d categories, want 7 of each law", len(all))
	}
	for name, c := range all {
		counted := 0.6 // of the volume, when 40 % is water
		if c.Water {
			counted = 1
		}
		for _, v := range []struct {
			share float64
			want  Verdict
		}{{0.99, Under}, {1.01, Over}} {
			l := Liquid{VOC: c.Limit * q.Concentration(counted*v.share), Water: only(0.4)}
			got, err := Compare(l, c)
			if err != nil {
				t.Fatal(err)
			}
			if got.Verdict != v.want || got.Defer != Defer {
				t.Errorf("%s: %v of the limit is %s, want %s, and to defer to the law", name, v.share, got.Verdict, v.want)
			}
			near(t, name+": beyond", float64(got.Beyond.Low), (v.share-1)*float64(c.Limit), 1e-9)
		}
	}
	if got, err := Compare(Liquid{VOC: 420}, all["EU topcoat"]); err != nil || got.Verdict != Under {
		t.Errorf("just the limit is %s (%v), want %s", got.Verdict, err, Under)
	}
}

// Worked by hand: a litre with 210 g of VOC, 300 mL of water and 100 mL of an
// exempt compound that weighs 80 g.
func TestCount(t *testing.T) {
	l := Liquid{VOC: 210, Water: only(0.3), Exempt: 0.1, ExemptMass: q.Range[q.Concentration]{Low: 80, High: 80}}
	for _, c := range []struct {
		category Category
		want     float64
	}{
		{Category{Exempt: true}, 210 / 0.6},
		{Category{Exempt: true, Water: true}, 210},
		{Category{}, 290 / 0.7},
		{Category{Water: true}, 290},
	} {
		got := c.category.Count(l)
		near(t, "low end", float64(got.Low), c.want, 1e-12)
		near(t, "high end", float64(got.High), c.want, 1e-12)
	}
	l.ExemptMass = q.Range[q.Concentration]{} // only their volume is known
	got := Category{Water: true}.Count(l)
	near(t, "light exempt compounds", float64(got.Low), 210+78, 1e-12)
	near(t, "heavy exempt compounds", float64(got.High), 210+135, 1e-12)
}

func TestSays(t *testing.T) {
	topcoat := Category{Name: "a topcoat", Limit: 420, Source: "2004/42/EC, annex II B"}
	unknown := Liquid{VOC: 210, Water: q.Range[q.Fraction]{Low: 0.4, High: 0.6}}
	wide := Liquid{VOC: 90, Water: q.Range[q.Fraction]{Low: 0.5, High: 0.7}}
	for _, c := range []struct {
		liquid   Liquid
		category Category
		system   *q.System
		want     string
	}{
		{Liquid{VOC: 466, Density: 1000}, topcoat, q.Metric, "As sprayed it counts 466 g/L of VOC less water: 46 g/L over the limit of 420 g/L for a topcoat (2004/42/EC, annex II B). "},
		{wide, topcoat, q.Metric, "As sprayed it counts 180 to 300 g/L of VOC less water: 120 to 240 g/L under the limit of 420 g/L for a topcoat (2004/42/EC, annex II B). "},
		{unknown, topcoat, q.Metric, "As sprayed it counts 350 to 525 g/L of VOC less water: from 70 g/L under to 105 g/L over the limit of 420 g/L for a topcoat (2004/42/EC, annex II B). "},
		{Liquid{VOC: 420}, topcoat, q.Metric, "As sprayed it counts 420 g/L of VOC less water: just at the limit of 420 g/L for a topcoat (2004/42/EC, annex II B). "},
		{Liquid{VOC: 240}, Category{Name: "a cleaner", Limit: 200, Source: "a law", Water: true}, q.Metric, "As sprayed it counts 240 g/L of VOC with its water: 40 g/L over the limit of 200 g/L for a cleaner (a law). "},
		{Liquid{VOC: 3 * poundPerGallon}, Category{Name: "a topcoat", Limit: 5 * poundPerGallon, Source: "a law", Exempt: true}, q.US, "As sprayed it counts 3 lb/gal of VOC less water and exempt compounds: 2 lb/gal under the limit of 5 lb/gal for a topcoat (a law). "},
	} {
		got, err := Compare(c.liquid, c.category)
		if err != nil {
			t.Fatal(err)
		}
		if says := got.Says(c.system); says != c.want+Defer {
			t.Errorf("Says\n\t%s\nwant\n\t%s", says, c.want+Defer)
		}
	}
}

// The sentence that defers names the law, the authority and what the limits are
// for.
func TestDefer(t *testing.T) {
	for _, word := range []string{"law", "local authority decide", "refinish vehicles"} {
		if !strings.Contains(Defer, word) {
			t.Errorf("Defer %q does not speak of %q", Defer, word)
		}
	}
}
