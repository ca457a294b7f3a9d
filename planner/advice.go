package planner

import (
	"math"
	"slices"

	"coatwright/planner/route"
)

// advice says of an item that nothing needs it: it is done for a want. It and
// whatever only leads up to it cost so much and save so much, in minutes.
type advice struct {
	advised      bool
	costs, saves float64
}

// advice looks back from the end of the job for what is needed. An item that
// serves only wants, or only leads up to such items, is advised.
func (b *builder) advice() []advice {
	needed, saves := b.neededItems(), b.savings()
	root := b.roots(needed, saves)
	costs := map[int]float64{}
	for i := range b.items {
		if r, ok := root[i]; ok {
			hands, _ := b.hands(b.items[i])
			costs[r] += hands.Minutes()
		}
	}
	out := make([]advice, len(b.items))
	for i := range b.items {
		if r, ok := root[i]; ok {
			out[i] = advice{true, math.Round(costs[r]), math.Round(saves[r])}
		}
	}
	return out
}

// neededItems marks the items that the films asked for, or the hand-over,
// cannot do without.
func (b *builder) neededItems() []bool {
	needed := make([]bool, len(b.items))
	for g, gr := range b.groups {
		for a, action := range gr.route.Actions {
			if action.Required >= 0 {
				needed[b.at[g][a]] = true
			}
		}
		for _, l := range gr.route.Ends {
			if l.From >= 0 && !l.Want && !l.Lag {
				needed[b.at[g][l.From]] = true
			}
		}
	}
	givers := b.givers()
	for i := len(b.items) - 1; i >= 0; i-- {
		for _, from := range givers[i] {
			needed[from] = needed[from] || needed[i]
		}
	}
	for i, it := range b.items {
		if it.step.Cleans && it.bench() {
			needed[i] = needed[slices.Index(b.items, it.of)]
		}
	}
	return needed
}

// givers is, for each item, those that give it something it needs, or that gave
// it to the film below.
func (b *builder) givers() [][]int {
	out := make([][]int, len(b.items))
	for g, gr := range b.groups {
		for a, action := range gr.route.Actions {
			for _, l := range action.Links {
				if l.From >= 0 && !l.Want && !l.Lag && !l.Either {
					out[b.at[g][a]] = append(out[b.at[g][a]], b.at[g][l.From])
				}
			}
		}
	}
	return out
}

// savings is the rework, in minutes, that each item spares by serving wants: for
// each group its own, as the route of each weighs them.
func (b *builder) savings() []float64 {
	saves := make([]float64, len(b.items))
	factor := careFactor(b.job, b.lib)
	add := func(from int, l route.Link) {
		if l.Want {
			saves[from] += l.Saves.Minutes() * factor
		}
	}
	b.links(func(from, _ int, l route.Link) { add(from, l) })
	for g, gr := range b.groups {
		for _, l := range gr.route.Ends {
			if l.From >= 0 && !l.Missed && !l.Covered {
				add(b.at[g][l.From], l)
			}
		}
	}
	return saves
}

// missed is the wants left unmet, and the rework, in minutes, that they cost on
// average: told once for a film, and counted for each group that shares it.
func (b *builder) missed() (missed []Reason, risk float64) {
	missed = []Reason{}
	add := func(id string, links []route.Link) {
		for _, l := range links {
			if !l.Missed {
				continue
			}
			risk += l.Saves.Minutes() * careFactor(b.job, b.lib)
			if r := (Reason{Fact: l.Fact, For: id, Because: l.Because, Want: true}); !slices.Contains(missed, r) {
				missed = append(missed, r)
			}
		}
	}
	for g, gr := range b.groups {
		for a, action := range gr.route.Actions {
			add(b.ids[b.at[g][a]], action.Links)
		}
		add(Agreed, gr.route.Ends)
	}
	return missed, math.Round(risk)
}

// roots finds, for each item that is not needed, the item whose wants it serves:
// itself, or the one that it leads up to.
func (b *builder) roots(needed []bool, saves []float64) map[int]int {
	root, givers := map[int]int{}, b.givers()
	for i := len(b.items) - 1; i >= 0; i-- {
		if needed[i] {
			continue
		}
		if _, led := root[i]; !led {
			root[i] = i
		}
		for _, from := range givers[i] {
			if _, led := root[from]; !needed[from] && !led && saves[from] == 0 {
				root[from] = root[i]
			}
		}
	}
	for i, it := range b.items {
		if it.step.Cleans && !needed[i] && it.bench() {
			root[i] = root[slices.Index(b.items, it.of)]
		}
	}
	return root
}
