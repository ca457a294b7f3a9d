package web

import (
	"fmt"
	"html/template"
	"math"
	"strconv"
	"strings"

	"coatwright/planner"
	q "coatwright/quantity"
	"coatwright/workout"
)

// measures are what the templates may call to show a figure in the units of s.
// A plan holds its figures in um, mL, g, kPa and mm.
func measures(s *q.System) template.FuncMap {
	return template.FuncMap{
		"um":      func(x float64) string { return q.Show(s, q.Length(x*1e-6)) },
		"mm":      func(x float64) string { return q.Show(s, q.Length(x*1e-3)) },
		"mL":      func(x float64) string { return q.Show(s, q.Volume(x*1e-6)) },
		"grams":   func(x float64) string { return q.Show(s, q.Mass(x*1e-3)) },
		"kPa":     func(x float64) string { return q.Show(s, q.Pressure(x*1e3)) },
		"gPerL":   func(x float64) string { return q.Show(s, q.Concentration(x)) },
		"cup":     func(m *planner.Mix) template.HTML { return cupSVG(mixLevels(m, s), 0) },
		"card":    func(c *workout.Card) template.HTML { return cupSVG(cardLevels(c, s), float64(c.Holds)) },
		"poured":  func(m *planner.Mix, ml float64) string { return m.Poured(s, ml) },
		"weighed": func(m *planner.Mix, g float64) string { return m.Weighed(s, g) },
		"chart":   func(c *workout.Chart) template.HTML { return chartSVG(c, s) },
		"value":   s.Show,
		"how":     how,
		"pourKey": func(key string, place int) string { return fmt.Sprintf("%s-%d", key, place+1) },
		"seconds": func(x float64) string { return strconv.FormatFloat(math.Round(x), 'f', -1, 64) },
		"useKey":  func(note string) string { return "use-" + strings.TrimPrefix(note, "material/") },
		"percent": func(x float64) string { return q.Show(s, q.Fraction(x/100)) },
		"cell":    func(x any) string { return cell(s, x) },
		"text":    s.Text,
		"prose":   func(html template.HTML) template.HTML { return template.HTML(q.HTML(string(html), s.Annotate)) },
	}
}

// cell writes what stands in a table: a value in the units of s, or a text.
func cell(s *q.System, x any) string {
	if v, is := x.(q.Value); is {
		return s.Show(v)
	}
	return s.Text(fmt.Sprint(x))
}

// how writes a figure as a link to what explains it.
func how(at, figure string) template.HTML {
	text := template.HTMLEscapeString(figure)
	if at == "" {
		return template.HTML(text)
	}
	return template.HTML(`<a class="how" href="` + template.HTMLEscapeString(at) + `">` + text + `</a>`)
}
