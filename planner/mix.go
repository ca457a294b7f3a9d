package planner

import (
	"fmt"
	"maps"
	"math"
	"slices"

	dry "coatwright/planner/drying"
	"coatwright/planner/film"
	"coatwright/planner/library"
	"coatwright/planner/mix"
	"coatwright/planner/voc"
	q "coatwright/quantity"
)

// MixParts is the recipe of m for an applicator, in a pouring order that keeps
// the materials' own rules, with the middle of every range.
func MixParts(m *library.Material, lib *library.Library, applicator string) []mix.Part {
	parts := make([]mix.Part, len(m.Mix))
	for i, p := range m.Mix {
		of := lib.Materials[slugOf(m, p.Part)]
		parts[i] = mix.Part{Name: slugOf(m, p.Part), Density: of.Density, Solids: of.SolidsByVolume, Parts: p.Parts, Thins: of.Thins, Starts: of.Hardens}
		for _, into := range of.Into {
			if slices.ContainsFunc(m.Mix, func(o library.MixPart) bool { return slugOf(m, o.Part) == into }) {
				parts[i].Into = append(parts[i].Into, into)
			}
		}
		if p.Of != "" {
			r := share(p, applicator)
			parts[i].Of, parts[i].Share, parts[i].Range = slugOf(m, p.Of), r.Middle(), r
		}
	}
	if ordered, err := mix.Order(parts); err == nil {
		return ordered
	}
	return parts // the notes' own order: content reports rules that bite their own tail
}

func slugOf(m *library.Material, part string) string {
	if part == "base" {
		return m.Slug
	}
	return part
}

func share(p library.MixPart, applicator string) q.Range[q.Fraction] {
	if r, ok := p.Value[applicator]; ok {
		return r
	}
	return p.Value[""]
}

// Sprayed is the liquid that a recipe makes, as it is sprayed.
func Sprayed(parts []mix.Part, lib *library.Library) (voc.Liquid, error) {
	shares, err := mix.Shares(parts)
	if err != nil {
		return voc.Liquid{}, err
	}
	var blend []voc.Part
	for i, p := range parts {
		m := lib.Materials[p.Name]
		blend = append(blend, voc.Part{Name: m.Title, Volume: q.Volume(shares[i]), Liquid: voc.Liquid{
			VOC: m.VOC, Water: q.Range[q.Fraction]{Low: m.Water, High: m.Water}, Exempt: m.Exempt, Density: m.Density,
		}})
	}
	return voc.Blend(blend)
}

// need is how much mix a film takes.
type need struct {
	film.Estimate
	transfer q.Range[q.Fraction] // over all parts
}

// needed sums over the parts what lands on each form, and adds what stays in
// the applicator once. Low and high take the applicator at its best and worst,
// and the can's figures as far off as their standing allows.
func (b *builder) needed(it *item, solids q.Fraction) (need, error) {
	a := it.film.Tool.Applicator
	order := film.Order{Build: it.film.Build, Coats: it.film.coats, Solids: solids, Loss: a.Loss, Cleanings: 1}
	n := need{transfer: q.Range[q.Fraction]{Low: 1}}
	for _, g := range b.groupsOf(it) {
		t := a.Transfer[b.groups[g].form]
		order.Surfaces = append(order.Surfaces, film.Surface{Area: b.areaOn(it, g), Transfer: t})
		n.transfer.Low, n.transfer.High = min(n.transfer.Low, t.Low), max(n.transfer.High, t.High)
	}
	takes, err := order.Need()
	off := b.lib.Words.StandingOf(it.film.Standing).Amount
	n.Estimate = film.Estimate{
		Low:    takes.Sprayed.Low*q.Volume(off.Low) + takes.Lost,
		Likely: takes.Sprayed.Likely + takes.Lost,
		High:   takes.Sprayed.High*q.Volume(off.High) + takes.Lost,
	}
	return n, err
}

// mix is what to pour for the film that it lays, on a bench with those tools.
func (b *builder) mix(it *item, m bench) *Mix {
	material, tool := it.film.Material, it.film.Tool
	parts := MixParts(material, b.lib, tool.Slug)
	solids, err := mix.Solids(parts)
	if err != nil {
		return nil
	}
	n, err := b.needed(it, solids)
	if err != nil {
		return nil
	}
	hands, flash := b.hands(it)
	life := dry.PotLife(material.PotLife, b.job.Room.Temperature)
	batches, each := 1, m.cup.Up(n.Likely)
	in, err := mix.InBatches(mix.Batching{Total: n.Likely, Work: hands + flash, PotLife: life, Stand: material.Stand, Lines: m.cup})
	if err == nil {
		batches, each = len(in.Batches), in.Each
	}
	pours, err := mix.Pours(parts, each)
	if err != nil {
		return nil
	}
	out := &Mix{
		LowML: n.Low.Millilitres(), HighML: n.High.Millilitres(),
		Transfer: fmt.Sprintf("%.0f to %.0f %%", n.transfer.Low.Percent(), n.transfer.High.Percent()),
		StandMin: material.Stand.Minutes(), PotLife: life.Minutes(), StrainUm: material.Strain.Micrometres(),
		Batches: batches, Fills: film.Fills(n.Likely, tool.Applicator.Cup),
		LineML: m.cup.Step(each).Millilitres(), LineOzML: m.ounces.Step(each).Millilitres(), ScaleG: m.scale.Resolution.Grams(),
		Cups: cupChecks(material),
	}
	for _, b := range in.Batches {
		out.MixAt = append(out.MixAt, b.Mix.Minutes())
	}
	out.sprayed(parts, b.lib)
	out.least(parts, m.scale, b.lib.Words.Limits.Parts)
	for i, p := range pours {
		of := b.lib.Materials[p.Name]
		out.Lines = append(out.Lines, Pour{
			Material: of.Slug, Title: of.Title, Share: b.shareText(parts[i]),
			ML: p.Volume.Millilitres(), G: p.Mass.Grams(), MarkML: p.Mark.Millilitres(), MarkG: p.MarkMass.Grams(), Starts: p.Starts,
		})
	}
	last := out.Lines[len(out.Lines)-1]
	out.TotalML, out.TotalG = last.MarkML, last.MarkG
	return out
}

// sprayed sets what of the mix goes into the air.
func (m *Mix) sprayed(parts []mix.Part, lib *library.Library) {
	liquid, err := Sprayed(parts, lib)
	if err != nil {
		return
	}
	less := liquid.LessWater()
	m.VOCgPerL, m.LessWaterGPerL = float64(liquid.VOC), float64((less.Low+less.High)/2)
}

// least sets the smallest mix whose ratio the scale can hold to within a share.
func (m *Mix) least(parts []mix.Part, s mix.Scale, within q.Fraction) {
	least, err := mix.LeastByScale(parts, s, within)
	density, err2 := mix.Density(parts)
	if err == nil && err2 == nil && density > 0 {
		m.LeastML = q.Volume(float64(least.Total) / float64(density)).Millilitres()
	}
}

// bench is what a mix is measured with.
type bench struct {
	cup, ounces mix.Cup
	scale       mix.Scale
}

// benchOf is the cup and the scale that a step uses; the job's own scale goes
// before that of the notes.
func (b *builder) benchOf(s *library.Step) bench {
	var out bench
	for _, u := range s.Uses {
		if t := b.lib.Tools[u.Tool]; t != nil {
			out.scale.Resolution = max(out.scale.Resolution, t.Resolution)
			if len(t.Marks.Millilitres) > 0 {
				out.cup, out.ounces = cupOf(t.Marks.Millilitres), cupOf(t.Marks.Ounces)
			}
		}
	}
	if b.job.Scale > 0 {
		out.scale.Resolution = b.job.Scale
	}
	return out
}

func cupOf(marks []library.Mark) mix.Cup {
	cup := make(mix.Cup, len(marks))
	for i, m := range marks {
		cup[i] = mix.Graduation{UpTo: m.UpTo, Every: m.Every}
	}
	return cup
}

// measuringCup is the lines of the first cup in the notes that has any.
func measuringCup(lib *library.Library) mix.Cup {
	for _, slug := range slices.Sorted(maps.Keys(lib.Tools)) {
		if marks := lib.Tools[slug].Marks.Millilitres; len(marks) > 0 {
			return cupOf(marks)
		}
	}
	return nil
}

// shareText says what a pour is: "2 parts", "7.5 % of the clear binder (5 to 10)".
func (b *builder) shareText(p mix.Part) string {
	if p.Of == "" {
		if p.Parts == 1 {
			return "1 part"
		}
		return fmt.Sprintf("%g parts", p.Parts)
	}
	text := fmt.Sprintf("%g %% of the %s", round(p.Share.Percent(), 1), lowerFirst(b.lib.Materials[p.Of].Title))
	if p.Range.Low != p.Range.High {
		text += fmt.Sprintf(" (%g to %g)", round(p.Range.Low.Percent(), 1), round(p.Range.High.Percent(), 1))
	}
	return text
}

func round(x float64, digits int) float64 {
	p := math.Pow(10, float64(digits))
	return math.Round(x*p) / p
}
