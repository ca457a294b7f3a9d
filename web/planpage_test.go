package web

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"coatwright/planner"
)

func TestGroups(t *testing.T) {
	type group struct {
		Role, Film string
		Steps      int
	}
	var got []group
	for _, g := range samplePlanPage().Groups() {
		got = append(got, group{g.Role, g.Film.Title, len(g.Steps)})
	}
	want := []group{
		{"prime", "Rust primer", 7}, {"effect", "Fine silver", 5}, {"candy", "Candy colour in binder", 2},
		{"art", "Art colour", 1}, {"art", "Art colour", 1}, {"clear", "Two-pack satin clear", 2}, {"", "", 2},
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}

func TestCloses(t *testing.T) {
	page := samplePlanPage()
	tests := []struct {
		wait planner.Wait
		want string
	}{
		{planner.Wait{After: "lay-effect", Max: 120}, "16:02"},
		{planner.Wait{After: "lay-effect", Max: 1440}, "Wed 2 Dec 14:02"},
		{planner.Wait{After: "lay-effect"}, ""},
		{planner.Wait{After: "no-such-step", Max: 120}, ""},
	}
	for _, test := range tests {
		if got := page.WaitOf(page.Step("lay-candy"), 0, test.wait).Closes(); got != test.want {
			t.Errorf("%+v closes %q, want %q", test.wait, got, test.want)
		}
	}
}

// TestSectionsAreDrawnOnce: parts with the same films share a drawing.
func TestSectionsAreDrawnOnce(t *testing.T) {
	page := samplePlanPage()
	page.Plan.Films = append(page.Plan.Films, planner.Film{Step: "spray-clear", Parts: []string{"badge"}, Role: "clear", Title: "Clear", Coats: 1, DryUm: 25})
	var got [][]string
	for _, s := range page.Sections() {
		got = append(got, s.Parts)
	}
	if diff := cmp.Diff([][]string{{"frame"}, {"blade (2)"}, {"badge"}}, got); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}

// TestPlanPageSaysAll: what a painter must not miss is in the text.
func TestPlanPageSaysAll(t *testing.T) {
	text := textOf(render(t, samplePlanPage()))
	for _, want := range []string{
		"Isocyanates", "Flammable vapour", "do not replace the data sheet", "costs 10 min, saves about 40 min",
		"start by 16:02", "Start by 14:07, while dust-free lasts", "laid is dry-hard", "While the rust primer dries", "Every fibre stands up in the wet film as a nib.",
		"Left out: It shows in the gloss", "20 % of hardener and base (15 to 25)", "Strain through 190 µm", "Use within 8 h",
		"21 °C, 55 % humidity, air at 0.3 m/s, surface 20 °C", "Fan gun, low pressure", "300 mL", "4 h 2 min", "A clean cloth stays clean.",
		"Wait 3 h 26 min (2 h 24 min to 5 h 30 min) after step 6", "at the latest Mon 7 Dec 08:15", "If it goes wrong", "until 09:46", "until Wed 2 Dec 09:39", "Wipe it back with a damp cloth.",
		"edge stripe: stripe", "maker's name: drop shadow; badge: drop shadow", "Stripe, down tube, both sides", "Fan or cone225 mm", "Distance115 mm", "Overlap62.5 %", "Fan gun, low pressure, Airbrush",
		"bag 1", "2 eyelets, left", "Nothing to dorack", "Cut where the designs lie.",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("the page does not say %q", want)
		}
	}
}

func TestRefusedPageSaysWhy(t *testing.T) {
	text := textOf(render(t, refusedPage()))
	for _, want := range []string{"Nothing gives adhesive on mudguard", "Spray sealer cannot be done without it", "only in the system waterborne", "Change this job"} {
		if !strings.Contains(text, want) {
			t.Errorf("the page does not say %q", want)
		}
	}
}
