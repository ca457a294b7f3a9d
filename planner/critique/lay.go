package critique

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"coatwright/nearest"
	"coatwright/planner"
	"coatwright/planner/library"
	"coatwright/planner/route"
	q "coatwright/quantity"
)

// lay plays a step that lays a film.
func (s *surface) lay(i int, note *library.Step) {
	step, at := s.plan.Steps[i], s.clock.start[i]
	m := s.lib.Materials[strings.TrimPrefix(step.Material, "material/")]
	tool := s.lib.Tools[strings.TrimPrefix(step.Applicator, "tool/")]
	switch {
	case m == nil:
		s.add(i, Breaks, "material", "", "There is no material %q%s.", step.Material, nearest.Hint(nearest.To(strings.TrimPrefix(step.Material, "material/"), slugs(s.lib.Materials))))
		return
	case tool == nil || tool.Applicator == nil:
		s.add(i, Breaks, "applicator", "", "There is no applicator %q.", step.Applicator)
		return
	case m.Role != note.Lays:
		s.add(i, Breaks, "role", "", "%s is for the role %s, and this step lays the role %s.", m.Title, m.Role, note.Lays)
		return
	}
	f := route.Coating{Material: m, Tool: tool}
	s.needs(i, m.Needs, at)
	s.wants(i, m.Wants)
	s.over(i, m.Over, m.Title, at)
	s.fits(i, f)
	turn := s.turn(i, m, step)
	s.mixFor(i, m, at)
	s.grips(i, m, at)
	s.coats(i, m, step, turn)
	s.cover(i, note, f)
	s.mixOf = "" // sprayed
	if turn != nil {
		s.next++
	}
}

// fits looks at the system, the surface and the size.
func (s *surface) fits(i int, f route.Coating) {
	if sys := f.System; !s.lib.Words.GoesWith(sys, s.plan.Job.System) {
		s.add(i, Breaks, "system", "", "%s is of the %s system, and the job of the %s system.", f.Title, sys, s.plan.Job.System)
	}
	s.traits(i, f.Title, f.OnlyIf)
	piece := s.part.Area
	if l := s.layer(); l != nil && s.role(f.Role).Local {
		piece = l.Piece
	}
	if largest, listed := f.Tool.Applicator.Largest[f.Role]; listed && piece > largest {
		s.add(i, Breaks, "size", "", "%s with the %s lies evenly on at most %.2g m2, and this has %.2g m2.", f.Title, strings.ToLower(f.Tool.Title), float64(largest), float64(piece))
	}
}

// turn looks whether the film comes in the order that was agreed, and returns
// the agreed film that it is, nil for a film laid for what it gives.
func (s *surface) turn(i int, m *library.Material, step planner.Step) *planner.AgreedFilm {
	if s.next == len(s.agreed) {
		s.add(i, Breaks, "order", "", "All films that were agreed lie already.")
		return nil
	}
	next := &s.agreed[s.next]
	switch {
	case next.Role == m.Role && !slices.Contains(next.Materials, m.Slug):
		s.add(i, Breaks, "material", next.Asked, "%s is not one of the materials that make this film: %s.", m.Title, strings.Join(next.Materials, ", "))
		return next
	case next.Role == m.Role:
		if step.Colour != next.Colour {
			s.add(i, Breaks, "colour", next.Asked, "Its colour is %s, and %s was agreed.", colour(step.Colour), colour(next.Colour))
		}
		return next
	case !s.role(m.Role).Prep || s.rank(m.Role) > s.rank(next.Role):
		s.add(i, Breaks, "order", next.Asked, "The next film that was agreed is the %s.", filmName(next.Role, next.Design))
	case s.top != nil && !s.above(m.Role):
		s.add(i, Breaks, "order", "", "A film of the role %s never lies over one of the role %s.", m.Role, s.top.Role)
	}
	return nil
}

func (s *surface) rank(role string) int {
	return slices.IndexFunc(s.lib.Words.Roles, func(r library.Role) bool { return r.Name == role })
}

func (s *surface) above(role string) bool {
	if s.local() {
		return s.base == nil || s.rank(role) >= s.rank(s.base.Role)
	}
	return s.rank(role) > s.rank(s.top.Role)
}

// mixFor looks whether the mix at hand is of this film, has stood, and is fresh.
func (s *surface) mixFor(i int, m *library.Material, at time.Time) {
	if s.mixOf == "" {
		return // that it needs one has been reported
	}
	if s.mixOf != "material/"+m.Slug {
		s.add(i, Breaks, s.mixGives(), "", "The mix at hand is of another material: %s.", s.mixOf)
		return
	}
	since := at.Sub(s.mixed)
	if !s.mixed.IsZero() && since < m.Stand.Duration() {
		s.add(i, Breaks, "stand", "", "The mix must stand %s, and has stood %s.", m.Stand, span(since))
		s.late(s.mix, m.Stand.Duration(), since)
	}
}

// mixGives is the fact that the last mix gave, "mix" where its note names none.
func (s *surface) mixGives() string {
	for _, l := range s.note(s.mix).Gives {
		return l.Fact
	}
	return "mix"
}

// grips looks at what the film holds on by: a scratch in its range or, over a
// film, an open recoat window; on a design, and beside it.
func (s *surface) grips(i int, m *library.Material, at time.Time) {
	s.gripOn(i, m, s.top, s.grit, at)
	if s.local() {
		s.gripOn(i, m, s.base, s.ground, at)
	}
	for _, f := range s.beside {
		s.gripOn(i, m, f, s.grit, at)
	}
}

func (s *surface) gripOn(i int, m *library.Material, below *laid, grit q.Range[q.Grit], at time.Time) {
	if !m.Key.IsZero() && !grit.IsZero() {
		if _, meets := grit.Meets(m.Key); meets {
			return
		}
	}
	key := s.lib.Words.Scratch()
	because := s.meaning(key)
	switch {
	case below == nil && m.Key.IsZero():
	case below == nil:
		s.add(i, Breaks, key, because, "%s wants a scratch of %s, and finds %s.", m.Title, grits(m.Key), grits(grit))
	case s.open(below, at):
	case !s.dry(below, library.Recoat, at):
		s.notDry(i, below, library.Recoat, because, at)
	default:
		s.add(i, Breaks, key, because, "The recoat window of %s shut %s before this starts, and it has not been keyed again.", below.Title, span(at.Sub(below.end)-s.drying.Closes(below.Material).Duration()))
	}
}

// over looks at the rules about what lies below.
func (s *surface) over(i int, rules []library.Over, what string, at time.Time) {
	for _, o := range rules {
		below := s.touches(o)
		if below == "" {
			continue
		}
		if o.Never {
			s.add(i, Breaks, "over "+below, o.Because, "%s must never lie over %s.", what, below)
		} else if !s.holds(o.Needs, at) {
			s.unmet(i, o.Needs, o.Because, at)
		}
	}
}

// touches names what a rule is about, "" where it does not lie below.
func (s *surface) touches(o library.Over) string {
	if o.Trait != "" {
		if s.exposed[o.Trait] {
			return "anything " + o.Trait
		}
		return ""
	}
	films := []*laid{s.top}
	if s.local() {
		films = append(films, s.base)
	}
	for _, f := range films {
		if f != nil && (o.System == f.System && o.System != "" || o.Role == f.Role && o.Role != "" || o.Material == f.Slug && o.Material != "") {
			return lower(f.Title)
		}
	}
	return ""
}

// tapes looks at the limits of what a step lays down, and of what it takes up.
func (s *surface) tapes(i int, note *library.Step, at time.Time) {
	for _, t := range note.Tapes(s.lib.Tools) {
		s.needs(i, t.Tape.Needs, at)
		s.over(i, t.Tape.Over, t.Title, at)
	}
	for _, n := range note.Needs {
		for _, l := range n.Any {
			g, ok := s.facts[l.Fact]
			if !ok || g.step < 0 {
				continue
			}
			if holds := s.tapeHolds(g.step); holds > 0 && at.Sub(s.clock.end[g.step]) > holds.Duration() {
				s.add(i, Breaks, l.Fact, "", "The tape may stay on for %s, and has been on for %s.", holds, span(at.Sub(s.clock.end[g.step])))
			}
		}
	}
}

func (s *surface) tapeHolds(step int) q.Time {
	if note := s.note(step); note != nil {
		return note.TapeHolds(s.lib.Tools)
	}
	return 0
}

// coats looks at how many coats are laid.
func (s *surface) coats(i int, m *library.Material, step planner.Step, turn *planner.AgreedFilm) {
	limits := s.lib.Words.Limits
	wanted, why := m.Coats, "as the can's own sheet says"
	if turn != nil && turn.Coats > 0 {
		wanted, why = turn.Coats, "as was agreed"
	}
	switch {
	case step.Coats < wanted:
		s.add(i, Breaks, "coats", "", "It has %s, and %d are laid, %s.", coats(step.Coats), wanted, why)
	case step.Coats > wanted && turn != nil && turn.Coats > 0:
		s.add(i, Breaks, "coats", "", "It has %s, and %d were agreed.", coats(step.Coats), wanted)
	case step.Coats > limits.Coats*wanted:
		s.add(i, Breaks, "coats", limits.Thick, "It has %s, and the can's own sheet says %d.", coats(step.Coats), wanted)
	}
}

// cover puts the film on the part.
func (s *surface) cover(i int, note *library.Step, f route.Coating) {
	local := s.role(f.Role).Local
	gives := map[string]bool{"film/" + f.Role: true}
	for _, g := range f.Gives {
		gives[g] = true
	}
	for _, l := range note.Gives {
		gives[l.Fact] = true
	}
	for name, word := range s.lib.Words.Facts {
		if word.Of != library.Surface {
			continue
		}
		_, held := s.facts[name]
		if has := (word.Fresh || gives[name]) && (!local || held); !has {
			delete(s.facts, name)
		} else if !held || !local {
			s.facts[name] = given{step: i}
		}
	}
	for _, name := range slices.Concat(note.Spoils, f.Spoils) {
		if !gives[name] {
			delete(s.facts, name)
		}
	}
	for name := range gives {
		if word := s.lib.Words.Facts[name]; word == nil || word.Of != library.Surface {
			s.facts[name] = given{step: i}
		}
	}
	s.pile(&laid{f, i, s.clock.end[i]}, local)
}

// pile makes f the top film.
func (s *surface) pile(f *laid, local bool) {
	if f.Barrier && !local {
		s.exposed = map[string]bool{}
	}
	for _, t := range f.Traits {
		s.exposed[t] = true
	}
	switch {
	case !local:
		s.base, s.ground, s.beside = nil, q.Range[q.Grit]{}, nil
	case s.local():
		s.beside = append(s.beside, s.top)
	default:
		s.base, s.ground = s.top, s.grit
	}
	s.top, s.grit = f, q.Range[q.Grit]{}
}

func coats(n int) string {
	if n == 1 {
		return "1 coat"
	}
	return fmt.Sprintf("%d coats", n)
}

func filmName(role, design string) string {
	if design != "" {
		return fmt.Sprintf("%s for %q", role, design)
	}
	return role
}

func colour(c string) string {
	if c == "" {
		return "none"
	}
	return c
}
