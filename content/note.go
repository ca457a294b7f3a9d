// Package content owns the notes: markdown files with strict front matter, the
// links between them, and the words they may use.
//
// A Library is read whole from a file tree, checked whole, and then only read.
// Reading never stops at the first problem: Load returns every one it finds,
// each with file, line and column. Nothing here plans or searches; Planner
// hands the front matter on as plain structs.
package content

import (
	"coatwright/planner/library"
)

// Note is one note. Callers must not change it.
type Note struct {
	Kind    string
	Slug    string
	Title   string
	Also    []string // other names: slang, spellings
	Says    string   // the one sentence of a caution or term; "" for other kinds
	SeenAs  []string // what a painter sees, for a fault
	Summary string   // the first paragraph as plain text
	Text    string   // the whole body as plain text, for search
	HTML    string   // the body rendered, links resolved to pages
	Heads   []Head   // the headings of the body, in order
	Links   []string // paths of the notes this one mentions, in order, each once
	File    string   // where it was read
}

// Head is a heading of a note's body.
type Head struct {
	Level int // 2 for ##
	Text  string
	ID    string // its anchor in HTML
}

// Path is the note's address below /note/: "step/tack-off".
func (n *Note) Path() string { return n.Kind + "/" + n.Slug }

// Kinds are the kinds of note, in the order in which they are listed.
var Kinds = []string{"step", "substrate", "effect", "design", "finish", "material", "tool", "fault", "caution", "term", "background"}

// Library is a checked set of notes.
type Library struct {
	notes    map[string]*Note
	sorted   []*Note
	mentions map[string][]*Note
	planner  *library.Library
}

// Note returns the note at path ("step/tack-off"), nil when there is none.
func (l *Library) Note(path string) *Note { return l.notes[path] }

// Notes returns all notes, by kind and then by title.
func (l *Library) Notes() []*Note { return l.sorted }

// MentionedBy returns the notes that link to path, by kind and then by title.
func (l *Library) MentionedBy(path string) []*Note { return l.mentions[path] }

// Planner returns the front matter as the planner reads it.
func (l *Library) Planner() *library.Library { return l.planner }
