package main

import (
	"bytes"
	"encoding/json"
	"io"
	"net/http"
	"net/http/httptest"
	"net/url"
	"strings"
	"testing"

	"golang.org/x/net/html"
)

// newSite opens a site on a data folder.
func newSite(t testing.TB, data string) *site {
	t.Helper()
	var log bytes.Buffer
	s, err := openSite(data, &log)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		s.close()
		if log.Len() > 0 {
			t.Errorf("the log is not empty:\n%s", log.String())
		}
	})
	return s
}

// get asks the site for a page.
func get(t testing.TB, s *site, address string, header ...string) *http.Response {
	t.Helper()
	r := httptest.NewRequest(http.MethodGet, address, nil)
	for i := 0; i < len(header); i += 2 {
		r.Header.Set(header[i], header[i+1])
	}
	w := httptest.NewRecorder()
	s.handler().ServeHTTP(w, r)
	return w.Result()
}

func post(t testing.TB, s *site, form url.Values) *http.Response {
	t.Helper()
	r := httptest.NewRequest(http.MethodPost, "/plan", strings.NewReader(form.Encode()))
	r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
	w := httptest.NewRecorder()
	s.handler().ServeHTTP(w, r)
	return w.Result()
}

func text(t testing.TB, r *http.Response) string {
	t.Helper()
	b, err := io.ReadAll(r.Body)
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}

// frameForm is the frame job as the form posts it.
func frameForm() url.Values {
	return url.Values{
		"title": {"Touring frame"}, "system": {"waterborne"}, "clear": {"two-pack"},
		"effect": {"candy-over-fine-metallic"}, "finish": {"satin"}, "care": {"show"}, "applicator": {"hvlp-gun"},
		"part0-name": {"frame"}, "part0-substrate": {"bare-steel"}, "part0-shape": {"area"}, "part0-area": {"0.55 m2"},
		"part0-form": {"lattice"}, "part0-count": {"1"}, "part0-condition": {"loose"},
		"part1-name": {"fork blade"}, "part1-substrate": {"bare-aluminium"}, "part1-shape": {"cylinder"}, "part1-count": {"2"},
		"part1-diameter": {"30 mm"}, "part1-length": {"400 mm"},
		"colour-ground": {"#8a8d90"}, "colour-candy": {"#0f6f6b"}, "candy-coats": {"3"},
		"air": {"21 C"}, "humidity": {"55 %"}, "airflow": {"0.3 m/s"}, "surface": {"20 C"},
		"hours": {"Mon-Fri 08:00-17:00"}, "painters": {"1"}, "booths": {"1"}, "start": {"2026-12-01T08:00"},
	}
}

// designForm is the frame job with a rack that is left as it is, designs on the
// frame, in rows that are not neighbours, and an airbrush beside the gun.
func designForm() url.Values {
	form := frameForm()
	for name, values := range (url.Values{
		"applicator": {"hvlp-gun", "airbrush"},
		"part2-name": {"rack"}, "part2-substrate": {"bare-steel"}, "part2-shape": {"area"}, "part2-area": {"0.2 m2"}, "part2-count": {"1"}, "part2-condition": {"assembled"},
		"part2-leave": {"yes"}, "part2-hardware": {"2 eyelets, left\n4 screws: M5"},
		"design0-kind": {"lettering"}, "design0-name": {"maker's name"}, "design0-on": {"frame"}, "design0-area": {"0.015 m2"}, "design0-position": {"down tube, left"},
		"design0-mask": {"positive"}, "design0-colour-design": {"#f4efe0"}, "design0-colour-shadow": {"#2a0a10"}, "design0-with": {"highlights", "drop shadow"}, "design0-over": {"stripe"},
		"design2-kind": {"stripe"}, "design2-on": {"frame"}, "design2-area": {"0.008 m2"}, "design2-mask": {"negative"}, "design2-colour-design": {"#e9dcb0"},
		"design11-kind": {"fade"}, "design11-on": {"frame"}, "design11-area": {"0.1 m2"}, "design11-mask": {"negative"},
	}) {
		form[name] = values
	}
	return form
}

// mostAnew is how many pages that plan a job anew stand for all of their kind:
// there is one for each step, and each takes as long as a plan.
const mostAnew = 5

// TestEveryLinkLeadsSomewhere walks the site from the front door, and a plan,
// along every link of ours.
func TestEveryLinkLeadsSomewhere(t *testing.T) {
	s := newSite(t, t.TempDir())
	made := post(t, s, designForm())
	if made.StatusCode != http.StatusSeeOther {
		t.Fatalf("posting the frame job: %s", made.Status)
	}
	seen := map[string]bool{}
	queue := []string{"/", made.Header.Get("Location")}
	anew := 0
	for len(queue) > 0 {
		at := queue[0]
		queue = queue[1:]
		address, _, _ := strings.Cut(at, "#")
		if seen[address] {
			continue
		}
		seen[address] = true
		if strings.Contains(address, "/without/") {
			if anew++; anew > mostAnew {
				continue
			}
		}
		r := get(t, s, address)
		if r.StatusCode != http.StatusOK {
			t.Errorf("%s: %s", at, r.Status)
			continue
		}
		if strings.HasPrefix(r.Header.Get("Content-Type"), "text/html") {
			queue = append(queue, links(t, text(t, r))...)
		}
	}
	if len(seen) < 180 {
		t.Errorf("only %d addresses were reached", len(seen))
	}
	for _, n := range s.notes.Notes() {
		if !seen["/note/"+n.Path()] {
			t.Errorf("no link leads to %s", n.Path())
		}
	}
}

// links is every address of ours in a page.
func links(t *testing.T, page string) []string {
	t.Helper()
	root, err := html.Parse(strings.NewReader(page))
	if err != nil {
		t.Fatal(err)
	}
	var out []string
	for n := range root.Descendants() {
		for _, a := range n.Attr {
			if (a.Key == "href" || a.Key == "src") && strings.HasPrefix(a.Val, "/") {
				out = append(out, a.Val)
			}
		}
	}
	return out
}

func TestPagesAreSafe(t *testing.T) {
	s := newSite(t, t.TempDir())
	for _, address := range []string{"/", "/plan", "/jobs", "/search?q=tack", "/notes/step", "/note/step/tack-off", "/nosuch"} {
		r := get(t, s, address)
		if csp := r.Header.Get("Content-Security-Policy"); !strings.HasPrefix(csp, "default-src 'self'") || strings.Contains(csp, "unsafe") {
			t.Errorf("%s: Content-Security-Policy %q", address, csp)
		}
		if r.Header.Get("X-Content-Type-Options") != "nosniff" {
			t.Errorf("%s: no nosniff", address)
		}
		body := text(t, r)
		for _, bad := range []string{"<script>", " onclick=", " style=", "<style"} {
			if strings.Contains(body, bad) {
				t.Errorf("%s: the page has %q, which the policy forbids", address, bad)
			}
		}
	}
	form := frameForm()
	form.Set("title", `<script>alert(1)</script>"><img src=x onerror=alert(1)>`)
	made := post(t, s, form)
	for _, address := range []string{made.Header.Get("Location"), "/jobs", "/", "/search?q=" + url.QueryEscape("<script>alert(1)</script>")} {
		if body := text(t, get(t, s, address)); strings.Contains(body, "<script>alert") || strings.Contains(body, "<img src=x") {
			t.Errorf("%s: a title came through as HTML", address)
		}
	}
}

func TestUnknownAddresses(t *testing.T) {
	s := newSite(t, t.TempDir())
	for _, c := range []struct{ address, nearest string }{
		{"/note/step/tak-off", "/note/step/tack-off"},
		{"/note/material/waterbrone-sealer", "/note/material/waterborne-sealer"},
		{"/notes/stepp", ""}, {"/plan/zzzzzzzz", "/jobs"}, {"/assets/000/base.css", ""}, {"/../../etc/passwd", ""},
	} {
		r := get(t, s, c.address)
		if r.StatusCode != http.StatusNotFound {
			t.Errorf("%s: %s", c.address, r.Status)
		}
		if body := text(t, r); c.nearest != "" && !strings.Contains(body, `href="`+c.nearest+`"`) {
			t.Errorf("%s: the page does not offer %s", c.address, c.nearest)
		}
	}
	if r := get(t, s, "/note/step/nosuch", "Accept", "application/json"); !json.Valid([]byte(text(t, r))) {
		t.Error("an error asked for as JSON is not JSON")
	}
	r := httptest.NewRequest(http.MethodDelete, "/plan", nil)
	w := httptest.NewRecorder()
	if s.handler().ServeHTTP(w, r); w.Code != http.StatusMethodNotAllowed {
		t.Errorf("DELETE /plan: %d", w.Code)
	}
	for _, address := range []string{"/", "/note/step/tack-off", "/healthz"} {
		w := httptest.NewRecorder()
		if s.handler().ServeHTTP(w, httptest.NewRequest(http.MethodHead, address, nil)); w.Code != http.StatusOK {
			t.Errorf("HEAD %s: %d", address, w.Code)
		}
	}
}

func TestSearchPages(t *testing.T) {
	s := newSite(t, t.TempDir())
	if body := text(t, get(t, s, "/search?q=tack+off")); !strings.Contains(body, `href="/note/step/tack-off"`) {
		t.Error("searching for tack off does not find it")
	}
	if body := text(t, get(t, s, "/search?q=candy&kind=fault")); strings.Contains(body, `href="/note/effect/`) {
		t.Error("a search among faults shows an effect")
	}
	var hits []struct{ Path string }
	if err := json.Unmarshal([]byte(text(t, get(t, s, "/search/suggest?q=tac"))), &hits); err != nil || len(hits) == 0 {
		t.Errorf("suggestions for tac: %v, %v", hits, err)
	}
	for _, odd := range []string{"", "%22", "-", "a:b^~*()", "%00", strings.Repeat("x", 5000)} {
		if r := get(t, s, "/search?q="+odd); r.StatusCode != http.StatusOK {
			t.Errorf("searching for %.20q: %s", odd, r.Status)
		}
	}
}
