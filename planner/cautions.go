package planner

import (
	"maps"
	"slices"

	"coatwright/planner/library"
)

// cautionSlugs is the cautions of a step, of the materials at hand and of the
// applicator.
func (b *builder) cautionSlugs(it *item) []string {
	all := slices.Clone(it.step.Cautions)
	for _, g := range b.groupsOf(it) {
		if !it.bench() && it.film.Material == nil && slices.ContainsFunc(it.step.Cautions, func(c string) bool { return slices.Contains(b.groups[g].substrate.Cautions, c) }) {
			all = append(all, b.groups[g].substrate.Cautions...)
		}
	}
	for _, u := range it.step.Uses {
		if u.Material != "" {
			all = append(all, b.lib.Materials[u.Material].Cautions...)
		}
	}
	if m := it.atHand(); m != nil {
		all = append(all, b.filmCautions(it, m)...)
	}
	slices.Sort(all)
	return slices.Compact(all)
}

// filmCautions: whoever mixes, sprays or flushes a film meets all of its parts.
func (b *builder) filmCautions(it *item, m *library.Material) []string {
	all := slices.Clone(m.Cautions)
	for _, p := range m.Mix {
		all = append(all, b.lib.Materials[slugOf(m, p.Part)].Cautions...)
	}
	if it.step.Cleans {
		all = append(all, b.lib.Materials[m.CleanWith].Cautions...)
	}
	if !it.film.IsZero() {
		all = append(all, it.film.Tool.Applicator.Cautions...)
	}
	return all
}

// cautions is every danger that some step meets, and where. Where a caution's
// note has gone, the words of known stand.
func cautions(steps []Step, lib *library.Library, known []Caution) []Caution {
	at := map[string][]string{}
	for _, s := range steps {
		for _, c := range s.Cautions {
			at[c] = append(at[c], s.ID)
		}
	}
	out := []Caution{}
	for _, slug := range slices.Sorted(maps.Keys(at)) {
		c := Caution{Note: "caution/" + slug, Title: slug}
		if i := slices.IndexFunc(known, func(o Caution) bool { return o.Note == c.Note }); i >= 0 {
			c = known[i]
		} else if note := lib.Cautions[slug]; note != nil {
			c.Title, c.Says = note.Title, note.Says
		}
		c.Steps = at[slug]
		out = append(out, c)
	}
	return out
}
