package gun

import (
	"fmt"
	"math"

	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// Face is a flat face: passes go along it, side by side across it.
type Face struct{ Along, Across q.Length }

// FaceOf returns a face of an area that is so long.
func FaceOf(area q.Area, along q.Length) Face {
	return Face{along, q.Length(float64(area) / float64(along))}
}

// Area returns that of the face.
func (f Face) Area() q.Area { return q.Area(f.Along * f.Across) }

// Stroke is how the hand goes from pass to pass.
type Stroke struct {
	Overrun q.Fraction // how far the trigger is held past each end of a pass, of its length
	Turn    q.Time     // from the end of one pass to the start of the next
}

// PassesFormula is Passes'. With an overlap of a half it is one more than the
// passes that cover the width, so that the middle of the first is at the edge, as
// textbooks have it.
var PassesFormula = trace.Formula{
	Text:   "n = ⌈W / (w × (1 − overlap)) + overlap / (1 − overlap)⌉",
	Source: "n passes lie (n + 1) w (1 − overlap) − w wide at their full depth; worked independently",
	Note:   "background/one-pass",
}

// Passes returns how many passes cover a width so that its edges get as many
// layers as its middle.
func (s Setting) Passes(across q.Length) int {
	lead := float64(s.Overlap / (1 - s.Overlap))
	return max(1, int(math.Ceil(float64(across/s.Pitch())+lead-sliver)))
}

// TimeFormula is Coat's Trigger, with its time over the part.
var TimeFormula = trace.Formula{
	Text:   "t over the part = A / (v × w × (1 − overlap)); t trigger = n × L × (1 + 2 × overrun) / v",
	Source: "worked independently",
	Note:   "background/one-pass",
}

// BalanceFormula is how paint adds up in a Coat.
var BalanceFormula = trace.Formula{
	Text:   "Q × t over the part × TE = WFT × A; sprayed = Q × t trigger",
	Source: "conservation of volume; worked independently",
	Note:   "background/one-pass",
}

// Coat is one coat on a face.
type Coat struct {
	Passes  int
	Wet     q.Length
	Over    q.Time   // trigger pulled, as much of it as the fan is over the part
	Trigger q.Time   // trigger pulled, in all
	Turns   q.Time   // from pass to pass, trigger let go
	Lands   q.Volume // on the part
	Sprayed q.Volume
}

// Coat returns one coat on a face. An error says what cannot be. Paint that
// bounces off or dries on the way is in s' transfer; what goes past the edges,
// and past the ends, is in Sprayed.
func (s Setting) Coat(f Face, k Stroke) (Coat, error) {
	if err := s.checkOn(f, k); err != nil {
		return Coat{}, err
	}
	c := Coat{Passes: s.Passes(f.Across), Wet: s.Wet()}
	n := q.Time(c.Passes)
	c.Over = q.Time(float64(f.Area()) / (float64(s.Speed) * float64(s.Pitch())))
	c.Trigger = n * q.Time(float64(f.Along)/float64(s.Speed)) * q.Time(1+2*k.Overrun)
	c.Trigger = max(c.Trigger, c.Over) // Passes may have rounded a sliver away
	c.Turns = (n - 1) * k.Turn
	c.Lands = q.Volume(float64(s.Flow) * float64(c.Over) * float64(s.Transfer))
	c.Sprayed = q.Volume(float64(s.Flow) * float64(c.Trigger))
	return c, nil
}

func (s Setting) checkOn(f Face, k Stroke) error {
	if err := s.check(); err != nil {
		return err
	}
	switch {
	case !positive(f.Along) || !positive(f.Across):
		return fmt.Errorf("face: found %g by %g m; expected both above 0 m", float64(f.Along), float64(f.Across))
	case f.Across/s.Pitch() > math.MaxInt32:
		return fmt.Errorf("face: found %g m across; expected as many passes as somebody can make", float64(f.Across))
	case !(k.Overrun >= 0 && k.Overrun <= 10):
		return fmt.Errorf("overrun at each end of a pass: found %g %%; expected 0 to 1000 %% of its length", k.Overrun.Percent())
	case !(k.Turn >= 0) || math.IsInf(float64(k.Turn), 1):
		return fmt.Errorf("turn between passes: found %g s; expected 0 s or more", float64(k.Turn))
	}
	return nil
}

// Time returns how long the coat takes.
func (c Coat) Time() q.Time { return c.Trigger + c.Turns }

// Overall returns the share that lands of all that is sprayed.
func (c Coat) Overall() q.Fraction { return q.Fraction(c.Lands / c.Sprayed) }

// Duty returns the share of the time that the trigger is pulled.
func (c Coat) Duty() q.Fraction { return q.Fraction(c.Trigger / c.Time()) }

// LandingFormula is Landing's.
var LandingFormula = trace.Formula{
	Text:   "TE = TE of the whole job × t trigger / t over the part",
	Source: "the definition of transfer efficiency, on what is sprayed over the part; worked independently",
	Note:   "background/one-pass",
}

// Landing returns the share that lands of what is sprayed while the fan is over
// a face, where overall of all that is sprayed lands; s' own transfer does not
// count. An error says that so much cannot have landed, with the widest part of
// the spray past the edges.
func (s Setting) Landing(overall q.Fraction, f Face, k Stroke) (q.Fraction, error) {
	s.Transfer = overall
	c, err := s.Coat(f, k)
	if err != nil {
		return 0, err
	}
	over := q.Fraction(c.Over / c.Trigger)
	if overall > over*(1+sliver) {
		return 0, fmt.Errorf("share that lands in all: found %.3g %%; expected up to %.3g %%, as no more is sprayed over a face %.3g mm wide with a fan of %.3g mm: a narrower fan or a shorter overrun is meant",
			overall.Percent(), over.Percent(), f.Across.Millimetres(), s.Fan.Millimetres())
	}
	return min(overall/over, 1), nil
}

// TriggerFormula is TriggerTime's.
var TriggerFormula = trace.Formula{
	Text:   "t trigger = sprayed / Q",
	Source: "definition of a flow",
	Note:   "background/one-pass",
}

// TriggerTime returns how long the trigger is pulled while a volume is sprayed,
// whatever the shape of the part.
func TriggerTime(sprayed q.Volume, flow q.Flow) q.Time {
	return q.Time(float64(sprayed) / float64(flow))
}

// AirFormula is AirUsed's.
var AirFormula = trace.Formula{
	Text:   "free air = demand × t",
	Source: "definition of a flow",
	Note:   "background/one-pass",
}

// AirUsed returns the free air that an applicator takes in a time, at the
// pressure of the room: demand is what it takes with the trigger pulled.
func AirUsed(demand q.AirFlow, t q.Time) q.Volume {
	return q.Volume(float64(demand) * float64(t))
}

// Air returns the free air that the coat takes: at least while the trigger is
// pulled; at most all along, as air flows in the turns also where the trigger is
// only let halfway (TM 1-1500-344-23-2, A-8.3).
func (c Coat) Air(demand q.AirFlow) q.Range[q.Volume] {
	return q.Range[q.Volume]{Low: AirUsed(demand, c.Trigger), High: AirUsed(demand, c.Time())}
}
