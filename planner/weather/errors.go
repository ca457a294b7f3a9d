package weather

import (
	"fmt"
	"time"

	"coatwright/nearest"
	"coatwright/planner/air"
	q "coatwright/quantity"
)

// Error says why something is no weather, and where.
type Error struct {
	Line     int // of the text, or of the rows; from 1, and 0 for the whole
	Column   int // of the text, in characters from 1; 0 where there is no text
	Found    string
	Expected string
	Nearest  string
}

func (e *Error) Error() string {
	found := "nothing"
	if e.Found != "" {
		found = fmt.Sprintf("%q", e.Found)
	}
	text := fmt.Sprintf("found %s, expected %s%s", found, e.Expected, nearest.Hint(e.Nearest))
	switch {
	case e.Column > 0:
		return fmt.Sprintf("line %d, column %d: %s", e.Line, e.Column, text)
	case e.Line > 0:
		return fmt.Sprintf("row %d: %s", e.Line, text)
	}
	return text
}

// The limits of weather: a figure beyond them is a slip of the pen or of a unit.
var (
	temperatures = q.Range[q.Temperature]{Low: q.Celsius(-60), High: q.Celsius(60)}
	humidities   = q.Range[q.Fraction]{Low: 0.01, High: 1}
	speeds       = q.Range[q.Speed]{Low: 0, High: 60}
)

// What is expected within the limits, in words.
const (
	aTemperature = "a temperature from -60 to 60 °C"
	aHumidity    = "a humidity from 1 to 100 %"
	aSpeed       = "an air speed from 0 to 60 m/s"
)

// fault is what is wrong with the figures of an air, nil for nothing.
func fault(a air.Air) *Error {
	switch {
	case !temperatures.Holds(a.Temperature):
		return &Error{Found: fmt.Sprintf("%.4g °C", a.Temperature.Celsius()), Expected: aTemperature}
	case !(a.Humidity >= humidities.Low && a.Humidity <= mostHumidity(a.Temperature)+1e-9):
		return &Error{Found: fmt.Sprintf("%.4g %%", a.Humidity.Percent()), Expected: aHumidity}
	case !speeds.Holds(a.Speed):
		return &Error{Found: fmt.Sprintf("%.4g m/s", float64(a.Speed)), Expected: aSpeed}
	}
	return nil
}

// stamp is how a time is shown, and may be written.
const stamp = "2006-01-02 15:04"

// outOfOrder says that a time does not come after the one before it.
func outOfOrder(t, before time.Time, where string, line, column int) *Error {
	e := &Error{Line: line, Column: column, Found: t.Format(stamp), Expected: "a time after " + before.Format(stamp) + " of " + where}
	if t.Equal(before) {
		e.Expected = "every time once; it stands in " + where + " already"
	}
	return e
}
