package content

import (
	"errors"
	"fmt"
	"io/fs"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/google/go-cmp/cmp"
	"golang.org/x/tools/txtar"

	"coatwright/strictyaml"
)

// Each case lays a few notes over the small library and states what is wrong.
func TestProblems(t *testing.T) {
	base := small(t)
	for _, file := range []string{"files", "links", "needs", "steps", "materials", "notes", "designs", "over", "words"} {
		runCases(t, "testdata/"+file+".txt", func(t *testing.T, files []txtar.File) string {
			_, err := Load(tree(files), base)
			if err == nil {
				return "no problem"
			}
			var problems strictyaml.Problems
			if !errors.As(err, &problems) {
				t.Errorf("error %v, want strictyaml.Problems", err)
			}
			return err.Error()
		})
	}
}

func TestNoWords(t *testing.T) {
	if _, err := Load(fstest.MapFS{}, nil); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("a tree without words and without a base: error %v", err)
	}
}

func TestNote(t *testing.T) {
	lib := load(t, small(t), nil)
	got := lib.Note("step/wash")
	want := &Note{
		Kind: "step", Slug: "wash", Title: "Wash", Also: []string{"scrub"}, File: "step/wash.md",
		Summary: "Wash with soapwater and a rag.", Text: "Wash with soapwater and a rag.",
		HTML:  "<p>Wash with <a href=\"/note/material/soapwater\">soapwater</a> and a rag.</p>\n",
		Links: []string{"material/soapwater"},
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
	for path, says := range map[string]string{
		"caution/slippery": "Soap on the floor throws you.",
		"term/scratch":     "A fine line that a film grips.",
	} {
		if got := lib.Note(path).Says; got != says {
			t.Errorf("%s says %q, want %q", path, got, says)
		}
	}
	if got := lib.Note("fault/peeling").SeenAs; !slices.Equal(got, []string{"comes off in sheets"}) {
		t.Errorf("peeling is seen as %q", got)
	}
	if lib.Note("step/none") != nil {
		t.Error("there is a note step/none")
	}
}

func TestNotesInOrder(t *testing.T) {
	var got []string
	for _, n := range load(t, small(t), nil).Notes() {
		got = append(got, n.Path())
	}
	want := []string{"step/mask", "step/scratch", "step/spray-clear", "step/spray-ground", "step/spray-art", "step/strip", "step/wash",
		"substrate/painted-tin", "substrate/tin", "effect/plain", "design/letters", "finish/shiny",
		"material/clear", "material/colour", "material/ground", "material/soapwater", "tool/film", "tool/gun",
		"fault/peeling", "caution/slippery", "term/scratch"}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}

// A shop's tree replaces a note of the base and adds one that links into it.
func TestOverlay(t *testing.T) {
	shop := tree([]txtar.File{
		{Name: "term/scratch.md", Data: []byte("---\nkind: term\ntitle: Our scratch\nmeans: Ours.\n---\n")},
		{Name: "background/ours.md", Data: []byte("---\nkind: background\ntitle: Ours\n---\n[wash](../step/wash.md), [scratch](../term/scratch.md)\n")},
		{Name: "README.md", Data: []byte("not a note")},
		{Name: ".trash/step/old.md", Data: []byte("not read")},
	})
	lib := load(t, shop, small(t))
	if n := lib.Note("term/scratch"); n.Title != "Our scratch" || n.File != "term/scratch.md" {
		t.Errorf("the base's note stands: %q of %s", n.Title, n.File)
	}
	if n := lib.Note("step/wash"); n == nil || n.File != "library/step/wash.md" {
		t.Errorf("the base's wash is %v", n)
	}
	if got := lib.Note("background/ours").Links; !slices.Equal(got, []string{"step/wash", "term/scratch"}) {
		t.Errorf("the added note links to %q", got)
	}
	if got, want := len(lib.Notes()), len(load(t, small(t), nil).Notes())+1; got != want {
		t.Errorf("%d notes, want %d", got, want)
	}
	if lib.Planner().Words.Facts["clean"] == nil {
		t.Error("the base's words are lost")
	}
}

// A note that the base has and the shop replaces with a broken one is not
// answered with the base's.
func TestOverlayProblem(t *testing.T) {
	shop := tree([]txtar.File{{Name: "term/scratch.md", Data: []byte("---\nkind: term\ntitle: Ours\n---\n")}})
	_, err := Load(shop, small(t))
	want := `term/scratch.md:2:1: means: found nothing, expected the key "means"`
	if fmt.Sprint(err) != want {
		t.Errorf("got  %v\nwant %s", err, want)
	}
}

// MentionedBy is Links turned round.
func TestMentions(t *testing.T) {
	for name, lib := range map[string]*Library{"small": load(t, small(t), nil), "built-in": load(t, BuiltIn(), nil)} {
		want := map[string][]string{}
		for _, n := range lib.Notes() {
			for _, to := range n.Links {
				want[to] = append(want[to], n.Path())
			}
		}
		for _, n := range lib.Notes() {
			var got []string
			for _, by := range lib.MentionedBy(n.Path()) {
				got = append(got, by.Path())
			}
			if diff := cmp.Diff(want[n.Path()], got); diff != "" {
				t.Errorf("%s: %s (-want +got):\n%s", name, n.Path(), diff)
			}
		}
	}
	if got := load(t, small(t), nil).MentionedBy("step/wash"); len(got) != 2 {
		t.Errorf("step/wash is mentioned by %d notes, want scratch and peeling", len(got))
	}
}

func TestSplitFront(t *testing.T) {
	for _, c := range []struct {
		name, src   string
		front, body string
		before      int
		ok          bool
	}{
		{"usual", "---\na: 1\nb: 2\n---\nbody\n", "a: 1\nb: 2", "body\n", 4, true},
		{"carriage returns", "---\r\na: 1\r\n---\r\nbody\r\n", "a: 1", "body\n", 3, true},
		{"no body", "---\na: 1\n---\n", "a: 1", "", 3, true},
		{"no last newline", "---\na: 1\n---", "a: 1", "", 3, true},
		{"rule in the body", "---\na: 1\n---\nx\n---\ny\n", "a: 1", "x\n---\ny\n", 3, true},
		{"none", "body\n", "", "", 0, false},
		{"not first", "\n---\na: 1\n---\n", "", "", 0, false},
		{"not closed", "---\na: 1\n", "", "", 0, false},
		{"empty file", "", "", "", 0, false},
	} {
		front, body, before, ok := splitFront([]byte(c.src))
		if string(front) != c.front || string(body) != c.body || before != c.before || ok != c.ok {
			t.Errorf("%s: %q, %q, %d, %v", c.name, front, body, before, ok)
		}
	}
}

func TestLongNote(t *testing.T) {
	shop := fstest.MapFS{"term/long.md": {Data: []byte(strings.Repeat("x", maxNote+1))}}
	_, err := Load(shop, small(t))
	want := "term/long.md:1:1: found a file of 1048577 bytes, expected a note of at most 1048576 bytes"
	if fmt.Sprint(err) != want {
		t.Errorf("got  %v\nwant %s", err, want)
	}
}

// FuzzNote checks that any file is read or refused.
func FuzzNote(f *testing.F) {
	f.Add([]byte("---\nkind: step\ntitle: x\nneeds: [{any: []}]\n---\n[a](b.md)\n"))
	base := small(f)
	if err := fs.WalkDir(base, ".", func(name string, e fs.DirEntry, err error) error {
		if src, err := fs.ReadFile(base, name); err == nil {
			f.Add(src)
		}
		return err
	}); err != nil {
		f.Fatal(err)
	}
	f.Fuzz(func(t *testing.T, src []byte) {
		if len(src) > 16<<10 {
			t.Skip()
		}
		for _, kind := range []string{"step", "material", "finish", "design", "tool"} {
			lib, err := Load(fstest.MapFS{kind + "/fuzz.md": {Data: src}}, base)
			var problems strictyaml.Problems
			if err != nil && !errors.As(err, &problems) {
				t.Errorf("error %v, want strictyaml.Problems", err)
			}
			if err == nil {
				checkHarmless(t, lib.Note(kind+"/fuzz").HTML)
			}
		}
	})
}
