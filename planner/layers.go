package planner

import (
	"slices"

	"coatwright/planner/library"
)

// layerOrder puts the designs of one part in the order in which they are laid.
// A design comes after those it lies over: those that the job names, and where
// two may touch, those of the kinds that its note names. Of the orders that are
// left it is the one in which the paint changes least often, and of those the
// one that strays least from broad before fine; then as the job lists them.
func layerOrder(designs []Design, lib *library.Library) []Design {
	n := len(designs)
	if n < 2 {
		return designs
	}
	s := layerSearch{designs: designs, lib: lib, under: make([]int, n), best: map[[2]int]layerCost{}}
	for i, d := range designs {
		for j, o := range designs {
			if i != j && liesOn(d, o, lib) {
				s.under[i] |= 1 << j
			}
		}
	}
	var out []Design
	done, last := 0, -1
	for len(out) < n {
		_, last = s.least(done, last)
		done |= 1 << last
		out = append(out, designs[last])
	}
	return out
}

// liesOn reports whether d must lie over o.
func liesOn(d, o Design, lib *library.Library) bool {
	if slices.Contains(d.Over, o.Name) {
		return true
	}
	return !slices.Contains(o.Over, d.Name) && samePlace(d, o) && kindOver(d.Kind, o.Kind, lib)
}

func kindOver(kind, other string, lib *library.Library) bool {
	return kind != other && slices.Contains(lib.Designs[kind].Over, other)
}

// layerSearch looks at every set of designs that may be laid already, and at
// the one that was laid last.
type layerSearch struct {
	designs []Design
	lib     *library.Library
	under   []int // by design, the set of those below it
	best    map[[2]int]layerCost
}

// layerCost is what is left to lay: changes of paint, then kinds out of order.
type layerCost struct{ changes, strays, next int }

func (a layerCost) less(b layerCost) bool {
	return a.changes < b.changes || a.changes == b.changes && a.strays < b.strays
}

// least is the cost of laying what is not in done after last, and what to lay
// next. Where rules bite their own tail, the job's order decides.
func (s *layerSearch) least(done, last int) (layerCost, int) {
	if done == 1<<len(s.designs)-1 {
		return layerCost{}, -1
	}
	if c, seen := s.best[[2]int{done, last}]; seen {
		return c, c.next
	}
	best := layerCost{next: -1}
	for _, strict := range []bool{true, false} {
		for i := range s.designs {
			if done&(1<<i) != 0 || strict && s.under[i]&^done != 0 {
				continue
			}
			c, _ := s.least(done|1<<i, i)
			c.changes += s.changes(last, i)
			c.strays += s.strays(done, i)
			if best.next < 0 || c.less(best) {
				best = layerCost{c.changes, c.strays, i}
			}
		}
		if best.next >= 0 {
			break
		}
	}
	s.best[[2]int{done, last}] = best
	return best, best.next
}

// changes is 1 where another paint is mixed between two designs.
func (s *layerSearch) changes(last, i int) int {
	if last >= 0 && s.colour(last, true) == s.colour(i, false) {
		return 0
	}
	return 1
}

// colour is that of a design's last or first layer.
func (s *layerSearch) colour(i int, last bool) string {
	d := s.designs[i]
	var colours []string
	for _, l := range s.lib.Designs[d.Kind].Layers {
		if !l.Optional || slices.Contains(d.With, l.Name) {
			colours = append(colours, d.Colours[l.Film.Colour])
		}
	}
	if last {
		return colours[len(colours)-1]
	}
	return colours[0]
}

// strays counts the designs still to come that broader work would have put
// below design i.
func (s *layerSearch) strays(done, i int) int {
	n := 0
	for j := range s.designs {
		if j != i && done&(1<<j) == 0 && kindOver(s.designs[i].Kind, s.designs[j].Kind, s.lib) {
			n++
		}
	}
	return n
}
