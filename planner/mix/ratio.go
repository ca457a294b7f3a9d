package mix

import (
	"errors"
	"fmt"
	"strings"

	q "coatwright/quantity"
)

// PercentOf is what a percentage in a written ratio is taken of. Sheets differ,
// so whoever reads one must say.
type PercentOf int

// What a percentage is taken of.
const (
	OfFirst  PercentOf = iota // the first part: in "2:1 + 10 %", 10 % of the 2
	OfBefore                  // all that stands before it: 10 % of the 3
)

// longest is how many parts a written ratio may have: they are named A to Z.
const longest = 26

// ParseRatio reads a ratio as sheets print it, "4:1:0.5", "2 : 1 + 10 %" or
// "100 + 5..10 %", into parts by volume named A, B, C. A percentage becomes a
// share of A. The error is a *q.Error.
func ParseRatio(s string, percent PercentOf) ([]Part, error) {
	fields := strings.Split(strings.ReplaceAll(s, "+", ":"), ":")
	if len(fields) > longest {
		return nil, &q.Error{Found: s, Expected: fmt.Sprintf("at most %d parts", longest)}
	}
	parts := make([]Part, len(fields))
	before := 0.0 // what the parts so far come to, A being 1
	for i, field := range fields {
		p, err := ratioPart(i, strings.TrimSpace(field))
		if err != nil {
			return nil, &q.Error{Found: s, Expected: err.Error()}
		}
		if percent == OfBefore {
			p = p.scaled(before)
		}
		parts[i] = p
		before += p.Parts/parts[0].Parts + float64(p.Share)
	}
	if _, err := Shares(parts); err != nil {
		return nil, &q.Error{Found: s, Expected: "numbers of parts that can be poured into one cup"}
	}
	return parts, nil
}

// ratioPart reads the part at a place of a ratio; the error is what was expected.
func ratioPart(i int, field string) (Part, error) {
	p := Part{Name: string(rune('A' + i))}
	if strings.HasSuffix(field, "%") {
		if i == 0 {
			return p, errors.New(`a number of parts before the first percentage, such as "100 + 10 %"`)
		}
		r, err := q.ParseRange[q.Fraction](field)
		if err != nil {
			return p, fmt.Errorf(`a percentage such as "10 %%" or "5..10 %%" for %q`, field)
		}
		p.Of, p.Share = "A", r.Middle()
		if r.Low < r.High {
			p.Range = r
		}
		return p, nil
	}
	x, err := q.Parse[q.Number](field)
	if err != nil || i == 0 && x == 0 {
		return p, fmt.Errorf(`numbers of parts with ":" between them, such as "4:1:0.5" or "2:1 + 10 %%", for %q`, field)
	}
	p.Parts = float64(x)
	return p, nil
}

// scaled is p with a share of so many times as much.
func (p Part) scaled(times float64) Part {
	f := q.Fraction(times)
	p.Share, p.Range.Low, p.Range.High = p.Share*f, p.Range.Low*f, p.Range.High*f
	return p
}
