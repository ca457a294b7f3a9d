package web

import (
	"slices"

	"coatwright/planner"
)

// filmsOn are the films that part gets, bottom first.
func filmsOn(p *planner.Plan, part string) []planner.Film {
	var films []planner.Film
	for _, f := range p.Films {
		if slices.Contains(f.Parts, part) {
			films = append(films, f)
		}
	}
	return films
}

// laidColour is the colour that a film has as it lies there: a candy's goes by its
// coats and by what is below.
func laidColour(p *planner.Plan, f planner.Film) string {
	if s := p.StripOf(f.Step); s != nil && s.Agreed < len(s.Coats) {
		return s.Coats[s.Agreed].Hex
	}
	return f.Colour
}

// coatedParts are the parts that get a film, as the films name them.
func coatedParts(p *planner.Plan) []string {
	var parts []string
	for _, f := range p.Films {
		for _, part := range f.Parts {
			if !slices.Contains(parts, part) {
				parts = append(parts, part)
			}
		}
	}
	return parts
}

// surface names what the part is made of. Several alike are named with their
// number: "fork blade (2)".
func surface(p *planner.Plan, part string) string {
	if p.Job != nil {
		for _, q := range p.Job.Parts {
			if q.In([]string{part}) {
				return words(q.Substrate)
			}
		}
	}
	return part
}

// stackKey is the same for parts whose drawings are the same but for the name.
func stackKey(p *planner.Plan, part string) string {
	key := surface(p, part)
	for _, f := range filmsOn(p, part) {
		key += "\n" + f.Step
	}
	return key
}
