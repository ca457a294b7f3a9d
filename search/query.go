package search

import (
	"slices"
	"strings"

	"github.com/blevesearch/bleve/v2"
	"github.com/blevesearch/bleve/v2/search/query"
)

// weight is what a match in a field is worth beside one in the body.
type weight struct {
	field string
	boost float64
}

// Weights, found by trying them against testdata/rank.txt: the ranks are much the
// same for half or twice of most of them. A name is worth more than a mention,
// and the whole title more than all else.
var (
	stemWeights   = []weight{{fieldTitle, 5}, {fieldNames, 7}, {fieldHeads, 2}, {fieldBody, 2}}
	startWeights  = []weight{{fieldTitleStart, 1}, {fieldNameStart, 0.5}}
	typingWeights = []weight{{fieldTitleStart, 12}, {fieldNameStart, 6}}
	exactWeight   = weight{fieldTitleExact, 60}
	wholeWeights  = []weight{{fieldTitleWhole, 9}, {fieldNameWhole, 20}}
	orderWeights  = []weight{{fieldTitle, 4}, {fieldNames, 4}, {fieldBody, 1}}
)

// query builds the question for bleve: for notes with enough of its words, or
// when loose with any. It is nil when nothing is asked for.
func (q question) query(loose bool) query.Query {
	var words []query.Query
	for _, w := range q.words {
		if of := w.query(q.typing); of != nil {
			words = append(words, of)
		}
	}
	if len(words) == 0 && len(q.phrases) == 0 {
		return nil
	}
	all := bleve.NewBooleanQuery()
	if len(words) > 0 {
		some := bleve.NewDisjunctionQuery(words...)
		some.SetMin(1)
		if !loose {
			some.SetMin(float64(q.enough(len(words))))
		}
		all.AddMust(some)
		all.AddShould(q.named()...)
	}
	for _, p := range q.phrases {
		all.AddMust(phrase(p, orderWeights))
	}
	for _, p := range q.without {
		all.AddMustNot(phrase(p.text, stemWeights))
	}
	return all
}

// enough is how many of a question's words a note must have to answer it: two
// in five. People write "went" and "next day", and a note that has more of the
// words comes first in any case. What is being typed is a name, and has them
// all.
func (q question) enough(words int) int {
	if q.typing {
		return words
	}
	return (2*words + 4) / 5
}

// named prefers notes that the question calls by name, whole or among other
// words, and notes that have its words in their order.
func (q question) named() []query.Query {
	words := slices.DeleteFunc(slices.Clone(q.words), func(w wanted) bool { return len(w.stems) == 0 })
	runs := runsOf(words)
	var names []query.Query
	for _, run := range runs {
		share := float64(len(run)) / float64(len(words))
		for _, in := range wholeWeights {
			// About one of these terms will match; see wanted.query.
			names = append(names, term(wholeOf(run), in, share*share*float64(len(runs)*len(wholeWeights))))
		}
	}
	names = append(names, term(texts(q.words), exactWeight, float64(len(names))))
	out := []query.Query{bleve.NewDisjunctionQuery(names...)}
	if len(words) > 1 {
		out = append(out, phrase(texts(q.words), orderWeights))
	}
	return out
}

// longestName is of how many words a name may be to be seen inside a longer
// question.
const longestName = 4

// runsOf returns all that may be a name: every few neighbouring words, and all.
func runsOf(words []wanted) [][]wanted {
	var runs [][]wanted
	for i := range words {
		for j := i + 1; j <= min(len(words), i+longestName); j++ {
			runs = append(runs, words[i:j])
		}
	}
	if len(words) > longestName {
		runs = append(runs, words)
	}
	return runs
}

// wholeOf is what a name of these words is indexed as.
func wholeOf(words []wanted) string {
	var stems []string
	for _, w := range words {
		stems = append(stems, w.stems[0])
	}
	return strings.Join(stems, " ")
}

// query asks for one word, nil for a small word.
func (w wanted) query(typing bool) query.Query {
	starts := startWeights
	if typing {
		starts = typingWeights
	}
	var fields []query.Query
	for _, stem := range w.stems {
		for _, in := range stemWeights {
			// bleve scales a sum by the share of its terms that matched. A note
			// has one of several stems, and is worth no less for that.
			fields = append(fields, term(stem, in, float64(len(w.stems))))
		}
	}
	if w.start != "" && (typing || len(w.stems) > 0) {
		for _, in := range starts {
			fields = append(fields, term(w.start, in, 1))
		}
	}
	if len(fields) == 0 {
		return nil
	}
	return bleve.NewDisjunctionQuery(fields...)
}

func term(text string, in weight, boost float64) query.Query {
	t := bleve.NewTermQuery(text)
	t.SetField(in.field)
	t.SetBoost(in.boost * boost)
	return t
}

// phrase asks for words in their order, small ones aside.
func phrase(text string, in []weight) query.Query {
	var fields []query.Query
	for _, w := range in {
		p := bleve.NewMatchPhraseQuery(text)
		p.SetField(w.field)
		p.SetBoost(w.boost)
		fields = append(fields, p)
	}
	return bleve.NewDisjunctionQuery(fields...)
}

// ofKind narrows a query to the notes of a kind.
func ofKind(text query.Query, kind string) query.Query {
	if kind == "" {
		return text
	}
	only := bleve.NewBooleanQuery()
	only.AddMust(text)
	only.AddFilter(term(kind, weight{fieldKind, 1}, 1))
	return only
}
