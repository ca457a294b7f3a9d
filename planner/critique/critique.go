// Package critique simulates a plan that was edited by hand: steps moved,
// dropped or added, coats, mixes and waits changed. It plays the plan step by
// step on each part, by the same notes that the planner plans with, and says
// what would go wrong, by which need of which note, and what the smallest repair
// is. It shares no code with the search for a route: what the one finds sound,
// the other must find sound too.
package critique

import (
	"fmt"
	"slices"
	"time"

	"coatwright/planner"
	"coatwright/planner/library"
)

// Critique is what a plan is found to be.
type Critique struct {
	Title    string    `json:"title"`
	Findings []Finding `json:"findings"`
	Open     int       `json:"open"` // findings that break a need and are not kept on purpose
}

// Finding is one thing that is wrong with a plan.
type Finding struct {
	Level   Level   `json:"level"`
	Step    string  `json:"step"` // the step's id; "" for the plan as a whole
	Title   string  `json:"title"`
	Note    string  `json:"note"` // the note that says so
	Part    string  `json:"part"`
	Need    string  `json:"need"` // the fact, the dryness state or the figure that is not met
	Says    string  `json:"says"`
	Because string  `json:"because"`
	Repair  *Repair `json:"repair"` // the smallest that helps; null where none was found
	Kept    string  `json:"kept"`   // why it is done so all the same; "" for no reason given

	late lateness
}

// lateness says of a step that starts too soon after which step it should have
// waited for how long, and for how much longer than it did.
type lateness struct {
	after        int
	wait, longer time.Duration
}

// Level says how much a finding matters.
type Level string

// The levels.
const (
	Breaks Level = "breaks" // a need is not met
	Risks  Level = "risks"  // a want is not met: rework, on average
)

// Repair is a change to the plan that takes a finding away.
type Repair struct {
	Do      Change  `json:"do"`
	Step    string  `json:"step"`   // the step that is moved, dropped or changed
	Note    string  `json:"note"`   // the note of a step that is added
	Before  string  `json:"before"` // where it goes: the id of the step after it; "" for the end
	After   string  `json:"after"`  // of a wait: the step that starts the clock
	WaitMin float64 `json:"wait_min"`
	Minutes float64 `json:"minutes"` // work or waiting that it adds; below zero: saves
	Says    string  `json:"says"`
}

// Change is what a repair does.
type Change string

// The changes.
const (
	Add  Change = "add"
	Move Change = "move"
	Drop Change = "drop"
	Wait Change = "wait"
	Set  Change = "set" // coats or a mix, back to what the notes say
)

// Of criticises a plan, and looks for the smallest repair of each need that
// breaks. The error is for a plan that cannot be played at all.
func Of(p *planner.Plan, lib *library.Library) (*Critique, error) {
	c, bench, err := play(p, lib)
	if err != nil {
		return nil, err
	}
	repairs := repairs{bench: bench, found: c.Findings}
	for i := range c.Findings {
		if f := &c.Findings[i]; f.open() {
			f.Repair = repairs.of(*f)
		}
	}
	return c, nil
}

// Findings criticises a plan without looking for repairs, which takes most of the
// time.
func Findings(p *planner.Plan, lib *library.Library) (*Critique, error) {
	c, _, err := play(p, lib)
	return c, err
}

func play(p *planner.Plan, lib *library.Library) (*Critique, *bench, error) {
	switch {
	case p.Job == nil:
		return nil, nil, fmt.Errorf("the plan has no job: it cannot be checked against what was agreed")
	case p.Refused != nil:
		return nil, nil, fmt.Errorf("the plan is a refusal: there is nothing to check")
	case len(p.Steps) == 0:
		return nil, nil, fmt.Errorf("the plan has no steps: there is nothing to check")
	}
	bench := &bench{plan: p, lib: lib, drying: planner.NewDrying(p.Job, lib), films: planner.FilmsOf(p.Job, lib)}
	c := &Critique{Title: p.Title, Findings: bench.findings()}
	for i := range c.Findings {
		f := &c.Findings[i]
		if f.Kept = kept(p, *f); f.open() {
			c.Open++
		}
	}
	return c, bench, nil
}

// open reports whether a need breaks and nobody said why that may be.
func (f Finding) open() bool { return f.Level == Breaks && f.Kept == "" }

// kept is the reason for which a finding is let stand, "" for none.
func kept(p *planner.Plan, f Finding) string {
	i := slices.IndexFunc(p.Kept, func(k planner.Kept) bool { return k.Step == f.Step && k.Need == f.Need })
	if i < 0 {
		return ""
	}
	return p.Kept[i].Reason
}

// bench is what a plan is played on.
type bench struct {
	plan   *planner.Plan
	lib    *library.Library
	drying *planner.Drying
	films  map[string][]planner.AgreedFilm
}

// findings plays the plan as it stands, without looking for repairs.
func (b *bench) findings() []Finding {
	clock, found := b.time()
	for _, part := range b.plan.Job.Parts {
		if part.Leave {
			continue
		}
		s := b.surface(part, clock)
		found = append(found, s.play()...)
	}
	found = append(found, b.mixes()...)
	return once(found)
}

// once keeps the first of findings that say the same of one step for several
// parts.
func once(found []Finding) []Finding {
	out := []Finding{}
	for _, f := range found {
		same := func(o Finding) bool { return o.Step == f.Step && o.Need == f.Need && o.Says == f.Says }
		if !slices.ContainsFunc(out, same) {
			out = append(out, f)
		}
	}
	return out
}

// finding is one about step i; -1 for the plan as a whole.
func (b *bench) finding(i int, level Level, need, says, because string) Finding {
	f := Finding{Level: level, Need: need, Says: says, Because: because}
	if i >= 0 {
		s := b.plan.Steps[i]
		f.Step, f.Title, f.Note = s.ID, s.Title, s.Note
	}
	return f
}
