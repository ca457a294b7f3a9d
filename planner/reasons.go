package planner

import (
	"slices"
	"strings"

	"coatwright/planner/route"
)

// reasons says, for each item, which later step needs what it gives.
func (b *builder) reasons() [][]Reason {
	why := make([][]Reason, len(b.items))
	add := func(i int, r Reason) {
		if !slices.Contains(why[i], r) {
			why[i] = append(why[i], r)
		}
	}
	b.links(func(from, to int, l route.Link) {
		if !l.Lag {
			add(from, Reason{Fact: factText(l.Fact, l.Number), For: b.ids[to], Because: b.because(l), Want: l.Want || l.Either})
		}
	})
	for g, gr := range b.groups {
		for _, l := range gr.route.Ends {
			if l.From >= 0 && !l.Missed && !l.Covered && !l.Lag {
				add(b.at[g][l.From], Reason{Fact: l.Fact, For: Agreed, Because: b.because(l), Want: l.Want})
			}
		}
		for a, action := range gr.route.Actions {
			if action.Required >= 0 {
				add(b.at[g][a], Reason{Fact: "film/" + action.Film.Role, For: Agreed, Because: gr.films[action.Required].Asked})
			}
		}
	}
	for i := range why {
		why[i] = byFact(why[i])
	}
	return why
}

// chains follows, for each item, the reasons to what was agreed: the first is of
// the item itself, each next of the item before it. The shortest is the one an
// apprentice keeps in mind; where there are several, the first.
func (b *builder) chains(reasons [][]Reason) [][]Reason {
	chains := make([][]Reason, len(b.items))
	for i := len(b.items) - 1; i >= 0; i-- {
		for _, r := range reasons[i] {
			rest := []Reason{}
			if r.For != Agreed {
				rest = chains[b.index(r.For)]
			}
			if chains[i] == nil || len(rest)+1 < len(chains[i]) {
				chains[i] = append([]Reason{r}, rest...)
			}
		}
	}
	return chains
}

// byFact brings the reasons for one fact together, in the order in which the
// facts first come up.
func byFact(why []Reason) []Reason {
	out := []Reason{}
	for _, r := range why {
		if slices.ContainsFunc(out, func(o Reason) bool { return o.Fact == r.Fact }) {
			continue
		}
		for _, same := range why {
			if same.Fact == r.Fact {
				out = append(out, same)
			}
		}
	}
	return out
}

// because is the sentence of the note that needs the fact, else the fact's own.
func (b *builder) because(l route.Link) string {
	if l.Because != "" {
		return l.Because
	}
	if f := b.lib.Words.Facts[l.Fact]; f != nil {
		return f.Else
	}
	if role, ok := strings.CutPrefix(l.Fact, "film/"); ok {
		return b.lib.Words.Role(role).Is
	}
	return ""
}
