package search

import (
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/google/go-cmp/cmp"
)

func TestParse(t *testing.T) {
	word := func(s string) part { return part{text: s} }
	phrase := func(s string) part { return part{text: s, phrase: true} }
	without := func(p part) part { p.exclude = true; return p }
	for _, test := range []struct {
		text string
		want []part
	}{
		{"", nil},
		{" \t\n ", nil},
		{"tack off", []part{word("tack"), word("off")}},
		{"two-pack  clear", []part{word("two-pack"), word("clear")}},
		{`"orange peel" gloss`, []part{phrase("orange peel"), word("gloss")}},
		{`gloss"orange peel"`, []part{word("gloss"), phrase("orange peel")}},
		{"“orange peel”", []part{phrase("orange peel")}},
		{`clear -matt`, []part{word("clear"), without(word("matt"))}},
		{`clear −matt`, []part{word("clear"), without(word("matt"))}},
		{`clear -"dead flat"`, []part{word("clear"), without(phrase("dead flat"))}},
		// A quote that is not closed, or has nothing in it, is none.
		{`orange "peel`, []part{word("orange"), word("peel")}},
		{`"" peel`, []part{word("peel")}},
		{`-"" peel`, []part{word("peel")}},
		{`"`, nil},
		// A minus before a number or a space is no minus.
		{"-5 C", []part{word("-5"), word("C")}},
		{"clear - matt", []part{word("clear"), word("-"), word("matt")}},
		{"--matt", []part{word("--matt")}},
		// What other query languages have is only text here.
		{"title:candy^3 +(a* OR b~2)", []part{word("title:candy^3"), word("+(a*"), word("OR"), word("b~2)")}},
		{"painter’s", []part{word("painter's")}},
		{"can\xffdy", []part{word("candy")}},
	} {
		if diff := cmp.Diff(test.want, parse(test.text).parts, cmp.AllowUnexported(part{})); diff != "" {
			t.Errorf("parse(%q) (-want +got):\n%s", test.text, diff)
		}
	}
}

func TestParseLimits(t *testing.T) {
	if got := len(parse(strings.Repeat("a ", maxText)).parts); got != maxWords {
		t.Errorf("%d parts of a long text, want %d", got, maxWords)
	}
	// The word that the limit falls into is dropped, not halved.
	head := strings.Repeat("x", maxText-2)
	if got := parse(head + " candy").parts; len(got) != 1 || got[0].text != head {
		t.Errorf("the cut text is %v", got)
	}
	// A single endless word is halved.
	if got := parse(strings.Repeat("ö", maxText)).parts; len(got) != 1 || len(got[0].text) > maxText {
		t.Errorf("an endless word is %v", got)
	}
}

// FuzzParse holds that a question is valid, small, without empty parts, and
// the same when its parts are typed again.
func FuzzParse(f *testing.F) {
	for _, seed := range []string{"tack off", `"orange peel" -buff`, `-"a`, "“x” −y", "-5 C", "\xff\"\x00"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		parts := parse(text).parts
		if len(parts) > maxWords {
			t.Errorf("%d parts", len(parts))
		}
		var again []string
		for _, p := range parts {
			if p.text == "" || !utf8.ValidString(p.text) || len(p.text) > maxText || strings.Contains(p.text, `"`) {
				t.Errorf("the part %q", p.text)
			}
			again = append(again, p.String())
		}
		retyped := strings.Join(again, " ")
		if len(retyped) > maxText {
			return
		}
		if diff := cmp.Diff(parts, parse(retyped).parts, cmp.AllowUnexported(part{})); diff != "" {
			t.Errorf("%q typed again as %q (-first +again):\n%s", text, retyped, diff)
		}
	})
}
