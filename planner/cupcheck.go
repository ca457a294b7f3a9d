package planner

import (
	"slices"

	"coatwright/planner/library"
	"coatwright/planner/viscosity"
)

// CupCheck is how long the mix, ready to spray, takes to run out of an efflux
// cup: the painter's own check that it is thinned right.
type CupCheck struct {
	Cup  string  `json:"cup"` // "Ford 4"
	Low  float64 `json:"low_s"`
	High float64 `json:"high_s"`
}

// cupKinds is how many kinds of cup a mix names: few shops have more than one.
const cupKinds = 2

// cupChecks are the cups that can measure a material ready to spray, at both ends
// of what its note says: of each kind the one that reads nearest to its middle.
func cupChecks(m *library.Material) []CupCheck {
	out := []CupCheck{}
	if m.Viscosity.IsZero() {
		return out
	}
	var kinds []string
	for _, r := range viscosity.Able(m.Viscosity.Middle()) {
		low, err := r.Cup.Time(m.Viscosity.Low)
		high, err2 := r.Cup.Time(m.Viscosity.High)
		if err != nil || err2 != nil || slices.Contains(kinds, r.Cup.Kind) {
			continue
		}
		kinds = append(kinds, r.Cup.Kind)
		if out = append(out, CupCheck{r.Cup.Name(), float64(low), float64(high)}); len(out) == cupKinds {
			break
		}
	}
	return out
}
