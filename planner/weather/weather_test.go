package weather

import (
	"math"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"coatwright/planner/air"
	q "coatwright/quantity"
)

var morning = time.Date(2026, 12, 1, 8, 0, 0, 0, time.UTC)

func hour(n float64) time.Time { return morning.Add(time.Duration(n * float64(time.Hour))) }

func made(t testing.TB, rows ...Row) Series {
	t.Helper()
	s, err := New(rows)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func airOf(celsius, percent, speed float64) air.Air {
	return air.Air{Temperature: q.Celsius(celsius), Humidity: q.Fraction(percent / 100), Speed: q.Speed(speed)}
}

func TestNewRefuses(t *testing.T) {
	fair := airOf(20, 50, 0)
	for _, c := range []struct {
		name string
		rows []Row
		want string
	}{
		{"no rows", nil, "found nothing, expected at least one row of weather"},
		{"too many", make([]Row, MaxRows+1), `found "2001 rows", expected at most 2000`},
		{"too cold", []Row{{hour(0), fair}, {hour(1), airOf(-80, 50, 0)}}, `row 2: found "-80 °C", expected a temperature from -60 to 60 °C`},
		{"too damp", []Row{{hour(0), airOf(20, 101, 0)}}, `row 1: found "101 %", expected a humidity from 1 to 100 %`},
		{"no number", []Row{{hour(0), air.Air{Temperature: 290, Humidity: q.Fraction(math.NaN())}}}, `row 1: found "NaN %", expected a humidity from 1 to 100 %`},
		{"too windy", []Row{{hour(0), airOf(20, 50, 99)}}, `row 1: found "99 m/s", expected an air speed from 0 to 60 m/s`},
		{"backwards", []Row{{hour(1), fair}, {hour(0), fair}}, `row 2: found "2026-12-01 08:00", expected a time after 2026-12-01 09:00 of row 1`},
		{"twice", []Row{{hour(0), fair}, {hour(1), fair}, {hour(1), fair}}, `row 3: found "2026-12-01 09:00", expected every time once; it stands in row 2 already`},
	} {
		if _, err := New(c.rows); err == nil || err.Error() != c.want {
			t.Errorf("%s:\n\t%v\nwant\n\t%s", c.name, err, c.want)
		}
	}
}

// Halfway between 10 C and 90 % and 20 C and 45 % the air is at 15 C with the
// mean of their water, 6.86 and 6.53 g/kg: 63 %, and not 67.5 (worked
// independently by Magnus).
func TestAtIsLinearInWater(t *testing.T) {
	s := made(t, Row{hour(0), airOf(10, 90, 1)}, Row{hour(2), airOf(20, 45, 3)})
	a, where := s.At(hour(1))
	near(t, "temperature", a.Temperature.Celsius(), 15, 1e-9)
	near(t, "humidity", a.Humidity.Percent(), 63, 0.3)
	near(t, "speed", float64(a.Speed), 2, 1e-9)
	near(t, "water", a.HumidityRatio(), (s.Rows()[0].Air.HumidityRatio()+s.Rows()[1].Air.HumidityRatio())/2, 1e-12)
	if where != Within {
		t.Errorf("found %v", where)
	}
}

func TestAtHoldsTheEnds(t *testing.T) {
	s := made(t, Row{hour(0), airOf(10, 90, 1)}, Row{hour(2), airOf(20, 45, 3)})
	for _, c := range []struct {
		at    float64
		row   int
		where Where
		says  string
	}{
		{-5, 0, Before, "before the first hour given"}, {0, 0, Within, ""}, {2, 1, Within, ""}, {2.01, 1, After, "after the last hour given"},
	} {
		a, where := s.At(hour(c.at))
		if a != s.Rows()[c.row].Air || where != c.where || !strings.HasPrefix(where.String(), c.says) || (c.says == "") != (where.String() == "") {
			t.Errorf("at %v h: %+v, %v (%s)", c.at, a, where, where)
		}
	}
	if a, where := (Series{}).At(hour(0)); a != (air.Air{}) || where == Within {
		t.Errorf("no rows: %+v, %v", a, where)
	}
	if first, last, ok := s.Ends(); !ok || first != hour(0) || last != hour(2) {
		t.Errorf("ends %v, %v", first, last)
	}
	if _, _, ok := (Series{}).Ends(); ok {
		t.Error("a series without rows has ends")
	}
}

func anySeries(t *rapid.T) Series {
	var rows []Row
	at := morning
	for range rapid.IntRange(1, 12).Draw(t, "rows") {
		celsius, percent := rapid.Float64Range(-20, 40), rapid.Float64Range(1, 100)
		rows = append(rows, Row{at, Reported(q.Celsius(celsius.Draw(t, "celsius")), q.Fraction(percent.Draw(t, "percent")/100), q.Speed(rapid.Float64Range(0, 20).Draw(t, "speed")))})
		at = at.Add(time.Duration(rapid.IntRange(1, 300).Draw(t, "minutes")) * time.Minute)
	}
	s, err := New(rows)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// At any time the air lies between that of its neighbours in temperature, in
// speed and in water, but for what fog takes, and has limits of its own.
func TestAtLiesBetween(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anySeries(t)
		first, last, _ := s.Ends()
		at := first.Add(time.Duration(rapid.Float64Range(-0.2, 1.2).Draw(t, "share") * float64(last.Sub(first))))
		a, where := s.At(at)
		if e := fault(a); e != nil {
			t.Fatal(e)
		}
		if (where == Within) != (!at.Before(first) && !at.After(last)) {
			t.Fatalf("%v is %v", at, where)
		}
		if where != Within {
			return
		}
		i := 0
		for i < len(s.rows)-1 && !s.rows[i+1].Time.After(at) {
			i++
		}
		before, next := s.rows[i].Air, s.rows[min(i+1, len(s.rows)-1)].Air
		between := func(what string, x, a, b, sliver float64) {
			if x < min(a, b)-sliver || x > max(a, b)+sliver {
				t.Fatalf("%s %v is not between %v and %v", what, x, a, b)
			}
		}
		between("temperature", float64(a.Temperature), float64(before.Temperature), float64(next.Temperature), 1e-9)
		between("speed", float64(a.Speed), float64(before.Speed), float64(next.Speed), 1e-9)
		if a.Humidity < mostHumidity(a.Temperature)-1e-9 {
			between("water", a.HumidityRatio(), before.HumidityRatio(), next.HumidityRatio(), 1e-12)
		}
	})
}

// "Outdoor air of 0 C and 90 % is heated to 20 C: approximately 23 %"
// (engineeringtoolbox.com/amp/temperature-relative-humidity-d_1118.html), and from
// its table, 20 F to 70 F: 40 % becomes 6, 60 % becomes 8, 80 % becomes 11.
// Published examples do not say over what they count; ours counts over water, as
// a weather service does, which is up to 7 % of the figure more at 20 F.
func TestIndoor(t *testing.T) {
	const coldF, warmF = -6.667, 21.111 // 20 F and 70 F in C
	for _, c := range []struct{ outside, percent, inside, want, within float64 }{
		{0, 90, 20, 23, 1}, {coldF, 40, warmF, 6, 0.7}, {coldF, 60, warmF, 8, 1.1}, {coldF, 80, warmF, 11, 1.1},
	} {
		got := Indoor(Reported(q.Celsius(c.outside), q.Fraction(c.percent/100), 5), q.Celsius(c.inside), 0.2)
		near(t, "humidity indoors", got.Humidity.Percent(), c.want, c.within)
		if got.Speed != 0.2 || got.Temperature != q.Celsius(c.inside) {
			t.Errorf("indoors %+v", got)
		}
	}
}

// Over ice at -10 C air is full at 259.9 Pa, over water at 286.5 (from memory,
// meteorological tables).
func TestReportedIsOverWater(t *testing.T) {
	full := Reported(q.Celsius(-10), 1, 0)
	near(t, "vapour pressure", float64(full.VapourPressure()), 286.5, 0.7)
	near(t, "humidity over ice", float64(full.Humidity), 286.5/259.9, 0.003)
	near(t, "by the dew point", float64(ReportedDewPoint(q.Celsius(-10), q.Celsius(-10), 0).Humidity), float64(full.Humidity), 1e-12)
	near(t, "above freezing", float64(Reported(q.Celsius(10), 0.6, 0).Humidity), 0.6, 1e-12)
}

func TestFrom(t *testing.T) {
	s := made(t, Row{hour(0), airOf(10, 90, 4)}, Row{hour(2), airOf(20, 45, 4)})
	want, _ := s.At(hour(1.5))
	if got := s.From(hour(1))(1800); got != want {
		t.Errorf("outside %+v, want %+v", got, want)
	}
	if got := s.FromIndoors(hour(1), q.Celsius(22), 0.1)(1800); got != Indoor(want, q.Celsius(22), 0.1) {
		t.Errorf("indoors %+v", got)
	}
}

// damp is a score that only minds humidity.
func damp(a air.Air) float64 { return float64(a.Humidity) }

func TestBest(t *testing.T) {
	s := made(t, Row{hour(0), airOf(10, 90, 0)}, Row{hour(4), airOf(10, 40, 0)}, Row{hour(8), airOf(10, 95, 0)})
	starts := []time.Time{hour(6), hour(3), hour(1), hour(3.5)}
	for _, c := range []struct {
		name   string
		starts []time.Time
		lasts  q.Time
		want   float64
		held   bool
		worst  float64
	}{
		{"a moment", starts, 0, 3.5, false, 0.4625},
		{"an hour: astride the driest", starts, 3600, 3.5, false, 0.46875},
		{"outside only where there is no other", []time.Time{hour(9), hour(1)}, 3600, 1, false, 0.775},
		{"held", []time.Time{hour(9), hour(10)}, 3600, 9, true, 0.95},
		{"runs out of the weather", []time.Time{hour(6)}, 4 * 3600, 6, true, 0.95},
	} {
		got, ok := s.Best(c.starts, c.lasts, damp)
		if !ok || got.At != hour(c.want) || got.Held != c.held || math.Abs(got.Worst-c.worst) > 0.003 {
			t.Errorf("%s: %+v, %v", c.name, got, ok)
		}
	}
	if _, ok := s.Best(nil, 3600, damp); ok {
		t.Error("the best of no starts")
	}
}

// No start of those that lie within is better than the best, and the order in
// which they come does not matter.
func TestBestIsTheBest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anySeries(t)
		var starts []time.Time
		for range rapid.IntRange(1, 6).Draw(t, "starts") {
			starts = append(starts, morning.Add(time.Duration(rapid.IntRange(-60, 900).Draw(t, "minutes"))*time.Minute))
		}
		lasts := q.Time(rapid.IntRange(0, 6).Draw(t, "hours") * 3600)
		best, _ := s.Best(starts, lasts, damp)
		for _, at := range starts {
			alone, _ := s.Best([]time.Time{at}, lasts, damp)
			if best.Held && !alone.Held || best.Held == alone.Held && alone.Worst < best.Worst {
				t.Fatalf("%+v is better than %+v", alone, best)
			}
		}
		back := append([]time.Time{}, starts...)
		for i, j := 0, len(back)-1; i < j; i, j = i+1, j-1 {
			back[i], back[j] = back[j], back[i]
		}
		if again, _ := s.Best(back, lasts, damp); again != best {
			t.Fatalf("%+v, and backwards %+v", best, again)
		}
	})
}

func week(b testing.TB) Series {
	var rows []Row
	for i := range 168 {
		swing := math.Sin(2 * math.Pi * float64(i) / 24)
		rows = append(rows, Row{hour(float64(i)), airOf(12+7*swing, 65-20*swing, 2)})
	}
	return made(b, rows...)
}

func BenchmarkAt(b *testing.B) {
	s := week(b)
	at := hour(100.4)
	for b.Loop() {
		s.At(at)
	}
}

func BenchmarkBest(b *testing.B) {
	s := week(b)
	var starts []time.Time
	for i := range 100 {
		starts = append(starts, hour(float64(i)))
	}
	for b.Loop() {
		s.Best(starts, 4*3600, damp)
	}
}
