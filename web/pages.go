package web

import (
	"html/template"
	"time"

	"coatwright/content"
	q "coatwright/quantity"
)

// Places of the interface, for Frame.Here.
const (
	AtLookUp  = "look-up"
	AtPlan    = "plan"
	AtJobs    = "jobs"
	AtWorkOut = "work-out"
)

// Frame is what every page has around it.
type Frame struct {
	Title string    // of the browser's window; the program's name is added
	Here  string    // AtLookUp, AtPlan, AtWorkOut, AtJobs, or "" for none of them
	Query string    // what stands in the search box
	Path  string    // address of the page, "" where it cannot be asked for again
	Units *q.System // what figures are shown in; nil for Metric
}

func (f Frame) units() *q.System {
	if f.Units == nil {
		return q.Metric
	}
	return f.Units
}

// Systems are the units that a reader can choose from.
func (Frame) Systems() []*q.System { return q.Systems() }

// Shown reports whether the page shows its figures in the units of s.
func (f Frame) Shown(s *q.System) bool { return s == f.units() }

// OwnSearch reports whether the page has its own search box in place of the
// frame's.
func (Frame) OwnSearch() bool { return false }

// HomePage is the front door.
type HomePage struct {
	Frame
	Kinds  []KindCount
	Recent []SavedJob
}

// OwnSearch is true: the search box of the front door is a large one.
func (HomePage) OwnSearch() bool { return true }

// KindCount is a kind of note, with how many notes of it there are.
type KindCount struct {
	Kind  string
	Count int
}

// SavedJob is a job that can be opened again.
type SavedJob struct {
	ID, Title  string
	Substrates string // titles, joined for reading
	Effect     string // title
	Finish     string // title
	Saved      time.Time
	Refused    bool // there is no plan for it
}

// SearchPage is what was found.
type SearchPage struct {
	Frame
	Kind    string      // the kind that hits are limited to; "" for all
	Kinds   []KindCount // what was found of each kind, without that limit
	Total   int
	Hits    []Hit
	Suggest string // a better spelling of the query; "" for none
}

// Hit is one note that was found.
type Hit struct {
	Path     string // "step/tack-off"
	Kind     string
	Title    string
	Fragment template.HTML // escaped, with the words found in <mark>
}

// KindPage lists all notes of a kind.
type KindPage struct {
	Frame
	Kind  string
	Notes []NoteLink
}

// NoteLink names a note.
type NoteLink struct{ Path, Kind, Title, Summary string }

// NotePage is one note for reading.
type NotePage struct {
	Frame
	Note        *content.Note
	Body        template.HTML // the note's HTML, made safe by package content
	MentionedBy []NoteLink    // by kind, then by title
	Figures     []Figure      // their values in the reader's units
	Standing    string        // what the figures rest on: "published" with its source, "common practice", "starting value"
}

// Figure is a number of the note's front matter.
type Figure struct{ Name, Value string }

// JobsPage lists the saved jobs, latest first.
type JobsPage struct {
	Frame
	Jobs []SavedJob
}

// ErrorPage says what went wrong and what to do about it.
type ErrorPage struct {
	Frame
	Status  int
	Heading string
	Detail  string
	Suggest string // the nearest valid address, such as "/note/step/tack-off"; "" for none
}

func (HomePage) template() string   { return "home" }
func (SearchPage) template() string { return "search" }
func (KindPage) template() string   { return "kind" }
func (NotePage) template() string   { return "note" }
func (FormPage) template() string   { return "form" }
func (PlanPage) template() string   { return "plan" }
func (JobsPage) template() string   { return "jobs" }
func (ErrorPage) template() string  { return "error" }

// Groups sorts the notes that mention this one under their kinds.
func (p NotePage) Groups() []NoteGroup {
	var groups []NoteGroup
	for _, n := range p.MentionedBy {
		if len(groups) == 0 || groups[len(groups)-1].Kind != n.Kind {
			groups = append(groups, NoteGroup{Kind: n.Kind})
		}
		last := &groups[len(groups)-1]
		last.Notes = append(last.Notes, n)
	}
	return groups
}

// NoteGroup is notes of one kind.
type NoteGroup struct {
	Kind  string
	Notes []NoteLink
}
