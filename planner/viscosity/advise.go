package viscosity

import (
	"fmt"

	q "coatwright/quantity"
)

// Held is which end of a recipe's range a share was held to.
type Held string

// The ends.
const (
	Free  Held = ""      // neither
	Least Held = "least" // the recipe wants more than the cup would
	Most  Held = "most"  // the recipe allows less than the cup would want
)

// Advice is how much thinner to pour for a time in a cup. It is an estimate.
type Advice struct {
	Want    Reading             `json:"want"`
	Share   q.Range[q.Fraction] `json:"share"`   // of the paint's own volume, that the wanted time takes
	Pour    q.Fraction          `json:"pour"`    // what to pour first: the least of Share that the recipe allows
	Held    Held                `json:"held"`    // the end of the recipe's range that Pour was held to
	Time    q.Range[q.Time]     `json:"time"`    // what the cup may then read
	Remarks []string            `json:"remarks"` // in the order of importance
}

// Advise returns how much thinner brings the paint to a wanted reading. A recipe
// whose allowed range is zero allows anything. Pour is the low end of what the
// rules say, as more can follow and none can be taken out.
func (t Thinning) Advise(want Reading, allowed q.Range[q.Fraction]) (Advice, error) {
	target, err := want.Viscosity()
	if err != nil {
		return Advice{}, err
	}
	share, err := t.Share(target)
	if err != nil {
		return Advice{}, err
	}
	a := Advice{Want: want, Share: share, Pour: share.Low}
	if !allowed.IsZero() {
		a.Pour = max(allowed.Low, min(share.Low, allowed.High))
		a.Held = held(share, allowed)
	}
	v := t.Viscosity(a.Pour)
	a.Time = q.Range[q.Time]{Low: want.Cup.time(v.Low), High: want.Cup.time(v.High)}
	a.Remarks = t.remarks(a, allowed)
	return a, nil
}

// held is the end of allowed that all of share lies beyond.
func held(share, allowed q.Range[q.Fraction]) Held {
	switch {
	case share.Low > allowed.High:
		return Most
	case share.High < allowed.Low:
		return Least
	}
	return Free
}

func (t Thinning) remarks(a Advice, allowed q.Range[q.Fraction]) []string {
	var out []string
	span := fmt.Sprintf("%s to %s", percent(allowed.Low), percent(allowed.High))
	switch a.Held {
	case Most:
		out = append(out, fmt.Sprintf("%s would take %s of thinner or more; the recipe allows %s, so stop at %s.", a.Want, percent(a.Share.Low), span, percent(a.Pour)))
	case Least:
		out = append(out, fmt.Sprintf("%s would take %s of thinner or less; the recipe wants %s, so begin at %s.", a.Want, percent(a.Share.High), span, percent(a.Pour)))
	}
	if a.Share.High == 0 {
		out = append(out, fmt.Sprintf("The paint runs out in no more than %s as it is.", a.Want))
	}
	if t.Pull == 0 {
		out = append(out, "Two rules, far apart: run the cup before and after the first pour, and the two readings give a better figure.")
	} else if a.Pour > 2*t.Tested {
		out = append(out, fmt.Sprintf("This is far beyond the %s that was read: read again on the way.", percent(t.Tested)))
	}
	return append(append(out, a.Want.Cup.Cautions...),
		fmt.Sprintf("An estimate; the cup has the last word. Pour this, stir, read at %.0f °C, and go on in small steps.", a.Want.Cup.Temperature.Celsius()))
}
