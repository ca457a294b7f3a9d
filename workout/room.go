package workout

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"coatwright/planner"
	"coatwright/planner/air"
	"coatwright/planner/library"
	"coatwright/planner/room"
	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// roomSheet says whether a room suits some films, and what would make it do so.
var roomSheet = &Sheet{
	Slug: "room", Title: "Does the room suit?",
	Lead: "Whether your air suits the films that are to be laid in it, film by film, and the ways to make it suit, the least trouble first.",
	Note: "background/what-a-change-of-air-costs",
	fields: func(e *Entry) []Field {
		return slices.Concat(filmsFields(e), roomFields(), []Field{surfaceField})
	},
	answer: roomAnswer,
}

// suited is a room that is held against what films want.
type suited struct {
	room.Room
	wants   []room.Wants
	advice  room.Advice
	changes library.RoomChanges
}

func roomAnswer(e *Entry) *Answer {
	films := readFilms(e)
	s := suited{Room: room.Room{Air: readRoom(e), Surface: within(e, "surface", workable)}, wants: wantsOf(films), changes: e.lib.Words.RoomChanges}
	if !e.sound() {
		return nil
	}
	advice, err := room.Advise(s.Room, s.wants, planner.MeansOf(s.changes))
	if err != nil {
		e.take("films", err)
		return nil
	}
	s.advice = advice
	a := &Answer{
		Verdict: &Verdict{advice.Now.Level.String(), advice.Now.Says}, Says: s.says(),
		Figures: []trace.Figure{s.dewFigure(), s.overFigure()}, Tables: []Table{s.filmsTable()},
	}
	if strain, ok := s.strainFigure(); ok {
		a.Figures = append(a.Figures, strain)
	}
	if len(advice.Ways) > 0 {
		a.Figures = append(a.Figures, s.wayFigures(advice.Ways[0])...)
		a.Tables = append(a.Tables, s.waysTable())
	}
	return a
}

// says is what cannot be helped by any change, and what to do first.
func (s suited) says() []string {
	var out []string
	if s.advice.Now.Level != room.Go {
		out = append(out, s.advice.Says)
	}
	for _, c := range s.advice.Conflicts {
		if c.Says != s.advice.Says {
			out = append(out, c.Says)
		}
	}
	return out
}

// filmsTable is the room film by film, each with what it does not like.
func (s suited) filmsTable() Table {
	t := Table{Title: "Film by film", Columns: []string{"Film", "The room", "Why"}, Apart: true}
	for _, w := range s.wants {
		judged := room.Assess(s.Room, []room.Wants{w})
		why := "Within all that it wants."
		if len(judged.Findings) > 0 {
			var all []string
			for _, f := range judged.Findings {
				all = append(all, f.What)
			}
			why = strings.Join(all, " ")
		}
		t.Rows = append(t.Rows, []any{capital(w.Film), judged.Level.String(), why})
	}
	return t
}

// waysTable is what can be done, the least trouble first.
func (s suited) waysTable() Table {
	t := Table{Title: "What would make it suit, the least trouble first", Columns: []string{"What to do", "The room is then", "Trouble"}, Apart: true}
	for _, w := range s.advice.Ways {
		t.Rows = append(t.Rows, []any{acts(w), w.Then.Level.String(), q.ValueOf(trouble(w))})
	}
	return t
}

// acts is what is done in a change, without its price.
func acts(c room.Change) string {
	text := ""
	for i, a := range c.Acts {
		if i > 0 {
			text += " "
		}
		text += a.Says
	}
	return text
}

// trouble is the cost of a change as a time: that is what changes are priced in.
func trouble(c room.Change) q.Time { return q.Time(c.Cost * 60) }

func (s suited) dewFigure() trace.Figure {
	return trace.Figure{
		Key: "dew-point", Name: "Dew point", Value: q.ValueOf(s.DewPoint()), Formula: air.DewPointFormula,
		Inputs: []trace.Input{trace.In("t", "temperature of the air", s.Temperature, entered("air")), trace.In("RH", "humidity of the air", s.Humidity, entered("humidity"))},
	}
}

func (s suited) overFigure() trace.Figure {
	return trace.Figure{
		Key: "over-dew-point", Name: "The part lies above the dew point by", Value: q.ValueOf(s.Over()), Formula: air.MarginFormula,
		Inputs: []trace.Input{trace.In("t_surface", "the part", s.Surface, entered("surface")), trace.In("t_dew", "dew point", s.DewPoint(), fromFigure("dew-point"))},
	}
}

// strainFigure is how far the room is from what the films like best. There is none
// where a film bears one value only, and has another.
func (s suited) strainFigure() (trace.Figure, bool) {
	strain := room.Strain(s.Room, s.wants)
	return trace.Figure{
		Key: "strain", Name: "How far the room is from what they like best", Value: q.ValueOf(q.Number(strain)), Formula: room.Formula,
		Inputs: []trace.Input{
			trace.In("", "temperature of the air", s.Temperature, entered("air")), trace.In("", "humidity of the air", s.Humidity, entered("humidity")),
			trace.In("", "the part above the dew point", s.Over(), fromFigure("over-dew-point")),
		},
		Remarks: []string{"0 is the middle of every range, 1 an end of one; from 0.8 on it wants care."},
	}, !math.IsInf(strain, 0)
}

// wayFigures are the trouble of a way, and how far each of its changes goes.
func (s suited) wayFigures(w room.Change) []trace.Figure {
	cost := trace.Figure{
		Key: "trouble", Name: "Trouble of the first way", Value: q.ValueOf(trouble(w)), Formula: room.CostFormula,
		Remarks: []string{acts(w), fmt.Sprintf("The prices are a %s: your heater, your dehumidifier and your patience win.", spaced(s.changes.Standing))},
	}
	out := []trace.Figure{cost}
	from := fromNote(room.CostFormula.Note, s.changes.Standing)
	for _, a := range w.Acts {
		p := s.priceOf(a.Do)
		out[0].Inputs = append(out[0].Inputs, trace.In("fixed", lowered(p.name), p.fixed, from))
		if p.each == 0 {
			continue
		}
		far := s.farFigure(a, p)
		out[0].Inputs = append(out[0].Inputs,
			trace.In("each", fmt.Sprintf("%s, for each %s", lowered(p.name), p.step), p.each, from), taken("amount", lowered(p.name), far))
		out = append(out, far)
	}
	return out
}

// farFormula is how far a change is taken.
var farFormula = trace.Formula{
	Text:   "the least, in steps of 0.5 K or 1 %, with which: " + room.Formula.Text,
	Source: room.WarmFormula.Source + "; " + room.Formula.Source,
	Note:   room.WarmFormula.Note,
}

// farFigure is how far one change is taken.
func (s suited) farFigure(a room.Act, p priced) trace.Figure {
	return trace.Figure{
		Key: string(a.Do), Name: p.name + " by", Value: size(a.By), Formula: farFormula, Remarks: []string{a.Says},
		Inputs: []trace.Input{
			trace.In("t1", "temperature of the air", s.Temperature, entered("air")), trace.In("RH1", "humidity of the air", s.Humidity, entered("humidity")),
			trace.In("t_surface", "the part", s.Surface, entered("surface")),
		},
	}
}

// size is how much a change is, whichever way it goes.
func size(v q.Value) q.Value { return q.Value{SI: math.Abs(v.SI), Of: v.Of} }

// priced is the price of doing one thing.
type priced struct {
	name, step  string
	fixed, each q.Time
}

func (s suited) priceOf(do room.Do) priced {
	c := s.changes
	return map[room.Do]priced{
		room.Warm:     {"Warming the air", "K", c.Warm.Fixed, c.Warm.Each},
		room.Cool:     {"Cooling the air", "K", c.Cool.Fixed, c.Cool.Each},
		room.Dry:      {"Drying the air", "per cent", c.Dry.Fixed, c.Dry.Each},
		room.Damp:     {"Damping the air", "per cent", c.Damp.Fixed, c.Damp.Each},
		room.WarmPart: {"Warming the part", "K", c.WarmPart.Fixed, c.WarmPart.Each},
		room.Fan:      {"A fan", "", c.Fan.Fixed, 0},
		room.Wait:     {"Waiting", "hour", c.Wait.Fixed, c.Wait.Each},
	}[do]
}
