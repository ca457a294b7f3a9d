package planner

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"coatwright/planner/colour"
	"coatwright/planner/library"
	"coatwright/planner/mix"
	q "coatwright/quantity"
)

// Candied is a candy laid over a ground: all that its colour goes by.
type Candied struct {
	Looks  colour.Swatch // how the candy's swatch looks
	Over   CandyGround   // what that swatch lies over
	Swatch CandyFilm     // ... and how much candy lies on it
	Ground CandyGround   // what the work lies over
	Coat   CandyFilm     // one coat of the work
	Agreed int           // coats
	Wanted *colour.Lab   // nil where nobody named a colour
}

// CandyGround is what candy lies over, and how much of the light on its way out
// the surface above it returns.
type CandyGround struct {
	Looks   colour.Swatch
	Returns q.Fraction
}

func (g CandyGround) ground() (colour.Ground, error) { return colour.NewGround(g.Looks, g.Returns) }

// Work lays the candy over the ground of the work.
func (c Candied) Work() (colour.Candy, colour.Coating, error) {
	over, err := c.Over.ground()
	if err != nil {
		return colour.Candy{}, colour.Coating{}, err
	}
	candy, err := colour.NewCandy(c.Looks, over, c.Swatch.film())
	if err != nil {
		return colour.Candy{}, colour.Coating{}, err
	}
	under, err := c.Ground.ground()
	if err != nil {
		return colour.Candy{}, colour.Coating{}, err
	}
	work, err := candy.Over(under, c.Coat.film())
	return candy, work, err
}

// strength is that of a coat beside that of the swatch.
func (c Candied) strength() q.Number { return c.Coat.Mix.Strength() / c.Swatch.Mix.Strength() }

// CandyFilm is a film of candy, and what its strength goes by.
type CandyFilm struct {
	Coats int
	Build q.Length // of one coat, dry
	Mix   CandyMix
}

func (f CandyFilm) film() colour.Film {
	return colour.Film{Coats: q.Number(f.Coats), Build: f.Build, Strength: f.Mix.Strength()}
}

// CandyMix is what the strength of a candy's dry film goes by.
type CandyMix struct {
	Share  q.Fraction // of the candy itself in the mix, by volume
	Solids q.Fraction // its own
	Binder q.Fraction // what the other parts bring of solids, as a share of the mix
}

// Strength is that of the dry film of the mix.
func (m CandyMix) Strength() q.Number { return colour.Strength(m.Share, m.Solids, m.Binder) }

// CandyMixOf finds the candy of that name among the parts of a mix.
func CandyMixOf(parts []mix.Part, candy string) (CandyMix, error) {
	shares, err := mix.Shares(parts)
	if err != nil {
		return CandyMix{}, err
	}
	var m CandyMix
	for i, p := range parts {
		if p.Name == candy {
			m.Share, m.Solids = m.Share+shares[i], p.Solids
		} else {
			m.Binder += shares[i] * p.Solids
		}
	}
	if m.Share <= 0 || m.Binder+m.Share*m.Solids <= 0 {
		return CandyMix{}, fmt.Errorf("the mix of the candy: found %s of it in the mix; expected more, and solids that stay", q.Show(q.Metric, m.Share))
	}
	return m, nil
}

// SwatchOf is the film of a candy's own swatch: with the mix for no applicator in
// particular.
func SwatchOf(m *library.Material, lib *library.Library) (CandyFilm, error) {
	mixed, err := CandyMixOf(MixParts(m, lib, ""), m.Slug)
	return CandyFilm{m.Swatch.Coats, m.Build, mixed}, err
}

// Returns is how much of the light on its way out the surface above a film
// returns.
func Returns(m *library.Material) q.Fraction {
	if m != nil && slices.Contains(m.Traits, library.FlatFlakes) {
		return colour.Mirroring
	}
	return colour.Scattering
}

// UsualGround is a material that the effects lay just below a candy, nil where
// none does. Its swatch lies over such a one.
func UsualGround(candy *library.Material, lib *library.Library) *library.Material {
	for _, slug := range effects(lib) {
		films := lib.Effects[slug].Films
		for i := 1; i < len(films); i++ {
			if !slices.Contains(filmOf(films[i], lib, nil).Materials, candy.Slug) {
				continue
			}
			for _, below := range filmOf(films[i-1], lib, nil).Materials {
				if m := lib.Materials[below]; lib.Words.GoesWith(m.System, candy.System) {
					return m
				}
			}
		}
	}
	return nil
}

// CandiedOf is the candy that a plan's film is, over what lies below it. Missing
// says in a sentence what would have to be known for it, "" where all is. It is
// not ok for a film of another kind.
func (p *Plan) CandiedOf(f Film, lib *library.Library) (c Candied, missing string, ok bool) {
	m := lib.Materials[f.Material]
	if m == nil || m.Swatch.Over == "" {
		return c, "", false
	}
	below, known := p.colouredBelow(f)
	switch {
	case !known:
		return c, "The job does not say what colour lies below the candy (colours: ground), and a candy's colour comes from there.", true
	case f.Colour == "":
		return c, "The job does not say what the candy looks like (colours: candy).", true
	}
	c.Ground.Returns, c.Over.Returns = Returns(lib.Materials[below.Material]), Returns(UsualGround(m, lib))
	if err := errors.Join(c.look(f.Colour, m.Swatch.Over, below.Colour), c.mix(m, lib, p.applicatorOf(f))); err != nil {
		return c, sentence(err), true
	}
	c.Agreed = f.Coats
	if wanted, err := colour.ParseSwatch(p.Job.Wanted); err == nil {
		lab := wanted.Colour.Lab()
		c.Wanted = &lab
	}
	return c, "", true
}

// look sets what the candy's swatch, what that lies over and what the work lies
// over look like.
func (c *Candied) look(candy, over, ground string) (err error) {
	if c.Looks, err = colour.ParseSwatch(candy); err != nil {
		return err
	}
	if c.Over.Looks, err = colour.ParseSwatch(over); err != nil {
		return err
	}
	c.Ground.Looks, err = colour.ParseSwatch(ground)
	return err
}

// mix sets how much candy the swatch has, and a coat by an applicator.
func (c *Candied) mix(m *library.Material, lib *library.Library, applicator string) (err error) {
	if c.Swatch, err = SwatchOf(m, lib); err != nil {
		return err
	}
	mixed, err := CandyMixOf(MixParts(m, lib, applicator), m.Slug)
	c.Coat = CandyFilm{1, m.Build, mixed}
	return err
}

// colouredBelow is the film below another that gives it its ground: the first
// one down that carries a colour and covers the part.
func (p *Plan) colouredBelow(f Film) (Film, bool) {
	i := slices.IndexFunc(p.Films, func(o Film) bool { return o.Step == f.Step })
	for _, below := range slices.Backward(p.Films[:max(i, 0)]) {
		if below.Colour != "" && below.Design == "" && len(f.Parts) > 0 && slices.Contains(below.Parts, f.Parts[0]) {
			return below, true
		}
	}
	return Film{}, false
}

// applicatorOf is the slug of what lays a film.
func (p *Plan) applicatorOf(f Film) string {
	i := StepAt(p.Steps, f.Step)
	if i < 0 {
		return ""
	}
	return strings.TrimPrefix(p.Steps[i].Applicator, "tool/")
}
