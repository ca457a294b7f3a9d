package quantity

import (
	"math"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// lexer takes a text apart from a place on.
type lexer struct {
	text string
	at   int
}

// take moves past n bytes and returns them.
func (l *lexer) take(n int) string {
	taken := l.text[l.at : l.at+n]
	l.at += n
	return taken
}

// while takes the runes for which ok is true.
func (l *lexer) while(ok func(rune) bool) string {
	rest := l.text[l.at:]
	if n := strings.IndexFunc(rest, func(r rune) bool { return !ok(r) }); n >= 0 {
		return l.take(n)
	}
	return l.take(len(rest))
}

func (l *lexer) gap() string { return l.while(unicode.IsSpace) }

// number takes digits, and points and commas between them, so that what is no
// number, such as "1,500" or "1.2.3", is taken whole.
func (l *lexer) number() string {
	rest, n := l.text[l.at:], 0
	for n < len(rest) && (digit(rest[n]) || (rest[n] == '.' || rest[n] == ',') && n > 0 && n+1 < len(rest) && digit(rest[n+1])) {
		n++
	}
	return l.take(n)
}

func digit(b byte) bool { return '0' <= b && b <= '9' }

// second takes what joins a second number to one, and the number: " to 32",
// "–25", "..10". Both are empty where none follows.
func (l *lexer) second() (join, number string) {
	start := l.at
	join = l.join()
	signed := l.at
	if r, size := l.rune(); strings.ContainsRune("+-−", r) {
		l.at += size
	}
	if join == "" || l.number() == "" {
		l.at = start
		return "", ""
	}
	return join, l.text[signed:l.at]
}

// join takes what may join two numbers: a dash, dots, "±" or a word.
func (l *lexer) join() string {
	start := l.at
	gap := l.gap()
	switch rest := l.text[l.at:]; {
	case strings.HasPrefix(rest, "..") || strings.HasPrefix(rest, "±"):
		l.at += 2
	case strings.HasPrefix(rest, "–"):
		l.at += len("–")
	case strings.HasPrefix(rest, "-") && gap == "":
		l.at++
		return "-"
	default:
		if word := l.while(unicode.IsLetter); gap == "" || word != "to" && word != "or" && word != "and" {
			l.at = start
			return ""
		}
	}
	l.gap()
	return l.text[start:l.at]
}

// unit takes a word that may be a unit, and returns it as Parse knows it.
func (l *lexer) unit() string {
	word := l.while(ofUnit)
	if word == "fl" || word == "US" {
		if l.gap() != "" {
			word += " " + l.while(ofUnit)
		}
	}
	return strings.ReplaceAll(word, "μ", "µ")
}

func ofUnit(r rune) bool {
	return unicode.IsLetter(r) || unicode.IsNumber(r) || strings.ContainsRune("°º%/·⋅^*_", r)
}

func (l *lexer) rune() (r rune, size int) { return utf8.DecodeRuneInString(l.text[l.at:]) }

// value is a number as it is written in a text.
func value(written string) float64 {
	x, err := strconv.ParseFloat(strings.ReplaceAll(strings.TrimPrefix(written, "±"), "−", "-"), 64)
	if err != nil {
		return math.NaN()
	}
	return x
}
