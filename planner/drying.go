package planner

import (
	"math"

	dry "coatwright/planner/drying"
	"coatwright/planner/library"
	"coatwright/planner/mix"
	"coatwright/planner/route"
	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// never is a drying time beyond which a film does not dry in this air.
const never = 60 * 24 * 3600

// Drying knows how long every coating takes in the job's air.
type Drying struct {
	lib   *library.Library
	rates dry.Rates
	water map[route.Coating]float64 // wet film as sprayed against the data sheet's
	lags  map[route.Coating]map[string]q.Time
}

// NewDrying works out the times of every coating that the job could lay.
func NewDrying(job *Job, lib *library.Library) *Drying {
	d := &Drying{lib: lib, rates: dry.RatesIn(job.Room.Air), water: map[route.Coating]float64{}, lags: map[route.Coating]map[string]q.Time{}}
	for _, m := range lib.Materials {
		if m.Role == "" {
			continue
		}
		for _, tool := range job.Applicators {
			c := route.Coating{Material: m, Tool: lib.Tools[tool]}
			d.water[c] = waterRatio(c, lib)
			states := map[string]q.Time{}
			for state, t := range m.Dries {
				if lag := d.time(c, t); lag < never {
					states[state] = lag
				}
			}
			d.lags[c] = states
		}
	}
	return d
}

// waterRatio is how much wetter the film goes on with this applicator's mix
// than with the mix for any other, which the drying times are given for.
func waterRatio(c route.Coating, lib *library.Library) float64 {
	sheet, err1 := mix.Solids(MixParts(c.Material, lib, ""))
	sprayed, err2 := mix.Solids(MixParts(c.Material, lib, c.Tool.Slug))
	if err1 != nil || err2 != nil || sheet <= 0 || sprayed <= 0 {
		return 1
	}
	return float64(sheet / sprayed)
}

// film returns the wet film of c as sprayed and on the data sheet, for
// drying.Time, which needs their ratio.
func (d *Drying) film(c route.Coating) (build, sheet q.Length) {
	return c.Build * q.Length(d.water[c]), c.Build
}

func (d *Drying) time(c route.Coating, t library.Drying) q.Time {
	build, sheet := d.film(c)
	return d.rates.Time(t.In, dry.Pace(t.By), build, sheet)
}

// Lag is the time from a film's last coat to a dryness state; ok is false for
// a state that the film never reaches.
func (d *Drying) Lag(c route.Coating, state string) (q.Time, bool) {
	t, ok := d.lags[c][state]
	return t, ok
}

// Closes is when m's recoat window shuts. Where a reaction shuts it, a warm room
// does so sooner; a cold one is not trusted to keep it open longer. Any other
// window is as its data sheet says.
func (d *Drying) Closes(m *library.Material) q.Time {
	window := m.Dries[library.Recoat]
	if dry.Pace(window.By) != dry.Cure {
		return window.Closes
	}
	return window.Closes * q.Time(math.Min(1, d.rates.Factor(dry.Cure)))
}

// Stands is how long a part must stand after a step, or a film between coats.
func (d *Drying) Stands(t library.Drying) q.Time {
	if t.In == 0 {
		return 0
	}
	return min(d.rates.Time(t.In, dry.Pace(t.By), 1, 1), never)
}

// Flash is the wait between two coats of c.
func (d *Drying) Flash(c route.Coating) q.Time {
	if c.Flash.In == 0 {
		return 0
	}
	return min(d.time(c, c.Flash), never)
}

// How is the figures behind Lag, in words; "" where there is none.
func (d *Drying) How(c route.Coating, state string) string {
	t, ok := c.Dries[state]
	if !ok {
		return ""
	}
	build, sheet := d.film(c)
	return d.rates.How(t.In, dry.Pace(t.By), build, sheet)
}

// Trace is how a time of c that its note gives comes about in the job's air.
func (d *Drying) Trace(c route.Coating, t library.Drying, from dry.Origins) (trace.Formula, []trace.Input) {
	build, sheet := d.film(c)
	return dry.FormulaOf(dry.Pace(t.By)), d.rates.Inputs(t.In, dry.Pace(t.By), build, sheet, from)
}

// TraceStand is how Stands comes about.
func (d *Drying) TraceStand(t library.Drying, from dry.Origins) (trace.Formula, []trace.Input) {
	return dry.FormulaOf(dry.Pace(t.By)), d.rates.Inputs(t.In, dry.Pace(t.By), 1, 1, from)
}
