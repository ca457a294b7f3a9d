package film

import (
	"fmt"
	"math"

	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// CoatsFormula is Coats'.
var CoatsFormula = trace.Formula{
	Text:   "n = ⌈wanted / one coat⌉",
	Source: "arithmetic",
	Note:   "background/film-build",
}

// Coats returns how many coats of each make a dry film of wanted: 0 for none.
func Coats(wanted, each q.Length) (int, error) {
	switch {
	case !finite(wanted) || wanted < 0:
		return 0, fmt.Errorf("wanted dry film: found %g um; expected 0 um or more", wanted.Micrometres())
	case !finite(each) || each <= 0:
		return 0, fmt.Errorf("dry film of one coat: found %g um; expected above 0 um", each.Micrometres())
	}
	if wanted == 0 {
		return 0, nil
	}
	n := max(1, math.Ceil(float64(wanted/each)-sliver))
	if n > math.MaxInt32 {
		return 0, fmt.Errorf("coats of %g um for %g um: found %.3g; expected as many as somebody can lay", each.Micrometres(), wanted.Micrometres(), n)
	}
	return int(n), nil
}

// MostFormula is Most's.
var MostFormula = trace.Formula{
	Text:   "most dry film of one coat = sag limit × VS",
	Source: "DFT = WFT × VS at the wet film above which it runs",
	Note:   "background/film-build",
}

// Coat is one coat of a mix as it is sprayed.
type Coat struct {
	Build  q.Length   // dry film that a full coat is to leave
	Sag    q.Length   // wet film above which it runs on an upright face; zero where nobody knows
	Solids q.Fraction // by volume
}

// Wet returns the wet film of a full coat.
func (c Coat) Wet() q.Length { return WetFilm(c.Build, c.Solids) }

// Runs reports whether a full coat runs on an upright face.
func (c Coat) Runs() bool { return c.Build > c.Most()*(1+sliver) }

// Most returns the dry film of the thickest coat that does not run; +Inf where
// no limit is known.
func (c Coat) Most() q.Length {
	if c.Sag == 0 {
		return q.Length(math.Inf(1))
	}
	return DryFilm(c.Sag, c.Solids)
}

// Laid is a dry film in coats alike.
type Laid struct {
	Coats    int
	Dry, Wet q.Length // each coat's
	Held     bool     // a full coat would run, so that there are more and thinner ones
}

// For returns how to lay a dry film of wanted: in as few coats as are neither
// thicker than a full one nor run, all of them as thick.
func (c Coat) For(wanted q.Length) (Laid, error) {
	if !share(c.Solids) {
		return Laid{}, fmt.Errorf("solids by volume of the mix: found %g %%; expected above 0 and up to 100 %%", c.Solids.Percent())
	}
	if !finite(c.Sag) || c.Sag < 0 {
		return Laid{}, fmt.Errorf("sag limit: found %g um wet; expected above 0 um, or 0 where nobody knows", c.Sag.Micrometres())
	}
	n, err := Coats(wanted, min(c.Build, c.Most()))
	if err != nil || n == 0 {
		return Laid{}, err
	}
	each := wanted / q.Length(n)
	return Laid{n, each, WetFilm(each, c.Solids), c.Runs()}, nil
}
