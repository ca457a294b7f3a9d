package quantity

import (
	"cmp"
	"math"
	"strconv"
	"strings"

	"coatwright/nearest"
)

// Parse reads one quantity such as "15 um" or "74 F" into SI. Nothing that is
// measured here can be below zero, a temperature below absolute zero.
// The error is an *Error.
func Parse[Q Quantity](s string) (Q, error) {
	var q Q
	number, unit := split(s)
	v, err := convert(s, number, unit, q.dimension())
	return Q(v), err
}

// ParseRange reads "5..10 %", also as "5 to 10 %" and "5–10 %", or a single
// quantity as a range of no width. The low end must not exceed the high end.
// The error is an *Error.
func ParseRange[Q Quantity](s string) (Range[Q], error) {
	low, high, found := ends(s)
	if !found {
		v, err := Parse[Q](s)
		return Range[Q]{v, v}, err
	}
	var q Q
	d := q.dimension()
	number, unit := split(high)
	h, err := convert(s, number, unit, d)
	if err != nil {
		return Range[Q]{}, err
	}
	lowNumber, extra := split(low)
	if extra != "" {
		return Range[Q]{}, &Error{Found: s, Expected: "the unit once, after the high end"}
	}
	l, err := convert(s, lowNumber, unit, d)
	if err != nil {
		return Range[Q]{}, err
	}
	if l > h {
		turned := strings.TrimSpace(number + ".." + lowNumber + " " + unit)
		return Range[Q]{}, &Error{Found: s, Expected: "a range with its low end first, such as " + strconv.Quote(turned)}
	}
	return Range[Q]{Q(l), Q(h)}, nil
}

// ends parts the text of a range at what joins it.
func ends(s string) (low, high string, found bool) {
	for _, join := range []string{"..", " to ", "–"} {
		if low, high, found = strings.Cut(s, join); found {
			return low, high, true
		}
	}
	return s, "", false
}

// convert turns a number and the name of its unit into SI. They are part of
// the text found, which the error shows.
func convert(found, number, name string, d *dimension) (float64, error) {
	v, err := strconv.ParseFloat(number, 64)
	if err != nil {
		return 0, &Error{Found: found, Expected: d.name + " such as " + strconv.Quote(d.example)}
	}
	if u, ok := d.unit(name); ok {
		si := u.toSI(v)
		if si < 0 || math.IsInf(si, 0) {
			return 0, &Error{Found: found, Expected: d.name + " of zero or more, such as " + strconv.Quote(d.example)}
		}
		return si, nil
	}
	return 0, unknown(found, name, d)
}

// unknown says that d has no unit of that name.
func unknown(found, name string, d *dimension) *Error {
	names := make([]string, len(d.units))
	for i, u := range d.units {
		names[i] = cmp.Or(u.name, "no unit")
	}
	e := &Error{Found: found, Expected: d.name + " in one of: " + strings.Join(names, ", ")}
	if n := nearest.To(name, names); n != "" {
		e.Nearest = strings.TrimSuffix(strings.TrimSpace(found), name) + n
	}
	return e
}

// split parts "15 um" into its number and its unit. A comma goes with the
// number, which then is none: better than to read "1,5" as 1. The Greek mu that
// some keyboards have stands for the sign of micro.
func split(s string) (number, unit string) {
	s = strings.TrimSpace(s)
	i := 0
	for i < len(s) && strings.IndexByte("+-.,0123456789", s[i]) >= 0 {
		i++
	}
	return s[:i], strings.ReplaceAll(strings.TrimSpace(s[i:]), "μ", "µ")
}
