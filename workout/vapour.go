package workout

import (
	"cmp"

	"coatwright/planner/library"
	"coatwright/planner/trace"
	"coatwright/planner/ventilation"
	q "coatwright/quantity"
)

// vapourSheet says how much air keeps vapour from burning, how much of it there
// is, and how long the room takes to clear.
var vapourSheet = &Sheet{
	Slug: "vapour", Title: "Vapour that can burn",
	Lead:   "How near the solvent of a coat brings the air to what burns, how much air keeps it well below, and how long the room takes to clear.",
	Note:   "background/how-vapour-burns",
	fields: vapourFields,
	answer: vapourAnswer,
}

// ownSolvent is chosen where a safety data sheet says how the vapour burns.
const ownSolvent = "own"

// How the air of the space moves.
const (
	airSwept = "swept"
	airMixed = "mixed"
)

var (
	explosive = q.Range[q.Fraction]{Low: 0.001, High: 0.2}
	yields    = q.Range[q.VapourYield]{Low: 50, High: 1000}
	spraying  = q.Range[q.Time]{Low: 60, High: 24 * 3600}
	flashing  = q.Range[q.Time]{Low: 0, High: 24 * 3600}
	spaces    = q.Range[q.Volume]{Low: 0.1, High: 1e5}
	remains   = q.Range[q.Fraction]{Low: 1e-6, High: 0.99}
)

func vapourFields(e *Entry) []Field {
	choices := sprayedChoices(e.lib, func(m *library.Material) bool { return burns(e.lib, m) })
	first := cmp.Or(tellingMix(e.lib, choices), ownSolvent)
	choices = append(choices, Choice{ownSolvent, "A solvent that I enter", "From its safety data sheet"})
	fields := []Field{{Key: "of", Label: "What is sprayed", Choices: choices, Default: first}}
	of := chosen(e, "of", first)
	if of == ownSolvent {
		fields = append(fields,
			Field{Key: "limit", Label: "Lower explosive limit", Hint: "1.2 % of the air", Default: "1.2 %"},
			Field{Key: "makes", Label: "Vapour from a volume of solvent", Hint: "200 L/L or 27 ft3/gal", Default: "200 L/L"},
			Field{Key: "solvent", Label: "Solvent, share of what is sprayed", Hint: "what solids and water leave: 50 %", Default: "50 %"})
	}
	if m := e.lib.Materials[of]; m != nil && len(m.Mix) > 0 {
		tools := applicatorChoices(e.lib)
		fields = append(fields, Field{Key: "with", Label: "Mixed for", Choices: tools, Default: firstOf(tools)})
	}
	return append(fields,
		Field{Key: "sprayed", Label: "Amount sprayed in one coat", Hint: "with what misses the part: 300 mL or 10 fl oz", Default: "300 mL"},
		Field{Key: "spray", Label: "Spraying takes", Hint: "of one coat: 10 min", Default: "10 min"},
		Field{Key: "flash", Label: "Flash takes", Hint: "until it is dull: 10 min; 0 min for the worst", Default: "10 min"},
		Field{Key: "space", Label: "The space", Hint: "4 m by 3 m by 2.5 m is 30 m3; 1060 ft3", Default: "30 m3"},
		Field{Key: "flow", Label: "Air that leaves it", Hint: "600 m3/h or 350 cfm; 0 m3/h for a shut room", Default: "600 m3/h"},
		Field{Key: "moves", Label: "The air", Default: airMixed, Choices: []Choice{
			{Value: airMixed, Title: "mixes in a room"},
			{Value: airSwept, Title: "sweeps a booth"},
		}},
		Field{Key: "left", Label: "It counts as clear when there is left", Hint: "1 % of the vapour", Default: "1 %"})
}

// burns reports whether the notes say of every solvent in a mix how it burns,
// and there is one.
func burns(lib *library.Library, m *library.Material) bool {
	known := func(m *library.Material) bool { return m.Vapour.LEL > 0 && m.Vapour.Yield > 0 }
	if len(m.Mix) == 0 {
		return known(m)
	}
	solvent := false
	for _, p := range m.Mix {
		part := partOf(lib, m, p)
		if leaves := ventilation.SolventShare(part.SolidsByVolume, part.Water) > 0; leaves {
			solvent = true
			if !known(part) {
				return false
			}
		}
	}
	return solvent
}

// coatOf is a coat that gives off vapour, and how that is known.
type coatOf struct {
	vapour             ventilation.Vapour
	solvent            q.Range[q.Fraction] // share of what is sprayed
	lel, yield, leaves trace.Figure
}

func vapourAnswer(e *Entry) *Answer {
	of := e.text("of")
	if e.problems["of"] != "" {
		return nil
	}
	var c coatOf
	if of == ownSolvent {
		c = enteredCoat(e)
	} else {
		c = mixedCoat(e, e.lib.Materials[of])
	}
	b := blowing{
		coatOf: c, paint: within(e, "sprayed", vocAmounts), spray: within(e, "spray", spraying), flash: within(e, "flash", flashing),
		left:  within(e, "left", remains),
		Space: ventilation.Space{Volume: within(e, "space", spaces), Flow: within(e, "flow", fans), Mixing: ventilation.Room},
	}
	if e.text("moves") == airSwept {
		b.Mixing = ventilation.Mixed
	}
	if !e.sound() {
		return nil
	}
	a, err := b.answer()
	if err != nil {
		e.take("of", err)
		return nil
	}
	return a
}

// enteredCoat takes what a safety data sheet says.
func enteredCoat(e *Entry) coatOf {
	v := ventilation.Vapour{LEL: within(e, "limit", explosive), Yield: within(e, "makes", yields)}
	share := within(e, "solvent", shares)
	if share == 0 && e.sound() {
		e.fail("solvent", "Found %q, expected more than nothing.", e.values["solvent"])
	}
	return coatOf{v, q.Range[q.Fraction]{Low: share, High: share},
		limitFigure(v.LEL, []trace.Input{trace.In("LEL", "of the solvent", v.LEL, entered("limit"))}),
		yieldFigure(v.Yield, []trace.Input{trace.In("v", "of the solvent", v.Yield, entered("makes"))}),
		solventFigure([]q.Fraction{share}, []trace.Input{trace.In("s", "of what is sprayed", share, entered("solvent"))}),
	}
}

// mixedCoat blends the solvents of a mix of the library.
func mixedCoat(e *Entry, m *library.Material) coatOf {
	applicator := ""
	if len(m.Mix) > 0 {
		applicator = e.text("with")
	}
	s, err := mixedFor(e.lib, m, applicator)
	if err != nil {
		e.take("of", err)
		return coatOf{}
	}
	var leaves []q.Fraction
	for recipe := range s.mixes {
		leaves = append(leaves, s.solvent(recipe))
	}
	v, err := ventilation.Blend(s.solvents())
	if err != nil {
		e.take("of", err)
		return coatOf{}
	}
	return coatOf{v, spannedBy(leaves),
		limitFigure(v.LEL, s.evaporating("LEL", func(m *library.Material) q.Value { return q.ValueOf(m.Vapour.LEL) })),
		yieldFigure(v.Yield, s.evaporating("v", func(m *library.Material) q.Value { return q.ValueOf(m.Vapour.Yield) })),
		solventFigure(leaves, s.blended("s", func(m *library.Material) (q.Value, *trace.Span) { return q.ValueOf(solventIn(m)), nil })),
	}
}

// solventIn is the share of a material's volume that evaporates and burns.
func solventIn(m *library.Material) q.Fraction {
	return ventilation.SolventShare(m.SolidsByVolume, m.Water)
}

// solvent is the share of one of the mixes that evaporates and burns.
func (s sprayed) solvent(recipe int) q.Fraction {
	var sum q.Fraction
	for _, p := range s.parts {
		sum += p.shares[recipe] * solventIn(p.Material)
	}
	return sum
}

// solvents are those of the likeliest mix.
func (s sprayed) solvents() []ventilation.Solvent {
	var out []ventilation.Solvent
	for _, p := range s.parts {
		out = append(out, ventilation.Solvent{
			Name: p.Title, Volume: q.Volume(p.shares[0] * solventIn(p.Material)), Vapour: ventilation.Vapour(p.Vapour),
		})
	}
	return out
}

// evaporating are the inputs of a blend of solvents: how much of each there is in
// a litre of mix, and what its note says of its vapour.
func (s sprayed) evaporating(symbol string, says func(*library.Material) q.Value) []trace.Input {
	var inputs []trace.Input
	for _, p := range s.parts {
		leaves := p.shares[0] * solventIn(p.Material)
		if leaves == 0 {
			continue
		}
		inputs = append(inputs,
			trace.In("", "solvent of "+lowered(p.Title)+" in the mix", leaves, fromFigure("solvent-share")),
			trace.Input{Symbol: symbol, Name: "of " + lowered(p.Title), Value: says(p.Material), Origin: fromNote("material/"+p.Slug, p.Standing)})
	}
	return inputs
}
