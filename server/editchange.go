package main

import (
	"encoding/json"
	"fmt"
	"math"
	"slices"

	"coatwright/planner"
	"coatwright/planner/critique"
	"coatwright/planner/library"
	q "coatwright/quantity"
)

// change is one edit of a plan, as the edit page keeps it between requests: a
// repair of the critique, or one of the two that only a person makes.
type change struct {
	Do     critique.Change `json:"do"`
	Step   string          `json:"step,omitempty"`
	Note   string          `json:"note,omitempty"`
	Before string          `json:"before,omitempty"`
	After  string          `json:"after,omitempty"`  // of a longer wait: the step that starts the clock
	Wait   float64         `json:"wait,omitempty"`   // ... and its minutes in all
	Number float64         `json:"number,omitempty"` // coats, or minutes more
}

// The changes that the critique never proposes.
const (
	setCoats critique.Change = "coats"
	setWait  critique.Change = "minutes"
)

// Limits of an edit. They catch slips of the pen, as those of a job do.
const (
	maxWait    = 60 * 24 * 60 // minutes: two months
	maxChanges = 300
)

// ofRepair is the change that a repair makes.
func ofRepair(r critique.Repair) change {
	return change{Do: r.Do, Step: r.Step, Note: r.Note, Before: r.Before, After: r.After, Wait: r.WaitMin, Number: r.Minutes}
}

// make makes the change to a plan. The error says what of it does not fit.
func (c change) make(p *planner.Plan, lib *library.Library) (*planner.Plan, error) {
	switch {
	case c.Do != critique.Add && c.Step == "":
		return nil, fmt.Errorf("found a change of no step")
	case c.Do == critique.Drop && len(p.Steps) == 1:
		return nil, fmt.Errorf("a plan has at least one step")
	case c.Do == setCoats && c.Number > planner.MaxCoats, math.Abs(c.Number) > maxWait, math.Abs(c.Wait) > maxWait:
		return nil, fmt.Errorf("found %g, expected at most %d coats or %d minutes", c.Number, planner.MaxCoats, maxWait)
	}
	if err := knownSteps(p, c.Step, c.Before, c.After); err != nil {
		return nil, err
	}
	switch c.Do {
	case setCoats:
		return critique.Recoated(p, lib, c.Step, int(c.Number))
	case setWait:
		return critique.Rewaited(p, c.Step, c.Number)
	}
	return critique.Apply(p, lib, critique.Repair{Do: c.Do, Step: c.Step, Note: c.Note, Before: c.Before, After: c.After, WaitMin: c.Wait})
}

// says is the change in words, as it stands in the list of changes.
func (c change) says(p *planner.Plan, lib *library.Library) string {
	what, before := naming(p, c.Step), "at the end"
	if c.Before != "" {
		before = "before " + naming(p, c.Before)
	}
	switch c.Do {
	case setCoats:
		return fmt.Sprintf("%g coats in %s.", c.Number, what)
	case setWait:
		return fmt.Sprintf("Wait %s before %s.", q.Time(c.Number*60), what)
	case critique.Wait:
		return fmt.Sprintf("Wait %s longer before %s.", q.Time(c.Number*60), what)
	case critique.Drop:
		return fmt.Sprintf("Leave out %s.", what)
	case critique.Move:
		return fmt.Sprintf("Do %s %s.", what, before)
	case critique.Set:
		return fmt.Sprintf("Do %s as the notes say.", what)
	case critique.Add:
		if note := lib.Steps[c.Note]; note != nil {
			return fmt.Sprintf("Add “%s” %s.", note.Title, before)
		}
	}
	return string(c.Do) + "."
}

// naming is a step by its number and its title.
func naming(p *planner.Plan, id string) string {
	i := planner.StepAt(p.Steps, id)
	if i < 0 {
		return id
	}
	return fmt.Sprintf("step %d, “%s”", i+1, p.Steps[i].Title)
}

// replay makes changes one after another, and says each.
func replay(p *planner.Plan, lib *library.Library, changes []change) (*planner.Plan, []string, error) {
	var said []string
	for _, c := range changes {
		next, err := c.make(p, lib)
		if err != nil {
			return nil, nil, err
		}
		said = append(said, c.says(p, lib))
		p = next
	}
	return p, said, nil
}

// parseChanges reads the changes that a page carries.
func parseChanges(text string) ([]change, error) {
	changes := []change{}
	if text == "" {
		return changes, nil
	}
	if err := json.Unmarshal([]byte(text), &changes); err != nil {
		return nil, err
	}
	if len(changes) > maxChanges {
		return nil, fmt.Errorf("found %d changes, expected at most %d", len(changes), maxChanges)
	}
	return changes, nil
}

// moves are the changes that bring the steps of p to the places that are asked
// for, by id and counted from one. Steps that are left out are not moved.
func moves(p *planner.Plan, places map[string]int, out map[string]bool) []change {
	var order, moved []string
	for _, s := range p.Steps {
		if _, asked := places[s.ID]; asked {
			moved = append(moved, s.ID)
		} else {
			order = append(order, s.ID)
		}
	}
	slices.Reverse(moved) // of two for one place, the first comes first
	slices.SortStableFunc(moved, func(a, b string) int { return places[a] - places[b] })
	for _, id := range moved {
		order = slices.Insert(order, min(places[id]-1, len(order)), id)
	}
	order = slices.DeleteFunc(order, func(id string) bool { return out[id] })
	var changes []change
	for i := len(order) - 1; i >= 0; i-- {
		if !slices.Contains(moved, order[i]) {
			continue
		}
		c := change{Do: critique.Move, Step: order[i]}
		if i+1 < len(order) {
			c.Before = order[i+1]
		}
		changes = append(changes, c)
	}
	return changes
}
