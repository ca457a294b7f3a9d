// Package compressor owns whether a compressor and its tank keep up with a gun:
// for how long, with which pauses, through which line, and how much water the
// air leaves behind.
//
// Air flows and volumes are of free air, at the pressure of the room. What a
// pump delivers is its free air delivery at the tank's pressure, never its
// displacement, which is more. Air keeps the temperature of the room: a tank just
// filled is hotter, and gives a little less than is said here.
// Each pressure says whether it is gauge, above the room's, or absolute.
//
// Nothing here rounds, save for showing.
package compressor

import (
	"cmp"
	"math"

	"coatwright/planner/air"
	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// Tank is what holds compressed air: the receiver, with its pipes.
type Tank struct {
	Volume     q.Volume
	Atmosphere q.Pressure // of the room, absolute; zero stands for 101325 Pa
}

func (t Tank) atmosphere() q.Pressure { return cmp.Or(t.Atmosphere, air.StandardPressure) }

// FreeAir returns the free air that a tank gives while it falls from one
// pressure to another; both are gauge, or both absolute.
func (t Tank) FreeAir(from, to q.Pressure) q.Volume {
	return t.Volume * q.Volume((from-to)/t.atmosphere())
}

// RunTimeFormula is that of Tank.RunTime.
var RunTimeFormula = trace.Formula{
	Text:   "t = V (P1 - P2)/(Pa (qout - qin))",
	Source: "scribd.com/document/383780250 (air receiver sizing), turned round",
	Note:   "background/what-a-compressor-delivers",
}

// RunTime returns how long a tank falls from one pressure to a lower one, both
// gauge or both absolute, while out is drawn and in is pumped. It is +Inf where
// the pump keeps up, and zero where the tank is not above the lower pressure.
// Source: see RunTimeFormula.
func (t Tank) RunTime(from, to q.Pressure, out, in q.AirFlow) q.Time {
	switch {
	case from <= to:
		return 0
	case out <= in:
		return q.Time(math.Inf(1))
	}
	return q.Time(float64(t.FreeAir(from, to)) / float64(out-in))
}

// RefillTime returns how long a tank rises from one pressure to a higher one,
// both gauge or both absolute, while in is pumped and out is drawn. It is +Inf
// where the pump does not keep up.
func (t Tank) RefillTime(from, to q.Pressure, in, out q.AirFlow) q.Time {
	return t.RunTime(to, from, in, out)
}

// ReceiverFormula is that of Receiver.
var ReceiverFormula = trace.Formula{
	Text:   "V = t (qout - qin) Pa/(P1 - P2)",
	Source: "scribd.com/document/383780250 (air receiver sizing)",
	Note:   "background/what-a-compressor-delivers",
}

// Receiver returns the tank that a wanted run takes, in m3: for a time, out is
// drawn and in is pumped, while the pressure falls from one to another, both
// gauge or both absolute. The room's pressure is absolute; zero stands for
// 101325 Pa. It is zero where the pump keeps up, and +Inf where the pressure has
// nowhere to fall.
// Source: see ReceiverFormula.
func Receiver(t q.Time, out, in q.AirFlow, from, to, atmosphere q.Pressure) q.Volume {
	switch {
	case out <= in || t <= 0:
		return 0
	case from <= to:
		return q.Volume(math.Inf(1))
	}
	pa := cmp.Or(atmosphere, air.StandardPressure)
	return q.Volume(float64(t) * float64(out-in) * float64(pa/(from-to)))
}

// PumpUpFormula is that of Tank.Delivery.
var PumpUpFormula = trace.Formula{
	Text:   "FAD = (Vr + Vpipe) (Pmax/Patm)/t, from zero gauge",
	Source: "accurateair.com/calculators/Pumptest",
	Note:   "background/what-a-compressor-delivers",
}

// Delivery returns the free air that a pump delivers, as a pump-up test finds
// it: the tank rises from one pressure to another, both gauge or both absolute,
// in a time, with every outlet shut. The mean of three tests is better than one.
// From zero gauge it is the published form; from the cut-in pressure it is nearer
// to what a gun gets, as a pump delivers less the higher the pressure. A tank
// that ends hot makes the pump look better than it is.
// Source: see PumpUpFormula.
func (t Tank) Delivery(from, to q.Pressure, in q.Time) q.AirFlow {
	return q.AirFlow(float64(t.FreeAir(to, from)) / float64(in))
}
