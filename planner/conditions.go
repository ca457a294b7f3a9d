package planner

import (
	"fmt"
	"slices"
	"strings"

	"coatwright/planner/library"
	rooms "coatwright/planner/room"
	q "coatwright/quantity"
)

// conditions looks at the room for all films, and at what else the painter must
// know before starting.
func (b *builder) conditions(steps []Step) []Condition {
	out := []Condition{}
	add := func(level, note, format string, args ...any) {
		c := Condition{Level: level, What: fmt.Sprintf(format, args...), Note: note}
		if !slices.Contains(out, c) {
			out = append(out, c)
		}
	}
	judged := rooms.Assess(rooms.Room(b.job.Room), b.wants(steps))
	for _, f := range judged.Findings {
		add(f.Level.String(), f.Note, "%s", f.What)
	}
	if judged.Level == rooms.Go {
		add(judged.Level.String(), "", "%s", judged.Says)
	}
	for _, s := range steps {
		m := b.laid(s)
		if m == nil {
			continue
		}
		if sag := m.Sag.Micrometres(); s.WetUm > sag {
			add("care", s.Material, "One coat of %s lies %.0f um wet; above %.0f um it runs. Lay it in thinner coats.", lowerFirst(m.Title), s.WetUm, sag)
		}
	}
	b.hiding(steps, add)
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

// wants is what the films that steps lay ask of the room, each once.
func (b *builder) wants(steps []Step) []rooms.Wants {
	var out []rooms.Wants
	seen := map[*library.Material]bool{}
	for _, s := range steps {
		if m := b.laid(s); m != nil && !seen[m] {
			seen[m] = true
			out = append(out, WantsOf(m))
		}
	}
	return out
}

// laid is the material of the film that a step lays, nil for none.
func (b *builder) laid(s Step) *library.Material {
	slug, ok := strings.CutPrefix(s.Material, "material/")
	if !ok || s.Coats == 0 {
		return nil
	}
	return b.lib.Materials[slug]
}

// WantsOf is what a film of m asks of the room, as its note has it.
func WantsOf(m *library.Material) rooms.Wants {
	return rooms.Wants{
		Film: lowerFirst(m.Title), Note: "material/" + m.Slug,
		Air: m.Air.Air, Humidity: m.Air.Humidity, OverDewPoint: m.Air.OverDewPoint,
	}
}

// MeansOf is what can be done about a room, priced in minutes for which somebody
// is kept from other work.
func MeansOf(c library.RoomChanges) rooms.Means {
	return rooms.Means{
		Unit: "min", Warm: price(c.Warm), Cool: price(c.Cool), Dry: price(c.Dry), Damp: price(c.Damp),
		WarmPart: price(c.WarmPart), Fan: price(c.Fan), Wait: price(c.Wait),
	}
}

func price[Q q.Quantity](c library.RoomChange[Q]) rooms.Price[Q] {
	return rooms.Price[Q]{Fixed: c.Fixed.Minutes(), Each: c.Each.Minutes(), Most: c.Most}
}
