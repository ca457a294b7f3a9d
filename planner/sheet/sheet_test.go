package sheet

import (
	"strings"
	"testing"
	"time"

	"coatwright/planner"
)

// sample is an invented plan of two steps whose texts try to be more than text.
func sample() *planner.Plan {
	start := time.Date(2026, 12, 1, 8, 0, 0, 0, time.UTC)
	const odd = "a|b *c* [d](e) <f> `g` #h\ni"
	return &planner.Plan{
		Title: odd,
		Steps: []planner.Step{
			{ID: "mix", Note: "step/mix", Title: "Mix", Parts: []string{odd}, Films: []string{odd}, Because: odd, Skipped: odd, Start: start, End: start.Add(6 * time.Minute),
				Mix: &planner.Mix{Lines: []planner.Pour{{Title: odd, Share: odd, ML: 5.25, G: 5, MarkML: 5.25, MarkG: 5}}, StandMin: 15, PotLife: 120, StrainUm: 125, LowML: 4, HighML: 9, Transfer: "20 to 35 %", Batches: 2},
				Why: []planner.Reason{{Fact: "mixed", For: "spray", Because: odd}, {Fact: "mixed", For: planner.Agreed, Because: odd}}},
			{ID: "spray", Note: "step/spray", Title: "Spray", Start: start.Add(time.Hour), End: start.Add(2 * time.Hour), Coats: 2, FlashMin: 10.2, WetUm: 50, DryUm: 30, Pressure: 190, Colour: "#0f6f6b",
				Waits:   []planner.Wait{{Until: "dry-to-recoat", After: "mix", Min: 34, Max: 2880}, {Until: "before dry-hard", After: "mix", Max: 90}, {Until: "dust-free", After: "mix", Max: 30, By: "it does not last"}},
				Advised: true, CostsMin: 10, SavesMin: 40, Checks: []string{odd}},
		},
		Conditions: []planner.Condition{{Level: "no", What: odd}},
		Cautions:   []planner.Caution{{Note: "caution/x", Title: odd, Says: odd}},
		Materials:  []planner.Material{{Material: "m", Title: odd, ML: 1200, G: 1300, BuyML: 1500}},
		Totals:     planner.Totals{WorkMin: 66, Start: start, End: start.Add(2 * time.Hour)},
	}
}

func TestText(t *testing.T) {
	var out strings.Builder
	if err := Text(&out, sample()); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{
		"2 steps, 1 h 6 min of work", "Tuesday 1 December 2026", "  1. 08:00-08:06  Mix",
		"Mix 2 batches, each:", "5.2 mL", "Stand 15 min. Strain through 125 um. Use within 2 h.",
		"Wait 34 min after step 1, until dry-to-recoat; the window closes after 2 d.",
		"Do it within 1 h 30 min of step 1, before the film is dry-hard.",
		"Start within 30 min of step 1 (dust-free: it does not last).",
		"2 coats, each 50 um wet, together 30 um dry; 190 kPa at the inlet; flash 11 min between coats; colour #0f6f6b.",
		"Advised: costs 10 min, saves about 40.", `"mixed" for step 2, the job as agreed:`, "1.20 L",
	} {
		if !strings.Contains(out.String(), want) {
			t.Errorf("the text lacks %q:\n%s", want, out.String())
		}
	}
}

// TestMarkdownIsEscaped: nothing in a plan becomes markup or breaks a table.
func TestMarkdownIsEscaped(t *testing.T) {
	var out strings.Builder
	if err := Markdown(&out, sample()); err != nil {
		t.Fatal(err)
	}
	escaped := "a\\|b \\*c\\* \\[d\\](e) \\<f\\> \\`g\\` \\#h i"
	left := strings.ReplaceAll(out.String(), escaped, "")
	for _, bad := range []string{"*c*", "[d](", "<f>", "`g`", "\ni"} {
		if strings.Contains(left, bad) {
			t.Errorf("%q came through:\n%s", bad, left)
		}
	}
	if n := strings.Count(out.String(), escaped); n < 10 {
		t.Errorf("the odd text stands %d times, some were lost", n)
	}
}

func TestRefusal(t *testing.T) {
	for _, c := range []struct {
		r    planner.Refusal
		want string
	}{
		{planner.Refusal{Part: "mudguard", Fact: "adhesive", Step: "spray-sealer", Reasons: []string{"why"}}, `No plan for mudguard: nothing gives "adhesive", which step/spray-sealer needs.`},
		{planner.Refusal{Part: "frame", Fact: "film/candy"}, `nothing gives "film/candy".`},
		{planner.Refusal{Part: "frame", Fact: planner.WorkingHours}, "the working hours do not allow it."},
	} {
		var out strings.Builder
		if err := Text(&out, &planner.Plan{Title: "x", Refused: &c.r}); err != nil {
			t.Fatal(err)
		}
		if !strings.Contains(out.String(), c.want) {
			t.Errorf("it says %q, want %q", out.String(), c.want)
		}
	}
}
