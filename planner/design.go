package planner

import (
	"fmt"
	"slices"
	"strings"

	"coatwright/nearest"
	"coatwright/planner/library"
	q "coatwright/quantity"
	"coatwright/strictyaml"
)

// Design is work on a part of a part: lettering, a stripe, a panel.
type Design struct {
	Kind     string // a design note
	Name     string // of its own in the job
	On       string // the part's name; each piece of the part gets the design
	Area     q.Area // of one
	Position string // where on the part; designs at one position lie over one another
	Polarity string // library.Negative or library.Positive
	Colours  map[string]string
	With     []string // optional layers that are laid
	Over     []string // names of designs that this one must lie over
}

// designs reads the designs of a job on its parts.
func (r jobReader) designs(v *strictyaml.Value, parts []Part) []Design {
	items := v.List()
	if len(items) > maxDesigns {
		v.Fail(fmt.Sprintf("a list of at most %d designs", maxDesigns), "")
		return nil
	}
	var designs []Design
	for _, item := range items {
		d := r.design(item.Map(), parts)
		if d.Name == "" {
			d.Name = r.nameFor(d, designs)
		}
		if slices.ContainsFunc(designs, func(o Design) bool { return o.Name == d.Name }) {
			item.Fail(fmt.Sprintf("a design name of its own (%q is there already)", d.Name), "")
		}
		designs = append(designs, d)
	}
	for i, item := range items {
		checkOver(item, designs[i], designs)
	}
	return designs
}

func (r jobReader) design(m *strictyaml.Map, parts []Part) Design {
	on, area := m.Need("on"), m.Need("area")
	d := Design{
		Kind:     r.word(m.Need("kind"), "a design", designKinds),
		Name:     title(m.Get("name")),
		On:       on.OneOf("the name of a part", partNames(parts)),
		Area:     strictyaml.Quantity[q.Area](area),
		Position: title(m.Get("position")),
		Polarity: m.Get("mask").OneOf("how the mask lies", []string{library.Negative, library.Positive}),
		Colours:  colours(m.Get("colours").Map(), library.DesignColours),
		With:     r.with(m),
		Over:     m.Get("over").Texts(),
	}
	if d.Polarity == "" {
		d.Polarity = library.Negative
	}
	if i := slices.IndexFunc(parts, func(p Part) bool { return p.Name == d.On }); i >= 0 {
		if parts[i].Leave {
			on.Fail("a part that something is done to", "")
		}
		if area != nil && !(d.Area > 0 && d.Area <= parts[i].Area) {
			area.Fail(fmt.Sprintf("an area above 0 and at most the part's %.3g m2", float64(parts[i].Area)), "")
		}
	}
	m.Close()
	return d
}

// with reads which optional layers of the design's kind are laid.
func (r jobReader) with(m *strictyaml.Map) []string {
	v := m.Get("with")
	if r.lib == nil {
		return v.Texts()
	}
	var optional []string
	if kind := r.lib.Designs[m.Get("kind").Text()]; kind != nil {
		for _, l := range kind.Layers {
			if l.Optional {
				optional = append(optional, l.Name)
			}
		}
	}
	return v.Words("a layer that this design offers", optional)
}

// nameFor names a design after its kind, with a number from the second on.
func (r jobReader) nameFor(d Design, others []Design) string {
	n := 1
	for _, o := range others {
		if o.Kind == d.Kind {
			n++
		}
	}
	if n == 1 {
		return d.Kind
	}
	return fmt.Sprintf("%s %d", d.Kind, n)
}

// checkOver reports names that are no other design of the part, and designs
// that lie over each other in a ring.
func checkOver(item *strictyaml.Value, d Design, designs []Design) {
	var names []string
	for _, o := range designs {
		if o.On == d.On && o.Name != d.Name {
			names = append(names, o.Name)
		}
	}
	for _, name := range d.Over {
		if !slices.Contains(names, name) {
			item.Fail(fmt.Sprintf("over: the name of another design on %q, not %q", d.On, name), nearest.To(name, names))
			return
		}
	}
	if liesOver(d, d.Name, designs, map[string]bool{}) {
		item.Fail("designs that do not lie over each other in a ring", "")
	}
}

func liesOver(d Design, name string, designs []Design, seen map[string]bool) bool {
	for _, under := range d.Over {
		if under == name {
			return true
		}
		if seen[under] {
			continue
		}
		seen[under] = true
		for _, o := range designs {
			if o.Name == under && liesOver(o, name, designs, seen) {
				return true
			}
		}
	}
	return false
}

func partNames(parts []Part) []string {
	names := make([]string, len(parts))
	for i, p := range parts {
		names[i] = p.Name
	}
	return names
}

// samePlace reports whether two designs of one part may touch: they are at one
// position, or one of them does not say where it is.
func samePlace(a, b Design) bool {
	return a.Position == "" || b.Position == "" || strings.EqualFold(strings.TrimSpace(a.Position), strings.TrimSpace(b.Position))
}
