package content

import (
	"bytes"
	"cmp"
	"embed"
	"errors"
	"fmt"
	"io/fs"
	"path"
	"regexp"
	"slices"
	"strings"

	"coatwright/planner/library"
	"coatwright/strictyaml"
)

//go:embed notes
var builtIn embed.FS

// BuiltIn is the file tree of the library that the binary carries.
func BuiltIn() fs.FS {
	notes, err := fs.Sub(builtIn, "notes")
	if err != nil {
		panic("content: embedded notes: " + err.Error())
	}
	return notes
}

// maxNote is the largest note that is read. The longest of ours has 6 kB; a
// megabyte of markdown is not a note.
const maxNote = 1 << 20

var slugForm = regexp.MustCompile(`^[a-z0-9]+(-[a-z0-9]+)*$`)

// file is a note as it stands on disk.
type file struct {
	name, kind, slug string
	front, body      []byte
	before           int // lines above the body's first
}

// Load reads every note below tree: <kind>/<slug>.md, and words.yaml. Where
// base is not nil the tree lies over it: notes and words that the tree lacks
// are found there. The error is a strictyaml.Problems with every problem of
// the tree's own files, or an error of reading them.
func Load(tree, base fs.FS) (*Library, error) {
	l := &loader{slugs: map[string][]string{}}
	if base != nil {
		if err := l.read(base, "library/"); err != nil {
			return nil, err
		}
	}
	if err := l.read(tree, ""); err != nil {
		return nil, err
	}
	return l.link()
}

// loader gathers notes before they are bound to one another.
type loader struct {
	words    *library.Vocabulary
	files    []file
	slugs    map[string][]string // kind to the slugs of its notes
	paths    []string            // of all notes, sorted
	problems strictyaml.Problems
}

func (l *loader) problem(file string, line, column int, found, expected, nearest string) {
	l.problems = append(l.problems, &strictyaml.Problem{File: file, Line: line, Column: column, Found: found, Expected: expected, Nearest: nearest})
}

// read takes the words and notes of one tree. A note that is there already is
// replaced.
func (l *loader) read(tree fs.FS, prefix string) error {
	if err := l.readWords(tree, prefix); err != nil {
		return err
	}
	return fs.WalkDir(tree, ".", func(name string, entry fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if entry.IsDir() && strings.HasPrefix(entry.Name(), ".") && name != "." {
			return fs.SkipDir
		}
		if entry.IsDir() || path.Ext(name) != ".md" || !strings.Contains(name, "/") {
			return nil
		}
		return l.readNote(tree, name, prefix)
	})
}

func (l *loader) readWords(tree fs.FS, prefix string) error {
	src, err := fs.ReadFile(tree, wordsFile)
	if errors.Is(err, fs.ErrNotExist) && l.words != nil {
		return nil
	}
	if err != nil {
		return fmt.Errorf("the listed words of the notes: %w", err)
	}
	words, problems := readWords(prefix+wordsFile, src)
	l.words = words
	return problems.Err() // and no further: every note would seem wrong
}

func (l *loader) readNote(tree fs.FS, name, prefix string) error {
	kind, slug := path.Split(strings.TrimSuffix(name, ".md"))
	kind = strings.TrimSuffix(kind, "/")
	shown := prefix + name
	if !slices.Contains(Kinds, kind) {
		l.problem(shown, 1, 1, fmt.Sprintf("the folder %q", kind), "a kind: "+strings.Join(Kinds, ", "), nearestWord(kind, Kinds))
		return nil
	}
	if !slugForm.MatchString(slug) {
		l.problem(shown, 1, 1, fmt.Sprintf("the file name %q", slug+".md"), "lower-case words joined by hyphens, such as tack-off.md", "")
		return nil
	}
	if info, err := fs.Stat(tree, name); err == nil && info.Size() > maxNote {
		l.problem(shown, 1, 1, fmt.Sprintf("a file of %d bytes", info.Size()), fmt.Sprintf("a note of at most %d bytes", maxNote), "")
		return nil
	}
	src, err := fs.ReadFile(tree, name)
	if err != nil {
		return err
	}
	f := file{name: shown, kind: kind, slug: slug}
	var ok bool
	if f.front, f.body, f.before, ok = splitFront(src); !ok {
		l.problem(shown, 1, 1, "no front matter", "a first line --- and a later line --- with the front matter between", "")
		return nil
	}
	l.add(f)
	return nil
}

// add takes a file in, in place of one of the same kind and slug.
func (l *loader) add(f file) {
	same := func(g file) bool { return g.kind == f.kind && g.slug == f.slug }
	if i := slices.IndexFunc(l.files, same); i >= 0 {
		l.files[i] = f
		return
	}
	l.files = append(l.files, f)
	l.slugs[f.kind] = append(l.slugs[f.kind], f.slug)
}

// splitFront parts a note at its --- lines. before counts the lines above the body.
func splitFront(src []byte) (front, body []byte, before int, ok bool) {
	src = bytes.ReplaceAll(src, []byte("\r\n"), []byte("\n"))
	rest, ok := bytes.CutPrefix(src, []byte("---\n"))
	if !ok {
		return nil, nil, 0, false
	}
	front, body, ok = bytes.Cut(rest, []byte("\n---\n"))
	if !ok {
		if front, ok = bytes.CutSuffix(rest, []byte("\n---")); !ok {
			return nil, nil, 0, false
		}
	}
	return front, body, 3 + bytes.Count(front, []byte("\n")), true
}

// link binds the files into a library, or answers with every problem.
func (l *loader) link() (*Library, error) {
	lib := &Library{notes: map[string]*Note{}, mentions: map[string][]*Note{}, planner: emptyPlannerLibrary(l.words)}
	reader := newFront(l.words, l.slugs)
	for _, f := range l.files {
		l.paths = append(l.paths, f.kind+"/"+f.slug)
	}
	slices.Sort(l.paths)
	for _, f := range l.files {
		note, err := l.note(f, reader, lib.planner)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", f.name, err)
		}
		lib.notes[note.Path()] = note
		lib.sorted = append(lib.sorted, note)
	}
	if len(l.problems) == 0 {
		lib.problemsOfPlanner(l)
	}
	if err := l.problems.Err(); err != nil {
		return nil, err
	}
	slices.SortFunc(lib.sorted, compareNotes)
	for _, n := range lib.sorted {
		for _, to := range n.Links {
			lib.mentions[to] = append(lib.mentions[to], n)
		}
	}
	return lib, nil
}

func compareNotes(a, b *Note) int {
	return cmp.Or(
		cmp.Compare(slices.Index(Kinds, a.Kind), slices.Index(Kinds, b.Kind)),
		cmp.Compare(strings.ToLower(a.Title), strings.ToLower(b.Title)),
		cmp.Compare(a.Slug, b.Slug))
}
