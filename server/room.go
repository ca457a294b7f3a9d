package main

import (
	"errors"
	"fmt"
	"net/http"
	"slices"
	"strconv"
	"strings"

	"github.com/gin-gonic/gin"

	"coatwright/planner"
	"coatwright/planner/library"
	"coatwright/planner/room"
	"coatwright/planner/weather"
	q "coatwright/quantity"
	"coatwright/web"
	"coatwright/workout"
)

// roomOf shows how a job's room suits the films of a kept plan, by the notes of
// today, and on which of some days it would suit them best.
func (s *site) roomOf(c *gin.Context) error {
	saved, plan, err := s.savedPlan(c.Param("id"))
	if err != nil {
		return err
	}
	if plan.Refused != nil {
		return &failure{status: http.StatusConflict, heading: "There is no plan yet", detail: "No film is laid in this room before the job can be planned.", suggest: "/plan/" + saved.ID}
	}
	page := web.RoomPage{Frame: frame(c, "The room: "+saved.Title, web.AtJobs), ID: saved.ID, Plan: plan, Weather: strings.TrimSpace(c.Query("weather")), Titles: s.titles()}
	films, gone := s.filmsOf(plan)
	page.Gone = gone
	means := planner.MeansOf(s.notes.Planner().Words.RoomChanges)
	status := http.StatusOK
	if page.Weather != "" {
		series, err := workout.ReadWeather(page.Weather)
		if err != nil {
			var wrong *weather.Error
			if !errors.As(err, &wrong) {
				return err
			}
			status, page.Problem = http.StatusUnprocessableEntity, upperFirst(err.Error())+"."
		} else {
			showDays(&page, series, films)
			means.Now, means.Later = plan.Job.Start, later(plan.Job.Room, series)
		}
	}
	if page.Advice, err = room.Advise(room.Room(plan.Job.Room), wantsOf(films), means); err != nil {
		return err
	}
	for _, m := range films {
		w := planner.WantsOf(m)
		page.Films = append(page.Films, web.RoomFilm{Film: m.Title, Note: w.Note, Assessment: room.Assess(room.Room(plan.Job.Room), []room.Wants{w})})
	}
	for _, w := range page.Advice.Ways {
		page.Ways = append(page.Ways, wayOf(w, plan.Job))
	}
	if m := slowest(films, plan.Job.Room); m != nil {
		page.Slowest, page.Chart = m.Title, workout.DryingChart(m, library.Recoat, plan.Job.Room.Air, 1)
	}
	c.Header("Vary", "Accept, Cookie")
	if wantsJSON(c) {
		c.JSON(status, gin.H{"advice": page.Advice, "ways": page.Ways, "slowest": page.Slowest, "chart": page.Chart, "days": page.Days, "problem": page.Problem})
		return nil
	}
	return send(c, status, page)
}

// filmsOf are the materials of a plan's films, each once, and the titles of those
// that no note describes any more.
func (s *site) filmsOf(plan *planner.Plan) (films []*library.Material, gone []string) {
	for _, f := range plan.Films {
		switch m := s.notes.Planner().Materials[strings.TrimPrefix(f.Material, "material/")]; {
		case m == nil && !slices.Contains(gone, f.Title):
			gone = append(gone, f.Title)
		case m != nil && !slices.Contains(films, m):
			films = append(films, m)
		}
	}
	return films, gone
}

func wantsOf(films []*library.Material) []room.Wants {
	var out []room.Wants
	for _, m := range films {
		out = append(out, planner.WantsOf(m))
	}
	return out
}

// slowest is the film that waits the longest for the next one, nil where none
// does.
func slowest(films []*library.Material, r planner.Room) *library.Material {
	var best *library.Material
	var longest float64
	for _, m := range films {
		c := workout.DryingChart(m, library.Recoat, r.Air, 1)
		if c == nil {
			continue
		}
		takes := never
		if c.Point.Time != nil {
			takes = c.Point.Time.SI
		}
		if best == nil || takes > longest {
			best, longest = m, takes
		}
	}
	return best
}

// never is longer than any drying time, in s.
const never = 1e12

// wayOf is a change of the room, with the choices that plan the job in the room
// that it leads to.
func wayOf(c room.Change, job *planner.Job) web.RoomWay {
	out := web.RoomWay{Level: c.Then.Level, Cost: q.Time(c.Cost * 60)}
	for _, act := range c.Acts {
		out.Says = strings.TrimSpace(out.Says + " " + act.Says)
	}
	a := planner.Alternative{}
	was, is := job.Room, c.Room
	if is.Temperature != was.Temperature {
		a["room.air"] = decimal(is.Temperature.Celsius(), "C")
	}
	if is.Humidity != was.Humidity {
		a["room.humidity"] = decimal(is.Humidity.Percent(), "%")
	}
	if is.Surface != was.Surface {
		a["room.surface"] = decimal(is.Surface.Celsius(), "C")
	}
	if is.Speed != was.Speed {
		a["room.airflow"] = decimal(float64(is.Speed), "m/s")
	}
	for _, act := range c.Acts {
		if act.At != nil {
			a["start"] = act.At.Format(jobTime)
		}
	}
	if len(a) > 0 {
		out.With = a.String()
	}
	return out
}

// jobTime is how a job writes its start.
const jobTime = "2006-01-02T15:04"

// decimal writes a figure of a room to two decimals, which no instrument shows.
func decimal(x float64, unit string) string {
	text := strconv.FormatFloat(x, 'f', 2, 64)
	return strings.TrimSuffix(strings.TrimRight(text, "0"), ".") + " " + unit
}

// later is the job's room in the hours of some weather: kept as warm as it is,
// with air let in from outside.
func later(r planner.Room, series weather.Series) []room.Later {
	var out []room.Later
	for _, row := range series.Rows() {
		then := room.Room{Air: weather.Indoor(row.Air, r.Temperature, r.Speed), Surface: r.Surface}
		out = append(out, room.Later{At: row.Time, Room: then})
	}
	return out
}

// showDays judges the days of some weather for a plan's films.
func showDays(page *web.RoomPage, series weather.Series, films []*library.Material) {
	job := page.Plan.Job
	o := workout.Outlook{
		Films: films, Lasts: longestCoat(page.Plan), Hours: job.Shop.Hours, Until: library.Recoat,
		Kept: &workout.Kept{At: job.Room.Temperature, Speed: job.Room.Speed},
	}
	days := o.Days(series)
	table := o.Table(days)
	page.Days, page.Says = &table, o.Says(series, days)
	page.Asked = []string{fmt.Sprintf("In a room kept at %s with this air let in, in the job's working hours, for the longest of the plan's films: %s of spraying in one go.", q.Show(q.Metric, job.Room.Temperature), o.Lasts)}
	if best, ok := workout.BestDay(days); ok {
		b := best.Best
		with := planner.Alternative{"start": b.At.Format(jobTime), "room.humidity": decimal(b.Air.Humidity.Percent(), "%")}
		page.Start = &workout.Choice{Value: with.String(), Title: "Plan it from " + b.At.Format("Mon 2 Jan 15:04") + " on"}
	}
}

// longestCoat is the longest work that lays a film.
func longestCoat(plan *planner.Plan) q.Time {
	longest := q.Time(60)
	for _, s := range plan.Steps {
		if s.Coats > 0 {
			longest = max(longest, q.Time(s.WorkMin*60))
		}
	}
	return longest
}
