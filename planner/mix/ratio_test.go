package mix

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	q "coatwright/quantity"
)

func TestParseRatio(t *testing.T) {
	between := func(low, high q.Fraction) q.Range[q.Fraction] { return q.Range[q.Fraction]{Low: low, High: high} }
	for _, c := range []struct {
		text string
		of   PercentOf
		want []Part
	}{
		{"1", OfFirst, []Part{{Name: "A", Parts: 1}}},
		{"4:1:0.5", OfFirst, []Part{{Name: "A", Parts: 4}, {Name: "B", Parts: 1}, {Name: "C", Parts: 0.5}}},
		{" 4 : 1 : .5 ", OfBefore, []Part{{Name: "A", Parts: 4}, {Name: "B", Parts: 1}, {Name: "C", Parts: 0.5}}},
		{"2:1:0", OfFirst, []Part{{Name: "A", Parts: 2}, {Name: "B", Parts: 1}, {Name: "C"}}},
		{"2:1:10%", OfFirst, []Part{{Name: "A", Parts: 2}, {Name: "B", Parts: 1}, {Name: "C", Of: "A", Share: 0.10}}},
		// 10 % of all three parts before it is 15 % of the first two.
		{"2 : 1 + 10 %", OfBefore, []Part{{Name: "A", Parts: 2}, {Name: "B", Parts: 1}, {Name: "C", Of: "A", Share: 0.15}}},
		{"100 + 5..10 %", OfFirst, []Part{{Name: "A", Parts: 100}, {Name: "B", Of: "A", Share: 0.075, Range: between(0.05, 0.10)}}},
		// 5 to 10 % of 1 + 0.30.
		{"100 + 30% + 5..10%", OfBefore, []Part{{Name: "A", Parts: 100}, {Name: "B", Of: "A", Share: 0.30}, {Name: "C", Of: "A", Share: 0.0975, Range: between(0.065, 0.13)}}},
	} {
		t.Run(c.text, func(t *testing.T) {
			got, err := ParseRatio(c.text, c.of)
			if err != nil {
				t.Fatal(err)
			}
			if diff := cmp.Diff(c.want, got, about[q.Fraction]()); diff != "" {
				t.Errorf("ParseRatio (-want +got):\n%s", diff)
			}
		})
	}
}

func TestParseRatioRefuses(t *testing.T) {
	number := func(field string) string {
		return fmt.Sprintf(`numbers of parts with ":" between them, such as "4:1:0.5" or "2:1 + 10 %%", for %q`, field)
	}
	for text, want := range map[string]string{
		"":                       number(""),
		"4::1":                   number(""),
		"4:1:":                   number(""),
		"0:1":                    number("0"),
		"4:-1":                   number("-1"),
		"4:1,5":                  number("1,5"),
		"4 to 1":                 number("4 to 1"),
		"4:NaN":                  number("NaN"),
		"4:Inf":                  number("Inf"),
		"4:0x10":                 number("0x10"),
		"4:1 L":                  number("1 L"),
		"10 %":                   `a number of parts before the first percentage, such as "100 + 10 %"`,
		"4:ten %":                `a percentage such as "10 %" or "5..10 %" for "ten %"`,
		"4:10..5 %":              `a percentage such as "10 %" or "5..10 %" for "10..5 %"`,
		strings.Repeat("1:", 26): "at most 26 parts",
		strings.Repeat("9", 400): number(strings.Repeat("9", 400)),
		"1" + strings.Repeat("0", 308) + ":1" + strings.Repeat("0", 308): "numbers of parts that can be poured into one cup",
	} {
		_, err := ParseRatio(text, OfFirst)
		var e *q.Error
		if !errors.As(err, &e) || e.Found != text || e.Expected != want {
			t.Errorf("ParseRatio(%.20q) refuses with\n\t%v\nwant expected\n\t%s", text, err, want)
		}
	}
}

// What is written as a ratio is read as one.
func TestParseRatioReadsWhatIsWritten(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		xs := rapid.SliceOfN(rapid.Float64Range(0.001, 1000), 1, 6).Draw(t, "parts")
		fields := make([]string, len(xs))
		var total float64
		for i, x := range xs {
			fields[i] = fmt.Sprintf("%.4f", x)
			fmt.Sscan(fields[i], &xs[i])
			total += xs[i]
		}
		parts, err := ParseRatio(strings.Join(fields, rapid.SampledFrom([]string{":", " : ", "+"}).Draw(t, "between")), OfBefore)
		if err != nil {
			t.Fatal(err)
		}
		shares, err := Shares(parts)
		if err != nil {
			t.Fatal(err)
		}
		for i, x := range xs {
			near(t, "share", float64(shares[i]), x/total, 1e-9)
		}
	})
}

// Whatever is read can be poured, and whatever is not says what was expected.
func FuzzParseRatio(f *testing.F) {
	for _, seed := range []string{"4:1:0.5", "2 : 1 + 10 %", "100 + 5..10 %", "", "%", ":", "1:%", "1e9:1", "0.0:1", "1:5..%", "٣:1", "1:99999999999999999999 %"} {
		f.Add(seed, true)
		f.Add(seed, false)
	}
	f.Fuzz(func(t *testing.T, text string, before bool) {
		of := OfFirst
		if before {
			of = OfBefore
		}
		parts, err := ParseRatio(text, of)
		if err != nil {
			var e *q.Error
			if !errors.As(err, &e) {
				t.Fatalf("the error is a %T", err)
			}
			return
		}
		pours, err := Pours(parts, 100*ml)
		if err != nil {
			t.Fatalf("%q is read, and not poured: %v", text, err)
		}
		near(t, "all of it", pours[len(pours)-1].Mark.Millilitres(), 100, 1e-9)
	})
}
