package critique_test

import (
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"coatwright/planner"
	"coatwright/planner/critique"
)

// TestRetimedKeepsASoundPlan: what was not edited has the same films, cautions,
// shopping list and totals; its steps end no later.
func TestRetimedKeepsASoundPlan(t *testing.T) {
	lib := builtIn(t)
	for _, file := range exampleJobs(t) {
		p := planOf(t, file, lib)
		again, err := critique.Retimed(p, lib)
		if err != nil {
			t.Fatal(err)
		}
		near := cmpopts.EquateApprox(1e-9, 1e-9)
		if diff := cmp.Diff(p.Materials, again.Materials, near); diff != "" {
			t.Errorf("%s: materials (-want +got):\n%s", file, diff)
		}
		if diff := cmp.Diff(p.Cautions, again.Cautions, cmpopts.IgnoreFields(planner.Caution{}, "Steps")); diff != "" {
			t.Errorf("%s: cautions (-want +got):\n%s", file, diff)
		}
		was, is := p.Totals, again.Totals
		if math.Abs(was.WorkMin-is.WorkMin) > 1e-9 || math.Abs(was.VOCg-is.VOCg) > 1e-9 || math.Abs(was.DryUm-is.DryUm) > 1e-9 || is.End.After(was.End) || !is.Start.Equal(was.Start) {
			t.Errorf("%s: totals %+v, were %+v", file, is, was)
		}
		if is.LowEnd.After(is.End) || is.HighEnd.Before(is.End) {
			t.Errorf("%s: it ends between %s and %s, likely %s", file, is.LowEnd, is.HighEnd, is.End)
		}
	}
}

// TestRetimedForgets: nothing of a dropped film is left in the plan.
func TestRetimedForgets(t *testing.T) {
	lib := builtIn(t)
	p := planOf(t, "../../testdata/jobs/touring-frame.yaml", lib)
	edited, err := critique.Apply(p, lib, critique.Repair{Do: critique.Drop, Step: "spray-clear"})
	if err != nil {
		t.Fatal(err)
	}
	again, err := critique.Retimed(edited, lib)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range again.Films {
		if f.Step == "spray-clear" {
			t.Error("the film is still in the list of films")
		}
	}
	for _, s := range again.Steps {
		for _, w := range s.Waits {
			if w.After == "spray-clear" {
				t.Errorf("%s waits for the step that was dropped", s.ID)
			}
		}
		for _, r := range s.Why {
			if r.For == "spray-clear" {
				t.Errorf("%s gives something to the step that was dropped", s.ID)
			}
		}
	}
	if again.Totals.WorkMin >= p.Totals.WorkMin || len(again.Films) != len(p.Films)-1 {
		t.Errorf("%g min of work and %d films; it was %g and %d", again.Totals.WorkMin, len(again.Films), p.Totals.WorkMin, len(p.Films))
	}
	if _, err := critique.Retimed(&planner.Plan{}, lib); err == nil {
		t.Error("a plan of nothing was timed")
	}
}

// TestRecoated: twice the coats are twice the film and twice the mix.
func TestRecoated(t *testing.T) {
	lib := builtIn(t)
	p := planOf(t, "../../testdata/jobs/touring-frame.yaml", lib)
	find := func(p *planner.Plan, id string) planner.Step {
		for _, s := range p.Steps {
			if s.ID == id {
				return s
			}
		}
		t.Fatal("no step", id)
		return planner.Step{}
	}
	before := find(p, "spray-primer")
	edited, err := critique.Recoated(p, lib, "spray-primer", 2*before.Coats)
	if err != nil {
		t.Fatal(err)
	}
	after := find(edited, "spray-primer")
	if after.Coats != 2*before.Coats || after.DryUm != 2*before.DryUm || after.WorkMin <= before.WorkMin || after.WorkMin > 2*before.WorkMin {
		t.Errorf("%+v, it was %+v", after, before)
	}
	if find(p, "spray-primer").Coats != before.Coats {
		t.Error("the plan itself was changed")
	}
	total := func(p *planner.Plan) float64 {
		for _, s := range p.Steps {
			if s.Mix != nil && s.Material == before.Material {
				return s.Mix.TotalML
			}
		}
		return 0
	}
	if was, is := total(p), total(edited); math.Abs(is-2*was) > 1e-9 || was == 0 {
		t.Errorf("the mix is %g mL, it was %g mL", is, was)
	}
	for _, c := range []struct {
		step  string
		coats int
	}{{"spray-primer", 0}, {"degrease", 2}, {"nosuch", 2}} {
		if _, err := critique.Recoated(p, lib, c.step, c.coats); err == nil {
			t.Errorf("%d coats of %s were taken", c.coats, c.step)
		}
	}
}
