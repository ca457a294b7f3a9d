package main

import (
	"encoding/json"
	"net/http"
	"net/url"
	"slices"
	"strings"
	"testing"

	"golang.org/x/net/html"

	"github.com/google/go-cmp/cmp"

	"coatwright/planner"
	"coatwright/planner/critique"
)

// editFieldsOf is what stands in the fields of a page as a browser would post them: a box
// that is not ticked is not posted.
func editFieldsOf(t testing.TB, body string) url.Values {
	t.Helper()
	root, err := html.Parse(strings.NewReader(body))
	if err != nil {
		t.Fatal(err)
	}
	form := url.Values{}
	for n := range root.Descendants() {
		a := attributes(n)
		_, checked := a["checked"]
		if n.Data == "input" && a["name"] != "q" && a["name"] != "back" && (a["type"] != "checkbox" || checked) {
			form.Add(a["name"], a["value"])
		}
	}
	return form
}

// repairsOf is the values of the buttons that make repairs.
func repairsOf(t testing.TB, body string) []string {
	t.Helper()
	root, err := html.Parse(strings.NewReader(body))
	if err != nil {
		t.Fatal(err)
	}
	var out []string
	for n := range root.Descendants() {
		if a := attributes(n); n.Data == "button" && strings.HasPrefix(a["value"], "repair ") {
			out = append(out, a["value"])
		}
	}
	return out
}

func stepOf(p *planner.Plan, id string) int {
	for i, s := range p.Steps {
		if s.ID == id {
			return i
		}
	}
	return -1
}

// TestEditAndRepair leaves out the degreasing, makes the repair that is offered,
// and keeps the plan.
func TestEditAndRepair(t *testing.T) {
	s := newSite(t, t.TempDir())
	address := post(t, s, frameForm()).Header.Get("Location")
	body := text(t, get(t, s, address+"/edit"))
	if !strings.Contains(body, "Every need is met") {
		t.Fatal("a plan as planned is not sound")
	}
	form := editFieldsOf(t, body)
	form.Set("out-degrease", "yes")
	form.Set("do", "look")
	body = text(t, postTo(t, s, address+"/edit", form))
	for _, want := range []string{"needs are not met", "Leave out step 2, “Wash and degrease”.", "nothing before it gives that", `href="/note/step/abrade-steel"`, "Keep it so because"} {
		if !strings.Contains(body, want) {
			t.Errorf("the critique does not say %q", want)
		}
	}
	form = editFieldsOf(t, body)
	form.Set("do", "save")
	if r := postTo(t, s, address+"/edit", form); r.StatusCode != http.StatusUnprocessableEntity || !strings.Contains(text(t, r), "It is not saved yet") {
		t.Errorf("a plan with needs that are not met: %s", r.Status)
	}
	repairs := repairsOf(t, body)
	if len(repairs) == 0 {
		t.Fatal("no repair is offered")
	}
	form.Set("do", repairs[0])
	body = text(t, postTo(t, s, address+"/edit", form))
	if !strings.Contains(body, "Every need is met") {
		t.Fatal("after the repair the plan is not sound")
	}
	form = editFieldsOf(t, body)
	form.Set("do", "save")
	made := postTo(t, s, address+"/edit", form)
	if made.StatusCode != http.StatusSeeOther || made.Header.Get("Location") == address {
		t.Fatalf("saving: %s", made.Status)
	}
	plan := planAt(t, s, made.Header.Get("Location"))
	if plan.Title != "Touring frame, edited" || stepOf(plan, "degrease") < 0 || plan.Totals.WorkMin == 0 {
		t.Errorf("kept: %q, %+v", plan.Title, plan.Totals)
	}
	if r := get(t, s, made.Header.Get("Location")); r.StatusCode != http.StatusOK {
		t.Errorf("the edited plan's page: %s", r.Status)
	}
	if !strings.Contains(text(t, get(t, s, "/jobs")), "Touring frame, edited") {
		t.Error("the list of jobs lacks the edited plan")
	}
}

// TestEditIsKeptOnPurpose: with a reason for each need that is not met, the plan
// is kept with its reasons, and edited again it has them still.
func TestEditIsKeptOnPurpose(t *testing.T) {
	s := newSite(t, t.TempDir())
	address := post(t, s, frameForm()).Header.Get("Location")
	form := editFieldsOf(t, text(t, get(t, s, address+"/edit")))
	form.Set("coats-spray-primer", "1")
	body := text(t, postTo(t, s, address+"/edit", form))
	form = editFieldsOf(t, body)
	reasons := 0
	for name := range form {
		if strings.HasPrefix(name, keepPrefix) {
			form.Set(name, "the inside is never seen")
			reasons++
		}
	}
	form.Set("do", "save")
	made := postTo(t, s, address+"/edit", form)
	if made.StatusCode != http.StatusSeeOther || reasons == 0 {
		t.Fatalf("saving with %d reasons: %s", reasons, made.Status)
	}
	kept := made.Header.Get("Location")
	plan := planAt(t, s, kept)
	want := planner.Kept{Step: "spray-primer", Need: "coats", Reason: "the inside is never seen"}
	if len(plan.Kept) != reasons || !cmp.Equal(plan.Kept[0], want) {
		t.Errorf("kept: %+v", plan.Kept)
	}
	if i := stepOf(plan, "spray-primer"); plan.Steps[i].Coats != 1 || plan.Films[0].Coats != 1 {
		t.Error("the coats are as they were")
	}
	if body := text(t, get(t, s, kept+"/edit")); !strings.Contains(body, "Every other need is met") && !strings.Contains(body, "kept so on purpose") {
		t.Error("edited again, the reasons are gone")
	}
}

// TestEditComesBack: where a field cannot be read nothing is changed, and all
// that was entered stands as it was.
func TestEditComesBack(t *testing.T) {
	s := newSite(t, t.TempDir())
	address := post(t, s, frameForm()).Header.Get("Location")
	page := text(t, get(t, s, address+"/edit"))
	for field, value := range map[string]string{
		"place-degrease": "0", "place-tack-off": "nowhere", "coats-spray-primer": "99", "wait-water-break-test": "-3",
	} {
		form := editFieldsOf(t, page)
		form.Set(field, value)
		form.Set("out-denib", "yes")
		form.Set("keep spray-clear smooth", "never seen")
		form.Set("do", "save")
		r := postTo(t, s, address+"/edit", form)
		body := text(t, r)
		if r.StatusCode != http.StatusUnprocessableEntity || !strings.Contains(body, `id="`+field+`-problem"`) {
			t.Errorf("%s = %q: %s", field, value, r.Status)
		}
		form.Del("do")
		if diff := cmp.Diff(form, editFieldsOf(t, body)); diff != "" {
			t.Errorf("%s = %q (-entered +came back):\n%s", field, value, diff)
		}
	}
	form := editFieldsOf(t, page)
	for name := range form {
		if id, is := strings.CutPrefix(name, "place-"); is {
			form.Set("out-"+id, "yes")
		}
	}
	if r := postTo(t, s, address+"/edit", form); r.StatusCode != http.StatusUnprocessableEntity || !strings.Contains(text(t, r), "leave one in") {
		t.Errorf("a plan of nothing: %s", r.Status)
	}
}

// TestHostileEdits: what no page of ours posts is told so, and breaks nothing.
func TestHostileEdits(t *testing.T) {
	s := newSite(t, t.TempDir())
	address := post(t, s, frameForm()).Header.Get("Location") + "/edit"
	for _, done := range []string{
		"{", `[{"do":"move"}]`, `[{"do":"drop","step":"nosuch"}]`, `[{"do":"move","step":"degrease","before":"nosuch"}]`, `[{"do":"burn","step":"degrease"}]`,
		`[{"do":"add","note":"nosuch"}]`, `[{"do":"coats","step":"degrease","number":2}]`, `[{"do":"coats","step":"spray-primer","number":1e9}]`,
		`[{"do":"minutes","step":"degrease","number":5}]`, `[{"do":"wait","step":"degrease","number":1e300}]`, "[" + strings.Repeat(`{"do":"set","step":"degrease"},`, 400) + `{}]`,
	} {
		if r := postTo(t, s, address, url.Values{"done": {done}}); r.StatusCode != http.StatusUnprocessableEntity {
			t.Errorf("%.60s: %s", done, r.Status)
		}
	}
	for _, do := range []string{"repair", "repair {", `repair {"do":"drop","step":"nosuch"}`, `repair {"do":"add","note":"x"}`} {
		r := postTo(t, s, address, url.Values{"do": {do}})
		if do != "repair" && r.StatusCode != http.StatusUnprocessableEntity {
			t.Errorf("%s: %s", do, r.Status)
		}
	}
	form := frameForm()
	form.Set("applicator", "airbrush")
	refused := post(t, s, form).Header.Get("Location")
	if r := get(t, s, refused+"/edit"); r.StatusCode != http.StatusConflict {
		t.Errorf("editing a refusal: %s", r.Status)
	}
}

func TestUndo(t *testing.T) {
	s := newSite(t, t.TempDir())
	address := post(t, s, frameForm()).Header.Get("Location") + "/edit"
	first := text(t, get(t, s, address))
	form := editFieldsOf(t, first)
	form.Set("place-degrease", "9")
	form = editFieldsOf(t, text(t, postTo(t, s, address, form)))
	form.Set("do", "undo")
	form.Set("keep tack-off rinsed", "it was")
	back := editFieldsOf(t, text(t, postTo(t, s, address, form)))
	if back.Get("keep tack-off rinsed") != "it was" {
		t.Error("the reason is lost")
	}
	for name := range back {
		if strings.HasPrefix(name, keepPrefix) {
			back.Del(name)
		}
	}
	was := editFieldsOf(t, first)
	for name := range was {
		if strings.HasPrefix(name, keepPrefix) {
			was.Del(name)
		}
	}
	if diff := cmp.Diff(was, back); diff != "" {
		t.Errorf("taken back (-want +got):\n%s", diff)
	}
}

// TestMoves: steps come to the places that are asked for, whatever is left out.
func TestMoves(t *testing.T) {
	p := &planner.Plan{}
	for _, id := range strings.Fields("a b c d e") {
		p.Steps = append(p.Steps, planner.Step{ID: id})
	}
	for _, c := range []struct {
		places map[string]int
		out    string
		want   string
	}{
		{map[string]int{"e": 1}, "", "e a b c d"},
		{map[string]int{"a": 5}, "", "b c d e a"},
		{map[string]int{"a": 3}, "", "b c a d e"},
		{map[string]int{"a": 2, "b": 1}, "", "b a c d e"},
		{map[string]int{"d": 2, "e": 2}, "", "a d e b c"},
		{map[string]int{"e": 2}, "a", "e b c d"},
		{map[string]int{"e": 2}, "e", "a b c d"},
		{map[string]int{"a": 5, "b": 4, "c": 3, "d": 2, "e": 1}, "", "e d c b a"},
	} {
		got := p
		for _, ch := range moves(p, c.places, map[string]bool{c.out: true}) {
			next, err := critique.Apply(got, nil, critique.Repair{Do: ch.Do, Step: ch.Step, Before: ch.Before})
			if err != nil {
				t.Fatal(err)
			}
			got = next
		}
		var ids []string
		for _, s := range got.Steps {
			if s.ID != c.out {
				ids = append(ids, s.ID)
			}
		}
		if order := strings.Join(ids, " "); order != c.want {
			t.Errorf("%v without %q: %s, want %s", c.places, c.out, order, c.want)
		}
	}
}

// TestChangesAreSaid: every change has words of its own.
func TestChangesAreSaid(t *testing.T) {
	s := newSite(t, t.TempDir())
	p := planAt(t, s, post(t, s, frameForm()).Header.Get("Location"))
	for _, c := range []struct{ change, says string }{
		{`{"do":"coats","step":"spray-primer","number":3}`, "3 coats in step "},
		{`{"do":"minutes","step":"water-break-test","number":90}`, "Wait 1 h 30 min before step 3"},
		{`{"do":"wait","step":"water-break-test","number":5}`, "Wait 5 min longer before step 3"},
		{`{"do":"drop","step":"degrease"}`, "Leave out step 2, “Wash and degrease”."},
		{`{"do":"move","step":"degrease"}`, "Do step 2, “Wash and degrease” at the end."},
		{`{"do":"set","step":"spray-primer"}`, "as the notes say."},
		{`{"do":"add","note":"denib","before":"degrease"}`, "before step 2, “Wash and degrease”."},
	} {
		var ch change
		if err := json.Unmarshal([]byte(c.change), &ch); err != nil {
			t.Fatal(err)
		}
		if got := ch.says(p, s.notes.Planner()); !strings.Contains(got, c.says) {
			t.Errorf("%s: %q, want %q in it", c.change, got, c.says)
		}
	}
}

// TestWaitIsRepaired takes a wait away, makes the repair that is offered, and
// finds the step waiting again.
func TestWaitIsRepaired(t *testing.T) {
	s := newSite(t, t.TempDir())
	address := post(t, s, frameForm()).Header.Get("Location")
	form := editFieldsOf(t, text(t, get(t, s, address+"/edit")))
	form.Set("wait-unmask", "0")
	form.Set("do", "look")
	body := text(t, postTo(t, s, address+"/edit", form))
	if !strings.Contains(body, "dry-to-touch") || strings.Contains(body, "Every need is met") {
		t.Fatal("tape pulled from a wet film is not found")
	}
	repairs := repairsOf(t, body)
	i := slices.IndexFunc(repairs, func(r string) bool { return strings.Contains(r, `"do":"wait"`) })
	if i < 0 {
		t.Fatalf("no longer wait is offered: %q", repairs)
	}
	form = editFieldsOf(t, body)
	form.Set("do", repairs[i])
	if body = text(t, postTo(t, s, address+"/edit", form)); !strings.Contains(body, "Every need is met") {
		t.Error("after the longer wait the plan is not sound")
	}
}
