package search

import (
	"strings"

	"github.com/blevesearch/bleve/v2/analysis"
	"github.com/blevesearch/bleve/v2/analysis/lang/en"
	"github.com/blevesearch/bleve/v2/analysis/token/stop"
	"github.com/blevesearch/bleve/v2/registry"
)

// ukWords are US spellings with the UK ones that they become.
var ukWords = map[string]string{
	"liter": "litre", "liters": "litres", "matte": "matt", "vapor": "vapour",
	"vapors": "vapours", "odor": "odour", "odors": "odours", "tire": "tyre", "tires": "tyres",
	"gage": "gauge", "labeled": "labelled", "catalog": "catalogue",
}

// ukStarts are the same for all words that start so: colored, colors, ...
var ukStarts = []struct{ us, uk string }{
	{"aluminum", "aluminium"}, {"color", "colour"}, {"discolor", "discolour"}, {"center", "centre"},
	{"fiber", "fibre"}, {"gray", "grey"}, {"mold", "mould"}, {"sulfur", "sulphur"}, {"plow", "plough"},
}

// ukEnds are the same for the ends of words: atomize, atomized, ...
var ukEnds = []struct{ us, uk string }{
	{"ize", "ise"}, {"izes", "ises"}, {"ized", "ised"}, {"izer", "iser"}, {"izers", "isers"}, {"izing", "ising"},
	{"lyze", "lyse"}, {"lyzed", "lysed"}, {"lyzing", "lysing"},
}

// uk returns the UK spelling of a word in lower case.
func uk(word string) string {
	if w, ok := ukWords[word]; ok {
		return w
	}
	for _, start := range ukStarts {
		if rest, ok := strings.CutPrefix(word, start.us); ok {
			word = start.uk + rest
			break
		}
	}
	for _, end := range ukEnds {
		// "size" and "prize" are themselves.
		if rest, ok := strings.CutSuffix(word, end.us); ok && len(rest) > 2 {
			return rest + end.uk
		}
	}
	return word
}

// smallWords are the words of bleve's English stop list that mean something in
// a paint shop: to tack off, to paint over, to run down, to sand between coats.
var smallWords = []string{"off", "over", "under", "up", "down", "out", "before", "after", "between", "no", "not", "same"}

// Names of the token filters that this package adds to bleve's.
const (
	filterSpelling = "coatwright_spelling"
	filterStop     = "coatwright_stop"
	filterGrit     = "coatwright_grit"
)

func init() {
	for name, filter := range map[string]analysis.TokenFilter{
		filterSpelling: filterFunc(foldSpelling),
		filterStop:     stop.NewStopTokensFilter(stopWords()),
		filterGrit:     filterFunc(splitGrit),
	} {
		err := registry.RegisterTokenFilter(name, func(map[string]any, *registry.Cache) (analysis.TokenFilter, error) {
			return filter, nil
		})
		if err != nil {
			panic("search: " + err.Error())
		}
	}
}

// filterFunc is a function as a token filter.
type filterFunc func(analysis.TokenStream) analysis.TokenStream

// Filter calls f.
func (f filterFunc) Filter(tokens analysis.TokenStream) analysis.TokenStream { return f(tokens) }

// foldSpelling is uk as a token filter.
func foldSpelling(tokens analysis.TokenStream) analysis.TokenStream {
	for _, t := range tokens {
		t.Term = []byte(uk(string(t.Term)))
	}
	return tokens
}

// splitGrit adds 600 beside p600, since a paper is asked for by either.
func splitGrit(tokens analysis.TokenStream) analysis.TokenStream {
	out := make(analysis.TokenStream, 0, len(tokens))
	for _, t := range tokens {
		out = append(out, t)
		if number, ok := strings.CutPrefix(string(t.Term), "p"); ok && isNumber(number) {
			plain := *t
			plain.Term = []byte(number)
			out = append(out, &plain)
		}
	}
	return out
}

func isNumber(s string) bool {
	return s != "" && strings.Trim(s, "0123456789") == ""
}

// stopWords are the words that are not searched for.
func stopWords() analysis.TokenMap {
	words := analysis.NewTokenMap()
	if err := words.LoadBytes(en.EnglishStopWords); err != nil {
		panic("search: " + err.Error())
	}
	for _, w := range smallWords {
		delete(words, w)
	}
	for w := range words {
		if strings.HasSuffix(w, "n't") {
			words.AddToken(strings.Replace(w, "'", "", 1)) // wont, dont: nobody types the mark
		}
	}
	return words
}
