package search

import (
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"

	"coatwright/content"
)

// answers fails the test unless the index finds a note that it should have.
func answers(t *testing.T, ix *Index, text, want string) {
	t.Helper()
	if got := paths(ask(t, ix, Query{Text: text}).Hits); !slices.Contains(got, want) {
		t.Errorf("%q finds %v, not %s", text, got, want)
	}
}

// list returns the names in a folder, nil when there is none.
func list(t *testing.T, dir string) []string {
	t.Helper()
	entries, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for _, e := range entries {
		names = append(names, e.Name())
	}
	return names
}

// filesOf lists all files of the index in dir.
func filesOf(t *testing.T, dir string) []string {
	t.Helper()
	var files []string
	err := filepath.WalkDir(dir, func(path string, entry fs.DirEntry, err error) error {
		if err == nil && !entry.IsDir() {
			files = append(files, path)
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return files
}

// opened opens the index, asks it, and closes it again.
func opened(t *testing.T, dir string, notes []*content.Note, text, want string) {
	t.Helper()
	ix, err := Open(dir, notes)
	if err != nil {
		t.Fatal(err)
	}
	answers(t, ix, text, want)
	if err := ix.Close(); err != nil {
		t.Error(err)
	}
}

func TestOpenAgain(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "new", "search")
	opened(t, dir, small(), "nib", "step/denib")
	files := filesOf(t, dir)
	first, err := os.Stat(files[0])
	if err != nil {
		t.Fatal(err)
	}
	opened(t, dir, small(), "nib", "step/denib")
	second, err := os.Stat(files[0])
	if err != nil {
		t.Fatal(err)
	}
	if !os.SameFile(first, second) || first.ModTime() != second.ModTime() {
		t.Error("the same notes were indexed twice")
	}
}

func TestOpenTwiceAtOnce(t *testing.T) {
	dir := t.TempDir()
	answers(t, open(t, dir, small()), "nib", "step/denib")
	answers(t, open(t, dir, small()), "nib", "step/denib")
}

func TestOpenOtherNotes(t *testing.T) {
	dir := t.TempDir()
	opened(t, dir, small(), "nib", "step/denib")
	before := list(t, dir)

	changed := small()
	changed[0] = &content.Note{Kind: "step", Slug: "tack-off", Title: "Tack off", Text: "Unmistakable."}
	opened(t, dir, changed, "unmistakable", "step/tack-off")
	if after := list(t, dir); len(after) != 1 || cmp.Equal(before, after) {
		t.Errorf("the folder has %v, had %v; want the new index alone", after, before)
	}
}

func TestOpenNothing(t *testing.T) {
	ix := open(t, t.TempDir(), nil)
	if got := ask(t, ix, Query{Text: "anything"}); len(got.Hits) > 0 || got.Total != 0 {
		t.Errorf("an index of no notes finds %v", got)
	}
}

// TestDamage harms each file of an index in each way, and opens it.
func TestDamage(t *testing.T) {
	rewrite := func(change func([]byte) []byte) func(string) error {
		return func(path string) error {
			data, err := os.ReadFile(path)
			if err != nil {
				return err
			}
			return os.WriteFile(path, change(data), 0o644)
		}
	}
	harms := map[string]func(path string) error{
		"removed":   os.Remove,
		"empty":     rewrite(func([]byte) []byte { return nil }),
		"cut short": rewrite(func(b []byte) []byte { return b[:len(b)/2] }),
		"garbage": rewrite(func(b []byte) []byte {
			for i := range b {
				b[i] = byte(i * 7)
			}
			return b
		}),
		"one bit": rewrite(func(b []byte) []byte { b[len(b)/3] ^= 0x10; return b }),
		"longer":  rewrite(func(b []byte) []byte { return append(b, 0) }),
	}
	dir := t.TempDir()
	opened(t, dir, small(), "nib", "step/denib")
	for _, path := range filesOf(t, dir) {
		for name, harm := range harms {
			t.Run(name+" "+filepath.Base(path), func(t *testing.T) {
				if err := harm(path); err != nil {
					t.Fatal(err)
				}
				opened(t, dir, small(), "nib", "step/denib")
			})
		}
	}
}

// TestCrash opens a folder in which a build was broken off.
func TestCrash(t *testing.T) {
	dir := t.TempDir()
	half := filepath.Join(dir, "building-1", "index", "store")
	if err := os.MkdirAll(half, 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(half, "root.bolt"), []byte("half"), 0o644); err != nil {
		t.Fatal(err)
	}
	opened(t, dir, small(), "nib", "step/denib")
	if left := list(t, dir); len(left) != 1 {
		t.Errorf("the folder has %v, want the index alone", left)
	}
}

func TestOpenWhereThereIsNoFolder(t *testing.T) {
	file := filepath.Join(t.TempDir(), "file")
	if err := os.WriteFile(file, nil, 0o644); err != nil {
		t.Fatal(err)
	}
	if _, err := Open(file, small()); err == nil {
		t.Error("a file was opened as a folder")
	}
}
