package viscosity

import (
	"fmt"
	"slices"

	q "coatwright/quantity"
)

// The kinds of cups.
const (
	ford = "Ford"
	zahn = "Zahn"
	iso  = "ISO"
	din  = "DIN"
)

// How far apart two cups of one name may read.
const (
	// zahnSpread holds 95 of 100 readings: 1.96 times the coefficient of variation
	// between laboratories, 11.5 %, of new cups from one maker (ASTM D4212, 13.1.1).
	zahnSpread = 1.96 * 0.115

	// soundSpread is what a cup may be off and still pass: an ISO cup that differs
	// by no more than 3 % from its equation counts as fit for use (maker's page on
	// ISO 2431). The published drain times of standard oils lie as far from the
	// Ford equations. The hand and the stopwatch come on top.
	soundSpread = 0.03
)

const (
	zahnCaution = "Zahn cups of one number are not made to one pattern, and differ between makers and batches. Compare readings of one and the same cup; agree on nothing with others by them."
	dinCaution  = "DIN 53211 was withdrawn in 1996 in favour of ISO 2431, but data sheets still name its cup. It is read at 20 °C."
)

const (
	fordMaker  = "ASTM D1200, as a maker of standard oils prints it (cannoninstrument.com/Cups.htm)"
	fordSecond = "ASTM D1200, as a page on test methods prints it; the range is from D1200-94 (2005), 11.2"
	zahnMaker  = "ASTM D4212, as a maker of standard oils prints it (cannoninstrument.com/Cups.htm)"
	isoSecond  = "ISO 2431, as a cup maker's page prints it, for 30 to 100 s"
	isoMemory  = "ISO 2431, from memory, as the cup maker's page misprints it, for 30 to 100 s"
	dinMemory  = "DIN 53211, from memory"
)

// cups is every cup that is known, each kind from its narrowest hole on. ASTM
// D5125 reads ISO cups from 20 s on, but the equation of the 3 mm cup has ended by
// then: it gives nothing at 21 s.
var cups = []Cup{
	astm(ford, 1, 0.49, 35.0, 55, 100, fordMaker),
	astm(ford, 2, 1.44, 18.0, 40, 100, fordMaker),
	astm(ford, 3, 2.31, 6.58, 20, 100, fordSecond),
	astm(ford, 4, 3.85, 4.49, 20, 100, fordSecond),
	astm(ford, 5, 12.1, 2.00, 20, 100, fordSecond),

	astm(zahn, 1, 1.1, 29, 35, 80, zahnMaker),
	astm(zahn, 2, 3.5, 14, 20, 80, zahnMaker),
	astm(zahn, 3, 11.7, 7.5, 20, 80, zahnMaker),
	astm(zahn, 4, 14.8, 5, 20, 80, zahnMaker),
	astm(zahn, 5, 23, 0, 20, 80, zahnMaker),

	european(iso, 3, 0.443, 200, 30, 100, isoSecond),
	european(iso, 4, 1.37, 200, 30, 100, isoSecond),
	european(iso, 5, 3.28, 220, 30, 100, isoMemory),
	european(iso, 6, 6.90, 570, 30, 100, isoMemory),

	european(din, 4, 4.57, 452, 25, 150, dinMemory),
}

// Cups returns every cup that is known.
func Cups() []Cup { return slices.Clone(cups) }

func astm(kind string, number int, slope, offset, from, to float64, source string) Cup {
	c := Cup{Kind: kind, Number: number, slope: slope, offset: offset, Source: source, Spread: soundSpread,
		Range: q.Range[q.Time]{Low: q.Time(from), High: q.Time(to)}, Temperature: q.Celsius(25),
		Equation: fmt.Sprintf("ν = %g (t − %g)", slope, offset)}
	if offset == 0 {
		c.Equation = fmt.Sprintf("ν = %g t", slope)
	}
	if kind == zahn {
		c.Spread, c.Cautions = zahnSpread, []string{zahnCaution}
	}
	return c
}

// The temperatures are those that a maker's glossary names with the two standards.
func european(kind string, hole int, slope, drag, from, to float64, source string) Cup {
	c := Cup{Kind: kind, Number: hole, slope: slope, drag: drag, Source: source, Spread: soundSpread,
		Range: q.Range[q.Time]{Low: q.Time(from), High: q.Time(to)}, Temperature: q.Celsius(23),
		Equation: fmt.Sprintf("ν = %g t − %g/t", slope, drag)}
	if kind == din {
		c.Temperature, c.Cautions = q.Celsius(20), []string{dinCaution}
	}
	return c
}
