package main

import (
	"context"
	"net/url"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"

	"coatwright/planner/area"
)

// TestFrameInABrowser plans a frame by its tubes, as a person does: the form
// shows what is measured of a frame and nothing else, the plan is made for its
// area, and the form comes back with the tubes and what they come to.
func TestFrameInABrowser(t *testing.T) {
	ctx := browser(t)
	running, stop := context.WithCancel(context.Background())
	defer stop()
	address, _ := start(t, running, t.TempDir())
	seen := func(what, css string) bool {
		return ask(t, ctx, what, chromedp.Evaluate[bool](`document.querySelector("`+css+`").checkVisibility()`))
	}
	do(t, ctx, "opening the form",
		chromedp.EmulateViewport(1280, 900), chromedp.Navigate(address+"/plan"), chromedp.WaitVisible(chromedp.CSS("#part0-name")))
	if !seen("an area", "#part0-area") || seen("an area", "#part0-tubes") || seen("an area", "#part0-length") {
		t.Error("a form that nobody touched does not ask for an area alone")
	}
	do(t, ctx, "choosing a frame", choose("#part0-shape", "frame"))
	if seen("a frame", "#part0-area") || seen("a frame", "#part0-length") || !seen("a frame", "#part0-tubes") || !seen("a frame", "#part0-joints") || !seen("a frame", "#part0-openings") {
		t.Error("the form does not ask for what a frame needs, and only that")
	}
	says := ask(t, ctx, "what a frame is", chromedp.Text(chromedp.CSS("#part0-shape-hint")))
	if !strings.Contains(says, "a bicycle frame") || strings.Contains(says, "lampshade") {
		t.Errorf("beside the shape it says %q", says)
	}
	do(t, ctx, "planning", unfold,
		chromedp.SendKeys(chromedp.CSS("#part0-name"), "frame"), chromedp.SetValue(chromedp.CSS("#part0-substrate"), "bare-steel"),
		chromedp.SendKeys(chromedp.CSS("#part0-tubes"), "28.6 mm x 560 mm\n31.8 to 28 mm x 600 mm"), chromedp.SendKeys(chromedp.CSS("#part0-joints"), "two"),
		chromedp.Click(chromedp.CSS(`input[name=effect][value=solid-colour]`)), chromedp.Click(chromedp.CSS(`input[name=finish][value=gloss]`)),
		chromedp.Click(chromedp.CSS(`.send button`)), chromedp.WaitVisible(chromedp.CSS("#part0-joints-problem")))
	if tubes := ask(t, ctx, "the tubes", chromedp.Value(chromedp.CSS("#part0-tubes"))); tubes != "28.6 mm x 560 mm\n31.8 to 28 mm x 600 mm" {
		t.Errorf("the tubes come back as %q", tubes)
	}
	do(t, ctx, "mending the joints",
		chromedp.SetValue(chromedp.CSS("#part0-joints"), "3"), chromedp.Click(chromedp.CSS(`.send button`)), chromedp.WaitVisible(chromedp.CSS(`a[href="/note/step/hand-over"]`)),
		chromedp.Click(chromedp.CSS(`a[href^="/plan?from="]`)), chromedp.WaitVisible(chromedp.CSS("#part0-tubes")))
	if worked := ask(t, ctx, "the area", chromedp.Text(chromedp.CSS(".worked"))); !strings.HasPrefix(worked, "One of it is 0.105 m².") {
		t.Errorf("beside the tubes it says %q", worked)
	}
	do(t, ctx, "asking how", chromedp.Click(chromedp.CSS(".worked a")), chromedp.WaitVisible(chromedp.CSS("svg.shape")))
	if result := ask(t, ctx, "the area", chromedp.Text(chromedp.CSS("#surface .result"))); result != "0.105 m²" {
		t.Errorf("the sheet says %s", result)
	}
}

// TestShapesFitAPhone: no sheet of a shape scrolls sideways at 320 px, and no
// letter of a drawing is too small to be read.
func TestShapesFitAPhone(t *testing.T) {
	ctx := browser(t)
	running, stop := context.WithCancel(context.Background())
	defer stop()
	address, _ := start(t, running, t.TempDir())
	for _, kind := range area.Keys() {
		page := address + "/work-out/area?" + url.Values{"kind": {kind}}.Encode()
		do(t, ctx, kind, chromedp.EmulateViewport(320, 700), chromedp.Navigate(page), unfold)
		if wide := ask(t, ctx, kind, chromedp.Evaluate[int](`document.documentElement.scrollWidth`)); wide > 320 {
			t.Errorf("the sheet of a %s is %d px wide in a window of 320 px", kind, wide)
		}
		letter := ask(t, ctx, kind, chromedp.Evaluate[float64](`Math.min(...[...document.querySelectorAll("svg.shape .letter")].map((l) => l.getBoundingClientRect().height))`))
		if letter < 12 {
			t.Errorf("a letter in the drawing of a %s is %.1f px high", kind, letter)
		}
	}
}

// TestShapeWithoutScripts: a part is measured as a tube where nothing is put away.
func TestShapeWithoutScripts(t *testing.T) {
	ctx := browser(t)
	running, stop := context.WithCancel(context.Background())
	defer stop()
	address, _ := start(t, running, t.TempDir())
	do(t, ctx, "planning without scripts",
		noScripts, chromedp.Navigate(address+"/plan"),
		chromedp.SendKeys(chromedp.CSS("#part0-name"), "post"), chromedp.SetValue(chromedp.CSS("#part0-substrate"), "raw-abs"),
		chromedp.SetValue(chromedp.CSS("#part0-shape"), "cylinder"), chromedp.SendKeys(chromedp.CSS("#part0-diameter"), "60 mm"), chromedp.SendKeys(chromedp.CSS("#part0-length"), "1.2 m"),
		chromedp.Click(chromedp.CSS("#part0-openings")), chromedp.SendKeys(chromedp.CSS("#part0-openings"), "disc 20 mm"),
		chromedp.Click(chromedp.CSS(`input[name=effect][value=solid-colour]`)), chromedp.Click(chromedp.CSS(`input[name=finish][value=matt]`)),
		chromedp.Click(chromedp.CSS(`.send button`)), chromedp.WaitVisible(chromedp.CSS(`a[href="/note/step/spray-ground"]`)))
}
