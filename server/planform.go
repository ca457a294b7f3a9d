package main

import (
	"errors"
	"fmt"
	"maps"
	"net/http"
	"net/url"
	"regexp"
	"slices"
	"strings"
	"time"
	"unicode"
	"unicode/utf8"

	"github.com/gin-gonic/gin"
	"github.com/goccy/go-yaml"

	"coatwright/planner"
	"coatwright/planner/library"
	"coatwright/strictyaml"
	"coatwright/web"
)

// planForm shows the form: empty, or as a saved plan's job left it.
func (s *site) planForm(c *gin.Context) error {
	choices := s.choices()
	form := web.NewForm(choices)
	form.Values["start"] = nextMorning(s.now()).Format("2006-01-02T15:04")
	if id := c.Query("from"); id != "" {
		saved, err := s.saved(id)
		if err != nil {
			return err
		}
		if form, err = formOf(saved.Job, form); err != nil {
			return err
		}
	}
	return send(c, http.StatusOK, web.FormPage{Frame: web.Frame{Title: "Plan a job", Here: web.AtPlan}, Form: form, Choices: choices})
}

// nextMorning is eight o'clock on the next working day after now.
func nextMorning(now time.Time) time.Time {
	day := now.AddDate(0, 0, 1)
	for day.Weekday() == time.Saturday || day.Weekday() == time.Sunday {
		day = day.AddDate(0, 0, 1)
	}
	return time.Date(day.Year(), day.Month(), day.Day(), 8, 0, 0, 0, time.UTC)
}

// choices are what the form offers, from the notes.
func (s *site) choices() web.Choices {
	lib := s.notes.Planner()
	choice := func(kind, slug string) web.Choice {
		n := s.notes.Note(kind + "/" + slug)
		return web.Choice{Value: slug, Title: n.Title, Says: firstSentence(n.Summary)}
	}
	var c web.Choices
	for _, slug := range slices.Sorted(maps.Keys(lib.Substrates)) {
		c.Substrates = append(c.Substrates, choice("substrate", slug))
	}
	for _, slug := range slices.Sorted(maps.Keys(lib.Effects)) {
		ch := choice("effect", slug)
		for _, f := range lib.Effects[slug].Films {
			ch.Roles, ch.Colours = append(ch.Roles, f.Role), append(ch.Colours, f.Colour)
		}
		c.Effects = append(c.Effects, ch)
	}
	for _, slug := range slices.Sorted(maps.Keys(lib.Finishes)) {
		ch := choice("finish", slug)
		ch.Gloss = float64(lib.Finishes[slug].Gloss.Middle())
		c.Finishes = append(c.Finishes, ch)
	}
	slices.SortStableFunc(c.Finishes, func(a, b web.Choice) int { return int(b.Gloss - a.Gloss) })
	for _, slug := range slices.Sorted(maps.Keys(lib.Tools)) {
		if lib.Tools[slug].Applicator != nil {
			c.Applicators = append(c.Applicators, choice("tool", slug))
		}
	}
	slices.SortStableFunc(c.Applicators, func(a, b web.Choice) int {
		return int(1e6 * (lib.Tools[b.Value].Applicator.Cup - lib.Tools[a.Value].Applicator.Cup))
	})
	c.Systems = systemChoices(lib)
	for _, w := range lib.Words.Care {
		c.Care = append(c.Care, web.Choice{Value: w.Name, Title: upperFirst(w.Name), Says: w.Is})
	}
	for _, w := range lib.Words.Forms {
		c.Forms = append(c.Forms, web.Choice{Value: w.Name, Title: upperFirst(w.Name), Says: w.Is})
	}
	return c
}

// systemChoices are the systems that some colour work is made of: the paint of
// a job, not what goes with any system.
func systemChoices(lib *library.Library) []web.Choice {
	var out []web.Choice
	for _, w := range lib.Words.Systems {
		for _, slug := range slices.Sorted(maps.Keys(lib.Materials)) {
			if m := lib.Materials[slug]; m.System == w.Name && m.Role != "" && m.System != "two-pack" && m.System != "none" {
				out = append(out, web.Choice{Value: w.Name, Title: upperFirst(w.Name), Says: w.Is})
				break
			}
		}
	}
	return out
}

func upperFirst(s string) string {
	if s == "" {
		return s
	}
	r, n := utf8.DecodeRuneInString(s)
	return string(unicode.ToUpper(r)) + s[n:]
}

func firstSentence(s string) string {
	if first, _, ok := strings.Cut(s, ". "); ok {
		return first + "."
	}
	return s
}

// makePlan plans what was posted, saves the plan and sends the reader to it. A
// form that cannot be read comes back as it was left, with what is wrong.
func (s *site) makePlan(c *gin.Context) error {
	if err := c.Request.ParseForm(); err != nil {
		var large *http.MaxBytesError
		if errors.As(err, &large) {
			return &failure{status: http.StatusRequestEntityTooLarge, heading: "That is too much for a job", detail: fmt.Sprintf("A job may have at most %d kB.", maxBody>>10)}
		}
		return &failure{status: http.StatusBadRequest, heading: "The form could not be read", detail: err.Error()}
	}
	document, parts := documentOf(c.Request.PostForm)
	job, err := planner.ParseJob("the form", document, s.notes.Planner())
	var problems strictyaml.Problems
	if errors.As(err, &problems) {
		return s.formAgain(c, problems, parts)
	}
	if err != nil {
		return err
	}
	id, err := s.savePlan(job)
	if err != nil {
		return err
	}
	c.Redirect(http.StatusSeeOther, "/plan/"+id)
	return nil
}

func (s *site) formAgain(c *gin.Context, problems strictyaml.Problems, parts []int) error {
	form := web.Form{Values: map[string]string{}}
	for _, name := range web.Fields() {
		form.Values[name] = c.Request.PostForm.Get(name)
	}
	page := web.FormPage{Frame: web.Frame{Title: "Plan a job", Here: web.AtPlan}, Form: form, Choices: s.choices()}
	for _, p := range problems {
		message := upperFirst(p.Message()) + "."
		if p.Found == "nothing" { // a key that is missing from the document is an empty field here
			message = "This is still to be filled in."
		}
		page.Problems = append(page.Problems, web.Problem{Field: fieldOf(p.Path, parts), Message: message})
	}
	return send(c, http.StatusUnprocessableEntity, page)
}

var partPath = regexp.MustCompile(`^parts\[(\d+)\]\.?(.*)$`)

// fieldOf is the form's name for a place in the job document: "parts[0].area"
// is "part0-area". parts says which of the form's parts stand in the document.
func fieldOf(path string, parts []int) string {
	if path == "parts" {
		return "part0-name"
	}
	if m := partPath.FindStringSubmatch(path); m != nil {
		i := int(m[1][0] - '0')
		name := m[2][strings.LastIndex(m[2], ".")+1:]
		if i < len(parts) {
			return fmt.Sprintf("part%d-%s", parts[i], name)
		}
	}
	if key, ok := strings.CutPrefix(path, "colours."); ok {
		return "colour-" + key
	}
	return path[strings.LastIndex(path, ".")+1:]
}

// documentOf makes a job document of a posted form. parts is the numbers of the
// form's parts that stand in it. Empty fields are left out: the job's own
// defaults hold.
func documentOf(form url.Values) (document []byte, parts []int) {
	doc := yaml.MapSlice{}
	put(&doc, form, "title", "title")
	put(&doc, form, "system", "system")
	put(&doc, form, "clear", "clear")
	list := []yaml.MapSlice{}
	for i := range web.MaxParts {
		if part := partOf(form, fmt.Sprintf("part%d-", i)); part != nil {
			list, parts = append(list, part), append(parts, i)
		}
	}
	doc = append(doc, yaml.MapItem{Key: "parts", Value: list})
	for _, name := range []string{"effect", "finish", "care"} {
		put(&doc, form, name, name)
	}
	group(&doc, form, "colours", map[string]string{"ground": "colour-ground", "candy": "colour-candy", "pearl": "colour-pearl"})
	put(&doc, form, "candy-coats", "candy-coats")
	put(&doc, form, "applicator", "applicator")
	group(&doc, form, "room", map[string]string{"air": "air", "humidity": "humidity", "airflow": "airflow", "surface": "surface"})
	group(&doc, form, "shop", map[string]string{"hours": "hours", "painters": "painters", "booths": "booths"})
	put(&doc, form, "start", "start")
	// In quotes throughout: the library leaves some texts bare that are none
	// when they are read again.
	document, err := yaml.MarshalWithOptions(doc, yaml.JSON())
	if err != nil {
		panic("server: a map of texts cannot be written: " + err.Error())
	}
	return document, parts
}

func put(doc *yaml.MapSlice, form url.Values, key, field string) {
	if v := strings.TrimSpace(form.Get(field)); v != "" {
		*doc = append(*doc, yaml.MapItem{Key: key, Value: v})
	}
}

func group(doc *yaml.MapSlice, form url.Values, key string, fields map[string]string) {
	inner := yaml.MapSlice{}
	for _, k := range slices.Sorted(maps.Keys(fields)) {
		put(&inner, form, k, fields[k])
	}
	if len(inner) > 0 {
		*doc = append(*doc, yaml.MapItem{Key: key, Value: inner})
	}
}

// partOf is one part of the form, nil when neither its name nor its substrate
// was filled in.
func partOf(form url.Values, prefix string) yaml.MapSlice {
	part := yaml.MapSlice{}
	put(&part, form, "name", prefix+"name")
	put(&part, form, "substrate", prefix+"substrate")
	if len(part) == 0 {
		return nil
	}
	put(&part, form, "count", prefix+"count")
	shape := form.Get(prefix + "shape")
	if dims, known := shapeFields[shape]; known {
		inner := yaml.MapSlice{}
		for _, d := range dims {
			put(&inner, form, d, prefix+d)
		}
		part = append(part, yaml.MapItem{Key: "shape", Value: yaml.MapSlice{{Key: shape, Value: inner}}})
	} else {
		put(&part, form, "area", prefix+"area")
		put(&part, form, "form", prefix+"form")
	}
	put(&part, form, "condition", prefix+"condition")
	put(&part, form, "keep-free", prefix+"keep-free")
	return part
}

// shapeFields are the measures that each shape takes.
var shapeFields = map[string][]string{
	"plate": {"length", "width"}, "cylinder": {"diameter", "length"},
	"frustum": {"diameter", "diameter2", "length"}, "sphere": {"diameter"},
	"ellipsoid": {"length", "width", "height"}, "box": {"length", "width", "height"},
}

// formOf fills the form with a saved job document.
func formOf(document []byte, form web.Form) (web.Form, error) {
	var doc struct {
		Parts []map[string]any `yaml:"parts"`
	}
	var flat map[string]any
	if err := errors.Join(yaml.Unmarshal(document, &doc), yaml.Unmarshal(document, &flat)); err != nil {
		return form, err
	}
	fill := func(prefix string, values map[string]any) {
		for key, v := range values {
			switch v.(type) {
			case map[string]any, []any:
			default:
				form.Values[prefix+key] = fmt.Sprint(v)
			}
		}
	}
	nested := func(m map[string]any, key string) map[string]any { inner, _ := m[key].(map[string]any); return inner }
	fill("", flat)
	fill("", nested(flat, "room"))
	fill("", nested(flat, "shop"))
	fill("colour-", nested(flat, "colours"))
	for i, part := range doc.Parts[:min(len(doc.Parts), web.MaxParts)] {
		prefix := fmt.Sprintf("part%d-", i)
		fill(prefix, part)
		for shape, dims := range nested(part, "shape") {
			form.Values[prefix+"shape"] = shape
			inner, _ := dims.(map[string]any)
			fill(prefix, inner)
		}
	}
	return form, nil
}
