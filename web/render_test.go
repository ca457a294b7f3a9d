package web

import (
	"bytes"
	"fmt"
	"strings"
	"testing"

	"golang.org/x/net/html"

	"coatwright/planner"
)

// TestEveryTemplateHasASample fails on a page that no test renders.
func TestEveryTemplateHasASample(t *testing.T) {
	all := samples()
	for _, name := range pageNames() {
		if len(all[name]) == 0 {
			t.Errorf("templates/%s.html has no sample", name)
		}
	}
	for name, pages := range all {
		for _, page := range pages {
			if page.template() != name {
				t.Errorf("a sample of %s renders %s", name, page.template())
			}
		}
	}
}

// TestPagesAreSound renders every sample and looks at it as a browser would.
func TestPagesAreSound(t *testing.T) {
	for name, pages := range samples() {
		for i, page := range pages {
			t.Run(fmt.Sprintf("%s/%d", name, i), func(t *testing.T) {
				doc := render(t, page)
				for _, fault := range faults(doc) {
					t.Error(fault)
				}
			})
		}
	}
}

func render(t *testing.T, page Page) *html.Node {
	t.Helper()
	b, err := Render(page)
	if err != nil {
		t.Fatal(err)
	}
	doc, err := html.Parse(bytes.NewReader(b))
	if err != nil {
		t.Fatal(err)
	}
	return doc
}

// faults lists what is wrong with a page: ids twice, labels, links and
// descriptions that lead nowhere, controls without a name, headings that skip
// a level, inline styles and scripts.
func faults(doc *html.Node) []string {
	var list []string
	note := func(format string, args ...any) { list = append(list, fmt.Sprintf(format, args...)) }
	ids, labelled := map[string]bool{}, map[string]bool{}
	for n := range doc.Descendants() {
		if id := attr(n, "id"); id != "" {
			if ids[id] {
				note("id %q stands twice", id)
			}
			ids[id] = true
		}
		if n.Data == "label" {
			labelled[attr(n, "for")] = true
		}
	}
	level := 0
	for n := range doc.Descendants() {
		if n.Type != html.ElementNode {
			continue
		}
		for _, ref := range references(n) {
			if !ids[ref] {
				note("<%s> refers to %q, which is not on the page", n.Data, ref)
			}
		}
		switch n.Data {
		case "style":
			note("an inline style element")
		case "script":
			if attr(n, "src") == "" || n.FirstChild != nil {
				note("an inline script")
			}
		case "input", "select", "textarea":
			if attr(n, "type") != "hidden" && !labelled[attr(n, "id")] {
				note("%s %q has no label", n.Data, attr(n, "name"))
			}
		case "h1", "h2", "h3":
			next := int(n.Data[1] - '0')
			if next > level+1 {
				note("%s %q skips a level", n.Data, textOf(n))
			}
			level = next
			if textOf(n) == "" {
				note("an empty %s", n.Data)
			}
		case "a", "button":
			if textOf(n) == "" {
				note("an empty %s to %s", n.Data, attr(n, "href"))
			}
		}
		for _, a := range n.Attr {
			if a.Key == "style" || strings.HasPrefix(a.Key, "on") {
				note("<%s> has an inline %s", n.Data, a.Key)
			}
		}
	}
	for _, landmark := range []string{"header", "nav", "main", "footer", "h1", "title"} {
		if count(doc, landmark) == 0 {
			note("no <%s>", landmark)
		}
	}
	return list
}

// references are the ids that an element points to.
func references(n *html.Node) []string {
	refs := strings.Fields(attr(n, "aria-describedby") + " " + attr(n, "aria-labelledby"))
	if href, ok := strings.CutPrefix(attr(n, "href"), "#"); ok {
		refs = append(refs, href)
	}
	if n.Data == "label" {
		refs = append(refs, attr(n, "for"))
	}
	return refs
}

func attr(n *html.Node, key string) string {
	for _, a := range n.Attr {
		if a.Key == key {
			return a.Val
		}
	}
	return ""
}

func textOf(n *html.Node) string {
	var b strings.Builder
	for d := range n.Descendants() {
		if d.Type == html.TextNode {
			b.WriteString(d.Data)
		}
	}
	return strings.TrimSpace(b.String())
}

func count(doc *html.Node, element string) int {
	n := 0
	for d := range doc.Descendants() {
		if d.Type == html.ElementNode && d.Data == element {
			n++
		}
	}
	return n
}

// TestFaultsAreFound proves that the checks above can fail.
func TestFaultsAreFound(t *testing.T) {
	tests := []struct{ page, want string }{
		{`<p id=a></p><p id=a></p>`, `id "a" stands twice`},
		{`<a href="#nowhere">x</a>`, `<a> refers to "nowhere", which is not on the page`},
		{`<input name=q>`, `input "q" has no label`},
		{`<p style="color:red">`, `<p> has an inline style`},
		{`<script>x</script>`, `an inline script`},
		{`<h1>a</h1><h3>b</h3>`, `h3 "b" skips a level`},
		{`<p onclick=x>`, `<p> has an inline onclick`},
	}
	for _, test := range tests {
		doc, err := html.Parse(strings.NewReader(test.page))
		if err != nil {
			t.Fatal(err)
		}
		if got := strings.Join(faults(doc), "\n"); !strings.Contains(got, test.want) {
			t.Errorf("%s: got %q, want %q in it", test.page, got, test.want)
		}
	}
}

// TestHostileTextStaysText puts markup wherever a user or a note can.
func TestHostileTextStaysText(t *testing.T) {
	const hostile = `"><script>alert(1)</script><img src=x onerror=alert(1)>`
	form := sampleForm()
	for _, name := range Fields() {
		form.Form.Values[name] = hostile
	}
	form.Problems = []Problem{{Field: "title", Message: hostile}, {Field: hostile, Message: hostile}}
	form.Choices.Effects[0].Title = hostile
	pages := []Page{
		form, hostilePlan(hostile),
		SearchPage{Frame: Frame{Title: hostile, Query: hostile}, Suggest: hostile, Hits: []Hit{{Path: hostile, Kind: hostile, Title: hostile}}},
		JobsPage{Jobs: []SavedJob{{ID: hostile, Title: hostile, Substrates: hostile}}},
		ErrorPage{Heading: hostile, Detail: hostile, Suggest: "javascript:alert(1)"},
		hostileEdit(hostile), hostileWhatIf(hostile), hostileCell(hostile),
		CoveragePage{Choices: form.Choices, Cells: []CoverageCell{{Substrate: "bare-steel", Effect: hostile, Lacks: hostile, Reason: hostile}}},
	}
	for _, page := range pages {
		doc := render(t, page)
		if count(doc, "img") > 0 || count(doc, "script") != 1 {
			t.Errorf("%s: markup came through", page.template())
		}
		for n := range doc.Descendants() {
			if strings.HasPrefix(attr(n, "href"), "javascript:") || attr(n, "onerror") != "" {
				t.Errorf("%s: a script in an attribute came through", page.template())
			}
		}
	}
}

func hostilePlan(hostile string) PlanPage {
	page := samplePlanPage()
	p := page.Plan
	p.Title, p.Job.Parts[0].Name = hostile, hostile
	for i := range p.Steps {
		s := &p.Steps[i]
		s.Title, s.Because, s.Skipped, s.Parts, s.Colour = hostile, hostile, hostile, []string{hostile}, hostile
		s.Design = hostile
		s.Why = []planner.Reason{{Fact: hostile, For: hostile, Because: hostile}}
	}
	for i := range p.Films {
		p.Films[i].Title, p.Films[i].Colour, p.Films[i].Parts = hostile, hostile, []string{hostile}
		p.Films[i].Design, p.Films[i].Rework = hostile, []planner.Rework{{How: hostile, State: hostile}}
	}
	p.Hardware, p.Left = []planner.Bag{{Label: hostile, Part: hostile, Holds: hostile}}, []string{hostile}
	p.Job.Designs[0].Name, p.Job.Designs[0].Position = hostile, hostile
	return page
}
