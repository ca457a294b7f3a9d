package main

import (
	"fmt"
	"net/url"
	"strconv"
	"strings"

	"coatwright/planner"
	"coatwright/planner/critique"
	"coatwright/web"
)

// entered are the edits that stand in the fields of the edit page, in the order
// in which they are made: coats, waits, steps left out, places. Fields that say
// what p says already are none. Where something cannot be read it is told by
// field, and there are no edits.
func entered(form url.Values, p *planner.Plan) ([]change, map[string]string) {
	problems := map[string]string{}
	number := func(field, was string, low, high int, what string) (n int, changed bool) {
		text := strings.TrimSpace(form.Get(field))
		if !form.Has(field) || text == was {
			return 0, false
		}
		n, err := strconv.Atoi(text)
		if err != nil || n < low || n > high {
			problems[field] = fmt.Sprintf("Found “%s”, expected %s from %d to %d.", text, what, low, high)
			return 0, false
		}
		return n, true
	}
	var coats, waits, drops []change
	places, out := map[string]int{}, map[string]bool{}
	for i, s := range p.Steps {
		was := web.EditStepOf(p, i)
		if n, changed := number("coats-"+s.ID, was.Coats, 1, planner.MaxCoats, "a number of coats"); changed && s.Coats > 0 {
			coats = append(coats, change{Do: setCoats, Step: s.ID, Number: float64(n)})
		}
		if n, changed := number("wait-"+s.ID, was.Wait, 0, maxWait, "minutes"); changed && was.Wait != "" {
			waits = append(waits, change{Do: setWait, Step: s.ID, Number: float64(n)})
		}
		if form.Get("out-"+s.ID) != "" {
			drops, out[s.ID] = append(drops, change{Do: critique.Drop, Step: s.ID}), true
		}
		if n, changed := number("place-"+s.ID, was.Place, 1, len(p.Steps), "a place"); changed {
			places[s.ID] = n
		}
	}
	if len(drops) == len(p.Steps) {
		problems["out-"+p.Steps[0].ID] = "A plan has at least one step: leave one in."
	}
	if len(problems) > 0 {
		return nil, problems
	}
	changes := append(coats, waits...)
	changes = append(changes, moves(p, places, out)...)
	return append(changes, drops...), nil
}

// keepPrefix starts the name of a field that says why a finding is kept; the
// step's id and the need follow.
const keepPrefix = "keep "

func keepName(step, need string) string { return keepPrefix + step + " " + need }

// keptReasons are the reasons that stand in a form.
func keptReasons(form url.Values) []planner.Kept {
	kept := []planner.Kept{}
	for name := range form {
		rest, is := strings.CutPrefix(name, keepPrefix)
		step, need, ok := strings.Cut(rest, " ")
		if reason := strings.TrimSpace(form.Get(name)); is && ok && reason != "" {
			kept = append(kept, planner.Kept{Step: step, Need: need, Reason: reason})
		}
	}
	return kept
}
