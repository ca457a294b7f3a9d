package web

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"golang.org/x/net/html"

	"coatwright/planner/area"
	q "coatwright/quantity"
)

// TestFormComesBackAsItWasLeft fills every field and reads the page again.
func TestFormComesBackAsItWasLeft(t *testing.T) {
	page := FormPage{Form: NewForm(sampleChoices()), Choices: sampleChoices()}
	choose := map[string]string{"effect": "pearl", "finish": "matt", "care": "rough", "clear": "two-pack", "system": "solvent", "applicator": "fan-gun\nairbrush"}
	for _, part := range page.Parts() {
		for _, name := range partFields {
			page.Form.Values[part.Prefix+name] = "x " + part.Prefix + name
		}
		choose[part.Prefix+"substrate"] = "raw-abs"
		choose[part.Prefix+"shape"] = "frustum"
		choose[part.Prefix+"painted"] = "both"
		choose[part.Prefix+"both-faces"] = "yes"
		choose[part.Prefix+"half"] = "yes"
		choose[part.Prefix+"tubes"] = "28.6 mm x 560 mm\n\n31.8 to 28 mm x 600 mm x 2\n"
		choose[part.Prefix+"openings"] = "\ndisc <40> mm"
		choose[part.Prefix+"form"] = "solid"
		choose[part.Prefix+"condition"] = "assembled"
		choose[part.Prefix+"leave"] = "yes"
		choose[part.Prefix+"hardware"] = "\n2 <b>screws</b>\n\n a nut "
	}
	for _, design := range page.Designs() {
		for _, name := range designFields {
			page.Form.Values[design.Prefix+name] = "x " + design.Prefix + name
		}
		choose[design.Prefix+"kind"] = "stripe"
		choose[design.Prefix+"mask"] = "positive"
		choose[design.Prefix+"with"] = "drop shadow\nlight line"
		choose[design.Prefix+"over"] = "edge stripe\n"
	}
	for name, value := range choose {
		page.Form.Values[name] = value
	}
	page.Form.Values["colour-wanted"] = "L 30 a -20 b -5"
	page.Form.Values["title"], page.Form.Values["candy-coats"], page.Form.Values["start"], page.Form.Values["surface"] = "a <b>", "4", "2026-12-01T08:00", ""
	if diff := cmp.Diff(page.Form.Values, entered(render(t, page))); diff != "" {
		t.Errorf("(-left +came back):\n%s", diff)
	}
}

// entered reads the values that a browser would post, the search box aside.
func entered(doc *html.Node) map[string]string {
	values := map[string]string{}
	for n := range doc.Descendants() {
		name := attr(n, "name")
		switch {
		case n.Data == "input" && (attr(n, "type") == "radio" || attr(n, "type") == "checkbox"):
			if has(n, "checked") {
				values[name] = strings.TrimPrefix(values[name]+"\n"+attr(n, "value"), "\n")
			}
		case n.Data == "textarea":
			values[name] = ""
			if n.FirstChild != nil {
				values[name] = n.FirstChild.Data
			}
		case n.Data == "input" && name != "q":
			values[name] = attr(n, "value")
		case n.Data == "select":
			for o := range n.Descendants() {
				if has(o, "selected") {
					values[name] = attr(o, "value")
				}
			}
		}
	}
	return values
}

func has(n *html.Node, key string) bool {
	return slices.ContainsFunc(n.Attr, func(a html.Attribute) bool { return a.Key == key })
}

// TestFieldsAreOnThePage: the list of fields and the page agree.
func TestFieldsAreOnThePage(t *testing.T) {
	var names []string
	for n := range render(t, sampleForm()).Descendants() {
		if name := attr(n, "name"); (n.Data == "input" || n.Data == "select" || n.Data == "textarea") && name != "q" && !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	want := Fields()
	slices.Sort(names)
	slices.Sort(want)
	if diff := cmp.Diff(want, names); diff != "" {
		t.Errorf("(-listed +on the page):\n%s", diff)
	}
}

// TestProblemsStandBesideTheirFields: marked, described and linked to.
func TestProblemsStandBesideTheirFields(t *testing.T) {
	page := sampleForm()
	doc := render(t, page)
	for _, problem := range page.Problems[:len(page.Problems)-1] {
		marked, linked, anchor := false, false, problem.Anchor()
		for n := range doc.Descendants() {
			if attr(n, "id") == problem.Field {
				marked = attr(n, "aria-invalid") == "true" && slices.Contains(references(n), problem.Field+"-problem")
			}
			if attr(n, "href") == anchor {
				linked = true
			}
		}
		if !marked || !linked {
			t.Errorf("%s: marked %v, linked %v", problem.Field, marked, linked)
		}
	}
	if got := (Problem{Field: "nothing-known"}).Anchor(); got != "" {
		t.Errorf("a problem of no field is linked to %q", got)
	}
}

func TestProblemLabel(t *testing.T) {
	for field, want := range map[string]string{"part1-keep-free": "Part 2, keep free", "design11-colour-shadow": "Design 12, colour shadow", "design0": "Design 1", "humidity": "Humidity"} {
		if got := (Problem{Field: field}).Label(); got != want {
			t.Errorf("%s: got %q, want %q", field, got, want)
		}
	}
}

// TestFoldedProblemsAreOpen: whatever holds a problem is not folded away.
func TestFoldedProblemsAreOpen(t *testing.T) {
	alike := regexp.MustCompile(`^(part[0-2]|design([0-9]|10))-`) // rows like the last
	for _, name := range append(Fields(), "part0", "part3", "design0", "design11") {
		if alike.MatchString(name) {
			continue
		}
		page := FormPage{Form: NewForm(sampleChoices()), Choices: sampleChoices(), Problems: []Problem{{Field: name, Message: "wrong"}}}
		for n := range render(t, page).Descendants() {
			if n.Data == "details" && !has(n, "open") && holds(n, name) {
				t.Errorf("%s is folded: %s", name, textOf(n)[:40])
			}
		}
	}
}

func holds(n *html.Node, id string) bool {
	for d := range n.Descendants() {
		if attr(d, "id") == id {
			return true
		}
	}
	return false
}

// TestFirstScreenIsShort: of a form that nobody has touched, only the three
// choices and the parts' first stand open.
func TestFirstScreenIsShort(t *testing.T) {
	var summaries []string
	for n := range render(t, FormPage{Form: NewForm(sampleChoices()), Choices: sampleChoices()}).Descendants() {
		if n.Data == "details" && has(n, "open") {
			summaries = append(summaries, textOf(n.FirstChild.NextSibling))
		}
	}
	// The first design stands open within what is folded away.
	if diff := cmp.Diff([]string{"First design design 1"}, summaries); diff != "" {
		t.Errorf("open (-want +got):\n%s", diff)
	}
}

// TestShapesAreWhole: each kind of shape has a field for each of its measures, in
// an order that suits it, and what is said of each.
func TestShapesAreWhole(t *testing.T) {
	for _, k := range area.Kinds() {
		page := FormPage{Form: NewForm(sampleChoices()), Choices: sampleChoices()}
		page.Form.Values["part1-shape"] = k.Key
		var got, want, says []string
		for _, f := range page.Parts()[1].Measured() {
			if slices.Contains(strings.Fields(f.Show), k.Key) {
				got = append(got, strings.TrimPrefix(f.Name, "part1-"))
				for _, h := range f.Hints {
					if !h.Away && h.Show != "" {
						says = append(says, h.Says)
					}
				}
			}
		}
		measures := area.Fields(k.Measures)
		for i, m := range measures {
			want = append(want, m.Key)
			if i >= len(says) || !strings.Contains(says[i], m.Says) && k.Key != "roll" {
				t.Errorf("%s: of %s the form says %q", k.Key, m.Key, says)
			}
		}
		if k.Key == "roll" { // has its width first, which all others have second
			slices.Sort(want)
			slices.Sort(got)
		}
		if diff := cmp.Diff(want, got); diff != "" {
			t.Errorf("%s (-want +got):\n%s", k.Key, diff)
		}
	}
}

func TestMerged(t *testing.T) {
	got := merged([][]string{{"a", "c"}, {"b", "c", "d"}, {"d", "e"}, {"c", "a", "f"}, {"b"}})
	if diff := cmp.Diff([]string{"b", "a", "c", "d", "e", "f"}, got); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}

// TestAreaOfAPart: an area that is known stands beside its shape, and leads to
// how it comes about.
func TestAreaOfAPart(t *testing.T) {
	page := FormPage{Form: NewForm(sampleChoices()), Choices: sampleChoices(), Areas: map[string]q.Area{"part1": 0.48}}
	page.Form.Values["part1-shape"], page.Form.Values["part1-length"], page.Form.Values["part1-width"] = "plate", "600 mm", "400 mm"
	page.Form.Values["part1-both-faces"], page.Form.Values["part1-diameter"] = "yes", "9 mm"
	var said, links []string
	for n := range render(t, page).Descendants() {
		if attr(n, "class") == "worked" {
			said = append(said, textOf(n))
		}
		if strings.HasPrefix(attr(n, "href"), "/work-out/area") {
			links = append(links, attr(n, "href"))
		}
	}
	const without = "Work out an area, with a drawing"
	if diff := cmp.Diff([]string{without, "One of it is 0.48 m². How that comes about", without, without}, said); diff != "" {
		t.Errorf("said (-want +got):\n%s", diff)
	}
	const plain = "/work-out/area?kind=area"
	if diff := cmp.Diff([]string{plain, "/work-out/area?both-faces=yes&kind=plate&length=600+mm&openings=&thickness=&width=400+mm", plain, plain}, links); diff != "" {
		t.Errorf("links (-want +got):\n%s", diff)
	}
}
