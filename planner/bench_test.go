package planner_test

import (
	"os"
	"testing"

	"coatwright/planner"
)

// BenchmarkPlan plans the largest built-in combinations: two substrates, every
// film, and all that advice adds.
func BenchmarkPlan(b *testing.B) {
	lib := builtIn(b)
	document, err := os.ReadFile("../testdata/jobs/touring-frame.yaml")
	if err != nil {
		b.Fatal(err)
	}
	for _, c := range []struct{ name, document string }{
		{"frame and fork", string(document)},
		{"pearl on gelcoat", combination("gelcoat", "pearl-over-solid-ground", "gloss", "two-pack", "hvlp-gun", "0.6 m2", "care: show\n")},
		{"candy on polypropylene", combination("raw-polypropylene", "candy-over-fine-metallic", "gloss", "two-pack", "hvlp-gun", "0.6 m2", "care: show\n")},
	} {
		job := parse(b, c.document, lib)
		b.Run(c.name, func(b *testing.B) {
			for b.Loop() {
				p, err := planner.New(job, lib)
				if err != nil || p.Refused != nil {
					b.Fatal(err, p)
				}
			}
		})
	}
}
