package critique

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"coatwright/planner"
	"coatwright/planner/library"
	"coatwright/planner/mix"
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

// mix compares one mix with the recipe of m: what is in it, in which shares, in
// which order, and whether it is enough.
func (b *bench) mix(i int, m *library.Material, edited *planner.Mix) []Finding {
	var found []Finding
	add := func(format string, args ...any) {
		found = append(found, b.finding(i, Breaks, "mix", fmt.Sprintf(format, args...), "The film is only as right as its mix."))
	}
	limits := b.lib.Words.Limits
	recipe := planner.MixParts(m, b.lib, b.applicator(i))
	perPart := 0.0
	for _, p := range recipe {
		ml, title := amountOf(edited, p.Name), b.named(p.Name)
		if lineOf(edited, p.Name) < 0 {
			add("There is no %s in it.", title)
			continue
		}
		if p.Of == "" {
			if each := ml / p.Parts; perPart == 0 {
				perPart = each
			} else if math.Abs(each/perPart-1) > float64(limits.Parts) {
				add("It has %.0f mL of %s for %.0f mL a part, and the recipe says %g parts.", ml, title, perPart, p.Parts)
			}
			continue
		}
		of := amountOf(edited, p.Of)
		low, high := float64(p.Range.Low), float64(p.Range.High)
		stray := float64(limits.Percentage)
		if share := ml / of; of > 0 && (share < low-stray || share > high+stray) {
			add("It has %.1f %% of %s, and the recipe says %g to %g %%.", 100*share, title, 100*low, 100*high)
		}
	}
	for _, l := range edited.Lines {
		if !slices.ContainsFunc(recipe, func(p mix.Part) bool { return p.Name == l.Material }) {
			add("%s is not in the recipe.", l.Title)
		}
	}
	for _, says := range b.outOfOrder(recipe, edited) {
		add("%s", says)
	}
	if total := edited.TotalML * edited.Times(); total < edited.LowML {
		add("It is %.0f mL, and the film takes at least %.0f mL.", total, edited.LowML)
	}
	return found
}

// outOfOrder says which pours break a rule of what they pour, or where they break
// none, which leave the order of the recipe.
func (b *bench) outOfOrder(recipe []mix.Part, edited *planner.Mix) []string {
	poured := slices.DeleteFunc(slices.Clone(recipe), func(p mix.Part) bool { return lineOf(edited, p.Name) < 0 })
	slices.SortStableFunc(poured, func(a, b mix.Part) int {
		return cmp.Compare(lineOf(edited, a.Name), lineOf(edited, b.Name))
	})
	var says []string
	for _, breach := range mix.CheckOrder(poured) {
		if lineOf(edited, breach.Wants) >= 0 { // what is not in it at all is told of already
			says = append(says, fmt.Sprintf("The %s goes in before the %s, which must be in the cup first.", b.named(breach.Part), b.named(breach.Wants)))
		}
	}
	if len(says) > 0 {
		return says
	}
	last := -1
	for _, p := range recipe {
		switch at := lineOf(edited, p.Name); {
		case at < 0:
		case at < last:
			says = append(says, fmt.Sprintf("The %s goes in too early: pour in the order of the recipe.", b.named(p.Name)))
		default:
			last = at
		}
	}
	return says
}

// named is the title of a material in a sentence.
func (b *bench) named(slug string) string { return lower(b.lib.Materials[slug].Title) }

// lineOf is the first line of a mix on which a material stands, -1 for none.
func lineOf(m *planner.Mix, slug string) int {
	return slices.IndexFunc(m.Lines, func(l planner.Pour) bool { return l.Material == slug })
}

func amountOf(m *planner.Mix, slug string) float64 {
	sum := 0.0
	for _, l := range m.Lines {
		if l.Material == slug {
			sum += l.ML
		}
	}
	return sum
}

// applicator is the slug of what lays the next film of the material that step i
// mixes, "" where none does.
func (b *bench) applicator(i int) string {
	for _, s := range b.plan.Steps[i:] {
		if s.Coats > 0 && s.Material == b.plan.Steps[i].Material {
			return strings.TrimPrefix(s.Applicator, "tool/")
		}
	}
	return ""
}
