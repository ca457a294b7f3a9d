package area

import (
	"fmt"
	"strings"
)

// Text is the list m as Items reads it, a line for each item: those of a job
// document that was read as maps, lists and what stands in them.
func Text(m Measure, items []any) string {
	return strings.Join(textOf(m, items), "\n")
}

func textOf(m Measure, items []any) []string {
	var lines []string
	for _, item := range items {
		lines = append(lines, lineOf(m, written(item)))
	}
	return lines
}

// lineOf is one item of a list.
func lineOf(m Measure, item map[string]any) string {
	if m.Of() == "tubes" {
		return line("", m.Parts, item, item["count"])
	}
	for _, key := range m.Shapes {
		v, is := item[key]
		if !is {
			continue
		}
		kind, _ := KindNamed(key)
		if kind.Bare() {
			return line("", kind.Measures, item, item["count"])
		}
		return line(key, kind.Measures, written(v), item["count"])
	}
	return ""
}

// line is what was written of measures: those that are needed, how many there
// are, and by its name whatever else was written.
func line(key string, measures []Measure, item map[string]any, count any) string {
	var first string
	var named []string
	for _, m := range measures {
		v, is := item[m.Key]
		switch {
		case !is || m.Key == "count":
		case m.Key == "to":
			first = strings.TrimSuffix(first, " "+unitOf(fmt.Sprint(v))) + fmt.Sprintf(" to %v", v)
		case m.stands():
			first += fmt.Sprintf(" x %v", v)
		case m.list():
			items, _ := v.([]any)
			named = append(named, fmt.Sprintf("%s (%s)", m.Key, strings.Join(textOf(m, items), "; ")))
		case m.Into == nil:
			named = append(named, fmt.Sprintf("%s (%s)", m.Key, line("", m.Parts, written(v), nil)))
		case v == true || v == "yes":
			named = append(named, strings.ReplaceAll(m.Key, "-", " "))
		default:
			named = append(named, fmt.Sprintf("%s %v", strings.ReplaceAll(m.Key, "-", " "), v))
		}
	}
	if count != nil {
		first += fmt.Sprintf(" x %v", count)
	}
	if len(heads(measures, "")) > 0 {
		first = strings.TrimPrefix(first, " x ")
	}
	head := strings.TrimSpace(key + " " + strings.TrimSpace(first))
	return strings.Join(append([]string{head}, named...), ", ")
}

// written is a mapping, whichever way it was read.
func written(v any) map[string]any {
	switch v := v.(type) {
	case Item:
		return v
	case map[string]any:
		return v
	}
	return nil
}
