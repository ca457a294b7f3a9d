package search

import (
	"cmp"
	"slices"
	"strings"

	"github.com/blevesearch/bleve/v2"
	"github.com/blevesearch/bleve/v2/analysis"
)

// vocabulary is every word of the notes. It tells a slip from a word, and what
// was meant by it.
type vocabulary struct {
	words []entry // sorted by text
	stems map[string]bool
	word  analysis.Analyzer
	stem  analysis.Analyzer
}

// entry is a word as the notes write it, folded.
type entry struct {
	text  string
	notes uint64 // how many notes have it
}

// readVocabulary takes the words out of an index.
func readVocabulary(index bleve.Index) (*vocabulary, error) {
	v := &vocabulary{
		stems: map[string]bool{},
		word:  index.Mapping().AnalyzerNamed(analyzerWord),
		stem:  index.Mapping().AnalyzerNamed(analyzerStem),
	}
	dict, err := index.FieldDict(fieldWord)
	if err != nil {
		return nil, err
	}
	defer dict.Close()
	for {
		term, err := dict.Next()
		if err != nil {
			return nil, err
		}
		if term == nil {
			return v, nil
		}
		v.words = append(v.words, entry{term.Term, term.Count})
		for _, s := range v.stemsOf(term.Term) {
			v.stems[s] = true
		}
	}
}

// stemsOf returns what to look for in place of words, each stem once: nothing
// for a small word, two stems for a grit.
func (v *vocabulary) stemsOf(words ...string) []string {
	var stems []string
	for _, w := range words {
		for _, t := range v.stem.Analyze([]byte(w)) {
			if s := string(t.Term); !slices.Contains(stems, s) {
				stems = append(stems, s)
			}
		}
	}
	return stems
}

// split cuts text to folded words.
func (v *vocabulary) split(text string) []string {
	return strings.Fields(whole(text, v.word))
}

// known reports whether a note has one of the stems.
func (v *vocabulary) known(stems []string) bool {
	return slices.ContainsFunc(stems, func(s string) bool { return v.stems[s] })
}

// most is how many words are tried in place of one that no note has.
const most = 3

// complete returns the words that start with start, the commonest first.
func (v *vocabulary) complete(start string) []string {
	at, _ := slices.BinarySearchFunc(v.words, start, func(e entry, s string) int { return cmp.Compare(e.text, s) })
	end := at
	for end < len(v.words) && strings.HasPrefix(v.words[end].text, start) {
		end++
	}
	found := slices.Clone(v.words[at:end])
	slices.SortStableFunc(found, func(a, b entry) int { return cmp.Compare(b.notes, a.notes) })
	var out []string
	for _, e := range found[:min(len(found), most)] {
		out = append(out, e.text)
	}
	return out
}

// correct returns the words that a misspelt one may be, the likeliest first:
// with the fewest slips, then with the same first letter, then the commonest.
// Where unfinished is set the slip may be in the beginning of a longer word.
func (v *vocabulary) correct(word string, unfinished bool) []string {
	slips := allowed(word)
	if slips == 0 {
		return nil
	}
	type candidate struct {
		entry
		cost int
	}
	var found []candidate
	measure := newMeasure(word)
	for _, e := range v.words {
		full, start := measure.distances(e.text, slips)
		cost := 4 * full
		if unfinished && start < full {
			cost = min(cost, 4*start+2)
		}
		if e.text[0] != word[0] {
			cost++
		}
		if cost < 4*(slips+1) && !hasDigit(e.text) {
			found = append(found, candidate{e, cost})
		}
	}
	slices.SortStableFunc(found, func(a, b candidate) int {
		return cmp.Or(cmp.Compare(a.cost, b.cost), cmp.Compare(b.notes, a.notes))
	})
	var out []string
	for _, c := range found[:min(len(found), most)] {
		// A second guess must be as good as the first.
		if c.cost == found[0].cost {
			out = append(out, c.text)
		}
	}
	return out
}

// allowed is how many slips a word may have. In three letters any slip makes
// another word; a number has none.
func allowed(word string) int {
	switch n := len([]rune(word)); {
	case n < 4 || hasDigit(word):
		return 0
	case n < 7:
		return 1
	default:
		return 2
	}
}

func hasDigit(s string) bool { return strings.ContainsAny(s, "0123456789") }

// parted returns the two words that were written as one.
func (v *vocabulary) parted(word string) (a, b string, ok bool) {
	const shortest = 3
	for i := shortest; i+shortest <= len(word); i++ {
		if v.known(v.stemsOf(word[:i])) && v.known(v.stemsOf(word[i:])) {
			return word[:i], word[i:], true
		}
	}
	return "", "", false
}
