package search

import (
	"slices"
	"strings"

	"github.com/blevesearch/bleve/v2/analysis"
	"github.com/blevesearch/bleve/v2/analysis/analyzer/custom"
	"github.com/blevesearch/bleve/v2/analysis/analyzer/keyword"
	"github.com/blevesearch/bleve/v2/analysis/lang/en"
	"github.com/blevesearch/bleve/v2/analysis/token/edgengram"
	"github.com/blevesearch/bleve/v2/analysis/token/lowercase"
	"github.com/blevesearch/bleve/v2/analysis/tokenizer/unicode"
	"github.com/blevesearch/bleve/v2/mapping"
	index "github.com/blevesearch/bleve_index_api"

	"coatwright/content"
)

// Fields of the index. The text of the notes is in the notes; nothing is
// stored here.
const (
	fieldTitle      = "title"       // stems of the title
	fieldNames      = "names"       // stems of the other names, and of what a fault is seen as
	fieldHeads      = "heads"       // stems of the headings
	fieldBody       = "body"        // stems of the body, with places for phrases and fragments
	fieldTitleStart = "title-start" // every beginning of every word of the title
	fieldNameStart  = "name-start"  // the same of the other names
	fieldTitleExact = "title-exact" // the words of the title as one term
	fieldTitleWhole = "title-whole" // the stems of the title as one term
	fieldNameWhole  = "name-whole"  // the stems of each other name, and of each thing seen, as one term
	fieldWord       = "word"        // words as they are written, for the vocabulary
	fieldKind       = "kind"
)

// Analyzers, from text to terms.
const (
	analyzerStem  = "coatwright-stem"  // for finding
	analyzerWord  = "coatwright-word"  // folded, with small words, not stemmed
	analyzerStart = "coatwright-start" // beginnings of words
)

// Lengths of the beginnings that are indexed, in letters. A longer one is a
// whole word for every purpose here.
const (
	minStart = 1
	maxStart = 20
)

// document is a note as bleve indexes it.
type document struct {
	Title      string   `json:"title"`
	Names      []string `json:"names"`
	Heads      []string `json:"heads"`
	Body       string   `json:"body"`
	TitleStart string   `json:"title-start"`
	NameStart  []string `json:"name-start"`
	TitleExact string   `json:"title-exact"`
	TitleWhole string   `json:"title-whole"`
	NameWhole  []string `json:"name-whole"`
	Word       []string `json:"word"`
	Kind       string   `json:"kind"`
}

func newDocument(n *content.Note, m mapping.IndexMapping) document {
	stem := m.AnalyzerNamed(analyzerStem)
	d := document{
		Title: n.Title, TitleStart: n.Title,
		TitleExact: whole(n.Title, m.AnalyzerNamed(analyzerWord)), TitleWhole: whole(n.Title, stem),
		Names: slices.Concat(n.Also, n.SeenAs, []string{n.Says}), NameStart: n.Also,
		Body: n.Text, Kind: n.Kind,
	}
	for _, h := range n.Heads {
		d.Heads = append(d.Heads, h.Text)
	}
	for _, name := range slices.Concat(n.Also, n.SeenAs) {
		d.NameWhole = append(d.NameWhole, whole(name, stem))
	}
	d.Word = append([]string{n.Title, n.Text}, d.Names...)
	return d
}

// whole folds a name to one term: "Recoat windows" and "recoat-window" have the
// same stems. Of a grit's two terms it takes the first.
func whole(name string, by analysis.Analyzer) string {
	var terms []string
	place := 0
	for _, t := range by.Analyze([]byte(name)) {
		if t.Position != place {
			terms = append(terms, string(t.Term))
		}
		place = t.Position
	}
	return strings.Join(terms, " ")
}

// newMapping tells bleve how to index a document.
func newMapping() (*mapping.IndexMappingImpl, error) {
	m := mapping.NewIndexMapping()
	m.ScoringModel = index.BM25Scoring
	m.DefaultMapping = mapping.NewDocumentStaticMapping()
	if err := addAnalyzers(m); err != nil {
		return nil, err
	}
	for name, analyzer := range map[string]string{
		fieldTitle: analyzerStem, fieldNames: analyzerStem, fieldHeads: analyzerStem, fieldBody: analyzerStem,
		fieldTitleStart: analyzerStart, fieldNameStart: analyzerStart,
		fieldTitleExact: keyword.Name, fieldTitleWhole: keyword.Name, fieldNameWhole: keyword.Name,
		fieldWord: analyzerWord, fieldKind: keyword.Name,
	} {
		m.DefaultMapping.AddFieldMappingsAt(name, &mapping.FieldMapping{
			Type: "text", Analyzer: analyzer, Index: true,
			IncludeTermVectors: analyzer == analyzerStem,
			DocValues:          name == fieldKind,
			SkipFreqNorm:       name == fieldWord, // it is read, never searched
		})
	}
	return m, nil
}

func addAnalyzers(m *mapping.IndexMappingImpl) error {
	err := m.AddCustomTokenFilter("coatwright_start", map[string]any{
		"type": edgengram.Name, "min": float64(minStart), "max": float64(maxStart),
	})
	if err != nil {
		return err
	}
	fold := []any{lowercase.Name, en.PossessiveName, filterSpelling, filterGrit}
	for name, more := range map[string][]any{
		analyzerStem:  {filterStop, en.SnowballStemmerName},
		analyzerWord:  {},
		analyzerStart: {"coatwright_start"},
	} {
		err := m.AddCustomAnalyzer(name, map[string]any{
			"type": custom.Name, "tokenizer": unicode.Name, "token_filters": slices.Concat(fold, more),
		})
		if err != nil {
			return err
		}
	}
	return nil
}
