package main

import (
	"context"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

// TestRoomInABrowser is a room that is too cold, as a painter meets it: from the
// plan to its room, a way out planned, and a forecast pasted. No page slides
// sideways on a phone, and the words of the charts keep apart.
func TestRoomInABrowser(t *testing.T) {
	ctx := browser(t)
	running, stop := context.WithCancel(context.Background())
	defer stop()
	address, _ := start(t, running, t.TempDir())
	do(t, ctx, "planning in the cold", chromedp.EmulateViewport(1280, 900), chromedp.Navigate(address+"/plan"), chromedp.WaitVisible(chromedp.CSS("#part0-name")))
	fill := fillFrame()
	do(t, ctx, "the room", unfold, chromedp.SetValue(chromedp.CSS("#air"), "14 C"), chromedp.SetValue(chromedp.CSS("#humidity"), "72 %"), chromedp.SetValue(chromedp.CSS("#surface"), "11 C"))
	do(t, ctx, "filling in the form", fill...)
	plan := ask(t, ctx, "the plan's address", chromedp.Location())
	do(t, ctx, "going to the room", chromedp.Click(chromedp.CSS(`a[href$="/room"]`)), chromedp.WaitVisible(chromedp.CSS(".ways button")))
	if page := ask(t, ctx, "the room", chromedp.Text(chromedp.CSS("main"))); !strings.Contains(page, "The room does not suit") || !strings.Contains(page, "The slowest film") {
		t.Error("the room is not judged")
	}
	roomPage := ask(t, ctx, "the room's address", chromedp.Location())
	do(t, ctx, "planning it so", chromedp.Click(chromedp.CSS(".ways button")), chromedp.WaitVisible(chromedp.CSS(".plan-head")))
	other := ask(t, ctx, "the other plan's address", chromedp.Location())
	if page := ask(t, ctx, "the other plan", chromedp.Text(chromedp.CSS(".conditions"))); other == plan || !strings.Contains(page, "The room suits every film") {
		t.Errorf("planned so, at %s: %s", other, page)
	}
	do(t, ctx, "pasting a forecast", chromedp.Navigate(roomPage), chromedp.WaitVisible(chromedp.CSS("#weather")),
		chromedp.SetValue(chromedp.CSS("#weather"), front), chromedp.Click(chromedp.CSS(".forecast .button")), chromedp.WaitVisible(chromedp.CSS(".forecast table")))
	withDays := ask(t, ctx, "the address of the days", chromedp.Location())
	for _, page := range []string{
		roomPage, withDays, address + "/work-out/air", address + "/work-out/psychrometer", address + "/work-out/drying", address + "/work-out/forced-drying",
		address + "/work-out/room?air=10+C", address + "/work-out/weather",
	} {
		do(t, ctx, page, chromedp.EmulateViewport(320, 700), chromedp.Navigate(page), unfold)
		wide := ask(t, ctx, page, chromedp.Evaluate[int](`document.documentElement.scrollWidth`))
		if window := ask(t, ctx, page, chromedp.Evaluate[int](`window.innerWidth`)); wide > window {
			t.Errorf("%s is %d px wide in a window of %d px", page, wide, window)
		}
		if clash := ask(t, ctx, page, chromedp.Evaluate[string](clashes)); clash != "" {
			t.Errorf("%s: in the chart %s", page, clash)
		}
	}
}

// clashes names two words of a chart that lie on each other, or one that is smaller
// than 10 px, "" for none.
const clashes = `(() => {
	for (const chart of document.querySelectorAll("svg.chart")) {
		const words = [...chart.querySelectorAll("text")].map(t => ({text: t.textContent, box: t.getBoundingClientRect(), size: parseFloat(getComputedStyle(t).fontSize) * chart.getBoundingClientRect().width / chart.viewBox.baseVal.width}));
		for (const [i, a] of words.entries()) {
			if (a.size < 10) return a.text + " is " + a.size + " px high";
			for (const b of words.slice(i + 1)) {
				if (a.box.left + 1 < b.box.right && b.box.left + 1 < a.box.right && a.box.top + 3 < b.box.bottom && b.box.top + 3 < a.box.bottom) return a.text + " lies on " + b.text;
			}
		}
	}
	return "";
})()`
