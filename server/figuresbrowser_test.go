package main

import (
	"context"
	"net/http"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"

	"coatwright/workout"
)

// TestFiguresInABrowser: a figure of a plan opens its how, the units are changed
// at the foot of that page, and the plan is a quote at rates that are set there.
func TestFiguresInABrowser(t *testing.T) {
	ctx := browser(t)
	running, stop := context.WithCancel(context.Background())
	defer stop()
	address, _ := start(t, running, t.TempDir())
	made, err := http.PostForm(address+"/plan", frameForm())
	if err != nil {
		t.Fatal(err)
	}
	made.Body.Close()
	plan := made.Request.URL.Path
	do(t, ctx, "opening a figure's how",
		chromedp.EmulateViewport(1280, 900), chromedp.Navigate(address+plan),
		chromedp.Click(chromedp.CSS(`#lay-candy a[href$="#wet-film"]`)), chromedp.WaitVisible(chromedp.CSS("#wet-film .formula")))
	if figure := ask(t, ctx, "the wet film", chromedp.Text(chromedp.CSS("#wet-film .result"))); !strings.HasSuffix(figure, " µm") {
		t.Errorf("the wet film is shown as %q", figure)
	}
	do(t, ctx, "choosing US units", chromedp.Click(chromedp.CSS(`button[name=units][value=us]`)), chromedp.WaitVisible(chromedp.CSS(`button[value=us][aria-pressed=true]`)))
	if figure := ask(t, ctx, "the wet film", chromedp.Text(chromedp.CSS("#wet-film .result"))); !strings.HasSuffix(figure, " mil") {
		t.Errorf("in US units the wet film is shown as %q", figure)
	}
	do(t, ctx, "asking for a quote",
		chromedp.Click(chromedp.CSS(`p.kind a`)), chromedp.Click(chromedp.CSS(`a[href$="/quote"]`)), chromedp.WaitVisible(chromedp.CSS("#currency")),
		chromedp.SendKeys(chromedp.CSS("#currency"), "EUR"), chromedp.SendKeys(chromedp.CSS("#labour"), "48 EUR/h"), chromedp.SendKeys(chromedp.CSS("#tax"), "21 %"),
		chromedp.Click(chromedp.CSS(`.rates .button`)), chromedp.WaitVisible(chromedp.CSS(".bill .total")))
	if total := ask(t, ctx, "the total", chromedp.Text(chromedp.CSS(".asked-for .result"))); !strings.HasSuffix(total, " EUR") {
		t.Errorf("the quote comes to %q", total)
	}
}

// TestSheetsInABrowser: a sheet is filled in, says what it cannot read, answers,
// and no sheet scrolls sideways on a phone.
func TestSheetsInABrowser(t *testing.T) {
	ctx := browser(t)
	running, stop := context.WithCancel(context.Background())
	defer stop()
	address, _ := start(t, running, t.TempDir())
	do(t, ctx, "entering nonsense",
		chromedp.EmulateViewport(320, 700), chromedp.Navigate(address+"/work-out"), chromedp.Click(chromedp.CSS(`a[href="/work-out/air"]`)), chromedp.WaitVisible(chromedp.CSS("#humidity")),
		chromedp.SetValue(chromedp.CSS("#humidity"), "damp"), chromedp.Click(chromedp.CSS(`.asked .button`)), chromedp.WaitVisible(chromedp.CSS("#humidity-problem")))
	do(t, ctx, "putting it right",
		chromedp.SetValue(chromedp.CSS("#humidity"), "60 %"), chromedp.Click(chromedp.CSS(`.asked .button`)), chromedp.WaitVisible(chromedp.CSS("#dew-point")))
	for _, sheet := range workout.Sheets() {
		do(t, ctx, sheet.Slug, chromedp.Navigate(address+"/work-out/"+sheet.Slug), unfold)
		if wide := ask(t, ctx, sheet.Slug, chromedp.Evaluate[int](`document.documentElement.scrollWidth`)); wide > 320 {
			t.Errorf("/work-out/%s is %d px wide in a window of 320 px", sheet.Slug, wide)
		}
	}
}
