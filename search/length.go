package search

import "github.com/blevesearch/bleve/v2/search"

// bleve takes the mean length of a field to be its different terms shared out
// among the notes. That is far too short for all but titles, and the more so the
// more notes there are, since new notes bring few new words: a long list of other
// names, or a body, would be worth less with each note added. So length counts
// for less than BM25's usual 0.75.
func init() { search.BM25_b = 0.3 }
