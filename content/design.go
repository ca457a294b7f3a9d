package content

import (
	"slices"

	"coatwright/planner/library"
	q "coatwright/quantity"
	"coatwright/strictyaml"
)

// design reads a design note: its layers from the bottom up, and the kinds of
// design that it lies over.
func (f *front) design(slug, title string, m *strictyaml.Map) *library.Design {
	d := &library.Design{Slug: slug, Title: title, Over: m.Get("over").Words("the slug of a design note", f.slugs["design"])}
	layers := m.Need("layers")
	for _, item := range layers.List() {
		d.Layers = append(d.Layers, f.layer(item.Map()))
	}
	if layers != nil && !slices.ContainsFunc(d.Layers, func(l library.Layer) bool { return !l.Optional }) {
		layers.Fail("at least one layer that is not optional", "")
	}
	return d
}

func (f *front) layer(m *strictyaml.Map) library.Layer {
	l := library.Layer{
		Name: m.Need("name").Text(),
		Film: library.Film{
			Role:      m.Need("role").OneOf("a role of local films", f.localRoles()),
			Materials: f.slugList(m.Get("material"), "material"),
			Coats:     m.Get("coats").Int(1, 12),
			Colour:    m.Get("colour").OneOf("a colour of the design", library.DesignColours),
		},
		Mask:     m.Need("mask").OneOf("how the edge is made", wordNames(f.words.Masks)),
		Share:    1,
		Optional: m.Get("optional").Bool(),
	}
	if share := m.Get("share"); share != nil {
		l.Share = strictyaml.Quantity[q.Fraction](share)
		if !(l.Share > 0 && l.Share <= 1) {
			share.Fail("a share of the design's area, above 0 and at most 100 %", "")
		}
	}
	m.Close()
	return l
}

func (f *front) localRoles() []string {
	var roles []string
	for _, r := range f.words.Roles {
		if r.Local {
			roles = append(roles, r.Name)
		}
	}
	return roles
}

func (f *front) tape(m *strictyaml.Map) *library.Tape {
	t := &library.Tape{
		Needs: f.needs(m.Get("needs")),
		Holds: strictyaml.Quantity[q.Time](m.Get("holds")),
		Over:  f.over(m.Get("over")),
	}
	m.Close()
	return t
}

// over reads rules about what lies below: one of system, role, material and
// trait, and either never or a need.
func (f *front) over(v *strictyaml.Value) []library.Over {
	var rules []library.Over
	for _, item := range v.List() {
		m := item.Map()
		system, role, material, trait := m.Get("system"), m.Get("role"), m.Get("material"), m.Get("trait")
		never, needs := m.Get("never"), m.Get("needs")
		r := library.Over{
			System:   system.OneOf("a system", wordNames(f.words.Systems)),
			Role:     role.OneOf("a role", f.roles()),
			Material: f.slug(material, "material"),
			Trait:    trait.OneOf("a trait", wordNames(f.words.Traits)),
			Never:    never.Bool(),
			Because:  m.Need("because").Text(),
		}
		if needs != nil {
			r.Needs = f.literal(needs, "a fact", f.facts)
		}
		m.Close()
		if given(system, role, material, trait) != 1 {
			item.Fail("one of system, role, material and trait", "")
		}
		if given(never, needs) != 1 {
			item.Fail("either never: yes or what it needs", "")
		} else if needs == nil && !r.Never {
			never.Fail("yes, or in its place what it needs", "")
		}
		rules = append(rules, r)
	}
	return rules
}

func given(values ...*strictyaml.Value) int {
	n := 0
	for _, v := range values {
		if v != nil {
			n++
		}
	}
	return n
}
