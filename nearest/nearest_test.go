package nearest

import (
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestTo(t *testing.T) {
	facts := []string{"keyed", "edges-keyed", "rinsed", "wiped", "dust-free", "smooth"}
	for _, c := range []struct {
		found string
		words []string
		want  string
	}{
		{"keyed", facts, "keyed"},
		{"KEYED", facts, "keyed"},
		{"kyed", facts, "keyed"},
		{"kyeed", facts, "keyed"},
		{"edge-keyed", facts, "edges-keyed"},
		{"dustfree", facts, "dust-free"},
		{"dust free", facts, "dust-free"},
		{"smoth", facts, "smooth"},
		{"polished", facts, ""},
		{"", facts, ""},
		{"x", facts, ""},
		{"g", []string{"L"}, ""},
		{"l", []string{"L"}, "L"},
		{"mn", []string{"min"}, "min"},
		{"abc", []string{"axx"}, ""},
		{"keyed", nil, ""},
		{"bat", []string{"cat", "hat"}, "cat"},
		{"hat", []string{"cat", "hat"}, "hat"},
		{"lack", []string{"lacklustre"}, ""},
		{"grün", []string{"grun"}, "grun"},
	} {
		if got := To(c.found, c.words); got != c.want {
			t.Errorf("To(%q, %q) = %q, want %q", c.found, c.words, got, c.want)
		}
	}
}

func TestDistance(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want int
	}{
		{"", "", 0},
		{"", "abc", 3},
		{"kitten", "sitting", 3}, // Levenshtein's usual example
		{"ca", "abc", 3},         // optimal string alignment; 2 were swaps free to be edited again
		{"ab", "ba", 1},
		{"seal", "sael", 1},
	} {
		if got := distance([]rune(c.a), []rune(c.b)); got != c.want {
			t.Errorf("distance(%q, %q) = %d, want %d", c.a, c.b, got, c.want)
		}
	}
}

var word = rapid.StringMatching(`[abc-]{0,7}`)

func TestDistanceProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := []rune(word.Draw(t, "a")), []rune(word.Draw(t, "b"))
		d := distance(a, b)
		if back := distance(b, a); back != d {
			t.Fatalf("%d edits there, %d back", d, back)
		}
		if (d == 0) != slices.Equal(a, b) {
			t.Fatalf("%d edits between %q and %q", d, string(a), string(b))
		}
		if d > max(len(a), len(b)) || d < max(len(a), len(b))-min(len(a), len(b)) {
			t.Fatalf("%d edits between %d and %d letters", d, len(a), len(b))
		}
	})
}

func TestToProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		found := word.Draw(t, "found")
		words := rapid.SliceOf(word).Draw(t, "words")
		got := To(found, words)
		if got != "" && !slices.Contains(words, got) {
			t.Fatalf("%q is none of the words", got)
		}
		if slices.Contains(words, found) && got != found {
			t.Fatalf("got %q for a listed word", got)
		}
		for _, w := range words {
			if got != "" && distance([]rune(found), []rune(w)) < distance([]rune(found), []rune(got)) {
				t.Fatalf("got %q, %q is nearer", got, w)
			}
		}
		if upper := To(strings.ToUpper(found), words); upper != got {
			t.Fatalf("got %q, but %q in capitals", got, upper)
		}
	})
}

func TestHint(t *testing.T) {
	for word, want := range map[string]string{"": "", "tack-off": `; did you mean "tack-off"?`} {
		if got := Hint(word); got != want {
			t.Errorf("Hint(%q) = %q, want %q", word, got, want)
		}
	}
}
