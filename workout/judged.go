package workout

import (
	"fmt"
	"math"

	"coatwright/planner/air"
	"coatwright/planner/compressor"
	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// judged is how a compressor stands to a gun.
type judged struct {
	compressor.Answer
	pump pump
	gun  airLine
}

// figures are the times and the share of running that a verdict rests on.
func (j judged) figures() []trace.Figure {
	var out []trace.Figure
	switch {
	case j.Verdict == compressor.Pauses && j.Cause != compressor.RunsHot:
		out = append(out, j.lasts(), j.waits(), j.cycles())
	case j.Verdict != compressor.NotEnough:
		out = append(out, j.runs())
	}
	if j.LongestPull > 0 && !math.IsInf(float64(j.LongestPull), 1) {
		out = append(out, j.longest())
	}
	return append(out, j.refills())
}

// runs is how much of the time the pump runs, or would have to.
func (j judged) runs() trace.Figure {
	mean := j.Use.Air * q.AirFlow(j.Trigger)
	return trace.Figure{
		Key: "running", Name: "The pump has to run, of the time", Value: q.ValueOf(q.Fraction(mean / j.Delivers)), Formula: compressor.DutyFormula,
		Inputs: []trace.Input{j.gun.air, j.pulled(), j.pump.delivers},
	}
}

// cycles is how much of the time the pump runs when pauses are made.
func (j judged) cycles() trace.Figure {
	formula := compressor.DutyFormula
	formula.Text = "share running = running/(running + stopped), over spraying and the wait"
	return trace.Figure{
		Key: "running", Name: "The pump runs, of the time", Value: q.ValueOf(j.Running), Formula: formula,
		Inputs: []trace.Input{trace.In("", "spraying", j.Spray, fromFigure("spray-time")), trace.In("", "the wait", j.Wait, fromFigure("wait"))},
	}
}

// lasts is how long the tank lasts with the pump's help.
func (j judged) lasts() trace.Figure {
	f := j.falls()
	f.Key, f.Name, f.Value = "spray-time", "Spraying from a full tank", q.ValueOf(j.Spray)
	if j.Cause == compressor.DrawsMore {
		f.Inputs = append(f.Inputs, j.pulled())
		f.Remarks = append(f.Remarks, "By what the gun draws on average, over a coat.")
	}
	f.Remarks = append(f.Remarks, inSeconds(j.Spray)...)
	return f
}

// longest is how long one pull may last.
func (j judged) longest() trace.Figure {
	f := j.falls()
	f.Key, f.Name, f.Value = "longest-pull", "Longest pull that holds the pressure", q.ValueOf(j.LongestPull)
	f.Remarks = append(f.Remarks, inSeconds(j.LongestPull)...)
	return f
}

// falls is the how of a tank that falls.
func (j judged) falls() trace.Figure {
	draws := j.gun.air
	draws.Symbol = "qout"
	return trace.Figure{Formula: compressor.RunTimeFormula, Inputs: []trace.Input{
		j.volume(), trace.In("P1", "the pump stops at", j.CutOut, entered("cut-out")), trace.In("P2", "the tank must not fall below", j.Least, fromFigure("least")),
		trace.In("", "the pump starts at", j.CutIn, entered("cut-in")), j.barometer(), draws, j.pump.delivers,
	}, Remarks: []string{"Until the pump starts nothing is made up; from then on it helps."}}
}

func (j judged) pulled() trace.Input {
	return trace.In("T", "share of the time that it is pulled", j.Trigger, entered("trigger"))
}

// waits is the pause until the tank is full.
func (j judged) waits() trace.Figure {
	f := j.rises(j.Least, fromFigure("least"))
	f.Key, f.Name, f.Value = "wait", "Then wait", q.ValueOf(j.Wait)
	f.Remarks = inSeconds(j.Wait)
	if j.Duty > 0 {
		f.Inputs = append(f.Inputs, trace.In("", "share of an hour that it may run", j.Duty, entered("duty")))
	}
	return f
}

// refills is how long the pump runs once it has started, the gun shut.
func (j judged) refills() trace.Figure {
	t := j.RefillTime(j.CutIn, j.CutOut, j.Delivers, 0)
	f := j.rises(j.CutIn, entered("cut-in"))
	f.Key, f.Name, f.Value = "refill", "Filling the tank, the gun shut", q.ValueOf(t)
	f.Remarks = append(inSeconds(t), "Time it now and then: a pump that takes longer than it did is worn, or a hose leaks.")
	return f
}

// rises is the how of a tank that is filled from a pressure on.
func (j judged) rises(from q.Pressure, origin trace.Origin) trace.Figure {
	return trace.Figure{Formula: compressor.RunTimeFormula, Inputs: []trace.Input{
		j.volume(), trace.In("P1", "the pump stops at", j.CutOut, entered("cut-out")), trace.In("P2", "it starts from", from, origin),
		j.barometer(), j.pump.delivers,
	}}
}

func (j judged) volume() trace.Input { return trace.In("V", "tank", j.Volume, entered("tank")) }

func (j judged) barometer() trace.Input {
	return trace.In("Pa", "barometer", j.Atmosphere, entered("pressure"))
}

// drained is the water that settles in the tank in an hour.
func (j judged) drained(room air.Air) trace.Figure {
	running := j.hourly()
	return trace.Figure{
		Key: "water", Name: "Water that settles in the tank in an hour", Value: q.ValueOf(j.Drains(room, room.Temperature, q.Fraction(running.Value.SI))), Formula: compressor.WaterFormula,
		Inputs: []trace.Input{
			trace.In("T", "air of the room, and the tank once it has cooled", room.Temperature, entered("room")),
			trace.In("", "humidity, for pw and W", room.Humidity, entered("humidity")),
			trace.In("p", "barometer", j.Atmosphere, entered("pressure")), trace.In("", "the pump stops at, for Ws", j.CutOut, entered("cut-out")),
			j.pump.delivers, running,
		},
		Remarks: []string{"A gram is a millilitre. A warm tank lets more of it go on into the hose, where it settles."},
	}
}

// hourly is the share of an hour for which the pump runs. One that is not enough
// runs all the time.
func (j judged) hourly() trace.Input {
	from := fromFigure("running")
	switch {
	case j.Verdict == compressor.NotEnough:
		j.Running, from = 1, trace.Origin{From: trace.FromDefault}
	case j.Cause == compressor.RunsHot:
		from = entered("duty")
	}
	return trace.In("", "share of the hour that it runs", j.Running, from)
}

// inSeconds says a short time to the second: figures show minutes.
func inSeconds(t q.Time) []string {
	if t >= 600 {
		return nil
	}
	return []string{fmt.Sprintf("In seconds: %.0f s.", float64(t))}
}
