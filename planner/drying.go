package planner

import (
	"math"

	"coatwright/planner/amounts"
	dry "coatwright/planner/drying"
	"coatwright/planner/library"
	q "coatwright/quantity"
)

// never is a drying time beyond which a film does not dry in this air.
const never = 60 * 24 * 3600

// drying knows how long every film of the library takes in the job's air.
type drying struct {
	job   *Job
	lib   *library.Library
	water map[string]float64 // wet film as sprayed against the data sheet's, by material
	lags  map[*library.Material]map[string]q.Time
}

func newDrying(job *Job, lib *library.Library) *drying {
	d := &drying{job: job, lib: lib, water: map[string]float64{}, lags: map[*library.Material]map[string]q.Time{}}
	for slug, m := range lib.Materials {
		if m.Role == "" {
			continue
		}
		d.water[slug] = d.waterRatio(m)
		states := map[string]q.Time{}
		for state, t := range m.Dries {
			if lag := d.time(m, t); lag < never {
				states[state] = lag
			}
		}
		d.lags[m] = states
	}
	return d
}

// waterRatio is how much wetter the film goes on with this applicator's mix
// than with the mix for any other, which the drying times are given for.
func (d *drying) waterRatio(m *library.Material) float64 {
	sheet, err1 := amounts.SolidsOfMix(mixParts(m, d.lib, ""))
	sprayed, err2 := amounts.SolidsOfMix(mixParts(m, d.lib, d.job.Applicator))
	if err1 != nil || err2 != nil || sheet <= 0 || sprayed <= 0 {
		return 1
	}
	return float64(sheet / sprayed)
}

// film returns m's wet film as sprayed and on the data sheet, for drying.Time,
// which needs their ratio.
func (d *drying) film(m *library.Material) (build, sheet q.Length) {
	return m.Build * q.Length(d.water[m.Slug]), m.Build
}

func (d *drying) time(m *library.Material, t library.Drying) q.Time {
	build, sheet := d.film(m)
	return dry.Time(t.In, dry.Pace(t.By), d.job.Room.Air, build, sheet)
}

// lag is the time from a film's last coat to a dryness state; ok is false for
// a state that the film never reaches.
func (d *drying) lag(m *library.Material, state string) (q.Time, bool) {
	t, ok := d.lags[m][state]
	return t, ok
}

// closes is when m's recoat window shuts. Where a reaction shuts it, a warm room
// does so sooner; a cold one is not trusted to keep it open longer. Any other
// window is as its data sheet says.
func (d *drying) closes(m *library.Material) q.Time {
	window := m.Dries["dry-to-recoat"]
	if dry.Pace(window.By) != dry.Cure {
		return window.Closes
	}
	return window.Closes * q.Time(math.Min(1, dry.Factor(dry.Cure, d.job.Room.Air)))
}

// stands is how long a part must stand after a step, or a film between coats.
func (d *drying) stands(t library.Drying) q.Time {
	if t.In == 0 {
		return 0
	}
	return min(dry.Time(t.In, dry.Pace(t.By), d.job.Room.Air, 1, 1), never)
}

// flash is the wait between two coats of m.
func (d *drying) flash(m *library.Material) q.Time {
	if m.Flash.In == 0 {
		return 0
	}
	return min(d.time(m, m.Flash), never)
}

func (d *drying) how(m *library.Material, state string) string {
	t, ok := m.Dries[state]
	if !ok {
		return ""
	}
	build, sheet := d.film(m)
	return dry.How(t.In, dry.Pace(t.By), d.job.Room.Air, build, sheet)
}
