// Package web owns what a reader sees: the pages as typed structs, their
// templates, styles and scripts, and the drawings, all embedded in the binary.
// It turns values into bytes. It reads no store, searches nothing, plans
// nothing and knows no HTTP; whoever serves it does.
//
// Pages carry no inline style or script, so that they work under the policy
// "default-src 'self'".
package web

import (
	"bytes"
	"embed"
	"fmt"
	"html/template"
	"io/fs"
	"path"
	"strings"

	q "coatwright/quantity"
)

//go:embed templates
var templateFiles embed.FS

// Page is one of the page structs of this package. All embed Frame.
type Page interface {
	template() string // name of its file in templates/, without ".html"
	units() *q.System
}

// Files that every page is parsed with: the frame and the shared pieces.
const (
	framePage  = "frame"
	sharedGlob = "templates/shared-*.html"
)

// pages are the templates of every page by the units they show.
var pages = func() map[*q.System]map[string]*template.Template {
	out := map[*q.System]map[string]*template.Template{}
	for _, s := range q.Systems() {
		out[s] = parsePages(s)
	}
	return out
}()

// parsePages parses every page's file together with the frame. Embedded files
// are fixed at build time, so a failure is a fault in the program and panics.
func parsePages(s *q.System) map[string]*template.Template {
	frame := template.Must(template.New(framePage).Funcs(funcs).Funcs(measures(s)).
		ParseFS(templateFiles, "templates/"+framePage+".html", sharedGlob))
	out := map[string]*template.Template{}
	for _, name := range pageNames() {
		t := template.Must(frame.Clone())
		out[name] = template.Must(t.ParseFS(templateFiles, "templates/"+name+".html"))
	}
	return out
}

// pageNames lists the templates that are pages of their own.
func pageNames() []string {
	files, err := fs.Glob(templateFiles, "templates/*.html")
	if err != nil {
		panic("web: " + err.Error()) // the pattern is a constant
	}
	var names []string
	for _, file := range files {
		name := strings.TrimSuffix(path.Base(file), ".html")
		if name != framePage && !strings.HasPrefix(name, "shared-") {
			names = append(names, name)
		}
	}
	return names
}

// Render executes page's template. It answers all of the page or, with an
// error, nothing, so that half a page is never sent.
func Render(page Page) ([]byte, error) {
	t := pages[page.units()][page.template()]
	var b bytes.Buffer
	if err := t.ExecuteTemplate(&b, framePage+".html", page); err != nil {
		return nil, fmt.Errorf("web: page %s: %w", page.template(), err)
	}
	return b.Bytes(), nil
}
