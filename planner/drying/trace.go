package drying

import (
	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// Origins says where the inputs of a drying time came from.
type Origins struct {
	Time trace.Origin // the time in the reference air
	Air  trace.Origin // the room
	Film trace.Origin // the film as it is to be laid; the film that the time is for is the time's
}

// Inputs returns what went into Time, in the order of the formula that FormulaOf
// gives for its pace. Arguments are as for Time.
func (r Rates) Inputs(in q.Time, p Pace, build, refBuild q.Length, from Origins) []trace.Input {
	standard := trace.Origin{From: trace.FromSource, At: "ISO 3270"}
	ref := Reference()
	out := []trace.Input{trace.In("t0", "time in the reference air", in, from.Time)}
	switch p {
	case Evaporation:
		out = append(out,
			trace.In("t", "temperature of the air", r.air.Temperature, from.Air),
			trace.In("RH", "humidity of the air", r.air.Humidity, from.Air),
			trace.In("v", "speed of the air at the part", r.air.Speed, from.Air),
			trace.In("t_wet", "wet bulb", r.air.WetBulb(), trace.Origin{From: trace.FromFigure, At: "wet-bulb"}),
			trace.In("t_0", "temperature of the reference air", ref.Temperature, standard),
			trace.In("RH0", "humidity of the reference air", ref.Humidity, standard),
			trace.In("v0", "speed of still air", ref.Speed, trace.Origin{From: trace.FromDefault}))
	case Solvent:
		out = append(out,
			trace.In("T", "temperature of the air", r.air.Temperature, from.Air),
			trace.In("v", "speed of the air at the part", r.air.Speed, from.Air),
			trace.In("T0", "temperature of the reference air", ref.Temperature, standard),
			trace.In("v0", "speed of still air", ref.Speed, trace.Origin{From: trace.FromDefault}),
			trace.In("H", "heat of vaporisation", q.MolarEnergy(heatOfVaporisation), trace.Origin{From: trace.FromSource, At: "from memory"}))
	case Cure:
		energy := trace.In("E", "activation energy", q.MolarEnergy(ActivationEnergy), trace.Origin{From: trace.FromSource, At: "published values for coatings"})
		energy.Range = trace.SpanOf(Energies().Low, Energies().High)
		return append(out,
			trace.In("T", "temperature of the film", r.air.Temperature, from.Air),
			trace.In("T0", "temperature of the reference air", ref.Temperature, standard),
			energy)
	default:
		return out
	}
	if refBuild > 0 {
		out = append(out,
			trace.In("d", "film as it is laid", build, from.Film),
			trace.In("d0", "film that the time is for", refBuild, from.Time))
	}
	return out
}
