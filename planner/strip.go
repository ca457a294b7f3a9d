package planner

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"coatwright/planner/colour"
	"coatwright/planner/library"
	q "coatwright/quantity"
)

// Strip is an estimate of what a candy looks like coat by coat over its ground.
// Differences are in units of CIEDE2000, shares in percent. Where something was
// not known Missing says what, and there are no coats.
type Strip struct {
	Step       string      `json:"step"` // that lays the candy
	Parts      []string    `json:"parts"`
	Material   string      `json:"material"`    // slug
	Title      string      `json:"title"`       // of the material
	Candy      string      `json:"candy"`       // "#rrggbb" of the candy's swatch
	Ground     string      `json:"ground"`      // ... of what lies below
	Wanted     string      `json:"wanted"`      // ... of the colour that somebody named; "" for none
	FlatFlakes bool        `json:"flat_flakes"` // below, so that light comes straight back
	Strength   float64     `json:"strength"`    // of the mix beside that of the swatch
	Depth      float64     `json:"depth"`       // colour of one coat beside that of the swatch
	Coats      []StripCoat `json:"coats"`       // from the bare ground on
	Agreed     int         `json:"agreed"`      // coats
	Nearest    *StripMatch `json:"nearest"`     // null where nobody named a colour
	Even       *StripEven  `json:"even"`        // after the agreed coats; null where Missing
	Sags       []StripSag  `json:"sags"`        // in the agreed coats
	Remark     string      `json:"remark"`      // what the candy's swatch could not tell; "" where it told all
	Missing    string      `json:"missing"`
}

// StripCoat is how the work looks after so many coats.
type StripCoat struct {
	Coats int `json:"coats"`
	Seen
	Change float64 `json:"delta"` // from the coat before
}

// Seen is a colour. Where no screen shows it Hex is a paler one.
type Seen struct {
	Hex      string  `json:"hex"`
	OnScreen bool    `json:"on_screen"`
	L        float64 `json:"l"` // CIELAB, D65, 2 degrees
	A        float64 `json:"a"`
	B        float64 `json:"b"`
}

// StripMatch is which count of coats comes nearest to the wanted colour.
type StripMatch struct {
	Coats    int     `json:"coats"`
	Left     float64 `json:"left"` // how far it stays from it
	Best     float64 `json:"best"` // coats, of which parts count
	BestLeft float64 `json:"best_left"`
	Agreed   float64 `json:"agreed"` // how far the agreed coats stay from it
}

// StripEven is what an uneven film does to the colour.
type StripEven struct {
	Variation float64 `json:"variation_percent"` // of the film's thickness
	Thin      float64 `json:"thin"`              // where it is so much thinner
	Thick     float64 `json:"thick"`
	Just      float64 `json:"just_visible_percent"`    // how much it may vary before an eye sees it side by side
	Plain     float64 `json:"plainly_visible_percent"` // ... before most people do
}

// StripSag is what a place looks like where the film has run together.
type StripSag struct {
	Times float64 `json:"times"` // as thick as the rest
	Seen
	Change float64 `json:"delta"`  // from the rest
	Darker float64 `json:"darker"` // L* lost
}

// Uneven is the variation of a film's thickness of which a strip says what it
// does, and SagTimes are how many times as thick its sags are. Common practice,
// no published source.
const Uneven q.Fraction = 0.10

var SagTimes = []q.Number{1.5, 2}

// Strip reckons what c looks like, from the bare ground to the most coats that a
// job may ask for.
func (c Candied) Strip() (Strip, error) {
	candy, work, err := c.Work()
	if err != nil {
		return Strip{}, err
	}
	s := Strip{
		Candy: screenOf(c.Looks.Colour), Ground: screenOf(c.Ground.Looks.Colour), FlatFlakes: c.Ground.Returns == colour.Mirroring,
		Strength: float64(c.strength()), Depth: float64(work.Depth(1)),
		Agreed: c.Agreed, Remark: candy.Remark(), Even: evenOf(work, q.Number(c.Agreed)),
	}
	most := max(MaxCoats, c.Agreed)
	for _, coat := range work.Strip(most) {
		s.Coats = append(s.Coats, StripCoat{coat.Coats, seen(coat.Lab, coat.Screen, coat.OnScreen), float64(coat.Change)})
	}
	for _, times := range SagTimes {
		sag := work.Sag(q.Number(c.Agreed), times)
		s.Sags = append(s.Sags, StripSag{float64(times), seen(sag.Lab, sag.Screen, sag.OnScreen), float64(sag.Change), sag.Darker})
	}
	if c.Wanted != nil {
		s.Wanted = screenOf(c.Wanted.XYZ())
		m := work.Nearest(*c.Wanted, most)
		agreed := colour.Difference(work.Lab(q.Number(c.Agreed)), *c.Wanted)
		s.Nearest = &StripMatch{m.Coats, float64(m.Left), float64(m.Best), float64(m.BestLeft), float64(agreed)}
	}
	return s, nil
}

func evenOf(work colour.Coating, coats q.Number) *StripEven {
	e := work.Evenness(coats, Uneven)
	return &StripEven{
		Variation: Uneven.Percent(), Thin: float64(e.Thin), Thick: float64(e.Thick),
		Just:  work.Tolerance(coats, colour.JustVisible).Percent(),
		Plain: work.Tolerance(coats, colour.PlainlyVisible).Percent(),
	}
}

func seen(c colour.Lab, s colour.Screen, onScreen bool) Seen {
	return Seen{Hex: s.String(), OnScreen: onScreen, L: c.L, A: c.A, B: c.B}
}

func screenOf(c colour.XYZ) string {
	s, _ := c.Screen()
	return s.String()
}

// strips reckons the strip of each candy of the plan.
func strips(p *Plan, lib *library.Library) []Strip {
	out := []Strip{}
	for _, f := range p.Films {
		c, missing, ok := p.CandiedOf(f, lib)
		if !ok {
			continue
		}
		var s Strip
		if missing == "" {
			var err error
			if s, err = c.Strip(); err != nil {
				s, missing = Strip{}, sentence(err)
			}
		}
		s.Step, s.Parts, s.Material, s.Title, s.Agreed, s.Missing = f.Step, f.Parts, f.Material, f.Title, f.Coats, missing
		if s.Coats == nil {
			s.Coats, s.Sags = []StripCoat{}, []StripSag{}
		}
		out = append(out, s)
	}
	return out
}

// beyond is how many coats past those agreed a plan shows: as many as one may yet
// decide on.
const beyond = 2

// Most is how many coats a plan shows: some beyond those agreed, and beyond those
// that come nearest to a wanted colour.
func (s *Strip) Most() int {
	most := s.Agreed
	if s.Nearest != nil {
		most = max(most, s.Nearest.Coats)
	}
	return max(min(most+beyond, len(s.Coats)-1), 0)
}

// StripOf is the strip of the film that a step lays, nil for none.
func (p *Plan) StripOf(step string) *Strip {
	for i, s := range p.Strips {
		if s.Step == step && s.Missing == "" {
			return &p.Strips[i]
		}
	}
	return nil
}

// sentence makes one of an error.
func sentence(err error) string {
	text := err.Error()
	r, n := utf8.DecodeRuneInString(text)
	return string(unicode.ToUpper(r)) + strings.TrimSuffix(text[n:], ".") + "."
}
