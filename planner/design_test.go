package planner_test

import (
	"slices"
	"strings"
	"testing"

	"coatwright/planner"
	"coatwright/planner/library"
)

// panelWith is a sound painted panel of 0.3 m2 with designs.
func panelWith(effect, designs string) string {
	return `title: panel
system: waterborne
clear: two-pack
parts: [{name: panel, substrate: factory-paint, area: 0.3 m2, form: panel}]
effect: ` + effect + `
finish: gloss
colours: {ground: "#8a8d90", candy: "#0f6f6b", pearl: "#e8e2d4"}
designs:
` + designs + `applicator: [hvlp-gun, airbrush]
start: 2026-12-01T08:00
`
}

// layers names the designs' films in the order in which they are laid.
func layers(p *planner.Plan) []string {
	var out []string
	for _, f := range p.Films {
		if f.Design != "" {
			out = append(out, f.Design)
		}
	}
	return out
}

// TestLayerOrder: which design lies over which is found from their kinds and
// places, and what is alike is sprayed at once.
func TestLayerOrder(t *testing.T) {
	lib := builtIn(t)
	for _, c := range []struct {
		name, designs string
		want          []string
	}{
		{"lettering on a panel edged by a stripe, listed upside down", `
  - {kind: lettering, on: panel, area: 0.01 m2, position: left, colours: {design: "#ffffff"}}
  - {kind: stripe, on: panel, area: 0.002 m2, position: left, colours: {design: "#ff0000"}}
  - {kind: panel, on: panel, area: 0.05 m2, position: left, colours: {design: "#000000"}}
`, []string{"panel: panel", "stripe: stripe", "lettering: letters"}},
		{"the job says that the stripe crosses the letters", `
  - {kind: lettering, on: panel, area: 0.01 m2, position: left, colours: {design: "#ffffff"}}
  - {kind: stripe, on: panel, area: 0.002 m2, position: left, colours: {design: "#ff0000"}, over: [lettering]}
`, []string{"lettering: letters", "stripe: stripe"}},
		{"two letterings of one colour in two places", `
  - {kind: lettering, name: left name, on: panel, area: 0.01 m2, position: left, colours: {design: "#ffffff"}}
  - {kind: lettering, name: right name, on: panel, area: 0.01 m2, position: right, colours: {design: "#ffffff"}}
`, []string{"left name: letters; right name: letters"}},
		{"two colours on each of two sides: two changes of paint, not three", `
  - {kind: stripe, name: s1, on: panel, area: 0.002 m2, position: left, colours: {design: "#ff0000"}}
  - {kind: stripe, name: s2, on: panel, area: 0.002 m2, position: mid, colours: {design: "#ffffff"}}
  - {kind: stripe, name: s3, on: panel, area: 0.002 m2, position: right, colours: {design: "#ff0000"}}
`, []string{"s1: stripe; s3: stripe", "s2: stripe"}},
		{"a drop shadow lies under its letters", `
  - {kind: lettering, on: panel, area: 0.01 m2, with: [drop shadow], colours: {design: "#ffffff", shadow: "#000000"}}
`, []string{"lettering: drop shadow", "lettering: letters"}},
	} {
		p := plan(t, panelWith("solid-colour", strings.TrimPrefix(c.designs, "\n")), lib)
		if p.Refused != nil {
			t.Errorf("%s: refused: %+v", c.name, p.Refused)
			continue
		}
		if got := layers(p); !slices.Equal(got, c.want) {
			t.Errorf("%s: laid in the order %q, want %q", c.name, got, c.want)
		}
		for _, fault := range verify(p, lib) {
			t.Errorf("%s: %s", c.name, fault)
		}
	}
}

// TestLockCoat: tape on a fresh metallic is risked for one small lettering, and
// not for a large panel or many masks; over candy what bleeds is shut in. A solid
// ground needs none.
func TestLockCoat(t *testing.T) {
	lib := builtIn(t)
	small := `  - {kind: lettering, on: panel, area: 0.01 m2, colours: {design: "#ffffff"}}
`
	large := `  - {kind: two-tone, on: panel, area: 0.22 m2, colours: {design: "#ffffff"}}
`
	for _, c := range []struct {
		name, effect, designs string
		locked                bool
	}{
		{"a small lettering on metallic", "fine-metallic", small, false},
		{"a large panel on metallic", "fine-metallic", large, true},
		{"a small lettering on candy", "candy-over-fine-metallic", small, true},
		{"a large panel on a solid ground", "solid-colour", large, false},
	} {
		p := plan(t, panelWith(c.effect, c.designs), lib)
		if p.Refused != nil {
			t.Fatalf("%s: refused: %+v", c.name, p.Refused)
		}
		if locked := slices.Contains(roles(p), "lock"); locked != c.locked {
			t.Errorf("%s: the films are %v", c.name, roles(p))
		}
	}
}

// TestMasksComeOff: each design's mask comes off once its colour is dry to touch
// and before it is hard, and before anything covers the whole part.
func TestMasksComeOff(t *testing.T) {
	lib := builtIn(t)
	p := plan(t, panelWith("fine-metallic", `  - {kind: lettering, on: panel, area: 0.01 m2, with: [drop shadow], colours: {design: "#ffffff", shadow: "#000000"}}
`), lib)
	off := 0
	for _, s := range p.Steps {
		if s.Note != "step/unmask-design" {
			continue
		}
		off++
		opens, shuts := false, false
		for _, w := range s.Waits {
			opens = opens || w.Until == "dry-to-touch" && w.Min > 0
			shuts = shuts || w.Max > 0
		}
		if !opens || !shuts || s.Design == "" {
			t.Errorf("%s: waits %+v, for %q", s.ID, s.Waits, s.Design)
		}
	}
	if off != 2 {
		t.Errorf("%d masks come off, want 2", off)
	}
}

// TestPositiveMask: around a positive mask the rest of the part is sprayed, which
// takes more paint than the letters.
func TestPositiveMask(t *testing.T) {
	lib := builtIn(t)
	sprayed := func(mask string) float64 {
		p := plan(t, panelWith("solid-colour", `  - {kind: lettering, on: panel, area: 0.01 m2, mask: `+mask+`, colours: {design: "#ffffff"}}
`), lib)
		for _, s := range p.Steps {
			if s.Mix != nil && s.Design != "" {
				return s.Mix.TotalML
			}
		}
		t.Fatalf("%s: no mix for the design: %+v", mask, p.Refused)
		return 0
	}
	if negative, positive := sprayed("negative"), sprayed("positive"); positive < 4*negative {
		t.Errorf("%g mL in the letters, %g mL around them: there is 29 times the area", negative, positive)
	}
}

// TestApplicators: with a gun and an airbrush at hand each film gets the one that
// suits it; a freehand layer needs the airbrush.
func TestApplicators(t *testing.T) {
	lib := builtIn(t)
	document := panelWith("fine-metallic", `  - {kind: lettering, on: panel, area: 0.004 m2, colours: {design: "#ffffff"}}
`)
	for _, s := range plan(t, document, lib).Steps {
		want := "tool/hvlp-gun"
		if s.Design != "" {
			want = "tool/airbrush"
		}
		if s.Coats > 0 && s.Applicator != want {
			t.Errorf("%s: with the %s", s.ID, s.Applicator)
		}
	}
	gunOnly := strings.Replace(panelWith("solid-colour", `  - {kind: freehand-art, on: panel, area: 0.02 m2, colours: {design: "#ffffff"}}
`), "[hvlp-gun, airbrush]", "hvlp-gun", 1)
	if p := plan(t, gunOnly, lib); p.Refused == nil || !strings.Contains(strings.Join(p.Refused.Reasons, " "), "is only for airbrush") {
		t.Errorf("freehand art without an airbrush: %+v", p.Refused)
	}
}

// TestWhatLiesOverWhat: rules about what lies below are kept by a barrier, a lock
// or a wait, or the job is refused with the note's own reason.
func TestWhatLiesOverWhat(t *testing.T) {
	lib := builtIn(t)
	job := func(system, substrate, effect, designs string) *planner.Plan {
		document := strings.Replace(panelWith(effect, designs), "substrate: factory-paint", "substrate: "+substrate, 1)
		if designs == "" {
			document = strings.Replace(document, "designs:\n", "", 1)
		}
		return plan(t, strings.Replace(document, "system: waterborne", "system: "+system, 1), lib)
	}
	barrier := func(p *planner.Plan) bool {
		return slices.ContainsFunc(p.Films, func(f planner.Film) bool { return lib.Materials[f.Material].Barrier })
	}
	for _, system := range []string{"waterborne", "solvent"} {
		p := job(system, "old-enamel", "solid-colour", "")
		stripped := p.Refused == nil && slices.ContainsFunc(p.Steps, func(s planner.Step) bool { return lib.Steps[strings.TrimPrefix(s.Note, "step/")].Strips })
		if p.Refused != nil || !barrier(p) && !stripped {
			t.Errorf("%s on old enamel: neither a barrier nor stripped: %v, %+v", system, roles(p), p.Refused)
		}
		p = job(system, "factory-paint", "candy-over-fine-metallic", `  - {kind: lettering, on: panel, area: 0.01 m2, colours: {design: "#ffffff"}}
`)
		if p.Refused != nil {
			t.Fatalf("%s, letters on candy: %+v", system, p.Refused)
		}
		candy := slices.Index(roles(p), "candy")
		if next := lib.Materials[p.Films[candy+1].Material]; next.Role != "lock" {
			t.Errorf("%s: %s lies straight on candy, which bleeds", system, next.Slug)
		}
	}
	if p := job("solvent", "polycarbonate", "solid-colour", ""); p.Refused == nil || !strings.Contains(p.Refused.Reasons[0], "must not lie over anything solvent-shy") {
		t.Errorf("solvent on polycarbonate: %+v", p.Refused)
	}
	// Without its barrier and without a stripper, old enamel is refused.
	for slug, m := range lib.Materials {
		if m.Barrier && m.Role != "clear" {
			delete(lib.Materials, slug)
		}
	}
	for slug, s := range lib.Steps {
		if s.Strips {
			delete(lib.Steps, slug)
		}
	}
	if p := job("solvent", "old-enamel", "solid-colour", ""); p.Refused == nil || !strings.Contains(strings.Join(p.Refused.Reasons, " "), "must not lie over anything") {
		t.Errorf("solvent straight on old enamel: %+v", p.Refused)
	}
}

// TestTapeLimits: a tape that must not lie on what is below is not laid there,
// and the refusal gives the tape's reason.
func TestTapeLimits(t *testing.T) {
	lib := builtIn(t)
	document := panelWith("solid-colour", `  - {kind: stripe, on: panel, area: 0.004 m2, colours: {design: "#ffffff"}}
`)
	if p := plan(t, document, lib); p.Refused != nil {
		t.Fatalf("refused: %+v", p.Refused)
	}
	lib.Tools["fine-line-tape"].Tape.Over = []library.Over{{Role: "ground", Never: true, Because: "It lifts this ground."}, {Role: "lock", Never: true, Because: "It creeps on a lock."}}
	p := plan(t, document, lib)
	if p.Refused == nil || !strings.Contains(strings.Join(p.Refused.Reasons, " "), "It lifts this ground.") {
		t.Errorf("a tape where it must not lie: %+v", p.Refused)
	}
}
