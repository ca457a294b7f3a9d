package planner

import (
	"maps"
	"slices"

	"coatwright/planner/library"
	"coatwright/planner/route"
	q "coatwright/quantity"
)

// group is parts that start alike and so take the same route.
type group struct {
	substrate *library.Substrate
	form      string
	assembled bool
	bare      bool // nothing on the parts must stay free of paint
	parts     []Part
	problem   *route.Problem
	route     *route.Route
}

func groupParts(job *Job, lib *library.Library) []*group {
	var groups []*group
	for _, p := range job.Parts {
		g := &group{substrate: lib.Substrates[p.Substrate], form: p.Form, assembled: p.Assembled, bare: p.KeepFree == "none"}
		same := func(o *group) bool {
			return o.substrate == g.substrate && o.form == g.form && o.assembled == g.assembled && o.bare == g.bare
		}
		if i := slices.IndexFunc(groups, same); i >= 0 {
			g = groups[i]
		} else {
			groups = append(groups, g)
		}
		g.parts = append(g.parts, p)
	}
	return groups
}

func (g *group) names() []string {
	names := make([]string, len(g.parts))
	for i, p := range g.parts {
		names[i] = p.Name
	}
	return names
}

// area is of all pieces; largest of the largest piece.
func (g *group) area() (area, largest q.Area) {
	for _, p := range g.parts {
		area += p.Total()
		largest = max(largest, p.Area)
	}
	return area, largest
}

// facts is what holds of the parts and the bench when the job starts.
func (g *group) facts(words *library.Vocabulary) []library.Literal {
	facts := slices.Clone(g.substrate.Facts)
	for _, name := range slices.Sorted(maps.Keys(words.Facts)) {
		switch at := words.Facts[name].AtStart; {
		case at == library.Always, at == library.ArrivesLoose && !g.assembled, at == library.ArrivesBare && g.bare:
			facts = append(facts, library.Literal{Fact: name})
		}
	}
	return facts
}

// routeProblem is the group's problem for package route.
func (g *group) routeProblem(job *Job, lib *library.Library, d *drying, shut map[string]bool) *route.Problem {
	area, largest := g.area()
	finish := lib.Finishes[job.Finish]
	return &route.Problem{
		Library:  lib,
		Traits:   g.substrate.Traits,
		Facts:    g.facts(lib.Words),
		Films:    films(job, lib),
		Ends:     finish.Ends,
		EndWants: finish.Wants,
		System:   job.System,
		Care:     careFactor(job, lib),
		Form:     g.form,
		Area:     area,
		Piece:    largest,
		Tool:     job.Applicator,
		Lag:      d.lag,
		Closes:   d.closes,
		Stands:   d.stands,
		Shut:     shut,
	}
}

func careFactor(job *Job, lib *library.Library) float64 {
	for _, c := range lib.Words.Care {
		if c.Name == job.Care {
			return c.Factor
		}
	}
	return 1
}

// films are the films of effect and finish, each with the materials that may
// make it.
func films(job *Job, lib *library.Library) []route.Film {
	var out []route.Film
	add := func(f library.Film, allowed func(*library.Material) bool) {
		film := route.Film{Role: f.Role, Coats: f.Coats}
		if f.Colour == "candy" && job.CandyCoats > 0 {
			film.Coats = job.CandyCoats
		}
		for _, slug := range slices.Sorted(maps.Keys(lib.Materials)) {
			m := lib.Materials[slug]
			if m.Role == f.Role && (len(f.Materials) == 0 || slices.Contains(f.Materials, slug)) && allowed(m) {
				film.Materials = append(film.Materials, slug)
			}
		}
		out = append(out, film)
	}
	for _, f := range lib.Effects[job.Effect].Films {
		add(f, func(*library.Material) bool { return true })
	}
	finish := lib.Finishes[job.Finish]
	for _, f := range finish.Films {
		add(f, func(m *library.Material) bool {
			_, meets := m.Gloss.Meets(finish.Gloss)
			return meets && (job.Clear == "" || m.System == job.Clear)
		})
	}
	return out
}
