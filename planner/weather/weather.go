// Package weather owns the air of several days, as a forecast or a thermometer
// gives it hour by hour: reading it, the air at any time between, and the best
// hour to start. It also says what air let in from outside becomes when it is
// heated.
//
// Times are wall-clock times of the shop without a zone, held as UTC. Weather is
// what somebody typed or pasted; nothing here asks for it anywhere.
package weather

import (
	"fmt"
	"slices"
	"time"

	"coatwright/planner/air"
	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// Row is the air at one time. Below 0 C its humidity may be a little over 1, see
// Reported.
type Row struct {
	Time time.Time
	Air  air.Air
}

// Series is the air over some days, in order of time. The zero Series has no
// rows, and no air.
type Series struct {
	rows   []Row
	ratio  []float64 // kg of water for each kg of dry air, row by row
	unread []string
}

// MaxRows bounds a series: hours of twelve weeks, which is more than anybody can
// foresee.
const MaxRows = 2000

// New makes a series of rows that somebody entered one by one. The error is an
// *Error whose Line is the number of the row.
func New(rows []Row) (Series, error) {
	if len(rows) == 0 {
		return Series{}, &Error{Expected: "at least one row of weather"}
	}
	if len(rows) > MaxRows {
		return Series{}, &Error{Found: fmt.Sprintf("%d rows", len(rows)), Expected: fmt.Sprintf("at most %d", MaxRows)}
	}
	for i, r := range rows {
		if e := fault(r.Air); e != nil {
			e.Line = i + 1
			return Series{}, e
		}
		if i > 0 && !r.Time.After(rows[i-1].Time) {
			return Series{}, outOfOrder(r.Time, rows[i-1].Time, fmt.Sprintf("row %d", i), i+1, 0)
		}
	}
	return of(slices.Clone(rows)), nil
}

// of is a series of rows that are in order.
func of(rows []Row) Series {
	s := Series{rows: rows, ratio: make([]float64, len(rows))}
	for i, r := range rows {
		s.ratio[i] = r.Air.HumidityRatio()
	}
	return s
}

// Rows returns the rows; they are not to be changed.
func (s Series) Rows() []Row { return s.rows }

// Unread returns the headings of columns that were left unread.
func (s Series) Unread() []string { return s.unread }

// Ends returns the first and the last time; ok is false where there is none.
func (s Series) Ends() (first, last time.Time, ok bool) {
	if len(s.rows) == 0 {
		return first, last, false
	}
	return s.rows[0].Time, s.rows[len(s.rows)-1].Time, true
}

// Where says whether a time lies within a series, or the air at one of its ends
// had to be held.
type Where int

// The places.
const (
	Within Where = iota
	Before
	After
)

// String says it as a remark; "" within.
func (w Where) String() string {
	return []string{"", "before the first hour given: its air is taken", "after the last hour given: its air is taken"}[w]
}

// AtFormula is how At comes about between two rows.
var AtFormula = trace.Formula{
	Text:   "t and W go in a straight line from hour to hour; RH = p_w(W) / p_ws(t)",
	Source: "air that mixes keeps its water: ASHRAE Handbook, Fundamentals (2017), ch. 1, eq. 20 and 22",
	Note:   "background/what-the-air-holds",
}

// At returns the air at a time. Between two rows temperature and speed go in a
// straight line, and so does the water in the air; the relative humidity, which
// swings with the temperature, follows from them. Outside, the air at the nearer
// end is held. A series without rows has the zero Air.
func (s Series) At(t time.Time) (air.Air, Where) {
	if len(s.rows) == 0 {
		return air.Air{}, After
	}
	after, exact := slices.BinarySearchFunc(s.rows, t, func(r Row, t time.Time) int { return r.Time.Compare(t) })
	switch {
	case exact:
		return s.rows[after].Air, Within
	case after == 0:
		return s.rows[0].Air, Before
	case after == len(s.rows):
		return s.rows[after-1].Air, After
	}
	before, next := s.rows[after-1], s.rows[after]
	share := float64(t.Sub(before.Time)) / float64(next.Time.Sub(before.Time))
	a := before.Air
	a.Temperature = line(before.Air.Temperature, next.Air.Temperature, share)
	a.Speed = line(before.Air.Speed, next.Air.Speed, share)
	return a.WithRatio(s.ratio[after-1] + (s.ratio[after]-s.ratio[after-1])*share), Within
}

func line[Q q.Quantity](a, b Q, share float64) Q { return a + (b-a)*Q(share) }

// mostHumidity is the humidity of air that is full over water that has not
// frozen: 1 above 0 C.
func mostHumidity(t q.Temperature) q.Fraction {
	return q.Fraction(air.OverWater(t) / air.SaturationPressure(t))
}
