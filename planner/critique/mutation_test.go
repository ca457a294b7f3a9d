package critique_test

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"coatwright/planner"
	"coatwright/planner/critique"
)

// TestDroppedSteps drops every step of every example plan in turn. Planning
// again without that step is the judge: where it breaks, or where something else
// must take its place, the critique speaks; where nothing is lost it is silent.
func TestDroppedSteps(t *testing.T) {
	lib := builtIn(t)
	for _, file := range exampleJobs(t) {
		p := planOf(t, file, lib)
		for _, s := range p.Steps {
			d, err := planner.Without(p.Job, lib, s.ID)
			if err != nil {
				t.Fatal(err)
			}
			edited, err := critique.Apply(p, lib, critique.Repair{Do: critique.Drop, Step: s.ID})
			if err != nil {
				t.Fatal(err)
			}
			c, err := critique.Of(edited, lib)
			if err != nil {
				t.Fatal(err)
			}
			needed := d.Answer == planner.Breaks || d.Answer == planner.Instead
			if needed && c.Open == 0 && !s.Advised {
				t.Errorf("%s without %s (%s): the planner says %s, the critique nothing", file, s.ID, s.Title, d.Answer)
			}
		}
	}
}

var _ = fmt.Sprint
var _ = rand.IntN
var _ = slices.Sort[[]int]
