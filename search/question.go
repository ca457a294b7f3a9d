package search

import (
	"slices"
	"strings"
)

// question is what was typed, as the notes can answer it.
type question struct {
	words   []wanted // the unquoted words, small ones too
	phrases []string
	without []part
	suggest string // the question mended, "" where nothing was
	typing  bool   // somebody is typing it still, and looks for a name
}

// wanted is one word of a question.
type wanted struct {
	text  string   // as it was meant
	stems []string // any of which will do; none for a small word
	start string   // with what a word of a note's names may start; "" for any but the last word
}

// understand turns what was typed into words that the notes have.
func (v *vocabulary) understand(t typed, typing bool) question {
	q := question{typing: typing}
	mended, changed := make([]string, len(t.parts)), false
	for i, p := range t.parts {
		mended[i] = p.String()
		switch {
		case p.exclude:
			q.without = append(q.without, p)
		case p.phrase && len(v.stemsOf(p.text)) == 0:
			// Small words alone are everywhere and nowhere.
		case p.phrase:
			q.phrases = append(q.phrases, p.text)
		default:
			words, slip := v.mean(p.text, i == len(t.parts)-1)
			if slip {
				mended[i], changed = texts(words), true
			}
			q.words = append(q.words, words...)
		}
	}
	if changed {
		q.suggest = strings.Join(mended, " ")
	}
	v.join(q.words)
	return q
}

// texts puts words together to what whole compares names with.
func texts(words []wanted) string {
	var out []string
	for _, w := range words {
		out = append(out, w.text)
	}
	return strings.Join(out, " ")
}

// mean reads text between two spaces: one word, or several with hyphens. Slip
// tells that it does not mean what it says.
func (v *vocabulary) mean(text string, last bool) (words []wanted, slip bool) {
	split := v.split(text)
	for i, word := range split {
		meant := v.meant(word, last && i == len(split)-1)
		if len(meant) > 1 || meant[0].text != word {
			slip = true
		}
		words = append(words, meant...)
	}
	return words, slip
}

// meant finds out what a word means. A word that no note has is, in this order,
// unfinished (where it is the last), two words, or misspelt.
func (v *vocabulary) meant(word string, last bool) []wanted {
	w := wanted{text: word, stems: v.stemsOf(word)}
	if last {
		w.start = word
	}
	if len(w.stems) == 0 || v.known(w.stems) {
		return []wanted{w}
	}
	if last {
		if longer := v.complete(word); longer != nil {
			w.stems = v.stemsOf(longer...)
			return []wanted{w}
		}
	}
	if a, b, ok := v.parted(word); ok {
		return []wanted{{text: a, stems: v.stemsOf(a)}, {text: b, stems: v.stemsOf(b)}}
	}
	if likely := v.correct(word, last); likely != nil {
		w.text, w.stems = likely[0], v.stemsOf(likely...)
		if last {
			w.start = w.text
		}
		return []wanted{w}
	}
	return []wanted{w}
}

// join lets two words that the notes write as one be found so: "over spray".
func (v *vocabulary) join(words []wanted) {
	for i := 1; i < len(words); i++ {
		a, b := &words[i-1], &words[i]
		if one := v.stemsOf(a.text + b.text); len(a.stems) > 0 && len(b.stems) > 0 && v.known(one) {
			a.stems, b.stems = slices.Concat(a.stems, one), slices.Concat(b.stems, one)
		}
	}
}
