package critique_test

import (
	"slices"
	"strings"
	"testing"

	"coatwright/planner"
	"coatwright/planner/critique"
	"coatwright/planner/library"
)

func edit(t *testing.T, p *planner.Plan, lib *library.Library, r critique.Repair) *planner.Plan {
	t.Helper()
	edited, err := critique.Apply(p, lib, r)
	if err != nil {
		t.Fatal(err)
	}
	return edited
}

// TestFindings: each edit of the frame's plan is found at the right step, for the
// right need, and the repair takes it away.
func TestFindings(t *testing.T) {
	lib := builtIn(t)
	p := planOf(t, "../../testdata/jobs/touring-frame.yaml", lib)
	step := func(edited *planner.Plan, id string) *planner.Step {
		i := slices.IndexFunc(edited.Steps, func(s planner.Step) bool { return s.ID == id })
		return &edited.Steps[i]
	}
	clone := func() *planner.Plan {
		c := *p
		c.Steps = slices.Clone(p.Steps)
		return &c
	}
	for _, c := range []struct {
		name   string
		edit   func() *planner.Plan
		step   string
		need   string
		repair critique.Change // "" where no small change helps
	}{
		{"the last tack left out", func() *planner.Plan { return edit(t, p, lib, critique.Repair{Do: critique.Drop, Step: "tack-off-6"}) }, "spray-clear", "dust-free", critique.Add},
		{"degreasing left out", func() *planner.Plan { return edit(t, p, lib, critique.Repair{Do: critique.Drop, Step: "degrease"}) }, "spray-primer", "degreased", critique.Add},
		{"abrading before degreasing", func() *planner.Plan {
			return edit(t, p, lib, critique.Repair{Do: critique.Move, Step: "abrade-steel", Before: "degrease"})
		}, "abrade-steel", "degreased", critique.Move},
		{"candy over no metallic", func() *planner.Plan { return edit(t, p, lib, critique.Repair{Do: critique.Drop, Step: "lay-effect"}) }, "lay-candy", "order", ""},
		{"one coat of candy", func() *planner.Plan { e := clone(); step(e, "lay-candy").Coats = 1; return e }, "lay-candy", "coats", critique.Set},
		{"half the hardener", func() *planner.Plan {
			e := clone()
			s := step(e, "mix-and-stand-6")
			mix := *s.Mix
			mix.Lines = slices.Clone(mix.Lines)
			i := slices.IndexFunc(mix.Lines, func(l planner.Pour) bool { return strings.Contains(l.Material, "hardener") })
			mix.Lines[i].ML /= 2
			s.Mix = &mix
			return e
		}, "mix-and-stand-6", "mix", critique.Set},
		{"no wait before the tape comes off", func() *planner.Plan {
			e := clone()
			s := step(e, "unmask")
			s.Waits = slices.Clone(s.Waits)
			for i := range s.Waits {
				s.Waits[i].Min = 0
			}
			return e
		}, "unmask", "dry-to-touch", critique.Wait},
		{"a note that is not there", func() *planner.Plan { e := clone(); step(e, "tack-off").Note = "step/tack-of"; return e }, "tack-off", "note", critique.Drop},
		{"another colour", func() *planner.Plan { e := clone(); step(e, "lay-candy").Colour = "#ff0000"; return e }, "lay-candy", "colour", critique.Set},
	} {
		edited := c.edit()
		got, err := critique.Of(edited, lib)
		if err != nil {
			t.Fatalf("%s: %v", c.name, err)
		}
		i := slices.IndexFunc(got.Findings, func(f critique.Finding) bool {
			return f.Level == critique.Breaks && f.Step == c.step && f.Need == c.need
		})
		if i < 0 {
			t.Errorf("%s: no finding of %s at %s: %+v", c.name, c.need, c.step, got.Findings)
			continue
		}
		f := got.Findings[i]
		switch {
		case f.Says == "" || got.Open == 0:
			t.Errorf("%s: it says nothing: %+v", c.name, f)
		case f.Repair == nil && c.repair != "":
			t.Errorf("%s: no repair was found, want %s", c.name, c.repair)
		case f.Repair != nil && c.repair != "" && f.Repair.Do != c.repair && c.need != "note":
			t.Errorf("%s: the repair is %+v, want %s", c.name, f.Repair, c.repair)
		}
		if f.Repair == nil {
			continue
		}
		again, err := critique.Of(edit(t, edited, lib, *f.Repair), lib)
		if err != nil {
			t.Fatal(err)
		}
		if again.Open >= got.Open {
			t.Errorf("%s: after the repair %+v %d findings are open, and were %d", c.name, f.Repair, again.Open, got.Open)
		}
	}
}

// TestKept: what is done so on purpose, with a reason, is no longer open.
func TestKept(t *testing.T) {
	lib := builtIn(t)
	p := planOf(t, "../../testdata/jobs/touring-frame.yaml", lib)
	edited := edit(t, p, lib, critique.Repair{Do: critique.Drop, Step: "tack-off-6"})
	before, err := critique.Of(edited, lib)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range before.Findings {
		if f.Level == critique.Breaks {
			edited.Kept = append(edited.Kept, planner.Kept{Step: f.Step, Need: f.Need, Reason: "The booth has a filtered downdraught."})
		}
	}
	after, err := critique.Of(edited, lib)
	if err != nil {
		t.Fatal(err)
	}
	if before.Open == 0 || after.Open != 0 || len(after.Findings) != len(before.Findings) {
		t.Errorf("%d open before, %d after; %d findings and %d", before.Open, after.Open, len(before.Findings), len(after.Findings))
	}
	for _, f := range after.Findings {
		if f.Level == critique.Breaks && f.Kept == "" {
			t.Errorf("no reason is kept for %+v", f)
		}
	}
}

func TestApplyErrors(t *testing.T) {
	lib := builtIn(t)
	p := planOf(t, "../../testdata/jobs/touring-frame.yaml", lib)
	for _, c := range []struct {
		repair critique.Repair
		says   string
	}{
		{critique.Repair{Do: critique.Drop, Step: "dance"}, `no step "dance"`},
		{critique.Repair{Do: critique.Move, Step: "degrease", Before: "dance"}, `no step "dance" to put it before`},
		{critique.Repair{Do: critique.Add, Note: "dance"}, `no step note "dance"`},
		{critique.Repair{Do: "paint", Step: "degrease"}, "expected add, move, drop, wait or set"},
	} {
		if _, err := critique.Apply(p, lib, c.repair); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%+v: %v, want %q", c.repair, err, c.says)
		}
	}
}
