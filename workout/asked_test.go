package workout

import (
	"math"
	"slices"
	"sync"
	"testing"

	"coatwright/content"
	"coatwright/planner/library"
	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// loaded is the built-in notes, read once: no sheet changes them.
var loaded = sync.OnceValues(func() (*content.Library, error) { return content.Load(content.BuiltIn(), nil) })

func builtIn(t testing.TB) *library.Library {
	t.Helper()
	lib, err := loaded()
	if err != nil {
		t.Fatal(err)
	}
	return lib.Planner()
}

// filledIn is a sheet of the built-in notes with some fields filled in: key,
// text, key, text ...
func filledIn(t testing.TB, s *Sheet, lib *library.Library, entries ...string) *Page {
	t.Helper()
	return s.Fill(lib, func(key string) (string, bool) {
		for i := 0; i < len(entries); i += 2 {
			if entries[i] == key {
				return entries[i+1], true
			}
		}
		return "", false
	})
}

// answered is filledIn for entries that must be answered.
func answered(t testing.TB, s *Sheet, lib *library.Library, entries ...string) *Page {
	t.Helper()
	p := filledIn(t, s, lib, entries...)
	if p.Answer == nil {
		t.Fatalf("%s %q is not answered: %v", s.Slug, entries, p.Problems)
	}
	return p
}

// figureOf is a figure of an answer.
func figureOf(t testing.TB, p *Page, key string) trace.Figure {
	t.Helper()
	i := slices.IndexFunc(p.Answer.Figures, func(f trace.Figure) bool { return f.Key == key })
	if i < 0 {
		t.Fatalf("%s has no figure %q", p.Slug, key)
	}
	return p.Answer.Figures[i]
}

func hasFigure(p *Page, key string) bool {
	return slices.ContainsFunc(p.Answer.Figures, func(f trace.Figure) bool { return f.Key == key })
}

// within a share tolerance of what is wanted.
func wantNear(t testing.TB, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance*math.Abs(want)) {
		t.Errorf("%s = %.7g, want %.7g within %g %%", what, got, want, 100*tolerance)
	}
}

// told is a field whose entry is wrong, and what is said there.
type told struct {
	entries   []string
	at, wants string
}

// checkTold checks that each wrong entry is told at its field, and only there.
func checkTold(t *testing.T, s *Sheet, lib *library.Library, cases []told) {
	t.Helper()
	for _, c := range cases {
		p := filledIn(t, s, lib, c.entries...)
		if got := p.Problems[c.at]; got != c.wants || len(p.Problems) != 1 || p.Answer != nil {
			t.Errorf("%s %q: told %q, want only %q at %s", s.Slug, c.entries, p.Problems, c.wants, c.at)
		}
	}
}

// sameAnswers checks that entries in one system and in the other come to the
// same figures, within a share tolerance.
func sameAnswers(t *testing.T, s *Sheet, lib *library.Library, tolerance float64, si, us []string) {
	t.Helper()
	a, b := answered(t, s, lib, si...), answered(t, s, lib, us...)
	if len(a.Answer.Figures) != len(b.Answer.Figures) {
		t.Fatalf("%s: %d figures in SI, %d in US units", s.Slug, len(a.Answer.Figures), len(b.Answer.Figures))
	}
	for i, f := range a.Answer.Figures {
		g := b.Answer.Figures[i]
		if f.Key != g.Key || f.Value.Of != g.Value.Of {
			t.Errorf("%s: %s in SI, %s in US units", s.Slug, f.Key, g.Key)
		}
		wantNear(t, s.Slug+" "+f.Key, g.Value.SI, f.Value.SI, tolerance)
	}
}

// checkSane checks that an answer holds nothing that nobody could measure, that
// every origin leads somewhere, and that no answer comes without its deferral.
func checkSane(t interface{ Errorf(string, ...any) }, p *Page, mustDefer bool) {
	if (p.Answer == nil) != (len(p.Problems) > 0) {
		t.Errorf("%s %v: answered %v with the problems %v", p.Slug, p.Values, p.Answer != nil, p.Problems)
	}
	if p.Answer == nil {
		return
	}
	if mustDefer && p.Answer.Defers == "" {
		t.Errorf("%s defers to nobody", p.Slug)
	}
	finite := func(what string, v q.Value) {
		if math.IsNaN(v.SI) || math.IsInf(v.SI, 0) || v.SI < 0 || v.Of == "" {
			t.Errorf("%s %v: %s is %v", p.Slug, p.Values, what, v)
		}
	}
	span := func(what string, r *trace.Span) {
		if r == nil {
			return
		}
		finite(what, r.Low)
		finite(what, r.High)
		if r.Low.SI > r.High.SI {
			t.Errorf("%s %v: %s is from %v to %v", p.Slug, p.Values, what, r.Low, r.High)
		}
	}
	for _, f := range p.Answer.Figures {
		finite(f.Key, f.Value)
		span(f.Key, f.Range)
		if r := f.Range; r != nil && !(f.Value.SI >= r.Low.SI*(1-1e-9) && f.Value.SI <= r.High.SI*(1+1e-9)) {
			t.Errorf("%s %v: %s is %v, outside its range of %v to %v", p.Slug, p.Values, f.Key, f.Value, r.Low, r.High)
		}
		for _, in := range f.Inputs {
			finite(f.Key+", "+in.Name, in.Value)
			span(f.Key+", "+in.Name, in.Range)
			if in.Origin.From == trace.FromFigure && !hasFigure(p, in.Origin.At) {
				t.Errorf("%s %v: %s of %s comes from the figure %q, which is not there", p.Slug, p.Values, in.Name, f.Key, in.Origin.At)
			}
			if in.Origin.From == trace.FromEntry && !slices.ContainsFunc(p.Fields, func(o Field) bool { return o.Key == in.Origin.At }) {
				t.Errorf("%s %v: %s of %s comes from the field %q, which is not there", p.Slug, p.Values, in.Name, f.Key, in.Origin.At)
			}
		}
	}
	for _, table := range p.Answer.Tables {
		for _, row := range table.Rows {
			if len(row) != len(table.Columns) {
				t.Errorf("%s: a row of %q has %d cells for %d columns", p.Slug, table.Title, len(row), len(table.Columns))
			}
			for _, cell := range row {
				if v, is := cell.(q.Value); is {
					finite(table.Title, v)
				}
			}
		}
	}
}
