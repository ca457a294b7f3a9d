package route

import (
	"fmt"
	"slices"
	"strings"

	"coatwright/planner/library"
	q "coatwright/quantity"
)

// tooHot says why a step must not be done on substrate, "" where it may.
func tooHot(s *library.Step, substrate *library.Substrate) string {
	if s.Heats <= substrate.HeatLimit {
		return ""
	}
	return fmt.Sprintf("warms the part to %.0f C, and %s stands %.0f C", s.Heats.Celsius(), strings.ToLower(substrate.Title), substrate.HeatLimit.Celsius())
}

// barred says which condition of a note does not hold on substrate, "" when all
// do. What lies uppermost, and what is laid next, is looked at in the search.
func (p *Problem) barred(c library.Condition, substrate *library.Substrate) string {
	for _, t := range c.Traits {
		if !slices.Contains(substrate.Traits, t) {
			return fmt.Sprintf("is only for a surface that is %s", t)
		}
	}
	for _, t := range c.NotTraits {
		if slices.Contains(substrate.Traits, t) {
			return fmt.Sprintf("is not for a surface that is %s", t)
		}
	}
	switch {
	case missing(c.Systems, p.System):
		return fmt.Sprintf("is only for the %s system", strings.Join(c.Systems, " or "))
	case missing(c.Forms, p.Form):
		return fmt.Sprintf("is only for the form %s", strings.Join(c.Forms, " or "))
	}
	return ""
}

func missing(allowed []string, word string) bool {
	return len(allowed) > 0 && !slices.Contains(allowed, word)
}

// unfit says why a material cannot lay its film on substrate in this job at all.
func (p *Problem) unfit(m *library.Material, substrate *library.Substrate) string {
	if why := p.barred(m.OnlyIf, substrate); why != "" {
		return why
	}
	if !p.Library.Words.GoesWith(m.System, p.System) {
		return fmt.Sprintf("is of the %s system, and the job of the %s system", m.System, p.System)
	}
	return ""
}

// tooLarge says why a coating cannot cover a piece evenly, "" when it can.
func tooLarge(f Coating, piece q.Area) string {
	if f.Tool == nil || f.Tool.Applicator == nil {
		return ""
	}
	if largest, listed := f.Tool.Applicator.Largest[f.Role]; listed && piece > largest {
		return fmt.Sprintf("with the %s lies evenly on at most %.2g m2, and the part has %.2g m2", strings.ToLower(f.Tool.Title), float64(largest), float64(piece))
	}
	return ""
}

// lies says whether what lies uppermost is what a note asks for.
func lies(on string, top *library.Material) bool {
	switch on {
	case "":
		return true
	case "substrate":
		return top == nil
	case "film":
		return top != nil
	}
	return top != nil && top.Role == on
}

// onLayer reports whether a note that asks for a kind of mask fits the layer
// that is laid next.
func onLayer(c library.Condition, l *Layer) bool {
	if len(c.Masks) == 0 && len(c.Polarity) == 0 {
		return true
	}
	return l != nil && !missing(c.Masks, l.Mask) && !missing(c.Polarity, l.Polarity)
}
