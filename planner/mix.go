package planner

import (
	"fmt"
	"math"

	"coatwright/planner/amounts"
	dry "coatwright/planner/drying"
	"coatwright/planner/library"
	q "coatwright/quantity"
)

// mixParts is the recipe of m for an applicator, in pouring order, with the
// middle of every range.
func mixParts(m *library.Material, lib *library.Library, applicator string) []amounts.Part {
	parts := make([]amounts.Part, len(m.Mix))
	for i, p := range m.Mix {
		of := lib.Materials[slugOf(m, p.Part)]
		parts[i] = amounts.Part{Name: p.Part, Density: of.Density, Solids: of.SolidsByVolume, VOC: q.Density(of.VOC), Parts: p.Parts, Of: p.Of}
		if p.Of != "" {
			parts[i].Share = share(p, applicator).Middle()
		}
	}
	return parts
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

// need is how much mix a film takes.
type need struct {
	low, likely, high q.Volume
	transfer          q.Range[q.Fraction] // over all parts
}

// needed sums over the parts what lands on each form, and adds what stays in
// the cup once. Low and high take the applicator at its best and worst, and the
// can's figures as far off as their standing allows.
func (b *builder) needed(it *item, solids q.Fraction) need {
	a := it.film.Tool.Applicator
	build := it.film.Build * q.Length(it.film.coats)
	n := need{transfer: q.Range[q.Fraction]{Low: 1}}
	for _, g := range b.groupsOf(it) {
		area := b.area(&item{step: it.step, film: it.film, actions: map[int]int{g: it.actions[g]}})
		t := a.Transfer[b.groups[g].form]
		low, likely, high := amounts.Needed(area, build, solids, t, 0)
		n.low, n.likely, n.high = n.low+low, n.likely+likely, n.high+high
		n.transfer.Low, n.transfer.High = min(n.transfer.Low, t.Low), max(n.transfer.High, t.High)
	}
	off := b.lib.Words.StandingOf(it.film.Standing).Amount
	n.low = n.low*q.Volume(off.Low) + a.Loss
	n.likely += a.Loss
	n.high = n.high*q.Volume(off.High) + a.Loss
	return n
}

// mix is what to pour for the film that it lays.
func (b *builder) mix(it *item) *Mix {
	m, tool := it.film.Material, it.film.Tool
	parts := mixParts(m, b.lib, tool.Slug)
	solids, err := amounts.SolidsOfMix(parts)
	if err != nil {
		return nil
	}
	voc, _ := amounts.VOCOfMix(parts)
	n := b.needed(it, solids)
	total := amounts.RoundUp(n.likely)
	hands, flash := b.hands(it)
	life := dry.PotLife(m.PotLife, b.job.Room.Temperature)
	mix := &Mix{
		LowML: n.low.Millilitres(), HighML: n.high.Millilitres(),
		Transfer: fmt.Sprintf("%.0f to %.0f %%", n.transfer.Low.Percent(), n.transfer.High.Percent()),
		StandMin: m.Stand.Minutes(), PotLife: life.Minutes(), StrainUm: m.Strain.Micrometres(),
		Batches:  max(1, int(math.Ceil(float64((hands+flash)/max(life-m.Stand, 60))))),
		Fills:    amounts.Batches(total, tool.Applicator.Cup),
		VOCgPerL: float64(voc),
	}
	total /= q.Volume(mix.Batches)
	pours, err := amounts.Pours(parts, total)
	if err != nil {
		return nil
	}
	for i, p := range pours {
		of := b.lib.Materials[slugOf(m, m.Mix[i].Part)]
		mix.Lines = append(mix.Lines, Pour{
			Material: of.Slug, Title: of.Title, Share: shareText(m, m.Mix[i], b.lib, tool.Slug),
			ML: p.Volume.Millilitres(), G: p.Mass.Grams(), MarkML: p.Mark.Millilitres(), MarkG: p.MarkMass.Grams(),
		})
	}
	last := mix.Lines[len(mix.Lines)-1]
	mix.TotalML, mix.TotalG = last.MarkML, last.MarkG
	return mix
}

// shareText says what a pour is: "2 parts", "7.5 % of the clear binder (5 to 10)".
func shareText(m *library.Material, p library.MixPart, lib *library.Library, applicator string) string {
	if p.Of == "" {
		if p.Parts == 1 {
			return "1 part"
		}
		return fmt.Sprintf("%g parts", p.Parts)
	}
	r := share(p, applicator)
	text := fmt.Sprintf("%g %% of the %s", round(r.Middle().Percent(), 1), lowerFirst(lib.Materials[slugOf(m, p.Of)].Title))
	if r.Low != r.High {
		text += fmt.Sprintf(" (%g to %g)", round(r.Low.Percent(), 1), round(r.High.Percent(), 1))
	}
	return text
}

func round(x float64, digits int) float64 {
	p := math.Pow(10, float64(digits))
	return math.Round(x*p) / p
}
