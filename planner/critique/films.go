package critique

import (
	"slices"

	"coatwright/planner"
)

// filmsOf are the films of p that steps still lay, in the order in which they
// are laid now. Until when a film may be taken back moves with it.
func filmsOf(p *planner.Plan, steps []planner.Step) []planner.Film {
	films := []planner.Film{}
	for _, s := range steps {
		i := slices.IndexFunc(p.Films, func(f planner.Film) bool { return f.Step == s.ID })
		was := planner.StepAt(p.Steps, s.ID)
		if i < 0 || was < 0 {
			continue
		}
		f := p.Films[i]
		f.Coats, f.DryUm, f.Rework = s.Coats, s.DryUm, slices.Clone(f.Rework)
		for k := range f.Rework {
			f.Rework[k].Until = s.End.Add(f.Rework[k].Until.Sub(p.Steps[was].End))
		}
		films = append(films, f)
	}
	return films
}
