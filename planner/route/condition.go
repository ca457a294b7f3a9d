package route

import (
	"fmt"
	"slices"
	"strings"

	"coatwright/planner/library"
)

// barred says which condition of a note does not hold here, "" when all do.
// What lies uppermost is looked at in the search.
func (p *Problem) barred(c library.Condition) string {
	for _, t := range c.Traits {
		if !slices.Contains(p.Traits, t) {
			return fmt.Sprintf("is only for a surface that is %s", t)
		}
	}
	for _, t := range c.NotTraits {
		if slices.Contains(p.Traits, t) {
			return fmt.Sprintf("is not for a surface that is %s", t)
		}
	}
	switch {
	case missing(c.Systems, p.System):
		return fmt.Sprintf("is only for the %s system", strings.Join(c.Systems, " or "))
	case missing(c.Applicator, p.Tool):
		return fmt.Sprintf("is only for %s", strings.Join(c.Applicator, " or "))
	case missing(c.Forms, p.Form):
		return fmt.Sprintf("is only for the form %s", strings.Join(c.Forms, " or "))
	}
	return ""
}

func missing(allowed []string, word string) bool {
	return len(allowed) > 0 && !slices.Contains(allowed, word)
}

// unfit says why a material cannot lay its film in this job at all.
func (p *Problem) unfit(m *library.Material) string {
	if why := p.barred(m.OnlyIf); why != "" {
		return why
	}
	if !p.fitsSystem(m) {
		return fmt.Sprintf("is of the %s system, and the job of the %s system", m.System, p.System)
	}
	if p.Allowed != nil && !p.Allowed(m) {
		return "is not what the job asks for"
	}
	t := p.Library.Tools[p.Tool]
	if t == nil || t.Applicator == nil {
		return ""
	}
	if largest, listed := t.Applicator.Largest[m.Role]; listed && p.Piece > largest {
		return fmt.Sprintf("with the %s lies evenly on at most %.2g m2, and the part has %.2g m2", strings.ToLower(t.Title), float64(largest), float64(p.Piece))
	}
	return ""
}

// fitsSystem: two-pack materials and those of no system go with any system.
func (p *Problem) fitsSystem(m *library.Material) bool {
	return m.System == p.System || m.System == "two-pack" || m.System == "none"
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
