// Package mix owns what goes into the cup: the shares of a mix, what to pour to
// which mark and in which order, how finely a cup and a scale can hold the
// ratio, how a wrong pour is mended, and how a total is parted into batches.
//
// Volumes are taken to add up. Solvents and water shrink a little when they meet:
// 100 L of each of ethanol and water make 192.75 L
// (glossary.wein.plus/percentage-by-volume). A card by mass is the surer one for
// them. Densities are those of the day: nothing here knows of temperature.
//
// Nothing is rounded, save by the methods of Cup and by ByCup and ByScale, which
// say what to read off a tool and what that costs.
package mix

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"coatwright/nearest"
	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// Part is one pour of a mix. It is either so many parts, or a share of another
// part. Both go by volume unless ByMass is set; those in parts all go one way.
type Part struct {
	Name    string
	Density q.Density  // kg/m3; zero where nobody knows it
	Solids  q.Fraction // by volume
	Parts   float64    // parts, when Of is empty
	Of      string     // the part that Share is taken of
	Share   q.Fraction
	Range   q.Range[q.Fraction] // in which Share may lie, for the applicator in hand; zero where only Share is right
	ByMass  bool                // Parts, Share and Range are by mass

	Into   []string // the parts that must be in the cup when it goes in
	Thins  bool     // it only thins: it goes in after all that binds and colours
	Starts bool     // the pot life starts when it goes in
}

// sliver is the share of a step, a cup or a batch that the arithmetic may leave
// over.
const sliver = 1e-9

// SharesFormula is how Shares comes about.
var SharesFormula = trace.Formula{
	Text:   "share = V / ΣV, V = parts or share × V of the other part; by mass V = m / ρ",
	Source: "definition of a ratio",
	Note:   "background/ratios-and-marks",
}

// Shares returns the share of each part in the volume of the mix; they make 1.
// To go from mass to volume a part needs a density.
func Shares(parts []Part) ([]q.Fraction, error) { return shares(parts, false) }

// MassShares returns the share of each part in the mass of the mix; they make 1.
func MassShares(parts []Part) ([]q.Fraction, error) { return shares(parts, true) }

func shares(parts []Part, byMass bool) ([]q.Fraction, error) {
	r := resolver{parts: parts, byMass: byMass, amount: make([]float64, len(parts)), known: make([]bool, len(parts))}
	var err error
	if r.index, err = indexOf(parts); err != nil {
		return nil, err
	}
	var total float64
	for i := range parts {
		if err := r.resolve(i, nil); err != nil {
			return nil, err
		}
		total += r.amount[i]
	}
	switch {
	case total == 0:
		return nil, errors.New("the mix has nothing in it; expected at least one part above 0 parts")
	case math.IsInf(total, 0):
		return nil, errors.New("the mix has more parts than can be counted; expected a ratio in small numbers")
	}
	out := make([]q.Fraction, len(parts))
	for i, a := range r.amount {
		out[i] = q.Fraction(a / total)
	}
	return out, nil
}

// wrong says which part an error is about.
func wrong(i int, p Part, err error) error {
	return fmt.Errorf("part %d of the mix, %q: %w", i+1, p.Name, err)
}

// indexOf finds parts by name, and refuses those that nobody could pour.
func indexOf(parts []Part) (map[string]int, error) {
	index := make(map[string]int, len(parts))
	counted := -1 // the first that is in parts
	for i, p := range parts {
		if _, again := index[p.Name]; again {
			return nil, wrong(i, p, errors.New("poured twice; expected each part once"))
		}
		index[p.Name] = i
		if err := p.check(); err != nil {
			return nil, wrong(i, p, err)
		}
		if p.Of != "" {
			continue
		}
		if counted >= 0 && parts[counted].ByMass != p.ByMass {
			return nil, wrong(i, p, fmt.Errorf("found parts %s beside %q in parts %s; expected all of them one way", way(p.ByMass), parts[counted].Name, way(!p.ByMass)))
		}
		if counted < 0 {
			counted = i
		}
	}
	return index, nil
}

// check refuses a part that contradicts itself.
func (p Part) check() error {
	if err := sound(float64(p.Density), "a density"); err != nil {
		return err
	}
	if p.Of == "" {
		if p.Share != 0 || !p.Range.IsZero() {
			return errors.New("found a share of no part; expected the name of the part that it is a share of")
		}
		return sound(p.Parts, "parts "+way(p.ByMass))
	}
	if p.Parts != 0 {
		return fmt.Errorf("found both %g parts and %g %% of %q; expected one of them", p.Parts, p.Share.Percent(), p.Of)
	}
	if !(p.Range.Low >= 0 && p.Range.Low <= p.Range.High && !math.IsInf(float64(p.Range.High), 1)) {
		return fmt.Errorf("found a range of %g to %g %%; expected its low end first, 0 %% or more", p.Range.Low.Percent(), p.Range.High.Percent())
	}
	return sound(float64(p.Share), "a share of "+p.Of)
}

// sound refuses an amount that nobody can pour.
func sound(x float64, what string) error {
	if x < 0 || math.IsNaN(x) || math.IsInf(x, 0) {
		return fmt.Errorf("found %g; expected %s, 0 or more", x, what)
	}
	return nil
}

func way(byMass bool) string {
	if byMass {
		return "by mass"
	}
	return "by volume"
}

// resolver works out what each part comes to, in parts by mass or by volume.
type resolver struct {
	parts  []Part
	index  map[string]int
	byMass bool // the way in which amount is counted
	amount []float64
	known  []bool
}

// resolve works out part i; waiting are the parts that are shares of it.
func (r *resolver) resolve(i int, waiting []string) error {
	if r.known[i] {
		return nil
	}
	p := r.parts[i]
	own := p.Parts
	if p.Of != "" {
		whole, err := r.whole(p, append(waiting, p.Name))
		if err != nil {
			return err
		}
		own = whole * float64(p.Share)
	}
	a, err := convert(own, p, p.ByMass, r.byMass)
	if err != nil {
		return wrong(i, p, err)
	}
	r.amount[i], r.known[i] = a, true
	return nil
}

// whole works out what p is a share of, in p's own way of measuring; waiting are
// p and the parts that are shares of it.
func (r *resolver) whole(p Part, waiting []string) (float64, error) {
	i := r.index[p.Name]
	of, there := r.index[p.Of]
	if !there || of == i {
		return 0, wrong(i, p, noSuch(p, r.parts))
	}
	if at := slices.Index(waiting, p.Of); at >= 0 {
		circle := strings.Join(append(waiting[at:], p.Of), " of ")
		return 0, wrong(i, p, fmt.Errorf("found shares that go round in a circle: %s; expected one of them in parts", circle))
	}
	if err := r.resolve(of, waiting); err != nil {
		return 0, err
	}
	whole, err := convert(r.amount[of], r.parts[of], r.byMass, p.ByMass)
	if err != nil {
		return 0, wrong(i, p, err)
	}
	return whole, nil
}

// noSuch is the error for a share of a part that is not in the mix.
func noSuch(p Part, parts []Part) error {
	var others []string
	for _, o := range parts {
		if o.Name != p.Name {
			others = append(others, o.Name)
		}
	}
	if len(others) == 0 {
		return fmt.Errorf("found a share of %q; expected the only part in parts", p.Of)
	}
	return fmt.Errorf("found a share of %q; expected another part: %s%s", p.Of, strings.Join(others, ", "), nearest.Hint(nearest.To(p.Of, others)))
}

// convert turns an amount of p from one way of measuring into another.
func convert(x float64, p Part, fromMass, toMass bool) (float64, error) {
	switch {
	case fromMass == toMass || x == 0:
		return x, nil
	case p.Density == 0:
		return 0, fmt.Errorf("found no density of %q; expected one, to go from parts %s to parts %s", p.Name, way(fromMass), way(toMass))
	case toMass:
		return x * float64(p.Density), nil
	}
	return x / float64(p.Density), nil
}

// find returns the place of a part by its name.
func find(parts []Part, name string) (int, error) {
	if i := place(parts, name); i >= 0 {
		return i, nil
	}
	names := make([]string, len(parts))
	for i, p := range parts {
		names[i] = p.Name
	}
	return 0, fmt.Errorf("found %q; expected a part of the mix: %s%s", name, strings.Join(names, ", "), nearest.Hint(nearest.To(name, names)))
}

// place is where a part stands, -1 where it is not in the mix.
func place(parts []Part, name string) int {
	return slices.IndexFunc(parts, func(p Part) bool { return p.Name == name })
}
