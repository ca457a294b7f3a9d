package ventilation

import (
	"fmt"

	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// Mixing factors: how many times as much air, or time, as if the room were
// perfectly mixed.
var (
	// Mixed is air that sweeps all of a booth.
	Mixed = q.Range[q.Number]{Low: 1, High: 1}

	// Room is the air of a room with a fan somewhere: 3 to 10, industrial
	// ventilation practice, from memory. The US CDC (MMWR 43, RR-13, 1994,
	// table S3-1) says "as high as 10 if air distribution is very poor".
	Room = q.Range[q.Number]{Low: 3, High: 10}
)

// DilutionFormula is that of Vapour.Air; 4 takes it to 25 % of the LEL.
var DilutionFormula = trace.Formula{
	Text:   "Vd = 4 (100 - LEL) v/LEL, LEL in % and v the vapour from a volume of solvent",
	Source: "29 CFR 1910.94(c)(6)(ii), from memory; that exhaust must stay below 25 % of the limit is also fire code text (MC 502.7.3.3)",
	Note:   "background/how-vapour-burns",
}

// Air returns the air that dilutes the vapour of a volume of solvent to a
// quarter of its LEL, in m3. The form is the law's, which takes the vapour's own
// room off the air once for four: it ends 1/(1 - 0.75 LEL) times a quarter, 1 %
// above for an LEL of 1.4 %. It does not look at who breathes it.
// Source: see DilutionFormula.
func (v Vapour) Air(solvent q.Volume) q.Volume {
	lel := float64(v.LEL)
	return q.Volume(4 * (1 - lel) / lel * float64(v.Yield) * float64(solvent))
}

// From returns the flow of vapour that solvent makes which evaporates at a rate.
func (v Vapour) From(rate q.Flow) q.AirFlow {
	return q.AirFlow(float64(v.Yield) * float64(rate))
}

// Dilute returns the flow of air that keeps a vapour, made from solvent that
// evaporates at a rate, at a quarter of its LEL: Vapour.Air for the rate, times
// how badly the air mixes (Mixed for a booth, Room for a room). The least goes
// by the low ends, the most by the high ends. It is an error when too little is
// known of the vapour, or a range is turned round.
func Dilute(v Vapour, rate q.Range[q.Flow], mixing q.Range[q.Number]) (Need, error) {
	if err := v.check(); err != nil {
		return Need{}, err
	}
	if !rising(rate) {
		return Need{}, fmt.Errorf("found solvent that evaporates at %g to %g m3/s; expected 0 or more, the low end first", float64(rate.Low), float64(rate.High))
	}
	if err := checkMixing(mixing); err != nil {
		return Need{}, err
	}
	with := func(rate q.Flow, mixing q.Number) q.AirFlow {
		return q.AirFlow(float64(v.Air(q.Volume(rate))) * float64(mixing))
	}
	return Need{q.Range[q.AirFlow]{Low: with(rate.Low, mixing.Low), High: with(rate.High, mixing.High)}, Defer}, nil
}

func checkMixing(mixing q.Range[q.Number]) error {
	if !rising(mixing) || mixing.Low < 1 {
		return fmt.Errorf("found a mixing factor of %g to %g; expected 1, for air that mixes perfectly, or more, the low end first", float64(mixing.Low), float64(mixing.High))
	}
	return nil
}
