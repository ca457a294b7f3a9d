package planner_test

import (
	"strings"
	"testing"

	"coatwright/planner"
)

func TestWith(t *testing.T) {
	lib := builtIn(t)
	before := plan(t, frame(t), lib)
	for _, c := range []struct {
		with   string
		answer planner.Answer
		later  bool
	}{
		{"clear=waterborne", planner.Instead, false},
		{"room.air=15 C", "", true},
		{"applicator=airbrush", planner.Breaks, false},
		{"care=rough", planner.Misses, false},
	} {
		a, err := planner.ParseAlternative(c.with)
		if err != nil {
			t.Fatal(err)
		}
		d, err := planner.With(before, lib, a)
		if err != nil {
			t.Fatal(err)
		}
		if c.answer != "" && d.Answer != c.answer {
			t.Errorf("%s: %q, want %q: %+v", c.with, d.Answer, c.answer, d)
		}
		if c.later && d.EndMin <= 0 {
			t.Errorf("%s: it ends %g min later", c.with, d.EndMin)
		}
		if d.With != c.with {
			t.Errorf("%s: the difference says %q", c.with, d.With)
		}
	}
}

// TestAlternatives: each of the choices offered can be read, and is another one.
func TestAlternatives(t *testing.T) {
	lib := builtIn(t)
	job := parse(t, frame(t), lib)
	seen := map[string]bool{}
	for _, a := range planner.Alternatives(job, lib) {
		if seen[a.String()] {
			t.Errorf("%s is offered twice", a)
		}
		seen[a.String()] = true
		read, err := planner.ParseAlternative(a.String())
		if err != nil || read.String() != a.String() {
			t.Errorf("%s reads back as %v: %v", a, read, err)
		}
		if _, err := a.Job(job, lib); err != nil {
			t.Errorf("%s: %v", a, err)
		}
	}
	both := parse(t, strings.Replace(frame(t), "applicator: hvlp-gun", "applicator: [hvlp-gun, airbrush]", 1), lib)
	for _, a := range planner.Alternatives(both, lib) {
		if a["applicator"] == "airbrush+hvlp-gun" {
			t.Errorf("%s is offered where both are at hand", a)
		}
	}
	for _, want := range []string{"applicator=airbrush", "clear=waterborne", "system=solvent", "room.airflow=1 m/s", "care=rough"} {
		if !seen[want] {
			t.Errorf("%s is not offered: %v", want, seen)
		}
	}
}

func TestAlternativeErrors(t *testing.T) {
	lib := builtIn(t)
	before := plan(t, frame(t), lib)
	for _, c := range []struct{ text, says string }{
		{"clear", "such as room.airflow=1 m/s"},
		{"room.airflo=1 m/s", `did you mean "room.airflow"?`},
		{"room.airflow=", "expected a choice and its value"},
		{"clear=twopack", `did you mean "two-pack"`},
		{"room.air=90 C", "from -10 to 60 C"},
	} {
		a, err := planner.ParseAlternative(c.text)
		if err == nil {
			_, err = planner.With(before, lib, a)
		}
		if err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %v, want %q", c.text, err, c.says)
		}
	}
}
