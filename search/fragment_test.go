package search

import (
	"html"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	blevesearch "github.com/blevesearch/bleve/v2/search"

	"coatwright/content"
)

// placesOf finds words in text as the index would.
func placesOf(text string, words ...string) blevesearch.TermLocationMap {
	places := blevesearch.TermLocationMap{}
	for _, w := range words {
		for from := 0; ; {
			at := strings.Index(text[from:], w)
			if at < 0 {
				break
			}
			start := from + at
			from = start + len(w)
			places[w] = append(places[w], &blevesearch.Location{Start: uint64(start), End: uint64(from)})
		}
	}
	return places
}

func TestFragment(t *testing.T) {
	filler := strings.Repeat("Thin coats flow and dry as they should. ", 12)
	for _, test := range []struct {
		name, text string
		words      []string
		want       string
	}{
		{"whole text", "Wipe the dust off.", []string{"dust"}, "Wipe the <mark>dust</mark> off."},
		{"escaped", "If dust < 3 um & <b>dry</b>, stop.", []string{"dust"}, "If <mark>dust</mark> &lt; 3 um &amp; &lt;b&gt;dry&lt;/b&gt;, stop."},
		{"hostile word", "<script>", []string{"<script>"}, "<mark>&lt;script&gt;</mark>"},
		{"both ends cut", filler + "Dust. " + strings.Repeat("x", fragmentLength) + " " + filler, []string{"Dust"}, "… <mark>Dust</mark>. " + strings.Repeat("x", fragmentLength) + " …"},
		{"the end", filler + "A nib is dust.", []string{"dust"}, "… A nib is <mark>dust</mark>."},
		{"most words", "Dust here. " + filler + "There dust and nibs.", []string{"ust", "nibs"}, "… There d<mark>ust</mark> and <mark>nibs</mark>."},
		{"nothing found", "Wipe the dust off.", nil, "A &lt;short&gt; summary."},
	} {
		n := &content.Note{Text: test.text, Summary: "A <short> summary.", Says: "What it says."}
		got := string(fragment(n, placesOf(test.text, test.words...)))
		if diff := cmp.Diff(test.want, got); diff != "" {
			t.Errorf("%s (-want +got):\n%s", test.name, diff)
		}
	}
	if got := fragment(&content.Note{Says: "What it says."}, nil); got != "What it says." {
		t.Errorf("without a summary: %q", got)
	}
}

// TestFragmentIsHarmless holds that a fragment is a piece of the escaped text
// with nothing but marks in it.
func TestFragmentIsHarmless(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringMatching(`([a-c<>&"ö]{1,9}[ .!]{1,2}){1,80}`).Draw(t, "text")
		words := rapid.SliceOfN(rapid.SampledFrom([]string{"a", "b<", "ö", "& ", "ab"}), 1, 3).Draw(t, "words")
		got := string(fragment(&content.Note{Text: text}, placesOf(text, words...)))
		bare := strings.NewReplacer("<mark>", "", "</mark>", "").Replace(got)
		if strings.ContainsAny(bare, `<>"`) {
			t.Fatalf("not escaped: %s", got)
		}
		bare = strings.TrimSuffix(strings.TrimPrefix(bare, "… "), " …")
		if !strings.Contains(text, html.UnescapeString(bare)) {
			t.Fatalf("%q is no piece of %q", got, text)
		}
		if len(bare) > 0 && len(html.UnescapeString(bare)) > fragmentLength+fragmentLength/2 {
			t.Fatalf("%d bytes", len(bare))
		}
	})
}
