package how

import (
	"os"
	"slices"
	"strings"
	"testing"

	"coatwright/planner"
	"coatwright/planner/library"
	"coatwright/planner/trace"
)

// candied is the plan of a job with candy, in which a colour is wanted.
func candied(t testing.TB, lib *library.Library) (*planner.Plan, string) {
	t.Helper()
	document, err := os.ReadFile("../../testdata/jobs/touring-frame.yaml")
	if err != nil {
		t.Fatal(err)
	}
	text := strings.Replace(string(document), `candy: "#0f6f6b"}`, `candy: "#0f6f6b", wanted: "#0b4f4c"}`, 1)
	job, err := planner.ParseJob("job.yaml", []byte(text), lib)
	if err != nil {
		t.Fatal(err)
	}
	p, err := planner.New(job, lib)
	if err != nil || len(p.Strips) != 1 || p.Strips[0].Nearest == nil {
		t.Fatalf("%v, strips %+v", err, p.Strips)
	}
	return p, p.Strips[0].Step
}

func figureOf(t testing.TB, p *planner.Plan, lib *library.Library, step, key string) trace.Figure {
	t.Helper()
	figures, err := Step(p, lib, step)
	if err != nil {
		t.Fatal(err)
	}
	i := slices.IndexFunc(figures, func(f trace.Figure) bool { return f.Key == key })
	if i < 0 {
		t.Fatalf("%s: there is no how for %q", step, key)
	}
	return figures[i]
}

// Each figure of a strip has its how, which comes to what the plan has.
func TestStripIsExplained(t *testing.T) {
	notes := builtIn(t)
	lib := notes.Planner()
	p, step := candied(t, lib)
	figures, err := Step(p, lib, step)
	if err != nil {
		t.Fatal(err)
	}
	checkFigures(t, step, figures, notes)
	s := p.Strips[0]
	for key, want := range map[string]float64{
		"strength": s.Strength, "depth": 3 * s.Depth, "lightness": s.Coats[3].L, "coat-change": s.Coats[3].Change,
		"nearest": float64(s.Nearest.Coats), "left": s.Nearest.Left, "evenness": max(s.Even.Thin, s.Even.Thick),
		"tolerance": s.Even.Just / 100, "tolerance-plain": s.Even.Plain / 100, "sag-1": s.Sags[0].Change, "sag-2": s.Sags[1].Change,
	} {
		if f := figureOf(t, p, lib, step, key); f.Value.SI != want || f.Source == "" || f.Note == "" {
			t.Errorf("%s is explained as %v, the plan has %v: %+v", key, f.Value.SI, want, f.Formula)
		}
	}
}

// A strip that was kept when the notes said something else stands.
func TestKeptStripStands(t *testing.T) {
	lib := builtIn(t).Planner()
	p, step := candied(t, lib)
	p.Strips[0].Sags[1].Change++
	f := figureOf(t, p, lib, step, "sag-2")
	if f.Value.SI != p.Strips[0].Sags[1].Change || !strings.Contains(strings.Join(f.Remarks, " "), "The plan was kept with") {
		t.Errorf("the sag is told as %v, %q", f.Value, f.Remarks)
	}
}

// A plan that was kept before there were strips is explained by the notes of
// today.
func TestPlanWithoutStrips(t *testing.T) {
	lib := builtIn(t).Planner()
	p, step := candied(t, lib)
	was := p.Strips[0].Coats[3].L
	p.Strips = nil
	if f := figureOf(t, p, lib, step, "lightness"); f.Value.SI != was {
		t.Errorf("the lightness is told as %v, want %v", f.Value.SI, was)
	}
}

// The coats that hide are told of the films that scatter, and of those only.
func TestHidingIsExplained(t *testing.T) {
	lib := builtIn(t).Planner()
	p := planOf(t, "../../testdata/jobs/deck-panel.yaml", lib)
	told := 0
	for _, s := range p.Steps {
		figures, err := Step(p, lib, s.ID)
		if err != nil {
			t.Fatal(err)
		}
		has := slices.ContainsFunc(figures, func(f trace.Figure) bool { return f.Key == "hiding" })
		_, hides := planner.HidingOf(lib.Materials[strings.TrimPrefix(s.Material, "material/")], s.Colour)
		if has != (hides && s.Coats > 0) {
			t.Errorf("%s: its hiding is told: %v", s.ID, has)
		}
		if has {
			told++
		}
	}
	if told == 0 {
		t.Error("no film of a pearl over a solid ground hides")
	}
}
