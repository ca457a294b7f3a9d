package amounts

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"coatwright/nearest"
	q "coatwright/quantity"
)

// Part is one pour of a mix. It is either so many parts by volume, or a share
// of the volume of an earlier part.
type Part struct {
	Name    string
	Density q.Density  // kg/m3
	Solids  q.Fraction // by volume
	VOC     q.Density  // kg of solvent in a m3, the same as g/L
	Parts   float64    // parts by volume, when Of is empty
	Of      string     // the earlier part that Share is taken of
	Share   q.Fraction
}

// Pour is what a part comes to in a mix of a known volume.
type Pour struct {
	Name     string
	Volume   q.Volume
	Mass     q.Mass
	Mark     q.Volume // in the cup when this part has gone in
	MarkMass q.Mass   // on the scale when this part has gone in
}

// Resolve returns the share of each part in the volume of the mix; the shares
// make 1. Parts are in pouring order.
func Resolve(parts []Part) ([]float64, error) {
	amounts := make([]float64, len(parts))
	var earlier []string
	byName := map[string]float64{}
	var total float64
	for i, p := range parts {
		amount, err := amountOf(p, byName, earlier)
		if err != nil {
			return nil, fmt.Errorf("part %d of the mix, %q: %w", i+1, p.Name, err)
		}
		amounts[i], byName[p.Name] = amount, amount
		earlier = append(earlier, p.Name)
		total += amount
	}
	if total == 0 {
		return nil, errors.New("the mix has nothing in it; expected at least one part above 0 parts")
	}
	for i := range amounts {
		amounts[i] /= total
	}
	return amounts, nil
}

// amountOf is how many parts by volume p comes to, after the earlier ones.
func amountOf(p Part, byName map[string]float64, earlier []string) (float64, error) {
	if _, again := byName[p.Name]; again {
		return 0, errors.New("poured twice; expected each part once")
	}
	if p.Of == "" {
		return p.Parts, sound(p.Parts, "parts by volume")
	}
	if p.Parts != 0 {
		return 0, fmt.Errorf("found both %g parts and %g %% of %q; expected one of them", p.Parts, p.Share.Percent(), p.Of)
	}
	whole, ok := byName[p.Of]
	if !ok {
		return 0, noEarlier(p.Of, earlier)
	}
	return whole * float64(p.Share), sound(float64(p.Share), "a share of "+p.Of)
}

// sound refuses an amount that nobody can pour.
func sound(x float64, what string) error {
	if x < 0 || math.IsNaN(x) || math.IsInf(x, 0) {
		return fmt.Errorf("found %g; expected %s, 0 or more", x, what)
	}
	return nil
}

func noEarlier(of string, earlier []string) error {
	if len(earlier) == 0 {
		return fmt.Errorf("found a share of %q; expected the first part in parts by volume", of)
	}
	return fmt.Errorf("found a share of %q; expected an earlier part: %s%s", of, strings.Join(earlier, ", "), nearest.Hint(nearest.To(of, earlier)))
}

// Pours returns what to pour for a total volume of mix, in pouring order, with
// the marks that the cup and the scale reach. Volumes are taken to add up.
func Pours(parts []Part, total q.Volume) ([]Pour, error) {
	if err := sound(float64(total), "a volume of mix"); err != nil {
		return nil, err
	}
	shares, err := Resolve(parts)
	if err != nil {
		return nil, err
	}
	pours := make([]Pour, len(parts))
	var mark q.Volume
	var markMass q.Mass
	for i, p := range parts {
		v := total * q.Volume(shares[i])
		m := q.Mass(float64(v) * float64(p.Density))
		mark, markMass = mark+v, markMass+m
		pours[i] = Pour{p.Name, v, m, mark, markMass}
	}
	return pours, nil
}

// SolidsOfMix returns the solids by volume of the mix: the mean of its parts,
// weighted by volume.
func SolidsOfMix(parts []Part) (q.Fraction, error) {
	mean, err := meanOf(parts, func(p Part) float64 { return float64(p.Solids) })
	return q.Fraction(mean), err
}

// VOCOfMix returns the volatile organic compounds in a volume of the mix as
// sprayed, water counted in, in kg/m3 (the same number in g/L).
// Source: VOC = sum(v VOC)/sum(v) (finishing guidebook 2013, appendix B).
func VOCOfMix(parts []Part) (q.Density, error) {
	mean, err := meanOf(parts, func(p Part) float64 { return float64(p.VOC) })
	return q.Density(mean), err
}

func meanOf(parts []Part, of func(Part) float64) (float64, error) {
	shares, err := Resolve(parts)
	var sum float64
	for i, share := range shares {
		sum += share * of(parts[i])
	}
	return sum, err
}
