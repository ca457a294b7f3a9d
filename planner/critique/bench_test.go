package critique_test

import (
	"testing"

	"coatwright/planner/critique"
)

// BenchmarkCritique plays the frame job as planned, and with a step left out,
// for which it looks for a repair.
func BenchmarkCritique(b *testing.B) {
	lib := builtIn(b)
	p := planOf(b, "../../testdata/jobs/touring-frame.yaml", lib)
	b.Run("sound", func(b *testing.B) {
		for b.Loop() {
			if c, err := critique.Of(p, lib); err != nil || c.Open > 0 {
				b.Fatal(c, err)
			}
		}
	})
	edited, err := critique.Apply(p, lib, critique.Repair{Do: critique.Drop, Step: "degrease"})
	if err != nil {
		b.Fatal(err)
	}
	b.Run("without degreasing", func(b *testing.B) {
		for b.Loop() {
			if c, err := critique.Of(edited, lib); err != nil || c.Open == 0 {
				b.Fatal(c, err)
			}
		}
	})
}
