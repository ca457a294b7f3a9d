package quantity

import (
	"errors"
	"math"
	"strings"
	"testing"
)

// FuzzParse checks that any text is read as a number that can be reckoned with
// or refused with an *Error.
func FuzzParse(f *testing.F) {
	for _, c := range published {
		f.Add(c.in)
	}
	f.Add("5..10 %")
	f.Add("10..5 %")
	f.Add(strings.Repeat("9", 308) + " d")
	f.Fuzz(func(t *testing.T, s string) {
		length, err := Parse[Length](s)
		sound(t, s, float64(length), err)
		temperature, err := Parse[Temperature](s)
		sound(t, s, float64(temperature), err)
		r, err := ParseRange[Time](s)
		sound(t, s, float64(r.Low), err)
		sound(t, s, float64(r.High), err)
		if r.Low > r.High {
			t.Errorf("%q is read as %v, which runs backwards", s, r)
		}
	})
}

func sound(t *testing.T, s string, v float64, err error) {
	t.Helper()
	var e *Error
	if err != nil && !errors.As(err, &e) {
		t.Errorf("%q: %v is no *Error", s, err)
	}
	if math.IsNaN(v) || math.IsInf(v, 0) || v < 0 {
		t.Errorf("%q is read as %v", s, v)
	}
}
