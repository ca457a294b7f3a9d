package workout

import (
	"math"

	"coatwright/planner/compressor"
	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// airLine is what sprays, at the end of a hose.
type airLine struct {
	draws      q.AirFlow  // free air, trigger pulled, at the most
	at         q.Pressure // gauge, at the gun, at the most
	air, inlet trace.Input
	hose, bore q.Length
	atmosphere q.Pressure
	drop       q.Pressure // in the hose
	least      q.Pressure // gauge, in the tank
}

// gunOf reads what sprays and through which hose.
func gunOf(e *Entry, atmosphere q.Pressure) airLine {
	g := airLine{hose: within(e, "hose", hoses), bore: within(e, "bore", bores), atmosphere: atmosphere}
	name := e.text("gun")
	if t := e.lib.Tools[name]; t != nil && t.Applicator != nil {
		a, note := t.Applicator, fromNote("tool/"+t.Slug, "")
		g.draws, g.at = a.Air.High, a.Pressure.High
		g.air, g.inlet = most("q", "free air that the gun draws", a.Air, note), most("p2", "at the gun", a.Pressure, note)
	} else if name == ownGun {
		g.draws, g.at = within(e, "draws", pumps), within(e, "at", gauge)
		g.air, g.inlet = trace.In("q", "free air that the gun draws", g.draws, entered("draws")), trace.In("p2", "at the gun", g.at, entered("at"))
	}
	if e.sound() {
		g.drop = compressor.LineDrop(g.draws, g.hose, g.bore, startOf(g.at+atmosphere, g.draws, g.hose, g.bore))
		g.least = g.at + g.drop
	}
	return g
}

// startOf is the absolute pressure at the start of a line that leaves a pressure
// at its end. What a line loses goes by one over the pressure at its start,
// dp = k/p1, so p1 = p2 + k/p1 is solved for p1.
func startOf(end q.Pressure, flow q.AirFlow, length, bore q.Length) q.Pressure {
	k := float64(compressor.LineDrop(flow, length, bore, 1))
	p2 := float64(end)
	return q.Pressure((p2 + math.Sqrt(p2*p2+4*k)) / 2)
}

// dropFigure is what the hose loses.
func (g airLine) dropFigure() trace.Figure {
	start := g.least + g.atmosphere
	f := trace.Figure{
		Key: "hose-drop", Name: "Lost in the hose, trigger pulled", Value: q.ValueOf(g.drop), Formula: compressor.LineFormula,
		Inputs: []trace.Input{
			g.air, trace.In("L", "length", g.hose, entered("hose")), trace.In("d", "inner width", g.bore, entered("bore")),
			trace.In("p", "at its start, absolute", start, fromFigure("least")),
		},
		Remarks: []string{"A quick coupling or a fitting narrows it: each takes as much as metres of hose."},
	}
	if g.drop > start/10 {
		f.Remarks = append(f.Remarks, "More than a tenth of the pressure is lost: the hose is too thin for this gun, and in truth it loses more than this.")
	}
	return f
}

var leastFormula = trace.Formula{
	Text:   "p1 = p2 + dp",
	Source: "balance of pressures along the hose",
	Note:   compressor.LineFormula.Note,
}

// leastFigure is what the tank must not fall below.
func (g airLine) leastFigure() trace.Figure {
	return trace.Figure{
		Key: "least", Name: "The tank must not fall below", Value: q.ValueOf(g.least), Formula: leastFormula,
		Inputs:  []trace.Input{g.inlet, trace.In("dp", "lost in the hose", g.drop, fromFigure("hose-drop"))},
		Remarks: []string{"On its gauge. The regulator loses some as well: leave room."},
	}
}
