package mix

import (
	"errors"
	"fmt"

	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// PercentFormula is how OfWhole and OfOne come about.
var PercentFormula = trace.Formula{
	Text:   "of the whole = s / (1 + s + others); of the one part = w (1 + others) / (1 - w)",
	Source: "definition of a percentage",
	Note:   "background/percent-of-what",
}

// OfWhole turns a share of one part into the share of the whole mix. Others is
// what else goes in, as a share of that one part too: 30 % of the binder, with
// 10 % thinner, is 21.4 % of the whole.
func OfWhole(share, others q.Fraction) (q.Fraction, error) {
	if err := soundShares(share, others); err != nil {
		return 0, err
	}
	return share / (1 + share + others), nil
}

// OfOne turns a share of the whole mix into the share of one part, of which
// others, the rest of the mix, is a share too. It is the inverse of OfWhole.
func OfOne(share, others q.Fraction) (q.Fraction, error) {
	if err := soundShares(share, others); err != nil {
		return 0, err
	}
	if share >= 1 {
		return 0, fmt.Errorf("found %.4g %% of the whole; expected less than 100 %%, as the whole has another part in it", share.Percent())
	}
	return share * (1 + others) / (1 - share), nil
}

func soundShares(share, others q.Fraction) error {
	return errors.Join(sound(float64(share), "a share"), sound(float64(others), "the share of the others"))
}

// MassFormula is how ByMass and ByVolume come about.
var MassFormula = trace.Formula{
	Text:   "by mass = by volume × ρ of the part / ρ of what it is a share of",
	Source: "definition of density",
	Note:   "background/ratios-and-marks",
}

// ByMass turns a share by volume into one by mass; of is the density of what it
// is a share of, which for a share of the whole is that of the mix.
func ByMass(share q.Fraction, part, of q.Density) (q.Fraction, error) {
	per, err := byVolume(part, of)
	return share / q.Fraction(per), err
}

// ByVolume turns a share by mass into one by volume. It is the inverse of ByMass.
func ByVolume(share q.Fraction, part, of q.Density) (q.Fraction, error) {
	per, err := byVolume(part, of)
	return share * q.Fraction(per), err
}

// byVolume is the share by volume that a share of 1 by mass is.
func byVolume(part, of q.Density) (float64, error) {
	if !(part > 0 && of > 0) {
		return 1, fmt.Errorf("found densities of %g and %g kg/m3; expected both above 0, to go between mass and volume", float64(part), float64(of))
	}
	return float64(of / part), nil
}

// Strength is what a share of a part makes of the mix.
type Strength struct {
	Share   q.Fraction // of the part that it is a share of, as its recipe measures it
	OfWhole q.Fraction // by volume
	Solids  q.Fraction // of the mix, by volume
}

// Strengths are those at the low end of a range, as chosen, and at the high end.
type Strengths struct{ Low, Chosen, High Strength }

// StrengthsOf returns what the range of a part makes of the mix, all else in it
// staying the share that it is. A part without a range has one strength.
func StrengthsOf(parts []Part, name string) (Strengths, error) {
	i, err := find(parts, name)
	if err != nil {
		return Strengths{}, err
	}
	p := parts[i]
	if p.Of == "" {
		return Strengths{}, wrong(i, p, errors.New("it goes in parts; expected a part that is a share of another"))
	}
	if p.Range.IsZero() {
		p.Range = q.Range[q.Fraction]{Low: p.Share, High: p.Share}
	}
	low, err1 := strength(parts, i, p.Range.Low)
	chosen, err2 := strength(parts, i, p.Share)
	high, err3 := strength(parts, i, p.Range.High)
	return Strengths{low, chosen, high}, errors.Join(err1, err2, err3)
}

func strength(parts []Part, i int, share q.Fraction) (Strength, error) {
	parts = with(parts, i, share)
	shares, err := Shares(parts)
	if err != nil {
		return Strength{}, err
	}
	solids, err := Solids(parts)
	return Strength{share, shares[i], solids}, err
}

// WithShare returns a copy of parts in which one has another share. The error
// names the nearest share that its range allows.
func WithShare(parts []Part, name string, share q.Fraction) ([]Part, error) {
	i, err := find(parts, name)
	if err != nil {
		return nil, err
	}
	out := with(parts, i, share)
	if err := out[i].check(); err != nil {
		return nil, wrong(i, out[i], err)
	}
	if stray := Outside(out[i : i+1]); len(stray) > 0 {
		return nil, wrong(i, out[i], errors.New(stray[0].Text))
	}
	return out, nil
}

func with(parts []Part, i int, share q.Fraction) []Part {
	out := append([]Part(nil), parts...)
	out[i].Share = share
	return out
}
