// Package gun owns how paint is laid by an applicator that moves: what film a
// pass leaves, how fast the hand must go for a wanted one, how many passes a face
// takes, for how long the trigger is held, and what that takes of paint and air.
//
// A spray gun's fan and an airbrush's cone are alike here: of both only the width
// on the part counts, save for how even the film is. What an applicator does, and
// what a hand can do, is passed in.
package gun

import (
	"fmt"
	"math"

	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// Setting is how an applicator is set and moved.
type Setting struct {
	Flow    q.Flow     // of paint, trigger pulled
	Fan     q.Length   // width of the fan or cone on the part
	Overlap q.Fraction // of the fan, over the pass before
	Speed   q.Speed    // of the hand

	// Transfer is the share that lands of what is sprayed while the fan is over
	// the part. Most figures are for a whole job, with all that goes past the
	// edges: Landing makes this one of those.
	Transfer q.Fraction
}

// Pitch returns how far each pass lies from the one before.
func (s Setting) Pitch() q.Length { return s.Fan * q.Length(1-s.Overlap) }

// Layers returns how many passes lie over each spot: 2 for an overlap of a half,
// 4 for three quarters.
func (s Setting) Layers() q.Number { return 1 / q.Number(1-s.Overlap) }

// PassFormula is Pass'.
var PassFormula = trace.Formula{
	Text:   "WFT of one pass = Q × TE / (v × w)",
	Source: "conservation of volume; worked independently",
	Note:   "background/one-pass",
}

// Pass returns the wet film of one pass alone, over the width of its fan.
func (s Setting) Pass() q.Length {
	return q.Length(float64(s.Flow) * float64(s.Transfer) / (float64(s.Speed) * float64(s.Fan)))
}

// WetFormula is Wet's: each pass adds a strip as wide as the pitch.
var WetFormula = trace.Formula{
	Text:   "WFT = Q × TE / (v × w × (1 − overlap))",
	Source: "conservation of volume; worked independently",
	Note:   "background/one-pass",
}

// Wet returns the wet film of one coat, away from the edges. It is the mean of
// the ridges and furrows that Profile's Evenness tells of.
func (s Setting) Wet() q.Length { return s.Pass() * q.Length(s.Layers()) }

// SpeedFormula is SpeedFor's.
var SpeedFormula = trace.Formula{
	Text:   "v = Q × TE / (WFT × w × (1 − overlap))",
	Source: "conservation of volume; worked independently",
	Note:   "background/one-pass",
}

// SpeedFor returns how fast the hand must go for a wet film; s' own speed does
// not count.
func (s Setting) SpeedFor(wet q.Length) q.Speed {
	return q.Speed(float64(s.Flow) * float64(s.Transfer) / (float64(wet) * float64(s.Pitch())))
}

// FlowFor returns how much paint must flow for a wet film; s' own flow does not
// count.
func (s Setting) FlowFor(wet q.Length) q.Flow {
	return q.Flow(float64(wet) * float64(s.Speed) * float64(s.Pitch()) / float64(s.Transfer))
}

func (s Setting) check() error {
	switch {
	case !positive(s.Flow):
		return fmt.Errorf("flow of paint: found %g mL/min; expected above 0 mL/min", float64(s.Flow)*60e6)
	case !positive(s.Fan):
		return fmt.Errorf("width of the fan: found %g mm; expected above 0 mm", s.Fan.Millimetres())
	case !(s.Overlap >= 0 && s.Overlap <= mostOverlap):
		return fmt.Errorf("overlap: found %g %%; expected 0 to %g %%", s.Overlap.Percent(), mostOverlap.Percent())
	case !positive(s.Speed):
		return fmt.Errorf("speed of the hand: found %g m/s; expected above 0 m/s", float64(s.Speed))
	case !(s.Transfer > 0 && s.Transfer <= 1):
		return fmt.Errorf("share that lands: found %g %%; expected above 0 and up to 100 %%", s.Transfer.Percent())
	}
	return nil
}

// mostOverlap is where passes no longer move on for the purposes of anybody.
const mostOverlap q.Fraction = 0.99

// sliver is the share of a pass or a coat that the arithmetic may leave over.
const sliver = 1e-9

// positive reports whether v is a number above zero that something can have.
func positive[Q q.Quantity](v Q) bool { return v > 0 && !math.IsInf(float64(v), 1) }
