package workout

import (
	"cmp"
	"maps"
	"slices"
	"strings"

	"coatwright/planner"
	"coatwright/planner/library"
	"coatwright/planner/room"
)

// asAgreed is chosen for the films of an effect and a finish.
const asAgreed = "as-agreed"

// filmsFields ask for films: those of an effect and a finish in a system, or up to
// four materials.
func filmsFields(e *Entry) []Field {
	materials := sprayedChoices(e.lib, func(m *library.Material) bool { return m.Role != "" && !m.Air.Air.IsZero() })
	first := append([]Choice{{Value: asAgreed, Title: "Those of an effect and a finish"}}, materials...)
	fields := []Field{{Key: "films", Label: "Films", Choices: first, Default: asAgreed}}
	if e.choice("films", asAgreed) == asAgreed {
		effects, finishes, systems := effectChoices(e.lib), finishChoices(e.lib), systemChoices(e.lib)
		return append(fields,
			Field{Key: "effect", Label: "Effect", Choices: effects, Default: firstOf(effects)},
			Field{Key: "finish", Label: "Finish", Choices: finishes, Default: firstOf(finishes)},
			Field{Key: "system", Label: "Paint system", Choices: systems, Default: firstOf(systems)})
	}
	others := append([]Choice{{Title: "nothing else"}}, materials...)
	for _, key := range otherFilms {
		fields = append(fields, Field{Key: key, Label: "and", Choices: others, Optional: true})
	}
	return fields
}

// otherFilms are the fields of the films beside the first.
var otherFilms = []string{"second", "third", "fourth"}

func effectChoices(lib *library.Library) []Choice {
	return titled(lib.Effects, func(x *library.Effect) string { return x.Title })
}

func finishChoices(lib *library.Library) []Choice {
	return titled(lib.Finishes, func(f *library.Finish) string { return f.Title })
}

// titled are notes as choices, by title.
func titled[N any](notes map[string]N, title func(N) string) []Choice {
	var out []Choice
	for slug, n := range notes {
		out = append(out, Choice{Value: slug, Title: title(n)})
	}
	slices.SortFunc(out, func(a, b Choice) int {
		return cmp.Or(strings.Compare(a.Title, b.Title), strings.Compare(a.Value, b.Value))
	})
	return out
}

// systemChoices are the systems that are not for any other.
func systemChoices(lib *library.Library) []Choice {
	var out []Choice
	for _, w := range lib.Words.Systems {
		if !slices.Contains(lib.Words.AnySystem, w.Name) {
			out = append(out, Choice{Value: w.Name, Title: capital(spaced(w.Name))})
		}
	}
	return out
}

// readFilms reads the films, each once.
func readFilms(e *Entry) []*library.Material {
	var out []*library.Material
	add := func(m *library.Material) {
		if m != nil && !slices.Contains(out, m) {
			out = append(out, m)
		}
	}
	if films := e.text("films"); films != asAgreed {
		add(e.lib.Materials[films])
		for _, key := range otherFilms {
			if e.values["films"] != asAgreed && e.problems["films"] == "" {
				add(e.lib.Materials[e.text(key)])
			}
		}
		return out
	}
	effect, finish, system := e.lib.Effects[e.text("effect")], e.lib.Finishes[e.text("finish")], e.text("system")
	if effect == nil || finish == nil || !e.sound() {
		return nil
	}
	for _, f := range effect.Films {
		add(materialOf(e.lib, f, system, nil))
	}
	for _, f := range finish.Films {
		add(materialOf(e.lib, f, system, finish))
	}
	if len(out) == 0 {
		e.fail("system", "Found %q, expected a system that has films for this effect and finish.", system)
	}
	return out
}

// materialOf is what a film is laid with in a system: of several the first of the
// system's own, else the first that goes with any. For a finish it has its gloss.
// It is nil where the notes have none.
func materialOf(lib *library.Library, f library.Film, system string, finish *library.Finish) *library.Material {
	names := f.Materials
	if len(names) == 0 {
		names = slices.Sorted(maps.Keys(lib.Materials))
	}
	fits := func(m *library.Material) bool {
		if m == nil || m.Role != f.Role || !lib.Words.GoesWith(m.System, system) {
			return false
		}
		if finish == nil || finish.Gloss.IsZero() || m.Gloss.IsZero() {
			return true
		}
		_, meets := m.Gloss.Meets(finish.Gloss)
		return meets
	}
	var any *library.Material
	for _, name := range names {
		switch m := lib.Materials[name]; {
		case !fits(m):
		case m.System == system:
			return m
		case any == nil:
			any = m
		}
	}
	return any
}

// wantsOf is what films ask of a room.
func wantsOf(films []*library.Material) []room.Wants {
	var out []room.Wants
	for _, m := range films {
		out = append(out, planner.WantsOf(m))
	}
	return out
}
