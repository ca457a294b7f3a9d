package room

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"
)

// Advice is a room judged, and what would make it suit.
type Advice struct {
	Now       Assessment `json:"now"`
	Ways      []Change   `json:"ways"` // the cheapest first; empty where the room is a go, or nothing helps
	Conflicts []Conflict `json:"conflicts"`
	Says      string     `json:"says"`
}

// Advise judges a room for films and finds the cheapest changes that make it a
// go, or where nothing at hand does, at least one that wants care. Every kind of
// change stands once, as cheap as it can be had: single ones, and those pairs
// that cost less than either of the two alone. Each was judged anew.
func Advise(r Room, films []Wants, m Means) (Advice, error) {
	if err := m.check(); err != nil {
		return Advice{}, err
	}
	m.Later = slices.SortedFunc(slices.Values(m.Later), func(a, b Later) int { return a.At.Compare(b.At) })
	a := Advice{Now: Assess(r, films), Ways: []Change{}, Conflicts: Conflicts(films)}
	for aim := Go; aim < a.Now.Level && len(a.Ways) == 0; aim++ {
		a.Ways = ways(r, films, m, aim)
	}
	a.Says = a.text()
	return a, nil
}

func (a Advice) text() string {
	switch {
	case a.Now.Level == Go:
		return a.Now.Says
	case len(a.Ways) == 0 && len(a.Conflicts) > 0:
		return a.Conflicts[0].Says
	case len(a.Ways) == 0 && a.Now.Level == Care:
		return "Nothing at hand takes the room away from the ends of what is wanted; it will do, with care."
	case len(a.Ways) == 0:
		return "Nothing at hand makes the room suit. Wait for other weather, or work elsewhere."
	}
	return a.Ways[0].Says
}

// pairs are the changes that go together, in the order in which they are done.
var pairs = [][2]Do{
	{Wait, Warm}, {Wait, Cool}, {Wait, Dry}, {Wait, Damp}, {Wait, WarmPart}, {Wait, Fan},
	{Warm, Dry}, {Warm, Damp}, {Warm, WarmPart}, {Warm, Fan},
	{Cool, Dry}, {Cool, Damp}, {Cool, WarmPart}, {Cool, Fan},
	{Dry, WarmPart}, {Dry, Fan}, {Damp, WarmPart}, {Damp, Fan},
	{WarmPart, Fan},
}

// ways are the cheapest changes of every kind that bring a room to a level.
func ways(r Room, films []Wants, m Means, aim Level) []Change {
	w := windowOf(films, aim)
	var found [][]Act
	alone := map[Do]float64{} // what one act costs that does it alone
	for _, do := range []Do{Wait, Warm, Cool, Dry, Damp, WarmPart, Fan} {
		alone[do] = math.Inf(1)
		if act, ok := cheapest(m.options(do, r), w, math.Inf(1)); ok {
			found, alone[do] = append(found, []Act{act}), act.Cost
		}
	}
	for _, p := range pairs {
		if acts := cheapestPair(r, m, p, w, min(alone[p[0]], alone[p[1]])); acts != nil {
			found = append(found, acts)
		}
	}
	changes := make([]Change, len(found))
	for i, acts := range found {
		changes[i] = change(r, films, m, acts)
	}
	slices.SortStableFunc(changes, func(a, b Change) int {
		return cmp.Or(cmp.Compare(a.Cost, b.Cost), cmp.Compare(len(a.Acts), len(b.Acts)))
	})
	return changes
}

// cheapest is the first of acts, which cost ever more, that leads into a window
// for less than a limit.
func cheapest(acts []Act, w window, under float64) (Act, bool) {
	for _, a := range acts {
		if a.Cost >= under {
			break
		}
		if w.holds(a.room) {
			return a, true
		}
	}
	return Act{}, false
}

// cheapestPair is the two acts that lead into a window for the least, nil where
// none do for less than a limit.
func cheapestPair(r Room, m Means, p [2]Do, w window, least float64) []Act {
	var best []Act
	for _, first := range m.options(p[0], r) {
		if first.Cost >= least {
			break
		}
		if second, ok := cheapest(m.options(p[1], first.room), w, least-first.Cost); ok {
			best, least = []Act{first, second}, first.Cost+second.Cost
		}
	}
	return best
}

// change puts acts together and judges the room that they lead to.
func change(r Room, films []Wants, m Means, acts []Act) Change {
	c := Change{Acts: acts, Unit: m.Unit}
	var says []string
	for i, a := range acts {
		acts[i] = a.say(r)
		says = append(says, acts[i].Says)
		c.Cost += a.Cost
		r = a.room
	}
	c.Room, c.Then = r, Assess(r, films)
	c.Says = strings.Join(says, " ") + fmt.Sprintf(" That costs %s.", strings.TrimSpace(whole(c.Cost)+" "+m.Unit))
	return c
}
