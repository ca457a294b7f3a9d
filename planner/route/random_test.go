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
	lib := &library.Library{Words: w, Substrates: map[string]*library.Substrate{}, Steps: map[string]*library.Step{}, Materials: map[string]*library.Material{}, Tools: map[string]*library.Tool{}}
	facts := sorted(w.Facts)
	for i := range 3 + r.IntN(4) {
		slug := fmt.Sprintf("step-%d", i)
		lib.Steps[slug] = randomStep(r, slug, facts)
	}
	lib.Tools["tool"] = &library.Tool{Slug: "tool"}
	lib.Tools["tape"] = &library.Tool{Slug: "tape", Tape: &library.Tape{Over: randomRules(r, facts)}}
	for _, role := range w.Roles {
		addRandomFilm(r, lib, facts, role.Name)
	}
	p := &Problem{
		Library: lib, Substrate: randomSubstrates(r, lib, facts), System: "any", Tools: []string{"tool"}, Care: []float64{0.3, 1, 1.5}[r.IntN(3)], Area: 0.5, Piece: 0.5,
		Lag: func(m Coating, state string) (q.Time, bool) {
			d, ok := m.Dries[state]
			return d.In, ok
		},
		Closes: func(m *library.Material) q.Time { return m.Dries[recoat].Closes },
		Stands: func(d library.Drying) q.Time { return d.In },
		Shut:   map[Window]bool{},
	}
	for _, f := range facts {
		if r.IntN(3) == 0 && f != "keyed" {
			p.Facts = append(p.Facts, library.Literal{Fact: f})
		}
	}
	p.Facts = append(p.Facts, p.Substrate.Facts...)
	addFilms(r, p)
	p.Ends = []string{facts[r.IntN(len(facts))], "dry-hard"}
	p.EndWants = []library.Want{randomWant(r, facts)}
	return p
}

// addFilms asks for a ground, sometimes for a design or two, and for a clear.
func addFilms(r *rand.Rand, p *Problem) {
	add := func(role string, l *Layer) {
		p.Films = append(p.Films, Film{Role: role, Materials: []string{"film-" + role}, Layer: l})
	}
	add("ground", nil)
	for range r.IntN(3) {
		add("art", &Layer{Mask: []string{"film", "free"}[r.IntN(2)], Sprayed: 0.1, Extent: 0.2, Piece: 0.1})
	}
	add("clear", nil)
}

// randomSubstrates is what the part is made of, sometimes with another below.
func randomSubstrates(r *rand.Rand, lib *library.Library, facts []string) *library.Substrate {
	s := &library.Substrate{Slug: "old", Traits: randomTraits(r), Facts: literals(pick(r, facts, 1))}
	if r.IntN(3) == 0 {
		s.Under = "bare"
		lib.Substrates["bare"] = &library.Substrate{Slug: "bare", Traits: randomTraits(r), Facts: literals(pick(r, facts, 2))}
	}
	return s
}

func randomTraits(r *rand.Rand) []string {
	if r.IntN(2) == 0 {
		return nil
	}
	return []string{[]string{"hard", "oily"}[r.IntN(2)]}
}

// randomRules is what a film or a tape must not lie on, or not yet.
func randomRules(r *rand.Rand, facts []string) []library.Over {
	if r.IntN(4) != 0 {
		return nil
	}
	var o library.Over
	switch r.IntN(3) {
	case 0:
		o.Trait = []string{"hard", "oily"}[r.IntN(2)]
	case 1:
		o.Role = []string{"seal", "ground", "lock", "art"}[r.IntN(4)]
	case 2:
		o.Material = "film-" + []string{"seal", "ground", "lock", "art"}[r.IntN(4)]
	}
	if o.Never = r.IntN(2) == 0; !o.Never {
		o.Needs.Fact = []string{"dry-hard", "dry-to-touch", facts[0]}[r.IntN(3)]
	}
	return []library.Over{o}
}

func randomWords(r *rand.Rand) *library.Vocabulary {
	w := &library.Vocabulary{
		Facts:   map[string]*library.Fact{"keyed": {Name: "keyed", Of: library.Surface, Number: true}},
		Dryness: []library.Word{{Name: "dry-to-touch"}, {Name: recoat}, {Name: "dry-hard"}},
		Roles:   []library.Role{{Name: "seal", Prep: true}, {Name: "ground"}, {Name: "lock", Prep: true}, {Name: "art", Local: true}, {Name: "clear"}},
		Traits:  []library.Word{{Name: "hard"}, {Name: "oily"}},
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
	switch r.IntN(8) {
	case 0:
		s.Work.Of, s.Work.PerArea = library.OfLayer, 600
	case 1:
		s.Work.Of, s.Work.PerArea = library.OfLaidLayer, 600
	case 2:
		s.OnlyIf.Masks = []string{"film"}
	case 3:
		s.OnlyIf.Traits = []string{"hard"}
	case 4:
		s.Strips = true
	case 5:
		s.Uses = []library.Use{{Tool: "tape"}}
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
	m.Traits, m.Barrier, m.Over = randomTraits(r), r.IntN(4) == 0, randomRules(r, facts)
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
