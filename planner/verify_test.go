package planner_test

import (
	"fmt"
	"slices"
	"strings"

	"coatwright/planner"
	"coatwright/planner/critique"
	"coatwright/planner/library"
)

// verify has a plan played by the notes, step by step in the order of its clock,
// and says what a painter would find wrong. The critique shares no code with the
// search that made the plan.
func verify(p *planner.Plan, lib *library.Library) []string {
	c, err := critique.Findings(p, lib)
	if err != nil {
		return []string{err.Error()}
	}
	var faults []string
	for _, f := range c.Findings {
		if f.Level == critique.Breaks {
			faults = append(faults, fmt.Sprintf("%s, %s: %s: %s", f.Part, f.Step, f.Need, f.Says))
		}
	}
	return slices.Concat(faults, waited(p, lib), masksLifted(p, lib), handsFree(p))
}

// waited reads the plan's own clock: no step starts before its waits are over, or
// after a window has shut.
func waited(p *planner.Plan, lib *library.Library) []string {
	var faults []string
	for _, s := range p.Steps {
		for _, w := range s.Waits {
			i := slices.IndexFunc(p.Steps, func(o planner.Step) bool { return o.ID == w.After })
			if i < 0 {
				faults = append(faults, fmt.Sprintf("%s waits after %q, which is no step", s.ID, w.After))
				continue
			}
			since := s.Start.Sub(p.Steps[i].End).Minutes()
			if since < w.Min || w.Max > 0 && since > w.Max {
				faults = append(faults, fmt.Sprintf("%s starts %g min after %s, and must from %g to %g", s.ID, since, w.After, w.Min, w.Max))
			}
		}
	}
	return faults
}

// masksLifted finds parts from which a mask is not taken off as often as one was
// laid.
func masksLifted(p *planner.Plan, lib *library.Library) []string {
	down := map[string]int{} // by part and the fact that says no mask is there
	for _, s := range p.Steps {
		note := lib.Steps[strings.TrimPrefix(s.Note, "step/")]
		for _, part := range s.Parts {
			for _, fact := range []string{"unmasked", "design-bared"} {
				if slices.Contains(note.Spoils, fact) {
					down[part+" "+fact]++
				}
				if slices.ContainsFunc(note.Gives, func(l library.Literal) bool { return l.Fact == fact }) {
					down[part+" "+fact] = 0
				}
			}
		}
	}
	var faults []string
	for key, n := range down {
		if n > 0 {
			faults = append(faults, key+": a mask is never taken off")
		}
	}
	slices.Sort(faults)
	return faults
}

// handsFree finds steps that overlap although one painter does them all. Work
// that is broken off at closing time leaves its gap to others.
func handsFree(p *planner.Plan) []string {
	if p.Job.Shop.Painters != 1 {
		return nil
	}
	var faults []string
	for i := 1; i < len(p.Steps); i++ {
		last := p.Steps[i-1]
		broken := last.Coats == 0 && last.End.Sub(last.Start).Minutes() > last.WorkMin
		if p.Steps[i].Start.Before(last.End) && !broken {
			faults = append(faults, fmt.Sprintf("%s starts before %s ends", p.Steps[i].ID, p.Steps[i-1].ID))
		}
	}
	return faults
}
