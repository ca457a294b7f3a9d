package planner_test

import (
	"slices"
	"strings"
	"testing"

	"coatwright/planner"
	"coatwright/planner/film"
	"coatwright/planner/library"
	q "coatwright/quantity"
)

// solid is a plan of a plain colour.
func solid(tb testing.TB, lib *library.Library, ground string) *planner.Plan {
	tb.Helper()
	document := combination("bare-steel", "solid-colour", "gloss", "two-pack", "hvlp-gun", "0.3 m2", "")
	p := plan(tb, strings.Replace(document, `ground: "#8a8d90"`, `ground: "`+ground+`"`, 1), lib)
	if p.Refused != nil {
		tb.Fatal(p.Refused)
	}
	return p
}

func saysOfHiding(p *planner.Plan) []string {
	var out []string
	for _, c := range p.Conditions {
		if c.Note == "background/hiding" {
			out = append(out, c.Level+": "+c.What)
		}
	}
	return out
}

// Of a white that takes no light, Kubelka and Munk's solution is R = (Rg + SX (1 -
// Rg)) / (1 + SX (1 - Rg)). Worked independently over a card of 0 and 80 %: with
// 95 % at one coat of 15 um, two coats come to 98.35 %; with 90 % two come to
// 96.30 % and three to 98.08 %. What is darker hides sooner.
func TestHidingIsSaid(t *testing.T) {
	for _, c := range []struct {
		ground string
		ratio  q.Fraction
		want   []string
	}{
		{"#ffffff", 0.95, nil},
		{"#8a8d90", 0.90, nil},
		{"#000000", 0.60, nil},
		{"#ffffff", 0.90, []string{"care: 2 coats of waterborne ground in this colour hide 96.3 % of a black and white card, and 3 would hide it fully. Over one even shade near to its own that is enough."}},
	} {
		lib := builtIn(t)
		m := *lib.Materials["waterborne-ground"]
		m.Hides.Ratio = c.ratio
		lib.Materials[m.Slug] = &m
		if got := saysOfHiding(solid(t, lib, c.ground)); !slices.Equal(got, c.want) {
			t.Errorf("%s at %v: %q, want %q", c.ground, c.ratio, got, c.want)
		}
	}
}

// What hides without scattering, or is not known, is not judged.
func TestHidingIsNotSaid(t *testing.T) {
	lib := builtIn(t)
	ground, flakes, candy := lib.Materials["waterborne-ground"], lib.Materials["fine-metallic"], lib.Materials["candy-concentrate"]
	for _, c := range []struct {
		m    *library.Material
		tint string
		ok   bool
	}{{ground, "#ffffff", true}, {ground, "", false}, {ground, "red", false}, {flakes, "#ffffff", false}, {candy, "#ffffff", false}, {nil, "#ffffff", false}} {
		if _, ok := planner.HidingOf(c.m, c.tint); ok != c.ok {
			t.Errorf("%v in %q: known %v, want %v", c.m, c.tint, ok, c.ok)
		}
	}
	if h, _ := planner.HidingOf(ground, "#000000"); h.Reflectivity != film.Blackest {
		t.Errorf("black reflects %v, want %v", h.Reflectivity, film.Blackest)
	}
	if h, _ := planner.HidingOf(ground, "#ffffff"); h.Reflectivity < 1-1e-12 || h.Reflectivity > 1 {
		t.Errorf("white reflects %v, want all", h.Reflectivity)
	}
}

func BenchmarkHiding(b *testing.B) {
	m := builtIn(b).Materials["waterborne-ground"]
	for b.Loop() {
		h, ok := planner.HidingOf(m, "#e9e2d0")
		if _, err := h.Coats(m.Build, h.Over); err != nil || !ok {
			b.Fatal(err)
		}
	}
}
