package search

import (
	"cmp"
	"html"
	"html/template"
	"slices"
	"strings"

	blevesearch "github.com/blevesearch/bleve/v2/search"

	"coatwright/content"
)

// fragmentLength is about how much of a body a hit shows, in bytes: two lines
// on a phone.
const fragmentLength = 220

// span is a found word in a body, in bytes.
type span struct {
	start, end int
	term       string
}

// fragment shows where in the note's body the found words are, or its summary
// where they are in its names only.
func fragment(n *content.Note, found blevesearch.TermLocationMap) template.HTML {
	spans := spansOf(found, len(n.Text))
	if len(spans) == 0 {
		return template.HTML(html.EscapeString(cmp.Or(n.Summary, n.Says)))
	}
	start := best(spans)
	from, to := widen(n.Text, spans[start].start)
	return mark(n.Text, from, to, spans[start:])
}

// spansOf lists the found words from first to last. Those beyond the text are
// dropped: they are of no text that we have.
func spansOf(found blevesearch.TermLocationMap, length int) []span {
	var spans []span
	for term, places := range found {
		for _, p := range places {
			if s := (span{int(p.Start), int(p.End), term}); s.start < s.end && s.end <= length {
				spans = append(spans, s)
			}
		}
	}
	slices.SortFunc(spans, func(a, b span) int {
		return cmp.Or(cmp.Compare(a.start, b.start), cmp.Compare(a.end, b.end), cmp.Compare(a.term, b.term))
	})
	return apart(spans)
}

// apart drops each span that overlaps the one before it, as the two terms of a
// grit do.
func apart(spans []span) []span {
	end := 0
	return slices.DeleteFunc(spans, func(s span) bool {
		if s.start < end {
			return true
		}
		end = s.end
		return false
	})
}

// best is the first span of the passage with the most different words, and
// among those with the most words.
func best(spans []span) int {
	at, most := 0, 0
	for i, first := range spans {
		terms := map[string]bool{}
		score := 0
		for _, s := range spans[i:] {
			if s.end-first.start > fragmentLength {
				break
			}
			if !terms[s.term] {
				score += len(spans)
			}
			terms[s.term] = true
			score++
		}
		if score > most {
			at, most = i, score
		}
	}
	return at
}

// widen returns the passage of text around the word at start: from where its
// sentence starts, if that is near, and always of whole words.
func widen(text string, start int) (from, to int) {
	from = max(0, start-fragmentLength/3)
	if from > 0 {
		from = wordAfter(text, from, start)
	}
	for _, stop := range []string{". ", "! ", "? "} {
		if at := strings.LastIndex(text[from:start], stop); at >= 0 {
			from += at + len(stop)
		}
	}
	to = len(text)
	if end := max(from+fragmentLength, start); end < to {
		to = wordAfter(text, end, to)
	}
	return from, to
}

// wordAfter returns where the first word that starts in text[from:to] does, to
// when none does.
func wordAfter(text string, from, to int) int {
	if space := strings.IndexByte(text[from:to], ' '); space >= 0 {
		return from + space + 1
	}
	return to
}

// mark escapes text[from:to] with the spans in <mark>, and shows by dots that
// there is more of the text.
func mark(text string, from, to int, spans []span) template.HTML {
	var out strings.Builder
	if from > 0 {
		out.WriteString("… ")
	}
	for _, s := range spans {
		if s.end > to {
			break
		}
		out.WriteString(html.EscapeString(text[from:s.start]))
		out.WriteString("<mark>" + html.EscapeString(text[s.start:s.end]) + "</mark>")
		from = s.end
	}
	out.WriteString(html.EscapeString(strings.TrimSuffix(text[from:to], " ")))
	if to < len(text) {
		out.WriteString(" …")
	}
	return template.HTML(out.String())
}
