package workout

import (
	"cmp"
	"fmt"
	"maps"
	"slices"

	spray "coatwright/planner/gun"
	"coatwright/planner/library"
	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// gunSheet says how one coat is laid on a face: passes, speed of the hand, time on
// the trigger, paint and air.
var gunSheet = &Sheet{
	Slug: "gun", Title: "Gun and hand",
	Lead: "How many passes a face takes and how fast the hand goes, for how long the trigger is pulled, and what that takes of paint and air.",
	Note: "background/one-pass",
	fields: func(e *Entry) []Field {
		fields := filmFields(e, func(choices []Choice) string { return tellingMix(e.lib, choices) })
		forms := formChoices(e.lib)
		return append(fields,
			Field{Key: "along", Label: "Length of a pass", Hint: "along the face: 0.8 m or 32 in", Default: "0.8 m"},
			Field{Key: "across", Label: "Width of the face", Hint: "across the passes: 0.6 m or 24 in", Default: "0.6 m"},
			Field{Key: "form", Label: "Form of the part", Choices: forms, Default: cmp.Or(widestForm(e.lib.Tools[fields[1].Default]), firstOf(forms))},
			Field{Key: "wet", Label: "Wet film wanted", Hint: "54 um or 2.1 mil; left empty: a full coat of the film", Optional: true},
			Field{Key: "flow", Label: "Paint through the gun", Hint: "150 mL/min or 5 fl oz/min; left empty: as its note says", Optional: true},
			Field{Key: "fan", Label: "Width of the fan on the part", Hint: "220 mm or 8.7 in; left empty: as its note says", Optional: true},
			Field{Key: "overlap", Label: "Overlap", Hint: "50 % for half; left empty: as its note says", Optional: true},
			Field{Key: "overrun", Label: "Trigger held past each end", Hint: "30 mm or 1.2 in", Default: "30 mm"},
			Field{Key: "turn", Label: "Turn from pass to pass", Hint: "trigger let go: 0.5 s", Default: "0.5 s"},
			Field{Key: "lands", Label: "Share of the paint that lands", Hint: "65 %, over the whole job; left empty: by applicator and form", Optional: true})
	},
	answer: gunAnswer,
}

var (
	sides    = q.Range[q.Length]{Low: 5e-3, High: 20}
	flows    = q.Range[q.Flow]{Low: 0.1e-6 / 60, High: 5e-3 / 60}
	fanWidth = q.Range[q.Length]{Low: 1e-3, High: 1}
	overlaps = q.Range[q.Fraction]{Low: 0, High: 0.95}
	overruns = q.Range[q.Length]{Low: 0, High: 1}
	turns    = q.Range[q.Time]{Low: 0, High: 60}
)

// mostOverrun is how far the trigger may be held past each end, in lengths of a
// pass.
const mostOverrun = 10

// widestForm is the form of which most lands with an applicator, "" for none.
func widestForm(tool *library.Tool) string {
	best := ""
	if tool == nil {
		return best
	}
	for _, form := range slices.Sorted(maps.Keys(tool.Applicator.Transfer)) {
		if best == "" || tool.Applicator.Transfer[form].Middle() > tool.Applicator.Transfer[best].Middle() {
			best = form
		}
	}
	return best
}

// sweep is one coat on a face.
type sweep struct {
	coating
	wet     known[q.Length]
	flow    known[q.Flow]
	fan     known[q.Length]
	overlap known[q.Fraction]
	hand    known[q.Speed]
	face    spray.Face
	stroke  spray.Stroke
	lands   known[q.Fraction] // of all that is sprayed
	over    known[q.Fraction] // of what is sprayed over the face
	misses  bool              // more would have to land than is sprayed over the face
	advice  spray.Advice
	setting spray.Setting // for one time over the face
	once    spray.Coat    // one time over the face
}

func gunAnswer(e *Entry) *Answer {
	s := readSweep(e)
	if !e.sound() || !s.work(e) {
		return nil
	}
	a := &Answer{Verdict: s.judge(), Says: s.says()}
	if s.wet.from.From == trace.FromFigure {
		if s.mixed != nil {
			a.Figures = append(a.Figures, *s.mixed)
		}
		a.Figures = append(a.Figures, s.wetFigure())
	}
	a.Figures = append(a.Figures, s.passesFigure(), s.overFigure(), s.speedFigure(), s.passFigure(), s.onceFigure())
	if s.advice.Coats > 1 {
		a.Figures = append(a.Figures, s.crossingsFigure())
	}
	trigger := s.triggerFigure()
	a.Figures = append(a.Figures, trigger, s.timeFigure(), s.paintFigure(trigger))
	if s.tool.Applicator.Air.High > 0 {
		a.Figures = append(a.Figures, s.airFigure(trigger))
	}
	return a
}

func readSweep(e *Entry) sweep {
	s := sweep{coating: readFilm(e)}
	if s.material != nil {
		s.wet = known[q.Length]{value: s.coat().Wet(), from: fromFigure("wet-film")}
	}
	s.wet = ownOr(e, "wet", films, s.wet)
	require(e, "wet", s.wet)
	if s.tool != nil {
		a, note := s.tool.Applicator, fromNote("tool/"+s.tool.Slug, "")
		s.flow, s.fan, s.overlap, s.hand = ranged(a.Flow, note), ranged(a.Fan, note), ranged(a.Overlap, note), ranged(a.Speed, note)
	}
	s.flow, s.fan, s.overlap = ownRange(e, "flow", flows, s.flow), ownRange(e, "fan", fanWidth, s.fan), ownRange(e, "overlap", overlaps, s.overlap)
	require(e, "flow", s.flow)
	require(e, "fan", s.fan)
	if s.hand.value == 0 {
		e.fail("with", "Found an applicator whose note does not say how fast the hand goes, expected another.")
	}
	s.face = spray.Face{Along: within(e, "along", sides), Across: within(e, "across", sides)}
	s.stroke.Turn = within(e, "turn", turns)
	overrun := within(e, "overrun", overruns)
	if e.problems["along"] == "" {
		s.stroke.Overrun = q.Fraction(overrun / s.face.Along)
	}
	if s.stroke.Overrun > mostOverrun {
		e.fail("overrun", "Found %q, expected no more than ten times the length of a pass.", e.values["overrun"])
	}
	s.lands = readLands(e, s.tool)
	return s
}

// work works the coat out, and reports whether nothing was wrong.
func (s *sweep) work(e *Entry) bool {
	g := spray.Gun{Flow: s.flow.ends(), Fan: s.fan.ends(), Overlap: s.overlap.ends(), Speed: s.hand.ends()}
	if err := s.landing(g); err != nil {
		e.take("lands", err)
		return false
	}
	var err error
	if s.advice, err = g.For(s.wet.value, s.over.value); err != nil {
		e.take("wet", err)
		return false
	}
	each, err := g.For(s.wet.value/q.Length(s.advice.Coats), s.over.value)
	if err != nil {
		e.take("wet", err)
		return false
	}
	s.setting = each.Setting
	if s.once, err = s.setting.Coat(s.face, s.stroke); err != nil {
		e.take("across", err)
		return false
	}
	return true
}

// landing works out the share that lands of what is sprayed over the face. Where
// the notes' share of the whole job cannot have landed, as too much of the fan
// goes past, it is the one of the form that catches most: nearly all of the fan
// is over that one.
func (s *sweep) landing(g spray.Gun) error {
	at, whole := g.Middle(1), s.lands.ends()
	likely, err := at.Landing(s.lands.value, s.face, s.stroke)
	if err != nil && s.lands.from.From == trace.FromEntry {
		return err
	}
	if err != nil {
		s.misses, s.over = true, ranged(s.tool.Applicator.Transfer[widestForm(s.tool)], s.lands.from)
		return nil
	}
	s.over = known[q.Fraction]{value: likely, from: fromFigure("landing"), span: q.Range[q.Fraction]{High: 1}}
	if s.over.span.Low, err = at.Landing(whole.Low, s.face, s.stroke); err != nil {
		return err
	}
	if high, err := at.Landing(whole.High, s.face, s.stroke); err == nil {
		s.over.span.High = high
	}
	return nil
}

var verdicts = map[spray.Verdict]string{spray.Fits: "go", spray.LessFlow: "care", spray.MoreFlow: "care", spray.TooWet: "no", spray.TooDry: "care"}

// judge says whether the coat can be laid.
func (s sweep) judge() *Verdict {
	if limit := s.sag.value; limit > 0 && s.wet.value > limit {
		return &Verdict{"no", fmt.Sprintf("%s wet are more than the %s above which this film runs on an upright face.", metric(s.wet.value), metric(limit))}
	}
	v := &Verdict{verdicts[s.advice.Verdict], s.advice.Say(q.Metric)}
	if v.Level == "go" && (s.misses || s.tooLarge() > 0) {
		v.Level = "care"
	}
	return v
}

// tooLarge is the largest part that the applicator lays evenly, where the face is
// larger; else zero.
func (s sweep) tooLarge() q.Area {
	if s.material == nil {
		return 0
	}
	if most := s.tool.Applicator.Largest[s.material.Role]; most > 0 && s.face.Area() > most {
		return most
	}
	return 0
}

func (s sweep) says() []string {
	var says []string
	if s.sag.value > 0 && s.wet.value > s.sag.value {
		says = append(says, s.advice.Say(q.Metric))
	}
	if s.misses {
		says = append(says, fmt.Sprintf("Only %s of the paint is sprayed over the face: the rest goes past it, with a fan of %s and the trigger held on past each end. So the share that the note has cannot land. Turn the fan down, let go sooner, or take a smaller applicator.",
			metric(q.Fraction(s.once.Over/s.once.Trigger)), metric(s.fan.value)))
	}
	if most := s.tooLarge(); most > 0 {
		says = append(says, fmt.Sprintf("The face is %s, and the note has this applicator lay such a film evenly up to %s.", metric(s.face.Area()), metric(most)))
	}
	return says
}
