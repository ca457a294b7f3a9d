package search

import (
	"context"
	"testing"

	"coatwright/content"
)

// builtIn is the library that the binary carries.
func builtIn(t testing.TB) []*content.Note {
	t.Helper()
	library, err := content.Load(content.BuiltIn(), nil)
	if err != nil {
		t.Fatal(err)
	}
	return library.Notes()
}

// open opens an index of the notes in a folder of the test's own.
func open(t testing.TB, dir string, notes []*content.Note) *Index {
	t.Helper()
	ix, err := Open(dir, notes)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		if err := ix.Close(); err != nil {
			t.Error(err)
		}
	})
	return ix
}

func ask(t testing.TB, ix *Index, q Query) Result {
	t.Helper()
	result, err := ix.Search(context.Background(), q)
	if err != nil {
		t.Fatalf("%q: %v", q.Text, err)
	}
	return result
}

// paths are where hits lead.
func paths(hits []Hit) []string {
	var out []string
	for _, h := range hits {
		out = append(out, h.Path)
	}
	return out
}
