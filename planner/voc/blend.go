package voc

import (
	"errors"
	"fmt"

	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// Part is one pour of a mix.
type Part struct {
	Name   string
	Volume q.Volume // or parts by volume: only the ratios matter
	Liquid
}

// BlendFormula is that of the VOC in Blend.
var BlendFormula = trace.Formula{
	Text:   "VOC = sum(v VOC)/sum(v)",
	Source: "finishing guidebook 2013, appendix B (metalfinishing.epubxp.com/i/218436-2013/826)",
	Note:   "background/what-voc-counts",
}

// Blend returns the liquid that the parts make: each of its contents is the mean
// of theirs, weighted by volume, and volumes are taken to add up. Its density is
// known when that of every part is. The VOC less water of a mix is not the mean
// of its parts' VOC less water: ask the blend for it.
// It is an error when a part cannot be, or when there is nothing in the mix.
func Blend(parts []Part) (Liquid, error) {
	var total q.Volume
	for i, p := range parts {
		if err := p.check(); err != nil {
			return Liquid{}, fmt.Errorf("part %d of the mix, %q: %w", i+1, p.Name, err)
		}
		total += p.Volume
	}
	if total == 0 {
		return Liquid{}, errors.New("the mix has nothing in it; expected at least one part above 0 parts")
	}
	var mix Liquid
	known := true
	for _, p := range parts {
		mix.add(p.Liquid, float64(p.Volume/total))
		known = known && (p.Density > 0 || p.Volume == 0)
	}
	if !known {
		mix.Density = 0
	}
	return mix, nil
}

func (p Part) check() error {
	if !sound(float64(p.Volume)) {
		return fmt.Errorf("found a volume of %g; expected 0 or more", float64(p.Volume))
	}
	return p.Liquid.Check()
}

// add pours a part of another liquid into l.
func (l *Liquid) add(other Liquid, part float64) {
	l.VOC += other.VOC * q.Concentration(part)
	l.Water.Low += other.Water.Low * q.Fraction(part)
	l.Water.High += other.Water.High * q.Fraction(part)
	l.Exempt += other.Exempt * q.Fraction(part)
	mass := other.exemptMass()
	l.ExemptMass.Low += mass.Low * q.Concentration(part)
	l.ExemptMass.High += mass.High * q.Concentration(part)
	l.Density += other.Density * q.Density(part)
}
