package critique

import (
	"fmt"
	"math"
	"strings"

	"coatwright/planner"
	"coatwright/planner/library"
	q "coatwright/quantity"
)

// mixes compares every mix with its recipe.
func (b *bench) mixes() []Finding {
	var found []Finding
	for i, s := range b.plan.Steps {
		note := b.note(i)
		if note == nil || !note.Mixes || s.Mix == nil {
			continue
		}
		m := b.lib.Materials[strings.TrimPrefix(s.Material, "material/")]
		if m == nil {
			continue // reported where the film is laid
		}
		found = append(found, b.mix(i, m, s.Mix)...)
	}
	return found
}

// mix compares one mix with the recipe of m: what is in it, in which order, in
// which shares, and whether it is enough.
func (b *bench) mix(i int, m *library.Material, mix *planner.Mix) []Finding {
	var found []Finding
	add := func(format string, args ...any) {
		found = append(found, b.finding(i, Breaks, "mix", fmt.Sprintf(format, args...), "The film is only as right as its mix."))
	}
	poured, places := map[string]float64{}, map[string]int{}
	for n, l := range mix.Lines {
		poured[l.Material], places[l.Material] = poured[l.Material]+l.ML, n+1
	}
	slug := func(part string) string {
		if part == "base" {
			return m.Slug
		}
		return part
	}
	limits := b.lib.Words.Limits
	perPart, last := 0.0, 0
	for _, p := range m.Mix {
		ml := poured[slug(p.Part)]
		title := lower(b.lib.Materials[slug(p.Part)].Title)
		place := places[slug(p.Part)]
		switch {
		case place == 0:
			add("There is no %s in it.", title)
			continue
		case place < last:
			add("The %s goes in too early: pour in the order of the recipe.", title)
		}
		last = max(last, place)
		delete(poured, slug(p.Part))
		if p.Of == "" {
			if each := ml / p.Parts; perPart == 0 {
				perPart = each
			} else if math.Abs(each/perPart-1) > float64(limits.Parts) {
				add("It has %.0f mL of %s for %.0f mL a part, and the recipe says %g parts.", ml, title, perPart, p.Parts)
			}
			continue
		}
		of := amountOf(mix, slug(p.Of))
		low, high := shareOf(b, i, p)
		stray := float64(limits.Percentage)
		if share := ml / of; of > 0 && (share < low-stray || share > high+stray) {
			add("It has %.1f %% of %s, and the recipe says %g to %g %%.", 100*share, title, 100*low, 100*high)
		}
	}
	for _, l := range mix.Lines {
		if _, strange := poured[l.Material]; strange {
			add("%s is not in the recipe.", l.Title)
		}
	}
	if total := mix.TotalML * mix.Times(); total < mix.LowML {
		add("It is %.0f mL, and the film takes at least %.0f mL.", total, mix.LowML)
	}
	return found
}

func amountOf(mix *planner.Mix, slug string) float64 {
	sum := 0.0
	for _, l := range mix.Lines {
		if l.Material == slug {
			sum += l.ML
		}
	}
	return sum
}

// shareOf is the range of a percentage for the applicator of the next film.
func shareOf(b *bench, i int, p library.MixPart) (low, high float64) {
	var r q.Range[q.Fraction]
	r = p.Value[""]
	for _, s := range b.plan.Steps[i:] {
		if s.Coats > 0 && s.Material == b.plan.Steps[i].Material {
			if own, ok := p.Value[strings.TrimPrefix(s.Applicator, "tool/")]; ok {
				r = own
			}
			break
		}
	}
	return float64(r.Low), float64(r.High)
}
