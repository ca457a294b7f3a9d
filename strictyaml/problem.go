package strictyaml

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"coatwright/nearest"
)

// Problem is one thing wrong with a document, told to the person who wrote it.
// Line and Column count from 1; Path is the way to the value from the top,
// such as "parts[0].area".
type Problem struct {
	File         string
	Line, Column int
	Path         string
	Found        string
	Expected     string
	Nearest      string // the nearest valid spelling; "" when none is near
}

func (p *Problem) Error() string {
	s := fmt.Sprintf("%s:%d:%d: ", p.File, p.Line, p.Column)
	if p.Path != "" {
		s += p.Path + ": "
	}
	return s + p.Message()
}

// Message is the problem without its place.
func (p *Problem) Message() string {
	return fmt.Sprintf("found %s, expected %s%s", p.Found, p.Expected, nearest.Hint(p.Nearest))
}

// Problems is every problem of one or more documents.
type Problems []*Problem

func (ps Problems) Error() string {
	lines := make([]string, len(ps))
	for i, p := range ps {
		lines[i] = p.Error()
	}
	return strings.Join(lines, "\n")
}

// Err returns ps as an error, in the order of files and places, nil when there
// is none.
func (ps Problems) Err() error {
	if len(ps) == 0 {
		return nil
	}
	sorted := slices.Clone(ps)
	slices.SortStableFunc(sorted, func(a, b *Problem) int {
		return cmp.Or(cmp.Compare(a.File, b.File), cmp.Compare(a.Line, b.Line), cmp.Compare(a.Column, b.Column))
	})
	return sorted
}
