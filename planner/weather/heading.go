package weather

import (
	"errors"
	"io"
	"slices"
	"strings"

	"coatwright/nearest"
	q "coatwright/quantity"
)

// kind is what a column gives.
type kind int

const (
	ofDate kind = iota // the date, or date and time in one
	ofClock
	ofTemperature
	ofHumidity
	ofDewPoint
	ofSpeed
)

// names are what each kind of column may be called, in small letters and single
// spaces; the first is how it is asked for.
var names = map[kind][]string{
	ofDate:        {"date", "day", "datetime", "date time", "date and time", "timestamp"},
	ofClock:       {"time", "hour", "clock", "time of day"},
	ofTemperature: {"temperature", "temp", "air", "air temperature", "air temp", "dry bulb", "outside temperature"},
	ofHumidity:    {"humidity", "rh", "relative humidity", "rel humidity", "relative humidity rh"},
	ofDewPoint:    {"dew point", "dewpoint", "dew", "dew point temperature"},
	ofSpeed:       {"wind", "wind speed", "windspeed", "airflow", "air flow", "air speed", "speed"},
}

// kinds are in the order in which faults are looked for.
var kinds = []kind{ofDate, ofClock, ofTemperature, ofHumidity, ofDewPoint, ofSpeed}

// units are the unit of a column that gives none.
var units = map[kind]string{ofTemperature: "C", ofHumidity: "%", ofDewPoint: "C", ofSpeed: "m/s"}

// spelled are units as they are written out.
var spelled = map[string]string{"celsius": "C", "degc": "C", "deg c": "C", "fahrenheit": "F", "degf": "F", "deg f": "F", "percent": "%", "per cent": "%"}

// heading reads the line that names the columns.
func (t *table) heading() error {
	fields, err := t.next()
	if errors.Is(err, io.EOF) {
		return &Error{Line: 1, Column: 1, Expected: "a line that names the columns, such as: time, temperature, humidity"}
	}
	if err != nil {
		return err
	}
	t.width = len(fields)
	for i, f := range fields {
		k, unit, known := recognise(f)
		if !known {
			if f = strings.TrimSpace(f); f != "" {
				t.unread = append(t.unread, f)
			}
			continue
		}
		if _, twice := t.columns[k]; twice {
			return t.at(i, Error{Found: strings.TrimSpace(f), Expected: "one column of " + names[k][0]})
		}
		if problem := measures(k, unit); problem != nil {
			problem.Found = strings.TrimSpace(f)
			return t.at(i, *problem)
		}
		if unit == "" {
			unit = units[k]
		}
		t.columns[k] = column{i, unit}
	}
	t.oneTime()
	return t.complete(fields)
}

// oneTime takes a column named time as the whole time where there is no date.
func (t *table) oneTime() {
	clock, given := t.columns[ofClock]
	if _, date := t.columns[ofDate]; given && !date {
		t.columns[ofDate] = clock
		delete(t.columns, ofClock)
	}
}

// complete asks for the columns without which there is no weather.
func (t *table) complete(fields []string) error {
	has := func(k kind) bool { _, ok := t.columns[k]; return ok }
	switch {
	case !has(ofDate):
		return t.missing(fields, "a column of time, or of date and time", ofDate, ofClock)
	case !has(ofTemperature):
		return t.missing(fields, "a column of temperature", ofTemperature)
	case !has(ofHumidity) && !has(ofDewPoint):
		return t.missing(fields, "a column of humidity or of dew point", ofHumidity, ofDewPoint)
	}
	if has(ofHumidity) && has(ofDewPoint) {
		t.unread = append(t.unread, strings.TrimSpace(fields[t.columns[ofDewPoint].index]))
		delete(t.columns, ofDewPoint)
	}
	return nil
}

// missing says that a column is not there, and which unread one may be meant.
func (t *table) missing(fields []string, expected string, of ...kind) error {
	var words []string
	for _, k := range of {
		words = append(words, names[k]...)
	}
	for i, f := range fields {
		f = strings.TrimSpace(f)
		if !slices.Contains(t.unread, f) {
			continue
		}
		name, _ := split(f)
		if n := nearest.To(name, words); n != "" {
			return t.at(i, Error{Found: f, Expected: expected, Nearest: n})
		}
	}
	return t.at(0, Error{Found: strings.TrimSpace(strings.Join(fields, string(t.reader.Comma))), Expected: expected + ", in columns that stand apart by commas, semicolons or tabs"})
}

// recognise tells which kind of column a heading names.
func recognise(heading string) (k kind, unit string, known bool) {
	name, unit := split(heading)
	if k, known = named(name); known {
		return k, unit, true
	}
	// A unit may stand behind without brackets: "RH %", "wind m/s".
	if i := strings.LastIndexByte(name, ' '); i > 0 && unit == "" {
		raw := strings.TrimSpace(heading)
		unit = unitOf(raw[strings.LastIndexAny(raw, " _")+1:])
		if k, known = named(name[:i]); known && isUnit(k, unit) {
			return k, unit, true
		}
	}
	return 0, "", false
}

// isUnit reports whether a word is a unit of a kind, though perhaps in the wrong
// letters, and not part of a name such as "wind direction".
func isUnit(k kind, word string) bool {
	problem := measures(k, word)
	return problem == nil || strings.EqualFold(problem.Nearest, word)
}

func named(name string) (kind, bool) {
	for _, k := range kinds {
		if slices.Contains(names[k], name) {
			return k, true
		}
	}
	return 0, false
}

// plain makes one of the ways in which words of a heading stand apart.
var plain = strings.NewReplacer("_", " ", "-", " ", ".", " ")

// split parts "Temperature (F)" into its name, in small letters, and its unit.
func split(heading string) (name, unit string) {
	heading = strings.TrimSpace(heading)
	if n := len(heading); n > 0 && (heading[n-1] == ')' || heading[n-1] == ']') {
		if i := strings.LastIndexAny(heading, "(["); i >= 0 {
			unit, heading = unitOf(heading[i+1:n-1]), heading[:i]
		}
	}
	return strings.Join(strings.Fields(plain.Replace(strings.ToLower(heading))), " "), unit
}

func unitOf(text string) string {
	text = strings.TrimSpace(text)
	if short, ok := spelled[strings.ToLower(text)]; ok {
		return short
	}
	return text
}

// measures says what is wrong with the unit of a column, nil for nothing.
func measures(k kind, unit string) *Error {
	if unit == "" {
		return nil
	}
	var problem *Error
	switch k {
	case ofTemperature, ofDewPoint:
		_, problem = value[q.Temperature]("300", unit, false)
	case ofHumidity:
		_, problem = value[q.Fraction]("50", unit, false)
	case ofSpeed:
		_, problem = value[q.Speed]("1", unit, false)
	default:
		problem = &Error{Expected: "a time without a unit or a zone: the clock of the shop"}
	}
	if problem != nil {
		problem.Nearest = strings.TrimPrefix(strings.TrimPrefix(strings.TrimPrefix(problem.Nearest, "300 "), "50 "), "1 ")
	}
	return problem
}
