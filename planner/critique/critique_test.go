package critique_test

import (
	"os"
	"path/filepath"
	"testing"

	"coatwright/content"
	"coatwright/planner"
	"coatwright/planner/critique"
	"coatwright/planner/library"
)

func builtIn(t testing.TB) *library.Library {
	t.Helper()
	lib, err := content.Load(content.BuiltIn(), nil)
	if err != nil {
		t.Fatal(err)
	}
	return lib.Planner()
}

func exampleJobs(t testing.TB) []string {
	t.Helper()
	files, err := filepath.Glob("../../testdata/jobs/*.yaml")
	if err != nil || len(files) == 0 {
		t.Fatal("no example jobs", err)
	}
	return files
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

// TestPlansPass: what the planner finds, the critique finds sound.
func TestPlansPass(t *testing.T) {
	lib := builtIn(t)
	for _, file := range exampleJobs(t) {
		c, err := critique.Of(planOf(t, file, lib), lib)
		if err != nil {
			t.Fatalf("%s: %v", file, err)
		}
		for _, f := range c.Findings {
			if f.Level == critique.Breaks {
				t.Errorf("%s: %s, %s: %s", filepath.Base(file), f.Part, f.Step, f.Says)
			}
		}
	}
}
