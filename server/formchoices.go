package main

import (
	"maps"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"coatwright/planner"
	"coatwright/planner/colour"
	"coatwright/planner/library"
	"coatwright/web"
)

// choices are what the form offers, from the notes.
func (s *site) choices() web.Choices {
	lib := s.notes.Planner()
	choice := func(kind, slug string) web.Choice {
		n := s.notes.Note(kind + "/" + slug)
		return web.Choice{Value: slug, Title: n.Title, Says: firstSentence(n.Summary)}
	}
	var c web.Choices
	for _, slug := range slices.Sorted(maps.Keys(lib.Substrates)) {
		c.Substrates = append(c.Substrates, choice("substrate", slug))
	}
	for _, slug := range slices.Sorted(maps.Keys(lib.Effects)) {
		ch := choice("effect", slug)
		for _, f := range lib.Effects[slug].Films {
			ch.Roles, ch.Colours = append(ch.Roles, f.Role), append(ch.Colours, f.Colour)
			if m := candyIn(f, lib); m != nil {
				flat := planner.Returns(planner.UsualGround(m, lib)) == colour.Mirroring
				ch.Candy = web.CandySwatch{Over: m.Swatch.Over, Coats: m.Swatch.Coats, Flat: flat}
			}
		}
		c.Effects = append(c.Effects, ch)
	}
	for _, slug := range slices.Sorted(maps.Keys(lib.Finishes)) {
		ch := choice("finish", slug)
		ch.Gloss = float64(lib.Finishes[slug].Gloss.Middle())
		c.Finishes = append(c.Finishes, ch)
	}
	slices.SortStableFunc(c.Finishes, func(a, b web.Choice) int { return int(b.Gloss - a.Gloss) })
	for _, slug := range slices.Sorted(maps.Keys(lib.Tools)) {
		if lib.Tools[slug].Applicator != nil {
			c.Applicators = append(c.Applicators, choice("tool", slug))
		}
	}
	slices.SortStableFunc(c.Applicators, func(a, b web.Choice) int {
		return int(1e6 * (lib.Tools[b.Value].Applicator.Cup - lib.Tools[a.Value].Applicator.Cup))
	})
	for _, slug := range slices.Sorted(maps.Keys(lib.Designs)) {
		ch := choice("design", slug)
		for _, l := range lib.Designs[slug].Layers {
			ch.Colours = append(ch.Colours, l.Film.Colour)
		}
		c.Designs = append(c.Designs, ch)
	}
	c.Layers = layerChoices(c.Designs, lib)
	c.Systems = systemChoices(lib)
	for _, w := range lib.Words.Care {
		c.Care = append(c.Care, web.Choice{Value: w.Name, Title: upperFirst(w.Name), Says: w.Is})
	}
	for _, w := range lib.Words.Forms {
		c.Forms = append(c.Forms, web.Choice{Value: w.Name, Title: upperFirst(w.Name), Says: w.Is})
	}
	return c
}

// candyIn is the first material of a film that has a candy's swatch, nil for none.
func candyIn(f library.Film, lib *library.Library) *library.Material {
	for _, slug := range f.Materials {
		if m := lib.Materials[slug]; m.Swatch.Over != "" {
			return m
		}
	}
	return nil
}

// layerChoices are the optional layers of designs, each with the kinds that
// offer it, in the order in which the kinds name them.
func layerChoices(kinds []web.Choice, lib *library.Library) []web.Choice {
	var out []web.Choice
	for _, kind := range kinds {
		for _, l := range lib.Designs[kind.Value].Layers {
			if !l.Optional {
				continue
			}
			i := slices.IndexFunc(out, func(c web.Choice) bool { return c.Value == l.Name })
			if i < 0 {
				i = len(out)
				out = append(out, web.Choice{Value: l.Name, Title: upperFirst(l.Name)})
			}
			c := &out[i]
			c.Kinds = append(c.Kinds, kind.Value)
			c.Says = strings.TrimPrefix(c.Says+", "+strings.ToLower(kind.Title), ", ")
		}
	}
	return out
}

// systemChoices are the systems that some colour work is made of: the paint of
// a job, not what goes with any system.
func systemChoices(lib *library.Library) []web.Choice {
	var out []web.Choice
	for _, w := range lib.Words.Systems {
		for _, slug := range slices.Sorted(maps.Keys(lib.Materials)) {
			if m := lib.Materials[slug]; m.System == w.Name && m.Role != "" && !slices.Contains(lib.Words.AnySystem, m.System) {
				out = append(out, web.Choice{Value: w.Name, Title: upperFirst(w.Name), Says: w.Is})
				break
			}
		}
	}
	return out
}

func upperFirst(s string) string {
	if s == "" {
		return s
	}
	r, n := utf8.DecodeRuneInString(s)
	return string(unicode.ToUpper(r)) + s[n:]
}

func firstSentence(s string) string {
	if first, _, ok := strings.Cut(s, ". "); ok {
		return first + "."
	}
	return s
}
