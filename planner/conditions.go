package planner

import (
	"fmt"
	"slices"
	"strings"

	"coatwright/planner/library"
	q "coatwright/quantity"
)

// conditions looks at the room with every film in turn, and at what else the
// painter must know before starting.
func (b *builder) conditions(steps []Step) []Condition {
	out := []Condition{}
	add := func(level, note, format string, args ...any) {
		c := Condition{Level: level, What: fmt.Sprintf(format, args...), Note: note}
		if !slices.Contains(out, c) {
			out = append(out, c)
		}
	}
	for _, s := range steps {
		slug, ok := strings.CutPrefix(s.Material, "material/")
		if !ok || s.Coats == 0 {
			continue
		}
		m := b.lib.Materials[slug]
		b.roomFor(m, add)
		if sag := m.Sag.Micrometres(); s.WetUm > sag {
			add("care", s.Material, "One coat of %s lies %.0f um wet; above %.0f um it runs. Lay it in thinner coats.", lowerFirst(m.Title), s.WetUm, sag)
		}
	}
	if len(out) == 0 {
		r := b.job.Room
		add("go", "", "The room suits every film: %.1f C, %.0f %% humidity, the part %.1f C above the dew point.",
			r.Temperature.Celsius(), r.Humidity.Percent(), float64(r.Surface-r.DewPoint()))
	}
	out = append(out, b.closed...)
	for _, g := range b.groups {
		if r := g.route; r.Least < r.Cost {
			add("care", "", "The notes offer more ways than could be compared: for %s a plan of up to %.0f %% less work may exist.", strings.Join(g.names(), ", "), 100*(1-r.Least/r.Cost))
		}
	}
	for _, g := range b.groups {
		for _, mind := range g.substrate.Mind {
			add("care", "substrate/"+g.substrate.Slug, "%s: %s", g.substrate.Title, mind)
		}
	}
	return out
}

// roomFor compares the room with what a material asks for. Within its range but
// in the outer tenth of it is "care".
func (b *builder) roomFor(m *library.Material, add func(level, note, format string, args ...any)) {
	r, note, title := b.job.Room, "material/"+m.Slug, lowerFirst(m.Title)
	if level := grade(m.Air.Air, r.Temperature); level != "go" {
		add(level, note, "The air is %.1f C; %s wants %.0f to %.0f C.", r.Temperature.Celsius(), title, m.Air.Air.Low.Celsius(), m.Air.Air.High.Celsius())
	}
	if level := grade(m.Air.Humidity, r.Humidity); level != "go" {
		add(level, note, "The air has %.0f %% humidity; %s wants %.0f to %.0f %%.", r.Humidity.Percent(), title, m.Air.Humidity.Low.Percent(), m.Air.Humidity.High.Percent())
	}
	if over := q.Difference(r.Surface - r.DewPoint()); over < m.Air.OverDewPoint {
		add("no", note, "The part is %.1f C above the dew point; %s wants at least %.0f C. Warm the part or dry the air.", float64(over), title, float64(m.Air.OverDewPoint))
	}
}

func grade[Q q.Quantity](r q.Range[Q], x Q) string {
	edge := (r.High - r.Low) / 10
	switch {
	case !r.Holds(x):
		return "no"
	case r.Low > 0 && x < r.Low+edge || x > r.High-edge:
		return "care"
	}
	return "go"
}
