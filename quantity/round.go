package quantity

import (
	"math"
	"strconv"
	"strings"
)

// sliver is the share of a step that the arithmetic may leave over.
const sliver = 1e-9

// RoundTo returns the multiple of step that is nearest to v, of two the one
// further from zero. A step of zero or less leaves v as it is.
func RoundTo[F ~float64](v, step F) F {
	if step <= 0 {
		return v
	}
	steps := float64(v / step)
	return step * F(math.Round(steps+math.Copysign(sliver, steps)))
}

// noise is what arithmetic may leave of a number that should be 0.
const noise = 1e-9

// figures writes x to n significant figures, but whole numbers in full, and
// without zeros that end a decimal: "0.59", "15", "12346".
func figures(x float64, n int) string {
	if math.Abs(x) < noise {
		return "0"
	}
	_, power, _ := strings.Cut(strconv.FormatFloat(x, 'e', n-1, 64), "e")
	exponent, err := strconv.Atoi(power)
	if err != nil { // not a finite number
		return strconv.FormatFloat(x, 'f', -1, 64)
	}
	return decimals(x, max(0, n-1-exponent))
}

// toFigures rounds x to n significant figures.
func toFigures(x float64, n int) float64 {
	rounded, err := strconv.ParseFloat(strconv.FormatFloat(x, 'e', n-1, 64), 64)
	if err != nil {
		return x
	}
	return rounded
}

// decimals writes x to n decimals, without zeros that end them.
func decimals(x float64, n int) string {
	text := strconv.FormatFloat(x, 'f', n, 64)
	if strings.Contains(text, ".") {
		text = strings.TrimSuffix(strings.TrimRight(text, "0"), ".")
	}
	if text == "-0" {
		return "0"
	}
	return text
}
