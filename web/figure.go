package web

import (
	"strings"

	"coatwright/planner/trace"
)

// ShownFigure is a figure with its how, and the titles of the notes it names.
type ShownFigure struct {
	trace.Figure
	Titles map[string]string
	Open   bool // the how is open
}

// ShownOrigin is where an input came from, in words and as a link.
type ShownOrigin struct{ Says, Link string }

// NoteTitle is the title of the note that explains the figure.
func (f ShownFigure) NoteTitle() string { return titleOf(f.Titles, f.Note) }

// From says where an input came from.
func (f ShownFigure) From(o trace.Origin) ShownOrigin {
	switch o.From {
	case trace.FromNote:
		says := titleOf(f.Titles, o.At)
		if o.Standing != "" {
			says += ", " + strings.ReplaceAll(o.Standing, "-", " ")
		}
		return ShownOrigin{says, "/note/" + o.At}
	case trace.FromFigure:
		return ShownOrigin{"worked out: " + words(o.At), "#" + o.At}
	case trace.FromJob:
		return ShownOrigin{"the job: " + o.At, ""}
	case trace.FromRoom:
		return ShownOrigin{"the room: " + o.At, ""}
	case trace.FromShop:
		return ShownOrigin{"the shop: " + o.At, ""}
	case trace.FromCan:
		return ShownOrigin{"the can's data sheet", ""}
	case trace.FromEntry:
		return ShownOrigin{"entered above", "#" + o.At}
	case trace.FromSource:
		return ShownOrigin{"the source of the formula", ""}
	}
	return ShownOrigin{"nobody said: taken as usual", ""}
}

// titleOf is the title of a note, in words of its slug where it is not known.
func titleOf(titles map[string]string, path string) string {
	if title := titles[path]; title != "" {
		return title
	}
	return words(path)
}
