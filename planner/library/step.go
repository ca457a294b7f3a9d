package library

import (
	"slices"

	q "coatwright/quantity"
)

// OnBench reports whether a step gives only facts about mixes and guns.
func (s *Step) OnBench(words *Vocabulary) bool {
	if s.Lays != "" || len(s.Gives) == 0 {
		return false
	}
	return !slices.ContainsFunc(s.Gives, func(l Literal) bool {
		f := words.Facts[l.Fact]
		return f == nil || f.Of != Bench
	})
}

// Tapes are the tools that a step lays down and that have limits of their own.
func (s *Step) Tapes(tools map[string]*Tool) []*Tool {
	var out []*Tool
	for _, u := range s.Uses {
		if t := tools[u.Tool]; t != nil && t.Tape != nil {
			out = append(out, t)
		}
	}
	return out
}

// TapeHolds is the longest that what a step lays down may stay on, 0 for no limit.
func (s *Step) TapeHolds(tools map[string]*Tool) q.Time {
	var least q.Time
	for _, t := range s.Tapes(tools) {
		if holds := t.Tape.Holds; holds > 0 && (least == 0 || holds < least) {
			least = holds
		}
	}
	return least
}
