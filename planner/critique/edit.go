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
	at := indexOf(edited.Steps, r.Step)
	if r.Step != "" && at < 0 {
		return nil, fmt.Errorf("the plan has no step %q", r.Step)
	}
	before := len(edited.Steps)
	if r.Before != "" {
		if before = indexOf(edited.Steps, r.Before); before < 0 {
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
		edited.Steps[at] = waiting(edited.Steps, at, r.Minutes)
	case Set:
		edited.Steps[at] = asNoted(&edited, lib, at)
	default:
		return nil, fmt.Errorf("found the change %q, expected add, move, drop, wait or set", r.Do)
	}
	return &edited, nil
}

func indexOf(steps []planner.Step, id string) int {
	return slices.IndexFunc(steps, func(s planner.Step) bool { return s.ID == id })
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
	for n := 1; s.ID == "" || indexOf(p.Steps, s.ID) >= 0; n++ {
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
	area := 0.0
	for _, part := range p.Job.Parts {
		if slices.ContainsFunc(s.Parts, func(name string) bool { return name == part.Name || strings.HasPrefix(name, part.Name+" (") }) {
			area += float64(part.Total())
		}
	}
	s.Waits = waitsFor(p, lib, note, s.Parts, before)
	s.WorkMin = note.Work.Fixed.Minutes()
	if note.Work.Of == library.OfPart {
		s.WorkMin += float64(note.Work.PerArea) * area / 60
	}
	return s
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

// waiting is step i with its wait after the last film on its parts longer by so
// many minutes.
func waiting(steps []planner.Step, i int, more float64) planner.Step {
	s := steps[i]
	s.Waits = slices.Clone(s.Waits)
	film := -1
	for k := i - 1; k >= 0 && film < 0; k-- {
		if steps[k].Coats > 0 && slices.ContainsFunc(steps[k].Parts, func(p string) bool { return slices.Contains(s.Parts, p) }) {
			film = k
		}
	}
	if film < 0 {
		film = max(i-1, 0)
	}
	for k, w := range s.Waits {
		if w.After == steps[film].ID && w.Max == 0 {
			s.Waits[k].Min += more
			return s
		}
	}
	s.Waits = append(s.Waits, planner.Wait{Until: "dry enough", After: steps[film].ID, Min: more, By: "the critique"})
	return s
}

// asNoted is step i with coats and mix as the notes say.
func asNoted(p *planner.Plan, lib *library.Library, i int) planner.Step {
	s := p.Steps[i]
	if plain, err := planner.New(p.Job, lib); err == nil && plain.Refused == nil {
		for _, o := range plain.Steps {
			if o.Note == s.Note && o.Material == s.Material && o.Design == s.Design && o.Colour == s.Colour {
				s.Coats, s.Mix, s.WetUm, s.DryUm, s.WorkMin = o.Coats, o.Mix, o.WetUm, o.DryUm, o.WorkMin
				return s
			}
		}
	}
	if m := lib.Materials[strings.TrimPrefix(s.Material, "material/")]; m != nil && s.Coats > 0 {
		s.Coats = m.Coats
	}
	return s
}
