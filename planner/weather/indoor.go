package weather

import (
	"time"

	"coatwright/planner/air"
	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// Reported returns air as a weather service or a hygrometer reports it: humidity
// is counted over water below 0 C also, where the air of package air counts over
// ice. So full air at -10 C has a humidity of 1.1 there.
func Reported(t q.Temperature, humidity q.Fraction, speed q.Speed) air.Air {
	return air.Air{Temperature: t, Humidity: humidity * mostHumidity(t), Speed: speed}
}

// ReportedDewPoint returns air of which a weather service reports the dew point
// instead of the humidity, likewise over water.
func ReportedDewPoint(t, dewPoint q.Temperature, speed q.Speed) air.Air {
	return air.Air{Temperature: t, Humidity: q.Fraction(air.OverWater(dewPoint) / air.SaturationPressure(t)), Speed: speed}
}

// IndoorFormula is how Indoor comes about.
var IndoorFormula = trace.Formula{
	Text:   "W_room = W_outside; RH = p_w / p_ws(t_room)",
	Source: "the same water in the air: ASHRAE Handbook, Fundamentals (2017), ch. 1, eq. 20 and 22",
	Note:   "background/what-the-air-holds",
}

// Indoor returns what outdoor air becomes that is let in and brought to the
// warmth of a room, moving there at a speed. What breathes, dries or boils in
// the room adds to it; a room cooler than the dew point outside is wet.
func Indoor(outdoor air.Air, room q.Temperature, speed q.Speed) air.Air {
	a := outdoor.WarmedTo(room)
	a.Speed = speed
	return a
}

// From returns the air outside by the time since a start, for what dries there.
func (s Series) From(start time.Time) func(after q.Time) air.Air {
	return func(after q.Time) air.Air {
		a, _ := s.At(start.Add(after.Duration()))
		return a
	}
}

// FromIndoors is From for a room that is kept at a warmth with air let in.
func (s Series) FromIndoors(start time.Time, room q.Temperature, speed q.Speed) func(after q.Time) air.Air {
	outside := s.From(start)
	return func(after q.Time) air.Air { return Indoor(outside(after), room, speed) }
}
