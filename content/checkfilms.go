package content

import (
	"fmt"
	"slices"

	"coatwright/planner/library"
	q "coatwright/quantity"
)

// material reports what nothing can give that a material asks for, and a role
// that no step lays.
func (c checker) material(m *library.Material) {
	c.needs("material", m.Slug, "needs", m.Needs)
	c.wants("material", m.Slug, m.Wants)
	c.over("material", m.Slug, "over", m.Over)
	c.applicators("material", m.Slug, "only-if", m.OnlyIf.Applicator)
	for _, p := range m.Mix {
		c.applicators("material", m.Slug, "mix", sortedKeys(p.Value))
	}
	c.mixOrder(m)
	c.water(m)
	if m.Role != "" && !c.laid(m.Role) {
		c.problemAt("material", m.Slug, "role", fmt.Sprintf("the role %q", m.Role), "a role that some step lays")
	}
}

// mixOrder reports a part that the mix of m pours before what must be in the cup
// first: what the part goes into, and for one that only thins all that does more.
func (c checker) mixOrder(m *library.Material) {
	poured := c.poured(m)
	for i, p := range poured {
		for _, late := range poured[i+1:] {
			switch {
			case slices.Contains(p.Into, late.Slug):
				c.problemAt("material", m.Slug, "mix", fmt.Sprintf("%q poured before %q", p.Slug, late.Slug),
					fmt.Sprintf("%q first: %q goes into it", late.Slug, p.Slug))
			case p.Thins && !late.Thins && !slices.Contains(late.Into, p.Slug):
				c.problemAt("material", m.Slug, "mix", fmt.Sprintf("%q poured before %q", p.Slug, late.Slug),
					fmt.Sprintf("%q last: it only thins", p.Slug))
			}
		}
	}
}

// poured are the materials of the mix of m in the order in which it is written.
func (c checker) poured(m *library.Material) []*library.Material {
	var out []*library.Material
	for _, p := range m.Mix {
		if p.Part == "base" {
			out = append(out, m)
		} else if part := c.lib.Materials[p.Part]; part != nil {
			out = append(out, part)
		}
	}
	return out
}

// solventDensity is what the law takes a solvent to weigh, in kg/m3: 7.36 lb/US
// gal (Fla. Admin. Code 62-296.500; 30 TAC 115.423).
const solventDensity = 882

// fullest is how much of a volume the shares of a data sheet may come to, each
// being rounded, and solvents heavier than solventDensity.
const fullest q.Fraction = 1.05

// water reports a material whose solids, water and solvent cannot all be in it.
func (c checker) water(m *library.Material) {
	if m.Water == 0 {
		return
	}
	sum := m.SolidsByVolume + m.Water + m.Exempt + q.Fraction(m.VOC/solventDensity)
	if sum > fullest {
		c.problemAt("material", m.Slug, "water", fmt.Sprintf("solids, water and solvent of %.0f %% of the volume", sum.Percent()),
			fmt.Sprintf("no more than all of it, or %.0f %% for what is rounded", fullest.Percent()))
	}
}

func (c checker) laid(role string) bool {
	for _, s := range c.lib.Steps {
		if s.Lays == role {
			return true
		}
	}
	return false
}

// over reports rules about what lies below that can never be kept, or that
// speak of a material which lays no film.
func (c checker) over(kind, slug, key string, rules []library.Over) {
	for _, r := range rules {
		if r.Needs.Fact != "" && !c.given[r.Needs.Fact] {
			c.problemAt(kind, slug, key, fmt.Sprintf("a rule that needs %q", r.Needs.Fact), givable)
		}
		if m := c.lib.Materials[r.Material]; m != nil && m.Role == "" {
			c.problemAt(kind, slug, key, fmt.Sprintf("a rule about %q", r.Material), "a material that lays a film")
		}
	}
}

// films reports films that no material can lay.
func (c checker) films(kind, slug, key string, films []library.Film) {
	for _, f := range films {
		for _, m := range f.Materials {
			if c.lib.Materials[m].Role != f.Role {
				c.problemAt(kind, slug, key, fmt.Sprintf("the material %q for the role %q", m, f.Role), "a material of that role")
			}
		}
		if !c.can(f.Role) {
			c.problemAt(kind, slug, key, fmt.Sprintf("the role %q", f.Role), "a role that some material has")
		}
	}
}

func (c checker) can(role string) bool {
	for _, m := range c.lib.Materials {
		if m.Role == role {
			return true
		}
	}
	return false
}

// design reports layers that no step lays with their masks, and a ring of
// designs that lie over each other.
func (c checker) design(d *library.Design) {
	var films []library.Film
	var masks []string
	for _, l := range d.Layers {
		films, masks = append(films, l.Film), append(masks, l.Mask)
		if !c.masked(l, givenFacts(c.lib, masks)) {
			c.problemAt("design", d.Slug, "layers", fmt.Sprintf("the layer %q with the mask %q", l.Name, l.Mask),
				fmt.Sprintf("a mask with which some step lays %q, and others give what that step needs", l.Film.Role))
		}
	}
	c.films("design", d.Slug, "layers", films)
	if c.liesOver(d, d.Slug, map[string]bool{}) {
		c.problemAt("design", d.Slug, "over", "a design that lies over itself in the end", "designs that do not lie over each other in a ring")
	}
}

// masked reports whether some step lays the layer, where no more than given can
// come to hold.
func (c checker) masked(l library.Layer, given map[string]bool) bool {
	for _, s := range c.lib.Steps {
		lacks := func(n library.Need) bool { return !canMeet(n, given) }
		if s.Lays == l.Film.Role && fitsMask(s, l.Mask) && !slices.ContainsFunc(s.Needs, lacks) {
			return true
		}
	}
	return false
}

// liesOver reports whether d lies over the design named, by way of others too.
func (c checker) liesOver(d *library.Design, named string, seen map[string]bool) bool {
	for _, below := range d.Over {
		if below == named {
			return true
		}
		if !seen[below] {
			seen[below] = true
			if c.liesOver(c.lib.Designs[below], named, seen) {
				return true
			}
		}
	}
	return false
}

// under reports a substrate that no step can strip down to what is under it.
func (c checker) under(s *library.Substrate) {
	if s.Under == "" {
		return
	}
	for _, step := range c.lib.Steps {
		if step.Strips && onTraits(step.OnlyIf, s.Traits) {
			return
		}
	}
	c.problemAt("substrate", s.Slug, "under", fmt.Sprintf("the surface %q below", s.Under), "a surface that a step with strips: yes lays bare on these traits")
}

func onTraits(c library.Condition, traits []string) bool {
	has := func(t string) bool { return slices.Contains(traits, t) }
	lacks := func(t string) bool { return !has(t) }
	return !slices.ContainsFunc(c.Traits, lacks) && !slices.ContainsFunc(c.NotTraits, has)
}
