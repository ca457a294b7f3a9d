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

// Tapes are those that a step lays down.
func (s *Step) Tapes(tools map[string]*Tool) []*Tape {
	var out []*Tape
	for _, u := range s.Uses {
		if t := tools[u.Tool]; t != nil && t.Tape != nil {
			out = append(out, t.Tape)
		}
	}
	return out
}

// TapeHolds is the longest that what a step lays down may stay on, 0 for no limit.
func (s *Step) TapeHolds(tools map[string]*Tool) q.Time {
	var least q.Time
	for _, t := range s.Tapes(tools) {
		if t.Holds > 0 && (least == 0 || t.Holds < least) {
			least = t.Holds
		}
	}
	return least
}
