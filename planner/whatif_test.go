package planner_test

import (
	"errors"
	"slices"
	"testing"

	"coatwright/planner"
)

func TestWithout(t *testing.T) {
	lib := builtIn(t)
	panel := combination("factory-paint", "solid-colour", "gloss", "two-pack", "hvlp-gun", "0.1 m2", "")
	for _, c := range []struct {
		name, document, step string
		answer               planner.Answer
		fact                 string // what breaks, or is missed
		come                 string // a note of what takes its place
	}{
		{"dust under the clear", frame(t), "tack-off-6", planner.Breaks, "dust-free", ""},
		{"bright metal", frame(t), "abrade-steel", planner.Breaks, "bright", ""},
		{"the last flush", frame(t), "flush-gun-6", planner.Breaks, "gun-clean", ""},
		{"the proof of cleaning", frame(t), "water-break-test", planner.Misses, "proved-clean", ""},
		{"the candy's card", frame(t), "test-card-2", planner.Misses, "carded", ""},
		{"blocking the surfacer", frame(t), "block-guide-coat", planner.Misses, "level", ""},
		{"keying by hand", panel, "key-by-hand", planner.Instead, "", "step/scuff-paste"},
	} {
		d, err := planner.Without(parse(t, c.document, lib), lib, c.step)
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if d.Answer != c.answer {
			t.Errorf("%s: %q, want %q: %+v", c.name, d.Answer, c.answer, d)
			continue
		}
		named := func(r planner.Reason) bool { return r.Fact == c.fact && r.Because != "" }
		if c.fact != "" && !slices.ContainsFunc(slices.Concat(d.Breaks, d.Misses), named) {
			t.Errorf("%s: it does not name %q: breaks %+v, misses %+v", c.name, c.fact, d.Breaks, d.Misses)
		}
		if c.come != "" && !slices.ContainsFunc(d.Come, func(s planner.Change) bool { return s.Note == c.come }) {
			t.Errorf("%s: %s does not come in its place: %+v", c.name, c.come, d.Come)
		}
		if c.answer == planner.Misses && (d.RiskMin <= 0 || d.WorkMin >= 0 || len(d.Gone) == 0) {
			t.Errorf("%s: it costs %g min of risk and saves %g min of work: %+v", c.name, d.RiskMin, -d.WorkMin, d)
		}
	}
}

// TestEveryStepCanBeAskedAbout: an advised step never breaks anything when it is
// left out, and what the plan saves by it is what is then at risk.
func TestEveryStepCanBeAskedAbout(t *testing.T) {
	lib := builtIn(t)
	job := parse(t, frame(t), lib)
	for _, s := range plan(t, frame(t), lib).Steps {
		d, err := planner.Without(job, lib, s.ID)
		if err != nil {
			t.Fatal(err)
		}
		switch {
		case s.Advised && d.Answer == planner.Breaks:
			t.Errorf("%s is advised, and leaving it out breaks %+v", s.ID, d.Breaks)
		case !s.Advised && d.Answer == planner.Nothing:
			t.Errorf("%s is not advised, and leaving it out changes nothing", s.ID)
		case d.Answer == planner.Breaks && (len(d.Breaks) == 0 || d.Refused == nil):
			t.Errorf("%s breaks, and nobody says what: %+v", s.ID, d)
		}
	}
}

func TestWithoutAnUnknownStep(t *testing.T) {
	lib := builtIn(t)
	_, err := planner.Without(parse(t, frame(t), lib), lib, "tack-of")
	var unknown *planner.UnknownStepError
	if !errors.As(err, &unknown) || unknown.Nearest != "tack-off" {
		t.Errorf("the error is %v", err)
	}
}
