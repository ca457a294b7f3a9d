package weather

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	q "coatwright/quantity"
)

func must(t *testing.T, text string) Series {
	t.Helper()
	s, err := Parse(text)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// near fails unless got is within tolerance of want.
func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s = %.6g, want %.6g within %.2g", what, got, want, tolerance)
	}
}

// Every way to write the same two hours.
func TestParse(t *testing.T) {
	for name, text := range map[string]string{
		"commas":           "time,temperature,humidity,wind\n2026-12-01T08:00,4.5,80,2\n2026-12-01T09:00,6,75,2.5\n",
		"spaces":           "time, temperature, humidity, wind\n2026-12-01 08:00, 4.5, 80, 2\n2026-12-01 09:00, 6, 75, 2.5\n",
		"semicolons":       "time;temperature;humidity;wind\n2026-12-01T08:00;4,5;80;2\n2026-12-01T09:00;6,0;75;2,5\n",
		"tabs":             "time\ttemperature\thumidity\twind\n2026-12-01T08:00\t4,5\t80\t2\n2026-12-01T09:00\t6.0\t75\t2.5\n",
		"other order":      "RH %;Wind (m/s);Time;Temp [°C]\n80;2;2026-12-01T08:00:00;4.5\n75;2.5;2026-12-01T09:00:00;6\n",
		"date and hour":    "Date,Hour,Temp,RH,Airflow\n2026-12-01,8,4.5,80,2\n2026-12-01,09:00,6,75,2.5\n",
		"units of others":  "time,Temperature (F),relative_humidity,wind speed (km/h)\n2026-12-01T08:00,40.1,80,7.2\n2026-12-01T09:00,42.8,75,9\n",
		"units in cells":   "time,temperature,humidity,wind\n2026-12-01T08:00,40.1 F,80 %,2 m/s\n2026-12-01T09:00,6 C,75,2.5\n",
		"units in words":   "time,temperature celsius,humidity (percent),wind\n2026-12-01T08:00,4.5,80,2\n2026-12-01T09:00,6,75,2.5\n",
		"what is not read": "time,cloud,temperature,humidity,dew point,rain,wind,wind direction\n2026-12-01T08:00,3,4.5,80,1,0,2,NW\n2026-12-01T09:00,3,6,75,1,0,2.5,N\n",
		"a mark, lines":    "\ufeff# from the window\r\n\r\ntime,temperature,humidity,wind\r\n# morning\r\n2026-12-01T08:00,4.5,80,2\r\n\r\n2026-12-01T09:00,6,75,2.5\r\n",
		"quotes":           "\"time\",\"temperature\",\"humidity\",\"wind\"\n\"2026-12-01T08:00\",\"4.5\",\"80\",\"2\"\n2026-12-01T09:00,6,75,2.5",
	} {
		s, err := Parse(text)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		rows := s.Rows()
		if len(rows) != 2 {
			t.Errorf("%s: %d rows", name, len(rows))
			continue
		}
		for i, want := range []struct{ celsius, percent, speed float64 }{{4.5, 80, 2}, {6, 75, 2.5}} {
			near(t, name+": temperature", rows[i].Air.Temperature.Celsius(), want.celsius, 1e-9)
			near(t, name+": humidity", rows[i].Air.Humidity.Percent(), want.percent, 1e-9)
			near(t, name+": wind", float64(rows[i].Air.Speed), want.speed, 1e-9)
			if at := time.Date(2026, 12, 1, 8+i, 0, 0, 0, time.UTC); !rows[i].Time.Equal(at) {
				t.Errorf("%s: time %v, want %v", name, rows[i].Time, at)
			}
		}
	}
}

func TestParseDewPoint(t *testing.T) {
	s := must(t, "time,temperature,dew point (F)\n2026-12-01T08:00,23,53.6\n2026-12-01T09:00,12,53.7\n")
	// 23 C with a dew point of 12.0 C is 50 %, worked independently by Magnus.
	near(t, "humidity", s.Rows()[0].Air.Humidity.Percent(), 50, 0.3)
	near(t, "humidity where the dew point was rounded up", s.Rows()[1].Air.Humidity.Percent(), 100, 1e-9)
}

func TestParseSaysWhatIsUnread(t *testing.T) {
	s := must(t, "time,temperature,humidity,dew point,Cloud cover,\n2026-12-01T08:00,23,50,12,x,\n")
	if got := strings.Join(s.Unread(), "|"); got != "Cloud cover|dew point" {
		t.Errorf("unread %q", got)
	}
}

var badTexts = []struct{ name, text, want string }{
	{"nothing", "", `line 1, column 1: found nothing, expected a line that names the columns, such as: time, temperature, humidity`},
	{"only names", "time,temperature,humidity\n", `line 2, column 1: found nothing, expected a line of weather below the names of the columns`},
	{"no time", "temperature,humidity\n3,50\n", `line 1, column 1: found "temperature,humidity", expected a column of time, or of date and time, in columns that stand apart by commas, semicolons or tabs`},
	{"a slip in a name", "time,temprature,humidity\n", `line 1, column 6: found "temprature", expected a column of temperature; did you mean "temperature"?`},
	{"a slip in the other name", "time;temperature;humidty (%)\n", `line 1, column 18: found "humidty (%)", expected a column of humidity or of dew point; did you mean "humidity"?`},
	{"no moisture", "time,temperature\n2026-12-01T08:00,3\n", `line 1, column 1: found "time,temperature", expected a column of humidity or of dew point, in columns that stand apart by commas, semicolons or tabs`},
	{"twice", "time,temperature,humidity,RH\n", `line 1, column 27: found "RH", expected one column of humidity`},
	{"a unit of something else", "time,temperature (m/s),humidity\n", `line 1, column 6: found "temperature (m/s)", expected a temperature in one of: C, °C, K, F, °F`},
	{"a unit in small letters", "time,temperature f,humidity\n", `line 1, column 6: found "temperature f", expected a temperature in one of: C, °C, K, F, °F; did you mean "F"?`},
	{"a zone in the name", "time (UTC),temperature,humidity\n", `line 1, column 1: found "time (UTC)", expected a time without a unit or a zone: the clock of the shop`},
	{"a zone", "time,temperature,humidity\n2026-12-01T08:00Z,3,50\n", `line 2, column 1: found "2026-12-01T08:00Z", expected a date and time such as 2026-12-01T08:00, without a zone; did you mean "2026-12-01T08:00"?`},
	{"a zone of hours", "time,temperature,humidity\n2026-12-01T08:00+01:00,3,50\n", `line 2, column 1: found "2026-12-01T08:00+01:00", expected a date and time such as 2026-12-01T08:00, without a zone; did you mean "2026-12-01T08:00"?`},
	{"a dotted date", "time,temperature,humidity\n1.12.2026 08:00,3,50\n", `line 2, column 1: found "1.12.2026 08:00", expected a date and time such as 2026-12-01T08:00, without a zone; did you mean "2026-12-01 08:00"?`},
	{"a date that may be two", "time,temperature,humidity\n01/12/2026,3,50\n", `line 2, column 1: found "01/12/2026", expected a date and time such as 2026-12-01T08:00, without a zone`},
	{"a zone behind nonsense", "time,temperature,humidity\n1/12/2026 8Z,3,50\n", `line 2, column 1: found "1/12/2026 8Z", expected a date and time such as 2026-12-01T08:00, without a zone`},
	{"no clock", "date,hour,temperature,humidity\n2026-02-20,noon,3,50\n", `line 2, column 12: found "noon", expected a time of day from 00:00 to 23:59, such as 08:00`},
	{"no dew point", "time,temperature,dew point\n2026-12-01T08:00,7,n/a\n", `line 2, column 20: found "n/a", expected a temperature such as "23 C"`},
	{"a quote in the names", "time,tempe\"rature,humidity\n", `line 1, column 11: found "time,tempe\"rature,humidity", expected quotes in pairs, around a whole value`},
	{"no such date", "date,hour,temperature,humidity\n2026-02-30,8,3,50\n", `line 2, column 1: found "2026-02-30", expected a date such as 2026-12-01`},
	{"no such hour", "date,hour,temperature,humidity\n2026-02-20,25:00,3,50\n", `line 2, column 12: found "25:00", expected a time of day from 00:00 to 23:59, such as 08:00`},
	{"no number", "time,temperature,humidity\n2026-12-01T08:00,cold,50\n", `line 2, column 18: found "cold", expected a temperature such as "23 C"`},
	{"an empty cell", "time,temperature,humidity\n2026-12-01T08:00,,50\n", `line 2, column 18: found nothing, expected a temperature such as "23 C"`},
	{"too warm", "time,temperature,humidity\n2026-12-01T08:00,72,50\n", `line 2, column 18: found "72", expected a temperature from -60 to 60 °C`},
	{"too damp", "time,temperature,humidity\n2026-12-01T08:00,7,150\n", `line 2, column 20: found "150", expected a humidity from 1 to 100 %`},
	{"a share", "time,temperature,humidity\n2026-12-01T08:00,7,0.55\n", `line 2, column 20: found "0.55", expected a humidity from 1 to 100 %; did you mean "55"?`},
	{"too windy", "time,temperature,humidity,wind\n2026-12-01T08:00,7,50,90\n", `line 2, column 23: found "90", expected an air speed from 0 to 60 m/s`},
	{"a dew point above the air", "time,temperature,dew point\n2026-12-01T08:00,7,9\n", `line 2, column 20: found "9", expected a dew point of at most the air's temperature, 7 °C`},
	{"a dew point of a desert on the moon", "time,temperature,dew point\n2026-12-01T08:00,40,-50\n", `line 2, column 21: found "-50", expected the dew point of air with humidity from 1 to 100 %`},
	{"a decimal comma between commas", "time,temperature,humidity\n2026-12-01T08:00,4,5,80\n", `line 2, column 20: found "4 values", expected 3, one for each column; a figure with a decimal comma needs columns that stand apart by semicolons or tabs`},
	{"a decimal comma in quotes", "time,temperature,humidity\n2026-12-01T08:00,\"4,5\",80\n", `line 2, column 18: found "4,5", expected a temperature such as "23 C"; did you mean "4.5"?`},
	{"a short line", "time,temperature,humidity\n2026-12-01T08:00\n", `line 2, column 1: found "2026-12-01T08:00", expected 3, one for each column`},
	{"out of order", "time,temperature,humidity\n\n2026-12-01T09:00,3,50\n2026-12-01T08:00,3,50\n", `line 4, column 1: found "2026-12-01 08:00", expected a time after 2026-12-01 09:00 of line 3`},
	{"the same hour", "date,time,temperature,humidity\n2026-12-01,09:00,3,50\n2026-12-01,9,4,50\n", `line 3, column 12: found "2026-12-01 09:00", expected every time once; it stands in line 2 already`},
	{"a quote that does not end", "time,temperature,humidity\n2026-12-01T08:00,\"3,50\n", `line 2, column 23: found "2026-12-01T08:00,\"3,50", expected quotes in pairs, around a whole value`},
	{"characters, not bytes", "time;°;temperature °C;humidity\n2026-12-01T08:00;°°°;?;50\n", `line 2, column 22: found "?", expected a temperature such as "23 C"`},
}

func TestParseErrors(t *testing.T) {
	for _, c := range badTexts {
		_, err := Parse(c.text)
		var e *Error
		if !errors.As(err, &e) || err.Error() != c.want {
			t.Errorf("%s:\n\t%v\nwant\n\t%s", c.name, err, c.want)
		}
	}
}

func TestParseBounds(t *testing.T) {
	var text strings.Builder
	text.WriteString("time,temperature,humidity\n")
	at := time.Date(2026, 1, 1, 0, 0, 0, 0, time.UTC)
	for i := range MaxRows {
		fmt.Fprintf(&text, "%s,10,50\n", at.Add(time.Duration(i)*time.Hour).Format(stamp))
	}
	if s := must(t, text.String()); len(s.Rows()) != MaxRows {
		t.Errorf("%d rows", len(s.Rows()))
	}
	text.WriteString("2027-01-01 00:00,10,50\n")
	if _, err := Parse(text.String()); err == nil || !strings.Contains(err.Error(), "line 2002, column 1") || !strings.Contains(err.Error(), "at most 2000 lines") {
		t.Errorf("one row too many: %v", err)
	}
	if _, err := Parse(strings.Repeat("#\n", maxBytes)); err == nil || !strings.Contains(err.Error(), "at most 1048576") {
		t.Errorf("too long a text: %v", err)
	}
}

// What is written out is read back.
func TestParseRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		sep := rapid.SampledFrom([]string{",", ";", "\t"}).Draw(t, "separator")
		comma := sep != "," && rapid.Bool().Draw(t, "comma")
		at := time.Date(2026, 3, 1, 0, 0, 0, 0, time.UTC)
		lines := []string{strings.Join([]string{"humidity", "time", "temp (F)"}, sep)}
		var want []Row
		for range rapid.IntRange(1, 20).Draw(t, "rows") {
			at = at.Add(time.Duration(rapid.IntRange(1, 600).Draw(t, "minutes")) * time.Minute)
			f, h := float64(rapid.IntRange(-500, 1300).Draw(t, "tenths of F"))/10, float64(rapid.IntRange(10, 1000).Draw(t, "tenths of a per cent"))/10
			want = append(want, Row{at, Reported(q.Celsius((f-32)*5/9), q.Fraction(h/100), 0)})
			line := fmt.Sprintf("%.1f|%s|%.1f", h, at.Format(stamp), f)
			if comma {
				line = strings.ReplaceAll(line, ".", ",")
			}
			lines = append(lines, strings.ReplaceAll(line, "|", sep))
		}
		s, err := Parse(strings.Join(lines, "\n"))
		if err != nil {
			t.Fatal(err)
		}
		for i, r := range s.Rows() {
			if !r.Time.Equal(want[i].Time) || math.Abs(float64(r.Air.Temperature-want[i].Air.Temperature)) > 1e-9 || math.Abs(float64(r.Air.Humidity-want[i].Air.Humidity)) > 1e-9 {
				t.Fatalf("row %d is %+v, want %+v", i, r, want[i])
			}
		}
	})
}

// Any text is read or refused; what is read is in order and within limits, and
// what is refused stands somewhere in the text.
func FuzzParse(f *testing.F) {
	for _, c := range badTexts {
		f.Add(c.text)
	}
	f.Add("time;temperature;humidity;wind (km/h)\n2026-12-01T08:00;-4,5;80;2\n2026-12-01T09:00;6,0;75;2,5\n")
	f.Add("Date\tHour\tDew point (F)\tTemp F\n2026-12-01\t8\t30\t40\n")
	f.Fuzz(func(t *testing.T, text string) {
		s, err := Parse(text)
		if err != nil {
			var e *Error
			if !errors.As(err, &e) {
				t.Fatalf("%T: %v", err, err)
			}
			if lines := strings.Count(text, "\n") + 1; e.Line < 1 || e.Line > lines || e.Column < 1 || e.Expected == "" {
				t.Fatalf("problem without a place or a reason: %#v", e)
			}
			return
		}
		rows := s.Rows()
		if len(rows) == 0 || len(rows) > MaxRows {
			t.Fatalf("%d rows", len(rows))
		}
		for i, r := range rows {
			if e := fault(r.Air); e != nil {
				t.Fatal(e)
			}
			if i > 0 && !r.Time.After(rows[i-1].Time) {
				t.Fatal("out of order")
			}
			a, where := s.At(r.Time.Add(time.Minute))
			if e := fault(a); e != nil || where == Before {
				t.Fatalf("%+v, %v, %v", a, where, e)
			}
		}
	})
}

func BenchmarkParse(b *testing.B) {
	var text strings.Builder
	text.WriteString("time,temperature,humidity\n")
	at := time.Date(2026, 1, 1, 0, 0, 0, 0, time.UTC)
	for i := range 168 {
		fmt.Fprintf(&text, "%s,%d,%d\n", at.Add(time.Duration(i)*time.Hour).Format(stamp), i%20, 50+i%40)
	}
	for b.Loop() {
		if _, err := Parse(text.String()); err != nil {
			b.Fatal(err)
		}
	}
}
