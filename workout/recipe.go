package workout

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"coatwright/planner"
	"coatwright/planner/library"
	"coatwright/planner/mix"
	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// recipe is what somebody means to mix: a material of the library for an
// applicator, or a ratio that a data sheet prints.
type recipe struct {
	lib      *library.Library
	material *library.Material // nil for a ratio from a sheet
	parts    []mix.Part        // in pouring order
	entered  map[string]bool   // the parts whose share was entered
}

// ownRatio is chosen for a mix that no note knows.
const ownRatio = "own-ratio"

// A percentage of an own ratio is taken of one of these.
const (
	ofFirst  = "first"
	ofBefore = "before"
)

// ratioAtFirst is the ratio that stands in the field before anybody enters one.
const ratioAtFirst = "2:1 + 10 %"

// recipeFields ask for a mix: which, for what, with how much of what may vary.
// They stand at first at the mix that tells most. The recipe is the one that was
// chosen so far.
func recipeFields(e *Entry) ([]Field, recipe) {
	choices := sprayedChoices(e.lib, func(m *library.Material) bool { return len(m.Mix) > 1 })
	first := cmp.Or(tellingMix(e.lib, choices), ownRatio)
	choices = append(choices, Choice{ownRatio, "A ratio that I enter", "From a data sheet"})
	fields := []Field{{Key: "of", Label: "What is mixed", Choices: choices, Default: first}}
	r := recipeOf(e, e.choice("of", first))
	if r.material == nil {
		fields = append(fields,
			Field{Key: "ratio", Label: "Ratio by volume", Hint: "4:1:0.5, or 2:1 + 10 %, or 100 + 5..10 %", Default: ratioAtFirst},
			Field{Key: "percent", Label: "A percentage is taken", Default: ofFirst, Choices: []Choice{
				{Value: ofFirst, Title: "of the first part"}, {Value: ofBefore, Title: "of all that stands before it"},
			}})
	} else {
		tools := applicatorChoices(e.lib)
		fields = append(fields, Field{Key: "with", Label: "Mixed for", Choices: tools, Default: firstOf(tools)})
	}
	for _, p := range r.parts {
		if ranging(p) {
			fields = append(fields, Field{Key: "share-" + p.Name, Label: capital(r.name(p.Name)) + ", share of " + r.name(p.Of),
				Hint: q.ShowRange(q.Metric, p.Range), Default: q.Show(q.Metric, p.Share)})
		}
	}
	if r.material == nil {
		fields = append(fields, r.densityFields()...)
	}
	return fields, r
}

// densityFields ask for the densities of an own ratio.
func (r recipe) densityFields() []Field {
	var fields []Field
	for _, p := range r.parts {
		fields = append(fields, Field{Key: "density-" + p.Name, Label: "Density of " + r.name(p.Name),
			Hint: "for the scale: 0.99 kg/L or 8.3 lb/gal", Optional: true})
	}
	return fields
}

// ranging reports whether a part may be more or less.
func ranging(p mix.Part) bool { return p.Range.Low < p.Range.High }

// recipeOf is the recipe that was chosen, with the middle of every range. It has
// no parts where nobody could mix it.
func recipeOf(e *Entry, of string) recipe {
	r := recipe{lib: e.lib, material: e.lib.Materials[of], entered: map[string]bool{}}
	switch {
	case r.material != nil:
		r.parts = planner.MixParts(r.material, e.lib, e.choice("with", firstOf(applicatorChoices(e.lib))))
	case of == ownRatio:
		r.parts, _ = mix.ParseRatio(e.choice("ratio", ratioAtFirst), percentOf(e)) // a ratio that is none is told of in readRecipe
	}
	return r
}

// percentOf is what the percentages of an own ratio are taken of.
func percentOf(e *Entry) mix.PercentOf {
	if e.choice("percent", ofFirst) == ofBefore {
		return mix.OfBefore
	}
	return mix.OfFirst
}

// readRecipe reads which mix was chosen, and its shares.
func readRecipe(e *Entry) recipe {
	of := e.text("of")
	if !e.sound() {
		return recipe{}
	}
	r := recipeOf(e, of)
	if r.material == nil {
		e.text("percent")
		_, err := mix.ParseRatio(e.text("ratio"), percentOf(e))
		e.take("ratio", err)
	} else {
		e.text("with")
	}
	for i, p := range r.parts {
		if ranging(p) {
			key := "share-" + p.Name
			if share := within(e, key, p.Range); e.values[key] != q.Show(q.Metric, p.Share) {
				r.parts[i].Share, r.entered[p.Name] = share, true
			}
		}
		if r.material == nil && e.problems["ratio"] == "" {
			r.parts[i].Density = ownOr(e, "density-"+p.Name, liquids, known[q.Density]{}).value
		}
	}
	return r
}

// name is what a part is called in a sentence.
func (r recipe) name(part string) string {
	if m := r.lib.Materials[part]; m != nil && r.material != nil {
		return lowered(m.Title)
	}
	return part
}

// the is name with its article, where it takes one.
func (r recipe) the(part string) string {
	if r.material == nil {
		return part
	}
	return "the " + r.name(part)
}

// title is what a part is called where a line begins.
func (r recipe) title(part string) string { return capital(r.name(part)) }

// place is where the part of that name stands.
func (r recipe) place(name string) int {
	return slices.IndexFunc(r.parts, func(p mix.Part) bool { return p.Name == name })
}

// ratioFrom is where the share of a part comes from.
func (r recipe) ratioFrom(part string) trace.Origin {
	switch {
	case r.entered[part]:
		return entered("share-" + part)
	case r.material == nil:
		return entered("ratio")
	}
	return r.noted()
}

// noted is the note that the recipe stands in, or the entry of an own ratio.
func (r recipe) noted() trace.Origin {
	if r.material == nil {
		return entered("ratio")
	}
	return fromNote("material/"+r.material.Slug, r.material.Standing)
}

// partFrom is where the figures of a part itself come from.
func (r recipe) partFrom(part string) trace.Origin {
	if m := r.lib.Materials[part]; m != nil && r.material != nil {
		return fromNote("material/"+m.Slug, m.Standing)
	}
	return entered("density-" + part)
}

// ratioInput is what a recipe says of a part: so many parts, or a share.
func (r recipe) ratioInput(p mix.Part) trace.Input {
	if p.Of == "" {
		return trace.In("", "parts of "+r.name(p.Name), q.Number(p.Parts), r.ratioFrom(p.Name))
	}
	in := trace.In("", fmt.Sprintf("%s, share of %s", r.name(p.Name), r.name(p.Of)), p.Share, r.ratioFrom(p.Name))
	in.Range = spanOf(p.Range)
	if p.Range.IsZero() {
		in.Range = nil
	}
	return in
}

// ratioInputs are what the recipe says of all its parts.
func (r recipe) ratioInputs() []trace.Input {
	var inputs []trace.Input
	for _, p := range r.parts {
		inputs = append(inputs, r.ratioInput(p))
	}
	return inputs
}

// weighable reports whether the densities of all parts are known.
func (r recipe) weighable() bool {
	return !slices.ContainsFunc(r.parts, func(p mix.Part) bool { return p.Density == 0 })
}

// warnings are the cautions of all that goes into the cup, a sentence each.
func (r recipe) warnings() string {
	if r.material == nil {
		return "What is in the cans may harm skin, eyes and lungs: their labels and data sheets say what to wear."
	}
	var slugs []string
	for _, m := range r.materials() {
		slugs = append(slugs, m.Cautions...)
	}
	slices.Sort(slugs)
	var says []string
	for _, slug := range slices.Compact(slugs) {
		if c := r.lib.Cautions[slug]; c != nil {
			says = append(says, c.Says)
		}
	}
	return strings.Join(append(says, "Labels and data sheets of all that goes into the cup decide."), " ")
}

// materials are what the library has of all that goes into the cup.
func (r recipe) materials() []*library.Material {
	out := []*library.Material{r.material}
	for _, p := range r.parts {
		if p.Name != r.material.Slug {
			out = append(out, r.lib.Materials[p.Name])
		}
	}
	return out
}
