package how

import (
	"errors"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"coatwright/content"
	"coatwright/planner"
	"coatwright/planner/library"
	"coatwright/planner/trace"
)

func builtIn(t testing.TB) *content.Library {
	t.Helper()
	lib, err := content.Load(content.BuiltIn(), nil)
	if err != nil {
		t.Fatal(err)
	}
	return lib
}

func planOf(t testing.TB, file string, lib *library.Library) *planner.Plan {
	t.Helper()
	document, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	job, err := planner.ParseJob(file, document, lib)
	if err != nil {
		t.Fatal(err)
	}
	p, err := planner.New(job, lib)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func jobs(t testing.TB) []string {
	t.Helper()
	files, err := filepath.Glob("../../testdata/jobs/*.yaml")
	if err != nil || len(files) == 0 {
		t.Fatal("no jobs", err)
	}
	return files
}

// Every figure of every step of the example jobs comes out of its formula and
// its notes as the plan has it, and says where each of its inputs came from.
func TestFiguresAreThePlans(t *testing.T) {
	notes := builtIn(t)
	for _, file := range jobs(t) {
		t.Run(strings.TrimSuffix(filepath.Base(file), ".yaml"), func(t *testing.T) {
			p := planOf(t, file, notes.Planner())
			for _, s := range p.Steps {
				figures, err := Step(p, notes.Planner(), s.ID)
				if err != nil {
					t.Fatal(err)
				}
				checkAll(t, s, figures, notes)
			}
			checkFigures(t, "totals", Totals(p, notes.Planner()), notes)
		})
	}
}

func checkFigures(t *testing.T, of string, figures []trace.Figure, notes *content.Library) {
	t.Helper()
	keys := map[string]bool{}
	for _, f := range figures {
		if keys[f.Key] || f.Name == "" || f.Value.Of == "" || len(f.Inputs) == 0 || math.IsNaN(f.Value.SI) {
			t.Errorf("%s: the figure %q stands twice or lacks something: %+v", of, f.Key, f)
		}
		keys[f.Key] = true
		for _, r := range f.Remarks {
			if strings.HasPrefix(r, "The plan was kept with") {
				t.Errorf("%s: %s: %s", of, f.Key, r)
			}
		}
		if f.Note != "" && notes.Note(f.Note) == nil {
			t.Errorf("%s: %s is explained in %s, which is not there", of, f.Key, f.Note)
		}
		for _, in := range f.Inputs {
			if in.Origin.From == trace.FromNote && notes.Note(in.Origin.At) == nil {
				t.Errorf("%s: %s: %s comes from %s, which is not there", of, f.Key, in.Name, in.Origin.At)
			}
		}
	}
	for _, f := range figures {
		for _, in := range f.Inputs {
			if in.Origin.From == trace.FromFigure && !keys[in.Origin.At] {
				t.Errorf("%s: %s: %s comes from the figure %q, which is not there", of, f.Key, in.Name, in.Origin.At)
			}
		}
	}
}

func checkAll(t *testing.T, s planner.Step, figures []trace.Figure, notes *content.Library) {
	t.Helper()
	checkFigures(t, s.ID, figures, notes)
	wants := []string{"work"}
	if s.Coats > 0 {
		wants = append(wants, "dry-film", "wet-film", "spreading-rate", "hand", "trigger")
	}
	if s.Mix != nil {
		wants = append(wants, "need", "batch", "mark-1", "scale-1", "pot-life", "voc", "voc-less-water", "voc-mass")
	}
	for k, w := range s.Waits {
		if w.Min > 0 {
			wants = append(wants, "wait-"+string(rune('1'+k)))
		}
	}
	for _, key := range wants {
		if !slices.ContainsFunc(figures, func(f trace.Figure) bool { return f.Key == key }) {
			t.Errorf("%s: there is no how for %q", s.ID, key)
		}
	}
}

// A plan that was edited by hand is explained as it stands.
func TestEditedPlanStands(t *testing.T) {
	notes := builtIn(t)
	p := planOf(t, jobs(t)[0], notes.Planner())
	i := slices.IndexFunc(p.Steps, func(s planner.Step) bool { return s.Coats > 1 })
	p.Steps[i].WetUm *= 2
	figures, err := Step(p, notes.Planner(), p.Steps[i].ID)
	if err != nil {
		t.Fatal(err)
	}
	k := slices.IndexFunc(figures, func(f trace.Figure) bool { return f.Key == "wet-film" })
	if f := figures[k]; math.Abs(f.Value.SI*1e6-p.Steps[i].WetUm) > 1e-9 || !strings.Contains(strings.Join(f.Remarks, " "), "The plan was kept with") {
		t.Errorf("the wet film of an edited step is told as %v, %q", f.Value, f.Remarks)
	}
}

func TestUnknownStep(t *testing.T) {
	notes := builtIn(t)
	p := planOf(t, jobs(t)[0], notes.Planner())
	_, err := Step(p, notes.Planner(), p.Steps[0].ID+"x")
	var unknown *planner.UnknownStepError
	if !errors.As(err, &unknown) || unknown.Nearest != p.Steps[0].ID {
		t.Errorf("error %v, want an unknown step near %s", err, p.Steps[0].ID)
	}
}

func BenchmarkStep(b *testing.B) {
	notes := builtIn(b)
	p := planOf(b, "../../testdata/jobs/touring-frame.yaml", notes.Planner())
	for b.Loop() {
		for _, s := range p.Steps {
			if _, err := Step(p, notes.Planner(), s.ID); err != nil {
				b.Fatal(err)
			}
		}
	}
}
