package main

import (
	"html"
	"math"
	"net/http"
	"net/url"
	"strings"
	"testing"

	"coatwright/planner"
	"coatwright/planner/area"
	"coatwright/web"
)

// shapeForms fills in each kind of shape, with everything that may be said of it
// somewhere, as it comes back. Areas are textbook geometry, worked
// independently, save where a source is named.
var shapeForms = []struct {
	kind   string
	fields map[string]string
	want   float64 // m2
}{
	{"area", map[string]string{"area": "6 ft2"}, 6 * 0.09290304},
	{"plate", map[string]string{"length": "600 mm", "width": "400 mm", "both-faces": "yes", "thickness": "20 mm", "openings": "disc 10 cm x 2\n0.01 m2"}, 0.52 - 2*(2*0.00785398+0.01)},
	{"disc", map[string]string{"diameter": "500 mm"}, 0.1963495},
	{"trapezium", map[string]string{"base": "12 cm", "top": "8 cm", "height": "5 cm"}, 0.005},
	{"cylinder", map[string]string{"diameter": "200 mm", "length": "500 mm", "painted": "both", "thickness": "10 mm"}, 0.608841},
	{"frustum", map[string]string{"diameter": "600 mm", "diameter2": "400 mm", "length": "240 mm"}, 0.408407},
	{"cone", map[string]string{"diameter": "600 mm", "height": "400 mm", "ends": "1"}, 0.753982},
	{"ring", map[string]string{"diameter": "640 mm", "depth": "40 mm", "girth": "160 mm", "share": "25 %"}, 0.0753982},
	{"frame", map[string]string{"tubes": "28.6 mm x 560 mm\n31.8 to 28 mm x 600 mm", "joints": "3"}, 0.0503157 + 0.0563604 - 3*0.000672289},
	{"box", map[string]string{"length": "60 cm", "width": "40 cm", "height": "2 cm"}, 0.52},
	{"prism", map[string]string{"sides": "4", "side": "10 cm", "length": "50 cm", "ends": "2"}, 0.22},
	{"slab", map[string]string{"outline": "12 dm2", "perimeter": "1.4 m", "thickness": "45 mm"}, 0.303},
	{"body", map[string]string{"length": "1 m", "upper": "40 cm", "waist": "40 cm", "lower": "40 cm", "thickness": "10 cm", "upper-at": "20 cm", "waist-at": "50 cm", "lower-at": "80 cm"},
		2*(math.Pi*0.04+0.24) + 0.1*(math.Pi*0.4+1.2)},
	{"sphere", map[string]string{"diameter": "500 mm"}, 0.785398},
	{"dome", map[string]string{"diameter": "600 mm", "height": "100 mm", "painted": "inside"}, 0.314159},
	{"ellipsoid", map[string]string{"length": "6 m", "width": "4 m", "height": "1 m", "half": "yes"}, 0}, // see TestEveryShapeInTheForm
	{"helmet", map[string]string{"circumference": "94.2477796 cm", "height": "150 mm", "painted": "outside"}, 2 * math.Pi * 0.0225},
	{"paper", map[string]string{"mass": "62 g", "sheet-length": "1 m", "sheet-width": "90 cm", "sheet-mass": "36 g"}, 1.55},
	{"roll", map[string]string{"width": "45 cm", "length": "2.4 m", "over": "10 %"}, 0.972},
	{"sum", map[string]string{"sum": "cylinder 200 mm x 500 mm x 2\nplate 60 cm x 40 cm, both faces\nframe, tubes (28.6 mm x 560 mm; 20 mm x 1 m), joints 1\n1 dm2"},
		2*0.314159 + 0.48 + 0.0503157 + 0.0628319 - 0.00047829 + 0.01},
}

// shapedForm is the frame job with its first part of a shape.
func shapedForm(kind string, measures map[string]string) url.Values {
	form := frameForm()
	for _, name := range []string{"area", "form"} {
		form.Del("part0-" + name)
	}
	form.Set("part0-shape", kind)
	for name, text := range measures {
		form.Set("part0-"+name, text)
	}
	return form
}

// TestEveryShapeInTheForm: each is planned at its area, and comes back into the
// form as it was left.
func TestEveryShapeInTheForm(t *testing.T) {
	left := map[string]bool{}
	for _, k := range area.Kinds() {
		left[k.Key] = true
	}
	for _, c := range shapeForms {
		t.Run(c.kind, func(t *testing.T) {
			delete(left, c.kind)
			document, _ := documentOf(shapedForm(c.kind, c.fields))
			job, err := planner.ParseJob("the form", document, nil)
			if err != nil {
				t.Fatal(err)
			}
			if got := float64(job.Parts[0].Area); c.want > 0 && math.Abs(got-c.want) > 3e-6*c.want {
				t.Errorf("the part has %.9g m2, want %.9g", got, c.want)
			}
			form, err := formOf(document, web.NewForm(web.Choices{}))
			if err != nil {
				t.Fatal(err)
			}
			if got := form.Get("part0-shape"); got != c.kind {
				t.Errorf("the shape comes back as %q", got)
			}
			for name, text := range c.fields {
				if got := form.Get("part0-" + name); got != text {
					t.Errorf("%s comes back as %q, it was %q", name, got, text)
				}
			}
			if got := areasOf(form)["part0"]; c.kind != "area" && got != job.Parts[0].Area {
				t.Errorf("the form says %v m2, the job %v", got, job.Parts[0].Area)
			}
		})
	}
	for key := range left {
		t.Errorf("no form has a %s", key)
	}
	for _, name := range web.Fields() {
		field, is := strings.CutPrefix(name, "part0-")
		if _, known := measureFields()[field]; is && known && !filled(field) {
			t.Errorf("no form has the field %s", field)
		}
	}
}

func measureFields() map[string]bool {
	out := map[string]bool{}
	for _, k := range area.Kinds() {
		for _, m := range area.Fields(k.Measures) {
			out[m.Key] = true
		}
	}
	return out
}

// filled reports whether a form of shapeForms has something in a field; a helmet
// is told by length and width elsewhere.
func filled(field string) bool {
	for _, c := range shapeForms {
		if c.fields[field] != "" {
			return true
		}
	}
	return field == "below"
}

// TestShapeProblems: what is wrong with a shape is told at the field that is to
// blame, of a list with its line, and everything comes back as it was left.
func TestShapeProblems(t *testing.T) {
	s := newSite(t, t.TempDir())
	tubes := "28.6 mm x 560 mm\r\n\r\n31.8 to 28 mm x 600 mm\r\n"
	for _, c := range []struct {
		kind        string
		fields      map[string]string
		field, says string
	}{
		{"frame", map[string]string{"tubes": ""}, "tubes", "Expected a list of 1 to 60 tubes."},
		{"frame", map[string]string{"tubes": tubes + "20 mm by 400 mm"}, "tubes", `Line 4: found "20 mm by 400 mm", expected a tube such as "28.6 mm x 560 mm".`},
		{"frame", map[string]string{"tubes": tubes + "20 mm x 400 mn"}, "tubes", `Line 4, length: found "400 mn", expected a length in one of`},
		{"frame", map[string]string{"tubes": tubes + "20 mm x 400 m"}, "tubes", `Line 4, length: found "400 m", expected a length above 0 and at most 20 m.`},
		{"frame", map[string]string{"tubes": tubes, "joints": "5"}, "joints", `Found "5", expected at most 4, the ends that the tubes have.`},
		{"frame", map[string]string{"tubes": tubes, "joints": "two"}, "joints", "a whole number from 0 to 200"},
		{"frame", map[string]string{"tubes": tubes, "openings": "disc 20 mm\ndisk 20 mm"}, "openings", `Line 2: found "disk 20 mm", expected a shape: one of area, plate, disc, trapezium; did you mean "disc"?`},
		{"plate", map[string]string{"length": "600 mm"}, "width", "This is still to be filled in."},
		{"plate", map[string]string{"length": "600 mm", "width": "400 mn"}, "width", `did you mean "400 mm"?`},
		{"plate", map[string]string{"length": "60 cm", "width": "40 cm", "openings": "plate 60 x 40 cm"}, "openings", "expected openings of less than the 0.24 m² that they are in"},
		{"plate", map[string]string{"length": "60 cm", "width": "40 cm", "openings": "disc 2 cm\nplate 6 x 4 cm, both faces"}, "openings", "expected an opening as it is seen from one side"},
		{"cylinder", map[string]string{"diameter": "30 mm", "length": "1 m", "painted": "both", "thickness": "16 mm"}, "thickness", "a wall of less than 15 mm"},
		{"helmet", map[string]string{"height": "20 cm"}, "shape", "Expected length and width, or circumference."},
		{"paper", map[string]string{"mass": "62 g", "sheet-length": "1 m", "sheet-width": "90 cm"}, "sheet-mass", "This is still to be filled in."},
		{"paper", map[string]string{"mass": "62 g", "sheet-length": "1 m", "sheet-width": "90 g", "sheet-mass": "36 g"}, "sheet-width", "a length in one of"},
		{"sum", map[string]string{"sum": ""}, "sum", "Expected a list of 1 to 60 shapes."},
		{"sum", map[string]string{"sum": "disc 20 mm\n\nprism 6 x 20 x 400 mm, ends 3"}, "sum", "Line 3, ends: found"},
		{"body", map[string]string{"length": "490 mm", "upper": "28 cm", "waist": "24 cm", "lower": "37 cm", "thickness": "95 mm", "waist-at": "90 mm"}, "shape", "expected less than 90 mm, where the waist lies"},
		{"sphere", map[string]string{"diameter": "4.1 m"}, "shape", "at most 50 m2 for one piece"},
	} {
		form := shapedForm(c.kind, c.fields)
		r := post(t, s, form)
		body := text(t, r)
		if r.StatusCode != http.StatusUnprocessableEntity {
			t.Errorf("%s %v: %s", c.kind, c.fields, r.Status)
			continue
		}
		said := between(body, `id="part0-`+c.field+`-problem">`, "</p>")
		if !strings.Contains(strings.ToLower(html.UnescapeString(said)), strings.ToLower(c.says)) {
			t.Errorf("%s %v: at %s the page says %q, not %q", c.kind, c.fields, c.field, html.UnescapeString(said), c.says)
		}
		if n := strings.Count(body, `-problem">`); n != 1 {
			t.Errorf("%s %v: %d problems are told", c.kind, c.fields, n)
		}
		left := fields(t, body)
		for name := range form {
			if want := strings.ReplaceAll(form.Get(name), "\r\n", "\n"); left[name] != want {
				t.Errorf("%s: the field %s came back as %q, it was %q", c.kind, name, left[name], want)
			}
		}
	}
}

// between is what stands between two texts of a page.
func between(page, before, after string) string {
	_, rest, _ := strings.Cut(page, before)
	found, _, _ := strings.Cut(rest, after)
	return found
}

// TestWorkedAreaInTheForm: a form that comes back says the area that its shape
// has, and leads to the sheet on which it comes about.
func TestWorkedAreaInTheForm(t *testing.T) {
	s := newSite(t, t.TempDir())
	form := shapedForm("plate", map[string]string{"length": "600 mm", "width": "400 mm", "both-faces": "yes", "openings": "disc 10 cm\n1 dm2"})
	form.Set("effect", "none such")
	body := text(t, post(t, s, form))
	if !strings.Contains(body, "One of it is <strong>0.444 m²</strong>") {
		t.Error("the form does not say the area of the plate")
	}
	link := html.UnescapeString(between(body, `</strong>. <a href="`, `"`))
	r := get(t, s, link)
	if page := text(t, r); r.StatusCode != http.StatusOK || !strings.Contains(page, `<span class="result">0.444 m²</span>`) {
		t.Errorf("%s: %s, without the area of the plate", link, r.Status)
	}
}
