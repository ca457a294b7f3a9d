package planner

import (
	"maps"
	"slices"

	"coatwright/planner/library"
	"coatwright/strictyaml"
)

// word reads a slug or listed word; list picks the valid ones from a library.
func (r jobReader) word(v *strictyaml.Value, what string, list func(*library.Library) []string) string {
	if r.lib == nil {
		return v.Text()
	}
	return v.OneOf(what, list(r.lib))
}

// wordList reads one slug or listed word, or a list of them.
func (r jobReader) wordList(v *strictyaml.Value, what string, list func(*library.Library) []string) []string {
	switch {
	case r.lib != nil:
		words := v.WordOrWords(what, list(r.lib))
		if v.IsList() && len(v.List()) == 0 {
			v.Fail(what, "")
		}
		return words
	case v.IsList():
		return v.Texts()
	}
	return []string{v.Text()}
}

func systems(l *library.Library) []string     { return names(l.Words.Systems) }
func forms(l *library.Library) []string       { return names(l.Words.Forms) }
func effects(l *library.Library) []string     { return slices.Sorted(maps.Keys(l.Effects)) }
func finishes(l *library.Library) []string    { return slices.Sorted(maps.Keys(l.Finishes)) }
func designKinds(l *library.Library) []string { return slices.Sorted(maps.Keys(l.Designs)) }
func substrates(l *library.Library) []string {
	return slices.Sorted(maps.Keys(l.Substrates))
}

func care(l *library.Library) []string {
	var out []string
	for _, c := range l.Words.Care {
		out = append(out, c.Name)
	}
	return out
}

func applicators(l *library.Library) []string {
	var out []string
	for slug, t := range l.Tools {
		if t.Applicator != nil {
			out = append(out, slug)
		}
	}
	slices.Sort(out)
	return out
}

func names(words []library.Word) []string {
	var out []string
	for _, w := range words {
		out = append(out, w.Name)
	}
	return out
}
