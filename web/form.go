package web

import (
	"html/template"
	"slices"
	"strings"

	q "coatwright/quantity"
)

// Form is what stands in the fields of the job form, by field name, exactly as
// it was typed. Where several of a list were chosen, each stands on its own line.
type Form struct{ Values map[string]string }

// Get is what stands in a field; "" for nothing.
func (f Form) Get(name string) string { return f.Values[name] }

// Problem is something to mend in the form. Field is "" for the job as a whole.
type Problem struct{ Field, Message string }

// Choices are what the lists of the form offer.
type Choices struct {
	Substrates, Effects, Finishes, Systems, Care, Applicators, Forms []Choice
	Designs                                                          []Choice // kinds of design
	Layers                                                           []Choice // optional layers of designs
}

// Choice is one thing to choose.
type Choice struct {
	Value, Title string
	Says         string      // one sentence; "" for none
	Roles        []string    // of an effect's films, bottom first, for its drawing
	Colours      []string    // which of the job's colours an effect uses, in the same order, "" for a film with none; of a kind of design, which of the design's
	Candy        CandySwatch // of an effect with a candy
	Kinds        []string    // of an optional layer: the kinds of design that offer it
	Gloss        float64     // of a finish, middle of its band, in gloss units at 60 degrees
}

// FormPage is the form of a job. Fields are posted to /plan under their names;
// those of a part start with "part0-", "part1-" and so on, those of a design
// with "design0-".
type FormPage struct {
	Frame
	Form     Form
	Problems []Problem
	Choices  Choices
	Areas    map[string]q.Area // of one of the part in a row, by the row's name, as its shape has it
}

// Field is one control of the form.
type Field struct {
	Name, Label, Hint string
	Value             string
	Problem           string
	Options           []Choice
	None              string // what choosing none of them is called; "" where one must be chosen
	Show              string // the shapes, the colour or the kinds of design that the field is for; "" for all
	Drawn             bool   // options carry a drawing
	Several           bool   // more than one option may be chosen
	Of                string // what is measured, of a measure of a shape: see area.Measure
	Hints             []Hint // instead of Hint, by what is chosen
	form              Form
}

// Field makes a field from its name, its label and a hint.
func (p FormPage) Field(name, label, hint string) Field {
	return Field{Name: name, Label: label, Hint: hint, Value: p.Form.Get(name), Problem: p.problem(name), form: p.Form}
}

// Colour makes a field for one of the job's colours.
func (p FormPage) Colour(name, label string) Field {
	f := p.Field("colour-"+name, label, "")
	f.Show = name
	return f
}

// Pick makes a field that offers options.
func (p FormPage) Pick(name, label, hint string, options []Choice) Field {
	f := p.Field(name, label, hint)
	f.Options = options
	return f
}

// Draw makes a field whose options are drawn.
func (p FormPage) Draw(name, label string, options []Choice) Field {
	f := p.Pick(name, label, "", options)
	f.Drawn = true
	return f
}

// Several makes a field of whose options any number may be chosen.
func (p FormPage) Several(name, label, hint string, options []Choice) Field {
	f := p.Pick(name, label, hint, options)
	f.Several = true
	return f
}

func (p FormPage) problem(name string) string {
	for _, problem := range p.Problems {
		if problem.Field == name {
			return problem.Message
		}
	}
	return ""
}

// OrNone offers to choose none of the options.
func (f Field) OrNone(label string) Field {
	f.None = label
	return f
}

// DescribedBy lists the ids of the hint and the problem, for aria-describedby.
func (f Field) DescribedBy() string {
	var ids []string
	if f.Problem != "" {
		ids = append(ids, f.Name+"-problem")
	}
	if f.Hint != "" || len(f.Hints) > 0 {
		ids = append(ids, f.Name+"-hint")
	}
	return strings.Join(ids, " ")
}

// Holds reports whether a value is chosen.
func (f Field) Holds(value string) bool {
	return f.Value == value || f.Several && slices.Contains(strings.Split(f.Value, "\n"), value)
}

// Title is the titles of what is chosen; what stands there where no option fits.
func (f Field) Title() string {
	var titles []string
	for _, o := range f.Options {
		if f.Holds(o.Value) {
			titles = append(titles, o.Title)
		}
	}
	if len(titles) == 0 {
		return f.Value
	}
	return strings.Join(titles, ", ")
}

// Swatch draws an option in the colours that the form holds.
func (f Field) Swatch(c Choice) template.HTML {
	if len(c.Roles) == 0 {
		return finishSwatch(c.Gloss)
	}
	colours := make([]string, len(c.Colours))
	for i, name := range c.Colours {
		colours[i] = f.form.Get("colour-" + name)
	}
	return effectSwatch(c.Roles, colours, c.Candy)
}

// HasProblem reports whether any field with one of the prefixes has a problem,
// so that what is folded away is opened.
func (p FormPage) HasProblem(prefixes ...string) bool {
	for _, problem := range p.Problems {
		for _, prefix := range prefixes {
			if strings.HasPrefix(problem.Field, prefix) {
				return true
			}
		}
	}
	return false
}
