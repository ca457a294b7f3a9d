package film

import (
	"errors"
	"fmt"
	"math"

	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// MeanFormula is Gauged's.
var MeanFormula = trace.Formula{
	Text:   "mean = Σ dᵢ / n; s = √(Σ (dᵢ − mean)² / (n − 1))",
	Source: "arithmetic mean and sample standard deviation",
	Note:   "background/gauge-readings",
}

// Readings is what a gauge said, taken together.
type Readings struct {
	Count     int
	Mean      q.Length
	Deviation q.Length // standard deviation; zero for one reading
	Low, High q.Length // the thinnest and the thickest
}

// Gauged takes readings of a gauge together. SSPC-PA 2 takes three or more
// within a circle of 4 cm for one spot, and their mean for what it measures.
func Gauged(readings []q.Length) (Readings, error) {
	if len(readings) == 0 {
		return Readings{}, errors.New("readings of the gauge: found none; expected at least one")
	}
	r := Readings{Count: len(readings), Low: readings[0], High: readings[0]}
	for i, d := range readings {
		if !finite(d) || d < 0 {
			return Readings{}, fmt.Errorf("reading %d of the gauge: found %g um; expected 0 um or more", i+1, d.Micrometres())
		}
		r.Mean += d / q.Length(len(readings))
		r.Low, r.High = min(r.Low, d), max(r.High, d)
	}
	if r.Count > 1 {
		var sum float64
		for _, d := range readings {
			sum += float64((d - r.Mean) * (d - r.Mean))
		}
		r.Deviation = q.Length(math.Sqrt(sum / float64(r.Count-1)))
	}
	return r, nil
}

// SpotFormula is Judge's.
var SpotFormula = trace.Formula{
	Text:   "least ≤ mean of the spots ≤ most; 0.8 × least ≤ each spot ≤ 1.2 × most",
	Source: "SSPC-PA 2, as in slideplayer.com/slide/1430003 and naylornetwork.com/sspc-nwl (article 481274)",
	Note:   "background/gauge-readings",
}

const (
	thinnestSpot = 0.8 // of the least that is wanted; see SpotFormula
	thickestSpot = 1.2 // of the most that is wanted; see SpotFormula
	spots        = 5   // of an area of 10 m2; see SpotFormula
)

// Fit is how a film compares with a wanted range.
type Fit string

// The fits.
const (
	Good  Fit = "good"
	Thin  Fit = "thin"
	Thick Fit = "thick"
)

// Judgement is what spots say of a film.
type Judgement struct {
	Readings
	Fit        Fit   // of the mean
	ThinSpots  []int // those thinner than any may be, counted from 0
	ThickSpots []int // those thicker than any may be
	Few        bool  // fewer spots than the rule asks of one area
}

// Good reports whether the film is as wanted, as far as the spots tell.
func (j Judgement) Good() bool {
	return j.Fit == Good && len(j.ThinSpots) == 0 && len(j.ThickSpots) == 0
}

// Judge holds spots, each the mean of a few readings close together, against the
// dry film that is wanted. The rule is one for plane steelwork; on a small part
// with edges the spots scatter more.
func Judge(spotted []q.Length, wanted q.Range[q.Length]) (Judgement, error) {
	if !(wanted.Low >= 0 && wanted.Low <= wanted.High && finite(wanted.High)) {
		return Judgement{}, fmt.Errorf("wanted dry film: found %g to %g um; expected a range from the least to the most",
			wanted.Low.Micrometres(), wanted.High.Micrometres())
	}
	r, err := Gauged(spotted)
	if err != nil {
		return Judgement{}, err
	}
	j := Judgement{Readings: r, Fit: fit(r.Mean, wanted.Low, wanted.High), Few: r.Count < spots}
	for i, d := range spotted {
		switch fit(d, thinnestSpot*wanted.Low, thickestSpot*wanted.High) {
		case Thin:
			j.ThinSpots = append(j.ThinSpots, i)
		case Thick:
			j.ThickSpots = append(j.ThickSpots, i)
		}
	}
	return j, nil
}

func fit(d, least, most q.Length) Fit {
	switch {
	case d < least*(1-sliver):
		return Thin
	case d > most*(1+sliver):
		return Thick
	}
	return Good
}
