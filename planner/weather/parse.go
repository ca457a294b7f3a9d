package weather

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"strings"
	"time"
	"unicode/utf8"

	"coatwright/planner/air"
	q "coatwright/quantity"
)

// maxBytes bounds a text: MaxRows of many columns.
const maxBytes = 1 << 20

// Parse reads weather as a table in text, such as
//
//	time,              temperature, humidity, wind (km/h)
//	2026-12-01T08:00,  4.5,         88,       12
//
// The first line names the columns, in any order and with their units in
// brackets or behind: a time, or a date and a time; a temperature (C unless it
// says F); a humidity in per cent or a dew point, of which the humidity is read
// where both are there; and where there is one an air speed (m/s). Other columns
// are left unread. Columns stand apart by commas, semicolons or tabs; with the
// latter two a figure may have a decimal comma. Times are in order and without a
// zone. Lines that are empty or begin with # are skipped. The error is an *Error.
func Parse(text string) (Series, error) {
	if len(text) > maxBytes {
		return Series{}, &Error{Line: 1, Column: 1, Found: fmt.Sprintf("%d bytes", len(text)), Expected: fmt.Sprintf("at most %d", maxBytes)}
	}
	t := newTable(strings.TrimPrefix(text, "\ufeff"))
	if err := t.heading(); err != nil {
		return Series{}, err
	}
	if err := t.body(); err != nil {
		return Series{}, err
	}
	s := of(t.rows)
	s.unread = t.unread
	return s, nil
}

// table is a text that is being read.
type table struct {
	lines   []string
	reader  *csv.Reader
	comma   bool // figures may have a decimal comma
	columns map[kind]column
	unread  []string
	width   int // columns in all
	rows    []Row
	last    int // line of the last row
}

// column is one that is read.
type column struct {
	index int
	unit  string
}

func newTable(text string) *table {
	t := &table{lines: strings.Split(text, "\n"), columns: map[kind]column{}}
	t.reader = csv.NewReader(strings.NewReader(text))
	t.reader.Comma = separator(t.lines)
	t.reader.Comment = '#'
	t.reader.FieldsPerRecord = -1
	t.reader.TrimLeadingSpace = t.reader.Comma != '\t'
	t.comma = t.reader.Comma != ','
	return t
}

// separator is what stands between the names of the columns.
func separator(lines []string) rune {
	for _, l := range lines {
		if strings.TrimSpace(l) == "" || strings.HasPrefix(l, "#") {
			continue
		}
		for _, s := range "\t;" {
			if strings.ContainsRune(l, s) {
				return s
			}
		}
		break
	}
	return ','
}

// next is the next line in its fields, io.EOF after the last.
func (t *table) next() ([]string, error) {
	fields, err := t.reader.Read()
	var broken *csv.ParseError
	switch {
	case err == nil:
		return fields, nil
	case errors.As(err, &broken):
		return nil, &Error{Line: broken.Line, Column: t.characters(broken.Line, broken.Column), Found: strings.TrimSpace(t.line(broken.Line)), Expected: "quotes in pairs, around a whole value"}
	}
	return nil, err
}

func (t *table) line(n int) string {
	if n < 1 || n > len(t.lines) {
		return ""
	}
	return strings.TrimSuffix(t.lines[n-1], "\r")
}

// characters turns a column in bytes, from 1, into one in characters.
func (t *table) characters(line, column int) int {
	text := t.line(line)
	return utf8.RuneCountInString(text[:min(len(text), max(0, column-1))]) + 1
}

// at is an error at a field of the line that was read last.
func (t *table) at(field int, e Error) *Error {
	line, column := t.reader.FieldPos(field)
	e.Line, e.Column = line, t.characters(line, column)
	return &e
}

func (t *table) body() error {
	for {
		fields, err := t.next()
		if err == io.EOF {
			break
		}
		if err != nil {
			return err
		}
		if err := t.row(fields); err != nil {
			return err
		}
	}
	if len(t.rows) == 0 {
		return &Error{Line: len(t.lines), Column: 1, Expected: "a line of weather below the names of the columns"}
	}
	return nil
}

func (t *table) row(fields []string) error {
	if len(t.rows) == MaxRows {
		return t.at(0, Error{Found: fields[0], Expected: fmt.Sprintf("at most %d lines of weather", MaxRows)})
	}
	if len(fields) != t.width {
		return t.ragged(fields)
	}
	when, err := t.time(fields)
	if err != nil {
		return err
	}
	a, err := t.air(fields)
	if err != nil {
		return err
	}
	line, _ := t.reader.FieldPos(0)
	if n := len(t.rows); n > 0 && !when.After(t.rows[n-1].Time) {
		at := t.at(t.timeColumn(), Error{})
		return outOfOrder(when, t.rows[n-1].Time, fmt.Sprintf("line %d", t.last), at.Line, at.Column)
	}
	t.rows, t.last = append(t.rows, Row{when, a}), line
	return nil
}

// ragged says that a line has too few values or too many.
func (t *table) ragged(fields []string) error {
	e := Error{Found: fmt.Sprintf("%d values", len(fields)), Expected: fmt.Sprintf("%d, one for each column", t.width)}
	if len(fields) == 1 {
		e.Found = fields[0]
	}
	if len(fields) > t.width && !t.comma {
		e.Expected += "; a figure with a decimal comma needs columns that stand apart by semicolons or tabs"
	}
	return t.at(min(len(fields), t.width)-1, e)
}

// air reads the figures of a line.
func (t *table) air(fields []string) (air.Air, error) {
	temperature, err := figure(t, fields, ofTemperature, temperatures, aTemperature)
	if err != nil {
		return air.Air{}, err
	}
	var speed q.Speed
	if _, given := t.columns[ofSpeed]; given {
		if speed, err = figure(t, fields, ofSpeed, speeds, aSpeed); err != nil {
			return air.Air{}, err
		}
	}
	if _, given := t.columns[ofHumidity]; given {
		humidity, err := figure(t, fields, ofHumidity, humidities, aHumidity)
		return Reported(temperature, humidity, speed), err
	}
	dewPoint, err := figure(t, fields, ofDewPoint, temperatures, aTemperature)
	if err != nil {
		return air.Air{}, err
	}
	if dewPoint > temperature+rounding {
		c := t.columns[ofDewPoint]
		return air.Air{}, t.at(c.index, Error{Found: fields[c.index], Expected: fmt.Sprintf("a dew point of at most the air's temperature, %.4g °C", temperature.Celsius())})
	}
	a := ReportedDewPoint(temperature, min(dewPoint, temperature), speed)
	if a.Humidity < humidities.Low {
		c := t.columns[ofDewPoint]
		return air.Air{}, t.at(c.index, Error{Found: fields[c.index], Expected: "the dew point of air with " + aHumidity[2:]})
	}
	return a, nil
}

// rounding is how far a dew point may lie above its air: both come in degrees.
const rounding q.Temperature = 0.6

// figure reads the value of a column that must lie in limits.
func figure[Q q.Quantity](t *table, fields []string, k kind, limits q.Range[Q], expected string) (Q, error) {
	c := t.columns[k]
	text := fields[c.index]
	v, problem := value[Q](text, c.unit, t.comma)
	if problem == nil && !limits.Holds(v) {
		problem = &Error{Found: text, Expected: expected, Nearest: asPercent(k, float64(v))}
	}
	if problem != nil {
		return 0, t.at(c.index, *problem)
	}
	return v, nil
}

// asPercent is what a share such as 0.55 is in per cent, "" for anything else.
func asPercent(k kind, v float64) string {
	if k != ofHumidity || v <= 0 || v > 0.01 {
		return ""
	}
	return fmt.Sprintf("%.4g", v*1e4)
}

// value reads one figure: with the unit of its column, or one of its own.
func value[Q q.Quantity](text, unit string, comma bool) (Q, *Error) {
	plain := strings.ReplaceAll(strings.TrimSpace(text), "−", "-")
	if comma {
		plain = strings.Replace(plain, ",", ".", 1)
	}
	if n := len(plain); n > 0 && strings.IndexByte("0123456789.", plain[n-1]) >= 0 {
		plain += " " + unit
	}
	v, err := q.Parse[Q](plain)
	if err == nil {
		return v, nil
	}
	problem := Error{Found: strings.TrimSpace(text), Expected: err.Error()}
	var wrong *q.Error
	if errors.As(err, &wrong) {
		problem.Expected, problem.Nearest = wrong.Expected, wrong.Nearest
	}
	if !comma && strings.Contains(text, ",") {
		problem.Nearest = strings.Replace(strings.TrimSpace(text), ",", ".", 1)
	}
	return 0, &problem
}

// time reads when a line is.
func (t *table) time(fields []string) (time.Time, error) {
	date, clock := t.columns[ofDate], t.columns[ofClock]
	if _, apart := t.columns[ofClock]; !apart {
		when, problem := parseStamp(fields[date.index])
		if problem != nil {
			return when, t.at(date.index, *problem)
		}
		return when, nil
	}
	day, problem := parseDate(fields[date.index])
	if problem != nil {
		return day, t.at(date.index, *problem)
	}
	of, problem := parseClock(fields[clock.index])
	if problem != nil {
		return day, t.at(clock.index, *problem)
	}
	return day.Add(of), nil
}

// timeColumn is where a fault of the time is shown.
func (t *table) timeColumn() int {
	if c, apart := t.columns[ofClock]; apart {
		return c.index
	}
	return t.columns[ofDate].index
}
