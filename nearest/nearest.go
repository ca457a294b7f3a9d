// Package nearest finds the word somebody probably meant.
package nearest

import (
	"fmt"
	"strings"
)

// To returns the word of words that is the fewest edits from found, the first
// of equals, and "" when none is near: more than half of found's letters, or
// more than three edits, would have to change.
func To(found string, words []string) string {
	limit := min(3, len([]rune(found))/2)
	best := ""
	for _, w := range words {
		if strings.EqualFold(found, w) {
			return w
		}
		if d := distance([]rune(strings.ToLower(found)), []rune(strings.ToLower(w))); d <= limit {
			best, limit = w, d-1
		}
	}
	return best
}

// Hint is the end of an error's sentence that offers a word, "" for none.
func Hint(word string) string {
	if word == "" {
		return ""
	}
	return fmt.Sprintf("; did you mean %q?", word)
}

// distance counts insertions, deletions, replacements and swaps of
// neighbouring letters (optimal string alignment) between a and b.
func distance(a, b []rune) int {
	before := make([]int, len(b)+1)
	last := make([]int, len(b)+1)
	row := make([]int, len(b)+1)
	for j := range last {
		last[j] = j
	}
	for i := 1; i <= len(a); i++ {
		row[0] = i
		for j := 1; j <= len(b); j++ {
			change := 1
			if a[i-1] == b[j-1] {
				change = 0
			}
			row[j] = min(last[j]+1, row[j-1]+1, last[j-1]+change)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				row[j] = min(row[j], before[j-2]+1)
			}
		}
		before, last, row = last, row, before
	}
	return last[len(b)]
}
