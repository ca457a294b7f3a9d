package room

import (
	"fmt"
	"math"
	"time"

	q "coatwright/quantity"
)

// Price is what one thing costs to do, in whatever the shop counts by: money,
// minutes of trouble. Each is for a kelvin, a per cent of humidity or an hour.
// The zero Price is of what cannot be done here.
type Price[Q q.Quantity] struct {
	Fixed float64
	Each  float64
	Most  Q // the furthest that it can be done
}

// Later is the room at a later hour, as the weather has it.
type Later struct {
	At   time.Time
	Room Room
}

// Means are what can be done about a room, and at what price.
type Means struct {
	Unit     string // of the prices, as it stands behind a figure: "min", "EUR"
	Warm     Price[q.Difference]
	Cool     Price[q.Difference]
	Dry      Price[q.Fraction]
	Damp     Price[q.Fraction]
	WarmPart Price[q.Difference]
	Fan      Price[q.Speed] // Most is its speed at the part; Each is not asked for
	Wait     Price[q.Time]
	Now      time.Time
	Later    []Later // in order of time
}

// check refuses prices that no search could go by.
func (m Means) check() error {
	for _, p := range []struct {
		name              string
		fixed, each, most float64
	}{
		{"warming the air", m.Warm.Fixed, m.Warm.Each, float64(m.Warm.Most)},
		{"cooling the air", m.Cool.Fixed, m.Cool.Each, float64(m.Cool.Most)},
		{"drying the air", m.Dry.Fixed, m.Dry.Each, float64(m.Dry.Most)},
		{"damping the air", m.Damp.Fixed, m.Damp.Each, float64(m.Damp.Most)},
		{"warming the part", m.WarmPart.Fixed, m.WarmPart.Each, float64(m.WarmPart.Most)},
		{"the fan", m.Fan.Fixed, m.Fan.Each, float64(m.Fan.Most)},
		{"waiting", m.Wait.Fixed, m.Wait.Each, float64(m.Wait.Most)},
	} {
		for _, x := range []float64{p.fixed, p.each, p.most} {
			if x < 0 || math.IsNaN(x) || math.IsInf(x, 0) {
				return fmt.Errorf("%s: found a price of %g and %g each up to %g; expected figures of 0 or more", p.name, p.fixed, p.each, p.most)
			}
		}
	}
	if m.Warm.Most > mostKelvins || m.Cool.Most > mostKelvins || m.WarmPart.Most > mostKelvins {
		return fmt.Errorf("found a change of more than %g K; expected at most that", float64(mostKelvins))
	}
	return nil
}

// mostKelvins keeps a search short; no shop changes its air by more.
const mostKelvins q.Difference = 60

// options are the ways in which one thing can be done to r, the cheapest first:
// each a little further than the one before.
func (m Means) options(do Do, r Room) []Act {
	switch do {
	case Wait:
		return m.waits()
	case Warm:
		return byKelvins(do, m.Warm, r.warm)
	case Cool:
		return byKelvins(do, m.Cool, func(d q.Difference) Room { return r.warm(-d) })
	case Dry:
		return byHumidity(do, m.Dry, r, -1)
	case Damp:
		return byHumidity(do, m.Damp, r, 1)
	case WarmPart:
		return byKelvins(do, m.WarmPart, r.warmPart)
	case Fan:
		if m.Fan.Most > r.Speed {
			return []Act{{Do: Fan, Cost: m.Fan.Fixed, room: r.fan(m.Fan.Most)}}
		}
	}
	return nil
}

func byKelvins(do Do, p Price[q.Difference], change func(q.Difference) Room) []Act {
	var out []Act
	for n := 1; kelvinStep*q.Difference(n) <= p.Most; n++ {
		d := kelvinStep * q.Difference(n)
		out = append(out, Act{Do: do, Cost: p.Fixed + p.Each*float64(d), room: change(d)})
	}
	return out
}

// byHumidity goes from the room's humidity to every whole per cent below it, or
// above.
func byHumidity(do Do, p Price[q.Fraction], r Room, way q.Fraction) []Act {
	var out []Act
	next := q.Fraction(math.Floor(float64(r.Humidity/humidityStep))) + 1
	if way < 0 {
		next = q.Fraction(math.Ceil(float64(r.Humidity/humidityStep))) - 1
	}
	for ; next > 0 && next*humidityStep <= 1; next += way {
		h := next * humidityStep
		moved := (h - r.Humidity) * way
		if moved > p.Most {
			break
		}
		out = append(out, Act{Do: do, Cost: p.Fixed + p.Each*moved.Percent(), room: r.humid(h)})
	}
	return out
}

func (m Means) waits() []Act {
	var out []Act
	for _, l := range m.Later {
		wait := q.Time(l.At.Sub(m.Now).Seconds())
		if wait <= 0 || wait > m.Wait.Most {
			continue
		}
		out = append(out, Act{Do: Wait, At: &l.At, By: q.ValueOf(wait), Cost: m.Wait.Fixed + m.Wait.Each*float64(wait)/3600, room: l.Room})
	}
	return out
}
