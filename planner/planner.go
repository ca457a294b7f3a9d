// Package planner turns a job into a plan: which steps in which order, what to
// mix, how long to wait, and when. New is a pure function of the job and the
// library: same input, same plan, byte for byte. It reads no clock, stores
// nothing and holds no paint knowledge of its own.
package planner

import (
	"errors"
	"fmt"
	"slices"
	"sync"

	"coatwright/planner/calendar"
	"coatwright/planner/library"
	"coatwright/planner/route"
)

// New plans the job with what lib knows. A job that cannot be done comes back
// as a plan whose Refused says why; the error is for a search that gave up.
func New(job *Job, lib *library.Library) (*Plan, error) { return newPlan(job, lib, nil) }

// newPlan plans the job with one step left out of each group's route: without
// is by group, nil for nothing.
func newPlan(job *Job, lib *library.Library, without []route.Omission) (*Plan, error) {
	known := found{}
	b, slots, refused, err := build(job, lib, without, known)
	switch {
	case err != nil:
		return nil, err
	case refused != nil && refused.ByHours() && without == nil:
		refused.propose(job, lib, known)
		fallthrough
	case refused != nil:
		return refusedPlan(job, refused), nil
	}
	return b.plan(slots), nil
}

// maxStarts is how many later starts are tried where the hours do not allow a
// job: those of a working week.
const maxStarts = 5

// propose looks for a later start at which the hours allow the job.
func (r *Refusal) propose(job *Job, lib *library.Library, known found) {
	later := *job
	for range maxStarts {
		next := later.Shop.Hours.Opens(later.Start)
		if !next.After(later.Start) {
			return
		}
		later.Start = next
		if _, _, refused, err := build(&later, lib, nil, known); err == nil && refused == nil {
			r.Start = &next
			r.Reasons = append(r.Reasons, "a start on "+next.Format("Mon 2 Jan at 15:04")+" would do")
			return
		}
	}
}

// found is the routes that have been found for one job, by group and by the
// windows that were shut: they do not depend on when the job starts.
type found map[string]routed

type routed struct {
	route   *route.Route
	refused *route.Refusal
	err     error
}

// build finds the routes and the hours of a plan, or why there are none.
func build(job *Job, lib *library.Library, without []route.Omission, known found) (*builder, []calendar.Slot, *Refusal, error) {
	d := NewDrying(job, lib)
	shut := windows{}
	var missed *Refusal    // what the calendar last could not meet
	var closed []Condition // the windows that it could not meet before
	for {
		groups, refused, err := routes(job, lib, d, shut, without, known)
		if err != nil {
			return nil, nil, nil, err
		}
		if refused != nil {
			return nil, nil, withWindow(refused, missed), nil
		}
		b, slots, err := meet(job, lib, d, groups)
		if err == nil {
			b.closed = closed
			return b, slots, nil, nil
		}
		// A window that the calendar cannot meet is shut, and the route finds
		// another way to hold on to that film, usually a fresh key.
		missed = b.refusal(err)
		if !b.shut(err, shut) {
			return nil, nil, missed, nil
		}
		closed = append(closed, b.closes(err))
	}
}

// maxPartings is how often groups are parted before the plan is given up.
const maxPartings = 8

// meet brings the groups' routes together and into the shop's hours. Where parts
// that wait for one another miss a window, they no longer do that step at once.
func meet(job *Job, lib *library.Library, d *Drying, groups []*group) (*builder, []calendar.Slot, error) {
	apart := map[place]int{}
	for n := 1; ; n++ {
		b := newBuilder(job, lib, d, groups, apart)
		slots, err := b.schedule(wait.likely)
		if err == nil || n > maxPartings || !b.part(err, apart, n) {
			return b, slots, err
		}
	}
}

// part numbers the actions of some groups up to the step that comes too late, so
// that it is done for the others at another time: those that wait for what is
// over, or where all do, the first. It reports whether there is anything to part.
func (b *builder) part(err error, apart map[place]int, number int) bool {
	var w *calendar.WindowError
	if !errors.As(err, &w) {
		return false
	}
	below, above := b.items[b.index(w.After)], b.items[b.index(w.ID)]
	if above.bench() {
		above = above.of
	}
	all := b.groupsOf(above)
	if len(all) < 2 {
		return false
	}
	var late []int
	for _, g := range all {
		a, mine := below.actions[g]
		waits := func(l route.Link) bool { return l.From == a }
		if mine && slices.ContainsFunc(b.groups[g].route.Actions[above.actions[g]].Links, waits) {
			late = append(late, g)
		}
	}
	if len(late) == 0 || len(late) == len(all) {
		late = all[:1]
	}
	for _, g := range late {
		for a := b.groups[g].filmBefore(above.actions[g]) + 1; a <= above.actions[g]; a++ {
			apart[place{g, a}] = number
		}
	}
	return true
}

// windows are those that the calendar cannot meet, by group.
type windows map[int]map[route.Window]bool

// withWindow puts the window that the calendar could not meet before the
// refusal of the route that had to do without it.
func withWindow(refused, missed *Refusal) *Refusal {
	if missed == nil {
		return refused
	}
	r := *missed
	for _, reason := range refused.Reasons {
		r.Reasons = append(r.Reasons, "without that window: "+reason)
	}
	return &r
}

func refusedPlan(job *Job, r *Refusal) *Plan {
	return &Plan{
		Title: job.Title, Job: job, Refused: r,
		Steps: []Step{}, Films: []Film{}, Materials: []Material{}, Cautions: []Caution{}, Hardware: hardware(job), Left: left(job),
		Conditions: []Condition{}, Missed: []Reason{}, Kept: []Kept{}, Worn: []Worn{}, Strips: []Strip{}, Emissions: []Emission{},
	}
}

// routes finds the route of each group of parts, side by side.
func routes(job *Job, lib *library.Library, d *Drying, shut windows, without []route.Omission, known found) ([]*group, *Refusal, error) {
	groups := groupParts(job, lib)
	results := make([]routed, len(groups))
	var wait sync.WaitGroup
	for i, g := range groups {
		g.problem = g.routeProblem(job, lib, d, shut[i])
		if without != nil {
			g.problem.Without = without[i]
		}
		if r, seen := known[known.key(i, shut)]; seen {
			results[i] = r
			continue
		}
		wait.Go(func() { results[i].route, results[i].refused, results[i].err = route.Find(g.problem) })
	}
	wait.Wait()
	for i, g := range groups {
		r := results[i]
		known[known.key(i, shut)] = r
		switch {
		case r.err != nil:
			return nil, nil, r.err
		case r.refused != nil:
			return nil, &Refusal{Part: g.names()[0], Fact: r.refused.Fact, Step: r.refused.Step, Reasons: r.refused.Reasons}, nil
		}
		g.route = r.route
	}
	return groups, nil, nil
}

// key names a group and its shut windows; maps print in the order of their keys.
func (found) key(group int, shut windows) string { return fmt.Sprint(group, shut[group]) }

// shut adds to windows the recoat window that broke the calendar, and reports
// whether there was one that was still open.
func (b *builder) shut(err error, shut windows) bool {
	var w *calendar.WindowError
	if !errors.As(err, &w) {
		return false
	}
	below, above := b.items[b.index(w.After)], b.items[b.index(w.ID)]
	if below.film.IsZero() || above.film.IsZero() {
		return false
	}
	news := false
	for g, a := range above.actions {
		if _, mine := below.actions[g]; !mine {
			continue
		}
		window := route.Window{Under: below.film.Slug, Next: b.groups[g].route.Actions[a].Next}
		if shut[g] == nil {
			shut[g] = map[route.Window]bool{}
		}
		news = news || !shut[g][window]
		shut[g][window] = true
	}
	return news
}

// closes says which recoat window cannot be met, and what is done instead.
func (b *builder) closes(err error) Condition {
	var w *calendar.WindowError
	errors.As(err, &w)
	below := b.items[b.index(w.After)].film
	return Condition{Level: "care", Note: "background/what-a-recoat-window-is", What: fmt.Sprintf(
		"The recoat window of the %s shuts after %s, and in these hours %s comes no sooner than %s after it: it is keyed again, or locked, before that.",
		lowerFirst(below.Title), span(w.Max), b.titleOf(w.ID), span(w.Best))}
}

// partOf is the first part that the step id is done for.
func (b *builder) partOf(id string) string {
	return b.groups[b.groupsOf(b.items[b.index(id)])[0]].names()[0]
}

// refusal words a calendar error as a reason not to plan.
func (b *builder) refusal(err error) *Refusal {
	var w *calendar.WindowError
	var long *calendar.TooLongError
	switch {
	case errors.As(err, &w):
		return &Refusal{Part: b.partOf(w.ID), Fact: WorkingHours, Step: b.noteOf(w.ID), Reasons: []string{
			fmt.Sprintf("%s must follow %s within %s, and the working hours allow no less than %s", b.titleOf(w.ID), b.titleOf(w.After), span(w.Max), span(w.Best))}}
	case errors.As(err, &long):
		return &Refusal{Part: b.partOf(long.ID), Fact: WorkingHours, Step: b.noteOf(long.ID), Reasons: []string{
			fmt.Sprintf("%s takes %s in one go, and the longest working span is %s", b.titleOf(long.ID), span(long.Work), span(long.Longest))}}
	}
	return &Refusal{Part: b.groups[0].names()[0], Fact: WorkingHours, Reasons: []string{err.Error()}}
}
