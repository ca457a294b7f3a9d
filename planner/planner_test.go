package planner_test

import (
	"bytes"
	"encoding/json"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"coatwright/content"
	"coatwright/planner"
	"coatwright/planner/library"
	"coatwright/planner/sheet"
	q "coatwright/quantity"
)

var update = flag.Bool("update", false, "write the golden files anew")

func builtIn(tb testing.TB) *library.Library {
	tb.Helper()
	notes, err := content.Load(content.BuiltIn(), nil)
	if err != nil {
		tb.Fatal(err)
	}
	return notes.Planner()
}

func parse(tb testing.TB, document string, lib *library.Library) *planner.Job {
	tb.Helper()
	job, err := planner.ParseJob("job.yaml", []byte(document), lib)
	if err != nil {
		tb.Fatalf("%v\n%s", err, document)
	}
	return job
}

func plan(tb testing.TB, document string, lib *library.Library) *planner.Plan {
	tb.Helper()
	p, err := planner.New(parse(tb, document, lib), lib)
	if err != nil {
		tb.Fatal(err)
	}
	return p
}

// golden compares got with a file, or writes it with -update.
func golden(t *testing.T, file string, got []byte) {
	t.Helper()
	if *update {
		if err := os.WriteFile(file, got, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(string(want), string(got)); diff != "" {
		t.Errorf("%s (-want +got); run with -update and read the change:\n%s", file, diff)
	}
}

// jobs are the example jobs.
func jobs(tb testing.TB) []string {
	tb.Helper()
	files, err := filepath.Glob("../testdata/jobs/*.yaml")
	if err != nil || len(files) < 3 {
		tb.Fatalf("example jobs: %v, %v", files, err)
	}
	return files
}

// TestExampleJobs keeps every example's plan in a golden file that a painter
// has read.
func TestExampleJobs(t *testing.T) {
	lib := builtIn(t)
	for _, file := range jobs(t) {
		t.Run(filepath.Base(file), func(t *testing.T) {
			document, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			p := plan(t, string(document), lib)
			for _, fault := range verify(p, lib) {
				t.Error(fault)
			}
			var out bytes.Buffer
			if err := sheet.Text(&out, p, q.Metric); err != nil {
				t.Fatal(err)
			}
			golden(t, strings.TrimSuffix(file, ".yaml")+".golden", out.Bytes())
		})
	}
}

// TestSamePlanEveryTime: byte for byte, whatever the order of the maps.
func TestSamePlanEveryTime(t *testing.T) {
	document, err := os.ReadFile("../testdata/jobs/touring-frame.yaml")
	if err != nil {
		t.Fatal(err)
	}
	var first []byte
	for range 20 {
		lib := builtIn(t) // maps are filled anew
		got, err := json.Marshal(plan(t, string(document), lib))
		if err != nil {
			t.Fatal(err)
		}
		if first == nil {
			first = got
		}
		if !bytes.Equal(first, got) {
			t.Fatal("two plans of one job differ")
		}
	}
}

// TestPlanSurvivesJSON: what is stored is what is shown.
func TestPlanSurvivesJSON(t *testing.T) {
	lib := builtIn(t)
	for _, file := range jobs(t) {
		document, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		want, err := json.Marshal(plan(t, string(document), lib))
		if err != nil {
			t.Fatal(err)
		}
		var read planner.Plan
		if err := json.Unmarshal(want, &read); err != nil {
			t.Fatal(err)
		}
		got, err := json.Marshal(&read)
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(string(want), string(got)); diff != "" {
			t.Errorf("%s: %s", file, diff)
		}
	}
}

// combination is a job of one part.
func combination(substrate, effect, finish, clear, applicator, area, more string) string {
	return fmt.Sprintf(`title: %[1]s %[2]s %[3]s
system: waterborne
clear: %[4]s
parts: [{name: part, substrate: %[1]s, area: %[6]s}]
effect: %[2]s
finish: %[3]s
colours: {ground: "#8a8d90", candy: "#0f6f6b", pearl: "#e8e2d4"}
applicator: %[5]s
room: {air: 21 C, humidity: 55 %%, airflow: 0.3 m/s, surface: 20 C}
start: 2026-12-01T08:00
%[7]s`, substrate, effect, finish, clear, applicator, area, more)
}

func sorted[V any](m map[string]V) []string {
	var keys []string
	for k := range m {
		keys = append(keys, k)
	}
	slices.Sort(keys)
	return keys
}

// TestCoverage walks every substrate, effect, finish, system and clear, with an
// airbrush, a gun, and a gun and an airbrush for lettering: each plans, soundly,
// or is refused with a named fact.
func TestCoverage(t *testing.T) {
	lib := builtIn(t)
	var table bytes.Buffer
	fmt.Fprintln(&table, "# substrate, effect, finish, system, clear, set-up: films of the plan and its steps, or the fact that is missing")
	planned, refused := 0, 0
	for _, substrate := range sorted(lib.Substrates) {
		for _, effect := range sorted(lib.Effects) {
			for _, finish := range sorted(lib.Finishes) {
				for _, paint := range []string{"waterborne, waterborne", "waterborne, two-pack", "solvent, two-pack"} {
					for _, setUp := range []string{"airbrush 0.05 m2", "hvlp-gun 0.6 m2", "both 0.3 m2 lettering"} {
						name := strings.Join([]string{substrate, effect, finish, paint, setUp}, ", ")
						p := plan(t, covered(substrate, effect, finish, paint, setUp), lib)
						if p.Refused != nil {
							refused++
							checkRefusal(t, name, p.Refused)
							fmt.Fprintf(&table, "%s: refused, %s: %s\n", name, p.Refused.Fact, strings.Join(p.Refused.Reasons, "; "))
							continue
						}
						planned++
						checkPlan(t, name, p, lib)
						fmt.Fprintf(&table, "%s: %s; %d steps\n", name, strings.Join(roles(p), " "), len(p.Steps))
					}
				}
			}
		}
	}
	if planned == 0 || refused == 0 {
		t.Errorf("%d planned, %d refused: the table must show both", planned, refused)
	}
	golden(t, "testdata/coverage.golden", table.Bytes())
}

// covered is the job of a row of the coverage table.
func covered(substrate, effect, finish, paint, setUp string) string {
	system, clear, _ := strings.Cut(paint, ", ")
	words := strings.Fields(setUp)
	applicator, more := words[0], ""
	if applicator == "both" {
		applicator = "[hvlp-gun, airbrush]"
		more = "designs: [{kind: lettering, on: part, area: 0.02 m2, colours: {design: \"#ffffff\"}}]\n"
	}
	document := combination(substrate, effect, finish, clear, applicator, words[1]+" m2", more)
	return strings.Replace(document, "system: waterborne", "system: "+system, 1)
}

func roles(p *planner.Plan) []string {
	var out []string
	for _, f := range p.Films {
		out = append(out, f.Role)
	}
	return out
}

func checkRefusal(t *testing.T, name string, r *planner.Refusal) {
	t.Helper()
	if r.Fact == "" || len(r.Reasons) == 0 || r.Part != "part" {
		t.Errorf("%s: refused without a fact, a reason or a part: %+v", name, r)
	}
}

func checkPlan(t *testing.T, name string, p *planner.Plan, lib *library.Library) {
	t.Helper()
	for _, fault := range verify(p, lib) {
		t.Errorf("%s: %s", name, fault)
	}
	job := p.Job
	if slices.Contains(lib.Substrates[job.Parts[0].Substrate].Traits, "low-energy") && !slices.Contains(roles(p), "promote") {
		t.Errorf("%s: a surface that paint does not wet is painted without an adhesion step", name)
	}
	if job.Clear == "two-pack" && !slices.ContainsFunc(p.Cautions, func(c planner.Caution) bool { return c.Note == "caution/isocyanates" }) {
		t.Errorf("%s: two-pack clear without the isocyanate caution", name)
	}
	for _, s := range p.Steps {
		checkStep(t, name, s)
	}
	want := append(effectRoles(lib, job.Effect), "clear")
	between := func(role string) bool { return role == "art" || role == "lock" }
	if got := slices.DeleteFunc(roles(p), between); !slices.Equal(got[len(got)-len(want):], want) {
		t.Errorf("%s: the films end %v, the effect asks for %v", name, got, want)
	}
}

func effectRoles(lib *library.Library, effect string) []string {
	var out []string
	for _, f := range lib.Effects[effect].Films {
		out = append(out, f.Role)
	}
	return out
}

// checkStep looks at what every step must show.
func checkStep(t *testing.T, name string, s planner.Step) {
	t.Helper()
	switch {
	case s.Because == "" || s.Skipped == "" || len(s.Checks) == 0:
		t.Errorf("%s, %s: no because, skipped or checks", name, s.ID)
	case s.WorkMin <= 0 || !s.Start.Before(s.End):
		t.Errorf("%s, %s: no work", name, s.ID)
	case s.End.Hour() > 17 || s.End.Hour() == 17 && s.End.Minute() > 0 || s.Start.Hour() < 8 || s.Start.Weekday() == time.Sunday:
		t.Errorf("%s, %s: outside working hours, %s to %s", name, s.ID, s.Start, s.End)
	case len(s.Why) == 0:
		t.Errorf("%s, %s: nobody needs it", name, s.ID)
	}
	if last := len(s.Serves) - 1; last < 0 || s.Serves[last].For != planner.Agreed {
		t.Errorf("%s, %s: its reasons do not lead to what was agreed: %+v", name, s.ID, s.Serves)
	}
	if s.Mix == nil {
		return
	}
	var sum float64
	for _, l := range s.Mix.Lines {
		if sum += l.ML; l.ML <= 0 || l.G <= 0 || abs(l.MarkML-sum) > 1e-6 {
			t.Errorf("%s, %s: pour %+v after %g mL", name, s.ID, l, sum)
		}
	}
	if s.Mix.LowML > s.Mix.HighML || sum*float64(s.Mix.Batches) < s.Mix.LowML {
		t.Errorf("%s, %s: %g mL for a need of %g to %g", name, s.ID, sum, s.Mix.LowML, s.Mix.HighML)
	}
}

func abs(x float64) float64 { return max(x, -x) }
