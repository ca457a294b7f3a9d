package planner

import (
	"cmp"
	"fmt"
	"slices"

	"coatwright/planner/library"
	"coatwright/planner/route"
	q "coatwright/quantity"
)

// paint is a coating in one colour and so many coats: what one mix is for.
type paint struct {
	route.Coating
	colour string
	coats  int
}

// item is one step of the plan: the same step of one or several groups.
type item struct {
	step    *library.Step
	film    paint  // the film it lays; zero for none
	lead    paint  // the film it leads up to
	of      *item  // of bench work: the film that it is for
	apart   int    // items of different numbers are not done at once
	key     string // items of one key may be done at once
	actions map[int]int
}

func (it *item) bench() bool { return it.of != nil }

// keyOf names what is done, and for which paint.
func keyOf(s *library.Step, lead paint) string {
	if lead.IsZero() {
		return s.Slug
	}
	return fmt.Sprint(s.Slug, " for ", lead.Slug, lead.Tool.Slug, lead.colour, lead.coats)
}

// place is one group's action.
type place struct{ group, action int }

// items brings the groups' routes together: work on the parts first, so that
// films of one paint meet, then the bench work around each film. Actions that
// are numbered in apart meet only those of the same number.
func items(groups []*group, words *library.Vocabulary, apart map[place]int) []*item {
	var surface []*item
	for g, gr := range groups {
		var mine []*item
		for a, action := range gr.route.Actions {
			if !action.Step.OnBench(words) {
				lead := gr.paint(gr.filmFrom(a))
				mine = append(mine, &item{step: action.Step, film: gr.paint(a), lead: lead, key: keyOf(action.Step, lead), apart: apart[place{g, a}], actions: map[int]int{g: a}})
			}
		}
		surface = merge(surface, mine)
	}
	if len(groups) > 1 {
		byReadiness(groups, surface)
	}
	return interleave(surface, benchWork(groups, surface, words))
}

// byReadiness puts what can be done first first: for each item the earliest that
// its parts are ready, were there hands and hours enough. An item is never ready
// before one that it waits for, and of those that are ready at once the first
// stays first.
func byReadiness(groups []*group, surface []*item) {
	ready := map[*item]q.Time{}
	at := map[place]*item{}
	for _, it := range surface {
		for g, a := range it.actions {
			at[place{g, a}] = it
			actions := groups[g].route.Actions
			for prev := a - 1; prev >= 0; prev-- {
				if before := at[place{g, prev}]; before != nil {
					ready[it] = max(ready[it], ready[before]+before.step.Work.Fixed)
					break
				}
			}
			for _, l := range actions[a].Links {
				if before := at[place{g, l.From}]; l.Lag && before != nil {
					ready[it] = max(ready[it], ready[before]+before.step.Work.Fixed+l.Min)
				}
			}
		}
	}
	slices.SortStableFunc(surface, func(a, b *item) int { return cmp.Compare(ready[a], ready[b]) })
}

// paint is what action a lays, zero for nothing.
func (g *group) paint(a int) paint {
	if a < 0 || g.route.Actions[a].Film.IsZero() {
		return paint{}
	}
	action := g.route.Actions[a]
	p := paint{Coating: action.Film, coats: g.problem.Coats(action)}
	if action.Required >= 0 {
		p.colour = g.films[action.Required].Colour
	}
	return p
}

// filmFrom is the first action from a on that lays a film, -1 for none.
func (g *group) filmFrom(a int) int {
	for i := a; i < len(g.route.Actions); i++ {
		if !g.route.Actions[i].Film.IsZero() {
			return i
		}
	}
	return -1
}

// filmBefore is the last action before a that lays a film, -1 for none.
func (g *group) filmBefore(a int) int {
	for i := a - 1; i >= 0; i-- {
		if !g.route.Actions[i].Film.IsZero() {
			return i
		}
	}
	return -1
}

// benchWork is the mixes, cards and flushes, once for each film of the plan: a
// step that cleans belongs to the film before it, any other to the one after.
func benchWork(groups []*group, surface []*item, words *library.Vocabulary) []*item {
	films := map[place]*item{}
	for _, it := range surface {
		for g, a := range it.actions {
			films[place{g, a}] = it
		}
	}
	var out []*item
	for g, gr := range groups {
		for a, action := range gr.route.Actions {
			if !action.Step.OnBench(words) {
				continue
			}
			at := gr.filmFrom(a)
			if action.Step.Cleans {
				at = gr.filmBefore(a)
			}
			of := films[place{g, at}]
			same := func(o *item) bool { return o.of == of && o.step == action.Step }
			if i := slices.IndexFunc(out, same); i >= 0 {
				out[i].actions[g] = a
				continue
			}
			out = append(out, &item{step: action.Step, lead: of.film, of: of, actions: map[int]int{g: a}})
		}
	}
	return out
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
	case a.key != b.key || a.apart != b.apart:
		return 0
	case !a.film.IsZero():
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
		if it.film.IsZero() {
			out = append(out, it)
			continue
		}
		var before, after []*item
		for _, b := range bench {
			switch {
			case b.of != it:
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
		at, stood := len(out), film.film.Stand
		if card := slices.IndexFunc(out[from:], (*item).bench); card >= 0 {
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
