package content

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"golang.org/x/tools/txtar"
)

// Each case is the body of a step note and the HTML that it becomes.
func TestMarkdown(t *testing.T) {
	runCases(t, "testdata/markdown.txt", func(t *testing.T, files []txtar.File) string {
		b, err := render("step", files[0].Data)
		if err != nil {
			t.Fatal(err)
		}
		checkHarmless(t, b.html)
		return b.html
	})
}

func TestRender(t *testing.T) {
	source := "First *paragraph* with\na [link](../tool/gun.md#fan).\n\n## How `it` is done\n\n1. One\n2. Two\n\n" +
		"## How `it` is done\n\n| a | b |\n|---|---|\n| c | [d](wash.md) |\n\n### Grün & gut\n\nLast.\n\n```\nin code\n```\n"
	b, err := render("step", []byte(source))
	if err != nil {
		t.Fatal(err)
	}
	if want := "First paragraph with a link."; b.summary != want {
		t.Errorf("summary %q, want %q", b.summary, want)
	}
	if want := "First paragraph with a link. How it is done. One Two How it is done. a b c d Grün & gut. Last. in code"; b.text != want {
		t.Errorf("text %q, want %q", b.text, want)
	}
	heads := []Head{{2, "How it is done", "how-it-is-done"}, {2, "How it is done", "how-it-is-done-1"}, {3, "Grün & gut", "grn--gut"}}
	if diff := cmp.Diff(heads, b.heads); diff != "" {
		t.Errorf("heads (-want +got):\n%s", diff)
	}
	for _, h := range b.heads {
		if !strings.Contains(b.html, fmt.Sprintf(`<h%d id="%s">`, h.Level, h.ID)) {
			t.Errorf("no heading of level %d with the id %q in the HTML", h.Level, h.ID)
		}
	}
	links := []link{{"tool/gun", "../tool/gun.md#fan", 2, 3}, {"step/wash", "wash.md", 13, 7}}
	if diff := cmp.Diff(links, b.links, cmp.AllowUnexported(link{})); diff != "" {
		t.Errorf("links (-want +got):\n%s", diff)
	}
}

func TestSummaryOfFirstParagraphAlone(t *testing.T) {
	for source, want := range map[string]string{
		"":                            "",
		"One.\n\nTwo.\n":              "One.",
		"## Head\n\nOne.\n":           "",
		"a\\\nb `c` <d@e.fg>\n":       "a b c d@e.fg",
		"One.[^1]\n\n[^1]: A note.\n": "One.",
		"    code\n":                  "",
	} {
		b, err := render("step", []byte(source))
		if err != nil {
			t.Fatal(err)
		}
		if b.summary != want {
			t.Errorf("%q: summary %q, want %q", source, b.summary, want)
		}
	}
}

func TestTarget(t *testing.T) {
	for _, c := range []struct {
		dest, to string
		isNote   bool
	}{
		{"wash.md", "step/wash", true},
		{"./wash.md", "step/wash", true},
		{"../tool/gun.md", "tool/gun", true},
		{"../tool/gun.md#fan", "tool/gun", true},
		{"../../etc/passwd", "../etc/passwd", true},
		{"#fan", "", false},
		{"", "", false},
		{"/plans", "", false},
		{"//other.example/x.md", "", false},
		{"https://other.example/x.md", "", false},
		{"mailto:a@b.example", "", false},
	} {
		to, isNote := target("step", c.dest)
		if to != c.to || isNote != c.isNote {
			t.Errorf("target(%q) = %q, %v, want %q, %v", c.dest, to, isNote, c.to, c.isNote)
		}
	}
}

// TestBuiltIn loads the library that the binary carries, which has no problem,
// and finds each note as sound as a reader expects.
func TestBuiltIn(t *testing.T) {
	lib := load(t, BuiltIn(), nil)
	for _, n := range lib.Notes() {
		if n.Title == "" || n.Summary == "" || n.Text == "" || n.HTML == "" {
			t.Errorf("%s: no title, first paragraph or text", n.File)
		}
		if !slices.Contains(Kinds, n.Kind) || lib.Note(n.Path()) != n {
			t.Errorf("%s is not found at %s", n.File, n.Path())
		}
		checkHarmless(t, n.HTML)
	}
}
