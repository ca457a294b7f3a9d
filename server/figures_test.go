package main

import (
	"encoding/json"
	"net/http"
	"net/url"
	"strings"
	"testing"

	"coatwright/planner/trace"
	"coatwright/workout"
)

// A reader's units are theirs on every page, and a choice leads back to the page
// it was made on, never to another site.
func TestUnits(t *testing.T) {
	s := newSite(t, t.TempDir())
	address := post(t, s, frameForm()).Header.Get("Location")
	for _, c := range []struct {
		units, page string
		want, not   []string
	}{
		{"metric", address, []string{" µm", " mL", " kPa", "21 °C"}, []string{" mil<", " psi", "°F"}},
		{"bar", address, []string{" bar<", " µm"}, []string{" kPa<", " psi"}},
		{"us", address, []string{" mil", " fl oz", " psi", "69.8 °F"}, []string{" µm", " kPa", "°C", " mL<"}},
		{"us", "/note/material/fine-metallic", []string{" mil", "lb/gal"}, []string{"g/L<"}},
		{"us", "/work-out/film", []string{" mil", "fl oz"}, []string{" mL<"}},
		{"furlongs", address, []string{" µm"}, []string{" mil<"}},
	} {
		body, _, _ := strings.Cut(text(t, get(t, s, c.page, "Cookie", "units="+c.units)), `class="colophon"`) // which names all units
		for _, want := range c.want {
			if !strings.Contains(body, want) {
				t.Errorf("%s in %s does not show %q", c.page, c.units, want)
			}
		}
		for _, not := range c.not {
			if i := strings.Index(body, not); i >= 0 {
				t.Errorf("%s in %s shows %q: ...%s", c.page, c.units, not, body[max(0, i-80):i+10])
			}
		}
	}
	for back, want := range map[string]string{address + "?x=1": address + "?x=1", "https://elsewhere.example/": "/", "//elsewhere.example": "/", "": "/", "/\\elsewhere.example": "/"} {
		r := postTo(t, s, "/units", url.Values{"units": {"us"}, "back": {back}})
		if r.StatusCode != http.StatusSeeOther || r.Header.Get("Location") != want || !strings.Contains(r.Header.Get("Set-Cookie"), "units=us") {
			t.Errorf("choosing on %q: %s to %q, cookie %q", back, r.Status, r.Header.Get("Location"), r.Header.Get("Set-Cookie"))
		}
	}
	if plan := planAt(t, s, address); plan.Job.Room.Temperature.Celsius() < 20.9 {
		t.Error("data is not in SI")
	}
}

// Every figure of a plan's page leads to where it is explained.
func TestEveryFigureOpensItsHow(t *testing.T) {
	s := newSite(t, t.TempDir())
	address := post(t, s, frameForm()).Header.Get("Location")
	pages := map[string]string{}
	n := 0
	for _, link := range strings.Split(text(t, get(t, s, address)), `class="how" href="`)[1:] {
		link, _, _ = strings.Cut(link, `"`)
		page, key, _ := strings.Cut(link, "#")
		if pages[page] == "" {
			r := get(t, s, page)
			if r.StatusCode != http.StatusOK {
				t.Fatalf("%s: %s", page, r.Status)
			}
			pages[page] = text(t, r)
		}
		if !strings.Contains(pages[page], `id="`+key+`"`) {
			t.Errorf("%s does not explain %q", page, key)
		}
		n++
	}
	if n < 100 {
		t.Errorf("only %d figures of the plan open their how", n)
	}
	var figures []trace.Figure
	if err := json.Unmarshal([]byte(text(t, get(t, s, address+"/how/lay-candy?format=json"))), &figures); err != nil || len(figures) == 0 || figures[0].Source == "" {
		t.Errorf("as JSON: %v, %d figures", err, len(figures))
	}
	if r := get(t, s, address+"/how/lay-cendy"); r.StatusCode != http.StatusNotFound || !strings.Contains(text(t, r), address+"/how/lay-candy") {
		t.Errorf("a step that is not there: %s", r.Status)
	}
}

func TestQuote(t *testing.T) {
	s := newSite(t, t.TempDir())
	address := post(t, s, frameForm()).Header.Get("Location") + "/quote"
	if body := text(t, get(t, s, address)); !strings.Contains(body, `name="labour"`) || strings.Contains(body, "In all") {
		t.Error("without rates there is a sum, or no field")
	}
	r := postTo(t, s, address, url.Values{"currency": {"EUR"}, "labour": {"48 EUR/day"}, "materials.fine-metallic": {"72 EUR"}})
	body := text(t, r)
	if r.StatusCode != http.StatusUnprocessableEntity || fields(t, body)["labour"] != "48 EUR/day" ||
		!strings.Contains(body, `id="labour-problem"`) || !strings.Contains(body, `id="materials.fine-metallic-problem"`) {
		t.Errorf("rates that cannot be read: %s", r.Status)
	}
	if body := text(t, get(t, s, address)); strings.Contains(body, "In all") {
		t.Error("rates that could not be read were kept")
	}
	r = postTo(t, s, address, url.Values{"currency": {"EUR"}, "labour": {"48 EUR/h"}, "tax": {"21 %"}, "materials.fine-metallic": {"72 EUR/L"}, "pieces.abrasive-paper": {"0.90 EUR"}})
	if r.StatusCode != http.StatusSeeOther || r.Header.Get("Location") != address {
		t.Fatalf("keeping rates: %s", r.Status)
	}
	// Rates that another plan's page does not show stay.
	other := post(t, s, designForm()).Header.Get("Location") + "/quote"
	postTo(t, s, other, url.Values{"currency": {"EUR"}, "labour": {"50 EUR/h"}})
	body = text(t, get(t, s, address))
	for _, want := range []string{"In all", "72 EUR/L", "0.90 EUR", "50 EUR/h", "Without a price", "21 %"} {
		if !strings.Contains(body, want) {
			t.Errorf("the quote does not say %q", want)
		}
	}
	var found struct {
		Quote struct {
			Likely struct {
				Total struct{ Amount, Currency string }
			}
		}
	}
	if err := json.Unmarshal([]byte(text(t, get(t, s, address+"?format=json"))), &found); err != nil || found.Quote.Likely.Total.Currency != "EUR" {
		t.Errorf("as JSON: %v, %+v", err, found)
	}
}

// Every sheet is a page that answers, says what it cannot read, and is data to
// who asks for that.
func TestWorkOut(t *testing.T) {
	s := newSite(t, t.TempDir())
	index := text(t, get(t, s, "/work-out"))
	for _, sheet := range workout.Sheets() {
		address := "/work-out/" + sheet.Slug
		if !strings.Contains(index, `href="`+address+`"`) {
			t.Errorf("the index does not lead to %s", address)
		}
		r := get(t, s, address)
		if body := text(t, r); r.StatusCode != http.StatusOK || !strings.Contains(body, "<h1>"+sheet.Title+"</h1>") {
			t.Errorf("%s: %s", address, r.Status)
		}
		field := sheet.Fill(s.notes.Planner(), func(string) (string, bool) { return "", false }).Fields[0].Key
		r = get(t, s, address+"?"+url.Values{field: {"<nonsense>"}}.Encode())
		if body := text(t, r); r.StatusCode != http.StatusUnprocessableEntity || !strings.Contains(body, `id="`+field+`-problem"`) || strings.Contains(body, "<nonsense>") {
			t.Errorf("%s with nonsense in %s: %s", address, field, r.Status)
		}
		var data struct{ Answer *workout.Answer }
		if err := json.Unmarshal([]byte(text(t, get(t, s, address+"?format=json"))), &data); err != nil || data.Answer == nil {
			t.Errorf("%s as JSON: %v", address, err)
		}
	}
	if r := get(t, s, "/work-out/flim"); r.StatusCode != http.StatusNotFound || !strings.Contains(text(t, r), "/work-out/film") {
		t.Errorf("a sheet that is not there: %s", r.Status)
	}
}
