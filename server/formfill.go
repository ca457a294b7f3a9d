package main

import (
	"errors"
	"fmt"
	"strings"

	"github.com/goccy/go-yaml"

	"coatwright/web"
)

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
		fillShape(form.Values, prefix, nested(part, "shape"))
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
	case bool:
		if v {
			return "yes", true
		}
		return "no", true
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
