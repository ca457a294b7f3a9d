package workout

import (
	"fmt"
	"math"
	"slices"

	"coatwright/planner/air"
	"coatwright/planner/drying"
	"coatwright/planner/library"
	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// What a drying chart spans at the least. Steps of 5 C are whole degrees in
// Fahrenheit also.
const (
	chartCold  = 5  // C
	chartWarm  = 40 // C
	chartStep  = 5  // C
	chartDry   = 20 // %
	chartDamp  = 100
	chartNotch = 10 // %
)

// DryingChart is the time that a film of m takes to a dryness state, over the
// temperature and the humidity of air that moves as in a, with the place of a. The
// film is so much of a full coat. It is nil for a state that m has no time to.
func DryingChart(m *library.Material, state string, a air.Air, film q.Fraction) *Chart {
	d, ok := m.Dries[state]
	if !ok {
		return nil
	}
	s := stateOf(d, film)
	c := &Chart{
		Title: fmt.Sprintf("Time until %s is %s, by temperature and humidity", lowered(m.Title), spaced(state)),
		X:     Axis{Name: "Humidity"}, Y: Axis{Name: "Air"},
		Point: &Mark{Name: "this air", X: q.ValueOf(a.Humidity), Y: q.ValueOf(a.Temperature), Time: timeValue(s, s.Time(a))},
		Box:   ownRangeOf(m.Air),
	}
	temperatures, humidities := chartTemperatures(a.Temperature), chartHumidities(a.Humidity)
	for _, t := range temperatures {
		c.Y.Values = append(c.Y.Values, q.ValueOf(t))
	}
	for _, h := range humidities {
		c.X.Values = append(c.X.Values, q.ValueOf(h))
	}
	least, most := q.Time(math.Inf(1)), q.Time(0)
	for _, row := range s.Grid(a, temperatures, humidities).Times {
		var times []*q.Value
		for _, t := range row {
			time := timeValue(s, t)
			if time != nil {
				least, most = min(least, t), max(most, t)
			}
			times = append(times, time)
		}
		c.Times = append(c.Times, times)
	}
	c.Lines = roundTimes(least, most)
	return c
}

// Table is the times of c in rows and columns.
func (c *Chart) Table() Table {
	t := Table{Title: c.Title, Columns: []string{c.Y.Name}}
	for _, x := range c.X.Values {
		t.Columns = append(t.Columns, q.Metric.Show(x))
	}
	for i, row := range c.Times {
		cells := []any{c.Y.Values[i]}
		for _, time := range row {
			if time == nil {
				cells = append(cells, "never")
				continue
			}
			cells = append(cells, *time)
		}
		t.Rows = append(t.Rows, cells)
	}
	return t
}

// Stops reports whether nothing dries where the first measure is at its highest.
func (c *Chart) Stops() bool {
	return !slices.ContainsFunc(c.Times, func(row []*q.Value) bool { return row[len(row)-1] != nil })
}

// stateOf is a dryness state of a film that is so much of a full coat.
func stateOf(d library.Drying, film q.Fraction) drying.State {
	pace := drying.Pace(d.By)
	return drying.State{In: d.In, By: pace, Film: drying.Thickness(pace, q.Length(film), 1).Likely}
}

// hopeless is how many times as slow as in the reference air nothing dries: what
// is left over near freezing, between air that is full over ice and over water.
const hopeless = 1000

// never reports whether a time to a state is as good as none.
func never(s drying.State, t q.Time) bool { return t > hopeless*s.Time(drying.Reference()) }

// timeValue is a time to a state, nil where that never comes.
func timeValue(s drying.State, t q.Time) *q.Value {
	if never(s, t) {
		return nil
	}
	v := q.ValueOf(t)
	return &v
}

// ownRangeOf is where a film may be laid, nil where its note does not say.
func ownRangeOf(r library.AirRange) *Box {
	if r.Air.IsZero() || r.Humidity.IsZero() {
		return nil
	}
	return &Box{Name: "where it may be laid", X: *trace.SpanOf(r.Humidity.Low, r.Humidity.High), Y: *trace.SpanOf(r.Air.Low, r.Air.High)}
}

// chartTemperatures are those of the rows: the usual span, and as far beyond it as
// t asks for.
func chartTemperatures(t q.Temperature) []q.Temperature {
	low := min(chartCold, chartStep*math.Floor(t.Celsius()/chartStep))
	high := max(chartWarm, chartStep*math.Ceil(t.Celsius()/chartStep))
	var out []q.Temperature
	for c := low; c <= high; c += chartStep {
		out = append(out, q.Celsius(c))
	}
	return out
}

// chartHumidities are those of the columns: the usual span, and as far below it as
// h asks for.
func chartHumidities(h q.Fraction) []q.Fraction {
	var out []q.Fraction
	for p := min(chartDry, chartNotch*math.Floor(h.Percent()/chartNotch)); p <= chartDamp; p += chartNotch {
		out = append(out, q.Fraction(p/100))
	}
	return out
}

// saidTimes are times that a painter would say, in s, each about twice the one
// before it.
var saidTimes = []q.Time{
	30, 60, 120, 300, 600, 1200, 1800, 3600, 2 * 3600, 4 * 3600, 8 * 3600, 16 * 3600,
	day, 2 * day, 4 * day, 7 * day, 14 * day, 28 * day, 56 * day,
}

const (
	day       q.Time = 24 * 3600
	mostLines        = 6
)

// roundTimes are times between two that a painter would say, so many at the most.
func roundTimes(least, most q.Time) []q.Value {
	var within []q.Time
	for _, t := range saidTimes {
		if t > least && t < most {
			within = append(within, t)
		}
	}
	skip := max(1, (len(within)+mostLines-1)/mostLines)
	var out []q.Value
	for i, t := range within {
		if i%skip == 0 {
			out = append(out, q.ValueOf(t))
		}
	}
	return out
}
