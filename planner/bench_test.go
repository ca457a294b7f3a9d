package planner_test

import (
	"os"
	"testing"

	"coatwright/planner"
)

// fourPartsSixDesigns is the largest job that the library is measured by.
const fourPartsSixDesigns = `title: Four parts and six designs
system: waterborne
clear: two-pack
parts:
  - {name: frame, substrate: bare-steel, area: 0.55 m2, form: lattice}
  - {name: fork, substrate: bare-aluminium, area: 0.08 m2, form: tube}
  - {name: mudguard, substrate: raw-polypropylene, area: 0.12 m2, form: panel}
  - {name: helmet, substrate: helmet-shell, area: 0.2 m2, form: solid}
designs:
  - {kind: panel, on: frame, area: 0.02 m2, position: down tube, colours: {design: "#202020"}}
  - {kind: stripe, on: frame, area: 0.004 m2, position: down tube, colours: {design: "#ffffff"}}
  - {kind: lettering, on: frame, area: 0.006 m2, position: down tube, colours: {design: "#ffffff"}}
  - {kind: logo, on: helmet, area: 0.004 m2, position: left, colours: {design: "#ffffff"}}
  - {kind: stripe, on: helmet, area: 0.004 m2, position: right, colours: {design: "#ffffff"}}
  - {kind: fade, on: mudguard, area: 0.03 m2, position: tail, colours: {design: "#202020"}}
effect: candy-over-fine-metallic
finish: gloss
care: show
colours: {ground: "#8a8d90", candy: "#0f6f6b"}
applicator: [hvlp-gun, airbrush]
room: {air: 21 C, humidity: 55 %, airflow: 0.3 m/s}
start: 2026-12-01T08:00
`

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
		{"four parts, six designs", fourPartsSixDesigns},
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
