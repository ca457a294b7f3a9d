package quantity

import (
	"math"
	"strconv"
	"testing"
	"time"

	"pgregory.net/rapid"
)

func TestMethodsInUnits(t *testing.T) {
	for _, c := range []struct {
		name      string
		got, want float64
	}{
		{"15 um", Length(15e-6).Micrometres(), 15},
		{"30 mm", Length(0.03).Millimetres(), 30},
		{"0.25 L", Volume(0.25e-3).Litres(), 0.25},
		{"0.25 L in mL", Volume(0.25e-3).Millilitres(), 250},
		{"40 g", Mass(0.04).Grams(), 40},
		{"90 s", Time(90).Minutes(), 1.5},
		{"23 C", Temperature(296.15).Celsius(), 23},
		{"23 C made", float64(Celsius(23)), 296.15},
		{"2 bar", Pressure(2e5).Kilopascals(), 200},
		{"35 %", Fraction(0.35).Percent(), 35},
	} {
		if !near(c.got, c.want) {
			t.Errorf("%s: got %v, want %v", c.name, c.got, c.want)
		}
	}
}

func TestDuration(t *testing.T) {
	for _, c := range []struct {
		in   Time
		want time.Duration
	}{
		{0, 0},
		{90, 90 * time.Second},
		{89.6, 90 * time.Second},
		{1e30, math.MaxInt64},
		{Time(math.Inf(1)), math.MaxInt64},
	} {
		if got := c.in.Duration(); got != c.want {
			t.Errorf("Time(%v).Duration() = %v, want %v", float64(c.in), got, c.want)
		}
	}
}

// What is written in any unit is read back as what was written.
func TestRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := rapid.SampledFrom(dimensions).Draw(t, "dimension")
		u := rapid.SampledFrom(d.units).Draw(t, "unit")
		si := rapid.Float64Range(1e-3, 1e6).Draw(t, "SI value")
		number := strconv.FormatFloat(si/u.factor-u.offset, 'f', -1, 64)
		got, err := convert(number+" "+u.name, number, u.name, d)
		if err != nil || math.Abs(got-si) > 1e-9*(si+math.Abs(u.offset)) {
			t.Fatalf("%q = %v, %v, want %v", number+" "+u.name, got, err, si)
		}
	})
}

func TestTimeSaidAsAPainterWould(t *testing.T) {
	for minutes, want := range map[float64]string{0: "0 min", 59.4: "59 min", 60: "1 h", 95: "1 h 35 min", 47 * 60: "47 h", 2880: "2 d", 3000: "2 d 2 h", 10080: "7 d"} {
		if got := Time(minutes * 60).String(); got != want {
			t.Errorf("%g min is %q, want %q", minutes, got, want)
		}
	}
}
