package planner

import (
	"slices"

	"coatwright/planner/library"
	"coatwright/planner/route"
)

// item is one step of the plan: the same step of one or several groups.
type item struct {
	step     *library.Step
	material *library.Material // the film it lays
	lead     *library.Material // the film it leads up to or, for a flush, follows
	bench    bool
	actions  map[int]int // group to its action
}

func (it *item) key() string {
	k := it.step.Slug
	if it.lead != nil {
		k += " for " + it.lead.Slug
	}
	return k
}

// items brings the groups' routes together: work on the parts first, so that
// films of one material meet, then the bench work around each film.
func items(groups []*group, words *library.Vocabulary) []*item {
	var surface, bench []*item
	for g, gr := range groups {
		var mine []*item
		for a := range gr.route.Actions {
			it := newItem(gr.route, a, g, words)
			if it.bench {
				bench = meet(bench, it, g)
			} else {
				mine = append(mine, it)
			}
		}
		surface = merge(surface, mine)
	}
	return interleave(surface, bench)
}

func newItem(r *route.Route, a, g int, words *library.Vocabulary) *item {
	action := r.Actions[a]
	it := &item{step: action.Step, material: action.Material, bench: isBench(action.Step, words), actions: map[int]int{g: a}}
	it.lead = leadOf(r, a)
	return it
}

// leadOf is the next film that is laid from action a on or, for a step that
// cleans, the last one before it.
func leadOf(r *route.Route, a int) *library.Material {
	if r.Actions[a].Step.Cleans {
		for i := a; i >= 0; i-- {
			if m := r.Actions[i].Material; m != nil {
				return m
			}
		}
	}
	for _, action := range r.Actions[a:] {
		if action.Material != nil {
			return action.Material
		}
	}
	return nil
}

// isBench reports whether a step gives only facts about mixes and guns.
func isBench(s *library.Step, words *library.Vocabulary) bool {
	if s.Lays != "" || len(s.Gives) == 0 {
		return false
	}
	return !slices.ContainsFunc(s.Gives, func(l library.Literal) bool {
		f := words.Facts[l.Fact]
		return f == nil || f.Of != library.Bench
	})
}

// meet adds it to items, or joins it to the one like it of another group.
func meet(items []*item, it *item, g int) []*item {
	for _, other := range items {
		if _, mine := other.actions[g]; !mine && other.key() == it.key() {
			other.actions[g] = it.actions[g]
			return items
		}
	}
	return append(items, it)
}

// Films that meet save a mix and a booth visit; other steps only a walk.
const (
	filmMeets = 100
	stepMeets = 1
)

// merge brings two sequences together so that as many of the same films, and
// then of the same steps, as possible are done at once: a longest common
// subsequence by weight. Both keep their order.
func merge(a, b []*item) []*item {
	best := make([][]int, len(a)+1)
	for i := range best {
		best[i] = make([]int, len(b)+1)
	}
	for i := len(a) - 1; i >= 0; i-- {
		for j := len(b) - 1; j >= 0; j-- {
			best[i][j] = max(best[i+1][j], best[i][j+1])
			if w := weight(a[i], b[j]); w > 0 {
				best[i][j] = max(best[i][j], best[i+1][j+1]+w)
			}
		}
	}
	var out []*item
	i, j := 0, 0
	for i < len(a) && j < len(b) {
		switch w := weight(a[i], b[j]); {
		case w > 0 && best[i][j] == best[i+1][j+1]+w:
			for g, action := range b[j].actions {
				a[i].actions[g] = action
			}
			out = append(out, a[i])
			i, j = i+1, j+1
		case best[i][j] == best[i+1][j]:
			out = append(out, a[i])
			i++
		default:
			out = append(out, b[j])
			j++
		}
	}
	return append(append(out, a[i:]...), b[j:]...)
}

func weight(a, b *item) int {
	switch {
	case a.key() != b.key():
		return 0
	case a.material != nil:
		return filmMeets
	}
	return stepMeets
}

// interleave puts the bench work where it is done: a mix early enough to stand
// while other work goes on, a card just before the last touch, a flush right
// after the film.
func interleave(surface, bench []*item) []*item {
	var out []*item
	from := 0 // where the steps since the last film start in out
	for _, it := range surface {
		if it.material == nil {
			out = append(out, it)
			continue
		}
		var before, after []*item
		for _, b := range bench {
			switch {
			case b.lead != it.material:
			case b.step.Cleans:
				after = append(after, b)
			default:
				before = append(before, b)
			}
		}
		out = insertBench(out, from, before, it)
		out = append(append(out, it), after...)
		from = len(out)
	}
	return out
}

// insertBench places the bench steps that lead up to film into out[from:].
func insertBench(out []*item, from int, before []*item, film *item) []*item {
	last := max(len(out)-1, from)
	for _, b := range before {
		if !b.step.Mixes {
			out = slices.Insert(out, last, b)
		}
	}
	for _, b := range before {
		if !b.step.Mixes {
			continue
		}
		at, stood := len(out), film.material.Stand
		if card := slices.IndexFunc(out[from:], func(o *item) bool { return o.bench }); card >= 0 {
			at = from + card
		}
		for at > from && stood > 0 {
			at--
			stood -= out[at].step.Work.Fixed
		}
		out = slices.Insert(out, at, b)
	}
	return out
}
