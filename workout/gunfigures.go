package workout

import (
	"fmt"

	"coatwright/planner/film"
	spray "coatwright/planner/gun"
	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// The figures of a coat that is swept over a face.

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
		Remarks: []string{s.pace()},
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
	says := fmt.Sprintf("With the turns %s, and the trigger pulled for %s of that.", takes, metric(s.once.Duty()))
	switch plans := q.Time(float64(s.tool.Applicator.Pace) * float64(s.face.Area())); {
	case plans > takes:
		says += fmt.Sprintf(" A plan reckons with %s, by the area: that has walking and looking in it.", plans)
	case plans > 0:
		says += fmt.Sprintf(" A plan reckons with %s, by the area: a face like this takes longer.", plans)
	}
	return says
}

func (s sweep) timeFigure() trace.Figure {
	over := times(s, s.once.Over)
	return trace.Figure{
		Key: "over-face", Name: "As much of it as the fan is over the face", Value: q.ValueOf(over), Formula: spray.TimeFormula,
		Inputs: s.counted([]trace.Input{
			trace.In("A", "area of the face", s.face.Area(), entered("across")), s.set()[1], s.fan.in("w", "width of the fan"), s.overlap.in("overlap", "of the fan, over the pass before"),
		}),
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
