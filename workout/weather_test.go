package workout

import (
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"coatwright/planner/calendar"
	"coatwright/planner/library"
	"coatwright/planner/room"
	"coatwright/planner/weather"
	q "coatwright/quantity"
)

// steady is weather that does not change, over some days from a Tuesday on.
func steady(days int, celsius, percent float64) string {
	text := ""
	for h := range 24*days + 1 {
		at := time.Date(2026, 12, 1, h, 0, 0, 0, time.UTC)
		text += fmt.Sprintf("%s, %g, %g\n", at.Format("2006-01-02 15:04"), celsius, percent)
	}
	return text
}

func cell(p *Page, row, column int) string { return fmt.Sprint(p.Answer.Tables[0].Rows[row][column]) }

// In steady air of 23 C and 50 % outdoors every working hour is a go, and the film
// takes from any start what its note says (identity).
func TestWeatherSteady(t *testing.T) {
	p := answered(t, weatherSheet, heated(), "weather", steady(2, 23, 50), "where", outdoors, "films", "water", "lasts", "1 h", "hours", "Mon-Fri 08:00-17:00")
	wantVerdict(t, p, "go", "Tue 1 Dec at 08:00")
	wantFigure(t, p, "takes", 1800, 1e-6)
	for day, want := range []string{"Tue 1 Dec|08:00 to 17:00|||08:00, go", "Wed 2 Dec|08:00 to 17:00|||08:00, go"} {
		if got := strings.Join([]string{cell(p, day, 0), cell(p, day, 1), cell(p, day, 2), cell(p, day, 3), cell(p, day, 4)}, "|"); got != want {
			t.Errorf("day %d: %s, want %s", day, got, want)
		}
	}
}

// Air of 15 C and 75 % let into a room of 23 C has 45.5 % there (worked by hand:
// 0.75 x 1705.4 / 2810.4 Pa, saturation pressures of ASHRAE table 3).
func TestWeatherIndoors(t *testing.T) {
	p := answered(t, weatherSheet, heated(), "weather", steady(1, 15, 75), "where", indoors, "kept", "23 C", "films", "water", "hours", "Mon-Sun 08:00-17:00")
	wantVerdict(t, p, "go", "Tue 1 Dec")
	row := p.Answer.Tables[0].Rows[0]
	if at, h := row[5].(q.Value).SI, row[6].(q.Value).SI; math.Abs(at-celsius(23)) > 1e-6 || math.Abs(h-0.4551) > 5e-4 {
		t.Errorf("in the room it is %v K and %v", at, h)
	}
	if outside := answered(t, weatherSheet, heated(), "weather", steady(1, 12, 75), "where", outdoors, "films", "water"); outside.Answer.Verdict.Level != "no" || cell(outside, 0, 4) != "none: it never suits long enough" {
		t.Errorf("outdoors at 12 C: %v, %s", outside.Answer.Verdict, cell(outside, 0, 4))
	}
}

// A front that comes at noon: the morning is a go, the afternoon is not, and work
// that lasts into it does not start.
func TestWeatherFront(t *testing.T) {
	front := "2026-12-01 06:00, 20, 50\n2026-12-01 12:00, 20, 50\n2026-12-01 12:01, 20, 95\n2026-12-01 20:00, 20, 95\n"
	ask := func(lasts string) *Page {
		return answered(t, weatherSheet, heated(), "weather", front, "where", outdoors, "films", "water", "lasts", lasts, "hours", "Mon-Sun 08:00-17:00")
	}
	p := ask("3 h")
	if cell(p, 0, 1) != "08:00 to 12:30" || cell(p, 0, 3) != "12:30 to 17:00" || cell(p, 0, 4) != "08:00, go" {
		t.Errorf("go %s, no %s, best %s", cell(p, 0, 1), cell(p, 0, 3), cell(p, 0, 4))
	}
	if p := ask("5 h"); cell(p, 0, 4) != "none: it never suits long enough" {
		t.Errorf("five hours: %s", cell(p, 0, 4))
	}
	if p := ask("12 h"); cell(p, 0, 4) != "none: the hours are too short" {
		t.Errorf("twelve hours: %s", cell(p, 0, 4))
	}
}

func TestWeatherDaysOff(t *testing.T) {
	p := answered(t, weatherSheet, heated(), "weather", steady(6, 23, 50), "where", outdoors, "films", "water", "hours", "Mon-Fri 08:00-17:00")
	if got := cell(p, 4, 4); got != "none: no weather in the working hours" {
		t.Errorf("Saturday: %s", got)
	}
}

// A film that does not dry within the weather is told so.
func TestWeatherBeyondItsEnd(t *testing.T) {
	p := answered(t, weatherSheet, heated(), "weather", steady(1, 23, 50), "where", outdoors, "films", "cure", "hours", "Mon-Sun 08:00-22:00", "lasts", "1 h")
	wantFigure(t, p, "takes", 12*3600, 1e-6)
	if !strings.Contains(cell(p, 0, 7), "12 h") {
		t.Errorf("told %s", cell(p, 0, 7))
	}
	late := answered(t, weatherSheet, heated(), "weather", "2026-12-01 16:00, 23, 50\n2026-12-01 22:00, 23, 50\n", "where", outdoors, "films", "cure", "hours", "Mon-Sun 08:00-22:00", "lasts", "1 h")
	if got := cell(late, 0, 7); got != "12 h, if the last hour stays" {
		t.Errorf("told %s", got)
	}
	never := answered(t, weatherSheet, heated(), "weather", steady(1, 23, 50), "where", outdoors, "films", "water", "until", library.Recoat, "lasts", "1 h")
	if never.Answer.Tables[0].Columns[7] != "Dry to recoat after" {
		t.Errorf("columns %q", never.Answer.Tables[0].Columns)
	}
}

func TestWeatherSaysWhatIsUnread(t *testing.T) {
	p := answered(t, weatherSheet, heated(), "weather", "time, temperature, humidity, cloud\n2026-12-01 08:00, 20, 50, 3\n2026-12-01 18:00, 20, 50, 4\n", "films", "water")
	if !tells(p, "Not read: cloud.") {
		t.Errorf("told %q", p.Answer.Says)
	}
	long := answered(t, weatherSheet, heated(), "weather", steady(20, 20, 50), "films", "water")
	if !tells(long, "Only the first 14 days") || len(long.Answer.Tables[0].Rows) != mostDays {
		t.Errorf("told %q, %d days", long.Answer.Says, len(long.Answer.Tables[0].Rows))
	}
}

// The same weather with names and in other units comes to the same.
func TestWeatherInBothSystems(t *testing.T) {
	sameAnswers(t, weatherSheet, heated(), 1e-3,
		[]string{"weather", "2026-12-01 06:00, 15, 60, 1\n2026-12-01 20:00, 20, 50, 1\n", "where", indoors, "kept", "20 C", "airflow", "0.508 m/s", "films", "water"},
		[]string{"weather", "time; temperature (F); humidity; wind (km/h)\n2026-12-01 06:00; 59; 60; 3.6\n2026-12-01 20:00; 68; 50; 3.6\n", "where", indoors, "kept", "68 F", "airflow", "100 ft/min", "films", "water"})
}

// Lines by hand are read in any of the marks, and told by their own number.
func TestReadWeather(t *testing.T) {
	for name, text := range map[string]string{
		"commas": "2026-12-01 08:00, 4.5, 80\n2026-12-01 09:00, 6, 75", "semicolons": "2026-12-01 08:00; 4,5; 80\n2026-12-01 09:00; 6; 75",
		"tabs": "2026-12-01T08:00\t4.5\t80\n2026-12-01T09:00\t6\t75", "wind": "\n 2026-12-01 08:00, 4.5, 80, 2\n2026-12-01 09:00, 6, 75, 3", "names": "time,temperature,humidity\n2026-12-01 08:00, 4.5, 80\n2026-12-01 09:00, 6, 75",
	} {
		s, err := ReadWeather(text)
		if err != nil || len(s.Rows()) != 2 || math.Abs(s.Rows()[0].Air.Temperature.Celsius()-4.5) > 1e-9 {
			t.Errorf("%s: %v, %v", name, s.Rows(), err)
		}
	}
	for text, want := range map[string]string{
		"2026-12-01 08:00, 4.5, 80\n2026-12-01 09:00, cold, 75": `line 2, column 19: found "cold", expected a temperature such as "23 C"`,
		"2026-12-01 08:00": `line 1, column 1: found "2026-12-01 08:00", expected 3, one for each column`,
		"":                 `line 1, column 1: found nothing, expected a line that names the columns, such as: time, temperature, humidity`,
	} {
		if _, err := ReadWeather(text); err == nil || err.Error() != want {
			t.Errorf("%q: %v, want %s", text, err, want)
		}
	}
}

func FuzzReadWeather(f *testing.F) {
	f.Add(sampleWeather)
	f.Add("time;temperature;dew point\n2026-12-01T08:00;4,5;2")
	f.Add("9;9;9\n8")
	f.Fuzz(func(t *testing.T, text string) {
		s, err := ReadWeather(text)
		if (err == nil) != (len(s.Rows()) > 0) {
			t.Errorf("%q: %d rows, %v", text, len(s.Rows()), err)
		}
		if err != nil && strings.Contains(err.Error(), "line 0") {
			t.Errorf("%q: %v", text, err)
		}
	})
}

func TestWeatherTells(t *testing.T) {
	checkTold(t, weatherSheet, heated(), []told{
		{[]string{"weather", ""}, "weather", "Found nothing, expected weather."},
		{[]string{"weather", "2026-12-01 08:00, 99, 50"}, "weather", `Line 1, column 19: found "99", expected a temperature from -60 to 60 °C.`},
		{[]string{"hours", "Mon-Fry 08:00-17:00"}, "hours", `Found "Fry", expected a day from Mon to Sun; days as Sat,Sun and ranges as Mon-Fri; did you mean "Fri"?`},
		{[]string{"lasts", "3 d"}, "lasts", `Found "3 d", expected 1 min to 24 h.`},
		{[]string{"kept", "90 C"}, "kept", `Found "90 C", expected 0 to 45 °C.`},
		{[]string{"until", "bone-dry"}, "until", `Found "bone-dry", expected one of the list.`},
	})
}

// Whatever the weather: every half hour of a day is told once, a best start lies in
// the hours and is no better than its hours, and the level is that of the worst
// half hour.
func TestOutlookProperties(t *testing.T) {
	lib := heated()
	hours, err := calendar.ParseHours("Mon-Sun 08:00-17:00")
	if err != nil {
		t.Fatal(err)
	}
	rapid.Check(t, func(t *rapid.T) {
		var rows []weather.Row
		for h := 0; h <= 48; h += 3 {
			a := weather.Reported(q.Celsius(rapid.Float64Range(5, 35).Draw(t, "celsius")), q.Fraction(rapid.Float64Range(0.2, 0.98).Draw(t, "humidity")), 0.5)
			rows = append(rows, weather.Row{Time: time.Date(2026, 12, 1, h, 0, 0, 0, time.UTC), Air: a})
		}
		s, err := weather.New(rows)
		if err != nil {
			t.Fatal(err)
		}
		o := Outlook{Films: []*library.Material{lib.Materials["water"]}, Lasts: 2 * 3600, Hours: hours, Until: library.Recoat}
		for _, d := range o.Days(s)[:2] {
			var told time.Duration
			for _, spans := range d.Spans {
				for _, span := range strings.Split(spans, ", ") {
					if from, to, ok := strings.Cut(span, " to "); ok {
						a, errA := time.Parse("15:04", from)
						b, errB := time.Parse("15:04", to)
						if errA != nil || errB != nil {
							t.Fatalf("span %q", span)
						}
						told += b.Sub(a)
					}
				}
			}
			if told != 9*time.Hour {
				t.Fatalf("%v of the day are told: %q", told, d.Spans)
			}
			if d.Best == nil {
				continue
			}
			end := d.Best.At.Add(2 * time.Hour)
			if calendar.Span(hours, d.Best.At, end) != 2*time.Hour || d.Best.Level == room.No {
				t.Fatalf("starts at %v with %v", d.Best.At, d.Best.Level)
			}
		}
	})
}

func BenchmarkDays(b *testing.B) {
	s, err := ReadWeather(steady(14, 18, 60))
	if err != nil {
		b.Fatal(err)
	}
	lib := heated()
	hours, err := calendar.ParseHours("Mon-Sun 08:00-17:00")
	if err != nil {
		b.Fatal(err)
	}
	o := Outlook{Films: []*library.Material{lib.Materials["water"], lib.Materials["cure"]}, Lasts: 4 * 3600, Hours: hours, Until: library.Recoat}
	for b.Loop() {
		o.Days(s)
	}
}
