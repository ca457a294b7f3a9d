package critique

import (
	"fmt"
	"slices"
	"time"

	"coatwright/planner"
	"coatwright/planner/library"
)

// Retimed is an edited plan as it is carried out: its steps by the hours that
// they now fall in, and its films, cautions, shopping list, reasons and totals
// without what is no longer in it. The plan itself is left as it is; the error
// is for a plan that cannot be played at all.
func Retimed(p *planner.Plan, lib *library.Library) (*planner.Plan, error) {
	if p.Job == nil || p.Refused != nil || len(p.Steps) == 0 {
		return nil, fmt.Errorf("there are no steps of a job to set times for")
	}
	b := &bench{plan: p, lib: lib}
	clock, _ := b.time()
	out := *p
	out.Steps = slices.Clone(p.Steps)
	for i := range out.Steps {
		s := &out.Steps[i]
		s.Start, s.End, s.Meanwhile = clock.start[i], clock.end[i], ""
		s.Why, s.Serves = b.known(s.Why), b.known(s.Serves)
		s.Waits = slices.DeleteFunc(slices.Clone(s.Waits), func(w planner.Wait) bool {
			k := b.index(w.After)
			return k < 0 || k >= i
		})
	}
	slices.SortStableFunc(out.Steps, func(a, b planner.Step) int { return a.Start.Compare(b.Start) })
	out.Films = filmsOf(p, out.Steps)
	out.SumUp(lib)
	out.Totals.LowEnd = b.ends(func(w planner.Wait) float64 { return min(w.Min, w.Low) })
	out.Totals.HighEnd = b.ends(func(w planner.Wait) float64 { return max(w.Min, w.High) })
	return &out, nil
}

// known are the reasons whose step is still there.
func (b *bench) known(why []planner.Reason) []planner.Reason {
	return slices.DeleteFunc(slices.Clone(why), func(r planner.Reason) bool {
		return r.For != planner.Agreed && b.index(r.For) < 0
	})
}

// ends is when the plan ends with waits as long as takes says, in minutes.
func (b *bench) ends(takes func(planner.Wait) float64) time.Time {
	other := *b.plan
	other.Steps = slices.Clone(other.Steps)
	for i := range other.Steps {
		s := &other.Steps[i]
		s.Waits = slices.Clone(s.Waits)
		for k, w := range s.Waits {
			s.Waits[k].Min = takes(w)
		}
	}
	clock, _ := (&bench{plan: &other, lib: b.lib}).time()
	return slices.MaxFunc(clock.end, time.Time.Compare)
}
