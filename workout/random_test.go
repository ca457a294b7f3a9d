package workout

import (
	"fmt"
	"regexp"
	"strconv"
	"testing"

	"pgregory.net/rapid"
)

// defaulted is a number and its unit, as fields start with them.
var defaulted = regexp.MustCompile(`[0-9.]+ ?[^ 0-9;:,]*`)

// anyEntry is something that somebody may type into a field: a choice, the
// example made larger or smaller by up to a million, nothing, or nonsense.
func anyEntry(t *rapid.T, f Field) string {
	if len(f.Choices) > 0 {
		gap := rapid.SampledFrom([]string{"", "", "", " "}).Draw(t, f.Key+": gap")
		return gap + rapid.SampledFrom(f.Choices).Draw(t, f.Key).Value
	}
	example := f.Default
	if example == "" {
		example = f.Hint
	}
	example = defaulted.FindString(example)
	i := 0
	for i < len(example) && (example[i] >= '0' && example[i] <= '9' || example[i] == '.') {
		i++
	}
	number, err := strconv.ParseFloat(example[:i], 64)
	if err != nil {
		number = 1
	}
	switch rapid.IntRange(0, 19).Draw(t, f.Key+": how") {
	case 0:
		return "0" + example[i:]
	case 1:
		return rapid.SampledFrom([]string{"", "nonsense", "-1" + example[i:], "NaN" + example[i:], "1" + example[i:] + "x"}).Draw(t, f.Key)
	case 2:
		number *= rapid.SampledFrom([]float64{1e-6, 1e-3, 1e3, 1e6}).Draw(t, f.Key+": times")
	default:
		number *= rapid.Float64Range(0.2, 5).Draw(t, f.Key+": times")
	}
	return strconv.FormatFloat(number, 'f', -1, 64) + example[i:]
}

// Whatever is typed in, the answer is sane or each problem is told.
func TestAnyEntryIsAnsweredOrTold(t *testing.T) {
	lib := builtIn(t)
	for _, s := range []*Sheet{vocSheet, boothSheet, vapourSheet, compressorSheet} {
		t.Run(s.Slug, func(t *testing.T) {
			answers := 0
			rapid.Check(t, func(t *rapid.T) {
				given := map[string]string{}
				look := func(key string) (string, bool) { text, ok := given[key]; return text, ok }
				for _, f := range s.Fill(lib, look).Fields {
					if len(f.Choices) > 0 {
						given[f.Key] = anyEntry(t, f)
					}
				}
				for _, f := range s.Fill(lib, look).Fields { // those that the choices ask for
					if rapid.IntRange(0, 3).Draw(t, f.Key+": touched") == 0 {
						given[f.Key] = anyEntry(t, f)
					}
				}
				p := s.Fill(lib, look)
				checkSane(t, p, true)
				if p.Answer != nil {
					answers++
				}
			})
			if answers < 10 {
				t.Errorf("only %d entries were answered", answers)
			}
		})
	}
}

// Every choice of every field is answered as it first comes.
func TestEveryChoiceIsAnswered(t *testing.T) {
	lib := builtIn(t)
	for _, s := range []*Sheet{vocSheet, boothSheet, vapourSheet, compressorSheet} {
		for _, f := range s.Fill(lib, defaults).Fields {
			for _, c := range f.Choices {
				t.Run(fmt.Sprint(s.Slug, "/", f.Key, "/", c.Value), func(t *testing.T) {
					checkSane(t, answered(t, s, lib, f.Key, c.Value), true)
				})
			}
		}
	}
}

func BenchmarkFill(b *testing.B) {
	lib := builtIn(b)
	for _, s := range []*Sheet{vocSheet, boothSheet, vapourSheet, compressorSheet} {
		b.Run(s.Slug, func(b *testing.B) {
			for b.Loop() {
				if s.Fill(lib, defaults).Answer == nil {
					b.Fatal("no answer")
				}
			}
		})
	}
}
