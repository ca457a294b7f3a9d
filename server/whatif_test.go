package main

import (
	"encoding/json"
	"net/http"
	"net/http/httptest"
	"net/url"
	"strings"
	"testing"

	"coatwright/planner"
	"coatwright/web"
)

// postTo posts a form to an address of the site.
func postTo(t testing.TB, s *site, address string, form url.Values) *http.Response {
	t.Helper()
	r := httptest.NewRequest(http.MethodPost, address, strings.NewReader(form.Encode()))
	r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
	w := httptest.NewRecorder()
	s.handler().ServeHTTP(w, r)
	return w.Result()
}

// planAt is the kept plan at an address.
func planAt(t testing.TB, s *site, address string) *planner.Plan {
	t.Helper()
	plan := &planner.Plan{}
	if err := json.Unmarshal([]byte(text(t, get(t, s, address, "Accept", "application/json"))), plan); err != nil {
		t.Fatal(err)
	}
	return plan
}

func TestWhatIfPage(t *testing.T) {
	s := newSite(t, t.TempDir())
	address := post(t, s, frameForm()).Header.Get("Location")
	body := text(t, get(t, s, address+"/whatif"))
	for _, want := range []string{"Waterborne", "other steps", "cannot be done", "lies evenly on at most", `value="clear=waterborne"`, "Plan it so"} {
		if !strings.Contains(body, want) {
			t.Errorf("the page does not say %q", want)
		}
	}
	if strings.Contains(body, `value="applicator=airbrush"`) {
		t.Error("what cannot be done can be planned")
	}
	var plain, cold []planner.Difference
	if err := json.Unmarshal([]byte(text(t, get(t, s, address+"/whatif", "Accept", "application/json"))), &plain); err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal([]byte(text(t, get(t, s, address+"/whatif?air=16+C&humidity=70+%25&format=json"))), &cold); err != nil {
		t.Fatal(err)
	}
	if len(cold) != len(plain)+1 || cold[0].With != "room.air=16 C, room.humidity=70 %" || cold[0].EndMin <= 0 {
		t.Errorf("another day: %d rows, %d without; the first is %+v", len(cold), len(plain), cold[0])
	}
	r := get(t, s, address+"/whatif?air=cold&airflow=1+m%2Fs")
	body = text(t, r)
	if r.StatusCode != http.StatusUnprocessableEntity || !strings.Contains(body, `id="air-problem"`) || fields(t, body)["air"] != "cold" || fields(t, body)["airflow"] != "1 m/s" {
		t.Errorf("air that is none: %s", r.Status)
	}
	if r := get(t, s, "/plan/nosuch/whatif"); r.StatusCode != http.StatusNotFound {
		t.Errorf("no such plan: %s", r.Status)
	}
}

func TestPlanWith(t *testing.T) {
	s := newSite(t, t.TempDir())
	address := post(t, s, frameForm()).Header.Get("Location")
	made := postTo(t, s, address+"/whatif", url.Values{"with": {"clear=waterborne, room.airflow=1 m/s"}})
	other := made.Header.Get("Location")
	if made.StatusCode != http.StatusSeeOther || other == address {
		t.Fatalf("planning it so: %s to %q", made.Status, other)
	}
	if p := planAt(t, s, other); p.Job.Clear != "waterborne" || p.Job.Room.Speed != 1 || p.Title != "Touring frame" {
		t.Errorf("planned: %s, clear %s", p.Title, p.Job.Clear)
	}
	if p := planAt(t, s, address); p.Job.Clear != "two-pack" {
		t.Error("the plan itself was changed")
	}
	for _, with := range []string{"", "clear", "clear=twopack", "title=x"} {
		if r := postTo(t, s, address+"/whatif", url.Values{"with": {with}}); r.StatusCode != http.StatusUnprocessableEntity {
			t.Errorf("%q: %s", with, r.Status)
		}
	}
}

// TestWhatIfOfARefusedJob: the page says which choice makes a plan of it.
func TestWhatIfOfARefusedJob(t *testing.T) {
	s := newSite(t, t.TempDir())
	form := frameForm()
	form.Set("applicator", "airbrush")
	address := post(t, s, form).Header.Get("Location")
	body := text(t, get(t, s, address+"/whatif"))
	if !strings.Contains(body, "can be done") || !strings.Contains(body, `value="applicator=hvlp-gun"`) || strings.Contains(body, "later") {
		t.Error("the page does not say that the gun makes a plan of it, or compares with no end")
	}
}

func TestCoverage(t *testing.T) {
	s := newSite(t, t.TempDir())
	var cells []web.CoverageCell
	if err := json.Unmarshal([]byte(text(t, get(t, s, "/coverage", "Accept", "application/json"))), &cells); err != nil {
		t.Fatal(err)
	}
	lib := s.notes.Planner()
	if len(cells) != len(lib.Substrates)*len(lib.Effects) {
		t.Errorf("%d cells, want %d by %d", len(cells), len(lib.Substrates), len(lib.Effects))
	}
	body := text(t, get(t, s, "/coverage?finish=gloss&system=solvent&applicator=airbrush"))
	for _, want := range []string{`value="gloss" selected`, `value="solvent" selected`, "can be planned", "lacks", `scope="row"`, `title="`} {
		if !strings.Contains(body, want) {
			t.Errorf("the grid does not have %q", want)
		}
	}
	for address, want := range map[string]int{"/coverage?finish=glos": http.StatusNotFound, "/coverage?clear=two-pack": http.StatusOK, "/coverage/cell?substrate=glas&effect=solid-colour": http.StatusNotFound, "/coverage/cell": http.StatusNotFound} {
		if r := get(t, s, address); r.StatusCode != want {
			t.Errorf("%s: %s", address, r.Status)
		}
	}
}

// TestCoverageCell: a cell is planned as the grid says, and can be kept.
func TestCoverageCell(t *testing.T) {
	s := newSite(t, t.TempDir())
	choice := gridChoice{finish: "satin", system: "waterborne"}
	cells, err := s.grid(choice, s.choices())
	if err != nil {
		t.Fatal(err)
	}
	seen := map[bool]bool{}
	for _, c := range cells {
		planned := c.Lacks == ""
		if seen[planned] {
			continue
		}
		seen[planned] = true
		address := web.CoveragePage{Finish: choice.finish, System: choice.system, Applicator: choice.applicator}.Address(c)
		body := text(t, get(t, s, address))
		if planned != strings.Contains(body, "Before you start") || planned == strings.Contains(body, "What could give it") {
			t.Errorf("%s: the grid says lacking %q, the page otherwise", address, c.Lacks)
		}
		form := editFieldsOf(t, body)
		made := post(t, s, form)
		if made.StatusCode != http.StatusSeeOther {
			t.Fatalf("keeping %s: %s", address, made.Status)
		}
		p := planAt(t, s, made.Header.Get("Location"))
		if planned != (p.Refused == nil) || p.Job.Parts[0].Substrate != c.Substrate || planned && p.Totals.WorkMin != c.WorkMin {
			t.Errorf("%s is kept as %s, refused %v", address, p.Title, p.Refused)
		}
	}
	if len(seen) < 2 {
		t.Errorf("all cells are alike: %v", seen)
	}
}

// BenchmarkCoverage plans a whole grid.
func BenchmarkCoverage(b *testing.B) {
	s := newSite(b, b.TempDir())
	choices := s.choices()
	for b.Loop() {
		s.grids = keptGrids{}
		if _, err := s.grid(gridChoice{finish: "satin", system: "waterborne"}, choices); err != nil {
			b.Fatal(err)
		}
	}
}
