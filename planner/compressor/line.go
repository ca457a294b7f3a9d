package compressor

import (
	"math"

	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// LineFormula is that of LineDrop.
var LineFormula = trace.Formula{
	Text:   "dp = 450 q^1.85 L/(d^5 p), in bar, L/s of free air, m, mm, bar absolute",
	Source: "compressed-air handbooks, from memory; the same as dP = 1.6e12 q^1.85 L/(d^5 Pa) in kPa and m3/s, as given by mgkscotland.co.uk",
	Note:   "background/what-a-compressor-delivers",
}

// LineDrop returns the pressure that a line of a bore loses, in Pa: flow is of
// free air, inlet the absolute pressure at its start. Fittings count as more
// length, and a quick coupling narrows the bore: both are for the caller to add.
// Past a tenth or so of the inlet pressure the line loses more than this says,
// as the air spreads out on the way; then it is too thin in any case. It is +Inf
// for a line that is shut.
// Source: see LineFormula; another handbook form has 400 for 450.
func LineDrop(flow q.AirFlow, length, bore q.Length, inlet q.Pressure) q.Pressure {
	if flow <= 0 || length <= 0 {
		return 0
	}
	const (
		litre = 1e-3 // m3
		bar   = 1e5  // Pa
	)
	d := bore.Millimetres()
	dp := 450 * math.Pow(float64(flow)/litre, 1.85) * float64(length) / (math.Pow(d, 5) * float64(inlet) / bar)
	return q.Pressure(dp * bar)
}
