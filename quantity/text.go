package quantity

import (
	"cmp"
	"strings"
)

// finest is how many figures a converted number has at most.
const finest = 6

// Text rewrites the quantities that stand in running text in the units of s:
// "The air is 21.5 °C" becomes "The air is 70.7 °F". It takes numbers and
// ranges ("15 to 32 °C", "15–32", "15..32", "50 or 60", "between 50 and 60",
// "23 ± 2") with a unit that Parse knows, as a whole word. A converted number
// has as many significant figures as the written one, two to six, a temperature
// as many decimals, one at least.
//
// Wrong rewriting is worse than none. So Text leaves alone what s measures in
// already; times, shares and counts; ounces, which may be of weight or of fluid;
// and whatever is not plainly a quantity:
//
//   - a number that another one without a unit goes with: "2 × 25 µm", "1:2 L",
//     "10, 20 and 30 mm", "1,500 mL", or with more of a unit behind it: "5 mL
//     per coat", "15 mm-wide";
//   - a unit of one letter without a gap before it, or after a word that counts:
//     "2K", "coat 3 L";
//   - C, F, K and bar before the name of a thing, "2 bar clamps", and "in" before
//     anything but a stop or a word such as "wide";
//   - degrees that may be a temperature or a difference of two; see thermal.
func (s *System) Text(text string) string {
	return s.rewrite(text, func(_, converted string) string { return converted })
}

// Annotate keeps the text and puts what Text would write behind each quantity:
// "15 µm (0.59 mil)".
func (s *System) Annotate(text string) string {
	return s.rewrite(text, func(written, converted string) string { return written + " (" + converted + ")" })
}

// rewrite puts what with makes of them in place of quantities that are not in
// units of s. A quantity with the same in other units behind it in parentheses
// is left alone where s has one of the two.
func (s *System) rewrite(text string, with func(written, converted string) string) string {
	var out strings.Builder
	copied, skip := 0, 0
	for m := range mentions(text) {
		if m.start < skip {
			continue
		}
		if twin, ok := m.twin(text); ok && s.owns(m.unit) != s.owns(twin.unit) {
			skip = twin.end
			continue
		}
		if converted, ok := s.convert(m, text); ok {
			out.WriteString(text[copied:m.start])
			out.WriteString(with(text[m.start:m.end], converted))
			copied = m.end
		}
	}
	if copied == 0 {
		return text
	}
	out.WriteString(text[copied:])
	return out.String()
}

// twin is the quantity that follows m in parentheses and measures the same:
// "27 °C (80 °F)", "20 mm (about 0.8 in)".
func (m mention) twin(text string) (mention, bool) {
	behind := strings.TrimLeftFunc(text[m.end:], blank)
	if !strings.HasPrefix(behind, "(") {
		return mention{}, false
	}
	open := len(text) - len(behind)
	for t := range mentions(window(text[open:])) {
		t.start, t.end = t.start+open, t.end+open
		alike := t.of == m.of || t.of == temperature && m.of == difference || t.of == difference && m.of == temperature
		return t, alike && !strings.Contains(text[open:t.start], ")")
	}
	return mention{}, false
}

// convert writes m in the unit that s has for it. It is not ok where s measures
// in the unit of m, and where it is in doubt what m measures.
func (s *System) convert(m mention, text string) (converted string, ok bool) {
	if s.owns(m.unit) || hanging.MatchString(window(text[m.end:])) {
		return "", false
	}
	meant, ok := m.meant(text)
	if !ok {
		return "", false
	}
	low, high := m.values()
	if m.tolerance() {
		high = low
	}
	low, high = meant.unit.toSI(low), meant.unit.toSI(high)
	if min(low, high) < 0 || beyond(max(low, high)) != "" {
		return "", false
	}
	to := s.unit(meant.of, max(low, high))
	number := m.written(meant.of, to.fromSI(low))
	switch {
	case m.plusMinus():
		number = "±" + number
	case m.tolerance():
		number += m.join + m.written(nil, value(m.high)*meant.unit.factor/to.factor)
	case m.high != "":
		number = joined(number, m.join, m.written(meant.of, to.fromSI(high)))
	}
	return behind(number, cmp.Or(m.gap, " "), to.name), true
}

// written is the number x, of d, written as finely as those of m are.
func (m mention) written(d *dimension, x float64) string {
	if d == temperature {
		return decimals(x, min(finest, max(1, places(m.low), places(m.high))))
	}
	n := min(finest, max(2, significant(m.low), significant(m.high)))
	return figures(toFigures(x, n), n)
}

// significant is how many figures a written number has, zeros at its end
// counted: 300 mL in a cup are not 0.3 L.
func significant(number string) int {
	digits := strings.TrimLeft(number, "+-−±0.")
	return len(digits) - strings.Count(digits, ".")
}

// places is how many decimals a written number has.
func places(number string) int {
	_, decimals, _ := strings.Cut(number, ".")
	return len(decimals)
}

// joined puts the ends of a range together as they were, but a dash and the
// sign of a number below zero would run into one another.
func joined(low, join, high string) string {
	dash := strings.TrimSpace(join)
	if (dash == "-" || dash == "–") && strings.HasPrefix(high, "-") {
		join = " to "
	}
	return low + join + high
}
