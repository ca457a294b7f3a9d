package content

import (
	"slices"

	"coatwright/planner/library"
	q "coatwright/quantity"
	"coatwright/strictyaml"
)

func (f *front) material(slug, title string, m *strictyaml.Map) *library.Material {
	mat := &library.Material{
		Slug: slug, Title: title,
		System:         m.Need("system").OneOf("a system", wordNames(f.words.Systems)),
		Role:           m.Get("role").OneOf("a role", f.roles()),
		Density:        strictyaml.Quantity[q.Density](m.Need("density")),
		SolidsByVolume: strictyaml.Quantity[q.Fraction](m.Get("solids-by-volume")),
		VOC:            strictyaml.Quantity[q.Concentration](m.Get("voc")),
		Water:          strictyaml.Quantity[q.Fraction](m.Get("water")),
		Exempt:         strictyaml.Quantity[q.Fraction](m.Get("exempt")),
		Category:       m.Get("voc-category").OneOf("a category of the law on VOC", categoryNames(f.words.Categories)),
		Vapour:         vapour(m.Get("vapour")),
		Into:           f.slugList(m.Get("into"), "material"),
		Thins:          m.Get("thins").Bool(),
		Hardens:        m.Get("hardens").Bool(),
		Cautions:       f.cautions(m.Get("cautions")),
		Source:         m.Need("source").Text(),
		Standing:       m.Get("standing").OneOf("where its figures come from", standingNames(f.words.Standing)),
	}
	if mat.Standing == "" {
		mat.Standing = "starting-value"
	}
	if mat.Role != "" {
		f.filmOf(mat, m)
	}
	return mat
}

// filmOf reads what only a material that lays a film has.
func (f *front) filmOf(mat *library.Material, m *strictyaml.Map) {
	if v := m.Need("solids-by-volume"); v != nil && !(mat.SolidsByVolume > 0 && mat.SolidsByVolume <= 1) {
		v.Fail("a share above 0 and at most 100 %", "")
	}
	mat.OnlyIf = f.condition(m.Get("only-if"))
	mat.Traits = m.Get("traits").Words("a trait", wordNames(f.words.Traits))
	mat.Barrier = m.Get("barrier").Bool()
	mat.Build = strictyaml.Quantity[q.Length](m.Need("build"))
	mat.Sag = strictyaml.Quantity[q.Length](m.Need("sag"))
	mat.Coats = m.Need("coats").Int(1, 12)
	mat.Gloss = strictyaml.Range[q.Gloss](m.Get("gloss"))
	mat.Viscosity = strictyaml.Range[q.Viscosity](m.Get("viscosity"))
	mat.Hides = hiding(m.Get("hides"))
	mat.Swatch = swatch(m.Get("swatch"))
	mat.Forced = forced(m.Get("forced"))
	mat.Key = strictyaml.Range[q.Grit](m.Get("key"))
	mat.Needs = f.needs(m.Get("needs"))
	mat.Wants = f.wants(m.Get("wants"))
	mat.Gives = f.factNames(m.Get("gives"))
	mat.Spoils = f.factNames(m.Get("spoils"))
	mat.Mix = f.mix(m.Need("mix"))
	mat.Stand = strictyaml.Quantity[q.Time](m.Get("stand"))
	mat.PotLife = strictyaml.Quantity[q.Time](m.Need("pot-life"))
	mat.Strain = strictyaml.Quantity[q.Length](m.Get("strain"))
	mat.Flash = f.drying(m.Get("flash"))
	mat.Dries = f.dries(m.Need("dries"))
	mat.Air = airRange(m.Need("air"))
	mat.CleanWith = f.slug(m.Need("clean-with"), "material")
	mat.Over = f.over(m.Get("over"))
	for _, item := range m.Get("rework").List() {
		r := item.Map()
		mat.Rework = append(mat.Rework, library.Rework{How: r.Need("how").Text(), Until: r.Need("until").OneOf("a dryness state", wordNames(f.words.Dryness))})
		r.Close()
	}
	if mat.Coats > 1 && mat.Flash.In == 0 {
		m.Need("flash")
	}
}

func (f *front) dries(v *strictyaml.Value) map[string]library.Drying {
	states, out := wordNames(f.words.Dryness), map[string]library.Drying{}
	m := v.Map()
	for _, state := range m.Keys() {
		d := m.Get(state)
		if !slices.Contains(states, state) {
			m.Fail(state, "a dryness state", nearestWord(state, states))
			continue
		}
		out[state] = f.drying(d)
	}
	return out
}

func airRange(v *strictyaml.Value) library.AirRange {
	m := v.Map()
	r := library.AirRange{
		Air:          strictyaml.Range[q.Temperature](m.Need("temperature")),
		Humidity:     strictyaml.Range[q.Fraction](m.Need("humidity")),
		OverDewPoint: strictyaml.Quantity[q.Difference](m.Need("over-dew-point")),
	}
	m.Close()
	return r
}

// mix reads the pours in order. A part is "base" or the slug of a material;
// only an earlier part can be taken a percentage of.
func (f *front) mix(v *strictyaml.Value) []library.MixPart {
	allowed := append([]string{"base"}, f.slugs["material"]...)
	var mix []library.MixPart
	var poured []string
	for _, item := range v.List() {
		m := item.Map()
		p := library.MixPart{Part: m.Need("part").OneOf(`"base" or the slug of a material note`, allowed)}
		parts, of := m.Get("parts"), m.Get("percent-of")
		p.Parts = parts.Number()
		p.Of = of.OneOf("a part poured before this one", poured)
		if of != nil {
			p.Value = f.share(m.Need("value"))
		}
		m.Close()
		if (parts == nil) == (of == nil) {
			item.Fail("either parts or percent-of", "")
		}
		mix, poured = append(mix, p), append(poured, p.Part)
	}
	if v != nil && !slices.Contains(poured, "base") {
		v.Fail(`one part that is "base", the material itself`, "")
	}
	return mix
}

// share reads a percentage, or one for each applicator: {any: 5..10 %, airbrush: 15 %}.
func (f *front) share(v *strictyaml.Value) map[string]q.Range[q.Fraction] {
	if v == nil {
		return nil
	}
	if !v.IsMap() {
		return map[string]q.Range[q.Fraction]{"": strictyaml.Range[q.Fraction](v)}
	}
	m, out := v.Map(), map[string]q.Range[q.Fraction]{}
	out[""] = strictyaml.Range[q.Fraction](m.Need("any"))
	for _, key := range m.Keys() {
		if key == "any" {
			continue
		}
		value := m.Get(key)
		if !slices.Contains(f.slugs["tool"], key) {
			m.Fail(key, `"any" or the slug of an applicator`, nearestWord(key, f.slugs["tool"]))
			continue
		}
		out[key] = strictyaml.Range[q.Fraction](value)
	}
	return out
}
