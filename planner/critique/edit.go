package critique

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"coatwright/planner"
	"coatwright/planner/library"
	"coatwright/planner/route"
)

// Apply returns the plan with a repair made. The plan itself is left as it is;
// the error says what of the repair does not fit it.
func Apply(p *planner.Plan, lib *library.Library, r Repair) (*planner.Plan, error) {
	edited := *p
	edited.Steps = slices.Clone(p.Steps)
	at := planner.StepAt(edited.Steps, r.Step)
	if r.Do != Add && at < 0 {
		return nil, fmt.Errorf("the plan has no step %q", r.Step)
	}
	if len(edited.Steps) == 0 {
		return nil, fmt.Errorf("the plan has no steps to add one beside")
	}
	before := len(edited.Steps)
	if r.Before != "" {
		if before = planner.StepAt(edited.Steps, r.Before); before < 0 {
			return nil, fmt.Errorf("the plan has no step %q to put it before", r.Before)
		}
	}
	switch r.Do {
	case Add:
		note := lib.Steps[r.Note]
		if note == nil {
			return nil, fmt.Errorf("there is no step note %q", r.Note)
		}
		edited.Steps = slices.Insert(edited.Steps, before, newStep(&edited, lib, note, before))
	case Move:
		s := edited.Steps[at]
		if before > at {
			before--
		}
		edited.Steps = slices.Insert(slices.Delete(edited.Steps, at, at+1), before, s)
	case Drop:
		edited.Steps = slices.Delete(edited.Steps, at, at+1)
	case Wait:
		edited.Steps[at] = waiting(edited.Steps[at], r.After, r.WaitMin)
	case Set:
		edited.Steps[at] = asNoted(&edited, lib, at)
	default:
		return nil, fmt.Errorf("found the change %q, expected add, move, drop, wait or set", r.Do)
	}
	return &edited, nil
}

// newStep is the note's step for the parts of the step that it goes before, or
// of the last.
func newStep(p *planner.Plan, lib *library.Library, note *library.Step, before int) planner.Step {
	beside := p.Steps[min(before, len(p.Steps)-1)]
	s := planner.Step{
		Note: "step/" + note.Slug, Title: note.Title, Phase: note.Phase, Parts: beside.Parts, Films: []string{},
		For: beside.For, Needs: []string{}, Gives: []string{}, Because: note.Because, Skipped: note.Skipped,
		Checks: note.Checks, Cautions: note.Cautions, Uses: []planner.Use{}, Waits: []planner.Wait{}, Why: []planner.Reason{}, Serves: []planner.Reason{},
	}
	for n := 1; s.ID == "" || planner.StepAt(p.Steps, s.ID) >= 0; n++ {
		if s.ID = note.Slug; n > 1 {
			s.ID = fmt.Sprintf("%s-%d", note.Slug, n)
		}
	}
	if note.Mixes {
		for _, next := range p.Steps[before:] {
			if next.Coats > 0 {
				s.Films, s.Material = next.Films, next.Material
				break
			}
		}
	}
	s.Extents = extents(p.Job, s.Parts)
	s.Waits = waitsFor(p, lib, note, s.Parts, before)
	s.WorkMin = note.Work.Fixed.Minutes()
	if note.Work.Of == library.OfPart {
		s.WorkMin += float64(note.Work.PerArea) * s.Area() / 60
	}
	return s
}

// extents are the areas of whole parts.
func extents(job *planner.Job, parts []string) []planner.Extent {
	out := []planner.Extent{}
	for _, p := range job.Parts {
		if p.In(parts) {
			out = append(out, planner.Extent{Parts: []string{p.Label()}, M2: float64(p.Total()), Form: p.Form})
		}
	}
	return out
}

// waitsFor are the waits of a new step before place at: until the film below is
// as dry as the note needs, and for as long as the step before it asks.
func waitsFor(p *planner.Plan, lib *library.Library, note *library.Step, parts []string, at int) []planner.Wait {
	waits := []planner.Wait{}
	drying := planner.NewDrying(p.Job, lib)
	shares := func(s planner.Step) bool {
		return slices.ContainsFunc(s.Parts, func(part string) bool { return slices.Contains(parts, part) })
	}
	stood := false
	for k := at - 1; k >= 0; k-- {
		s := p.Steps[k]
		if !shares(s) {
			continue
		}
		if before := lib.Steps[strings.TrimPrefix(s.Note, "step/")]; !stood && before != nil && before.Stands.In > 0 {
			waits = append(waits, planner.Wait{Until: "dry", After: s.ID, Min: drying.Stands(before.Stands).Minutes(), By: before.Stands.By})
		}
		stood = true
		if s.Coats == 0 {
			continue
		}
		film := route.Coating{Material: lib.Materials[strings.TrimPrefix(s.Material, "material/")], Tool: lib.Tools[strings.TrimPrefix(s.Applicator, "tool/")]}
		for _, n := range note.Needs {
			if lag, ok := drying.Lag(film, n.Any[0].Fact); ok {
				waits = append(waits, planner.Wait{Until: n.Any[0].Fact, After: s.ID, Min: math.Ceil(lag.Minutes()), By: film.Dries[n.Any[0].Fact].By})
			}
		}
		break
	}
	return waits
}

// waiting is step i with at least that wait after an earlier step.
func waiting(s planner.Step, after string, minutes float64) planner.Step {
	s.Waits = slices.Clone(s.Waits)
	for k, w := range s.Waits {
		if w.After == after {
			s.Waits[k].Min = max(w.Min, minutes)
			return s
		}
	}
	s.Waits = append(s.Waits, planner.Wait{Until: "dry enough", After: after, Min: minutes})
	return s
}

// asNoted is step i as the planner would have it: with the coats, the mix, the
// material and the colour that the notes and the job say.
func asNoted(p *planner.Plan, lib *library.Library, i int) planner.Step {
	s := p.Steps[i]
	plain, err := planner.New(p.Job, lib)
	if err != nil || plain.Refused != nil {
		return s
	}
	if k := planner.StepAt(plain.Steps, s.ID); k >= 0 {
		noted := plain.Steps[k]
		noted.Waits, noted.Start, noted.End = s.Waits, s.Start, s.End
		return noted
	}
	return s
}
