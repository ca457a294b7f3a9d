package search

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// Limits of a question. A painter's longest are a sentence; what is beyond them
// was pasted by mistake, and would only cost time.
const (
	maxText  = 300 // bytes
	maxWords = 16  // words, phrases and exclusions together
)

// typed is a question as it was typed.
type typed struct {
	parts []part
}

// part is a word or a quoted phrase.
type part struct {
	text    string
	phrase  bool // it stood in quotes
	exclude bool // a minus stood before it
}

// String is the part as it is typed.
func (p part) String() string {
	text := p.text
	if p.phrase {
		text = `"` + text + `"`
	}
	if p.exclude {
		text = "-" + text
	}
	return text
}

// quotes folds the quotation marks and minus signs that phones and word
// processors put in place of the plain ones.
var quotes = strings.NewReplacer("“", `"`, "”", `"`, "„", `"`, "«", `"`, "»", `"`, "−", "-", "–", "-", "’", "'")

// parse reads what was typed. Anything can be read: a quote that is never
// closed is no quote, a minus that stands alone or before a number is no minus.
func parse(text string) typed {
	rest := strings.TrimSpace(quotes.Replace(cut(text)))
	var t typed
	for rest != "" && len(t.parts) < maxWords {
		var p part
		p, rest = next(rest)
		if p.text != "" {
			t.parts = append(t.parts, p)
		}
		rest = strings.TrimSpace(rest)
	}
	return t
}

// cut returns valid text of at most maxText bytes, cut between two words where
// it has any.
func cut(text string) string {
	if len(text) > maxText {
		text = text[:maxText]
		if at := strings.LastIndexFunc(text, unicode.IsSpace); at > 0 {
			text = text[:at]
		}
	}
	return strings.ToValidUTF8(text, "")
}

// next takes the first part off text, which does not start with a space.
func next(text string) (p part, rest string) {
	if after, minus := strings.CutPrefix(text, "-"); minus {
		if r, _ := utf8.DecodeRuneInString(after); r == '"' || unicode.IsLetter(r) {
			p.exclude, text = true, after
		}
	}
	if after, quoted := strings.CutPrefix(text, `"`); quoted {
		if inside, beyond, closed := strings.Cut(after, `"`); closed {
			p.text, p.phrase = strings.TrimSpace(inside), true
			return p, beyond
		}
		return p, after
	}
	end := strings.IndexFunc(text, func(r rune) bool { return unicode.IsSpace(r) || r == '"' })
	if end < 0 {
		end = len(text)
	}
	p.text = text[:end]
	return p, text[end:]
}
