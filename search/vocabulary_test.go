package search

import (
	"testing"

	"github.com/google/go-cmp/cmp"
)

func TestVocabulary(t *testing.T) {
	v := open(t, t.TempDir(), small()).words
	for _, test := range []struct {
		word     string
		complete []string
		correct  []string
		last     []string // correct, for the last word of a question
	}{
		// tack is in the most notes.
		{"tac", []string{"tack", "tacking"}, nil, nil},
		{"fishaye", nil, []string{"fisheye"}, []string{"fisheye"}},
		{"isocyanate", []string{"isocyanates"}, []string{"isocyanates"}, []string{"isocyanates"}},
		{"isociana", nil, nil, []string{"isocyanates"}},
		// The first letter is seldom the slip.
		{"sacking", nil, []string{"tacking"}, []string{"tacking"}},
		{"cat", nil, nil, nil}, // too short to be mended
		{"p60", []string{"p600"}, nil, nil},
		{"p6000", nil, nil, nil}, // a number is meant
		{"zzzzqqqq", nil, nil, nil},
	} {
		if diff := cmp.Diff(test.complete, v.complete(test.word)); diff != "" {
			t.Errorf("complete(%q) (-want +got):\n%s", test.word, diff)
		}
		if diff := cmp.Diff(test.correct, v.correct(test.word, false)); diff != "" {
			t.Errorf("correct(%q) (-want +got):\n%s", test.word, diff)
		}
		if diff := cmp.Diff(test.last, v.correct(test.word, true)); diff != "" {
			t.Errorf("correct(%q) as the last word (-want +got):\n%s", test.word, diff)
		}
	}
}

func TestParted(t *testing.T) {
	v := open(t, t.TempDir(), small()).words
	for word, want := range map[string][2]string{
		"tackrag": {"tack", "rag"}, "orangepeel": {"orange", "peel"}, "overspray": {}, "tackzzz": {}, "rag": {}, "": {},
	} {
		a, b, ok := v.parted(word)
		if (a != want[0]) || (b != want[1]) || ok != (want[0] != "") {
			t.Errorf("parted(%q) = %q, %q, %v, want %v", word, a, b, ok, want)
		}
	}
}
