package planner_test

import (
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"

	"coatwright/planner"
	"coatwright/planner/library"
)

func frame(tb testing.TB) string {
	tb.Helper()
	document, err := os.ReadFile("../testdata/jobs/touring-frame.yaml")
	if err != nil {
		tb.Fatal(err)
	}
	return string(document)
}

func find(p *planner.Plan, note string) *planner.Step {
	for i := range p.Steps {
		if p.Steps[i].Note == "step/"+note {
			return &p.Steps[i]
		}
	}
	return nil
}

// TestRefusals: a job that cannot be done names the fact that is missing, the
// step that needs it, and what stops each note that could give it.
func TestRefusals(t *testing.T) {
	lib := builtIn(t)
	for _, c := range []struct{ name, document, fact, step, reason string }{
		{"what lies below bars every paint", strings.Replace(combination("polycarbonate", "solid-colour", "satin", "two-pack", "hvlp-gun", "0.2 m2", ""), "system: waterborne", "system: solvent", 1), "film/ground", "spray-ground", "must not lie over anything solvent-shy"},
		{"nothing makes paint hold", combination("soft-pvc", "solid-colour", "satin", "waterborne", "hvlp-gun", "0.2 m2", ""), "adhesive", "spray-ground", "other ways to it are for a surface that is"},
		{"too large for the applicator", strings.Replace(frame(t), "hvlp-gun", "airbrush", 1), "film/effect", "", "lies evenly on at most"},
		{"too cold for the clear to cure", strings.Replace(frame(t), "air: 21 C, humidity: 55 %, airflow: 0.3 m/s, surface: 20 C", "air: -10 C, humidity: 55 %", 1), "cured", "hand-over", "never gets there in this air"},
		{"no clear of the system", strings.Replace(frame(t), "clear: two-pack", "clear: none", 1), "film/clear", "", ""},
	} {
		p := plan(t, c.document, lib)
		if p.Refused == nil {
			t.Errorf("%s: planned", c.name)
			continue
		}
		if p.Refused.Fact != c.fact || p.Refused.Step != c.step || !strings.Contains(strings.Join(p.Refused.Reasons, "\n"), c.reason) || len(p.Steps) != 0 {
			t.Errorf("%s: refused with %+v", c.name, p.Refused)
		}
	}
}

// TestDeletedNoteChangesThePlan: the planner knows nothing that no note says.
func TestDeletedNoteChangesThePlan(t *testing.T) {
	lib := builtIn(t)
	document := combination("raw-polypropylene", "solid-colour", "matt", "two-pack", "hvlp-gun", "0.2 m2", "")
	delete(lib.Materials, "adhesion-promoter")
	p := plan(t, document, lib)
	if p.Refused == nil || p.Refused.Fact != "adhesive" || p.Refused.Step == "" {
		t.Fatalf("without the promoter's note, refused is %+v", p.Refused)
	}
	if !strings.Contains(strings.Join(p.Refused.Reasons, "\n"), "solvent-adhesion-promoter is of the solvent system") {
		t.Errorf("the reasons do not say what stops the other promoter: %q", p.Refused.Reasons)
	}
	lib = builtIn(t)
	delete(lib.Steps, "tack-off")
	if p := plan(t, document, lib); p.Refused == nil || p.Refused.Fact != "dust-free" {
		t.Errorf("without the note on tacking off, refused is %+v", p.Refused)
	}
}

// TestNewSubstrateNeedsNoOtherNote: a surface that a shop described this morning
// can be planned at once, from its traits.
func TestNewSubstrateNeedsNoOtherNote(t *testing.T) {
	lib := builtIn(t)
	lib.Substrates["house-plastic"] = &library.Substrate{
		Slug: "house-plastic", Title: "House plastic", Traits: []string{"plastic", "low-energy"},
		Facts: []library.Literal{{Fact: "sound"}, {Fact: "pores-filled"}},
	}
	p := plan(t, combination("house-plastic", "solid-colour", "satin", "waterborne", "hvlp-gun", "0.2 m2", ""), lib)
	if p.Refused != nil || roles(p)[0] != "promote" {
		t.Errorf("refused %+v, films %v", p.Refused, roles(p))
	}
}

// TestCareDecidesWants: what is advised at a show is not worth its time on a
// rough job, and the needs stay.
func TestCareDecidesWants(t *testing.T) {
	lib := builtIn(t)
	at := func(care string) *planner.Plan {
		return plan(t, strings.Replace(frame(t), "care: show", "care: "+care, 1), lib)
	}
	show, daily, rough := at("show"), at("daily"), at("rough")
	if !(len(show.Steps) > len(daily.Steps) && len(daily.Steps) > len(rough.Steps)) {
		t.Errorf("steps: show %d, daily %d, rough %d", len(show.Steps), len(daily.Steps), len(rough.Steps))
	}
	card := find(show, "test-card")
	if card == nil || !card.Advised || card.SavesMin <= card.CostsMin {
		t.Errorf("the card at a show: %+v", card)
	}
	for _, p := range []*planner.Plan{show, daily, rough} {
		for _, fault := range verify(p, lib) {
			t.Errorf("%s: %s", p.Job.Care, fault)
		}
		for _, s := range p.Steps {
			if s.Advised && s.SavesMin < s.CostsMin {
				t.Errorf("%s: %s is advised, costs %g and saves %g", p.Job.Care, s.ID, s.CostsMin, s.SavesMin)
			}
		}
	}
}

func wait(s *planner.Step, until string) float64 {
	for _, w := range s.Waits {
		if w.Until == until {
			return w.Min
		}
	}
	return 0
}

// TestAirDecidesWaits: damp, cold and still air slow a waterborne film; damp
// does nothing to a two-pack.
func TestAirDecidesWaits(t *testing.T) {
	lib := builtIn(t)
	in := func(room string) *planner.Plan {
		return plan(t, strings.Replace(frame(t), "{air: 21 C, humidity: 55 %, airflow: 0.3 m/s, surface: 20 C}", room, 1), lib)
	}
	fair := in("{air: 21 C, humidity: 55 %, airflow: 0.3 m/s, surface: 21 C}")
	candy := func(p *planner.Plan) float64 { return wait(find(p, "lay-candy"), "dry-to-recoat") }
	hard := func(p *planner.Plan) float64 { return wait(find(p, "inspect"), "dry-hard") }
	for _, c := range []struct {
		room   string
		slower bool
		cure   int // of the two-pack clear: -1 sooner, 0 the same, 1 later
	}{
		{"{air: 21 C, humidity: 75 %, airflow: 0.3 m/s, surface: 21 C}", true, 0},
		{"{air: 16 C, humidity: 55 %, airflow: 0.3 m/s, surface: 16 C}", true, 1},
		{"{air: 21 C, humidity: 55 %, airflow: 0.1 m/s, surface: 21 C}", true, 0},
		{"{air: 27 C, humidity: 55 %, airflow: 0.3 m/s, surface: 27 C}", false, -1},
		{"{air: 21 C, humidity: 55 %, airflow: 1.5 m/s, surface: 21 C}", false, 0},
	} {
		p := in(c.room)
		if slower := candy(p) > candy(fair); slower != c.slower {
			t.Errorf("%s: the candy waits %g min, on a fair day %g", c.room, candy(p), candy(fair))
		}
		cure := 0
		if hard(p) > hard(fair) {
			cure = 1
		} else if hard(p) < hard(fair) {
			cure = -1
		}
		if cure != c.cure {
			t.Errorf("%s: the clear is hard after %g min, on a fair day %g", c.room, hard(p), hard(fair))
		}
	}
}

// TestRoomIsJudged: out of a material's range is no, near its edge is care.
func TestRoomIsJudged(t *testing.T) {
	lib := builtIn(t)
	for _, c := range []struct{ room, level, says string }{
		{"{air: 21 C, humidity: 55 %, surface: 21 C}", "go", "suits every film"},
		{"{air: 10 C, humidity: 55 %, surface: 10 C}", "no", "The air is 10.0 °C"},
		{"{air: 21 C, humidity: 90 %, surface: 21 C}", "no", "90 % humidity"},
		{"{air: 21 C, humidity: 73 %, surface: 21 C}", "care", "73 % humidity"},
		{"{air: 21 C, humidity: 60 %, surface: 14 C}", "no", "above the dew point"},
	} {
		p := plan(t, strings.Replace(frame(t), "{air: 21 C, humidity: 55 %, airflow: 0.3 m/s, surface: 20 C}", c.room, 1), lib)
		if p.Refused != nil {
			t.Fatalf("%s: refused %+v", c.room, p.Refused)
		}
		if !slices.ContainsFunc(p.Conditions, func(k planner.Condition) bool { return k.Level == c.level && strings.Contains(k.What, c.says) }) {
			t.Errorf("%s: %+v", c.room, p.Conditions)
		}
	}
}

// TestStandingTimeIsUsed: while the mixes of the frame job stand, other work is
// done.
func TestStandingTimeIsUsed(t *testing.T) {
	p := plan(t, frame(t), builtIn(t))
	used := 0
	for _, s := range p.Steps {
		if strings.Contains(s.Meanwhile, "stands") {
			used++
		}
	}
	if used < 3 {
		t.Errorf("only %d steps are done while a mix stands", used)
	}
}

// TestNightsAreUsed: waits run overnight, work does not, and a clear is not
// sprayed so late that its tape cannot come off in time.
func TestNightsAreUsed(t *testing.T) {
	lib := builtIn(t)
	for hour := 8; hour < 17; hour++ {
		p := plan(t, strings.Replace(frame(t), "T08:00", fmt.Sprintf("T%02d:00", hour), 1), lib)
		for _, fault := range verify(p, lib) {
			t.Errorf("starting at %d: %s", hour, fault)
		}
		clear, unmask := find(p, "spray-clear"), find(p, "unmask")
		if after := unmask.Start.Sub(clear.End).Hours(); after > 14 {
			t.Errorf("starting at %d: the tape comes off %g h after the clear", hour, after)
		}
	}
}

// TestClosedWindowIsKeyed: where the hours let a recoat window close, the route
// keys the film instead, or says why not.
func TestClosedWindowIsKeyed(t *testing.T) {
	lib := builtIn(t)
	// One short morning a week: every window of a day or two has closed.
	p := plan(t, strings.Replace(frame(t), "Mon-Fri 08:00-17:00", "Mon 08:00-12:00", 1), lib)
	if p.Refused != nil {
		if p.Refused.Fact != planner.WorkingHours || len(p.Refused.Reasons) == 0 {
			t.Errorf("refused with %+v", p.Refused)
		}
		return
	}
	for _, fault := range verify(p, lib) {
		t.Error(fault)
	}
}

// TestRefusalNamesThePart: the hours are too short for the film of the second part.
func TestRefusalNamesThePart(t *testing.T) {
	p := plan(t, `
title: x
system: waterborne
parts:
  - {name: tiny, substrate: raw-abs, area: 0.01 m2}
  - {name: wide, substrate: raw-polypropylene, area: 3 m2, count: 40}
effect: solid-colour
finish: matt
applicator: hvlp-gun
shop: {hours: "Mon-Fri 08:00-10:00"}
start: 2026-12-01
`, builtIn(t))
	if p.Refused == nil || p.Refused.Part != "wide" || p.Refused.Fact != planner.WorkingHours {
		t.Errorf("refused with %+v", p.Refused)
	}
}

// TestTooLongForADay: rubbing down is split over days; a film is not.
func TestTooLongForADay(t *testing.T) {
	lib := builtIn(t)
	document := combination("bare-steel", "solid-colour", "matt", "two-pack", "hvlp-gun", "3 m2", "shop: {hours: \"Mon-Fri 08:00-09:00\"}\n")
	p := plan(t, document, lib)
	if p.Refused == nil {
		for _, fault := range verify(p, lib) {
			t.Error(fault)
		}
		abrade := find(p, "abrade-steel")
		if abrade.End.Sub(abrade.Start).Hours() < 24 {
			t.Errorf("%g min of rubbing down in one-hour days: %s to %s", abrade.WorkMin, abrade.Start, abrade.End)
		}
		return
	}
	if !p.Refused.ByHours() {
		t.Errorf("refused with %+v", p.Refused)
	}
}

// FuzzParseJob: no document makes the reader panic, and what it takes can be
// written as JSON and read again.
func FuzzParseJob(f *testing.F) {
	for _, file := range jobs(f) {
		document, err := os.ReadFile(file)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(document)
	}
	f.Add([]byte("parts: [{}]\nroom: {humidity: 0 %}\nstart: 2026-12-01"))
	lib := builtIn(f)
	f.Fuzz(func(t *testing.T, document []byte) {
		job, err := planner.ParseJob("job", document, lib)
		if err != nil {
			if err.Error() == "" {
				t.Error("an error without words")
			}
			return
		}
		b, err := job.MarshalJSON()
		if err != nil {
			t.Fatalf("as JSON: %v", err)
		}
		if err := new(planner.Job).UnmarshalJSON(b); err != nil {
			t.Fatalf("from JSON: %v\n%s", err, b)
		}
	})
}

// TestNothingIsHeatedTooFar: a step that warms a part beyond what it stands is
// never planned, and the refusal says so.
func TestNothingIsHeatedTooFar(t *testing.T) {
	lib := builtIn(t)
	document := combination("glass", "solid-colour", "gloss", "two-pack", "hvlp-gun", "0.1 m2", "")
	if p := plan(t, document, lib); p.Refused != nil || find(p, "warm-dry-glass") == nil {
		t.Fatalf("glass is not warmed dry: %+v", p.Refused)
	}
	lib.Steps["warm-dry-glass"].Heats = lib.Substrates["glass"].HeatLimit + 1
	p := plan(t, document, lib)
	if p.Refused == nil || p.Refused.Fact != "warm-dried" || !strings.Contains(strings.Join(p.Refused.Reasons, "\n"), "warms the part to 81 C, and glass stands 80 C") {
		t.Errorf("warmed beyond its limit: %+v", p.Refused)
	}
}
