package main

import (
	"context"
	"net/http"
	"os"
	"os/exec"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
)

// browser starts Debian's chromium. Without one the test is skipped, unless the
// environment says that a browser is required, as CI does.
func browser(t *testing.T) context.Context {
	t.Helper()
	path, err := exec.LookPath("chromium")
	if err != nil {
		if os.Getenv("COATWRIGHT_BROWSER") == "required" {
			t.Fatal("no chromium, and COATWRIGHT_BROWSER=required")
		}
		t.Skip("no chromium on this machine")
	}
	options := append(chromedp.DefaultExecAllocatorOptions[:],
		chromedp.ExecPath(path), chromedp.NoSandbox, chromedp.DisableGPU, chromedp.UserDataDir(t.TempDir()),
		chromedp.Flag("disable-quic", true), chromedp.Flag("disable-background-networking", true),
		chromedp.Flag("disable-component-update", true), chromedp.Flag("disable-sync", true))
	allocator, cancel := chromedp.NewExecAllocator(context.Background(), options...)
	t.Cleanup(cancel)
	ctx, cancel := chromedp.NewContext(allocator)
	t.Cleanup(cancel)
	failOnScripts(t, ctx)
	return ctx
}

// failOnScripts makes a script's failure a failure of the test.
func failOnScripts(t *testing.T, ctx context.Context) {
	thrown := chromedp.Events(ctx, runtime.ExceptionThrown)
	go func() {
		for e, err := range thrown {
			if err != nil {
				return
			}
			t.Errorf("a script failed: %s", e.ExceptionDetails.Text)
		}
	}()
}

func do(t *testing.T, ctx context.Context, what string, steps ...chromedp.Action[chromedp.Void]) {
	t.Helper()
	for i, step := range steps {
		limited, cancel := context.WithTimeout(ctx, 20*time.Second)
		err := chromedp.Do(limited, step)
		cancel()
		if err != nil {
			address, _ := chromedp.Run(ctx, chromedp.Location())
			t.Fatalf("%s, action %d, at %s: %v", what, i+1, address, err)
		}
	}
}

// ask runs an action that answers.
func ask[T any](t *testing.T, ctx context.Context, what string, question chromedp.Action[T]) T {
	t.Helper()
	answer, err := chromedp.Run(ctx, question)
	if err != nil {
		t.Fatalf("%s: %v", what, err)
	}
	return answer
}

// unfold opens all that is folded away.
func unfold(ctx context.Context, target *chromedp.Target) (chromedp.Void, error) {
	_, err := chromedp.Evaluate[int](`document.querySelectorAll('details').forEach(d => d.open = true), 1`)(ctx, target)
	return chromedp.Void{}, err
}

// fillFrame fills in the frame job as a person does.
func fillFrame() []chromedp.Action[chromedp.Void] {
	return []chromedp.Action[chromedp.Void]{
		unfold,
		chromedp.SendKeys(chromedp.CSS("#title"), "Touring frame"),
		chromedp.SendKeys(chromedp.CSS("#part0-name"), "frame"),
		chromedp.SetValue(chromedp.CSS("#part0-substrate"), "bare-steel"),
		chromedp.SendKeys(chromedp.CSS("#part0-area"), "0.55 m2"),
		chromedp.SetValue(chromedp.CSS("#part0-form"), "lattice"),
		chromedp.SendKeys(chromedp.CSS("#part1-name"), "fork blade"),
		chromedp.SetValue(chromedp.CSS("#part1-substrate"), "bare-aluminium"),
		chromedp.SendKeys(chromedp.CSS("#part1-area"), "0.08 m2"),
		chromedp.Click(chromedp.CSS(`input[name=effect][value=candy-over-fine-metallic]`)),
		chromedp.Click(chromedp.CSS(`input[name=finish][value=satin]`)),
		chromedp.Click(chromedp.CSS(`input[name=clear][value=two-pack]`)),
		chromedp.Click(chromedp.CSS(`.send button`)),
		chromedp.WaitVisible(chromedp.CSS(`a[href="/note/step/hand-over"]`)),
	}
}

// TestPlanInABrowser is the main job as a new user does it: home, the form, a
// plan, a step's note, the same note by search, and the plan again after a
// restart of the server.
func TestPlanInABrowser(t *testing.T) {
	ctx := browser(t)
	data := t.TempDir()
	running, stop := context.WithCancel(context.Background())
	address, done := start(t, running, data)
	do(t, ctx, "opening the front door",
		chromedp.EmulateViewport(1280, 900), chromedp.Navigate(address), chromedp.Click(chromedp.CSS(`main a[href="/plan"]`)), chromedp.WaitVisible(chromedp.CSS("#part0-name")))
	do(t, ctx, "filling in the form", fillFrame()...)

	heading := ask(t, ctx, "the plan's heading", chromedp.Text(chromedp.CSS("h1")))
	plan := ask(t, ctx, "the plan's address", chromedp.Location())
	do(t, ctx, "following a step to its note", chromedp.Click(chromedp.CSS(`a[href="/note/step/tack-off"]`)), chromedp.WaitVisible(chromedp.CSS("article.prose")))
	note := ask(t, ctx, "the note's address", chromedp.Location())
	if heading != "Touring frame" || !strings.HasSuffix(note, "/note/step/tack-off") {
		t.Errorf("the plan is headed %q; its step leads to %s", heading, note)
	}
	do(t, ctx, "finding the note by search",
		chromedp.Navigate(address), chromedp.SendKeys(chromedp.CSS("#q"), "tack of"),
		chromedp.WaitVisible(chromedp.CSS(`[role=option]`)), chromedp.Click(chromedp.CSS(`[role=option]`)),
		chromedp.WaitVisible(chromedp.CSS("article.prose")))
	if found := ask(t, ctx, "the address found", chromedp.Location()); found != note {
		t.Errorf("the search leads to %s, the plan's step to %s", found, note)
	}

	stop()
	<-done
	running, stop = context.WithCancel(context.Background())
	defer stop()
	again, _ := start(t, running, data)
	do(t, ctx, "opening the plan after a restart",
		chromedp.Navigate(again+strings.TrimPrefix(plan, address)), chromedp.WaitVisible(chromedp.CSS("h1")))
	if after := ask(t, ctx, "the heading", chromedp.Text(chromedp.CSS("h1"))); after != "Touring frame" {
		t.Errorf("after the restart the plan is headed %q", after)
	}
}

// TestDesignInABrowser plans a part with a design, as a person does: the form
// offers what the kind of design has, one design after another, and the plan
// shows the design's steps and films.
func TestDesignInABrowser(t *testing.T) {
	ctx := browser(t)
	running, stop := context.WithCancel(context.Background())
	defer stop()
	address, _ := start(t, running, t.TempDir())
	hidden := func(what, css string) bool {
		return ask(t, ctx, what, chromedp.Evaluate[bool](`document.querySelector("`+css+`").checkVisibility() === false`))
	}
	do(t, ctx, "unfolding the designs",
		chromedp.EmulateViewport(1280, 900), chromedp.Navigate(address+"/plan"), chromedp.WaitVisible(chromedp.CSS("#part0-name")))
	if !hidden("a form that nobody touched", "#design0-kind") {
		t.Error("the designs are not folded away")
	}
	do(t, ctx, "filling in a part and a design", unfold,
		chromedp.SendKeys(chromedp.CSS("#part0-name"), "tank"), chromedp.SetValue(chromedp.CSS("#part0-substrate"), "bare-steel"), chromedp.SendKeys(chromedp.CSS("#part0-area"), "0.45 m2"),
		chromedp.SendKeys(chromedp.CSS("#part0-hardware"), "filler cap\nfuel tap"),
		chromedp.Click(chromedp.CSS(`input[name=effect][value=fine-metallic]`)), chromedp.Click(chromedp.CSS(`input[name=finish][value=gloss]`)),
		chromedp.Click(chromedp.CSS(`input[name=applicator][value=airbrush]`)),
		choose("#design0-kind", "stripe"), choose("#design0-kind", "lettering"),
		chromedp.SendKeys(chromedp.CSS("#design0-name"), "maker's name"), chromedp.SendKeys(chromedp.CSS("#design0-area"), "0.015 m2"),
		chromedp.Click(chromedp.CSS(`input[name=design0-with][value="drop shadow"]`)))
	if hidden("layers of lettering", "input[name=design0-with][value='drop shadow']") || !hidden("layers of a stripe", "input[name=design0-with][value='light line']") {
		t.Error("the form does not offer the layers of lettering, and only those")
	}
	do(t, ctx, "planning", chromedp.Click(chromedp.CSS(`.send button`)), chromedp.WaitVisible(chromedp.CSS(`a[href="/note/step/hand-over"]`)))
	page := ask(t, ctx, "the plan", chromedp.Text(chromedp.CSS("main")))
	for _, want := range []string{"maker's name: drop shadow", "maker's name: letters", "fuel tap", "bag 2", "Fan or cone"} {
		if !strings.Contains(page, want) {
			t.Errorf("the plan does not show %q", want)
		}
	}
	do(t, ctx, "changing the job", chromedp.Click(chromedp.CSS(`a[href^="/plan?from="]`)), chromedp.WaitVisible(chromedp.CSS("#design0-name")))
	if name := ask(t, ctx, "the design's name", chromedp.Value(chromedp.CSS("#design0-name"))); name != "maker's name" {
		t.Errorf("the design comes back as %q", name)
	}
	do(t, ctx, "taking the design out", chromedp.Click(chromedp.CSS(`details.design > button`)))
	if left := ask(t, ctx, "the design's name", chromedp.Value(chromedp.CSS("#design0-name"))); left != "" || !hidden("the design's fields", "#design0-name") {
		t.Errorf("taken out, the design's name is %q", left)
	}
}

// choose chooses from a list as a person does, so that scripts hear of it.
func choose(css, value string) chromedp.Action[chromedp.Void] {
	return func(ctx context.Context, target *chromedp.Target) (chromedp.Void, error) {
		_, err := chromedp.Evaluate[int](`{ const list = document.querySelector("`+css+`"); list.value = "`+value+`"; list.dispatchEvent(new Event("change", {bubbles: true})); } 1`)(ctx, target)
		return chromedp.Void{}, err
	}
}

// TestPagesFitAPhone: no page scrolls sideways at 320 px.
func TestPagesFitAPhone(t *testing.T) {
	ctx := browser(t)
	running, stop := context.WithCancel(context.Background())
	defer stop()
	address, _ := start(t, running, t.TempDir())
	do(t, ctx, "planning", chromedp.EmulateViewport(320, 700), chromedp.Navigate(address+"/plan"), chromedp.WaitVisible(chromedp.CSS("#part0-name")))
	do(t, ctx, "filling in the form", fillFrame()...)
	plan := ask(t, ctx, "the plan's address", chromedp.Location())
	made, err := http.PostForm(address+"/plan", designForm())
	if err != nil {
		t.Fatal(err)
	}
	made.Body.Close()
	designed := made.Request.URL.Path
	for _, page := range []string{"/", "/plan", strings.TrimPrefix(plan, address), designed, designed + "/how/mix-and-stand", designed + "/how", designed + "/quote", "/plan?from=" + strings.TrimPrefix(designed, "/plan/"), "/jobs", "/search?q=candy", "/notes/material", "/note/step/lay-candy", "/note/background/film-build", "/nosuch"} {
		do(t, ctx, page, chromedp.Navigate(address+page), unfold)
		wide := ask(t, ctx, page, chromedp.Evaluate[int](`document.documentElement.scrollWidth`))
		window := ask(t, ctx, page, chromedp.Evaluate[int](`window.innerWidth`))
		if wide > window {
			t.Errorf("%s is %d px wide in a window of %d px", page, wide, window)
		}
	}
}

// noScripts turns scripts off.
func noScripts(ctx context.Context, target *chromedp.Target) (chromedp.Void, error) {
	_, err := cdp.Call(ctx, target, emulation.SetScriptExecutionDisabled, emulation.SetScriptExecutionDisabledParams{Value: true})
	return chromedp.Void{}, err
}

// TestPlanWithoutScripts: reading and planning need no JavaScript.
func TestPlanWithoutScripts(t *testing.T) {
	ctx := browser(t)
	running, stop := context.WithCancel(context.Background())
	defer stop()
	address, _ := start(t, running, t.TempDir())
	do(t, ctx, "planning without scripts",
		noScripts, chromedp.Navigate(address+"/plan"),
		chromedp.SendKeys(chromedp.CSS("#part0-name"), "panel"), chromedp.SetValue(chromedp.CSS("#part0-substrate"), "raw-abs"), chromedp.SendKeys(chromedp.CSS("#part0-area"), "0.2 m2"),
		chromedp.Click(chromedp.CSS(`input[name=effect][value=solid-colour]`)), chromedp.Click(chromedp.CSS(`input[name=finish][value=matt]`)),
		chromedp.Click(chromedp.CSS(`.send button`)), chromedp.WaitVisible(chromedp.CSS(`a[href="/note/step/spray-ground"]`)))
	if heading := ask(t, ctx, "the heading", chromedp.Text(chromedp.CSS("h1"))); heading == "Plan a job" {
		t.Error("the form came back")
	}
}
