package workout

import (
	"errors"
	"strings"

	"coatwright/planner/library"
	"coatwright/planner/mix"
	"coatwright/planner/trace"
	"coatwright/planner/voc"
	q "coatwright/quantity"
)

// vocOfMix blends a mix of the library.
func vocOfMix(e *Entry, m *library.Material) vocOf {
	applicator := ""
	if len(m.Mix) > 0 {
		applicator = e.text("with")
	}
	s, err := mixedFor(e.lib, m, applicator)
	if err != nil {
		e.take("of", err)
		return vocOf{}
	}
	v := vocOf{without: voc.LessWaterFormula, category: m.Category, says: s.standings(e.lib.Words)}
	if v.liquids, err = s.liquids(e.lib.Words); err != nil {
		e.take("of", err)
		return vocOf{}
	}
	for _, p := range s.parts {
		v.solids += p.shares[0] * p.SolidsByVolume
	}
	v.figures = []trace.Figure{v.asSprayed(voc.BlendFormula, s.blended("VOC", func(m *library.Material) (q.Value, *trace.Span) {
		off := vocRange(m, e.lib.Words)
		return q.ValueOf(m.VOC), spanOf(off)
	}))}
	v.less = []trace.Input{taken("VOC", "as sprayed", v.figures[0])}
	if v.liquids[0].Water.High > 0 {
		v.addShare("mix-water", "Vw/V", "Water in it", s, func(l voc.Liquid) q.Fraction { return l.Water.High }, func(m *library.Material) q.Fraction { return m.Water })
	}
	if v.liquids[0].Exempt > 0 {
		v.addShare("mix-exempt", "Vec/V", "Solvent that the law leaves out", s, func(l voc.Liquid) q.Fraction { return l.Exempt }, func(m *library.Material) q.Fraction { return m.Exempt })
	}
	return v
}

// addShare adds the figure of what share of a mix is water, or is left out, and
// has it go into the VOC less water.
func (v *vocOf) addShare(key, symbol, name string, s sprayed, of func(voc.Liquid) q.Fraction, in func(*library.Material) q.Fraction) {
	var all []q.Fraction
	for _, l := range v.liquids {
		all = append(all, of(l))
	}
	f := spanned(trace.Figure{Key: key, Name: name, Formula: mix.MeanFormula}, all)
	f.Inputs = s.blended(symbol, func(m *library.Material) (q.Value, *trace.Span) { return q.ValueOf(in(m)), nil })
	v.figures = append(v.figures, f)
	v.less = append(v.less, taken(symbol, strings.ToLower(name), f))
}

// liquids are what a mix may be: first the likeliest, then each of the mixes with
// as little and as much VOC in its parts as the standing of their notes allows.
func (s sprayed) liquids(words *library.Vocabulary) ([]voc.Liquid, error) {
	var out []voc.Liquid
	add := func(recipe int, holds func(*library.Material) q.Concentration) error {
		l, err := voc.Blend(s.vocParts(recipe, holds))
		out = append(out, l)
		return err
	}
	err := add(0, func(m *library.Material) q.Concentration { return m.VOC })
	for i := range s.mixes {
		err = errors.Join(err,
			add(i, func(m *library.Material) q.Concentration { return vocRange(m, words).Low }),
			add(i, func(m *library.Material) q.Concentration { return vocRange(m, words).High }))
	}
	return out, err
}

// vocRange is how little and how much VOC a material may hold, by the standing of
// its note; no more than all that is not water.
func vocRange(m *library.Material, words *library.Vocabulary) q.Range[q.Concentration] {
	off := words.StandingOf(m.Standing).Amount
	r := q.Range[q.Concentration]{Low: m.VOC * q.Concentration(off.Low), High: m.VOC * q.Concentration(off.High)}
	if m.Density > 0 {
		dry := q.Concentration(m.Density - q.Density(m.Water)*voc.WaterDensity)
		r.High = max(m.VOC, min(r.High, dry))
	}
	return r
}

// vocParts are the parts of one of the mixes, each with the VOC that it holds.
func (s sprayed) vocParts(recipe int, holds func(*library.Material) q.Concentration) []voc.Part {
	var parts []voc.Part
	for _, p := range s.parts {
		parts = append(parts, voc.Part{
			Name: p.Title, Volume: q.Volume(p.shares[recipe]),
			Liquid: voc.Liquid{VOC: holds(p.Material), Water: q.Range[q.Fraction]{Low: p.Water, High: p.Water}, Exempt: p.Exempt, Density: p.Density},
		})
	}
	return parts
}

// vocByVolume takes what a data sheet says of a litre.
func vocByVolume(e *Entry) vocOf {
	holds, water := within(e, "holds", volatile), within(e, "wet", shares)
	exempt, solids, weighs := within(e, "exempt", shares), within(e, "solid", shares), within(e, "weighs", liquids)
	l := voc.Liquid{VOC: holds, Water: q.Range[q.Fraction]{Low: water, High: water}, Exempt: exempt, Density: weighs}
	switch err := l.Check(); {
	case !e.sound():
	case water+exempt+solids > 1:
		e.fail("wet", "Found shares of the volume that make %.3g %% together, expected no more than 100 %%.", (water + exempt + solids).Percent())
	case err != nil && weighs > 0 && (voc.Liquid{VOC: holds, Water: l.Water, Exempt: exempt}).Check() == nil:
		e.take("weighs", err)
	default:
		e.take("wet", err)
	}
	v := vocOf{liquids: []voc.Liquid{l}, solids: solids, without: voc.LessWaterFormula}
	v.figures = []trace.Figure{v.asSprayed(voc.ActualFormula, []trace.Input{trace.In("VOC", "of the product", holds, entered("holds"))})}
	v.less = []trace.Input{
		taken("VOC", "as sprayed", v.figures[0]), trace.In("Vw/V", "water", water, entered("wet")),
	}
	if exempt > 0 {
		v.less = append(v.less, trace.In("Vec/V", "solvent that the law leaves out", exempt, entered("exempt")))
	}
	return v
}

// vocByMass takes what a data sheet says of a kilogram.
func vocByMass(e *Entry) vocOf {
	w := voc.Weighed{Density: within(e, "weighs", liquids), Solids: within(e, "solid", shares), Water: within(e, "wet", shares)}
	l, err := w.Liquid()
	if e.sound() {
		e.take("wet", err)
	}
	v := vocOf{liquids: []voc.Liquid{l}, without: voc.WeighedFormula}
	v.less = []trace.Input{
		trace.In("Dc", "density", w.Density, entered("weighs")),
		trace.In("", "solids, of the mass", w.Solids, entered("solid")),
		trace.In("", "water, of the mass", w.Water, entered("wet")),
	}
	v.figures = []trace.Figure{v.asSprayed(voc.ActualFormula, v.less)}
	v.less = append(v.less, trace.In("Dw", "density of water", voc.WaterDensity, trace.Origin{From: trace.FromSource}))
	return v
}
