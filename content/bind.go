package content

import (
	"fmt"
	"path"
	"slices"
	"strings"

	"coatwright/planner/library"
	"coatwright/strictyaml"
)

func emptyPlannerLibrary(words *library.Vocabulary) *library.Library {
	return &library.Library{
		Words:      words,
		Substrates: map[string]*library.Substrate{},
		Materials:  map[string]*library.Material{},
		Steps:      map[string]*library.Step{},
		Effects:    map[string]*library.Effect{},
		Designs:    map[string]*library.Design{},
		Finishes:   map[string]*library.Finish{},
		Tools:      map[string]*library.Tool{},
		Cautions:   map[string]*library.Caution{},
	}
}

// note reads one file into a note, and its front matter into lib.
func (l *loader) note(f file, reader *front, lib *library.Library) (*Note, error) {
	m, doc := strictyaml.Read(f.name, f.front, 1)
	n := &Note{Kind: f.kind, Slug: f.slug, File: f.name}
	m.Need("kind").OneOf("the kind of its folder", []string{f.kind})
	n.Title = m.Need("title").Text()
	n.Also = m.Get("also").Texts()
	reader.kind(n, m, lib)
	m.Close()
	l.problems = append(l.problems, doc.Problems()...)

	b, err := render(f.kind, f.body)
	if err != nil {
		return nil, err
	}
	n.HTML, n.Text, n.Summary, n.Heads = b.html, b.text, b.summary, b.heads
	for _, k := range b.links {
		l.checkLink(f, k)
		if !slices.Contains(n.Links, k.to) && k.to != n.Path() {
			n.Links = append(n.Links, k.to)
		}
	}
	return n, nil
}

// kind reads what the note's kind has of its own.
func (f *front) kind(n *Note, m *strictyaml.Map, lib *library.Library) {
	switch n.Kind {
	case "step":
		lib.Steps[n.Slug] = f.step(n.Slug, n.Title, m)
	case "material":
		lib.Materials[n.Slug] = f.material(n.Slug, n.Title, m)
	case "substrate":
		lib.Substrates[n.Slug] = f.substrate(n.Slug, n.Title, m)
	case "effect":
		lib.Effects[n.Slug] = f.effect(n.Slug, n.Title, m)
	case "design":
		lib.Designs[n.Slug] = f.design(n.Slug, n.Title, m)
	case "finish":
		lib.Finishes[n.Slug] = f.finish(n.Slug, n.Title, m)
	case "tool":
		lib.Tools[n.Slug] = f.tool(n.Slug, n.Title, m)
	case "caution":
		n.Says = m.Need("says").Text()
		lib.Cautions[n.Slug] = &library.Caution{Slug: n.Slug, Title: n.Title, Says: n.Says}
	case "term":
		n.Says = m.Need("means").Text()
	case "fault":
		n.SeenAs = m.Need("seen-as").Texts()
	}
}

// checkLink reports a link to a note that is not there.
func (l *loader) checkLink(f file, k link) {
	if _, found := slices.BinarySearch(l.paths, k.to); found {
		return
	}
	near := ""
	if to := nearestPath(k.to, l.paths); to != "" {
		near = relative(f.kind, to)
	}
	l.problem(f.name, f.before+k.line, k.col, fmt.Sprintf("a link to %q", k.as), "a link to a note that exists", near)
}

// nearestPath is the path of paths that to probably meant: the same slug of
// another kind, or the nearest spelling.
func nearestPath(to string, paths []string) string {
	for _, p := range paths {
		if path.Base(p) == path.Base(to) {
			return p
		}
	}
	return nearestWord(to, paths)
}

// relative is the link from a note of kind to the note at path.
func relative(kind, path string) string {
	if rest, same := strings.CutPrefix(path, kind+"/"); same {
		return rest + ".md"
	}
	return "../" + path + ".md"
}
