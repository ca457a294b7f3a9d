package critique

import (
	"maps"
	"slices"
	"strings"

	"coatwright/planner"
	"coatwright/planner/amounts"
	"coatwright/planner/library"
	q "coatwright/quantity"
)

// filmsOf are the films of p that steps still lay, in the order in which they
// are laid now. Until when a film may be taken back moves with it.
func filmsOf(p *planner.Plan, steps []planner.Step) []planner.Film {
	films := []planner.Film{}
	for _, s := range steps {
		i := slices.IndexFunc(p.Films, func(f planner.Film) bool { return f.Step == s.ID })
		was := indexOf(p.Steps, s.ID)
		if i < 0 || was < 0 {
			continue
		}
		f := p.Films[i]
		f.Coats, f.DryUm, f.Rework = s.Coats, s.DryUm, slices.Clone(f.Rework)
		for k := range f.Rework {
			f.Rework[k].Until = s.End.Add(f.Rework[k].Until.Sub(p.Steps[was].End))
		}
		films = append(films, f)
	}
	return films
}

// cautionsOf is every danger that some step meets, and where.
func cautionsOf(p *planner.Plan, steps []planner.Step, lib *library.Library) []planner.Caution {
	at := map[string][]string{}
	for _, s := range steps {
		for _, c := range s.Cautions {
			at[c] = append(at[c], s.ID)
		}
	}
	out := []planner.Caution{}
	for _, slug := range slices.Sorted(maps.Keys(at)) {
		c := planner.Caution{Note: "caution/" + slug, Title: slug}
		if i := slices.IndexFunc(p.Cautions, func(o planner.Caution) bool { return o.Note == c.Note }); i >= 0 {
			c = p.Cautions[i]
		} else if note := lib.Cautions[slug]; note != nil {
			c.Title, c.Says = note.Title, note.Says
		}
		c.Steps = at[slug]
		out = append(out, c)
	}
	return out
}

// materialsOf sums up what the steps pour and use, as the plan's own list does.
func materialsOf(p *planner.Plan, steps []planner.Step, lib *library.Library) []planner.Material {
	ml, buy := map[string]float64{}, map[string]float64{}
	for _, s := range steps {
		if m := s.Mix; m != nil && m.TotalML > 0 {
			n := float64(max(m.Batches, 1))
			more := max(1, m.HighML/(m.TotalML*n))
			for _, l := range m.Lines {
				ml[l.Material] += l.ML * n
				buy[l.Material] += l.ML * n * more
			}
		}
		for _, u := range s.Uses {
			if slug, ok := strings.CutPrefix(u.Note, "material/"); ok {
				ml[slug] += u.ML
				buy[slug] += u.ML
			}
		}
	}
	out := []planner.Material{}
	for _, slug := range slices.Sorted(maps.Keys(ml)) {
		m := planner.Material{Material: slug, Title: slug}
		if i := slices.IndexFunc(p.Materials, func(o planner.Material) bool { return o.Material == slug }); i >= 0 {
			m.Title, m.Cost = p.Materials[i].Title, p.Materials[i].Cost
		}
		m.ML, m.BuyML = ml[slug], amounts.RoundUp(q.Volume(buy[slug]*1e-6)).Millilitres()
		if note := lib.Materials[slug]; note != nil {
			m.Title, m.G = note.Title, m.ML*float64(note.Density)/1000
		}
		out = append(out, m)
	}
	return out
}

// totalsOf sums up a plan whose steps have their times. What rework wants cost
// on average is kept as it was.
func totalsOf(p *planner.Plan) planner.Totals {
	t := planner.Totals{Start: p.Steps[0].Start, RiskMin: p.Totals.RiskMin, Cost: p.Totals.Cost}
	build := map[string]float64{}
	for _, s := range p.Steps {
		t.WorkMin += s.WorkMin
		if s.End.After(t.End) {
			t.End = s.End
		}
		if s.Mix != nil {
			t.VOCg += s.Mix.VOCgPerL * s.Mix.TotalML * float64(max(s.Mix.Batches, 1)) / 1000
		}
	}
	for _, f := range p.Films {
		for _, part := range f.Parts {
			build[part] += f.DryUm
			t.DryUm = max(t.DryUm, build[part])
		}
	}
	t.ElapsedMin = t.End.Sub(t.Start).Minutes()
	return t
}
