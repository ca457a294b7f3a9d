package critique_test

import (
	"slices"
	"strings"
	"testing"

	"coatwright/planner"
	"coatwright/planner/critique"
	"coatwright/planner/library"
)

// TestLimits: what strays less than the listed words allow is not told of, what
// strays more is.
func TestLimits(t *testing.T) {
	lib := builtIn(t)
	p := planOf(t, "../../testdata/jobs/touring-frame.yaml", lib)
	limits := lib.Words.Limits
	// coats sets how often the primer is laid.
	coats := func(s *planner.Step, n float64) {
		s.Coats = int(n) * lib.Materials[strings.TrimPrefix(s.Material, "material/")].Coats
	}
	// hardener pours so many times what the recipe says.
	hardener := func(s *planner.Step, n float64) {
		i := slices.IndexFunc(s.Mix.Lines, func(l planner.Pour) bool { return strings.Contains(l.Material, "hardener") })
		s.Mix.Lines[i].ML *= n
	}
	// thinner pours up to the top of the recipe's range, and so much more.
	thinner := func(s *planner.Step, more float64) {
		m := lib.Materials[strings.TrimPrefix(s.Material, "material/")]
		part := m.Mix[slices.IndexFunc(m.Mix, func(part library.MixPart) bool { return part.Of == "base" })]
		base := slices.IndexFunc(s.Mix.Lines, func(l planner.Pour) bool { return l.Material == m.Slug })
		i := slices.IndexFunc(s.Mix.Lines, func(l planner.Pour) bool { return l.Material == part.Part })
		s.Mix.Lines[i].ML = (float64(part.Value[""].High) + more) * s.Mix.Lines[base].ML
	}
	for _, c := range []struct {
		name, step, need string
		stray            func(s *planner.Step, by float64)
		within, beyond   float64
	}{
		{"coats", "spray-primer", "coats", coats, float64(limits.Coats), float64(limits.Coats) + 1},
		{"parts", "mix-and-stand-6", "mix", hardener, 1 + 0.9*float64(limits.Parts), 1 + 1.1*float64(limits.Parts)},
		{"percentage", "mix-and-stand", "mix", thinner, 0.9 * float64(limits.Percentage), 1.1 * float64(limits.Percentage)},
	} {
		t.Run(c.name, func(t *testing.T) {
			for _, side := range []struct {
				by   float64
				told bool
			}{{c.within, false}, {c.beyond, true}} {
				edited := *p
				edited.Steps = slices.Clone(p.Steps)
				s := &edited.Steps[slices.IndexFunc(p.Steps, func(s planner.Step) bool { return s.ID == c.step })]
				if s.Mix != nil {
					mix := *s.Mix
					mix.Lines = slices.Clone(mix.Lines)
					s.Mix = &mix
				}
				c.stray(s, side.by)
				found, err := critique.Findings(&edited, lib)
				if err != nil {
					t.Fatal(err)
				}
				told := slices.ContainsFunc(found.Findings, func(f critique.Finding) bool { return f.Step == c.step && f.Need == c.need })
				if told != side.told {
					t.Errorf("strayed by %g: told %v, want %v: %+v", side.by, told, side.told, found.Findings)
				}
			}
		})
	}
}
