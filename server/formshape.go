package main

import (
	"cmp"
	"errors"
	"net/url"
	"strings"

	"github.com/goccy/go-yaml"

	"coatwright/planner"
	"coatwright/planner/area"
	q "coatwright/quantity"
	"coatwright/strictyaml"
	"coatwright/web"
)

// kindOf is the kind of shape that was chosen in a row of the form; that of an
// area already measured where none was.
func kindOf(form url.Values, prefix string) area.Kind {
	kind, ok := area.KindNamed(form.Get(prefix + "shape"))
	if !ok {
		kind = area.Kinds()[0]
	}
	return kind
}

// shapeOf is the shape of a part as a job document has it, nil for a part whose
// area was measured.
func shapeOf(form url.Values, prefix string) yaml.MapSlice {
	kind := kindOf(form, prefix)
	if kind.Key == area.Kinds()[0].Key {
		return nil
	}
	measures := measuresOf(form, prefix, kind.Measures)
	if kind.Bare() {
		return measures
	}
	return yaml.MapSlice{{Key: kind.Key, Value: measures}}
}

// measuresOf are the measures that were filled in under their keys, those of a
// group under the key of both. Lines that cannot be read stand as they are, for
// the reader of the document to refuse: see lineFault.
func measuresOf(form url.Values, prefix string, measures []area.Measure) yaml.MapSlice {
	out := yaml.MapSlice{}
	for _, m := range measures {
		text := strings.TrimSpace(form.Get(prefix + m.Key))
		switch m.Of() {
		case "group":
			out = append(out, yaml.MapItem{Key: m.Key, Value: measuresOf(form, prefix+m.Key+"-", m.Parts)})
		case "tubes", "shapes":
			if items, err := area.Items(m, text); err != nil {
				out = append(out, yaml.MapItem{Key: m.Key, Value: text})
			} else if len(items) > 0 || !m.Optional {
				out = append(out, yaml.MapItem{Key: m.Key, Value: items})
			}
		default:
			put(&out, form, m.Key, prefix+m.Key)
		}
	}
	return out
}

// fillShape fills the fields of a row with the shape of a part of a saved job.
func fillShape(values map[string]string, prefix string, shape map[string]any) {
	for key, measured := range shape {
		kind, ok := area.KindNamed(key)
		if !ok {
			continue
		}
		values[prefix+"shape"] = key
		if kind.Bare() {
			measured = shape
		}
		inner, _ := measured.(map[string]any)
		fillMeasures(values, prefix, kind.Measures, inner)
	}
}

func fillMeasures(values map[string]string, prefix string, measures []area.Measure, written map[string]any) {
	for _, m := range measures {
		v, ok := written[m.Key]
		if !ok {
			continue
		}
		switch inner := v.(type) {
		case map[string]any:
			fillMeasures(values, prefix+m.Key+"-", m.Parts, inner)
		case []any:
			values[prefix+m.Key] = area.Text(m, inner)
		default:
			values[prefix+m.Key], _ = fieldText(v)
		}
	}
}

// shapePlace is where in a row of the form a place below the part leads:
// "shape.frame.tubes[1].length" to the second item of the field "tubes". Not ok
// for what is not of the shape.
func shapePlace(path string) (at area.Place, ok bool) {
	way, ok := strings.CutPrefix(path, "shape")
	if !ok {
		return area.Place{}, false
	}
	way = strings.TrimPrefix(way, ".")
	key, below, _ := strings.Cut(way, ".")
	key, _, _ = strings.Cut(key, "[")
	if kind, known := area.KindNamed(key); !known || !kind.Bare() {
		way = below
	}
	at = area.PlaceOf(way)
	at.Field = cmp.Or(at.Field, "shape")
	return at, true
}

// areasOf are the areas of the parts of a form whose shapes can be read, by the
// names of their rows.
func areasOf(filled web.Form) map[string]q.Area {
	form, areas := url.Values{}, map[string]q.Area{}
	for name, text := range filled.Values {
		form.Set(name, text)
	}
	for _, r := range (web.FormPage{}).Parts() {
		shape := shapeOf(form, r.Prefix)
		if shape == nil {
			continue
		}
		document, err := yaml.MarshalWithOptions(yaml.MapSlice{{Key: "shape", Value: shape}}, yaml.JSON())
		if err != nil {
			continue
		}
		if s, err := planner.ParseShape("the form", document); err == nil {
			areas[r.Name] = s.Area()
		}
	}
	return areas
}

// message says a problem of the job document to somebody who filled in the form:
// of a list on which line it is.
func (r rows) message(form url.Values, p *strictyaml.Problem) string {
	row, rest, _ := r.row(p.Path)
	at, ok := shapePlace(rest)
	if !ok {
		return messageOf(p)
	}
	text := form.Get(row + "-" + at.Field)
	if err := listError(kindOf(form, row+"-"), at.Field, text); err != nil {
		return sentence(err.Told(text))
	}
	message := messageOf(p)
	if line := at.Says(text); line != "" {
		return upperFirst(line) + ": " + strings.ToLower(message[:1]) + message[1:]
	}
	return message
}

// listError is what is wrong with the lines of a list of a kind of shape, nil
// where they can be read, and for a field that is no list.
func listError(kind area.Kind, field, text string) *area.Error {
	var wrong *area.Error
	for _, m := range kind.Measures {
		if m.Key == field && (m.Of() == "tubes" || m.Of() == "shapes") {
			_, err := area.Items(m, text)
			errors.As(err, &wrong)
		}
	}
	return wrong
}
