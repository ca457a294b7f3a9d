package workout

import (
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"

	q "coatwright/quantity"
)

const (
	mil   = 25.4e-6 // m
	um    = 1e-6    // m
	mL    = 1e-6    // m3
	ft2gl = 0.3048 * 0.3048 / (231 * 0.0254 * 0.0254 * 0.0254)
)

// layingSheets are those of a film and how it is laid.
var layingSheets = []*Sheet{filmSheet, coatsSheet, gunSheet}

// own is a film of which all figures are entered, as what comes before others.
func own(entries ...string) []string { return append([]string{"of", ownFilm}, entries...) }

// wantFigure checks a figure of an answer, in SI.
func wantFigure(t *testing.T, p *Page, key string, want, tolerance float64) {
	t.Helper()
	wantNear(t, p.Slug+" "+key, figureOf(t, p, key).Value.SI, want, tolerance)
}

// wantRange checks the range of a figure.
func wantRange(t *testing.T, p *Page, key string, low, high, tolerance float64) {
	t.Helper()
	r := figureOf(t, p, key).Range
	if r == nil {
		t.Fatalf("%s %s has no range", p.Slug, key)
	}
	wantNear(t, p.Slug+" "+key+", least", r.Low.SI, low, tolerance)
	wantNear(t, p.Slug+" "+key+", most", r.High.SI, high, tolerance)
}

// wantVerdict checks the level of a verdict and a piece of what it says; "" for
// none.
func wantVerdict(t *testing.T, p *Page, level, says string) {
	t.Helper()
	v := p.Answer.Verdict
	switch {
	case level == "" && v == nil:
	case v == nil || v.Level != level || !strings.Contains(v.Says, says):
		t.Errorf("%s %v: the verdict is %+v, want %q with %q", p.Slug, p.Values, v, level, says)
	}
}

// tells reports whether an answer says something in one of its sentences.
func tells(p *Page, piece string) bool {
	for _, s := range p.Answer.Says {
		if strings.Contains(s, piece) {
			return true
		}
	}
	return false
}

// likely are the fields of these sheets with what people enter in them.
var likely = map[string]struct {
	low, high float64
	unit      string
}{
	"build": {1, 200, " um"}, "solids": {2, 100, " %"}, "sag": {20, 400, " um"}, "area": {0.001, 50, " m2"}, "lands": {2, 100, " %"},
	"comb": {5, 500, " um"}, "wanted": {1, 300, " um"}, "colour": {0.2, 100, " %"}, "ratio": {5, 99.8, " %"}, "at": {2, 100, " um"},
	"darkest": {0.2, 40, " %"}, "lightest": {41, 100, " %"}, "along": {0.01, 10, " m"}, "across": {0.01, 10, " m"}, "wet": {1, 500, " um"},
	"flow": {1, 400, " mL/min"}, "fan": {5, 500, " mm"}, "overlap": {0, 90, " %"}, "overrun": {0, 100, " mm"}, "turn": {0, 10, " s"},
}

// layingEntry is mostly what people enter, else anything.
func layingEntry(t *rapid.T, f Field) string {
	of, is := likely[f.Key]
	switch {
	case len(f.Choices) > 0 || rapid.IntRange(0, 9).Draw(t, f.Key+": odd") == 0:
		return anyEntry(t, f)
	case is:
		return fmt.Sprint(rapid.Float64Range(of.low, of.high).Draw(t, f.Key), of.unit)
	}
	return fmt.Sprint(rapid.IntRange(1, 8).Draw(t, f.Key))
}

// Whatever is typed in, the answer is sane or each problem is told; and no
// sentence has a number in it that is none.
func TestAnyLayingIsAnsweredOrTold(t *testing.T) {
	lib := builtIn(t)
	for _, s := range layingSheets {
		t.Run(s.Slug, func(t *testing.T) {
			answers := 0
			rapid.Check(t, func(t *rapid.T) {
				given := map[string]string{}
				for _, f := range s.Fill(lib, defaults).Fields {
					if rapid.IntRange(0, 2).Draw(t, f.Key+": touched") == 0 {
						given[f.Key] = layingEntry(t, f)
					}
				}
				p := s.Fill(lib, func(key string) (string, bool) { text, ok := given[key]; return text, ok })
				checkSane(t, p, false)
				if p.Answer == nil {
					return
				}
				answers++
				checkSentences(t, p)
			})
			if answers < 10 {
				t.Errorf("only %d entries were answered", answers)
			}
		})
	}
}

func checkSentences(t *rapid.T, p *Page) {
	says := append([]string{}, p.Answer.Says...)
	if v := p.Answer.Verdict; v != nil {
		says = append(says, v.Says)
	}
	for _, f := range p.Answer.Figures {
		says = append(says, f.Remarks...)
	}
	for _, text := range says {
		for _, none := range []string{"NaN", "Inf", "not known", "without end", "%!"} {
			if strings.Contains(text, none) {
				t.Errorf("%s %v says %q", p.Slug, p.Values, text)
			}
		}
	}
}

// The ends of every field at once: nothing overflows.
func TestLayingsAtTheirEnds(t *testing.T) {
	lib := builtIn(t)
	thin := []string{"build", "0.1 um", "solids", "1 %", "sag", "0.1 um", "area", "10000 m2", "coats", "50", "lands", "1 %", "cleanings", "50", "comb", "5 mm"}
	checkSane(t, answered(t, filmSheet, lib, own(thin...)...), false)
	hard := []string{"build", "0.1 um", "solids", "1 %", "wanted", "5 mm", "colour", "100 %", "ratio", "1 %", "at", "5 mm", "darkest", "0.1 %", "lightest", "100 %"}
	checkSane(t, answered(t, coatsSheet, lib, own(hard...)...), false)
	slow := []string{"wet", "5 mm", "flow", "0.1 mL/min", "fan", "1 m", "overlap", "0 %", "along", "20 m", "across", "20 m", "lands", "1 %", "overrun", "0 mm", "turn", "60 s"}
	checkSane(t, answered(t, gunSheet, lib, own(slow...)...), false)
	fast := []string{"wet", "0.1 um", "flow", "5 L/min", "fan", "1 mm", "overlap", "95 %", "along", "5 mm", "across", "20 m", "lands", "1 %", "overrun", "50 mm", "turn", "0 s"}
	checkSane(t, answered(t, gunSheet, lib, own(fast...)...), false)
}

// Every choice of every field is answered, or says what it needs.
func TestEveryLayingChoice(t *testing.T) {
	lib := builtIn(t)
	for _, s := range layingSheets {
		for _, f := range s.Fill(lib, defaults).Fields {
			for _, c := range f.Choices {
				p := filledIn(t, s, lib, f.Key, c.Value)
				checkSane(t, p, false)
				if p.Answer == nil && c.Value != ownFilm {
					t.Errorf("%s with %s %q: %v", s.Slug, f.Key, c.Value, p.Problems)
				}
			}
		}
	}
}

// A library without a note answers what is entered, and says what it lacks.
func TestLayingsWithoutNotes(t *testing.T) {
	lib := *builtIn(t)
	lib.Materials, lib.Tools = nil, nil
	for _, s := range layingSheets {
		p := s.Fill(&lib, defaults)
		if p.Answer != nil || p.Problems["with"] == "" {
			t.Errorf("%s without an applicator: answered %v, told %v", s.Slug, p.Answer != nil, p.Problems)
		}
	}
}

// Worked by hand, from the figures of a recipe 2 : 1 : 0.2 with 46, 55 and 0 %:
// (0.92 + 0.55)/3.2.
func TestMixedSolids(t *testing.T) {
	lib := builtIn(t)
	for slug, m := range lib.Materials {
		if m.Build == 0 || m.SolidsByVolume == 0 || m.Role == "" {
			continue
		}
		s, err := mixedFor(lib, m, "")
		if err != nil {
			t.Fatal(err)
		}
		f, all := s.solids()
		if !(all[0] > 0 && all[0] <= 1) || f.Value != q.ValueOf(all[0]) {
			t.Errorf("%s as sprayed has solids of %v", slug, all[0])
		}
		if r := spannedBy(all); r.Low > all[0] || r.High < all[0] {
			t.Errorf("%s: %v outside of %v", slug, all[0], r)
		}
	}
	p := answered(t, filmSheet, lib, "of", "two-pack-gloss-clear", "with", "hvlp-gun")
	wantFigure(t, p, "mix-solids", 1.47/3.2, 1e-12)
}

func BenchmarkLayingFill(b *testing.B) {
	lib := builtIn(b)
	for _, s := range layingSheets {
		b.Run(s.Slug, func(b *testing.B) {
			for b.Loop() {
				if s.Fill(lib, defaults).Answer == nil {
					b.Fatal("no answer")
				}
			}
		})
	}
}
