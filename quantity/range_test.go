package quantity

import (
	"errors"
	"testing"

	"github.com/google/go-cmp/cmp"
)

func readRange[Q Quantity](s string) ([2]float64, error) {
	r, err := ParseRange[Q](s)
	return [2]float64{float64(r.Low), float64(r.High)}, err
}

func TestParseRange(t *testing.T) {
	for _, c := range []struct {
		in        string
		read      func(string) ([2]float64, error)
		low, high float64
	}{
		{"5..10 %", readRange[Fraction], 0.05, 0.10},
		{"5 .. 10%", readRange[Fraction], 0.05, 0.10},
		{"15..32 C", readRange[Temperature], 288.15, 305.15},
		{"-5..10 C", readRange[Temperature], 268.15, 283.15},
		{"-10..-5 C", readRange[Temperature], 263.15, 268.15},
		{"59..90 F", readRange[Temperature], 288.15, 305.3722},
		{"240..400", readRange[Grit], 240, 400},
		{"1.5..2.5 mil", readRange[Length], 3.81e-5, 6.35e-5},
		{"20 min", readRange[Time], 1200, 1200},
		{"10..10 %", readRange[Fraction], 0.1, 0.1},
		{"5 to 10 %", readRange[Fraction], 0.05, 0.10},
		{"5–10 %", readRange[Fraction], 0.05, 0.10},
		{"-5 to 10 C", readRange[Temperature], 268.15, 283.15},
		{"3..5 °C", readRange[Difference], 3, 5},
	} {
		got, err := c.read(c.in)
		if err != nil || !near(got[0], c.low) || !near(got[1], c.high) {
			t.Errorf("ParseRange(%q) = %v, %v, want %v..%v", c.in, got, err, c.low, c.high)
		}
	}
}

func TestParseRangeErrors(t *testing.T) {
	for _, c := range []struct {
		in   string
		read func(string) ([2]float64, error)
		want Error
	}{
		{"10..5 %", readRange[Fraction], Error{"10..5 %", `a range with its low end first, such as "5..10 %"`, ""}},
		{"10..5 % ", readRange[Fraction], Error{"10..5 % ", `a range with its low end first, such as "5..10 %"`, ""}},
		{"400..240", readRange[Grit], Error{"400..240", `a range with its low end first, such as "240..400"`, ""}},
		{"15 C..32 C", readRange[Temperature], Error{"15 C..32 C", "the unit once, after the high end", ""}},
		{"..10 %", readRange[Fraction], Error{"..10 %", `a percentage such as "35 %"`, ""}},
		{"5.. %", readRange[Fraction], Error{"5.. %", `a percentage such as "35 %"`, ""}},
		{"5..10 um", readRange[Fraction], Error{"5..10 um", "a percentage in one of: %", ""}},
		{"5..10 mins", readRange[Time], Error{"5..10 mins", "a time in one of: s, min, h, d", "5..10 min"}},
		{"5 to 6 to 7 %", readRange[Fraction], Error{"5 to 6 to 7 %", "a percentage in one of: %", ""}},
		{"to 10 %", readRange[Fraction], Error{"to 10 %", `a percentage such as "35 %"`, ""}},
		{"5..6..7 %", readRange[Fraction], Error{"5..6..7 %", `a percentage such as "35 %"`, ""}},
		{"-5..10 %", readRange[Fraction], Error{"-5..10 %", `a percentage of zero or more, such as "35 %"`, ""}},
	} {
		_, err := c.read(c.in)
		var got *Error
		if !errors.As(err, &got) {
			t.Errorf("ParseRange(%q): error %v, want an *Error", c.in, err)
			continue
		}
		if diff := cmp.Diff(c.want, *got); diff != "" {
			t.Errorf("ParseRange(%q) (-want +got):\n%s", c.in, diff)
		}
	}
}

func TestRange(t *testing.T) {
	r := Range[Length]{2, 4}
	if got := r.Middle(); got != 3 {
		t.Errorf("Middle = %v, want 3", got)
	}
	for q, want := range map[Length]bool{1.9: false, 2: true, 3: true, 4: true, 4.1: false} {
		if got := r.Holds(q); got != want {
			t.Errorf("Holds(%v) = %v, want %v", q, got, want)
		}
	}
	for _, c := range []struct {
		with, want Range[Length]
		meets      bool
	}{
		{Range[Length]{3, 9}, Range[Length]{3, 4}, true},
		{Range[Length]{0, 2}, Range[Length]{2, 2}, true},
		{Range[Length]{2.5, 3}, Range[Length]{2.5, 3}, true},
		{Range[Length]{5, 6}, Range[Length]{5, 4}, false},
	} {
		if got, meets := r.Meets(c.with); got != c.want || meets != c.meets {
			t.Errorf("%v.Meets(%v) = %v, %v, want %v, %v", r, c.with, got, meets, c.want, c.meets)
		}
	}
	if !(Range[Length]{}).IsZero() || r.IsZero() {
		t.Error("IsZero is true of the zero range alone")
	}
}
