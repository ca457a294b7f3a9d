package planner

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"coatwright/planner/library"
	"coatwright/planner/route"
	q "coatwright/quantity"
)

// group is parts that start alike and are to become alike, and so take the same
// route.
type group struct {
	substrate *library.Substrate
	form      string
	assembled bool
	bare      bool // nothing on the parts must stay free of paint
	parts     []Part
	designs   []Design
	films     []AgreedFilm
	problem   *route.Problem
	route     *route.Route
}

// AgreedFilm is a film that was agreed with the customer.
type AgreedFilm struct {
	route.Film
	Colour string // "#rrggbb" or ""
	Design string // what it is of a design: "maker's name: letters"; "" for none
	Asked  string // who asks for it, in a sentence
}

// groupParts brings like parts together. A part with designs stands alone.
func groupParts(job *Job, lib *library.Library) []*group {
	var groups []*group
	for _, p := range job.Parts {
		if p.Leave {
			continue
		}
		g := &group{substrate: lib.Substrates[p.Substrate], form: p.Form, assembled: p.Assembled, bare: p.KeepFree == "none"}
		for _, d := range job.Designs {
			if d.On == p.Name {
				g.designs = append(g.designs, d)
			}
		}
		same := func(o *group) bool {
			return o.substrate == g.substrate && o.form == g.form && o.assembled == g.assembled && o.bare == g.bare && len(o.designs)+len(g.designs) == 0
		}
		if i := slices.IndexFunc(groups, same); i >= 0 {
			g = groups[i]
		} else {
			groups = append(groups, g)
		}
		g.parts = append(g.parts, p)
	}
	for _, g := range groups {
		g.films = g.agreed(job, lib)
	}
	return groups
}

func (g *group) names() []string { return partNames(g.parts) }

// area is of all pieces; largest of the largest piece.
func (g *group) area() (area, largest q.Area) {
	for _, p := range g.parts {
		area += p.Total()
		largest = max(largest, p.Area)
	}
	return area, largest
}

// StartFacts is what holds of a part, and of the bench, before any work.
func StartFacts(p Part, lib *library.Library) []library.Literal {
	facts := slices.Clone(lib.Substrates[p.Substrate].Facts)
	for _, name := range slices.Sorted(maps.Keys(lib.Words.Facts)) {
		switch at := lib.Words.Facts[name].AtStart; {
		case at == library.Always, at == library.ArrivesLoose && !p.Assembled, at == library.ArrivesBare && p.KeepFree == "none":
			facts = append(facts, library.Literal{Fact: name})
		}
	}
	return facts
}

// FilmsOf is the films that were agreed for each part, in laying order.
func FilmsOf(job *Job, lib *library.Library) map[string][]AgreedFilm {
	films := map[string][]AgreedFilm{}
	for _, g := range groupParts(job, lib) {
		for _, p := range g.parts {
			films[p.Name] = g.films
		}
	}
	return films
}

// routeProblem is the group's problem for package route.
func (g *group) routeProblem(job *Job, lib *library.Library, d *Drying, shut map[route.Window]bool) *route.Problem {
	area, largest := g.area()
	finish := lib.Finishes[job.Finish]
	p := &route.Problem{
		Library:   lib,
		Substrate: g.substrate,
		Facts:     StartFacts(g.parts[0], lib),
		Ends:      finish.Ends,
		EndWants:  finish.Wants,
		System:    job.System,
		Care:      careFactor(job, lib),
		Form:      g.form,
		Area:      area,
		Piece:     largest,
		Tools:     job.Applicators,
		Lag:       d.Lag,
		Closes:    d.Closes,
		Stands:    d.Stands,
		Shut:      shut,
	}
	for _, f := range g.films {
		p.Films = append(p.Films, f.Film)
	}
	return p
}

func careFactor(job *Job, lib *library.Library) float64 {
	for _, c := range lib.Words.Care {
		if c.Name == job.Care {
			return c.Factor
		}
	}
	return 1
}

// agreed is the films of effect, designs and finish, in laying order.
func (g *group) agreed(job *Job, lib *library.Library) []AgreedFilm {
	effect, finish := lib.Effects[job.Effect], lib.Finishes[job.Finish]
	var out []AgreedFilm
	for _, f := range effect.Films {
		a := AgreedFilm{Film: filmOf(f, lib, nil), Colour: job.Colours[f.Colour], Asked: fmt.Sprintf("The effect that was agreed asks for it: %s.", lowerFirst(effect.Title))}
		if f.Colour == "candy" && job.CandyCoats > 0 {
			a.Coats = job.CandyCoats
		}
		out = append(out, a)
	}
	out = append(out, g.layers(lib)...)
	for _, f := range finish.Films {
		meets := func(m *library.Material) bool {
			_, meets := m.Gloss.Meets(finish.Gloss)
			return meets && (job.Clear == "" || m.System == job.Clear)
		}
		out = append(out, AgreedFilm{Film: filmOf(f, lib, meets), Colour: job.Colours[f.Colour], Asked: fmt.Sprintf("The finish that was agreed asks for it: %s.", lowerFirst(finish.Title))})
	}
	return out
}

// filmOf is a film with the materials that may make it.
func filmOf(f library.Film, lib *library.Library, allowed func(*library.Material) bool) route.Film {
	film := route.Film{Role: f.Role, Coats: f.Coats}
	for _, slug := range slices.Sorted(maps.Keys(lib.Materials)) {
		m := lib.Materials[slug]
		if m.Role == f.Role && (len(f.Materials) == 0 || slices.Contains(f.Materials, slug)) && (allowed == nil || allowed(m)) {
			film.Materials = append(film.Materials, slug)
		}
	}
	return film
}

// layers is the films of the group's designs, the lowest first. Neighbours that
// lie beside each other and are masked and sprayed alike are done at once.
func (g *group) layers(lib *library.Library) []AgreedFilm {
	var out []AgreedFilm
	var of []Design // for each of out, the last design in it
	for _, d := range layerOrder(g.designs, lib) {
		kind := lib.Designs[d.Kind]
		for _, l := range kind.Layers {
			if l.Optional && !slices.Contains(d.With, l.Name) {
				continue
			}
			a := g.layer(d, l, kind, lib)
			if n := len(out); n > 0 && of[n-1].Name != d.Name && !samePlace(of[n-1], d) && alike(out[n-1], a) {
				out[n-1] = together(out[n-1], a)
				of[n-1] = Design{Position: "", Name: d.Name} // what comes next must lie beside both
				continue
			}
			out, of = append(out, a), append(of, d)
		}
	}
	return out
}

func (g *group) layer(d Design, l library.Layer, kind *library.Design, lib *library.Library) AgreedFilm {
	part := g.parts[0]
	n := q.Area(part.Count)
	a := AgreedFilm{
		Film: filmOf(l.Film, lib, nil), Colour: d.Colours[l.Film.Colour], Design: d.Name + ": " + l.Name,
		Asked: fmt.Sprintf("The design that was agreed asks for it: %s.", lowerFirst(kind.Title)),
	}
	layer := &route.Layer{Mask: l.Mask, Polarity: d.Polarity, Extent: d.Area * q.Area(l.Share)}
	layer.Piece = layer.Extent
	if d.Polarity == library.Positive && !slices.Contains(lib.Words.Unmasked, l.Mask) {
		// A design over the whole of a part leaves its edges to be sprayed.
		layer.Piece = max(part.Area-layer.Extent, layer.Extent/10)
	}
	layer.Extent, layer.Sprayed = layer.Extent*n, layer.Piece*n
	a.Layer = layer
	return a
}

// alike reports whether two layers can be masked together and sprayed with one
// mix.
func alike(a, b AgreedFilm) bool {
	return a.Colour == b.Colour && a.Role == b.Role && a.Coats == b.Coats && slices.Equal(a.Materials, b.Materials) &&
		a.Layer.Mask == b.Layer.Mask && a.Layer.Polarity == b.Layer.Polarity && a.Layer.Polarity == library.Negative
}

func together(a, b AgreedFilm) AgreedFilm {
	l := *a.Layer
	l.Extent, l.Sprayed, l.Piece = l.Extent+b.Layer.Extent, l.Sprayed+b.Layer.Sprayed, max(l.Piece, b.Layer.Piece)
	a.Layer = &l
	a.Design = strings.Join([]string{a.Design, b.Design}, "; ")
	return a
}
