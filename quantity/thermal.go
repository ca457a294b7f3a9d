package quantity

import (
	"math"
	"strings"
)

// meant is what m measures, and in what unit. It is not ok where the text leaves
// that in doubt.
func (m mention) meant(text string) (meant meaning, ok bool) {
	if m.of != temperature && m.of != difference {
		return m.meaning, true
	}
	d := m.thermal(text)
	if d == nil {
		return meaning{}, false
	}
	u, ok := d.unit(m.unit.name)
	return meaning{d, u}, ok
}

// thermal is what a number of degrees measures: a temperature, or the
// difference of two, which becomes other degrees without their zero. It is nil
// where the text leaves that in doubt:
//
//   - Kelvins and "±2 °C" are differences, but more than 100 K may be a
//     temperature.
//   - Words around say it: "each 10 °C", "3 °C above" and "a rise of 10 °C" are
//     differences, "at 5 °C" is a temperature, "at 5 °C more" is in doubt.
//   - With no such word, what stands alone or is further than 10 K from zero is
//     a temperature.
//   - Degrees that are no kelvins and differ by more than 30 K may be anything.
func (m mention) thermal(text string) *dimension {
	low, high := m.values()
	kelvins := max(math.Abs(low), math.Abs(high)) * m.unit.factor
	before, after := m.lead(text), wordAfter(text[m.end:])
	switch {
	case m.of == difference:
		return only(difference, kelvins <= 100)
	case m.plusMinus():
		return difference
	case before.differs() || changes[after], comparing[after] || differing[before.word] || before.word == "within" && m.high == "":
		return only(difference, kelvins <= 30 && !reading[before.word] && !bounding[before.word])
	case either[after] && !reading[before.word], before.word == "minus", before.word == "plus":
		return nil
	case before.reads(), kelvins > 10, m.alone(text):
		return temperature
	}
	return nil
}

// only is d where ok.
func only(d *dimension, ok bool) *dimension {
	if ok {
		return d
	}
	return nil
}

// lead is what leads to a quantity: the word before it, and the one before that.
type lead struct{ word, earlier string }

// differs reports whether a difference is named: "a rise of 3 °C", "rise: 3 °C".
func (l lead) differs() bool {
	return (linking[l.word] || l.word == "of") && changes[l.earlier] || changes[l.word]
}

// reads reports whether a temperature is: "at 5 °C", "dew point of 5 °C".
func (l lead) reads() bool {
	return reading[l.word] || linking[l.word] || spots[l.word] || l.word == "of" && spots[l.earlier]
}

// lead is what leads to m, without vague words: "at about", "by up to". A colon
// after a label is passed over.
func (m mention) lead(text string) lead {
	rest := strings.TrimSuffix(strings.TrimRightFunc(text[:m.start], blank), ":")
	word, rest := wordBefore(rest)
	for {
		earlier, before := wordBefore(rest)
		switch {
		case vague[word]:
			word, rest = earlier, before
		case bounds[earlier+" "+word]:
			word, rest = wordBefore(before)
		default:
			return lead{word, earlier}
		}
	}
}

// alone reports whether nothing stands before m, and a stop behind, as in the
// cell of a table.
func (m mention) alone(text string) bool {
	before := strings.TrimRightFunc(text[:m.start], blank)
	return (before == "" || strings.HasSuffix(before, block)) && stops(text[m.end:])
}

var (
	vague  = set("about around roughly nearly some only just approximately")
	bounds = map[string]bool{"at least": true, "at most": true, "up to": true}

	linking = set("is are was were")
	reading = set("at from between below above reads reach reaches")
	spots   = set("air surface room part temperature point bulb booth shop limit film metal")

	// bounding words stand before either.
	bounding = set("to than over under until near down")

	// differing words stand before a difference.
	differing = set("by each every per another extra further add adds adding lose loses gain gains")

	// comparing words follow a difference, changes also name one.
	comparing = set("above below more less")
	changes   = set("warmer cooler colder hotter higher lower apart rise fall drop difference margin gap swing change " +
		"step steps increase decrease")

	// either word may go with what follows it: "15 °C over the air", "15 °C over night".
	either = set("over under up down off of")
)
