package main

import (
	"errors"
	"fmt"
	"maps"
	"net/url"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"github.com/goccy/go-yaml"

	"coatwright/web"
)

// rows are the numbers of the form's parts and designs that stand in the job
// document, in its order.
type rows struct{ parts, designs []int }

var (
	rowPath  = regexp.MustCompile(`^(part|design)s\[(\d+)\]\.?(.*)$`)
	listItem = regexp.MustCompile(`\[\d+\]$`)
)

// field is the form's name for a place in the job document: "parts[0].area" is
// "part0-area", "designs[0]" the whole row "design0".
func (r rows) field(path string) string {
	if path == "parts" {
		return "part0"
	}
	m := rowPath.FindStringSubmatch(path)
	if m == nil {
		return fieldName(path)
	}
	i, err := strconv.Atoi(m[2])
	in := map[string][]int{"part": r.parts, "design": r.designs}[m[1]]
	if err != nil || i >= len(in) {
		return path
	}
	row := fmt.Sprintf("%s%d", m[1], in[i])
	if m[3] == "" {
		return row
	}
	return row + "-" + fieldName(m[3])
}

// fieldName is the name of a field without its row: "shape.cylinder.length" is
// "length", "with[1]" is "with", "colours.candy" is "colour-candy".
func fieldName(path string) string {
	path = listItem.ReplaceAllString(path, "")
	if key, ok := strings.CutPrefix(path, "colours."); ok {
		return "colour-" + key
	}
	return path[strings.LastIndex(path, ".")+1:]
}

// documentOf makes a job document of a posted form, and says which of its rows
// stand in it. Empty fields are left out: the job's own defaults hold.
func documentOf(form url.Values) (document []byte, in rows) {
	doc := yaml.MapSlice{}
	put(&doc, form, "title", "title")
	put(&doc, form, "system", "system")
	put(&doc, form, "clear", "clear")
	parts, used := rowsOf(form, web.FormPage{}.Parts(), partOf)
	in.parts = used
	doc = append(doc, yaml.MapItem{Key: "parts", Value: parts})
	for _, name := range []string{"effect", "finish", "care"} {
		put(&doc, form, name, name)
	}
	group(&doc, form, "colours", map[string]string{"ground": "colour-ground", "candy": "colour-candy", "pearl": "colour-pearl"})
	put(&doc, form, "candy-coats", "candy-coats")
	designs, used := rowsOf(form, web.FormPage{}.Designs(), designOf)
	in.designs = used
	if len(designs) > 0 {
		doc = append(doc, yaml.MapItem{Key: "designs", Value: designs})
	}
	putSeveral(&doc, form, "applicator", "applicator")
	group(&doc, form, "room", map[string]string{"air": "air", "humidity": "humidity", "airflow": "airflow", "surface": "surface"})
	group(&doc, form, "shop", map[string]string{"hours": "hours", "painters": "painters", "booths": "booths"})
	put(&doc, form, "start", "start")
	// In quotes throughout: the library leaves some texts bare that are none
	// when they are read again.
	document, err := yaml.MarshalWithOptions(doc, yaml.JSON())
	if err != nil {
		panic("server: a map of texts cannot be written: " + err.Error())
	}
	return document, in
}

// rowsOf reads the rows that are used, and says which those are.
func rowsOf(form url.Values, all []web.Row, read func(url.Values, string) yaml.MapSlice) (out []yaml.MapSlice, in []int) {
	out = []yaml.MapSlice{}
	for _, r := range all {
		if row := read(form, r.Prefix); row != nil {
			out, in = append(out, row), append(in, r.Index)
		}
	}
	return out, in
}

func put(doc *yaml.MapSlice, form url.Values, key, field string) {
	if v := strings.TrimSpace(form.Get(field)); v != "" {
		*doc = append(*doc, yaml.MapItem{Key: key, Value: v})
	}
}

// putLines puts a list of what stands in a field, an item a line.
func putLines(doc *yaml.MapSlice, form url.Values, key, field string) {
	if items := lines(form[field]); len(items) > 0 {
		*doc = append(*doc, yaml.MapItem{Key: key, Value: items})
	}
}

// putSeveral puts what was chosen in a field: the one thing, or a list.
func putSeveral(doc *yaml.MapSlice, form url.Values, key, field string) {
	if len(lines(form[field])) == 1 {
		put(doc, form, key, field)
		return
	}
	putLines(doc, form, key, field)
}

// lines are the lines of texts, without those that are blank.
func lines(texts []string) []string {
	var out []string
	for line := range strings.Lines(strings.Join(texts, "\n")) {
		if line = strings.TrimSpace(line); line != "" {
			out = append(out, line)
		}
	}
	return out
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
	putLines(&part, form, "hardware", prefix+"hardware")
	put(&part, form, "leave", prefix+"leave")
	return part
}

// designOf is one design of the form, nil when none of what makes one was
// filled in. A design that is on nothing in particular is on the first part.
func designOf(form url.Values, prefix string) yaml.MapSlice {
	design := yaml.MapSlice{}
	for _, key := range []string{"kind", "name", "area", "position"} {
		put(&design, form, key, prefix+key)
	}
	on := yaml.MapSlice{}
	put(&on, form, "on", prefix+"on")
	putLines(&design, form, "with", prefix+"with")
	putLines(&design, form, "over", prefix+"over")
	if len(design)+len(on) == 0 {
		return nil
	}
	if len(on) == 0 {
		put(&on, form, "on", "part0-name")
	}
	design = append(design, on...)
	put(&design, form, "mask", prefix+"mask")
	group(&design, form, "colours", map[string]string{
		"design": prefix + "colour-design", "shadow": prefix + "colour-shadow", "highlight": prefix + "colour-highlight"})
	return design
}

// shapeFields are the measures that each shape takes.
var shapeFields = map[string][]string{
	"plate": {"length", "width"}, "cylinder": {"diameter", "length"},
	"frustum": {"diameter", "diameter2", "length"}, "sphere": {"diameter"},
	"ellipsoid": {"length", "width", "height"}, "box": {"length", "width", "height"},
}

// formOf fills the form with a saved job document.
func formOf(document []byte, form web.Form) (web.Form, error) {
	var doc struct{ Parts, Designs []map[string]any }
	var flat map[string]any
	if err := errors.Join(yaml.Unmarshal(document, &doc), yaml.Unmarshal(document, &flat)); err != nil {
		return form, err
	}
	fill := func(prefix string, values map[string]any) {
		for key, v := range values {
			if text, ok := fieldText(v); ok {
				form.Values[prefix+key] = text
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
	for i, design := range doc.Designs[:min(len(doc.Designs), web.MaxDesigns)] {
		prefix := fmt.Sprintf("design%d-", i)
		fill(prefix, design)
		fill(prefix+"colour-", nested(design, "colours"))
	}
	return form, nil
}

// fieldText is what stands in a field for a value of a document: the text, or
// the texts of a list, one a line. Not ok for what has fields of its own.
func fieldText(v any) (text string, ok bool) {
	switch v := v.(type) {
	case map[string]any:
		return "", false
	case []any:
		var lines []string
		for _, item := range v {
			line, ok := fieldText(item)
			if !ok {
				return "", false
			}
			lines = append(lines, line)
		}
		return strings.Join(lines, "\n"), true
	}
	return fmt.Sprint(v), true
}
