package web

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
)

var (
	conditionChoices = []Choice{
		{Value: "loose", Title: "Loose", Says: "Off whatever it was fitted to, stripped of fittings."},
		{Value: "assembled", Title: "Assembled", Says: "Still fitted, or with fittings on it."},
	}
	clearChoices = []Choice{
		{Value: "", Title: "Whichever is cheaper", Says: "The plan weighs both."},
		{Value: "two-pack", Title: "Two-pack", Says: "Cures by reaction. Its cautions are serious: read them first."},
		{Value: "waterborne", Title: "Waterborne", Says: "One pack, dries as water leaves."},
	}
	maskChoices = []Choice{
		{Value: "negative", Title: "Around the design", Says: "A negative mask: the design lies open and is sprayed."},
		{Value: "positive", Title: "The design itself", Says: "A positive mask: the design is covered, what is around it is sprayed."},
	}
)

// Conditions, Clears and Masks are the options that the job document fixes.
func (FormPage) Conditions() []Choice { return conditionChoices }
func (FormPage) Clears() []Choice     { return clearChoices }
func (FormPage) Masks() []Choice      { return maskChoices }

// Names of the fields: of the job, and of each part and design after its prefix.
var (
	jobFields = []string{
		"title", "system", "clear", "effect", "finish", "care", "applicator",
		"colour-ground", "colour-candy", "colour-pearl", "colour-wanted", "candy-coats",
		"air", "humidity", "airflow", "surface", "hours", "painters", "booths", "start",
	}
	partFields = append([]string{
		"name", "substrate", "count", "shape", "form", "condition", "keep-free", "leave", "hardware",
	}, shapeKeys()...)
	designFields = []string{
		"kind", "name", "on", "area", "position", "mask", "colour-design",
		"colour-shadow", "colour-highlight", "with", "over",
	}
)

// shapeKeys are the names of the fields for what is measured of a shape.
func shapeKeys() []string {
	var keys []string
	for _, f := range shapeFields {
		keys = append(keys, f.key)
	}
	return keys
}

// Fields are the names of every field that the form posts, in no order that
// matters.
func Fields() []string {
	fields := slices.Clone(jobFields)
	add := func(rows []Row, names []string) {
		for _, r := range rows {
			for _, name := range names {
				fields = append(fields, r.Prefix+name)
			}
		}
	}
	add((FormPage{}).Parts(), partFields)
	add((FormPage{}).Designs(), designFields)
	return fields
}

// Anchor is where a problem's field, or its row, stands on the page; "" for a
// problem of the whole job, or of a field that the form does not have.
func (p Problem) Anchor() string {
	page := FormPage{}
	isRow := func(r Row) bool { return r.Name == p.Field }
	if slices.Contains(Fields(), p.Field) || slices.ContainsFunc(page.Parts(), isRow) || slices.ContainsFunc(page.Designs(), isRow) {
		return "#" + p.Field
	}
	return ""
}

var rowName = regexp.MustCompile(`^(part|design)(\d+)$`)

// Label names a field to somebody who reads a problem away from it.
func (p Problem) Label() string {
	row, field, _ := strings.Cut(p.Field, "-")
	m := rowName.FindStringSubmatch(row)
	if m == nil {
		return words(p.Field)
	}
	index, _ := strconv.Atoi(m[2]) // 0 for a number too large, which no form has
	label := fmt.Sprintf("%s %d", words(m[1]), index+1)
	if field != "" {
		label += ", " + strings.ReplaceAll(field, "-", " ")
	}
	return label
}

// NewForm is an empty form with the defaults that the page states. Lists start
// at their first choice where a job needs one. The start is left to the caller,
// who has a clock.
func NewForm(c Choices) Form {
	v := map[string]string{
		"care": "daily", "air": "21 C", "humidity": "55 %", "airflow": "0.1 m/s",
		"hours": "Mon-Fri 08:00-17:00", "painters": "1", "booths": "1",
		"colour-ground": "#8a8d90", "colour-candy": "#0f6f6b", "colour-pearl": "#e8e2d4",
	}
	for name, options := range map[string][]Choice{"system": c.Systems, "applicator": c.Applicators} {
		if len(options) > 0 {
			v[name] = options[0].Value
		}
	}
	for _, design := range (FormPage{}).Designs() {
		v[design.Prefix+"mask"] = "negative"
		v[design.Prefix+"colour-design"] = "#f4efe0"
		v[design.Prefix+"colour-shadow"] = "#1d1d1f"
		v[design.Prefix+"colour-highlight"] = "#ffffff"
	}
	for _, part := range (FormPage{}).Parts() {
		v[part.Prefix+"count"] = "1"
		v[part.Prefix+"shape"] = ShapeChoices[0].Value
		v[part.Prefix+"condition"] = "loose"
	}
	return Form{Values: v}
}
