package quantity

import (
	"iter"
	"math"
	"strings"
	"unicode"
	"unicode/utf8"
)

// A mention is a quantity that stands in running text: "15 µm", "15 to 32 °C".
type mention struct {
	start, end int    // in the text, from the sign to the end of the unit
	low        string // the number, or the low end of a range
	join       string // what stands between the ends: " to ", "..", " ± "
	high       string // empty where there is one number
	gap        string // between the number and the unit
	meaning
}

// meaning is what the name of a unit means in running text.
type meaning struct {
	of   *dimension
	unit unit
}

// meanings are by name. Kelvins in prose are those of a difference.
var meanings = func() map[string]meaning {
	kelvin, _ := difference.unit("K")
	m := map[string]meaning{"K": {difference, kelvin}}
	for _, d := range dimensions {
		for _, u := range d.units {
			if _, taken := m[u.name]; !taken && u.name != "" {
				m[u.name] = meaning{d, u}
			}
		}
	}
	return m
}()

// mentions are the quantities in text, in order.
func mentions(text string) iter.Seq[mention] {
	return func(yield func(mention) bool) {
		for i := 0; i < len(text); {
			if !digit(text[i]) {
				i++
				continue
			}
			m, next, ok := mentionAt(text, i)
			if ok && !yield(m) {
				return
			}
			i = next
		}
	}
}

// mentionAt is the mention whose first digit is at i. Where there is none, next
// is where to look for another.
func mentionAt(text string, i int) (m mention, next int, ok bool) {
	start, opens := opening(text, i)
	l := lexer{text, i}
	l.number()
	if !opens || tied(text[:start]) {
		return mention{}, l.at, false
	}
	m = mention{start: start, low: text[start:l.at]}
	m.join, m.high = l.second()
	next = l.at
	m.gap = l.gap()
	m.meaning, ok = meanings[l.unit()]
	m.end = l.at
	if !ok || !m.ordered(text[:start]) || !m.plain(text) {
		return mention{}, next, false
	}
	return m, m.end, true
}

// opening is where the number with its first digit at i begins, with its sign,
// and whether a number can begin there: it cannot in "P400", "1,500" or "1:2".
func opening(text string, i int) (start int, ok bool) {
	r, size := utf8.DecodeLastRuneInString(text[:i])
	if strings.ContainsRune("+-−±", r) {
		i -= size
		r, size = utf8.DecodeLastRuneInString(text[:i])
	}
	return i, size == 0 || blank(r) || strings.ContainsRune("([{\"'“‘~≈<>≤≥=|—"+block, r)
}

// blank reports whether r parts words without ending a text.
func blank(r rune) bool { return unicode.IsSpace(r) || string(r) == inline }

// ordered reports whether m has numbers that Parse would read, and whether what
// stands between two makes them a pair of one unit: a range from low to high,
// "2 or 3", "23 ± 2", and "and" only after "between" or "(": "at 15 and 23 °C"
// may be two matters.
func (m mention) ordered(before string) bool {
	low, high := m.values()
	if math.IsNaN(low) || math.IsNaN(high) || m.plusMinus() && m.high != "" {
		return false
	}
	switch strings.TrimSpace(m.join) {
	case "", "or", "±":
		return true
	case "and":
		word, _ := wordBefore(before)
		return word == "between" || strings.HasSuffix(before, "(")
	}
	return low <= high
}

// plusMinus reports whether m is of the form "±2 °C".
func (m mention) plusMinus() bool { return strings.HasPrefix(m.low, "±") }

// tolerance reports whether m is of the form "23 ± 2 °C".
func (m mention) tolerance() bool { return strings.TrimSpace(m.join) == "±" }

// values are the ends of m in its unit, the same where it has one number.
func (m mention) values() (low, high float64) {
	low = value(m.low)
	if m.high == "" {
		return low, low
	}
	return low, value(m.high)
}
