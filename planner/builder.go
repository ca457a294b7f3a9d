package planner

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"time"

	"coatwright/planner/library"
	"coatwright/planner/route"
	q "coatwright/quantity"
)

// builder makes a plan of the groups' routes.
type builder struct {
	job    *Job
	lib    *library.Library
	d      *Drying
	groups []*group
	items  []*item
	ids    []string
	at     []map[int]int // by group: action to item
	waits  [][]wait      // by item
	closed []Condition   // recoat windows that the hours do not allow
}

func newBuilder(job *Job, lib *library.Library, d *Drying, groups []*group, apart map[place]int) *builder {
	b := &builder{job: job, lib: lib, d: d, groups: groups}
	b.items = items(groups, lib.Words, apart)
	b.ids = stepIDs(b.items)
	b.at = make([]map[int]int, len(groups))
	for g := range groups {
		b.at[g] = map[int]int{}
	}
	for i, it := range b.items {
		for g, a := range it.actions {
			b.at[g][a] = i
		}
	}
	b.waits = b.allWaits()
	return b
}

// stepIDs names each item by its note, numbered from the second use on.
func stepIDs(items []*item) []string {
	used, ids := map[string]int{}, make([]string, len(items))
	for i, it := range items {
		used[it.step.Slug]++
		ids[i] = it.step.Slug
		if n := used[it.step.Slug]; n > 1 {
			ids[i] = fmt.Sprintf("%s-%d", it.step.Slug, n)
		}
	}
	return ids
}

func (b *builder) index(id string) int { return slices.Index(b.ids, id) }

func (b *builder) titleOf(id string) string {
	if i := b.index(id); i >= 0 {
		return lowerFirst(b.items[i].step.Title)
	}
	return id
}

func (b *builder) noteOf(id string) string {
	if i := b.index(id); i >= 0 {
		return b.items[i].step.Slug
	}
	return id
}

// groupsOf is the groups that an item is done for, in order.
func (b *builder) groupsOf(it *item) []int {
	return slices.Sorted(maps.Keys(it.actions))
}

// area is what the item's work goes by: a film's own area, the extent of a
// design's layer, or the parts.
func (b *builder) area(it *item) q.Area {
	var sum q.Area
	for _, g := range b.groupsOf(it) {
		sum += b.areaOn(it, g)
	}
	return sum
}

// areaOn is the area of an item's work on one group.
func (b *builder) areaOn(it *item, g int) q.Area {
	gr, action := b.groups[g], b.groups[g].route.Actions[it.actions[g]]
	switch {
	case action.Required >= 0 && gr.films[action.Required].Layer != nil:
		return gr.films[action.Required].Layer.Sprayed
	case it.step.Work.Of == library.OfLayer:
		return gr.films[action.Next].Layer.Extent
	case it.step.Work.Of == library.OfLaidLayer:
		return gr.films[action.Next-1].Layer.Extent
	}
	area, _ := gr.area()
	return area
}

// extents are the areas that an item's work goes by, group by group.
func (b *builder) extents(it *item) []Extent {
	var out []Extent
	for _, g := range b.groupsOf(it) {
		e := Extent{Parts: []string{}, M2: float64(b.areaOn(it, g)), Form: b.groups[g].form}
		for _, p := range b.groups[g].parts {
			e.Parts = append(e.Parts, p.Label())
		}
		out = append(out, e)
	}
	return out
}

// hands is the painter's own time for an item; flash is the time between its
// coats, when the painter waits beside it.
func (b *builder) hands(it *item) (hands, flash q.Time) {
	hands = it.step.Work.Fixed + q.Time(float64(it.step.Work.PerArea)*float64(b.area(it)))
	if it.film.IsZero() {
		return hands, 0
	}
	coats := it.film.coats
	hands += q.Time(float64(it.film.Tool.Applicator.Pace) * float64(b.area(it)) * float64(coats))
	return hands, b.d.Flash(it.film.Coating) * q.Time(coats-1)
}

// toMinutes rounds up to whole minutes: nobody works to the second.
func toMinutes(t q.Time) time.Duration {
	return time.Duration(math.Ceil(t.Minutes()-1e-6)) * time.Minute
}

// span says a duration as a painter would.
func span(d time.Duration) string { return q.Time(d.Seconds()).String() }

// links calls do for every link between two items. What a film has of its own
// is nobody's gift.
func (b *builder) links(do func(from, to int, l route.Link)) {
	for g, gr := range b.groups {
		for a, action := range gr.route.Actions {
			for _, l := range action.Links {
				if l.From >= 0 && !l.Missed && !l.Covered {
					do(b.at[g][l.From], b.at[g][a], l)
				}
			}
		}
	}
}
