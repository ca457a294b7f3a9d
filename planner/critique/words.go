package critique

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"time"
	"unicode"
	"unicode/utf8"

	q "coatwright/quantity"
)

// meaning is what goes wrong where a fact is missing.
func (b *bench) meaning(fact string) string {
	if f := b.lib.Words.Facts[fact]; f != nil {
		return f.Else
	}
	for _, w := range b.lib.Words.Dryness {
		if w.Name == fact {
			return w.Is
		}
	}
	return ""
}

func slugs[V any](m map[string]V) []string { return slices.Sorted(maps.Keys(m)) }

// span says a duration as a painter would.
func span(d time.Duration) string { return q.Time(max(d, 0).Round(time.Minute).Seconds()).String() }

func grits(r q.Range[q.Grit]) string {
	switch {
	case r.IsZero():
		return "none"
	case r.Low == r.High:
		return fmt.Sprintf("P%.0f", float64(r.Low))
	}
	return fmt.Sprintf("P%.0f to P%.0f", float64(r.Low), float64(r.High))
}

func lower(s string) string {
	r, n := utf8.DecodeRuneInString(s)
	return string(unicode.ToLower(r)) + strings.TrimPrefix(s, s[:n])
}
