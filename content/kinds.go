package content

import (
	"slices"

	"coatwright/nearest"
	"coatwright/planner/library"
	q "coatwright/quantity"
	"coatwright/strictyaml"
)

func nearestWord(found string, words []string) string { return nearest.To(found, words) }

func (f *front) step(slug, title string, m *strictyaml.Map) *library.Step {
	s := &library.Step{
		Slug: slug, Title: title,
		Phase:    m.Need("phase").OneOf("a phase", wordNames(f.words.Phases)),
		OnlyIf:   f.condition(m.Get("only-if")),
		Needs:    f.needs(m.Get("needs")),
		Wants:    f.wants(m.Get("wants")),
		Gives:    f.literals(m.Get("gives")),
		Spoils:   f.factNames(m.Get("spoils")),
		Lays:     m.Get("lays").OneOf("a role", f.roles()),
		Before:   m.Get("before").Words("a dryness state", wordNames(f.words.Dryness)),
		Mixes:    m.Get("mixes").Bool(),
		Cleans:   m.Get("cleans").Bool(),
		Strips:   m.Get("strips").Bool(),
		Heats:    strictyaml.Quantity[q.Temperature](m.Get("heats")),
		Within:   strictyaml.Quantity[q.Time](m.Get("within")),
		Stands:   f.drying(m.Get("stands")),
		Uses:     f.uses(m.Get("uses")),
		Because:  m.Need("because").Text(),
		Skipped:  m.Need("skipped").Text(),
		Checks:   m.Need("checks").Texts(),
		Cautions: f.cautions(m.Get("cautions")),
	}
	s.Lasts = f.lasts(m.Get("lasts"), s.Gives)
	s.Work = work(m.Need("work"))
	if gives := m.Get("gives"); s.Lays == "" && len(s.Gives) == 0 && gives == nil {
		m.Need("gives")
	}
	return s
}

func work(v *strictyaml.Value) library.Work {
	m := v.Map()
	w := library.Work{
		Fixed:   strictyaml.Quantity[q.Time](m.Get("fixed")),
		PerArea: strictyaml.Quantity[q.TimePerArea](m.Get("per-area")),
		Of:      library.Extent(m.Get("of").OneOf("the area that the work goes by", []string{string(library.OfLayer), string(library.OfLaidLayer)})),
	}
	m.Close()
	return w
}

// lasts reads how long given facts stay true.
func (f *front) lasts(v *strictyaml.Value, gives []library.Literal) map[string]q.Time {
	if v == nil {
		return nil
	}
	var given []string
	for _, l := range gives {
		given = append(given, l.Fact)
	}
	m, out := v.Map(), map[string]q.Time{}
	for _, fact := range m.Keys() {
		lasts := m.Get(fact)
		if !slices.Contains(given, fact) {
			m.Fail(fact, "a fact that this step gives", nearestWord(fact, given))
			continue
		}
		out[fact] = strictyaml.Quantity[q.Time](lasts)
	}
	return out
}

func (f *front) uses(v *strictyaml.Value) []library.Use {
	var uses []library.Use
	for _, item := range v.List() {
		m := item.Map()
		tool, material := m.Get("tool"), m.Get("material")
		u := library.Use{
			Tool:     f.slug(tool, "tool"),
			Material: f.slug(material, "material"),
			Spread:   strictyaml.Quantity[q.Spread](m.Get("spread")),
		}
		m.Close()
		if (tool == nil) == (material == nil) {
			item.Fail("either a tool or a material", "")
		}
		uses = append(uses, u)
	}
	return uses
}

func (f *front) substrate(slug, title string, m *strictyaml.Map) *library.Substrate {
	return &library.Substrate{
		Slug: slug, Title: title,
		Traits:        m.Need("traits").Words("a trait", wordNames(f.words.Traits)),
		Facts:         f.literals(m.Need("facts")),
		Under:         f.slug(m.Get("under"), "substrate"),
		HeatLimit:     strictyaml.Quantity[q.Temperature](m.Need("heat-limit")),
		SurfaceEnergy: strictyaml.Range[q.SurfaceEnergy](m.Get("surface-energy")),
		Mind:          m.Get("mind").Texts(),
		Cautions:      f.cautions(m.Get("cautions")),
	}
}

// films reads a list of {role, material, coats, colour}.
func (f *front) films(v *strictyaml.Value) []library.Film {
	var films []library.Film
	for _, item := range v.List() {
		m := item.Map()
		films = append(films, library.Film{
			Role:      m.Need("role").OneOf("a role", f.roles()),
			Materials: f.slugList(m.Get("material"), "material"),
			Coats:     m.Get("coats").Int(1, 12),
			Colour:    m.Get("colour").OneOf("a colour of the job", library.JobColours),
		})
		m.Close()
	}
	return films
}

func (f *front) effect(slug, title string, m *strictyaml.Map) *library.Effect {
	return &library.Effect{Slug: slug, Title: title, Films: f.films(m.Need("films"))}
}

func (f *front) finish(slug, title string, m *strictyaml.Map) *library.Finish {
	return &library.Finish{
		Slug: slug, Title: title,
		Films: f.films(m.Need("films")),
		Gloss: strictyaml.Range[q.Gloss](m.Need("gloss")),
		Ends:  m.Need("ends").Words("a fact", f.facts),
		Wants: f.wants(m.Get("wants")),
	}
}

func (f *front) tool(slug, title string, m *strictyaml.Map) *library.Tool {
	t := &library.Tool{
		Slug: slug, Title: title,
		Wear:       wear(m.Get("wear")),
		Resolution: strictyaml.Quantity[q.Mass](m.Get("resolution")),
		Marks:      marks(m.Get("marks")),
	}
	cautions := f.cautions(m.Get("cautions"))
	if a := m.Get("applicator"); a != nil {
		t.Applicator = f.applicator(a.Map())
		t.Applicator.Cautions = cautions
	}
	if tape := m.Get("tape"); tape != nil {
		t.Tape = f.tape(tape.Map())
	}
	return t
}

func (f *front) applicator(m *strictyaml.Map) *library.Applicator {
	a := &library.Applicator{
		Transfer: map[string]q.Range[q.Fraction]{},
		Pressure: strictyaml.Range[q.Pressure](m.Need("pressure")),
		Loss:     strictyaml.Quantity[q.Volume](m.Need("loss")),
		Flush:    strictyaml.Quantity[q.Volume](m.Need("flush")),
		Cup:      strictyaml.Quantity[q.Volume](m.Need("cup")),
		Pace:     strictyaml.Quantity[q.TimePerArea](m.Need("pace")),
		Flow:     strictyaml.Range[q.Flow](m.Get("flow")),
		Air:      strictyaml.Range[q.AirFlow](m.Get("air")),
		Speed:    strictyaml.Range[q.Speed](m.Get("speed")),
		Largest:  map[string]q.Area{},
		Fan:      strictyaml.Range[q.Length](m.Need("fan")),
		Distance: strictyaml.Range[q.Length](m.Need("distance")),
		Overlap:  strictyaml.Range[q.Fraction](m.Need("overlap")),
	}
	transfer := m.Need("transfer").Map()
	for _, w := range f.words.Forms {
		a.Transfer[w.Name] = strictyaml.Range[q.Fraction](transfer.Need(w.Name))
	}
	transfer.Close()
	largest := m.Need("largest").Map()
	for _, role := range largest.Keys() {
		v := largest.Get(role)
		if !slices.Contains(f.roles(), role) {
			largest.Fail(role, "a role", nearestWord(role, f.roles()))
			continue
		}
		a.Largest[role] = strictyaml.Quantity[q.Area](v)
	}
	m.Close()
	return a
}
