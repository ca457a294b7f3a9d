package sheet

import (
	"bytes"
	"flag"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"coatwright/planner"
	q "coatwright/quantity"
)

var update = flag.Bool("update", false, "write the golden files anew")

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
				FanMM: 40, DistanceMM: 115, Overlap: 65, Design: odd,
				Waits:   []planner.Wait{{Until: "dry-to-recoat", After: "mix", Min: 34, Low: 24, High: 55, Max: 2880}, {Until: "dry", After: "mix", Min: 5, Low: 5, High: 5}, {Until: "before dry-hard", After: "mix", Max: 90}, {Until: "dust-free", After: "mix", Max: 30, By: "it does not last"}},
				Advised: true, CostsMin: 10, SavesMin: 40, Checks: []string{odd}},
		},
		Films: []planner.Film{{Step: "spray", Title: odd, Coats: 2, DryUm: 30, Parts: []string{"frame"}, Design: odd,
			Rework: []planner.Rework{{How: odd, State: "dry-to-touch", Until: start.Add(3 * time.Hour)}}}},
		Strips:     []planner.Strip{{Step: "spray", Title: odd, Missing: odd}},
		Hardware:   []planner.Bag{{Label: "bag 1", Part: odd, Holds: odd}},
		Left:       []string{"rack", odd},
		Conditions: []planner.Condition{{Level: "no", What: odd}},
		Cautions:   []planner.Caution{{Note: "caution/x", Title: odd, Says: odd}},
		Materials:  []planner.Material{{Material: "m", Title: odd, ML: 1200, G: 1300, BuyML: 1500}},
		Totals:     planner.Totals{WorkMin: 66, Start: start, End: start.Add(2 * time.Hour), HighEnd: start.Add(26 * time.Hour)},
	}
}

// designed is the sample with a design, hardware, a part that is left as it is,
// and figures that may turn out better or worse.
func designed() *planner.Plan {
	p := sample()
	p.Title = "Tank"
	s := &p.Steps[1]
	s.Design, s.Films, s.Parts = "maker's name: letters", []string{"Art colour"}, []string{"tank"}
	p.Films = []planner.Film{{Step: "spray", Parts: []string{"tank"}, Title: "Art colour", Design: s.Design, Coats: 2, DryUm: 30, Rework: []planner.Rework{
		{How: "Wipe it back with a cotton bud.", State: "set-to-touch", Until: s.End.Add(7 * time.Minute)},
		{How: "Shade over a soft edge.", State: "dry-hard", Until: s.End.AddDate(0, 0, 1)},
	}}}
	p.Strips = []planner.Strip{candied()}
	p.Hardware = []planner.Bag{{Label: "bag 1", Part: "tank", Holds: "filler cap | seal"}, {Label: "bag 12", Part: "tank", Holds: "4 buffers"}}
	p.Left = []string{"cap cover", "tap"}
	p.Totals.HighEnd = p.Totals.End.AddDate(0, 0, 2)
	return p
}

// TestSheets compares a plan with the files that it is written to.
func TestSheets(t *testing.T) {
	for _, c := range []struct {
		name  string
		write func(io.Writer, *planner.Plan, *q.System) error
		units *q.System
	}{{"plan.txt", Text, q.Metric}, {"plan.md", Markdown, q.Metric}, {"plan-us.txt", Text, q.US}} {
		name := c.name
		var out bytes.Buffer
		if err := c.write(&out, designed(), c.units); err != nil {
			t.Fatal(err)
		}
		file := filepath.Join("testdata", name)
		if *update {
			if err := os.WriteFile(file, out.Bytes(), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(string(want), out.String()); diff != "" {
			t.Errorf("%s (-want +got):\n%s", name, diff)
		}
	}
}

func TestText(t *testing.T) {
	var out strings.Builder
	if err := Text(&out, sample(), q.Metric); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{
		"2 steps, 1 h 6 min of work, Tue 1 Dec 08:00 to Tue 1 Dec 10:00, at the latest Wed 2 Dec 10:00.", "Nothing to do: rack, ", "Tuesday 1 December 2026", "  1. 08:00-08:06  Mix",
		"Mix 2 batches, each:", "5.25 mL", "Stand 15 min. Strain through 125 µm. Use within 2 h.",
		"Wait 34 min (24 min to 55 min) after step 1, until dry-to-recoat; the window closes after 2 d.",
		"Wait 5 min after step 1, until dry.",
		"Do it within 1 h 30 min of step 1, before the film is dry-hard.",
		"Start within 30 min of step 1 (dust-free: it does not last).",
		"2 coats of 50 µm wet, 30 µm dry in all; 190 kPa at the inlet, 40 mm of fan or cone, 115 mm off, 65 % overlap; flash 11 min between coats; colour #0f6f6b.",
		"Advised: costs 10 min, saves about 40.", `"mixed" for step 2, the job as agreed:`, "1200 mL",
		"  bag 1   from a|b", "       For a|b", "2 coats, 30 µm dry, on frame: a|b", "If it goes wrong, until Tue 1 Dec 11:00 (dry-to-touch): a|b",
	} {
		if !strings.Contains(out.String(), want) {
			t.Errorf("the text lacks %q:\n%s", want, out.String())
		}
	}
}

// TestMarkdownIsEscaped: nothing in a plan becomes markup or breaks a table.
func TestMarkdownIsEscaped(t *testing.T) {
	var out strings.Builder
	if err := Markdown(&out, sample(), q.Metric); err != nil {
		t.Fatal(err)
	}
	escaped := "a\\|b \\*c\\* \\[d\\](e) \\<f\\> \\`g\\` \\#h i"
	left := strings.ReplaceAll(out.String(), escaped, "")
	for _, bad := range []string{"*c*", "[d](", "<f>", "`g`", "\ni"} {
		if strings.Contains(left, bad) {
			t.Errorf("%q came through:\n%s", bad, left)
		}
	}
	if n := strings.Count(out.String(), escaped); n < 16 {
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
		if err := Text(&out, &planner.Plan{Title: "x", Refused: &c.r}, q.Metric); err != nil {
			t.Fatal(err)
		}
		if !strings.Contains(out.String(), c.want) {
			t.Errorf("it says %q, want %q", out.String(), c.want)
		}
	}
}
