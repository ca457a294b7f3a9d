package planner

import (
	"fmt"
	"slices"

	"coatwright/planner/colour"
	"coatwright/planner/film"
	"coatwright/planner/library"
	q "coatwright/quantity"
)

// HidingOf is how well a material hides in a colour, "#rrggbb", as its note says
// of a black and white card. It is not ok for one that does not hide, where no
// colour is known, and for flakes that lie flat: those hide as shingles do, and
// the theory is of grains that scatter.
func HidingOf(m *library.Material, tint string) (h film.Hiding, ok bool) {
	looks, err := colour.ParseScreen(tint)
	if m == nil || m.Hides.Ratio <= 0 || err != nil || slices.Contains(m.Traits, library.FlatFlakes) {
		return film.Hiding{}, false
	}
	reflects := q.Fraction(looks.XYZ().Y / 100)
	return film.Hiding{
		Ratio: m.Hides.Ratio, At: m.Hides.At, Over: film.TestChart,
		Reflectivity: min(max(reflects, film.Blackest), 1),
	}, true
}

// hiding remarks on films that let through what lies below in the coats that
// are planned. Those of designs are left out: what is below them is the
// customer's own choice, and a letter may be meant to be thin.
func (b *builder) hiding(steps []Step, add func(level, note, format string, args ...any)) {
	for _, s := range steps {
		m := b.laid(s)
		if m == nil || s.Design != "" {
			continue
		}
		h, ok := HidingOf(m, s.Colour)
		if !ok {
			continue
		}
		reached, err := h.Contrast(m.Build*q.Length(s.Coats), h.Over)
		takes, err2 := h.Coats(m.Build, h.Over)
		if err != nil || err2 != nil || takes <= s.Coats {
			continue
		}
		hide := fmt.Sprintf("%d coats of %s in this colour hide", s.Coats, lowerFirst(m.Title))
		if s.Coats == 1 {
			hide = fmt.Sprintf("1 coat of %s in this colour hides", lowerFirst(m.Title))
		}
		add("care", "background/hiding", "%s %s of a black and white card, and %d would hide it fully. Over one even shade near to its own that is enough.", hide, q.Show(q.Metric, reached), takes)
	}
}
