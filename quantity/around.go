package quantity

import (
	"regexp"
	"strings"
	"unicode"
	"unicode/utf8"
)

// What stands around a number decides whether it is a quantity, and of what.
// Wrong rewriting is worse than none, so what is not clear is none.

// tied reports whether what stands before a number ties it to another number
// that has no unit of its own: "2 × ", "10, ", "1 : ", "5 or ".
func tied(before string) bool {
	before = strings.TrimRightFunc(before, blank)
	if ended(before) {
		return false
	}
	if word, rest := wordBefore(before); joins[word] {
		rest = strings.TrimRight(rest, " ,")
		opens := rest == "" || strings.HasSuffix(rest, block)
		return opens && word != "by" || bareNumber(rest)
	}
	cut := strings.TrimRight(before, ",/:·*+=<>±×–—-")
	if cut != before && strings.HasSuffix(strings.TrimRight(cut, " \t"), "\n") {
		return false // the mark of a list
	}
	return bareNumber(cut)
}

// joins are the words that can tie two numbers.
var joins = set("or and to by x")

// ended reports whether text ends a sentence or a label: "Coat 2: ", but not
// "1 : " or "5 .. ".
func ended(text string) bool {
	switch {
	case strings.HasSuffix(text, ";"):
		return true
	case strings.HasSuffix(text, ":"):
		return len(text) > 1 && digit(text[len(text)-2])
	}
	return strings.HasSuffix(text, ".") && !strings.HasSuffix(text, "..")
}

// bareNumber reports whether text ends in a number without a unit.
func bareNumber(text string) bool {
	text = strings.TrimRightFunc(text, blank)
	rest := strings.TrimRight(text, "0123456789.,:/×-−–")
	word := text[len(rest):]
	if !strings.ContainsAny(word, "0123456789") {
		return false
	}
	before, _ := utf8.DecodeLastRuneInString(rest)
	return !unicode.IsLetter(before)
}

// hanging is behind a unit that is not whole ("m" and a raised 2, "15 mm-wide",
// "10 °C per hour"), or that a second number shares ("15 °C to 20.").
var hanging = regexp.MustCompile(`^(?:` +
	inline + `*[\pL\pN]` +
	`|[-'’][\pL\pN]` +
	`|` + gap + `*[/·⋅*]` +
	`|` + gap + `+per\b` +
	`|(?:` + gap + `*(?:\.\.|[-–×])` + gap + `*|` + gap + `+(?:to|or|and|by|x)` + gap + `+)` +
	`[-+−]?\d+(?:\.\d+)?` + gap + `*(?:$|\.(?:\D|$)|[,;:!?)\]` + block + `]))`)

// reach is how many bytes behind a quantity are looked at: a long text costs no
// more for each than a short one.
const reach = 120

func window(text string) string { return text[:min(len(text), reach)] }

// gap is what parts words, in a regular expression.
const gap = `[\s\p{Zs}` + inline + `]`

// plain reports whether the unit of m is plainly one. A name of one letter
// needs a gap before it and no counting word before the number ("coat 3 L",
// "2K"); one that may also be a word or a label needs more.
func (m mention) plain(text string) bool {
	name := m.unit.name
	if len(name) > 1 && name != "in" && name != "bar" {
		return true
	}
	if word, _ := wordBefore(text[:m.start]); counting[word] && !strings.Contains(m.low, ".") {
		return false
	}
	if m.gap == "" && len(name) == 1 {
		return false
	}
	switch after := text[m.end:]; name {
	case "in":
		return stops(after) || sizes[wordAfter(after)]
	case "bar", "C", "F", "K":
		return wordAfter(after) == "" || joining[wordAfter(after)]
	}
	return true
}

// stops reports whether a sentence or a part of it ends where text begins.
func stops(text string) bool {
	r, size := utf8.DecodeRuneInString(strings.TrimLeftFunc(text, blank))
	return size == 0 || strings.ContainsRune(".,;:!?)]"+block, r)
}

// wordBefore is the word that ends text, in lower case, and what is before it.
// It is empty where something other than a letter ends the text.
func wordBefore(text string) (word, rest string) {
	text = strings.TrimRightFunc(text, blank)
	rest = strings.TrimRightFunc(text, unicode.IsLetter)
	return strings.ToLower(text[len(rest):]), rest
}

// wordAfter is the word, or the number, that begins text, in lower case. It is
// empty where a stop or the end comes first.
func wordAfter(text string) string {
	text = strings.TrimLeftFunc(text, blank)
	if number := strings.TrimLeft(text, "+-−±"); number != "" && digit(number[0]) {
		text = number
	}
	rest := strings.TrimLeftFunc(text, func(r rune) bool { return unicode.IsLetter(r) || unicode.IsDigit(r) })
	return strings.ToLower(text[:len(text)-len(rest)])
}

func set(words string) map[string]bool {
	s := map[string]bool{}
	for _, w := range strings.Fields(words) {
		s[w] = true
	}
	return s
}

var (
	// counting words stand before a number that only counts or labels.
	counting = set("step steps coat coats table figure fig chapter section page note layer line row " +
		"column class grade type size no number nr version round day week item point iso astm en din plan")

	// sizes follow inches: "2 in wide".
	sizes = set("wide long deep high thick tall across apart square round diameter dia")

	// joining words follow what stands for itself: "3 K above", "2 bar at the gun",
	// where "2 bar clamps" and "2 K clear" are things.
	joining = set("a an the and or but to of at in on by for from with without when while where if than as is are was " +
		"were be it so until till before after during through up down off over under above below more less warmer " +
		"cooler colder hotter higher lower apart too")
)
