package main

import (
	"context"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

// TestEditInABrowser leaves out a step, makes the repair that is offered, says
// why another finding is kept, and saves the plan, on a phone. No page of it
// scrolls sideways.
func TestEditInABrowser(t *testing.T) {
	ctx := browser(t)
	running, stop := context.WithCancel(context.Background())
	defer stop()
	address, _ := start(t, running, t.TempDir())
	do(t, ctx, "planning", chromedp.EmulateViewport(320, 800), chromedp.Navigate(address+"/plan"), chromedp.WaitVisible(chromedp.CSS("#part0-name")))
	do(t, ctx, "filling in the form", fillFrame()...)
	plan := ask(t, ctx, "the plan's address", chromedp.Location())
	fits := func(page string) {
		t.Helper()
		if wide := ask(t, ctx, page, chromedp.Evaluate[int](`document.documentElement.scrollWidth`)); wide > 320 {
			t.Errorf("%s is %d px wide in a window of 320 px", page, wide)
		}
	}
	do(t, ctx, "leaving out a step",
		chromedp.Navigate(plan+"/edit"), chromedp.Click(chromedp.CSS("#out-degrease")),
		chromedp.SetValue(chromedp.CSS("#coats-spray-primer"), "1"),
		chromedp.Click(chromedp.CSS(`.send button[value=look]`)), chromedp.WaitVisible(chromedp.CSS(".finding.breaks .repair button")))
	fits("the edit page")
	do(t, ctx, "making the repair", chromedp.Click(chromedp.CSS(`button[value*='"note":"degrease"']`)), chromedp.WaitVisible(chromedp.CSS("#step-degrease")))
	do(t, ctx, "saying why",
		chromedp.SendKeys(chromedp.CSS(`input[name="keep spray-primer coats"]`), "it is never seen"),
		chromedp.Click(chromedp.CSS(`.send button[value=save]`)), chromedp.WaitVisible(chromedp.CSS("h1")))
	if heading := ask(t, ctx, "the heading", chromedp.Text(chromedp.CSS("h1"))); heading != "Touring frame, edited" {
		t.Errorf("after saving the page is headed %q", heading)
	}
	if kept := ask(t, ctx, "the address", chromedp.Location()); kept == plan || !strings.Contains(kept, "/plan/") {
		t.Errorf("the edited plan is at %s", kept)
	}
	for _, page := range []string{plan + "/whatif?air=12+C", address + "/coverage", address + "/coverage/cell?substrate=glass&effect=solid-colour"} {
		do(t, ctx, page, chromedp.Navigate(page))
		fits(page)
	}
}
