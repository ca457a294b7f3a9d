package web

import (
	"slices"
	"strings"
)

// ShapeChoices are the shapes of a part, and how each is measured.
var ShapeChoices = []Choice{
	{Value: "measured", Title: "Area already measured"},
	{Value: "plate", Title: "Plate: length, width"},
	{Value: "cylinder", Title: "Tube or rod: diameter, length"},
	{Value: "frustum", Title: "Tapered tube: two diameters, length"},
	{Value: "sphere", Title: "Ball: diameter"},
	{Value: "ellipsoid", Title: "Egg or shell: length, width, height"},
	{Value: "box", Title: "Box: length, width, height"},
}

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
)

// Shapes, Conditions and Clears are the options that the job document fixes.
func (FormPage) Shapes() []Choice     { return ShapeChoices }
func (FormPage) Conditions() []Choice { return conditionChoices }
func (FormPage) Clears() []Choice     { return clearChoices }

// Names of the fields: of the job, and of each part after its prefix.
var (
	jobFields = []string{
		"title", "system", "clear", "effect", "finish", "care", "applicator",
		"colour-ground", "colour-candy", "colour-pearl", "candy-coats",
		"air", "humidity", "airflow", "surface", "hours", "painters", "booths", "start",
	}
	partFields = []string{
		"name", "substrate", "count", "shape", "area", "form", "length", "width",
		"height", "diameter", "diameter2", "condition", "keep-free",
	}
)

// Fields are the names of every field that the form posts, in no order that
// matters.
func Fields() []string {
	fields := slices.Clone(jobFields)
	for _, part := range (FormPage{}).Parts() {
		for _, name := range partFields {
			fields = append(fields, part.Prefix+name)
		}
	}
	return fields
}

// Anchor is where a problem's field stands on the page; "" for a problem of
// the whole job, or of a field that the form does not have.
func (p Problem) Anchor() string {
	if slices.Contains(Fields(), p.Field) {
		return "#" + p.Field
	}
	return ""
}

// Label names a field to somebody who reads a problem away from it.
func (p Problem) Label() string {
	name := p.Field
	for _, part := range (FormPage{}).Parts() {
		if rest, ok := strings.CutPrefix(name, part.Prefix); ok {
			return words(strings.TrimSuffix(part.Prefix, "-")[:4]) + " " + string(rune('1'+part.Index)) + ", " + strings.ReplaceAll(rest, "-", " ")
		}
	}
	return words(name)
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
	for _, part := range (FormPage{}).Parts() {
		v[part.Prefix+"count"] = "1"
		v[part.Prefix+"shape"] = "measured"
		v[part.Prefix+"condition"] = "loose"
	}
	return Form{Values: v}
}
