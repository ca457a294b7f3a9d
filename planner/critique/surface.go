package critique

import (
	"time"

	"coatwright/planner"
	"coatwright/planner/library"
	"coatwright/planner/route"
	q "coatwright/quantity"
)

// surface is one part on its way through the plan.
type surface struct {
	*bench
	clock     clock
	part      planner.Part
	substrate *library.Substrate
	agreed    []planner.AgreedFilm
	next      int // agreed films that are laid
	facts     map[string]given
	exposed   map[string]bool // traits that reach what is laid next
	grit      q.Range[q.Grit]
	top       *laid
	base      *laid           // under a design's film: the film beside it
	ground    q.Range[q.Grit] // the scratch on base
	beside    []*laid         // designs' films that are not the top one
	mix       int             // the step that made the last mix
	mixOf     string          // its material note
	mixed     time.Time       // when it was made
	stood     int             // the step after which the part must stand
	standing  time.Time       // ... until then
	found     []Finding
}

// given is how a fact came to hold.
type given struct {
	step  int       // -1: from the start
	until time.Time // when it ends by itself; zero for never
}

// laid is a film on the part.
type laid struct {
	route.Coating
	step int
	end  time.Time
}

func (b *bench) surface(part planner.Part, c clock) *surface {
	s := &surface{
		bench: b, clock: c, part: part, substrate: b.lib.Substrates[part.Substrate], agreed: b.films[part.Name],
		facts: map[string]given{}, exposed: map[string]bool{},
	}
	for _, l := range planner.StartFacts(part, b.lib) {
		s.facts[l.Fact] = given{step: -1}
		if !l.Number.IsZero() {
			s.grit = l.Number
		}
	}
	for _, t := range s.substrate.Traits {
		s.exposed[t] = true
	}
	return s
}

// mine reports whether step i is done for the part.
func (s *surface) mine(i int) bool { return s.part.In(s.plan.Steps[i].Parts) }

func (s *surface) local() bool { return s.top != nil && s.role(s.top.Role).Local }

func (s *surface) role(name string) library.Role { return s.lib.Words.Role(name) }

// layer is the design layer that comes next, nil for none.
func (s *surface) layer() *route.Layer {
	if s.next < len(s.agreed) {
		return s.agreed[s.next].Layer
	}
	return nil
}

// holds reports whether a fact or a dryness state holds at t, with its number.
func (s *surface) holds(l library.Literal, t time.Time) bool {
	if s.lib.Words.Dry(l.Fact) {
		return s.top == nil || s.dry(s.top, l.Fact, t)
	}
	g, ok := s.facts[l.Fact]
	if !ok || !g.until.IsZero() && t.After(g.until) {
		return false
	}
	if l.Number.IsZero() {
		return true
	}
	_, meets := s.grit.Meets(l.Number)
	return meets
}

// dry reports whether a film has reached a state at t.
func (s *surface) dry(f *laid, state string, t time.Time) bool {
	lag, ok := s.drying.Lag(f.Coating, state)
	return ok && t.Sub(f.end) >= lag.Duration()-time.Second
}

// open reports whether the recoat window of a film is open at t.
func (s *surface) open(f *laid, t time.Time) bool {
	closes := s.drying.Closes(f.Material)
	return s.dry(f, library.Recoat, t) && (closes == 0 || t.Sub(f.end) <= closes.Duration()+time.Second)
}
