package main

import (
	"encoding/json"
	"net/http"
	"net/http/httptest"
	"net/url"
	"strings"
	"sync"
	"testing"

	"github.com/google/go-cmp/cmp"
	"golang.org/x/net/html"

	"coatwright/planner"
	"coatwright/store"
)

func TestPlanIsKept(t *testing.T) {
	data := t.TempDir()
	s, err := openSite(data, t.Output())
	if err != nil {
		t.Fatal(err)
	}
	made := post(t, s, frameForm())
	address := made.Header.Get("Location")
	if made.StatusCode != http.StatusSeeOther || !strings.HasPrefix(address, "/plan/") {
		t.Fatalf("posting the frame job: %s to %q", made.Status, address)
	}
	page := text(t, get(t, s, address))
	s.close()

	s = newSite(t, data)
	if again := text(t, get(t, s, address)); again != page {
		t.Error("after a restart the plan's page is another")
	}
	if body := text(t, get(t, s, "/jobs")); !strings.Contains(body, `href="`+address+`"`) {
		t.Error("the list of jobs lacks the plan")
	}
	r := get(t, s, address, "Accept", "application/json")
	if kind := r.Header.Get("Content-Type"); !strings.HasPrefix(kind, "application/json") {
		t.Errorf("asked for JSON, got %s", kind)
	}
	var plan planner.Plan
	if err := json.Unmarshal([]byte(text(t, r)), &plan); err != nil {
		t.Fatal(err)
	}
	if plan.Title != "Touring frame" || len(plan.Steps) < 15 || plan.Refused != nil {
		t.Errorf("the JSON plan: %q, %d steps, refused %v", plan.Title, len(plan.Steps), plan.Refused)
	}
	for _, step := range plan.Steps {
		if !strings.Contains(page, `href="/note/`+step.Note+`"`) {
			t.Errorf("the page has no link to %s", step.Note)
		}
	}
}

// TestTitlesAreKept: whatever is typed as a title is kept as it was typed.
func TestTitlesAreKept(t *testing.T) {
	s := newSite(t, t.TempDir())
	for _, title := range []string{".inf", "~", "? what", "012", "1e3", "a\tb", "- x", "{a: b}", "x\x01y", "\U0001F3F4\U000E0067\U000E007F", "Fahrrad, gr\u00fcn"} {
		form := frameForm()
		form.Set("title", title)
		made := post(t, s, form)
		if made.StatusCode != http.StatusSeeOther {
			t.Errorf("%q: %s", title, made.Status)
			continue
		}
		address := made.Header.Get("Location")
		var plan planner.Plan
		if err := json.Unmarshal([]byte(text(t, get(t, s, address, "Accept", "application/json"))), &plan); err != nil || plan.Title != title || plan.Job.Title != title {
			t.Errorf("%q is kept as %q, %v", title, plan.Title, err)
		}
		if r := get(t, s, address); r.StatusCode != http.StatusOK {
			t.Errorf("the page of %q: %s", title, r.Status)
		}
	}
}

// TestFormComesBack: what is wrong is said beside its field, everything else
// stands as it was left, and nothing is kept.
func TestFormComesBack(t *testing.T) {
	s := newSite(t, t.TempDir())
	for _, c := range []struct{ field, value, says string }{
		{"part0-area", "-1 m2", "an area of zero or more"},
		{"part0-area", "0 m2", "an area above 0"},
		{"part0-area", "55000 m2", "at most 50 m2"},
		{"part0-area", "0.55 sq m", "an area in one of"},
		{"part0-area", "", "still to be filled in"},
		{"part0-substrate", "bare-stel", "did you mean &#34;bare-steel&#34;"},
		{"part1-diameter", "thick", "a length such as"},
		{"humidity", "0 %", "from 1 to 99 %"},
		{"humidity", "75..30 %", "a percentage"},
		{"air", "400 C", "from -10 to 60 C"},
		{"hours", "Mon-Fri 17:00-08:00", "17:00"},
		{"start", "yesterday", "a date and time"},
		{"effect", "candy", "an effect"},
		{"finish", "", "still to be filled in"},
		{"colour-candy", "teal", "a colour such as"},
		{"colour-wanted", "teal", "or a measured reflectance such as"},
		{"colour-wanted", "0b4f4c", "did you mean &#34;#0b4f4c&#34;"},
		{"candy-coats", "99", "a whole number from 1 to 12"},
		{"part0-count", "-3", "a whole number from 1 to 200"},
		{"part1-name", "frame", "a part name of its own"},
		{"part2-leave", "perhaps", "yes or no"},
		{"part2-hardware", strings.Repeat("screw\n", 61), "a list of at most 60 things"},
		{"applicator", "", "still to be filled in"},
		{"applicator", "hvlp-gunn", "did you mean &#34;hvlp-gun&#34;"},
		{"design0-kind", "letterin", "did you mean &#34;lettering&#34;"},
		{"design0-kind", "", "still to be filled in"},
		{"design0-on", "fram", "did you mean &#34;frame&#34;"},
		{"design0-on", "rack", "a part that something is done to"},
		{"design0-area", "0.6 m2", "at most the part&#39;s 0.55 m2"},
		{"design0-area", "", "still to be filled in"},
		{"design0-mask", "sideways", "how the mask lies"},
		{"design0-with", "drop shadw", "did you mean &#34;drop shadow&#34;"},
		{"design2-with", "drop shadow", "a layer that this design offers"},
		{"design0-colour-shadow", "black", "a colour such as"},
		{"design2-name", "maker's name", "a design name of its own"},
		{"design0-over", "strip", "did you mean &#34;stripe&#34;"},
	} {
		form := designForm()
		form.Set(c.field, c.value)
		r := post(t, s, form)
		body := text(t, r)
		if r.StatusCode != http.StatusUnprocessableEntity {
			t.Errorf("%s = %q: %s", c.field, c.value, r.Status)
			continue
		}
		if !strings.Contains(body, c.says) {
			t.Errorf("%s = %q: the page does not say %q", c.field, c.value, c.says)
		}
		row, _, _ := strings.Cut(c.field, "-")
		if !strings.Contains(body, `id="`+c.field+`-problem"`) && !strings.Contains(body, `id="`+row+`-problem"`) {
			t.Errorf("%s = %q: nothing is said at the field or its row", c.field, c.value)
		}
		left := fields(t, body)
		for name := range form {
			if got, is := left[name]; !is || got != strings.Join(form[name], "\n") && name != c.field {
				t.Errorf("%s = %q: the field %s came back as %q, it was %q", c.field, c.value, name, got, form[name])
			}
		}
	}
	if body := text(t, get(t, s, "/jobs")); strings.Contains(body, `href="/plan/`) {
		t.Error("a form that was refused left a plan behind")
	}
}

// TestFormIsAJob: what the form posts is the job document that a hand would
// write, and what was left empty is not in it.
func TestFormIsAJob(t *testing.T) {
	plain, in := documentOf(frameForm())
	for _, key := range []string{"designs", "leave", "hardware"} {
		if strings.Contains(string(plain), key) {
			t.Errorf("a form without %s makes a job with it:\n%s", key, plain)
		}
	}
	if diff := cmp.Diff([]int{0, 1}, in.parts); diff != "" {
		t.Errorf("parts (-want +got):\n%s", diff)
	}
	document, in := documentOf(designForm())
	if diff := cmp.Diff([]int{0, 2, 11}, in.designs); diff != "" {
		t.Errorf("designs (-want +got):\n%s", diff)
	}
	lib := newSite(t, t.TempDir()).notes.Planner()
	job, err := planner.ParseJob("form", document, lib)
	if err != nil {
		t.Fatal(err)
	}
	want := []planner.Design{
		{Kind: "lettering", Name: "maker's name", On: "frame", Area: 0.015, Position: "down tube, left", Polarity: "positive",
			Colours: map[string]string{"design": "#f4efe0", "shadow": "#2a0a10"}, With: []string{"highlights", "drop shadow"}, Over: []string{"stripe"}},
		{Kind: "stripe", Name: "stripe", On: "frame", Area: 0.008, Polarity: "negative", Colours: map[string]string{"design": "#e9dcb0"}},
		{Kind: "fade", Name: "fade", On: "frame", Area: 0.1, Polarity: "negative", Colours: map[string]string{}},
	}
	if diff := cmp.Diff(want, job.Designs); diff != "" {
		t.Errorf("designs (-want +got):\n%s", diff)
	}
	rack := job.Parts[2]
	if diff := cmp.Diff([]string{"2 eyelets, left", "4 screws: M5"}, rack.Hardware); diff != "" || !rack.Leave {
		t.Errorf("left: %v, hardware (-want +got):\n%s", rack.Leave, diff)
	}
	if diff := cmp.Diff([]string{"hvlp-gun", "airbrush"}, job.Applicators); diff != "" {
		t.Errorf("applicators (-want +got):\n%s", diff)
	}
}

// TestFieldOfAPath: a place in the job document is a field of the form, or a
// row of it.
func TestFieldOfAPath(t *testing.T) {
	in := rows{parts: []int{0, 3}, designs: []int{11}}
	for path, want := range map[string]string{
		"parts": "part0", "parts[1]": "part3", "parts[1].shape.cylinder.length": "part3-length", "parts[0].hardware[12]": "part0-hardware",
		"designs[0]": "design11", "designs[0].with[1]": "design11-with", "designs[0].colours.shadow": "design11-colour-shadow",
		"colours.candy": "colour-candy", "applicator[1]": "applicator", "room.air": "air", "parts[7].area": "parts[7].area",
	} {
		if got := in.field(path); got != want {
			t.Errorf("%s: %q, want %q", path, got, want)
		}
	}
}

// fields is what stands in the controls of a page; of several that are ticked
// each stands on its own line.
func fields(t *testing.T, page string) map[string]string {
	t.Helper()
	root, err := html.Parse(strings.NewReader(page))
	if err != nil {
		t.Fatal(err)
	}
	out := map[string]string{}
	for n := range root.Descendants() {
		a := attributes(n)
		switch {
		case a["name"] == "back": // of the units, which every page offers
		case n.Data == "input" && (a["type"] == "radio" || a["type"] == "checkbox"):
			if _, checked := a["checked"]; checked {
				out[a["name"]] = strings.TrimPrefix(out[a["name"]]+"\n"+a["value"], "\n")
			} else if _, seen := out[a["name"]]; !seen {
				out[a["name"]] = ""
			}
		case n.Data == "input":
			out[a["name"]] = a["value"]
		case n.Data == "textarea":
			out[a["name"]] = ""
			if n.FirstChild != nil {
				out[a["name"]] = n.FirstChild.Data
			}
		case n.Data == "select":
			out[a["name"]] = ""
			for o := range n.Descendants() {
				if oa := attributes(o); o.Data == "option" {
					if _, selected := oa["selected"]; selected {
						out[a["name"]] = oa["value"]
					}
				}
			}
		}
	}
	return out
}

func attributes(n *html.Node) map[string]string {
	out := map[string]string{}
	for _, a := range n.Attr {
		out[a.Key] = a.Val
	}
	return out
}

func TestChangeThisJob(t *testing.T) {
	s := newSite(t, t.TempDir())
	form := designForm()
	id := strings.TrimPrefix(post(t, s, form).Header.Get("Location"), "/plan/")
	left := fields(t, text(t, get(t, s, "/plan?from="+id)))
	for name := range form {
		// Rows close up: the third design of the form is the second of the job.
		at := strings.NewReplacer("design11-", "design2-", "design2-", "design1-").Replace(name)
		if want := strings.Join(form[name], "\n"); left[at] != want {
			t.Errorf("the field %s comes back as %q, it was %q", at, left[at], want)
		}
	}
}

func TestWithoutPage(t *testing.T) {
	s := newSite(t, t.TempDir())
	address := post(t, s, frameForm()).Header.Get("Location")
	if body := text(t, get(t, s, address)); !strings.Contains(body, `href="`+address+`/without/abrade-steel"`) {
		t.Error("the plan does not lead to what leaving out a step would change")
	}
	body := text(t, get(t, s, address+"/without/abrade-steel"))
	if !strings.Contains(body, "The job cannot be done so") || !strings.Contains(body, "bright") {
		t.Error("leaving the steel as it is: the page does not say what breaks")
	}
	r := get(t, s, address+"/without/tack-of")
	if body := text(t, r); r.StatusCode != http.StatusNotFound || !strings.Contains(body, address+"/without/tack-off") {
		t.Errorf("an unknown step: %s", r.Status)
	}
	var d planner.Difference
	if err := json.Unmarshal([]byte(text(t, get(t, s, address+"/without/test-card", "Accept", "application/json"))), &d); err != nil || d.Answer != planner.Misses {
		t.Errorf("as JSON: %+v, %v", d, err)
	}
}

// TestWithoutAfterNotesChanged: a job that today's notes cannot read is the
// reader's to know, not a failure of ours.
func TestWithoutAfterNotesChanged(t *testing.T) {
	s := newSite(t, t.TempDir())
	id, err := s.plans.Add(store.Saved{Job: []byte("title: old\nsystem: waterborne\neffect: no-longer-there\n"), Plan: []byte("{}")})
	if err != nil {
		t.Fatal(err)
	}
	r := get(t, s, "/plan/"+id+"/without/tack-off")
	if body := text(t, r); r.StatusCode != http.StatusConflict || !strings.Contains(body, "no-longer-there") {
		t.Errorf("%s:\n%s", r.Status, body)
	}
}

func TestRefusedJob(t *testing.T) {
	s := newSite(t, t.TempDir())
	form := frameForm()
	form.Set("applicator", "airbrush")
	address := post(t, s, form).Header.Get("Location")
	body := text(t, get(t, s, address))
	if !strings.Contains(body, "film/effect") || !strings.Contains(body, "lies evenly on at most") {
		t.Error("the page of a refused job does not name what is missing")
	}
	if !strings.Contains(body, "/plan?from=") {
		t.Error("the page of a refused job has no way back to the form")
	}
}

func TestTooLargeAJob(t *testing.T) {
	s := newSite(t, t.TempDir())
	form := frameForm()
	form.Set("title", strings.Repeat("x", 5<<20))
	if r := post(t, s, form); r.StatusCode != http.StatusRequestEntityTooLarge {
		t.Errorf("a body of 5 MB: %s", r.Status)
	}
	r := httptest.NewRequest(http.MethodPost, "/plan", strings.NewReader("%zz=%zz"))
	r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
	w := httptest.NewRecorder()
	if s.handler().ServeHTTP(w, r); w.Code != http.StatusBadRequest {
		t.Errorf("a body that is no form: %d", w.Code)
	}
	if r := post(t, s, url.Values{}); r.StatusCode != http.StatusUnprocessableEntity {
		t.Errorf("an empty form: %s", r.Status)
	}
}

// TestOtherSitesCannotPlan: a form on another site does not make plans here.
func TestOtherSitesCannotPlan(t *testing.T) {
	s := newSite(t, t.TempDir())
	for origin, want := range map[string]int{"cross-site": http.StatusForbidden, "same-origin": http.StatusSeeOther, "none": http.StatusSeeOther} {
		r := httptest.NewRequest(http.MethodPost, "/plan", strings.NewReader(frameForm().Encode()))
		r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
		r.Header.Set("Sec-Fetch-Site", origin)
		w := httptest.NewRecorder()
		if s.handler().ServeHTTP(w, r); w.Code != want {
			t.Errorf("a form from %s: %d, want %d", origin, w.Code, want)
		}
	}
}

func TestManyAtOnce(t *testing.T) {
	s := newSite(t, t.TempDir())
	var wait sync.WaitGroup
	for range 8 {
		wait.Go(func() {
			if r := post(t, s, frameForm()); r.StatusCode != http.StatusSeeOther {
				t.Errorf("one of several at once: %s", r.Status)
			}
			get(t, s, "/search?q=candy")
		})
	}
	wait.Wait()
	jobs, err := s.savedJobs()
	if err != nil || len(jobs) != 8 {
		t.Errorf("%d jobs are kept, %v; 8 were planned", len(jobs), err)
	}
}
