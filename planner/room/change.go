package room

import (
	"fmt"
	"math"
	"time"

	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// Do is one thing that can be done about a room.
type Do string

// The things to do.
const (
	Wait     Do = "wait"      // until a later hour, when the weather is another
	Warm     Do = "warm"      // the air, with the water that is in it
	Cool     Do = "cool"      // the air, likewise
	Dry      Do = "dry"       // the air, at its temperature
	Damp     Do = "damp"      // the air, at its temperature
	WarmPart Do = "warm-part" // the part alone
	Fan      Do = "fan"       // on
)

// Act is one thing done, and how far.
type Act struct {
	Do   Do         `json:"do"`
	By   q.Value    `json:"by"` // the change: kelvins, humidity, m/s, or time waited
	To   q.Value    `json:"to"` // what it comes to
	At   *time.Time `json:"at"` // Wait: until when
	Cost float64    `json:"cost"`
	Says string     `json:"says"`

	room Room // as it is then
}

// Change is what is done to a room, in order, and what the room then is.
type Change struct {
	Acts []Act      `json:"acts"` // one or two
	Cost float64    `json:"cost"` // in the unit of the prices
	Unit string     `json:"unit"`
	Then Assessment `json:"then"`
	Says string     `json:"says"`
	Room Room       `json:"-"`
}

// The formulas of what a change does.
var (
	WarmFormula = trace.Formula{
		Text:   "RH2 = RH1 p_ws(t1) / p_ws(t2); the dew point stays",
		Source: "the same water in the air: ASHRAE Handbook, Fundamentals (2017), ch. 1, eq. 20 and 22",
		Note:   "background/what-the-air-holds",
	}
	CostFormula = trace.Formula{
		Text:   "cost = fixed + each x amount, summed over what is done",
		Source: "prices of the shop",
		Note:   "background/what-a-change-of-air-costs",
	}
)

// The steps in which a change is tried: what a heater and a dehumidifier can be
// set to. A finer setting might cost up to one step less.
const (
	kelvinStep   q.Difference = 0.5
	humidityStep q.Fraction   = 0.01
)

// warm is the air warmed by d, cooled where d is below zero. The part stays as
// cold as it was; it does not stay warmer than air that is cooled.
func (r Room) warm(d q.Difference) Room {
	r.Air = r.WarmedTo(r.Temperature + q.Temperature(d))
	if d < 0 {
		r.Surface = min(r.Surface, r.Temperature)
	}
	return r
}

func (r Room) humid(h q.Fraction) Room {
	r.Humidity = h
	return r
}

func (r Room) warmPart(d q.Difference) Room {
	r.Surface += q.Temperature(d)
	return r
}

func (r Room) fan(v q.Speed) Room {
	r.Speed = v
	return r
}

// say fills in what an act comes to, from the room before it.
func (a Act) say(before Room) Act {
	r := a.room
	switch a.Do {
	case Wait:
		a.To = q.ValueOf(r.Temperature)
		a.Says = fmt.Sprintf("Wait until %s, when it is %s, %s humidity, the part at %s.", a.At.Format("Mon 2 Jan 15:04"), degrees(r.Temperature), percent(r.Humidity), degrees(r.Surface))
	case Warm, Cool:
		d := q.Difference(r.Temperature - before.Temperature)
		a.By, a.To = q.ValueOf(d), q.ValueOf(r.Temperature)
		verb, way := "Warm", "falls"
		if a.Do == Cool {
			verb, way = "Cool", "rises"
		}
		a.Says = fmt.Sprintf("%s the air by %s, to %s: its humidity %s to %s.", verb, half(d), degrees(r.Temperature), way, percent(r.Humidity))
	case Dry, Damp:
		a.By, a.To = q.ValueOf(r.Humidity-before.Humidity), q.ValueOf(r.Humidity)
		verb, way, water := "Dry", "out of", 1e3*float64(before.WaterTo(r.Air))
		if a.Do == Damp {
			verb, way = "Damp", "into"
		}
		a.Says = fmt.Sprintf("%s the air from %s to %s: %s g of water %s each m³.", verb, percent(before.Humidity), percent(r.Humidity), toPlaces(math.Abs(water), 1), way)
	case WarmPart:
		d := q.Difference(r.Surface - before.Surface)
		a.By, a.To = q.ValueOf(d), q.ValueOf(r.Surface)
		a.Says = fmt.Sprintf("Warm the part by %s, to %s: it is then %s.", half(d), degrees(r.Surface), overText(r.Over()))
	case Fan:
		a.By, a.To = q.ValueOf(r.Speed-before.Speed), q.ValueOf(r.Speed)
		a.Says = fmt.Sprintf("Turn the fan on: %s at the part.", speed(r.Speed))
	}
	return a
}

// half writes a change of temperature, which goes by half kelvins.
func half(d q.Difference) string { return whole(math.Abs(float64(d))) + " K" }
