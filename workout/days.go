package workout

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"time"

	"coatwright/planner/air"
	"coatwright/planner/calendar"
	"coatwright/planner/drying"
	"coatwright/planner/library"
	"coatwright/planner/room"
	"coatwright/planner/weather"
	q "coatwright/quantity"
)

// Outlook is work that waits for its weather: films that are laid in some air,
// within working hours.
type Outlook struct {
	Films []*library.Material
	Lasts q.Time         // the work, in one go
	Hours calendar.Hours // in which it is done
	Until string         // the dryness state that is asked for when it is done
	Kept  *Kept          // nil for work outdoors
}

// Kept is a room that is kept at a warmth, with air let in from outside.
type Kept struct {
	At    q.Temperature
	Speed q.Speed
}

// Day is one day of weather, judged in its working hours.
type Day struct {
	Date      time.Time
	Spans     [3]string // the hours that are a go, want care, and are a no, by room.Level
	Best      *Start    // nil where the work finds no place
	Unstarted string    // why it does not; "" where it does
}

// Start is the best of a day's starts.
type Start struct {
	At    time.Time
	Level room.Level
	Air   air.Air // at that hour
	Takes q.Time  // from the end of the work until the slowest film is dry so far; +Inf for more than a week
	Film  *library.Material
	Held  bool // beyond the last hour of the weather its air was taken on
}

const (
	// notch is how often a day is looked at.
	notch = 30 * time.Minute

	// mostDays is how many days are judged: further nobody can foresee.
	mostDays = 14

	// dryingLimit is how far a film is followed.
	dryingLimit = 7 * day
)

// Days judges the days of some weather. Beyond the first so many they are left
// out.
func (o Outlook) Days(s weather.Series) []Day {
	first, last, ok := s.Ends()
	if !ok {
		return nil
	}
	wants := wantsOf(o.Films)
	var out []Day
	for date := first.Truncate(24 * time.Hour); !date.After(last) && len(out) < mostDays; date = date.AddDate(0, 0, 1) {
		out = append(out, o.day(s, wants, date))
	}
	return out
}

func (o Outlook) day(s weather.Series, wants []room.Wants, date time.Time) Day {
	d := Day{Date: date}
	first, last, _ := s.Ends()
	var levels []halfHour
	var starts []time.Time
	for at := date; at.Before(date.AddDate(0, 0, 1)); at = at.Add(notch) {
		if at.Before(first) || at.After(last) || calendar.Span(o.Hours, at, at.Add(notch)) < notch {
			continue
		}
		levels = append(levels, halfHour{at, room.Assess(o.room(s, at), wants).Level})
		if lasts := o.Lasts.Duration(); calendar.Span(o.Hours, at, at.Add(lasts)) == lasts {
			starts = append(starts, at)
		}
	}
	for _, l := range []room.Level{room.Go, room.Care, room.No} {
		d.Spans[l] = spansOf(levels, l)
	}
	best, ok := s.Best(starts, o.Lasts, func(outside air.Air) float64 { return room.Strain(o.inside(outside), wants) })
	switch {
	case len(levels) == 0:
		d.Unstarted = "no weather in the working hours"
	case !ok:
		d.Unstarted = "the hours are too short"
	case best.Worst > 1:
		d.Unstarted = "it never suits long enough"
	default:
		d.Best = o.start(s, wants, best)
	}
	return d
}

// start is what comes of a start: the air, and how long the slowest film takes.
func (o Outlook) start(s weather.Series, wants []room.Wants, best weather.Start) *Start {
	out := &Start{At: best.At, Held: best.Held}
	_, last, _ := s.Ends()
	end := best.At.Add(o.Lasts.Duration())
	for at := best.At; at.Before(end); at = at.Add(notch) {
		out.Level = max(out.Level, room.Assess(o.room(s, at), wants).Level)
	}
	out.Air = o.room(s, best.At).Air
	outside := s.From(end)
	course := func(after q.Time) air.Air { return o.inside(outside(after)).Air }
	for _, m := range o.Films {
		t, ok := m.Dries[o.Until]
		if !ok {
			continue
		}
		if takes := stateOf(t, 1).Reached(course, dryingLimit); out.Film == nil || takes > out.Takes {
			out.Film, out.Takes = m, takes
		}
	}
	if math.IsInf(float64(out.Takes), 1) || end.Add(out.Takes.Duration()).After(last) {
		out.Held = true
	}
	return out
}

// room is the room at a time.
func (o Outlook) room(s weather.Series, at time.Time) room.Room {
	outside, _ := s.At(at)
	return o.inside(outside)
}

// inside is the air where the films are laid when there is some air outside, and
// the part in it, as warm as the air. Outdoors no air is stiller than still.
func (o Outlook) inside(outside air.Air) room.Room {
	a := outside
	if o.Kept != nil {
		a = weather.Indoor(outside, o.Kept.At, o.Kept.Speed)
	} else {
		a.Speed = max(a.Speed, drying.Reference().Speed)
	}
	return room.Room{Air: a, Surface: a.Temperature}
}

// halfHour is how the room is for the next half hour.
type halfHour struct {
	at    time.Time
	level room.Level
}

// spansOf says when a level holds: "08:00 to 10:30, 14:00 to 17:00".
func spansOf(levels []halfHour, of room.Level) string {
	var spans []string
	for i := 0; i < len(levels); i++ {
		if levels[i].level != of {
			continue
		}
		from := levels[i].at
		for i+1 < len(levels) && levels[i+1].level == of && levels[i+1].at.Sub(levels[i].at) == notch {
			i++
		}
		to := levels[i].at.Add(notch).Format("15:04")
		if to == "00:00" {
			to = "24:00"
		}
		spans = append(spans, from.Format("15:04")+" to "+to)
	}
	return strings.Join(spans, ", ")
}

// BestDay is the day with the best start, the earliest of equals; ok is false
// where there is none.
func BestDay(days []Day) (best Day, ok bool) {
	var fit []Day
	for _, d := range days {
		if d.Best != nil {
			fit = append(fit, d)
		}
	}
	if len(fit) == 0 {
		return Day{}, false
	}
	return slices.MinFunc(fit, func(a, b Day) int { return int(a.Best.Level - b.Best.Level) }), true
}

// Table is days as a table, in the order of the days.
func (o Outlook) Table(days []Day) Table {
	t := Table{
		Title: "The days, in working hours", Apart: true,
		Columns: []string{"Day", "Go", "With care", "No", "Best start", "Air then", "Humidity then", capital(spaced(o.Until)) + " after"},
	}
	for _, d := range days {
		row := []any{d.Date.Format("Mon 2 Jan"), d.Spans[room.Go], d.Spans[room.Care], d.Spans[room.No]}
		if b := d.Best; b != nil {
			row = append(row, b.At.Format("15:04")+", "+b.Level.String(), q.ValueOf(b.Air.Temperature), q.ValueOf(b.Air.Humidity), b.takes())
		} else {
			row = append(row, "none: "+d.Unstarted, "", "", "")
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}

// takes says how long the slowest film takes.
func (s Start) takes() string {
	switch {
	case s.Film == nil:
		return "none of the films says"
	case math.IsInf(float64(s.Takes), 1):
		return "more than a week"
	}
	text := s.Takes.String()
	if s.Held {
		text += ", if the last hour stays"
	}
	return text
}

// Says are the days in sentences: where to start, and what was not looked at.
func (o Outlook) Says(s weather.Series, days []Day) []string {
	var out []string
	if best, ok := BestDay(days); ok && best.Best.Film != nil {
		out = append(out, fmt.Sprintf("Until %s is %s takes the longest: %s after the work is done, if it starts then.", lowered(best.Best.Film.Title), spaced(o.Until), best.Best.takes()))
	}
	if unread := s.Unread(); len(unread) > 0 {
		out = append(out, fmt.Sprintf("Not read: %s.", strings.Join(unread, ", ")))
	}
	if _, last, _ := s.Ends(); len(days) == mostDays && last.After(days[len(days)-1].Date.AddDate(0, 0, 1)) {
		out = append(out, fmt.Sprintf("Only the first %d days are judged.", mostDays))
	}
	return out
}
