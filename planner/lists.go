package planner

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"time"

	"coatwright/planner/amounts"
	"coatwright/planner/library"
	q "coatwright/quantity"
)

func solidsOf(m *library.Material, lib *library.Library, applicator string) (q.Fraction, error) {
	return amounts.SolidsOfMix(mixParts(m, lib, applicator))
}

func wetFilm(dft q.Length, solids q.Fraction) q.Length { return amounts.WetFilm(dft, solids) }

// shopping sums up what all steps pour and use. What is bought covers the
// applicator at its worst; what is poured, its middle.
func (b *builder) shopping(steps []Step) []Material {
	sum := map[string]*Material{}
	add := func(slug string, ml, buy float64) {
		m := sum[slug]
		if m == nil {
			m = &Material{Material: slug, Title: b.lib.Materials[slug].Title}
			sum[slug] = m
		}
		m.ML += ml
		m.BuyML += buy
		m.G += ml * float64(b.lib.Materials[slug].Density) / 1000
	}
	for _, s := range steps {
		if s.Mix != nil && s.Mix.TotalML > 0 {
			n := float64(s.Mix.Batches)
			more := max(1, s.Mix.HighML/(s.Mix.TotalML*n))
			for _, l := range s.Mix.Lines {
				add(l.Material, l.ML*n, l.ML*n*more)
			}
		}
		for _, u := range s.Uses {
			if slug, ok := strings.CutPrefix(u.Note, "material/"); ok {
				add(slug, u.ML, u.ML)
			}
		}
	}
	out := []Material{}
	for _, slug := range slices.Sorted(maps.Keys(sum)) {
		m := sum[slug]
		m.BuyML = amounts.RoundUp(q.Volume(m.BuyML * 1e-6)).Millilitres()
		out = append(out, *m)
	}
	return out
}

// cautionSlugs is the cautions of a step, of the materials at hand and of the
// applicator.
func (b *builder) cautionSlugs(it *item) []string {
	all := slices.Clone(it.step.Cautions)
	for _, g := range b.groupsOf(it) {
		if !it.bench && it.material == nil && slices.ContainsFunc(it.step.Cautions, func(c string) bool { return slices.Contains(b.groups[g].substrate.Cautions, c) }) {
			all = append(all, b.groups[g].substrate.Cautions...)
		}
	}
	for _, u := range it.step.Uses {
		if u.Material != "" {
			all = append(all, b.lib.Materials[u.Material].Cautions...)
		}
	}
	if m := b.filmAtHand(it); m != nil {
		all = append(all, b.filmCautions(it, m)...)
	}
	slices.Sort(all)
	return slices.Compact(all)
}

// filmCautions: whoever mixes, sprays or flushes a film meets all of its parts.
func (b *builder) filmCautions(it *item, m *library.Material) []string {
	all := slices.Clone(m.Cautions)
	for _, p := range m.Mix {
		all = append(all, b.lib.Materials[slugOf(m, p.Part)].Cautions...)
	}
	if it.step.Cleans {
		all = append(all, b.lib.Materials[m.CleanWith].Cautions...)
	}
	if it.material != nil {
		all = append(all, b.gun.Applicator.Cautions...)
	}
	return all
}

// cautions is every danger that the plan meets, and where.
func (b *builder) cautions(steps []Step) []Caution {
	at := map[string][]string{}
	for _, s := range steps {
		for _, c := range s.Cautions {
			at[c] = append(at[c], s.ID)
		}
	}
	out := []Caution{}
	for _, slug := range slices.Sorted(maps.Keys(at)) {
		c := b.lib.Cautions[slug]
		out = append(out, Caution{Note: "caution/" + slug, Title: c.Title, Says: c.Says, Steps: at[slug]})
	}
	return out
}

func totals(p *Plan) Totals {
	var t Totals
	for i, s := range p.Steps {
		t.WorkMin += s.WorkMin
		if i == 0 || s.Start.Before(t.Start) {
			t.Start = s.Start
		}
		if s.End.After(t.End) {
			t.End = s.End
		}
		if s.Mix != nil {
			t.VOCg += s.Mix.VOCgPerL * s.Mix.TotalML * float64(s.Mix.Batches) / 1000
		}
	}
	for _, sum := range builds(p.Films) {
		t.DryUm = max(t.DryUm, sum)
	}
	t.ElapsedMin = t.End.Sub(t.Start).Minutes()
	return t
}

// builds is the dry build of each part's films.
func builds(films []Film) map[string]float64 {
	sums := map[string]float64{}
	for _, f := range films {
		for _, part := range f.Parts {
			sums[part] += f.DryUm
		}
	}
	return sums
}

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
	if over := r.Surface - r.DewPoint(); over < m.Air.OverDewPoint {
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

// untilRecoat is how long a film dries before the next may go on.
func (b *builder) untilRecoat(it *item) time.Duration {
	lag, ok := b.d.lag(it.material, "dry-to-recoat")
	if !ok {
		return 0
	}
	return toMinutes(lag)
}
