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
	found, err := ix.find(ctx, asked, q, true)
	if err != nil || found == nil {
		return result, err
	}
	result.Total = int(found.Total)
	for _, match := range found.Hits {
		if note := ix.notes[match.ID]; note != nil {
			marked := fragment(note, match.Locations[fieldBody])
			result.Hits = append(result.Hits, Hit{note.Path(), note.Kind, note.Title, marked, match.Score})
		}
	}
	result.Kinds, err = ix.kinds(ctx, asked, q, found)
	return result, err
}

// Prefix answers as one types: the last word of text may be unfinished, and a
// title or another name that starts with it goes before all else. At most limit
// hits come back; their fragments are summaries.
func (ix *Index) Prefix(ctx context.Context, text string, limit int) ([]Hit, error) {
	asked := ix.words.understand(parse(text), true)
	found, err := ix.find(ctx, asked, Query{Limit: max(limit, 0)}, false)
	if err != nil || found == nil {
		return nil, err
	}
	var hits []Hit
	for _, match := range found.Hits {
		if note := ix.notes[match.ID]; note != nil {
			hits = append(hits, Hit{note.Path(), note.Kind, note.Title, fragment(note, nil), match.Score})
		}
	}
	return hits, nil
}

// find runs the question: for notes with enough of its words first and, where
// there are none, for notes with any. It returns nil for a question that asks nothing.
func (ix *Index) find(ctx context.Context, asked question, q Query, located bool) (*bleve.SearchResult, error) {
	var found *bleve.SearchResult
	for _, any := range []bool{false, true} {
		text := asked.query(any)
		if text == nil {
			return nil, nil
		}
		request := bleve.NewSearchRequestOptions(ofKind(text, q.Kind), q.Limit, 0, false)
		request.IncludeLocations = located
		request.SortBy([]string{"-_score", "_id"})
		if located {
			request.AddFacet(fieldKind, bleve.NewFacetRequest(fieldKind, len(content.Kinds)))
		}
		var err error
		if found, err = ix.bleve.SearchInContext(ctx, request); err != nil {
			return nil, err
		}
		if found.Total > 0 {
			break
		}
	}
	return found, nil
}

// kinds counts what the text finds in each kind. The counts of a search within
// one kind say nothing of the others, so that takes a second search.
func (ix *Index) kinds(ctx context.Context, asked question, q Query, found *bleve.SearchResult) ([]KindCount, error) {
	if q.Kind != "" {
		var err error
		if found, err = ix.find(ctx, asked, Query{}, true); err != nil {
			return nil, err
		}
	}
	var counts []KindCount
	for _, term := range found.Facets[fieldKind].Terms.Terms() {
		counts = append(counts, KindCount{term.Term, term.Count})
	}
	slices.SortFunc(counts, func(a, b KindCount) int {
		return cmp.Compare(slices.Index(content.Kinds, a.Kind), slices.Index(content.Kinds, b.Kind))
	})
	return counts, nil
}
