package workout

import (
	"fmt"

	"coatwright/planner/film"
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
		return append(fields,
			Field{Key: "along", Label: "Length of a pass", Hint: "along the face: 0.8 m or 32 in", Default: "0.8 m"},
			Field{Key: "across", Label: "Width of the face", Hint: "across the passes: 0.6 m or 24 in", Default: "0.6 m"},
			Field{Key: "form", Label: "Form of the part", Choices: formChoices(e.lib), Default: widestForm(e.lib, fields[1].Default)},
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

// widestForm is the form of which most lands with an applicator.
func widestForm(lib *library.Library, applicator string) string {
	best, tool := firstOf(formChoices(lib)), lib.Tools[applicator]
	if tool == nil {
		return best
	}
	for form, lands := range tool.Applicator.Transfer {
		if top := tool.Applicator.Transfer[best]; lands.Middle() > top.Middle() || lands.Middle() == top.Middle() && form < best {
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
		s.misses = true
		for _, r := range s.tool.Applicator.Transfer {
			if r.Middle() > s.over.value {
				s.over = ranged(r, s.lands.from)
			}
		}
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

func (s sweep) passesFigure() trace.Figure {
	return trace.Figure{
		Key: "passes", Name: "Passes across the face", Value: q.ValueOf(q.Number(s.once.Passes)), Formula: spray.PassesFormula,
		Inputs: []trace.Input{
			trace.In("W", "width of the face", s.face.Across, entered("across")), s.fan.in("w", "width of the fan"), s.overlap.in("overlap", "of the fan, over the pass before"),
		},
		Remarks: []string{fmt.Sprintf("Each lies %s from the one before, so that on average %.3g lie over each spot.", metric(s.setting.Pitch()), float64(s.setting.Layers()))},
	}
}

// overFigure is the share that lands of what is sprayed over the face.
func (s sweep) overFigure() trace.Figure {
	f := trace.Figure{
		Key: "landing", Name: "Share that lands while the fan is over the face", Value: q.ValueOf(s.over.value), Range: spanOf(s.over.ends()), Formula: spray.LandingFormula,
		Inputs: []trace.Input{
			s.lands.in("TE of the whole job", "share that lands of all that is sprayed"),
			trace.In("t trigger", "trigger pulled", times(s, s.once.Trigger), fromFigure("trigger")),
			trace.In("t over the part", "as much of it as the fan is over the face", times(s, s.once.Over), fromFigure("over-face")),
		},
	}
	if s.misses {
		f.Remarks = []string{"More would have to land than is sprayed over the face. So this is what the note has for the form that catches most."}
		f.Formula.Text, f.Formula.Source, f.Inputs = "", "common practice, no published source", []trace.Input{s.over.in("", "share that lands on the form that catches most")}
	}
	return f
}

func (s sweep) speedFigure() trace.Figure {
	ends := s.over.ends()
	speed := func(lands q.Fraction) q.Speed {
		at := spray.Setting{Flow: s.flow.value, Fan: s.fan.value, Overlap: s.overlap.value, Transfer: lands}
		return at.SpeedFor(s.wet.value)
	}
	f := trace.Figure{
		Key: "hand-speed", Name: "Speed of the hand that the film takes", Formula: spray.SpeedFormula,
		Inputs: []trace.Input{
			s.flow.in("Q", "paint through the gun"), s.landed(), s.wet.in("WFT", "wet film wanted"), s.fan.in("w", "width of the fan"), s.overlap.in("overlap", "of the fan, over the pass before"),
		},
		Remarks: []string{fmt.Sprintf("A hand goes at %s with this applicator. To set: %s of paint at %s.", q.ShowRange(q.Metric, s.hand.ends()), metric(s.setting.Flow), metric(s.setting.Speed))},
	}
	return spanned(f, []q.Speed{speed(s.over.value), speed(ends.Low), speed(ends.High)})
}

// landed is the share that lands over the face, as what goes into a figure.
func (s sweep) landed() trace.Input {
	in := s.over.in("TE", "share that lands while the fan is over the face")
	in.Origin = fromFigure("landing")
	return in
}

// set are the flow and the speed to use.
func (s sweep) set() []trace.Input {
	flow := trace.In("Q", "paint through the gun, as set", s.setting.Flow, s.flow.from)
	speed := trace.In("v", "speed of the hand, as it goes", s.setting.Speed, s.hand.from)
	if s.advice.Verdict == spray.Fits {
		speed.Origin = fromFigure("hand-speed")
	}
	return []trace.Input{flow, speed}
}

func (s sweep) passFigure() trace.Figure {
	return trace.Figure{
		Key: "pass-film", Name: "Wet film of one pass", Value: q.ValueOf(s.setting.Pass()), Formula: spray.PassFormula,
		Inputs: append(s.set(), s.landed(), s.fan.in("w", "width of the fan")),
	}
}

func (s sweep) onceFigure() trace.Figure {
	return trace.Figure{
		Key: "crossing-film", Name: "Wet film of all passes, once over", Value: q.ValueOf(s.once.Wet), Formula: spray.WetFormula,
		Inputs:  append(s.set(), s.landed(), s.fan.in("w", "width of the fan"), s.overlap.in("overlap", "of the fan, over the pass before")),
		Remarks: []string{"The mean over the face, away from its edges: each pass leaves a ridge and a furrow."},
	}
}

// crossingsFigure is how often the face is gone over where one time is too thin.
func (s sweep) crossingsFigure() trace.Figure {
	return trace.Figure{
		Key: "crossings", Name: "Times over the face for one coat", Value: q.ValueOf(q.Number(s.advice.Coats)), Formula: film.CoatsFormula,
		Inputs: []trace.Input{
			s.wet.in("wanted", "wet film wanted"),
			trace.In("one coat", "the most that one time leaves, needle out and hand slow", s.advice.Setting.Wet(), fromNote("tool/"+s.tool.Slug, "")),
		},
	}
}

// times is v for each time over the face.
func times[Q q.Quantity](s sweep, v Q) Q { return v * Q(s.advice.Coats) }

func (s sweep) triggerFigure() trace.Figure {
	trigger := times(s, s.once.Trigger)
	return trace.Figure{
		Key: "trigger", Name: "Trigger pulled, for one coat", Value: q.ValueOf(trigger), Formula: spray.TimeFormula,
		Inputs: s.counted([]trace.Input{
			trace.In("n", "passes", q.Number(s.once.Passes), fromFigure("passes")), trace.In("L", "length of a pass", s.face.Along, entered("along")),
			trace.In("overrun", "past each end, of the length of a pass", s.stroke.Overrun, entered("overrun")), s.set()[1],
		}),
		Remarks: append(inSeconds(trigger), s.pace()),
	}
}

// counted adds to some inputs how often the face is gone over, where that is more
// than once.
func (s sweep) counted(inputs []trace.Input) []trace.Input {
	if s.advice.Coats == 1 {
		return inputs
	}
	return append(inputs, trace.In("", "times over the face", q.Number(s.advice.Coats), fromFigure("crossings")))
}

// pace holds the time of a coat against the one that a plan reckons with.
func (s sweep) pace() string {
	takes := times(s, s.once.Time())
	says := fmt.Sprintf("With the turns %s, and the trigger pulled for %s of that.", lasting(takes), metric(s.once.Duty()))
	switch plans := q.Time(float64(s.tool.Applicator.Pace) * float64(s.face.Area())); {
	case plans > takes:
		says += fmt.Sprintf(" A plan reckons with %s, by the area: that has walking and looking in it.", lasting(plans))
	case plans > 0:
		says += fmt.Sprintf(" A plan reckons with %s, by the area: a face like this takes longer.", lasting(plans))
	}
	return says
}

// lasting says a time to the second, a long one as a painter would.
func lasting(t q.Time) string {
	if t >= 600 {
		return t.String()
	}
	return fmt.Sprintf("%.0f s", float64(t))
}

func (s sweep) timeFigure() trace.Figure {
	over := times(s, s.once.Over)
	return trace.Figure{
		Key: "over-face", Name: "As much of it as the fan is over the face", Value: q.ValueOf(over), Formula: spray.TimeFormula,
		Inputs: s.counted([]trace.Input{
			trace.In("A", "area of the face", s.face.Area(), entered("across")), s.set()[1], s.fan.in("w", "width of the fan"), s.overlap.in("overlap", "of the fan, over the pass before"),
		}),
		Remarks: inSeconds(over),
	}
}

func (s sweep) paintFigure(trigger trace.Figure) trace.Figure {
	sprayed := times(s, s.once.Sprayed)
	return trace.Figure{
		Key: "paint", Name: "Paint sprayed, for one coat", Value: q.ValueOf(sprayed), Formula: spray.BalanceFormula,
		Inputs: []trace.Input{s.set()[0], taken("t trigger", "trigger pulled", trigger)},
		Remarks: []string{
			fmt.Sprintf("%s of it land: %s of all that is sprayed.", metric(times(s, s.once.Lands)), metric(s.once.Overall())),
			"What stays in cup and passages comes on top.",
		},
	}
}

// airFigure is the free air of one coat: at least while the trigger is pulled, at
// most in the turns too.
func (s sweep) airFigure(trigger trace.Figure) trace.Figure {
	a := s.tool.Applicator
	low, high := s.once.Air(a.Air.Low).Low, s.once.Air(a.Air.High).High
	f := trace.Figure{
		Key: "air", Name: "Free air, for one coat", Formula: spray.AirFormula,
		Inputs:  []trace.Input{trace.InRange("demand", "free air, trigger pulled", a.Air, fromNote("tool/"+s.tool.Slug, "")), taken("t", "trigger pulled", trigger)},
		Remarks: []string{"The high end has air flow in the turns too, as it does with the trigger let halfway."},
	}
	return spanned(f, []q.Volume{times(s, spray.AirUsed(a.Air.Middle(), s.once.Trigger)), times(s, low), times(s, high)})
}
