package planner

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"

	"coatwright/planner/library"
	q "coatwright/quantity"
)

// SumUp sets what a plan's steps and films come to: the shopping list, the
// cautions, the strips of its candies, and the totals but for the rework at risk
// and the earliest and latest end, which stay. A note that has gone since the
// plan was made keeps the words that the plan has of it.
func (p *Plan) SumUp(lib *library.Library) {
	p.Materials, p.Worn = shopping(p.Steps, lib), worn(p.Steps)
	p.Emissions = emissions(p.Steps, lib)
	p.Cautions = cautions(p.Steps, lib, p.Cautions)
	p.Strips = strips(p, lib)
	p.Totals = totals(p)
}

// shopping sums up what all steps pour and use. What is bought covers the
// applicator at its worst; what is poured, its middle.
func shopping(steps []Step, lib *library.Library) []Material {
	sum := map[string]*Material{}
	add := func(slug, title string, ml, buy float64) {
		m := sum[slug]
		if m == nil {
			m = &Material{Material: slug, Title: title}
			sum[slug] = m
		}
		m.ML += ml
		m.BuyML += buy
		if note := lib.Materials[slug]; note != nil {
			m.Title = note.Title
			m.G += ml * float64(note.Density) / 1000
		}
	}
	for _, s := range steps {
		if s.Mix != nil && s.Mix.TotalML > 0 {
			n := s.Mix.Times()
			more := max(1, s.Mix.HighML/(s.Mix.TotalML*n))
			for _, l := range s.Mix.Lines {
				add(l.Material, l.Title, l.ML*n, l.ML*n*more)
			}
		}
		for _, u := range s.Uses {
			if slug, ok := strings.CutPrefix(u.Note, "material/"); ok {
				add(slug, u.Title, u.ML, u.ML)
			}
		}
	}
	out, cup := []Material{}, measuringCup(lib)
	for _, slug := range slices.Sorted(maps.Keys(sum)) {
		m := sum[slug]
		m.BuyML = cup.Up(q.Volume(m.BuyML * 1e-6)).Millilitres()
		out = append(out, *m)
	}
	return out
}

// worn sums up what the steps use up of their tools.
func worn(steps []Step) []Worn {
	sum := map[string]*Worn{}
	for _, s := range steps {
		for _, u := range s.Uses {
			slug, tool := strings.CutPrefix(u.Note, "tool/")
			if !tool || u.Piece == "" || u.Count == 0 {
				continue
			}
			if sum[slug] == nil {
				sum[slug] = &Worn{Tool: slug, Title: u.Title, Piece: u.Piece}
			}
			sum[slug].Count += u.Count
		}
	}
	out := []Worn{}
	for _, slug := range slices.Sorted(maps.Keys(sum)) {
		sum[slug].Count = math.Ceil(sum[slug].Count - 1e-9)
		out = append(out, *sum[slug])
	}
	return out
}

// Times is how often a mix is mixed, once where an edited plan does not say.
func (m *Mix) Times() float64 { return float64(max(m.Batches, 1)) }

func totals(p *Plan) Totals {
	t := Totals{RiskMin: p.Totals.RiskMin, LowEnd: p.Totals.LowEnd, HighEnd: p.Totals.HighEnd, Cost: p.Totals.Cost}
	for i, s := range p.Steps {
		t.WorkMin += s.WorkMin
		if i == 0 || s.Start.Before(t.Start) {
			t.Start = s.Start
		}
		if s.End.After(t.End) {
			t.End = s.End
		}
		if s.Mix != nil {
			t.VOCg += s.Mix.VOCgPerL * s.Mix.TotalML * s.Mix.Times() / 1000
		}
	}
	for _, sum := range Builds(p.Films) {
		t.DryUm = max(t.DryUm, sum)
	}
	t.ElapsedMin = t.End.Sub(t.Start).Minutes()
	return t
}

// Builds is the dry build of each part's films, in um.
func Builds(films []Film) map[string]float64 {
	sums := map[string]float64{}
	for _, f := range films {
		for _, part := range f.Parts {
			sums[part] += f.DryUm
		}
	}
	return sums
}

// hardware is what comes off each part, bag by bag.
func hardware(job *Job) []Bag {
	bags := []Bag{}
	for _, p := range job.Parts {
		for _, h := range p.Hardware {
			bags = append(bags, Bag{Label: fmt.Sprintf("bag %d", len(bags)+1), Part: p.Name, Holds: h})
		}
	}
	return bags
}

// left is the parts to which nothing is done.
func left(job *Job) []string {
	names := []string{}
	for _, p := range job.Parts {
		if p.Leave {
			names = append(names, p.Name)
		}
	}
	return names
}
