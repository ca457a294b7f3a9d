package workout

import (
	"slices"
	"testing"

	"coatwright/content"
	"coatwright/planner/trace"
)

// defaults is a sheet as it is first opened.
func defaults(string) (string, bool) { return "", false }

func notes(t *testing.T) *content.Library {
	t.Helper()
	lib, err := content.Load(content.BuiltIn(), nil)
	if err != nil {
		t.Fatal(err)
	}
	return lib
}

// Every sheet answers as it is first opened, every figure says how it came
// about, and every note that is named is there.
func TestEverySheetAnswersAtFirst(t *testing.T) {
	lib := notes(t)
	named := func(path string) bool { return path == "" || lib.Note(path) != nil }
	seen := map[string]bool{}
	for _, s := range Sheets() {
		t.Run(s.Slug, func(t *testing.T) {
			if seen[s.Slug] || s.Title == "" || s.Lead == "" || !named(s.Note) {
				t.Errorf("the sheet is there already, has no title or lead, or names the note %q", s.Note)
			}
			seen[s.Slug] = true
			p := s.Fill(lib.Planner(), defaults)
			if p.Answer == nil {
				t.Fatalf("no answer: %v", p.Problems)
			}
			if len(p.Answer.Figures)+len(p.Answer.Tables) == 0 {
				t.Error("the answer has no figure")
			}
			checkFields(t, p)
			for _, f := range p.Answer.Figures {
				checkFigure(t, f, p, named)
			}
		})
	}
}

func checkFields(t *testing.T, p *Page) {
	t.Helper()
	keys := map[string]bool{}
	for _, f := range p.Fields {
		if keys[f.Key] || f.Label == "" {
			t.Errorf("the field %q stands twice or has no label", f.Key)
		}
		keys[f.Key] = true
		if len(f.Choices) > 0 && !slices.ContainsFunc(f.Choices, func(c Choice) bool { return c.Value == f.Default }) {
			t.Errorf("the field %q starts with %q, which is none of its choices", f.Key, f.Default)
		}
	}
	for _, f := range p.Answer.Figures {
		if keys[f.Key] {
			t.Errorf("the figure %q has the key of a field", f.Key)
		}
	}
}

func checkFigure(t *testing.T, f trace.Figure, p *Page, named func(string) bool) {
	t.Helper()
	if f.Name == "" || f.Value.Of == "" || len(f.Inputs) == 0 || f.Source == "" {
		t.Errorf("the figure %q has no name, value, input or source: %+v", f.Key, f)
	}
	if f.Note == "" || !named(f.Note) {
		t.Errorf("the figure %q is explained in %q, which is not there", f.Key, f.Note)
	}
	for _, in := range f.Inputs {
		switch o := in.Origin; o.From {
		case trace.FromNote:
			if !named(o.At) || o.At == "" {
				t.Errorf("%s: %s comes from the note %q, which is not there", f.Key, in.Name, o.At)
			}
		case trace.FromFigure:
			if !slices.ContainsFunc(p.Answer.Figures, func(o trace.Figure) bool { return o.Key == in.Origin.At }) {
				t.Errorf("%s: %s comes from the figure %q, which is not there", f.Key, in.Name, o.At)
			}
		case trace.FromEntry:
			if !slices.ContainsFunc(p.Fields, func(o Field) bool { return o.Key == in.Origin.At }) {
				t.Errorf("%s: %s comes from the field %q, which is not there", f.Key, in.Name, o.At)
			}
		}
	}
}

// What cannot be read in one field is told there, and nothing is answered.
func TestEveryFieldRefusesNonsense(t *testing.T) {
	lib := notes(t)
	for _, s := range Sheets() {
		first := s.Fill(lib.Planner(), defaults)
		for _, f := range first.Fields {
			p := s.Fill(lib.Planner(), func(key string) (string, bool) { return "nonsense £", key == f.Key })
			if p.Problems[f.Key] == "" || p.Answer != nil || p.Values[f.Key] != "nonsense £" {
				t.Errorf("%s: nonsense in %q is told as %q, answered %v, kept as %q", s.Slug, f.Key, p.Problems[f.Key], p.Answer != nil, p.Values[f.Key])
			}
		}
	}
}
