package search

import (
	"context"
	"errors"
	"slices"
	"strings"
	"sync"
	"testing"

	"github.com/google/go-cmp/cmp"

	"coatwright/content"
)

// small is a library of a few invented notes.
func small() []*content.Note {
	return []*content.Note{
		{Kind: "step", Slug: "tack-off", Title: "Tack off", Also: []string{"dust off"},
			Summary: "Tacking off lifts the last dust.", Text: "Tacking off lifts the last dust. Fold the rag and draw it over the part."},
		{Kind: "step", Slug: "denib", Title: "Denib", Also: []string{"knock back nibs"},
			Summary: "Denibbing takes nibs off a dry film.", Text: "Denibbing takes nibs off a dry film. Use P600 on a block, never on fresh colour."},
		{Kind: "tool", Slug: "tack-rag", Title: "Tack rag", Also: []string{"tack cloth"},
			Summary: "A tack rag is a sticky cloth.", Text: "A tack rag is a sticky cloth. Press it hard & it leaves wax."},
		{Kind: "material", Slug: "two-pack-clear", Title: "Two-pack clear", Also: []string{"2K clear", "lacquer"},
			Summary: "Two-pack clear hardens by itself.", Text: "Two-pack clear hardens by itself. It goes on over colour, and takes polish."},
		{Kind: "fault", Slug: "fisheye", Title: "Fisheye", Also: []string{"craters"}, SeenAs: []string{"paint draws back in rings"},
			Summary: "Fisheyes are round craters.", Text: "Fisheyes are round craters. A trace of silicone on the aluminium is enough. Overspray is not the cause."},
		{Kind: "caution", Slug: "isocyanates", Title: "Isocyanates", Says: "Two-pack mist harms the lungs for good.", Text: "The hardener of two-pack clear has isocyanates."},
		{Kind: "term", Slug: "tack", Title: "Tack", Summary: "Tack is stickiness.", Text: "Tack is stickiness. Orange peel is another matter; so is a peel of an orange."},
	}
}

func TestSearch(t *testing.T) {
	ix := open(t, t.TempDir(), small())
	for _, test := range []struct {
		name, text string
		want       string // the first hit, "" for none
		suggest    string
	}{
		{"title", "tack off", "step/tack-off", ""},
		{"title in other letters", "TACK OFF", "step/tack-off", ""},
		{"one-word title before longer ones", "tack", "term/tack", ""},
		{"other name", "knock back nibs", "step/denib", ""},
		{"seen as", "draws back in rings", "fault/fisheye", ""},
		{"what a caution says", "lungs", "caution/isocyanates", ""},
		{"stem", "tacking", "term/tack", ""},
		{"unfinished", "isocy", "caution/isocyanates", ""},
		{"slip", "fishaye", "fault/fisheye", "fisheye"},
		{"two slips", "isocianats", "caution/isocyanates", "isocyanates"},
		{"slip in an unfinished word", "isociana", "caution/isocyanates", "isocyanates"},
		{"slip among words", "silicone fisheeye", "fault/fisheye", "silicone fisheye"},
		{"US spelling", "aluminum", "fault/fisheye", ""},
		{"hyphen", "two-pack clear", "material/two-pack-clear", ""},
		{"no hyphen", "two pack clear", "material/two-pack-clear", ""},
		{"short for", "2k", "material/two-pack-clear", ""},
		{"two words written as one", "tackrag", "tool/tack-rag", "tack rag"},
		{"one word written as two", "over spray", "fault/fisheye", ""},
		{"grit", "P600", "step/denib", ""},
		{"grit without its letter", "600", "step/denib", ""},
		{"phrase", `"orange peel"`, "term/tack", ""},
		{"phrase that is nowhere", `"peel orange"`, "", ""},
		{"phrase and slip", `"orange peel" matterr`, "term/tack", `"orange peel" matter`},
		{"without", "tack -rag -off", "term/tack", ""},
		{"without a phrase", `tack -"tack rag" -"tack off"`, "term/tack", ""},
		{"without everything", "fisheye -craters", "", ""},
		{"only without", "-rag", "", ""},
		{"an odd word among known ones", "silicone zzzzqqqq craters", "fault/fisheye", ""},
		{"small words alone", "what is it", "", ""},
		{"small words in quotes", `"what is it"`, "", ""},
		{"nothing", "", "", ""},
		{"no note", "zzzzqqqq", "", ""},
	} {
		result := ask(t, ix, Query{Text: test.text})
		first := ""
		if len(result.Hits) > 0 {
			first = result.Hits[0].Path
		}
		if first != test.want || result.Suggest != test.suggest {
			t.Errorf("%s: %q finds %v and suggests %q, want %q first and %q",
				test.name, test.text, paths(result.Hits), result.Suggest, test.want, test.suggest)
		}
	}
}

func TestResult(t *testing.T) {
	ix := open(t, t.TempDir(), small())
	all := ask(t, ix, Query{Text: "tack"})
	if want := []KindCount{{"step", 1}, {"tool", 1}, {"term", 1}}; !cmp.Equal(want, all.Kinds) || all.Total != 3 {
		t.Errorf("tack: %d of %v, want 3 of %v", all.Total, all.Kinds, want)
	}
	tools := ask(t, ix, Query{Text: "tack", Kind: "tool"})
	if diff := cmp.Diff(all.Kinds, tools.Kinds); diff != "" || tools.Total != 1 {
		t.Errorf("tack among tools: %d, want 1; kinds (-all +tools):\n%s", tools.Total, diff)
	}
	if want := []string{"tool/tack-rag"}; !cmp.Equal(want, paths(tools.Hits)) {
		t.Errorf("tack among tools: %v, want %v", paths(tools.Hits), want)
	}
	if one := ask(t, ix, Query{Text: "tack", Limit: 1}); len(one.Hits) != 1 || one.Total != 3 {
		t.Errorf("tack, one hit: %d hits of %d, want 1 of 3", len(one.Hits), one.Total)
	}
	if none := ask(t, ix, Query{Text: "tack", Kind: "finish"}); none.Total != 0 || len(none.Hits) > 0 || len(none.Kinds) != 3 {
		t.Errorf("tack among finishes: %+v", none)
	}
}

func TestHit(t *testing.T) {
	ix := open(t, t.TempDir(), small())
	for _, test := range []struct {
		text string
		want Hit
	}{
		{"sticky cloth", Hit{Path: "tool/tack-rag", Kind: "tool", Title: "Tack rag", Fragment: "A tack rag is a <mark>sticky</mark> <mark>cloth</mark>. Press it hard &amp; it leaves wax."}},
		{"P600", Hit{Path: "step/denib", Kind: "step", Title: "Denib", Fragment: "… Use <mark>P600</mark> on a block, never on fresh colour."}},
		{"lacquer", Hit{Path: "material/two-pack-clear", Kind: "material", Title: "Two-pack clear", Fragment: "Two-pack clear hardens by itself."}},
	} {
		got := ask(t, ix, Query{Text: test.text}).Hits[0]
		got.Score = 0
		if diff := cmp.Diff(test.want, got); diff != "" {
			t.Errorf("%q (-want +got):\n%s", test.text, diff)
		}
	}
}

func TestPrefix(t *testing.T) {
	ix := open(t, t.TempDir(), small())
	for _, test := range []struct {
		text string
		want string // the first hit
	}{
		{"d", "step/denib"},
		{"tack", "term/tack"},
		{"tack o", "step/tack-off"},
		{"tack r", "tool/tack-rag"},
		{"tack c", "tool/tack-rag"},
		{"i", "caution/isocyanates"}, // what it starts is no small word
		{"isoc", "caution/isocyanates"},
		{"fishy", "fault/fisheye"},
		{"lacq", "material/two-pack-clear"},
		{"silic", "fault/fisheye"},
	} {
		hits, err := ix.Prefix(context.Background(), test.text, 5)
		if err != nil {
			t.Fatal(err)
		}
		if len(hits) == 0 || hits[0].Path != test.want {
			t.Errorf("%q finds %v, want %s first", test.text, paths(hits), test.want)
		}
	}
	for text, limit := range map[string]int{"": 5, "zzzzqqqq": 5, "tack": 0} {
		if hits, err := ix.Prefix(context.Background(), text, limit); err != nil || len(hits) > 0 {
			t.Errorf("%q with %d hits: %v, %v", text, limit, paths(hits), err)
		}
	}
	if hits, _ := ix.Prefix(context.Background(), "t", 2); len(hits) != 2 {
		t.Errorf("%d hits, want 2", len(hits))
	}
}

func TestCancelled(t *testing.T) {
	ix := open(t, t.TempDir(), small())
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	if _, err := ix.Search(ctx, Query{Text: "tack"}); !errors.Is(err, context.Canceled) {
		t.Errorf("a cancelled search: %v", err)
	}
}

func TestConcurrent(t *testing.T) {
	ix := open(t, t.TempDir(), small())
	want := paths(ask(t, ix, Query{Text: "tack"}).Hits)
	var group sync.WaitGroup
	for range 8 {
		group.Go(func() {
			for range 20 {
				got, err := ix.Search(context.Background(), Query{Text: "tack"})
				if err != nil || !slices.Equal(want, paths(got.Hits)) {
					t.Errorf("%v, %v, want %v", paths(got.Hits), err, want)
				}
				if _, err := ix.Prefix(context.Background(), "fishy", 5); err != nil {
					t.Error(err)
				}
			}
		})
	}
	group.Wait()
}

// FuzzSearch holds that nothing typed is an error, and that what comes back is
// within its bounds.
func FuzzSearch(f *testing.F) {
	for _, seed := range []string{"tack off", `"orange peel" -buff`, "title:candy^3 +(a* OR b~2)", "/[a-z/", "\x00", strings.Repeat("tackrag ", 50)} {
		f.Add(seed)
	}
	ix := open(f, f.TempDir(), small())
	f.Fuzz(func(t *testing.T, text string) {
		result := ask(t, ix, Query{Text: text})
		if result.Total != len(result.Hits) || result.Total > len(small()) {
			t.Errorf("%d hits of %d", len(result.Hits), result.Total)
		}
		if _, err := ix.Prefix(context.Background(), text, 5); err != nil {
			t.Error(err)
		}
	})
}
