// Package search finds notes by what a painter types.
//
// It owns the full-text index: how words are cut, folded and stemmed, how a
// question is read, how slips of spelling are mended, and in which order notes
// answer. The index is derived from the notes, so it is never worth repairing:
// Open builds it anew whenever it is missing, damaged or of other notes.
//
// Nothing that is typed is an error. There is no query language beyond quotes
// around a phrase and a minus before what must not occur.
package search

import (
	"cmp"
	"context"
	"html/template"
	"slices"

	"github.com/blevesearch/bleve/v2"
	"github.com/blevesearch/bleve/v2/search/query"

	"coatwright/content"
)

// defaultLimit is how many hits a query gets that names no number.
const defaultLimit = 20

// Index is an open index. It is safe for concurrent use.
type Index struct {
	bleve bleve.Index
	words *vocabulary
	notes map[string]*content.Note // by path
}

// Query is a question to the notes.
type Query struct {
	Text  string // as typed
	Kind  string // only notes of this kind; "" for all
	Limit int    // most hits wanted; 20 where it is not positive
}

// Result answers a Query.
type Result struct {
	Total   int         // notes found, of the asked kind
	Hits    []Hit       // the best of them, best first
	Kinds   []KindCount // what the text alone finds, in the order of content.Kinds
	Suggest string      // the question as it was probably meant, "" when it is as typed
}

// KindCount is how many notes of a kind were found.
type KindCount struct {
	Kind  string
	Count int
}

// Hit is a note that was found.
type Hit struct {
	Path     string
	Kind     string
	Title    string
	Fragment template.HTML // where it was found, the words in <mark>, all else escaped
	Score    float64       // of use only against other hits of the same search
}

// Close closes the index. No search may run or follow.
func (ix *Index) Close() error { return ix.bleve.Close() }

// Search answers q. An error is one of reading the index or of ctx, never of
// what was typed.
func (ix *Index) Search(ctx context.Context, q Query) (Result, error) {
	if q.Limit <= 0 {
		q.Limit = defaultLimit
	}
	asked := ix.words.understand(parse(q.Text), false)
	result := Result{Suggest: asked.suggest}
	text, all, err := ix.find(ctx, asked, q.Limit, true)
	if err != nil || all == nil {
		return result, err
	}
	result.Kinds = kindsOf(all)
	found := all
	if q.Kind != "" {
		if found, err = ix.run(ctx, ofKind(text, q.Kind), q.Limit, true); err != nil {
			return Result{}, err
		}
	}
	result.Total = int(found.Total)
	result.Hits = ix.hits(found)
	return result, nil
}

// Prefix answers as one types: the last word of text may be unfinished, and a
// title or another name with a word that starts so goes before all else. At
// most limit hits come back; their fragments are summaries.
func (ix *Index) Prefix(ctx context.Context, text string, limit int) ([]Hit, error) {
	asked := ix.words.understand(parse(text), true)
	_, found, err := ix.find(ctx, asked, max(limit, 0), false)
	if err != nil || found == nil {
		return nil, err
	}
	return ix.hits(found), nil
}

// find looks for notes with enough of the question's words and, where there are
// none, for notes with any. It returns the query that found them with what it
// found; both are nil for a question that asks nothing.
func (ix *Index) find(ctx context.Context, asked question, limit int, full bool) (query.Query, *bleve.SearchResult, error) {
	text := asked.query(false)
	if text == nil {
		return nil, nil, nil
	}
	found, err := ix.run(ctx, text, limit, full)
	if err == nil && found.Total == 0 {
		text = asked.query(true)
		found, err = ix.run(ctx, text, limit, full)
	}
	return text, found, err
}

// run puts a query to the index, in full with the places of the words and with
// counts by kind.
func (ix *Index) run(ctx context.Context, of query.Query, limit int, full bool) (*bleve.SearchResult, error) {
	request := bleve.NewSearchRequestOptions(of, limit, 0, false)
	request.SortBy([]string{"-_score", "_id"})
	if full {
		request.IncludeLocations = true
		request.AddFacet(fieldKind, bleve.NewFacetRequest(fieldKind, len(content.Kinds)))
	}
	return ix.bleve.SearchInContext(ctx, request)
}

// hits shows what was found.
func (ix *Index) hits(found *bleve.SearchResult) []Hit {
	var hits []Hit
	for _, match := range found.Hits {
		n := ix.notes[match.ID]
		hits = append(hits, Hit{n.Path(), n.Kind, n.Title, fragment(n, match.Locations[fieldBody]), match.Score})
	}
	return hits
}

// kindsOf are the counts of a full search, in the order of content.Kinds.
func kindsOf(found *bleve.SearchResult) []KindCount {
	var counts []KindCount
	for _, term := range found.Facets[fieldKind].Terms.Terms() {
		counts = append(counts, KindCount{term.Term, term.Count})
	}
	slices.SortFunc(counts, func(a, b KindCount) int {
		return cmp.Compare(slices.Index(content.Kinds, a.Kind), slices.Index(content.Kinds, b.Kind))
	})
	return counts
}
