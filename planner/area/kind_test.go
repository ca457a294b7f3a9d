package area

import (
	"slices"
	"strings"
	"testing"

	q "coatwright/quantity"
)

// A form is made of the kinds: each says what it is, once.
func TestKinds(t *testing.T) {
	seen := map[string]bool{}
	for _, k := range Kinds() {
		if seen[k.Key] || seen[k.Title] {
			t.Errorf("%s %q is there twice", k.Key, k.Title)
		}
		seen[k.Key], seen[k.Title] = true, true
		sentence(t, k.Key, k.Says)
		if k.Omits != "" {
			sentence(t, k.Key+" omits", k.Omits)
		}
		if k.Bare() != slices.Contains([]string{"area", "sum"}, k.Key) {
			t.Errorf("%s: bare is %v", k.Key, k.Bare())
		}
		if named, ok := KindNamed(k.Key); !ok || named.Title != k.Title {
			t.Errorf("KindNamed(%q) is %q, %v", k.Key, named.Title, ok)
		}
		s := k.New()
		if got := s.Kind().Key; got != k.Key {
			t.Errorf("New of %s makes a %s", k.Key, got)
		}
		formula := s.Formula()
		if formula.Source == "" || !strings.HasPrefix(formula.Note, "background/") || !strings.Contains(formula.Text, "A") {
			t.Errorf("%s has the formula %+v", k.Key, formula)
		}
		checkMeasures(t, k.Key, formula.Text, k.Measures)
	}
	if k, ok := KindNamed("cilinder"); ok {
		t.Errorf("there is a kind %q", k.Key)
	}
	if got := Keys(); len(got) != len(Kinds()) || got[0] != "area" || got[len(got)-1] != "sum" {
		t.Errorf("keys are %q", got)
	}
}

// checkMeasures finds every symbol in the formula, and every measure at a place
// of its own.
func checkMeasures(t *testing.T, at, formula string, measures []Measure) {
	keys, places := map[string]bool{}, map[any]bool{}
	for _, m := range measures {
		name := at + "." + m.Key
		if keys[m.Key] || m.Into != nil && places[m.Into] {
			t.Errorf("%s is there twice", name)
		}
		keys[m.Key], places[m.Into] = true, true
		sentence(t, name, m.Says)
		if m.Title == "" || m.Of() == "" || m.Zero && !m.Optional || m.Of() == "count" && m.Most == 0 {
			t.Errorf("%s is %+v", name, m)
		}
		if !strings.Contains(formula, m.Symbol) {
			t.Errorf("%s: no %q in the formula %q", name, m.Symbol, formula)
		}
		for _, key := range m.Shapes {
			if !slices.Contains(Keys(), key) {
				t.Errorf("%s: no shape is called %q", name, key)
			}
		}
		below := formula
		if m.Of() == "tubes" {
			below = TubeFormula.Text
		}
		checkMeasures(t, name, below, m.Parts)
	}
}

func sentence(t *testing.T, of, says string) {
	if !strings.HasSuffix(says, ".") || says[0] < 'A' || says[0] > 'Z' {
		t.Errorf("%s says %q, not a sentence", of, says)
	}
}

// What is measured of one shape is measured of no other of its kind.
func TestNewIsFresh(t *testing.T) {
	for _, k := range Kinds() {
		a := k.New()
		for _, m := range a.Measures() {
			if l, ok := m.Into.(*q.Length); ok {
				*l = 1
			}
		}
		for _, m := range append(k.New().Measures(), k.Measures...) {
			if v, ok := m.Value(); ok && m.Of() == "length" {
				t.Errorf("%s of another %s is %v", m.Key, k.Key, v)
			}
		}
	}
}
