package planner

import (
	"slices"
	"strings"

	"coatwright/planner/library"
	"coatwright/planner/mix"
	"coatwright/planner/voc"
	q "coatwright/quantity"
)

// emissions says of each mix what goes into the air, beside the law's limit for
// products of its kind.
func emissions(steps []Step, lib *library.Library) []Emission {
	out := []Emission{}
	for i, s := range steps {
		if s.Mix == nil || s.Mix.TotalML <= 0 {
			continue
		}
		e := Emission{Step: s.ID, Films: s.Films, VOCgPerL: s.Mix.VOCgPerL, LessWaterGPerL: s.Mix.LessWaterGPerL, VOCg: s.Mix.VOCgPerL * s.Mix.TotalML * s.Mix.Times() / 1000}
		m := lib.Materials[strings.TrimPrefix(s.Material, "material/")]
		if tool := sprayedWith(steps[i:], s.Material); m != nil && tool != "" {
			e.beside(m, MixParts(m, lib, tool), lib)
		}
		out = append(out, e)
	}
	return out
}

// sprayedWith is the applicator of the next step that lays a material.
func sprayedWith(steps []Step, material string) string {
	i := slices.IndexFunc(steps, func(s Step) bool { return s.Coats > 0 && s.Material == material })
	if i < 0 {
		return ""
	}
	return strings.TrimPrefix(steps[i].Applicator, "tool/")
}

// beside sets the limit that the law has for products such as m.
func (e *Emission) beside(m *library.Material, parts []mix.Part, lib *library.Library) {
	c, ok := LimitOf(m, lib)
	liquid, err := Sprayed(parts, lib)
	if !ok || err != nil {
		return
	}
	compared, err := voc.Compare(liquid, c)
	if err != nil {
		return
	}
	e.Category, e.LimitGPerL, e.Verdict, e.Says, e.Defer = c.Name, float64(c.Limit), string(compared.Verdict), compared.Says(q.Metric), compared.Defer
}

// LimitOf is what the law has for products of a material's category; ok is false
// for one of none.
func LimitOf(m *library.Material, lib *library.Library) (c voc.Category, ok bool) {
	for _, listed := range lib.Words.Categories {
		if listed.Name == m.Category {
			return voc.Category{Name: strings.ReplaceAll(listed.Name, "-", " "), Limit: listed.Limit, Source: "2004/42/EC, annex II B", Water: listed.Water}, true
		}
	}
	return voc.Category{}, false
}
