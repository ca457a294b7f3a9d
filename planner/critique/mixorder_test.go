package critique_test

import (
	"maps"
	"slices"
	"strings"
	"testing"

	"coatwright/planner"
	"coatwright/planner/critique"
	"coatwright/planner/library"
)

// candyMix is the step that mixes a film whose colour goes into another part, and
// the places in it of the colour, of what it goes into, and of the thinner.
func candyMix(t *testing.T, p *planner.Plan, lib *library.Library) (step, colour, binder, thinner int) {
	t.Helper()
	place := func(m *planner.Mix, is func(*library.Material) bool) int {
		return slices.IndexFunc(m.Lines, func(l planner.Pour) bool { return is(lib.Materials[l.Material]) })
	}
	for i, s := range p.Steps {
		if s.Mix == nil {
			continue
		}
		colour = place(s.Mix, func(m *library.Material) bool { return len(m.Into) > 0 })
		if colour < 0 {
			continue
		}
		into := lib.Materials[s.Mix.Lines[colour].Material].Into
		binder = place(s.Mix, func(m *library.Material) bool { return slices.Contains(into, m.Slug) })
		thinner = place(s.Mix, func(m *library.Material) bool { return m.Thins })
		return i, colour, binder, thinner
	}
	t.Fatal("no mix has a part that goes into another")
	return
}

// TestMixOrder: an edited pouring order that breaks a rule of what is poured is
// told by that rule, another one by the recipe, and one that keeps it not at all.
func TestMixOrder(t *testing.T) {
	lib := builtIn(t)
	p := planOf(t, "../../testdata/jobs/touring-frame.yaml", lib)
	at, colour, binder, thinner := candyMix(t, p, lib)
	twoPack := slices.IndexFunc(p.Steps, func(s planner.Step) bool {
		return s.Mix != nil && slices.ContainsFunc(s.Mix.Lines, func(l planner.Pour) bool { return lib.Materials[l.Material].Hardens })
	})
	for _, c := range []struct {
		name  string
		step  int
		order []int
		says  []string
	}{
		{"as planned", at, []int{binder, colour, thinner}, nil},
		{"the colour first", at, []int{colour, binder, thinner}, []string{"concentrate goes in before the clear binder, which must be in the cup first"}},
		{"the thinner before the colour", at, []int{binder, thinner, colour}, []string{"reducer goes in before the candy concentrate"}},
		{"the thinner first", at, []int{thinner, binder, colour}, []string{"reducer goes in before the clear binder", "reducer goes in before the candy concentrate"}},
		{"hardener before base, which no rule forbids", twoPack, []int{1, 0, 2}, []string{"hardener goes in too early: pour in the order of the recipe"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			edited := *p
			edited.Steps = slices.Clone(p.Steps)
			s := &edited.Steps[c.step]
			poured := *s.Mix
			poured.Lines = nil
			for _, line := range c.order {
				poured.Lines = append(poured.Lines, s.Mix.Lines[line])
			}
			s.Mix = &poured
			checkMix(t, &edited, lib, s.ID, c.says)
		})
	}
}

// checkMix checks what the critique says of the mix of a step.
func checkMix(t *testing.T, p *planner.Plan, lib *library.Library, step string, says []string) {
	t.Helper()
	got, err := critique.Findings(p, lib)
	if err != nil {
		t.Fatal(err)
	}
	var found []string
	for _, f := range got.Findings {
		if f.Step == step && f.Need == "mix" {
			found = append(found, f.Says)
		}
	}
	if len(found) != len(says) {
		t.Fatalf("found %q, want %q", found, says)
	}
	for i, want := range says {
		if !strings.Contains(found[i], want) {
			t.Errorf("found %q, want %q", found[i], want)
		}
	}
}

// A part that is poured twice is there from the first time on.
func TestMixPouredTwice(t *testing.T) {
	lib := builtIn(t)
	p := planOf(t, "../../testdata/jobs/touring-frame.yaml", lib)
	at, colour, binder, thinner := candyMix(t, p, lib)
	edited := *p
	edited.Steps = slices.Clone(p.Steps)
	s := &edited.Steps[at]
	poured, half := *s.Mix, s.Mix.Lines[binder]
	half.ML /= 2
	poured.Lines = []planner.Pour{half, s.Mix.Lines[colour], half, s.Mix.Lines[thinner]}
	s.Mix = &poured
	checkMix(t, &edited, lib, s.ID, nil)
}

// A plan keeps the rules also where the recipe is written against them, and the
// critique finds it sound.
func TestMixWrittenAgainstItsRules(t *testing.T) {
	lib := builtIn(t)
	p := planOf(t, "../../testdata/jobs/touring-frame.yaml", lib)
	at, colour, _, _ := candyMix(t, p, lib)
	slug := p.Steps[at].Mix.Lines[colour].Material

	turned, m := *lib, *lib.Materials[slug]
	m.Mix = slices.Clone(m.Mix)
	slices.Reverse(m.Mix)
	turned.Materials = maps.Clone(lib.Materials)
	turned.Materials[slug] = &m
	again := planOf(t, "../../testdata/jobs/touring-frame.yaml", &turned)
	at, _, _, _ = candyMix(t, again, &turned)
	checkMix(t, again, &turned, again.Steps[at].ID, nil)
}
