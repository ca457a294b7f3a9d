package web

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
)

// How many parts and designs the form has room for: of designs, as many as a
// job may have.
const (
	MaxParts   = 4
	MaxDesigns = 12
)

// Row is the fields of one part or one design.
type Row struct {
	FormPage
	Index  int
	Name   string // "part0": what a problem of the row as a whole is filed under
	Prefix string // "part0-", of the names of its fields
	marks  []string
}

// Fields of which one filled in means that the row is used; the others start
// with a default.
var (
	partMarks   = []string{"name", "substrate"}
	designMarks = []string{"kind", "name", "on", "area", "position", "with", "over"}
)

// Parts are the rows for parts, used and empty.
func (p FormPage) Parts() []Row { return p.rows("part", MaxParts, partMarks) }

// Designs are the rows for designs, used and empty.
func (p FormPage) Designs() []Row { return p.rows("design", MaxDesigns, designMarks) }

func (p FormPage) rows(kind string, n int, marks []string) []Row {
	rows := make([]Row, n)
	for i := range rows {
		name := fmt.Sprintf("%s%d", kind, i)
		rows[i] = Row{FormPage: p, Index: i, Name: name, Prefix: name + "-", marks: marks}
	}
	return rows
}

// Used reports whether anything was entered in the row.
func (r Row) Used() bool {
	if r.problem(r.Name) != "" || r.HasProblem(r.Prefix) {
		return true
	}
	return slices.ContainsFunc(r.marks, func(mark string) bool { return r.Form.Get(r.Prefix+mark) != "" })
}

// Number counts rows from one.
func (r Row) Number() int { return r.Index + 1 }

// Whole stands for the row itself, which may have a problem of its own.
func (r Row) Whole() Field { return r.Field(r.Name, "", "") }

// In makes a field of this row; show lists the shapes it is for.
func (r Row) In(name, label, hint, show string) Field {
	f := r.Field(r.Prefix+name, label, hint)
	f.Show = show
	return f
}

// Of makes a field of this row that offers options.
func (r Row) Of(name, label, hint string, options []Choice) Field {
	return r.Pick(r.Prefix+name, label, hint, options)
}

// Extras makes a field of the optional layers, shown for the kinds of design
// that offer any.
func (r Row) Extras(name, label, hint string) Field {
	f := r.Several(r.Prefix+name, label, hint, r.Choices.Layers)
	var kinds []string
	for _, layer := range r.Choices.Layers {
		kinds = append(kinds, layer.Kinds...)
	}
	f.Show = strings.Join(kinds, " ")
	return f
}

// Tints are the fields of a design's colours, each shown for the kinds of
// design that use it.
func (r Row) Tints() []Field {
	tint := func(name, label string) Field {
		var kinds []string
		for _, c := range r.Choices.Designs {
			if slices.Contains(c.Colours, name) {
				kinds = append(kinds, c.Value)
			}
		}
		return r.In("colour-"+name, label, "", strings.Join(kinds, " "))
	}
	return []Field{tint("design", "Colour"), tint("shadow", "Shadow colour"), tint("highlight", "Highlight colour")}
}

// DesignsHeld names the designs that the form holds, for the line that they
// are folded away under; "" for none.
func (p FormPage) DesignsHeld() string {
	var names []string
	for _, r := range p.Designs() {
		if r.Used() {
			kind := r.Of("kind", "", "", p.Choices.Designs).Title()
			names = append(names, cmp.Or(p.Form.Get(r.Prefix+"name"), kind, fmt.Sprintf("design %d", r.Number())))
		}
	}
	return strings.Join(names, ", ")
}
