package workout

import (
	"cmp"
	"strings"

	"coatwright/planner/library"
	"coatwright/planner/trace"
	"coatwright/planner/voc"
	q "coatwright/quantity"
)

// vocSheet says what solvent a mix gives off, and how it stands to the limits of
// the law.
var vocSheet = &Sheet{
	Slug: "voc", Title: "VOC of a mix",
	Lead:   "How much solvent a litre of mix holds, with its water and without, how much of it goes into the air, and where the law's limits lie.",
	Note:   "background/what-voc-counts",
	fields: vocFields,
	answer: vocAnswer,
}

// What is sprayed is one of the library's materials, or of which a data sheet
// gives one of these.
const (
	byVolume = "by-volume"
	byMass   = "by-mass"
)

// asNoted stands for the kind of product that a material's note names.
const asNoted = "as-noted"

var (
	vocAmounts = q.Range[q.Volume]{Low: 1e-6, High: 1}
	shares     = q.Range[q.Fraction]{Low: 0, High: 1}
	liquids    = q.Range[q.Density]{Low: 500, High: 3000}
	volatile   = q.Range[q.Concentration]{Low: 0, High: 1500}
	ownSheet   = "From a data sheet"
	ownChoices = []Choice{
		{byVolume, "VOC in a litre, and shares of the volume", ownSheet},
		{byMass, "Density, and shares of the mass", ownSheet},
	}
)

func vocFields(e *Entry) []Field {
	choices := sprayedChoices(e.lib, func(m *library.Material) bool { return knowsVOC(e.lib, m) })
	first := cmp.Or(tellingMix(e.lib, choices), byVolume)
	fields := []Field{{Key: "of", Label: "What is sprayed", Choices: append(choices, ownChoices...), Default: first}}
	of := chosen(e, "of", first)
	switch m := e.lib.Materials[of]; {
	case of == byVolume:
		fields = append(fields,
			Field{Key: "holds", Label: "VOC of the product", Hint: "with water and all: 420 g/L or 3.5 lb/gal", Default: "420 g/L"},
			Field{Key: "wet", Label: "Water, share of the volume", Hint: "60 %; 0 % for a solvent paint", Default: "0 %"},
			Field{Key: "exempt", Label: "Solvent that the law leaves out, share of the volume", Hint: "10 %", Optional: true},
			Field{Key: "solid", Label: "Solids by volume", Hint: "40 %", Optional: true},
			Field{Key: "weighs", Label: "Density", Hint: "1.05 kg/L or 8.8 lb/gal", Optional: true})
	case of == byMass:
		fields = append(fields,
			Field{Key: "weighs", Label: "Density", Hint: "1.05 kg/L or 8.8 lb/gal", Default: "1.05 kg/L"},
			Field{Key: "solid", Label: "Solids, share of the mass", Hint: "55 %", Default: "55 %"},
			Field{Key: "wet", Label: "Water, share of the mass", Hint: "30 %; 0 % for a solvent paint", Default: "0 %"})
	case m != nil && len(m.Mix) > 0:
		tools := applicatorChoices(e.lib)
		fields = append(fields, Field{Key: "with", Label: "Mixed for", Choices: tools, Default: firstOf(tools)})
	}
	return append(fields,
		Field{Key: "amount", Label: "Amount mixed", Hint: "500 mL or 17 fl oz", Default: "500 mL"},
		Field{Key: "kind", Label: "Kind of product, in the law", Choices: kindChoices(e.lib), Default: asNoted})
}

// firstOf is the first of some choices, "" for none.
func firstOf(choices []Choice) string {
	if len(choices) == 0 {
		return ""
	}
	return choices[0].Value
}

func kindChoices(lib *library.Library) []Choice {
	out := []Choice{{Value: asNoted, Title: "As its note says"}}
	for _, c := range lib.Words.Categories {
		out = append(out, Choice{Value: c.Name, Title: capital(spaced(c.Name))})
	}
	return out
}

// spaced is a listed word as people write it.
func spaced(word string) string { return strings.ReplaceAll(word, "-", " ") }

// knowsVOC reports whether the notes say of everything in a mix what VOC it
// holds: where there is neither that nor water, nobody has said.
func knowsVOC(lib *library.Library, m *library.Material) bool {
	said := func(m *library.Material) bool { return m.VOC > 0 || m.Water > 0 || m.SolidsByVolume == 1 }
	for _, p := range m.Mix {
		if !said(partOf(lib, m, p)) {
			return false
		}
	}
	return len(m.Mix) > 0 && m.Role != "" || m.Role == "" && said(m)
}

// vocOf is what is known of what is sprayed: the liquid that it is, where a
// recipe has ranges also at their ends, and how that came about.
type vocOf struct {
	liquids  []voc.Liquid // the first is the likeliest
	solids   q.Fraction   // by volume; zero where not known
	figures  []trace.Figure
	without  trace.Formula // of the VOC less water
	less     []trace.Input // ... and what goes into it
	category string
	says     []string
}

func vocAnswer(e *Entry) *Answer {
	of, amount, kind := e.text("of"), within(e, "amount", vocAmounts), e.text("kind")
	if e.problems["of"] != "" {
		return nil
	}
	var v vocOf
	switch of {
	case byVolume:
		v = vocByVolume(e)
	case byMass:
		v = vocByMass(e)
	default:
		v = vocOfMix(e, e.lib.Materials[of])
	}
	if !e.sound() {
		return nil
	}
	if kind != asNoted {
		v.category = kind
	}
	a := &Answer{Defers: voc.Defer}
	if err := v.judge(a, e.lib.Words); err != nil {
		e.take("of", err)
		return nil
	}
	a.Says = append(a.Says, v.says...)
	a.Figures = append(v.figures, v.lessWater())
	if f, ok := v.perSolids(); ok {
		a.Figures = append(a.Figures, f)
	}
	a.Figures = append(a.Figures, v.emitted(amount))
	return a
}
