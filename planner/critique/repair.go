package critique

import (
	"fmt"
	"slices"
	"time"

	"coatwright/planner/library"
)

// repair is the smallest change that takes a finding away and brings no others:
// the one that leaves the fewest, then the one that costs least time. It is nil
// where none of those tried helps.
func (b *bench) repair(f Finding, found []Finding) *Repair {
	var best *Repair
	bestLeft := broken(found)
	for _, r := range b.candidates(f) {
		edited, err := Apply(b.plan, b.lib, r)
		if err != nil {
			continue
		}
		again := bench{plan: edited, lib: b.lib, drying: b.drying, films: b.films}
		now := again.findings()
		left := broken(now)
		gone := !slices.ContainsFunc(now, func(o Finding) bool { return o.Level == Breaks && o.Step == f.Step && o.Need == f.Need })
		if gone && (left < bestLeft || best != nil && left == bestLeft && r.Minutes < best.Minutes) {
			best, bestLeft = &r, left
		}
	}
	return best
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

// candidates are the changes that may take a finding away.
func (b *bench) candidates(f Finding) []Repair {
	i := b.index(f.Step)
	var out []Repair
	switch f.Need {
	case "coats", "mix":
		return []Repair{{Do: Set, Step: f.Step, Says: "Do it as the notes say."}}
	case "stand", "stands":
		return b.waitsFor(i)
	}
	if i >= 0 {
		if b.lib.Words.Facts[f.Need] == nil && f.Need != "window" && f.Need != "order" {
			out = append(out, b.waitsFor(i)...)
		}
		out = append(out, b.moves(i)...)
		out = append(out, Repair{Do: Drop, Step: f.Step, Minutes: -b.plan.Steps[i].WorkMin, Says: fmt.Sprintf("Leave out %q.", f.Title)})
	}
	return append(out, b.additions(i, f)...)
}

// waitsFor are longer waits before step i: what is left of each dryness state of
// the film below.
func (b *bench) waitsFor(i int) []Repair {
	var out []Repair
	for _, minutes := range []float64{5, 15, 30, 60, 120, 240, 480, 960, 1440, 2880, 5760, 10080} {
		out = append(out, Repair{Do: Wait, Step: b.plan.Steps[i].ID, Minutes: minutes, Says: fmt.Sprintf("Wait %s longer before %q.", span(time.Duration(minutes)*time.Minute), b.plan.Steps[i].Title)})
	}
	return out
}

// moves are the places to which step i, or one that comes later and gives what it
// lacks, may be moved.
func (b *bench) moves(i int) []Repair {
	var out []Repair
	id, title := b.plan.Steps[i].ID, b.plan.Steps[i].Title
	for k := i - 8; k <= i+8; k++ {
		switch {
		case k < 0 || k > len(b.plan.Steps) || k == i || k == i+1:
		case k == len(b.plan.Steps):
			out = append(out, Repair{Do: Move, Step: id, Says: fmt.Sprintf("Do %q last.", title)})
		default:
			out = append(out, Repair{Do: Move, Step: id, Before: b.plan.Steps[k].ID, Says: fmt.Sprintf("Do %q before %q.", title, b.plan.Steps[k].Title)})
		}
	}
	for k := i + 1; k < len(b.plan.Steps) && k <= i+12; k++ {
		s := b.plan.Steps[k]
		out = append(out, Repair{Do: Move, Step: s.ID, Before: id, Says: fmt.Sprintf("Do %q before %q.", s.Title, title)})
	}
	return out
}

// additions are steps that give what a finding lacks, put before step i or, of
// the plan as a whole, before the hand-over and at the end.
func (b *bench) additions(i int, f Finding) []Repair {
	places := []int{i}
	if i < 0 {
		places = []int{len(b.plan.Steps) - 1, len(b.plan.Steps)}
	}
	for k := i - 1; i >= 0 && k >= 0 && k >= i-6; k-- {
		places = append(places, k)
	}
	var out []Repair
	for _, slug := range slugs(b.lib.Steps) {
		note := b.lib.Steps[slug]
		if note.Lays != "" || !slices.ContainsFunc(note.Gives, func(l library.Literal) bool { return l.Fact == f.Need }) {
			continue
		}
		for _, k := range places {
			r := Repair{Do: Add, Note: slug, Says: fmt.Sprintf("Add %q.", note.Title)}
			if k < len(b.plan.Steps) {
				r.Before = b.plan.Steps[k].ID
				r.Says = fmt.Sprintf("Add %q before %q.", note.Title, b.plan.Steps[k].Title)
			}
			r.Minutes = note.Work.Fixed.Minutes()
			out = append(out, r)
		}
	}
	return out
}
