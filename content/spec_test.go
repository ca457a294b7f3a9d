package content

import (
	"flag"
	"io/fs"
	"os"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/google/go-cmp/cmp"
	"golang.org/x/tools/txtar"
)

var update = flag.Bool("update", false, "write what the cases give into testdata")

// caseMark starts a case in a file of cases: "=== 3: a broken link".
const caseMark = "=== "

// runCases runs every case of a text file. A case is a heading and a few files
// in txtar form, of which the last one, "want", is what give makes of the rest.
func runCases(t *testing.T, file string, give func(t *testing.T, files []txtar.File) string) {
	src, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	parts := strings.Split("\n"+string(src), "\n"+caseMark)
	out := strings.TrimPrefix(parts[0], "\n")
	for i, part := range parts[1:] {
		name, rest, _ := strings.Cut(part, "\n")
		archive := txtar.Parse([]byte(rest + "\n"))
		last := len(archive.Files) - 1
		if last < 0 || archive.Files[last].Name != "want" {
			t.Fatalf("%s: case %q does not end in -- want --", file, name)
		}
		var got string
		t.Run(name, func(t *testing.T) {
			got = give(t, archive.Files[:last])
			want := strings.TrimRight(string(archive.Files[last].Data), "\n")
			if diff := cmp.Diff(want, strings.TrimRight(got, "\n")); diff != "" && !*update {
				t.Errorf("(-want +got):\n%s", diff)
			}
		})
		archive.Files[last].Data = []byte(strings.TrimRight(got, "\n") + "\n")
		if i > 0 || out != "" {
			out += "\n"
		}
		out += caseMark + name + "\n" + string(txtar.Format(archive))
	}
	if *update {
		if err := os.WriteFile(file, []byte(out), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}

// tree is the files as a file tree.
func tree(files []txtar.File) fs.FS {
	m := fstest.MapFS{}
	for _, f := range files {
		m[f.Name] = &fstest.MapFile{Data: f.Data}
	}
	return m
}

// small is the file tree of testdata/small.txtar.
func small(tb testing.TB) fs.FS {
	tb.Helper()
	archive, err := txtar.ParseFile("testdata/small.txtar")
	if err != nil {
		tb.Fatal(err)
	}
	return tree(archive.Files)
}

// load loads a tree that must be right.
func load(tb testing.TB, tree, base fs.FS) *Library {
	tb.Helper()
	lib, err := Load(tree, base)
	if err != nil {
		tb.Fatal(err)
	}
	return lib
}
