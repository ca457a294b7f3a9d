package planner_test

import (
	"flag"
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"coatwright/planner"
	"coatwright/planner/critique"
	"coatwright/planner/library"
)

var randomJobs = flag.Int("jobs", 150, "how many random jobs to plan")

// randomJob is a job that a shop might get, or might not.
func randomJob(r *rand.Rand, lib *library.Library) string {
	pick := func(words ...string) string { return words[r.IntN(len(words))] }
	var parts []string
	for i := range 1 + r.IntN(3) {
		parts = append(parts, fmt.Sprintf("  - {name: part %d, substrate: %s, count: %d, area: %.3f m2, form: %s, condition: %s%s}",
			i, pick(sorted(lib.Substrates)...), 1+r.IntN(3), 0.01+r.Float64()*[]float64{0.1, 0.5, 2}[r.IntN(3)],
			pick("lattice", "tube", "solid", "panel"), pick("loose", "loose", "assembled"), pick("", ", keep-free: none")))
	}
	return fmt.Sprintf(`title: random
system: %s
%sparts:
%s
%seffect: %s
finish: %s
care: %s
candy-coats: %d
applicator: %s
room: {air: %d C, humidity: %d %%, airflow: %.1f m/s, surface: %d C}
shop: {hours: "%s", painters: %d}
start: 2026-12-0%dT%02d:%02d
`, pick("waterborne", "waterborne", "solvent"), pick("", "clear: two-pack\n", "clear: waterborne\n"), strings.Join(parts, "\n"), randomDesigns(r, lib, len(parts)), pick(sorted(lib.Effects)...), pick(sorted(lib.Finishes)...),
		pick("show", "daily", "rough"), 1+r.IntN(6), pick("hvlp-gun", "airbrush", "[hvlp-gun, airbrush]", "[hvlp-gun, airbrush]"),
		8+r.IntN(28), 20+r.IntN(75), r.Float64()*2, 8+r.IntN(28),
		pick("Mon-Fri 08:00-17:00", "Mon-Fri 08:00-12:00 13:00-17:00", "Mon-Sun 00:00-24:00", "Tue,Thu 09:00-15:00", "Mon-Thu 06:00-14:30; Sat 08:00-12:00"),
		1+r.IntN(3), 1+r.IntN(9), r.IntN(24), r.IntN(60))
}

// randomDesigns are none to three designs, on parts and in places that they may
// share.
func randomDesigns(r *rand.Rand, lib *library.Library, parts int) string {
	n := r.IntN(4)
	if n == 0 {
		return ""
	}
	pick := func(words ...string) string { return words[r.IntN(len(words))] }
	out := "designs:\n"
	for range n {
		kind := pick(sorted(lib.Designs)...)
		var with []string
		for _, l := range lib.Designs[kind].Layers {
			if l.Optional && r.IntN(2) == 0 {
				with = append(with, l.Name)
			}
		}
		out += fmt.Sprintf("  - {kind: %s, on: part %d, area: %.4f m2, position: %s, mask: %s, with: [%s], colours: {design: %q, shadow: \"#202020\"}}\n",
			kind, r.IntN(parts), 0.001+r.Float64()*0.009, pick("left", "right", "all round"), pick("negative", "negative", "positive"), strings.Join(with, ", "), pick("#ffffff", "#aa0000"))
	}
	return out
}

// TestRandomJobs: whatever the job, it plans soundly or is refused with a fact
// and a reason. Run with -jobs 5000 for a long look.
func TestRandomJobs(t *testing.T) {
	lib := builtIn(t)
	planned, refusals := 0, map[string]int{}
	for seed := range *randomJobs {
		document := randomJob(rand.New(rand.NewPCG(uint64(seed), 1)), lib)
		p := plan(t, document, lib)
		if p.Refused != nil {
			refusals[p.Refused.Fact]++
			if p.Refused.Fact == "" || len(p.Refused.Reasons) == 0 || p.Refused.Part == "" {
				t.Errorf("seed %d: refused with %+v\n%s", seed, p.Refused, document)
			}
			continue
		}
		planned++
		for _, fault := range verify(p, lib) {
			t.Errorf("seed %d: %s\n%s", seed, fault, document)
		}
		if s := p.Steps[seed%len(p.Steps)]; !s.Advised {
			checkMissed(t, seed, p, s, lib)
		}
	}
	if planned < *randomJobs/3 {
		t.Errorf("only %d of %d random jobs were planned", planned, *randomJobs)
	}
	t.Logf("%d of %d planned; refused for want of %v", planned, *randomJobs, refusals)
}

// checkMissed leaves a step out that is not marked as advised: the critique
// speaks, unless planning without the step finds nothing wrong with that.
func checkMissed(t *testing.T, seed int, p *planner.Plan, s planner.Step, lib *library.Library) {
	t.Helper()
	edited, err := critique.Apply(p, lib, critique.Repair{Do: critique.Drop, Step: s.ID})
	if err != nil {
		t.Fatal(err)
	}
	c, err := critique.Findings(edited, lib)
	if err != nil {
		t.Fatal(err)
	}
	if c.Open > 0 {
		return
	}
	d, err := planner.Without(p.Job, lib, s.ID)
	if err != nil {
		t.Fatal(err)
	}
	// Something else in its place is no proof: with less to do a window may be met
	// that was shut before.
	if d.Answer == planner.Breaks {
		t.Errorf("seed %d: without %s the planner says %s, the critique nothing", seed, s.ID, d.Answer)
	}
}
