package main

import (
	"maps"
	"net/url"
	"slices"
	"strings"

	"github.com/goccy/go-yaml"

	"coatwright/web"
)

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
	group(&doc, form, "colours", map[string]string{"ground": "colour-ground", "candy": "colour-candy", "pearl": "colour-pearl", "wanted": "colour-wanted"})
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
	if shape := shapeOf(form, prefix); shape != nil {
		part = append(part, yaml.MapItem{Key: "shape", Value: shape})
	} else {
		put(&part, form, "area", prefix+"area")
	}
	put(&part, form, "form", prefix+"form")
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
