package main

import (
	"bytes"
	"context"
	"encoding/json"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// command runs coatwright with args.
func command(args ...string) (code int, stdout, stderr string) {
	var out, errs bytes.Buffer
	code = run(context.Background(), args, &out, &errs)
	return code, out.String(), errs.String()
}

func write(t *testing.T, name, text string) string {
	t.Helper()
	file := filepath.Join(t.TempDir(), name)
	if err := os.MkdirAll(filepath.Dir(file), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(file, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	return file
}

func TestPlanCommand(t *testing.T) {
	const frame = "../testdata/jobs/touring-frame.yaml"
	small := "title: x\nsystem: %\n"
	good, err := os.ReadFile(frame)
	if err != nil {
		t.Fatal(err)
	}
	with := func(old, new string) string { return strings.Replace(string(good), old, new, 1) }
	for _, c := range []struct {
		name, document, format string
		code                   int
		says                   []string
	}{
		{"text", string(good), "text", exitOK, []string{"Wash and degrease", "step/degrease", "pour", "If skipped:"}},
		{"markdown", string(good), "markdown", exitOK, []string{"# Touring frame and fork", "](step/degrease.md)", "| pour |"}},
		{"json", string(good), "json", exitOK, []string{`"refused": null`, `"note": "step/degrease"`}},
		{"refused", with("applicator: hvlp-gun", "applicator: airbrush"), "json", exitFailed, []string{`"fact": "film/effect"`, `"reasons": [`}},
		{"refused as text", with("applicator: hvlp-gun", "applicator: airbrush"), "text", exitFailed, []string{"No plan for", "film/effect"}},
		{"broken YAML", small, "text", exitMalformed, []string{"job.yaml:2:"}},
		{"tab", "title: x\n\tsystem: waterborne\n", "text", exitMalformed, []string{"job.yaml:2:"}},
		{"unknown substrate", with("bare-steel", "bare-stel"), "text", exitMalformed, []string{"job.yaml:6:", `found "bare-stel"`, `did you mean "bare-steel"?`}},
		{"unknown key", with("finish: satin", "finnish: satin"), "text", exitMalformed, []string{`the key "finnish"`, `did you mean "finish"?`}},
		{"negative area", with("0.55 m2", "-0.55 m2"), "text", exitMalformed, []string{`found "-0.55 m2"`}},
		{"absurd area", with("0.55 m2", "5500 m2"), "text", exitMalformed, []string{"at most 50 m2"}},
		{"dry air", with("humidity: 55 %", "humidity: 0 %"), "text", exitMalformed, []string{`found "0 %"`, "from 1 to 99 %"}},
		{"end before start", with("08:00-17:00", "17:00-08:00"), "text", exitMalformed, []string{"shop.hours", "17:00"}},
		{"empty", "", "text", exitMalformed, []string{"job.yaml:1:1"}},
		{"not a mapping", "- one\n", "text", exitMalformed, []string{"a mapping of keys to values"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			code, stdout, stderr := command("plan", write(t, "job.yaml", c.document), "-format", c.format)
			if code != c.code {
				t.Fatalf("exit code %d, want %d\n%s%s", code, c.code, stdout, stderr)
			}
			for _, want := range c.says {
				if !strings.Contains(stdout+stderr, want) {
					t.Errorf("it does not say %q:\n%s", want, stdout+stderr)
				}
			}
			if c.format == "json" && !json.Valid([]byte(stdout)) {
				t.Error("the JSON is not JSON")
			}
			if code == exitMalformed && stdout != "" {
				t.Errorf("something was written out: %s", stdout)
			}
		})
	}
}

func TestCommandLine(t *testing.T) {
	for _, c := range []struct {
		args []string
		code int
		says string
	}{
		{[]string{"help"}, exitOK, "coatwright plan FILE"},
		{[]string{"plann", "x"}, exitMalformed, `did you mean "plan"?`},
		{[]string{"plan"}, exitMalformed, "expected one"},
		{[]string{"plan", "nosuch.yaml"}, exitMalformed, "nosuch.yaml"},
		{[]string{"plan", "x", "-format", "jsn"}, exitMalformed, `did you mean "json"?`},
		{[]string{"check"}, exitMalformed, "expected one"},
		{[]string{"check", "nosuch"}, exitMalformed, "nosuch"},
		{[]string{"-lissten", "x"}, exitMalformed, "lissten"},
		{[]string{"-listen", "nowhere:99999", "-data", t.TempDir()}, exitFailed, "99999"},
	} {
		code, stdout, stderr := command(c.args...)
		if code != c.code || !strings.Contains(stdout+stderr, c.says) {
			t.Errorf("%v: exit code %d, says %q; want %d and %q", c.args, code, stdout+stderr, c.code, c.says)
		}
	}
}

func TestWithoutCommand(t *testing.T) {
	const frame = "../testdata/jobs/touring-frame.yaml"
	for _, c := range []struct {
		step, format string
		code         int
		says         []string
	}{
		{"test-card-2", "text", exitOK, []string{"it can be left out, at a risk", "8 min less work", `misses "carded"`, "- Spray a card first: Candy concentrate"}},
		{"abrade-steel", "text", exitFailed, []string{"the job cannot be done so", `breaks "bright", which spray-primer needs`}},
		{"abrade-steel", "json", exitFailed, []string{`"answer": "breaks"`}},
		{"tack-of", "text", exitMalformed, []string{`no step "tack-of"`, `did you mean "tack-off"?`}},
	} {
		code, stdout, stderr := command("plan", frame, "-without", c.step, "-format", c.format)
		if code != c.code {
			t.Errorf("%s: exit code %d, want %d", c.step, code, c.code)
		}
		for _, want := range c.says {
			if !strings.Contains(stdout+stderr, want) {
				t.Errorf("%s: it does not say %q:\n%s", c.step, want, stdout+stderr)
			}
		}
	}
}

func TestCheckCommand(t *testing.T) {
	if code, stdout, stderr := command("check", "../content/notes"); code != exitOK {
		t.Errorf("the built-in notes: exit code %d\n%s%s", code, stdout, stderr)
	}
	good := "---\nkind: term\ntitle: House word\nmeans: One of ours.\n---\nSee [tack off](../step/tack-off.md).\n"
	file := write(t, "notes/term/house-word.md", good)
	folder := filepath.Dir(filepath.Dir(file))
	if code, stdout, stderr := command("check", folder); code != exitOK {
		t.Errorf("a note over the built-in ones: exit code %d\n%s%s", code, stdout, stderr)
	}
	bad := strings.NewReplacer("tack-off.md", "tak-off.md", "means:", "meens:").Replace(good)
	if err := os.WriteFile(file, []byte(bad), 0o644); err != nil {
		t.Fatal(err)
	}
	code, stdout, _ := command("check", folder)
	if code != exitFailed {
		t.Errorf("a broken link: exit code %d", code)
	}
	for _, want := range []string{"term/house-word.md:4:1:", `the key "meens"`, `"means"`, "term/house-word.md:6:", `"../step/tack-off.md"`} {
		if !strings.Contains(stdout, want) {
			t.Errorf("check does not say %q:\n%s", want, stdout)
		}
	}
}

// TestServe runs the server as it is run, and stops it.
func TestServe(t *testing.T) {
	ctx, stop := context.WithCancel(context.Background())
	address, done := start(t, ctx, t.TempDir())
	r, err := http.Get(address + "/healthz")
	if err != nil || r.StatusCode != http.StatusOK {
		t.Errorf("healthz: %v, %v", r, err)
	}
	if code := healthCommand(ctx, []string{address + "/healthz"}, os.Stderr); code != exitOK {
		t.Errorf("the health command: %d", code)
	}
	stop()
	select {
	case code := <-done:
		if code != exitOK {
			t.Errorf("stopped with %d", code)
		}
	case <-time.After(10 * time.Second):
		t.Error("it does not stop")
	}
}

// start runs the server on a free port and returns its address and, on done,
// its exit code.
func start(t *testing.T, ctx context.Context, data string) (address string, done <-chan int) {
	t.Helper()
	out, in, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	code := make(chan int, 1)
	go func() {
		code <- run(ctx, []string{"-listen", "127.0.0.1:0", "-data", data}, in, os.Stderr)
		in.Close()
	}()
	line := make([]byte, 200)
	n, err := out.Read(line)
	if err != nil {
		t.Fatal("the server said nothing: ", err)
	}
	address, found := strings.CutPrefix(strings.TrimSpace(string(line[:n])), "coatwright is at ")
	if !found {
		t.Fatalf("the server said %q", line[:n])
	}
	return address, code
}
