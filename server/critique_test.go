package main

import (
	"encoding/json"
	"fmt"
	"strings"
	"testing"

	"coatwright/planner/critique"
)

const frameJob = "../testdata/jobs/touring-frame.yaml"

// framePlan is the frame job's plan as JSON, as the command writes it.
func framePlan(t testing.TB) string {
	t.Helper()
	code, plan, stderr := command("plan", frameJob, "-format", "json")
	if code != exitOK {
		t.Fatal(stderr)
	}
	return plan
}

func TestWithCommand(t *testing.T) {
	for _, c := range []struct {
		with, format string
		code         int
		says         []string
	}{
		{"room.airflow=1 m/s, clear=two-pack", "text", exitOK, []string{"With clear=two-pack, room.airflow=1 m/s: the steps stay as they are", "sooner at the end"}},
		{"clear=waterborne", "text", exitOK, []string{"it takes other steps", "- Spray the clear: Two-pack satin clear", "+ Spray the clear: Waterborne satin clear"}},
		{"clear=waterborne", "markdown", exitOK, []string{"# With clear=waterborne", "- Comes: [Spray the clear: Waterborne satin clear](step/spray-clear.md)"}},
		{"clear=waterborne", "json", exitOK, []string{`"with": "clear=waterborne"`, `"answer": "instead"`}},
		{"applicator=airbrush", "text", exitFailed, []string{"the job cannot be done so", "lies evenly on at most"}},
		{"applicator=airbrush", "markdown", exitFailed, []string{"- No plan for frame", "lies evenly on at most"}},
		{"clear=twopack", "text", exitMalformed, []string{`did you mean "two-pack"?`}},
		{"room.airflo=1 m/s", "text", exitMalformed, []string{`did you mean "room.airflow"?`}},
		{"clear", "text", exitMalformed, []string{"expected a choice and its value"}},
	} {
		code, stdout, stderr := command("plan", frameJob, "-with", c.with, "-format", c.format)
		if code != c.code {
			t.Errorf("%s as %s: exit code %d, want %d", c.with, c.format, code, c.code)
		}
		for _, want := range c.says {
			if !strings.Contains(stdout+stderr, want) {
				t.Errorf("%s as %s: it does not say %q:\n%s", c.with, c.format, want, stdout+stderr)
			}
		}
	}
}

func TestMoveCommand(t *testing.T) {
	for _, c := range []struct {
		args []string
		code int
		says []string
	}{
		{[]string{"-move", "degrease"}, exitFailed, []string{`It needs "degreased"`, "note: step/abrade-steel", `repair: Do "Wash and degrease" before`}},
		{[]string{"-move", "flush-gun", "-before", "flush-gun"}, exitOK, []string{"every need is met"}},
		{[]string{"-move", "degrese"}, exitMalformed, []string{`no step "degrese"`, `did you mean "degrease"?`}},
		{[]string{"-move", "degrease", "-before", "tack-of"}, exitMalformed, []string{`did you mean "tack-off"?`}},
		{[]string{"-before", "tack-off"}, exitMalformed, []string{"expected -move STEP -before STEP"}},
		{[]string{"-move", "degrease", "-without", "tack-off"}, exitMalformed, []string{"one question at a time"}},
	} {
		code, stdout, stderr := command(append([]string{"plan", frameJob}, c.args...)...)
		if code != c.code {
			t.Errorf("%v: exit code %d, want %d", c.args, code, c.code)
		}
		for _, want := range c.says {
			if !strings.Contains(stdout+stderr, want) {
				t.Errorf("%v: it does not say %q:\n%s", c.args, want, stdout+stderr)
			}
		}
	}
}

func TestCritiqueCommand(t *testing.T) {
	plan := framePlan(t)
	edited := func(old, new string) string {
		if !strings.Contains(plan, old) {
			t.Fatalf("the plan has no %s", old)
		}
		return strings.Replace(plan, old, new, 1)
	}
	kept := edited(`"kept": []`, `"kept": [{"step": "spray-primer", "need": "coats", "reason": "an inside face"}]`)
	for _, c := range []struct {
		name, plan string
		code       int
		says       []string
	}{
		{"as planned", plan, exitOK, []string{"every need is met", "risk: It goes better with"}},
		{"fewer coats", edited(`"coats": 2`, `"coats": 1`), exitFailed, []string{"(spray-primer), Spray the primer", "not met: It has 1 coat, and 2 are laid", "note: step/spray-primer", "repair: "}},
		{"kept on purpose", strings.Replace(kept, `"coats": 2`, `"coats": 1`, 1), exitOK, []string{"1 kept so on purpose", "kept so because: an inside face"}},
		{"cut off", plan[:3000], exitMalformed, []string{fmt.Sprintf("plan.json:%d:", 1+strings.Count(plan[:3000], "\n")), "the end of the file", "still open"}},
		{"no comma", edited("\"satin\",\n", "\"satin\"\n"), exitMalformed, []string{"plan.json:31:", "found \"", "expected JSON: "}},
		{"more than a plan", plan + "x", exitMalformed, []string{`found "x"`, "after top-level value"}},
		{"no number", edited(`"coats": 2`, `"coats": "two"`), exitMalformed, []string{"steps.coats: found a string, expected a whole number"}},
		{"no time", edited(`"start": "2026-12-01T08:00:00Z`, `"start": "2026-13-01T08:00:00Z`), exitMalformed, []string{"found 2026-13-01T08:00:00Z, expected a time"}},
		{"another key", edited(`"coats": 0`, `"coat": 0`), exitMalformed, []string{`found the key "coat"`, `did you mean "coats"?`}},
		{"no id", edited(`"id": "degrease"`, `"id": ""`), exitMalformed, []string{"steps[1].id: found no id, expected an id of the step's own"}},
		{"an id again", edited(`"id": "water-break-test"`, `"id": "degrease"`), exitMalformed, []string{`found "degrease" again`, "is on line"}},
		{"an unknown finish", edited(`"finish": "satin"`, `"finish": "satn"`), exitMalformed, []string{"plan.json:30:15: job.finish", `did you mean "satin"?`}},
		{"null", "null", exitMalformed, []string{"plan.json:1:1: found null, expected a plan"}},
		{"a list", "[]", exitMalformed, []string{"found an array, expected an object"}},
		{"nothing in it", "{}", exitMalformed, []string{"at least one step", "the job that the plan is for"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			code, stdout, stderr := command("critique", write(t, "plan.json", c.plan))
			if code != c.code {
				t.Errorf("exit code %d, want %d", code, c.code)
			}
			for _, want := range c.says {
				if !strings.Contains(stdout+stderr, want) {
					t.Errorf("it does not say %q:\n%s", want, stdout+stderr)
				}
			}
			if code == exitMalformed && stdout != "" {
				t.Errorf("something was written out: %s", stdout)
			}
		})
	}
	code, stdout, _ := command("critique", write(t, "plan.json", edited(`"coats": 2`, `"coats": 1`)), "-format", "json")
	var c critique.Critique
	if err := json.Unmarshal([]byte(stdout), &c); err != nil || code != exitFailed || c.Open == 0 {
		t.Errorf("as JSON: exit code %d, %d open, %v", code, c.Open, err)
	}
	if code, _, stderr := command("critique", "x", "-format", "jsn"); code != exitMalformed || !strings.Contains(stderr, `did you mean "json"?`) {
		t.Errorf("an unknown format: %d, %s", code, stderr)
	}
}

// FuzzParsePlan: whatever a file holds, it is a plan or is told why not.
func FuzzParsePlan(f *testing.F) {
	s, err := openSite(f.TempDir(), f.Output())
	if err != nil {
		f.Fatal(err)
	}
	defer s.close()
	for _, seed := range []string{"", "null", "[]", "{}", `{"steps":[{}],"job":{"title":"x"}}`, `{"steps":[null],"job":3}`, `{"steps":[{"id":"a\"b\\"}],"job":{}} x`, `{"job":"` + "\xff" + `"}`} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, src string) {
		p, err := parsePlan("plan.json", []byte(src), s.notes.Planner())
		if (p == nil) == (err == nil) {
			t.Errorf("neither a plan nor an error: %v, %v", p, err)
		}
	})
}
