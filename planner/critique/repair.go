package critique

import (
	"fmt"
	"math"
	"slices"

	"coatwright/planner/library"
)

// repairs looks for the smallest changes that take findings away, and remembers
// what each found one does: one missing step is often behind several findings.
type repairs struct {
	bench *bench
	found []Finding
	known []known
}

// known is a repair and what is still found after it.
type known struct {
	repair Repair
	left   []Finding
}

// of is the smallest repair of a finding: of those that take it away and bring
// no more than they take, the one that leaves the fewest findings, then the one
// that costs least time. It is nil where none of those tried helps.
func (r *repairs) of(f Finding) *Repair {
	for _, k := range r.known {
		if !has(k.left, f) {
			return &k.repair
		}
	}
	var best *known
	least := broken(r.found)
	for _, c := range r.bench.candidates(f) {
		edited, err := Apply(r.bench.plan, r.bench.lib, c)
		if err != nil {
			continue
		}
		again := bench{plan: edited, lib: r.bench.lib, drying: r.bench.drying, films: r.bench.films}
		left := again.findings()
		if n := broken(left); !has(left, f) && (n < least || best != nil && n == least && c.Minutes < best.repair.Minutes) {
			best, least = &known{c, left}, n
		}
	}
	if best == nil {
		return nil
	}
	r.known = append(r.known, *best)
	return &best.repair
}

func has(found []Finding, f Finding) bool {
	return slices.ContainsFunc(found, func(o Finding) bool { return o.Level == Breaks && o.Step == f.Step && o.Need == f.Need })
}

func broken(found []Finding) int {
	n := 0
	for _, f := range found {
		if f.Level == Breaks {
			n++
		}
	}
	return n
}

// reach is how many places up or down a step is tried at.
const reach = 8

// candidates are the changes that may take a finding away.
func (b *bench) candidates(f Finding) []Repair {
	i := b.index(f.Step)
	switch {
	case slices.Contains([]string{"coats", "mix", "material", "colour", "note"}, f.Need):
		return []Repair{{Do: Set, Step: f.Step, Says: fmt.Sprintf("Do %q as the notes say.", f.Title)}}
	case i < 0:
		return append(b.additions(f, []int{len(b.plan.Steps) - 1, len(b.plan.Steps)}), b.later(f, len(b.plan.Steps))...)
	}
	var out []Repair
	if f.late.longer > 0 {
		out = append(out, b.wait(i, f.late))
	}
	places := []int{i}
	for k := i - 1; k >= 0 && k >= i-reach; k-- {
		places = append(places, k)
	}
	out = append(out, b.additions(f, places)...)
	out = append(out, b.later(f, i)...)
	out = append(out, b.moves(i)...)
	return append(out, Repair{Do: Drop, Step: f.Step, Minutes: -b.plan.Steps[i].WorkMin, Says: fmt.Sprintf("Leave out %q.", f.Title)})
}

// wait is a longer wait before step i.
func (b *bench) wait(i int, l lateness) Repair {
	s := b.plan.Steps[i]
	return Repair{
		Do: Wait, Step: s.ID, After: b.plan.Steps[l.after].ID, WaitMin: math.Ceil(l.wait.Minutes()), Minutes: math.Ceil(l.longer.Minutes()),
		Says: fmt.Sprintf("Wait %s longer before %q.", span(l.longer), s.Title),
	}
}

// moves are the places near its own to which step i may be moved.
func (b *bench) moves(i int) []Repair {
	var out []Repair
	s := b.plan.Steps[i]
	for k := max(i-reach, 0); k <= min(i+reach, len(b.plan.Steps)); k++ {
		switch {
		case k == i || k == i+1:
		case k == len(b.plan.Steps):
			out = append(out, Repair{Do: Move, Step: s.ID, Says: fmt.Sprintf("Do %q last.", s.Title)})
		default:
			out = append(out, Repair{Do: Move, Step: s.ID, Before: b.plan.Steps[k].ID, Says: fmt.Sprintf("Do %q before %q.", s.Title, b.plan.Steps[k].Title)})
		}
	}
	return out
}

// later are the steps from place i on that give what a finding lacks, moved up
// before it.
func (b *bench) later(f Finding, i int) []Repair {
	var out []Repair
	for k := i + 1; k < len(b.plan.Steps); k++ {
		s := b.plan.Steps[k]
		if note := b.note(k); note == nil || !gives(note, f.Need) || s.Coats > 0 {
			continue
		}
		out = append(out, Repair{Do: Move, Step: s.ID, Before: b.plan.Steps[i].ID, Says: fmt.Sprintf("Do %q before %q.", s.Title, b.plan.Steps[i].Title)})
	}
	return out
}

// additions are steps that give what a finding lacks, at each of the places.
func (b *bench) additions(f Finding, places []int) []Repair {
	var out []Repair
	for _, slug := range slugs(b.lib.Steps) {
		note := b.lib.Steps[slug]
		if note.Lays != "" || !gives(note, f.Need) {
			continue
		}
		for _, k := range places {
			r := Repair{Do: Add, Note: slug, Minutes: note.Work.Fixed.Minutes(), Says: fmt.Sprintf("Add %q at the end.", note.Title)}
			if k < len(b.plan.Steps) {
				r.Before = b.plan.Steps[k].ID
				r.Says = fmt.Sprintf("Add %q before %q.", note.Title, b.plan.Steps[k].Title)
			}
			out = append(out, r)
		}
	}
	return out
}

func gives(note *library.Step, fact string) bool {
	return slices.ContainsFunc(note.Gives, func(l library.Literal) bool { return l.Fact == fact })
}
