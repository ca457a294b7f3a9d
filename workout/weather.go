package workout

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"coatwright/planner/calendar"
	"coatwright/planner/drying"
	"coatwright/planner/library"
	"coatwright/planner/trace"
	"coatwright/planner/weather"
	q "coatwright/quantity"
)

// weatherSheet says on which of the next days some films can be laid, and when to
// start.
var weatherSheet = &Sheet{
	Slug: "weather", Title: "Which day suits?",
	Lead: "Paste a forecast or type it line by line: on which days the films can be laid, when to start, and how long they then dry.",
	Note: "background/what-the-air-holds",
	fields: func(e *Entry) []Field {
		fields := slices.Concat([]Field{
			{Key: "weather", Label: "Weather", Hint: "time, temperature in °C, humidity in %; a first line may name other columns and units, such as time, temperature (F), dew point (F), wind (km/h)", Default: sampleWeather, Lines: true},
			{Key: "where", Label: "The films are laid", Default: indoors, Choices: []Choice{{Value: indoors, Title: "in a room that is kept warm, with air from outside"}, {Value: outdoors, Title: "outdoors"}}},
		}, keptFields(e), filmsFields(e))
		states := drynessChoices(e.lib.Words)
		return append(fields,
			Field{Key: "lasts", Label: "The work lasts", Hint: "4 h, in one go", Default: "4 h"},
			Field{Key: "hours", Label: "Working hours", Hint: "Mon-Fri 08:00-17:00", Default: "Mon-Sun 08:00-17:00"},
			Field{Key: "until", Label: "Then dries until it is", Choices: states, Default: firstOf(states)})
	},
	answer: weatherAnswer,
}

// Where films are laid.
const (
	indoors  = "indoors"
	outdoors = "outdoors"
)

// sampleWeather is two days, so that the sheet shows at first what it does.
const sampleWeather = `2026-05-04 06:00, 8, 92
2026-05-04 10:00, 14, 68
2026-05-04 15:00, 19, 49
2026-05-04 20:00, 14, 70
2026-05-05 06:00, 11, 96
2026-05-05 10:00, 13, 94
2026-05-05 15:00, 15, 90
2026-05-05 20:00, 12, 95
`

var (
	workLasts = q.Range[q.Time]{Low: 60, High: 24 * 3600}
	roomKept  = q.Range[q.Temperature]{Low: q.Celsius(0), High: q.Celsius(45)}
)

func keptFields(e *Entry) []Field {
	if e.choice("where", indoors) != indoors {
		return nil
	}
	return []Field{
		{Key: "kept", Label: "Warmth of the room", Hint: "20 C or 68 F", Default: "20 C"},
		{Key: "airflow", Label: "Air speed at the part", Hint: "0.1 m/s or 20 ft/min", Default: "0.1 m/s"},
	}
}

// drynessChoices are all dryness states, that of the next film first.
func drynessChoices(words *library.Vocabulary) []Choice {
	var out []Choice
	for _, w := range words.Dryness {
		c := Choice{Value: w.Name, Title: capital(spaced(w.Name))}
		if w.Name == library.Recoat {
			out = slices.Insert(out, 0, c)
			continue
		}
		out = append(out, c)
	}
	return out
}

func weatherAnswer(e *Entry) *Answer {
	series := e.readWeather()
	o := Outlook{Films: readFilms(e), Lasts: within(e, "lasts", workLasts), Until: e.text("until"), Hours: e.readHours()}
	if e.text("where") == indoors {
		o.Kept = &Kept{within(e, "kept", roomKept), within(e, "airflow", breezes)}
	}
	if !e.sound() {
		return nil
	}
	days := o.Days(series)
	a := &Answer{Verdict: judgeDays(days), Says: o.Says(series, days), Tables: []Table{o.Table(days)}}
	if o.Kept == nil {
		a.Says = append(a.Says, "The part is taken to be as warm as the air. On a clear night it is colder, and wet before the air is full.")
	}
	if f, ok := o.takesFigure(days); ok {
		a.Figures = append(a.Figures, f)
	}
	return a
}

// judgeDays says when to start.
func judgeDays(days []Day) *Verdict {
	best, ok := BestDay(days)
	if !ok {
		return &Verdict{"no", "On none of these days can the work be done from start to end. Wait for other weather, or change the room."}
	}
	return &Verdict{best.Best.Level.String(), fmt.Sprintf("Start on %s.", best.Best.At.Format("Mon 2 Jan at 15:04"))}
}

// takesFigure is how long the slowest film takes from the best start on.
func (o Outlook) takesFigure(days []Day) (trace.Figure, bool) {
	best, ok := BestDay(days)
	if !ok || best.Best.Film == nil || best.Best.Takes > dryingLimit {
		return trace.Figure{}, false
	}
	b := best.Best
	note := fromNote("material/"+b.Film.Slug, b.Film.Standing)
	f := trace.Figure{
		Key: "takes", Name: fmt.Sprintf("Until it is %s, from the best start", spaced(o.Until)), Value: q.ValueOf(b.Takes), Formula: drying.CourseFormula,
		Inputs: []trace.Input{
			trace.In("", "time of "+lowered(b.Film.Title)+" in the reference air", b.Film.Dries[o.Until].In, note),
			trace.In("", "the work lasts, before it", o.Lasts, entered("lasts")),
			trace.In("", "temperature of the air at the start", b.Air.Temperature, entered("weather")),
			trace.In("", "humidity of the air at the start", b.Air.Humidity, entered("weather")),
		},
		Remarks: []string{"Counted from the end of the work, with the air as it is hour by hour."},
	}
	if o.Kept != nil {
		f.Inputs = append(f.Inputs, trace.In("", "warmth of the room", o.Kept.At, entered("kept")))
	}
	if b.Held {
		f.Remarks = append(f.Remarks, "It takes longer than the weather goes: the air of the last hour is taken on.")
	}
	return f, true
}

// readHours reads working hours.
func (e *Entry) readHours() calendar.Hours {
	text := e.text("hours")
	hours, err := calendar.ParseHours(text)
	var wrong *calendar.HoursError
	if errors.As(err, &wrong) {
		e.take("hours", &q.Error{Found: wrong.Found, Expected: wrong.Expected, Nearest: wrong.Nearest})
	}
	return hours
}

// readWeather reads the weather.
func (e *Entry) readWeather() weather.Series {
	series, err := ReadWeather(e.text("weather"))
	if e.values["weather"] != "" {
		e.take("weather", err)
	}
	return series
}

// plainColumns are those of weather that is typed line by line, by their number.
var plainColumns = map[int]string{3: "time,temperature,humidity", 4: "time,temperature,humidity,wind"}

// ReadWeather reads weather as package weather does, and lines without names of
// columns as time, temperature, humidity and, where there is one, wind. The error
// is a *weather.Error.
func ReadWeather(text string) (weather.Series, error) {
	text = strings.TrimLeft(text, " \t\r\n\ufeff")
	if text == "" || text[0] < '0' || text[0] > '9' {
		return weather.Parse(text)
	}
	first, _, _ := strings.Cut(text, "\n")
	columns, ok := plainColumns[strings.Count(first, mark(first))+1]
	if !ok {
		columns = plainColumns[3]
	}
	series, err := weather.Parse(strings.ReplaceAll(columns, ",", mark(first)) + "\n" + text)
	var wrong *weather.Error
	if errors.As(err, &wrong) {
		wrong.Line = max(1, wrong.Line-1)
	}
	return series, err
}

// mark is what parts the columns of a line.
func mark(line string) string {
	for _, m := range []string{"\t", ";"} {
		if strings.Contains(line, m) {
			return m
		}
	}
	return ","
}
