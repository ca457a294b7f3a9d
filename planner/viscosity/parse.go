package viscosity

import (
	"slices"
	"strconv"
	"strings"
	"unicode"

	"coatwright/nearest"
	q "coatwright/quantity"
)

// filler is what may stand around a cup's kind and number without saying more:
// the standards, and words of manner.
var filler = []string{"cup", "no", "nr", "number", "mm", "flow", "efflux", "viscosity", "astm", "en", "d", "1200", "4212", "2431", "53211"}

// ParseCup reads the name of a cup, such as "Ford 4", "ISO 4 mm" or "zahn #2". The
// error is a *q.Error.
func ParseCup(s string) (Cup, error) {
	var kind string
	var number int
	for _, w := range words(s) {
		n, err := strconv.Atoi(w)
		switch {
		case slices.Contains(filler, w):
		case err == nil && number == 0 && n != 0:
			number = n
		case err != nil && (kind == "" || kind == "din" && w == "iso"): // DIN EN ISO 2431 is the ISO cup
			kind = w
		default:
			return Cup{}, noCup(s, kind, number)
		}
	}
	for _, c := range cups {
		if strings.EqualFold(c.Kind, kind) && c.Number == number {
			return c, nil
		}
	}
	return Cup{}, noCup(s, kind, number)
}

// words parts s into small letters and digits: "ISO4 mm" is "iso", "4", "mm".
func words(s string) []string {
	var out []string
	var last rune
	for _, r := range strings.ToLower(s) {
		letter, digit := unicode.IsLetter(r), unicode.IsDigit(r)
		switch {
		case !letter && !digit:
		case len(out) > 0 && (unicode.IsLetter(last) && letter || unicode.IsDigit(last) && digit):
			out[len(out)-1] += string(r)
		default:
			out = append(out, string(r))
		}
		last = r
	}
	return out
}

// noCup is the error for a text in which kind and number were read.
func noCup(s, kind string, number int) error {
	names, kinds := make([]string, len(cups)), make([]string, len(cups))
	for i, c := range cups {
		names[i], kinds[i] = c.Name(), c.Kind
	}
	e := &q.Error{Found: s, Expected: "an efflux cup: " + strings.Join(names, ", ")}
	meant := nearest.To(kind, kinds)
	for _, c := range cups {
		if c.Kind == meant && c.Number == number {
			e.Nearest = c.Name()
		}
	}
	return e
}
