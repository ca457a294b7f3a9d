package route

import (
	"fmt"
	"math/rand/v2"

	"coatwright/planner/library"
	q "coatwright/quantity"
)

// randomProblem makes a small job with a library of its own: a few facts, steps
// that give and spoil them, prep films, required films, scratches, windows,
// wants. Some have no route.
func randomProblem(r *rand.Rand) *Problem {
	w := randomWords(r)
	lib := &library.Library{Words: w, Steps: map[string]*library.Step{}, Materials: map[string]*library.Material{}, Tools: map[string]*library.Tool{}}
	facts := sorted(w.Facts)
	for i := range 3 + r.IntN(4) {
		slug := fmt.Sprintf("step-%d", i)
		lib.Steps[slug] = randomStep(r, slug, facts)
	}
	for _, role := range w.Roles {
		addRandomFilm(r, lib, facts, role.Name)
	}
	p := &Problem{
		Library: lib, System: "any", Care: []float64{0.3, 1, 1.5}[r.IntN(3)], Area: 0.5, Piece: 0.5,
		Lag: func(m *library.Material, state string) (q.Time, bool) {
			d, ok := m.Dries[state]
			return d.In, ok
		},
		Closes: func(m *library.Material) q.Time { return m.Dries[recoat].Closes },
		Stands: func(d library.Drying) q.Time { return d.In },
		Shut:   map[string]bool{},
	}
	for _, f := range facts {
		if r.IntN(3) == 0 && f != "keyed" {
			p.Facts = append(p.Facts, library.Literal{Fact: f})
		}
	}
	for _, role := range w.Roles[1:] {
		p.Films = append(p.Films, Film{Role: role.Name, Materials: []string{"film-" + role.Name}})
	}
	p.Ends = []string{facts[r.IntN(len(facts))], "dry-hard"}
	p.EndWants = []library.Want{randomWant(r, facts)}
	return p
}

func randomWords(r *rand.Rand) *library.Vocabulary {
	w := &library.Vocabulary{
		Facts:   map[string]*library.Fact{"keyed": {Name: "keyed", Of: library.Surface, Number: true}},
		Dryness: []library.Word{{Name: "dry-to-touch"}, {Name: recoat}, {Name: "dry-hard"}},
		Roles:   []library.Role{{Name: "seal", Prep: true}, {Name: "ground"}, {Name: "clear"}},
		Phases:  []library.Word{{Name: "clean"}, {Name: "coat"}, {Name: "level"}, {Name: "inspect"}},
	}
	scopes := []library.Scope{library.Part, library.Surface, library.Surface, library.Bench}
	for i := range 3 + r.IntN(3) {
		name := fmt.Sprintf("fact-%d", i)
		w.Facts[name] = &library.Fact{Name: name, Of: scopes[r.IntN(4)], Fresh: r.IntN(2) == 0}
	}
	return w
}

func pick(r *rand.Rand, facts []string, most int) []string {
	var out []string
	for range r.IntN(most + 1) {
		if f := facts[r.IntN(len(facts))]; f != "keyed" {
			out = append(out, f)
		}
	}
	return out
}

func literals(facts []string) []library.Literal {
	var out []library.Literal
	for _, f := range facts {
		out = append(out, library.Literal{Fact: f})
	}
	return out
}

func needsOf(r *rand.Rand, facts []string) []library.Need {
	var out []library.Need
	for _, f := range facts {
		n := library.Need{Any: literals([]string{f})}
		if r.IntN(4) == 0 {
			n.Any = append(n.Any, library.Literal{Fact: "dry-to-touch"})
		}
		out = append(out, n)
	}
	return out
}

func randomWant(r *rand.Rand, facts []string) library.Want {
	return library.Want{Literal: library.Literal{Fact: facts[r.IntN(len(facts))]}, Saves: q.Time(60 * r.IntN(30))}
}

func randomStep(r *rand.Rand, slug string, facts []string) *library.Step {
	phases := []string{"clean", "coat", "level", "inspect"}
	s := &library.Step{
		Slug: slug, Phase: phases[r.IntN(4)], Needs: needsOf(r, pick(r, facts, 1)),
		Gives: literals(pick(r, facts, 2)), Spoils: pick(r, facts, 1),
		Work: library.Work{Fixed: q.Time(60 * (1 + r.IntN(20)))},
	}
	if r.IntN(4) == 0 {
		s.Gives = append(s.Gives, library.Literal{Fact: "keyed", Number: randomGrit(r)})
	}
	if r.IntN(5) == 0 {
		s.Needs = append(s.Needs, library.Need{Any: literals([]string{"dry-hard"})})
	}
	if r.IntN(6) == 0 {
		s.Before = []string{"dry-hard"}
		s.OnlyIf.On = "film"
	}
	if r.IntN(5) == 0 {
		s.Stands = library.Drying{In: q.Time(60 * r.IntN(60))}
	}
	return s
}

func randomGrit(r *rand.Rand) q.Range[q.Grit] {
	low := q.Grit(100 * (1 + r.IntN(5)))
	return q.Range[q.Grit]{Low: low, High: low + q.Grit(100*r.IntN(3))}
}

func addRandomFilm(r *rand.Rand, lib *library.Library, facts []string, role string) {
	m := &library.Material{
		Slug: "film-" + role, Role: role, System: "any", Coats: 1 + r.IntN(2), Build: 1e-5, SolidsByVolume: 0.3,
		Needs: needsOf(r, pick(r, facts, 1)), Gives: pick(r, facts, 1), Spoils: pick(r, facts, 1),
		Dries: map[string]library.Drying{
			"dry-to-touch": {In: q.Time(60 * r.IntN(60))},
			recoat:         {In: q.Time(60 * r.IntN(120))},
			"dry-hard":     {In: q.Time(3600 * (2 + r.IntN(20)))},
		},
	}
	if r.IntN(2) == 0 {
		m.Key = randomGrit(r)
	}
	if r.IntN(4) == 0 {
		d := m.Dries[recoat]
		d.Closes = d.In + q.Time(3600*r.IntN(4)) + 60
		m.Dries[recoat] = d
	}
	if r.IntN(2) == 0 {
		m.Wants = []library.Want{randomWant(r, facts)}
	}
	lib.Materials[m.Slug] = m
	slug := "lay-" + role
	lib.Steps[slug] = &library.Step{
		Slug: slug, Phase: "coat", Lays: role, Needs: needsOf(r, pick(r, facts, 2)), Spoils: pick(r, facts, 2),
		Work: library.Work{Fixed: q.Time(60 * (5 + r.IntN(10)))},
	}
}
