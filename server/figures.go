package main

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"coatwright/content"
	"coatwright/planner/library"
	q "coatwright/quantity"
	"coatwright/web"
)

// figures is the numbers of a note's front matter, for its margin, and what
// they rest on.
func (s *site) figures(n *content.Note, units *q.System) (figures []web.Figure, standing string) {
	lib, t := s.notes.Planner(), &table{units: units}
	switch n.Kind {
	case "material":
		m := lib.Materials[n.Slug]
		t.material(lib, m)
		return t.rows, lib.Words.StandingOf(m.Standing).Name
	case "substrate":
		t.substrate(lib.Substrates[n.Slug])
		return t.rows, startingValue
	case "finish":
		t.add(true, "Gloss at 60°", q.ShowRange(units, lib.Finishes[n.Slug].Gloss))
		return t.rows, startingValue
	case "step":
		t.step(lib.Steps[n.Slug])
		return t.rows, commonPractice
	case "tool":
		t.tool(lib.Words.Forms, lib.Tools[n.Slug])
		return t.rows, commonPractice
	}
	return nil, ""
}

const (
	startingValue  = "starting value: your data sheet wins"
	commonPractice = "common practice"
)

// table gathers figures in the reader's units.
type table struct {
	units *q.System
	rows  []web.Figure
}

func (t *table) add(given bool, name, value string) {
	if given {
		t.rows = append(t.rows, web.Figure{Name: name, Value: value})
	}
}

// figure adds a quantity, if there is one.
func figure[Q q.Quantity](t *table, name string, v Q) { t.add(v > 0, name, q.Show(t.units, v)) }

// span adds a range, if there is one.
func span[Q q.Quantity](t *table, name string, r q.Range[Q]) {
	t.add(!r.IsZero(), name, q.ShowRange(t.units, r))
}

func (t *table) material(lib *library.Library, m *library.Material) {
	figure(t, "Density", m.Density)
	figure(t, "Solids by volume", m.SolidsByVolume)
	figure(t, "VOC", m.VOC)
	figure(t, "Water, by volume", m.Water)
	if i := slices.IndexFunc(lib.Words.Categories, func(c library.Category) bool { return c.Name == m.Category }); i >= 0 {
		c := lib.Words.Categories[i]
		t.add(true, "VOC limit, EU, as "+strings.ReplaceAll(c.Name, "-", " "), q.Show(t.units, c.Limit))
	}
	figure(t, "Vapour of its solvent burns from", m.Vapour.LEL)
	figure(t, "Dry film of a coat", m.Build)
	figure(t, "Wet film that sags", m.Sag)
	t.add(m.Coats > 0, "Coats", strconv.Itoa(m.Coats))
	t.add(m.Hides.Ratio > 0, "Contrast ratio", q.Show(t.units, m.Hides.Ratio)+" at "+q.Show(t.units, m.Hides.At)+" dry")
	span(t, "Viscosity, ready to spray", m.Viscosity)
	span(t, "Gloss at 60°", m.Gloss)
	t.add(!m.Key.IsZero(), "Key wanted", grits(m.Key))
	t.add(m.Stand > 0, "Stands after mixing", m.Stand.String())
	t.add(m.PotLife > 0, "Pot life", m.PotLife.String())
	figure(t, "Strainer", m.Strain)
	t.add(len(m.Dries) > 0, "Times below are at", t.units.Text("23 °C")+", 50 % humidity, still air")
	for _, w := range lib.Words.Dryness {
		if d, ok := m.Dries[w.Name]; ok {
			t.add(true, upperFirst(strings.ReplaceAll(w.Name, "-", " ")), dryingText(d))
		}
	}
	t.forced(m.Forced)
	span(t, "Air", m.Air.Air)
	span(t, "Humidity", m.Air.Humidity)
	figure(t, "Surface above the dew point", m.Air.OverDewPoint)
}

// forced says what may hurry a film along.
func (t *table) forced(f library.Forced) {
	switch {
	case f == library.Forced{}:
		return
	case f.Heat > 0:
		t.add(true, "Warmth", "once it has flashed off, up to "+q.Show(t.units, f.Heat)+" on the part")
	default:
		t.add(true, "Warmth", "no direct heat")
	}
	t.add(f.Air, "Moving air", "yes")
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

func (t *table) substrate(s *library.Substrate) {
	figure(t, "Heat limit", s.HeatLimit)
	span(t, "Surface energy", s.SurfaceEnergy)
	t.add(true, "Is", strings.Join(s.Traits, ", "))
}

func (t *table) step(s *library.Step) {
	t.add(s.Work.Fixed > 0, "Work, whatever the size", s.Work.Fixed.String())
	figure(t, "Work for its area", s.Work.PerArea)
	t.add(s.Stands.In > 0, "Stands afterwards", dryingText(s.Stands))
	for _, l := range s.Gives {
		t.add(!l.Number.IsZero(), upperFirst(l.Fact), grits(l.Number))
		t.add(s.Lasts[l.Fact] > 0, upperFirst(l.Fact)+" lasts", s.Lasts[l.Fact].String())
	}
}

func grits(r q.Range[q.Grit]) string {
	return fmt.Sprintf("P%.0f to P%.0f", float64(r.Low), float64(r.High))
}

func (t *table) tool(forms []library.Word, tool *library.Tool) {
	if a := tool.Applicator; a != nil {
		t.applicator(forms, a)
	}
	figure(t, "Step", tool.Resolution)
	if w := tool.Wear; w.Piece != "" {
		t.add(w.Fixed > 0, "Used up in a step", fmt.Sprintf("%g %s", w.Fixed, w.Piece))
		t.add(w.PerArea > 0, "... and for its area", q.Show(t.units, w.PerArea)+" ("+w.Piece+")")
	}
}

func (t *table) applicator(forms []library.Word, a *library.Applicator) {
	span(t, "Pressure at the inlet", a.Pressure)
	span(t, "Free air, trigger pulled", a.Air)
	span(t, "Paint, trigger pulled", a.Flow)
	for _, w := range forms {
		span(t, "Lands on a "+w.Name, a.Transfer[w.Name])
	}
	figure(t, "Cup", a.Cup)
	figure(t, "Stays in cup and passages", a.Loss)
	figure(t, "One coat, for its area", a.Pace)
	span(t, "Fan or cone", a.Fan)
	span(t, "Distance", a.Distance)
	span(t, "Overlap", a.Overlap)
	span(t, "Pace of the hand", a.Speed)
}
