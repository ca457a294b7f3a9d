package workout

import (
	"cmp"
	"fmt"
	"slices"

	"coatwright/planner"
	"coatwright/planner/library"
	"coatwright/planner/mix"
	"coatwright/planner/trace"
	"coatwright/planner/viscosity"
	q "coatwright/quantity"
)

// thinningSheet says how much thinner brings a paint to where it sprays.
var thinningSheet = &Sheet{
	Slug: "thinning", Title: "Thinning by the cup",
	Lead:   "How much thinner a paint takes until a cup runs as it should, within what its recipe allows.",
	Note:   "background/thinning",
	fields: thinningFields,
	answer: thinningAnswer,
}

// What is known of how the thinner works: its own viscosity, or a second reading
// with some of it in.
const (
	byThinner = "thinner"
	byReading = "reading"
)

// ownPaint is chosen for a paint that no note knows.
const ownPaint = "own-paint"

// firstThinner stands for thinners of which nobody knows the viscosity: that of
// water at 20 C is 1.0 mm2/s, and common solvents have 0.5 to 1.5; both from memory.
const firstThinner q.Viscosity = 1e-6

var (
	thinners  = q.Range[q.Viscosity]{Low: 0.21e-6, High: 20e-6}
	thinnedBy = q.Range[q.Fraction]{Low: 0, High: 3}
)

func thinningFields(e *Entry) []Field {
	choices := sprayedChoices(e.lib, func(m *library.Material) bool { return m.Viscosity.High > 0 && thinnerOf(e.lib, m) != nil })
	first := cmp.Or(tellingMix(e.lib, choices), ownPaint)
	choices = append(choices, Choice{ownPaint, "A paint that no note knows", "From a data sheet"})
	fields := []Field{{Key: "of", Label: "Paint", Choices: choices, Default: first}}
	m := e.lib.Materials[e.choice("of", first)]
	aim := firstThick
	if m != nil {
		tools := applicatorChoices(e.lib)
		fields = append(fields, Field{Key: "with", Label: "Sprayed with", Choices: tools, Default: firstOf(tools)})
		aim = m.Viscosity.Middle()
	} else {
		fields = append(fields, Field{Key: "allowed", Label: "Thinner that the sheet allows", Hint: "of the unthinned mix: 5 to 10 %", Optional: true})
	}
	cup := cupFor(aim)
	fields = append(fields,
		Field{Key: "cup", Label: "Cup", Choices: cupChoices(), Default: cup.Name()},
		Field{Key: "want", Label: "It should run", Hint: "25 to 30 s; left empty: as the note of the paint has it", Optional: m != nil, Default: wantAtFirst(m, cup, aim)},
		Field{Key: "reads", Label: "It runs now, without thinner", Hint: "the mix with all else in it: 60 s", Default: secondsOf(cup, 1.6*aim)},
		Field{Key: "known", Label: "What I know of the thinner", Default: byThinner, Choices: []Choice{
			{Value: byThinner, Title: "no reading yet: an estimate"}, {Value: byReading, Title: "how the cup runs with some of it in"},
		}})
	if e.choice("known", byThinner) == byReading {
		fields = append(fields,
			Field{Key: "tried", Label: "Thinner in it then", Hint: "of the unthinned mix: 5 %", Default: "5 %"},
			Field{Key: "then", Label: "It ran then", Hint: "40 s", Default: secondsOf(cup, 1.15*aim)})
	}
	return append(fields,
		Field{Key: "thinner", Label: "Viscosity of the thinner", Hint: "of water about 1 mm2/s, of solvents 0.5 to 1.5 (from memory)", Default: metric(firstThinner)},
		warmthField(),
		Field{Key: "amount", Label: "Unthinned mix in the cup", Hint: "250 mL or 8 fl oz", Default: "250 mL"})
}

// wantAtFirst is what should run where no note says it.
func wantAtFirst(m *library.Material, cup viscosity.Cup, aim q.Viscosity) string {
	if m != nil {
		return ""
	}
	return secondsOf(cup, aim)
}

// secondsOf is a cup's reading of v as somebody would enter it.
func secondsOf(cup viscosity.Cup, v q.Viscosity) string {
	t, _ := cup.Time(v) // outside its range only an example that is told of
	return seconds(t) + " s"
}

// thinnerOf is the part of m's mix that thins it: a share of another without
// solids of its own. It is nil for a material that is not thinned.
func thinnerOf(lib *library.Library, m *library.Material) *library.MixPart {
	for i, p := range m.Mix {
		if of := partOf(lib, m, p); p.Of != "" && of.SolidsByVolume == 0 {
			return &m.Mix[i]
		}
	}
	return nil
}

// thinningOf is a paint that is to be thinned. Shares are of the unthinned mix:
// of all that is in the cup but the thinner.
type thinningOf struct {
	recipe
	thins   string              // the thinner among the parts; "" where no note knows it
	per     q.Fraction          // what the recipe takes it of, as a share of the unthinned mix
	allowed q.Range[q.Fraction] // zero where nobody says
	from    trace.Origin        // of allowed

	aim     q.Range[q.Viscosity]
	aimFrom trace.Origin
	now     viscosity.Reading
	tried   viscosity.Reading // zero where none was taken
	share   q.Fraction        // of thinner in tried
	thinner q.Viscosity
	amount  q.Volume
	rule    viscosity.Thinning
	advice  viscosity.Advice
}

func thinningAnswer(e *Entry) *Answer {
	t := thinningOf{recipe: recipe{lib: e.lib}}
	if t.readPaint(e); !e.sound() {
		return nil
	}
	cup, _ := cupNamed(e.text("cup"))
	if !e.sound() {
		return nil
	}
	t.readAim(e, cup)
	t.readWorking(e, cup)
	says := readWarm(e, t.now)
	if !e.sound() || !t.work(e) {
		return nil
	}
	return &Answer{Verdict: t.judge(), Says: slices.Concat(t.should(), says, t.remarks()), Figures: t.figures(), Tables: []Table{t.table()}, Defers: t.warnings()}
}

// readPaint reads which paint it is, and what its recipe has of thinner.
func (t *thinningOf) readPaint(e *Entry) {
	of := e.text("of")
	if t.material = e.lib.Materials[of]; t.material == nil {
		if of == ownPaint {
			t.per, t.allowed, t.from = 1, ownRange(e, "allowed", thinnedBy, known[q.Fraction]{}).span, entered("allowed")
		}
		return
	}
	p := thinnerOf(e.lib, t.material)
	t.parts, t.thins, t.from = planner.MixParts(t.material, e.lib, e.text("with")), p.Part, t.noted()
	unthinned := slices.Clone(t.parts)
	unthinned[t.place(t.thins)].Share = 0
	shares, err := mix.Shares(unthinned)
	if e.take("of", err); err != nil {
		return
	}
	thinner := t.parts[t.place(t.thins)]
	t.per = shares[t.place(thinner.Of)]
	t.allowed = q.Range[q.Fraction]{Low: thinner.Range.Low * t.per, High: thinner.Range.High * t.per}
}

// readAim reads how the cup should run.
func (t *thinningOf) readAim(e *Entry, cup viscosity.Cup) {
	want := readRange[q.Time](e, "want")
	if e.values["want"] == "" {
		if t.material != nil {
			t.aim, t.aimFrom = t.material.Viscosity, t.noted()
			_, err := cup.Time(t.aim.Middle())
			e.take("cup", err)
		}
		return
	}
	low, err := cup.Viscosity(want.Low)
	e.take("want", err)
	high, err := cup.Viscosity(want.High)
	e.take("want", err)
	t.aim, t.aimFrom = q.Range[q.Viscosity]{Low: low, High: high}, entered("want")
}

// readWorking reads how the paint runs, and what is known of the thinner.
func (t *thinningOf) readWorking(e *Entry, cup viscosity.Cup) {
	t.now = readCup(e, cup, "reads")
	if e.text("known") == byReading {
		t.tried, t.share = readCup(e, cup, "then"), within(e, "tried", thinnedBy)
	}
	t.thinner, t.amount = within(e, "thinner", thinners), within(e, "amount", mixAmounts)
}

// work works out what to pour. It is not ok where no rule fits what was entered.
func (t *thinningOf) work(e *Entry) bool {
	v, _ := t.now.Viscosity() // was read
	var err error
	if t.tried.Time > 0 {
		t.rule, err = viscosity.Calibrated(t.now, t.tried, t.share, t.thinner)
		e.take("then", err)
	} else {
		t.rule, err = viscosity.Estimate(v, t.thinner)
		e.take("thinner", err)
	}
	if err != nil {
		return false
	}
	at, err := t.now.Cup.Time(t.aim.Middle())
	if e.take("want", err); err != nil {
		return false
	}
	t.advice, err = t.rule.Advise(viscosity.Reading{Cup: t.now.Cup, Time: at}, t.allowed)
	e.take("thinner", err)
	return err == nil
}

// judge says in a line what to do.
func (t *thinningOf) judge() *Verdict {
	pour := fmt.Sprintf("%s into the %s, which is %s of the unthinned mix", metric(t.volume(t.advice.Pour)), metric(t.amount), metric(t.advice.Pour))
	switch {
	case t.rule.Paint < t.aim.Low:
		return &Verdict{"no", "It is thinner than it sprays at, and would run. Thinner makes it worse: mix in what has none yet."}
	case t.advice.Held == viscosity.Most:
		return &Verdict{"care", fmt.Sprintf("The recipe ends before the cup does, which wants %s or more. Pour %s, and no more. If it still runs slowly, see whether it is cold, and ask the data sheet before you go on.",
			metric(t.advice.Share.Low), pour)}
	case t.advice.Pour == 0:
		return &Verdict{"go", "It sprays as it is: pour no thinner, and let a card tell."}
	case t.advice.Held == viscosity.Least:
		return &Verdict{"go", fmt.Sprintf("The cup would do with %s, and the recipe wants more: pour %s. Stir, and run the cup.", metric(t.advice.Share.High), pour)}
	}
	return &Verdict{"go", fmt.Sprintf("Pour %s. Stir, run the cup, and go on in small steps.", pour)}
}

// should says how the cup should run.
func (t *thinningOf) should() []string {
	return []string{fmt.Sprintf("In the %s cup it should run %s s.", t.now.Cup.Name(), t.readsBetween(t.aim))}
}

// remarks are those of the advice but the one that the verdict gives.
func (t *thinningOf) remarks() []string {
	if t.advice.Held != viscosity.Free {
		return t.advice.Remarks[1:]
	}
	return t.advice.Remarks
}

// volume is so much thinner for what is in the cup.
func (t *thinningOf) volume(share q.Fraction) q.Volume { return t.amount * q.Volume(share) }

// of is what the shares are taken of by the recipe, in a sentence.
func (t *thinningOf) of() string {
	if t.thins == "" {
		return "the unthinned mix"
	}
	return t.name(t.parts[t.place(t.thins)].Of)
}
