package main

import (
	"fmt"
	"strings"

	"coatwright/content"
	"coatwright/planner/library"
	"coatwright/web"
)

// figures is the numbers of a note's front matter, for its margin, and what
// they rest on.
func (s *site) figures(n *content.Note) (figures []web.Figure, standing string) {
	lib := s.notes.Planner()
	switch n.Kind {
	case "material":
		return materialFigures(lib, lib.Materials[n.Slug]), startingValue
	case "substrate":
		return substrateFigures(lib.Substrates[n.Slug]), startingValue
	case "finish":
		g := lib.Finishes[n.Slug].Gloss
		return []web.Figure{{Name: "Gloss", Value: fmt.Sprintf("%.0f to %.0f GU at 60°", float64(g.Low), float64(g.High))}}, startingValue
	case "step":
		return stepFigures(lib.Steps[n.Slug]), commonPractice
	case "tool":
		if a := lib.Tools[n.Slug].Applicator; a != nil {
			return applicatorFigures(lib.Words.Forms, a), commonPractice
		}
	}
	return nil, ""
}

const (
	startingValue  = "starting value: your data sheet wins"
	commonPractice = "common practice"
)

// table gathers figures.
type table struct{ rows []web.Figure }

func (t *table) add(given bool, name, format string, args ...any) {
	if given {
		t.rows = append(t.rows, web.Figure{Name: name, Value: fmt.Sprintf(format, args...)})
	}
}

func materialFigures(lib *library.Library, m *library.Material) []web.Figure {
	t := &table{}
	t.add(true, "Density", "%.2f kg/L", float64(m.Density)/1000)
	t.add(m.SolidsByVolume > 0, "Solids by volume", "%.0f %%", m.SolidsByVolume.Percent())
	t.add(m.VOC > 0, "VOC", "%.0f g/L", float64(m.VOC))
	t.add(m.Build > 0, "Dry film of a coat", "%.0f µm", m.Build.Micrometres())
	t.add(m.Coats > 0, "Coats", "%d", m.Coats)
	t.add(!m.Gloss.IsZero(), "Gloss at 60°", "%.0f to %.0f GU", float64(m.Gloss.Low), float64(m.Gloss.High))
	t.add(!m.Key.IsZero(), "Key wanted", "P%.0f to P%.0f", float64(m.Key.Low), float64(m.Key.High))
	t.add(m.Stand > 0, "Stands after mixing", "%s", m.Stand)
	t.add(m.PotLife > 0, "Pot life", "%s", m.PotLife)
	t.add(m.Strain > 0, "Strainer", "%.0f µm", m.Strain.Micrometres())
	t.add(len(m.Dries) > 0, "Times below are at", "23 °C, 50 %% humidity, still air")
	for _, w := range lib.Words.Dryness {
		if d, ok := m.Dries[w.Name]; ok {
			t.add(true, upperFirst(strings.ReplaceAll(w.Name, "-", " ")), "%s", dryingText(d))
		}
	}
	t.add(!m.Air.Air.IsZero(), "Air", "%.0f to %.0f °C", m.Air.Air.Low.Celsius(), m.Air.Air.High.Celsius())
	t.add(!m.Air.Humidity.IsZero(), "Humidity", "%.0f to %.0f %%", m.Air.Humidity.Low.Percent(), m.Air.Humidity.High.Percent())
	return t.rows
}

// dryingText is a drying time at the reference air, what paces it, and when its
// window closes.
func dryingText(d library.Drying) string {
	text := fmt.Sprintf("%s, by %s", d.In, d.By)
	if d.Closes > 0 {
		text += "; closes after " + d.Closes.String()
	}
	return text
}

func substrateFigures(s *library.Substrate) []web.Figure {
	t := &table{}
	t.add(true, "Heat limit", "%.0f °C", s.HeatLimit.Celsius())
	t.add(s.SurfaceEnergy.High > 0, "Surface energy", "%.0f to %.0f mJ/m²", float64(s.SurfaceEnergy.Low)*1000, float64(s.SurfaceEnergy.High)*1000)
	t.add(true, "Is", "%s", strings.Join(s.Traits, ", "))
	return t.rows
}

func stepFigures(s *library.Step) []web.Figure {
	t := &table{}
	t.add(s.Work.Fixed > 0, "Work, whatever the size", "%s", s.Work.Fixed)
	t.add(s.Work.PerArea > 0, "Work for a square metre", "%.0f min", float64(s.Work.PerArea)/60)
	t.add(s.Stands.In > 0, "Stands afterwards", "%s", dryingText(s.Stands))
	for _, l := range s.Gives {
		t.add(!l.Number.IsZero(), upperFirst(l.Fact), "P%.0f to P%.0f", float64(l.Number.Low), float64(l.Number.High))
		t.add(s.Lasts[l.Fact] > 0, upperFirst(l.Fact)+" lasts", "%s", s.Lasts[l.Fact])
	}
	return t.rows
}

func applicatorFigures(forms []library.Word, a *library.Applicator) []web.Figure {
	t := &table{}
	t.add(true, "Pressure at the inlet", "%.0f to %.0f kPa", a.Pressure.Low.Kilopascals(), a.Pressure.High.Kilopascals())
	for _, w := range forms {
		r := a.Transfer[w.Name]
		t.add(true, "Lands on a "+w.Name, "%.0f to %.0f %%", r.Low.Percent(), r.High.Percent())
	}
	t.add(true, "Cup", "%.0f mL", a.Cup.Millilitres())
	t.add(true, "Stays in cup and passages", "%.0f mL", a.Loss.Millilitres())
	t.add(true, "One coat on a square metre", "%.0f min", float64(a.Pace)/60)
	return t.rows
}
