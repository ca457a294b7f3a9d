package planner_test

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"coatwright/planner"
	"coatwright/planner/library"
)

// verify replays a plan, step by step in the order of its clock, against the
// notes, and says what a painter would find wrong. It shares no code with the
// route: facts are words in a map, waits are read off the clock.
func verify(p *planner.Plan, lib *library.Library) []string {
	var faults []string
	for _, part := range partsOf(p) {
		v := &replay{lib: lib, plan: p, part: part, facts: map[string]bool{}}
		faults = append(faults, v.run()...)
	}
	return append(faults, handsFree(p)...)
}

func partsOf(p *planner.Plan) []string {
	var parts []string
	for _, s := range p.Steps {
		for _, part := range s.Parts {
			if !slices.Contains(parts, part) {
				parts = append(parts, part)
			}
		}
	}
	return parts
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

// replay is one part on its way through the plan.
type replay struct {
	lib    *library.Library
	plan   *planner.Plan
	part   string
	facts  map[string]bool
	top    *library.Material
	laid   time.Time // when the top film's last coat was on
	free   time.Time // when the part may be touched again
	films  []string
	faults []string
}

func (v *replay) fault(s planner.Step, format string, args ...any) {
	v.faults = append(v.faults, fmt.Sprintf("%s, %s: ", v.part, s.ID)+fmt.Sprintf(format, args...))
}

func (v *replay) run() []string {
	v.begin()
	for _, s := range v.plan.Steps {
		if slices.Contains(s.Parts, v.part) {
			v.step(s)
		}
	}
	if v.facts["masked-off"] && !v.startsMasked() {
		v.faults = append(v.faults, v.part+": its masking is never taken off")
	}
	if !v.facts["handed-over"] {
		v.faults = append(v.faults, v.part+": it is never handed over")
	}
	return v.faults
}

func (v *replay) job() planner.Part {
	for _, p := range v.plan.Job.Parts {
		if p.Name == v.part || strings.HasPrefix(v.part, p.Name+" (") {
			return p
		}
	}
	return planner.Part{}
}

func (v *replay) startsMasked() bool { return v.job().KeepFree == "none" }

func (v *replay) begin() {
	part := v.job()
	for _, f := range v.lib.Substrates[part.Substrate].Facts {
		v.facts[f.Fact] = true
	}
	for name, f := range v.lib.Words.Facts {
		switch f.AtStart {
		case library.Always:
			v.facts[name] = true
		case library.ArrivesLoose:
			v.facts[name] = !part.Assembled
		case library.ArrivesBare:
			v.facts[name] = v.startsMasked()
		}
	}
}

func (v *replay) step(s planner.Step) {
	note := v.lib.Steps[strings.TrimPrefix(s.Note, "step/")]
	if note == nil {
		v.fault(s, "has no note")
		return
	}
	var m *library.Material
	if note.Lays != "" {
		m = v.lib.Materials[strings.TrimPrefix(s.Material, "material/")]
	}
	needs := slices.Clone(note.Needs)
	if m != nil {
		needs = append(needs, m.Needs...)
	}
	for _, n := range needs {
		if !slices.ContainsFunc(n.Any, func(l library.Literal) bool { return v.holds(l, s) }) {
			v.fault(s, "needs %q and it does not hold", n.Any[0].Fact)
		}
	}
	bench := len(note.Gives) > 0 && v.lib.Words.Facts[note.Gives[0].Fact].Of == library.Bench
	if !bench && s.Start.Before(v.free) {
		v.fault(s, "starts while the part must stand until %s", v.free)
	}
	if m != nil {
		v.lay(s, note, m)
		return
	}
	v.change(note.Spoils, note.Gives)
	if note.Stands.In > 0 {
		v.free = s.End
	}
}

// holds looks a fact up, and reads a dryness state off the clock: the step must
// name its wait, and start no sooner.
func (v *replay) holds(l library.Literal, s planner.Step) bool {
	if !slices.ContainsFunc(v.lib.Words.Dryness, func(w library.Word) bool { return w.Name == l.Fact }) {
		return v.facts[l.Fact]
	}
	if v.top == nil {
		return true
	}
	for _, w := range s.Waits {
		if w.Until == l.Fact && s.Start.Sub(v.laid).Minutes() >= w.Min-1e-9 {
			return true
		}
	}
	return false
}

func (v *replay) lay(s planner.Step, note *library.Step, m *library.Material) {
	open := false
	for _, w := range s.Waits {
		waited := s.Start.Sub(v.laid).Minutes()
		open = open || w.Until == "dry-to-recoat" && waited >= w.Min && (w.Max == 0 || waited <= w.Max)
	}
	keyed := v.facts["keyed"] && !m.Key.IsZero()
	if !(v.top == nil && m.Key.IsZero()) && !keyed && !(v.top != nil && open) {
		v.fault(s, "%s has neither a key nor an open window under it", m.Slug)
	}
	for name, f := range v.lib.Words.Facts {
		if f.Of == library.Surface {
			v.facts[name] = f.Fresh
		}
	}
	spoils := append(slices.Clone(note.Spoils), m.Spoils...)
	gives := []library.Literal{{Fact: "film/" + m.Role}}
	for _, g := range m.Gives {
		gives = append(gives, library.Literal{Fact: g})
	}
	v.change(spoils, gives)
	v.top, v.laid = m, s.End
	v.films = append(v.films, m.Role)
}

func (v *replay) change(spoils []string, gives []library.Literal) {
	for _, f := range spoils {
		delete(v.facts, f)
	}
	for _, g := range gives {
		v.facts[g.Fact] = true
	}
}
