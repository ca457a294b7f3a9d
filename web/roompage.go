package web

import (
	"fmt"

	"coatwright/planner"
	"coatwright/planner/room"
	q "coatwright/quantity"
	"coatwright/workout"
)

// RoomPage says whether a job's room suits the films of its plan, and what would
// make it do so.
type RoomPage struct {
	Frame
	ID      string // of the plan
	Plan    *planner.Plan
	Advice  room.Advice
	Films   []RoomFilm
	Ways    []RoomWay
	Gone    []string        // films of the plan whose notes are no longer there
	Slowest string          // the film of the chart, "" for none
	Chart   *workout.Chart  // nil for none
	Weather string          // as it was pasted
	Problem string          // what is wrong with it
	Asked   []string        // how the days were judged
	Days    *workout.Table  // nil before any weather was pasted
	Says    []string        // of the days
	Start   *workout.Choice // the best start as an alternative, with its title; nil for none
	Titles  map[string]string
}

// RoomFilm is the room as one film of the plan has it.
type RoomFilm struct {
	Film, Note string
	room.Assessment
}

// RoomWay is something that would make the room suit.
type RoomWay struct {
	Says  string     `json:"says"`
	Level room.Level `json:"level"`     // of the room then
	Cost  q.Time     `json:"trouble_s"` // for which somebody is kept from other work
	With  string     `json:"with"`      // as planner.ParseAlternative reads it; "" for what a job cannot say
}

func (RoomPage) template() string { return "room" }

// Room is the job's room in a line.
func (p RoomPage) Room() string {
	r, u := p.Plan.Job.Room, p.units()
	return fmt.Sprintf("%s, %s humidity, air at %s, the part at %s", q.Show(u, r.Temperature), q.Show(u, r.Humidity), q.Show(u, r.Speed), q.Show(u, r.Surface))
}

// NameOf is the title of a note.
func (p RoomPage) NameOf(path string) string { return titleOf(p.Titles, path) }

// Suits reports whether nothing is to be changed.
func (p RoomPage) Suits() bool { return p.Advice.Now.Level == room.Go }

// Trouble is what a way costs, in words.
func (w RoomWay) Trouble() string { return w.Cost.String() }

// subjects are what a finding is about, in words.
var subjects = map[room.Subject]string{
	room.OfAir: "air at", room.OfHumidity: "humidity of", room.OfPart: "part above the dew point by", room.OfSpeed: "air moving at",
}

// Finds says in figures what a film does not like about the room.
func (p RoomPage) Finds(f room.Finding) string {
	u := p.units()
	text := subjects[f.Of] + " " + u.Show(f.Found) + ", wants "
	switch {
	case f.High == nil:
		text += "at least " + u.Show(*f.Low)
	case f.Of == room.OfAir:
		text += shownRange[q.Temperature](u, f)
	case f.Of == room.OfHumidity:
		text += shownRange[q.Fraction](u, f)
	case f.Of == room.OfSpeed:
		text += shownRange[q.Speed](u, f)
	}
	if f.Level == room.Care {
		text += ": near the end"
	}
	return text
}

// shownRange is what a finding wants, from its least to its most.
func shownRange[Q q.Quantity](u *q.System, f room.Finding) string {
	return q.ShowRange(u, q.Range[Q]{Low: Q(f.Low.SI), High: Q(f.High.SI)})
}
