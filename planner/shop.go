package planner

import (
	"errors"
	"fmt"
	"time"

	"coatwright/planner/air"
	"coatwright/planner/calendar"
	q "coatwright/quantity"
	"coatwright/strictyaml"
)

// room reads the room; what is not given is a mild day in a still room.
func room(v *strictyaml.Value) Room {
	m := v.Map()
	r := Room{Air: air.Air{
		Temperature: within(m.Get("air"), q.Celsius(21), airLimits),
		Humidity:    within(m.Get("humidity"), 0.55, q.Range[q.Fraction]{Low: minHumidity, High: maxHumidity}),
		Speed:       within(m.Get("airflow"), 0.1, q.Range[q.Speed]{Low: 0, High: maxSpeed}),
	}}
	r.Surface = within(m.Get("surface"), r.Temperature, airLimits)
	m.Close()
	return r
}

// within reads a quantity that must lie in limits, or answers with otherwise.
func within[Q q.Quantity](v *strictyaml.Value, otherwise Q, limits q.Range[Q]) Q {
	if v == nil {
		return otherwise
	}
	x := strictyaml.Quantity[Q](v)
	if !limits.Holds(x) {
		v.Fail("a value "+limitsText(limits), "")
	}
	return x
}

// scaleLimits are the steps of a scale that can weigh a mix.
var scaleLimits = q.Range[q.Mass]{Low: 1e-6, High: 0.1}

func limitsText[Q q.Quantity](r q.Range[Q]) string {
	switch l := any(r).(type) {
	case q.Range[q.Temperature]:
		return fmt.Sprintf("from %.0f to %.0f C", l.Low.Celsius(), l.High.Celsius())
	case q.Range[q.Fraction]:
		return fmt.Sprintf("from %.0f to %.0f %%", l.Low.Percent(), l.High.Percent())
	case q.Range[q.Mass]:
		return fmt.Sprintf("from %g to %g g", l.Low.Grams(), l.High.Grams())
	case q.Range[q.Speed]:
		return fmt.Sprintf("from %g to %g m/s", float64(l.Low), float64(l.High))
	}
	return fmt.Sprintf("from %g to %g", float64(r.Low), float64(r.High))
}

// DefaultHours are the hours of a shop that does not say.
const DefaultHours = "Mon-Fri 08:00-17:00"

// shop reads hours, people, booths and the scale.
func (j *Job) shop(v *strictyaml.Value) {
	m := v.Map()
	hours, err := calendar.ParseHours(DefaultHours)
	if err != nil {
		panic("planner: DefaultHours: " + err.Error())
	}
	if h := m.Get("hours"); h != nil {
		text := h.Text()
		if hours, err = calendar.ParseHours(text); err != nil {
			h.Fail(hoursExpected(err))
		}
	}
	j.Shop = calendar.Shop{Hours: hours, Painters: max(m.Get("painters").Int(1, maxPainters), 1)}
	j.Booths = max(m.Get("booths").Int(1, maxPainters), 1)
	j.Scale = within(m.Get("scale"), 0, scaleLimits)
	m.Close()
}

func start(v *strictyaml.Value) time.Time {
	text := v.Text()
	for _, layout := range []string{"2006-01-02T15:04", "2006-01-02T15:04:05", "2006-01-02"} {
		if t, err := time.Parse(layout, text); err == nil {
			if t.Year() < 1990 || t.Year() > 2200 {
				break
			}
			return t.Truncate(time.Minute)
		}
	}
	if v != nil {
		v.Fail(`a date and time such as "2026-12-01T08:00"`, "")
	}
	return time.Time{}
}

// hoursExpected is what calendar expected where it found no hours.
func hoursExpected(err error) (expected, nearest string) {
	var e *calendar.HoursError
	if errors.As(err, &e) {
		return e.Expected, e.Nearest
	}
	return err.Error(), ""
}
