package critique

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"coatwright/nearest"
	"coatwright/planner/library"
	q "coatwright/quantity"
)

// play does the plan's steps on the part, one by one, and says what is wrong.
func (s *surface) play() []Finding {
	for i := range s.plan.Steps {
		if s.mine(i) {
			s.do(i)
		}
	}
	s.finish()
	for i := range s.found {
		s.found[i].Part = s.part.Name
	}
	return s.found
}

func (s *surface) add(i int, level Level, need, because, format string, args ...any) {
	s.found = append(s.found, s.finding(i, level, need, fmt.Sprintf(format, args...), because))
}

// late says of the last finding what it should have waited for, and did not.
func (s *surface) late(after int, wait, waited time.Duration) {
	s.found[len(s.found)-1].late = lateness{after, wait, wait - waited}
}

// do plays step i.
func (s *surface) do(i int) {
	note, at := s.note(i), s.clock.start[i]
	if note == nil {
		slug := strings.TrimPrefix(s.plan.Steps[i].Note, "step/")
		s.add(i, Breaks, "note", "", "There is no note %q%s.", s.plan.Steps[i].Note, nearest.Hint(nearest.To(slug, slugs(s.lib.Steps))))
		return
	}
	s.conditions(i, note)
	s.needs(i, note.Needs, at)
	s.wants(i, note.Wants)
	s.before(i, note, at)
	s.rest(i, note, at)
	s.tapes(i, note, at)
	switch {
	case note.Lays != "":
		s.lay(i, note)
		return
	case note.Mixes:
		s.mix, s.mixOf, s.mixed = i, s.plan.Steps[i].Material, s.clock.end[i]
	case note.Cleans:
		s.clean(i, note, at)
	case note.Strips:
		s.strip()
	}
	s.change(i, note.Spoils, note.Gives, note)
	if note.Stands.In > 0 {
		s.stood, s.standing = i, s.clock.end[i].Add(s.drying.Stands(note.Stands).Duration())
	}
}

// conditions looks at where a step may be done at all.
func (s *surface) conditions(i int, note *library.Step) {
	c := note.OnlyIf
	s.traits(i, "It", c)
	if len(c.Systems) > 0 && !slices.Contains(c.Systems, s.plan.Job.System) {
		s.add(i, Breaks, "system", "", "It is only for the %s system.", strings.Join(c.Systems, " or "))
	}
	if len(c.Forms) > 0 && !slices.Contains(c.Forms, s.part.Form) {
		s.add(i, Breaks, "form", "", "It is only for the form %s.", strings.Join(c.Forms, " or "))
	}
	if note.Heats > s.substrate.HeatLimit {
		s.add(i, Breaks, "heat", "", "It warms the part to %.0f C, and %s stands %.0f C.", note.Heats.Celsius(), lower(s.substrate.Title), s.substrate.HeatLimit.Celsius())
	}
	layer := s.layer()
	if len(c.Masks) > 0 && (layer == nil || !slices.Contains(c.Masks, layer.Mask)) {
		s.add(i, Breaks, "mask", "", "No design with a mask of %s comes next.", strings.Join(c.Masks, " or "))
	}
	if !s.lies(c.On) {
		s.add(i, Breaks, "on "+c.On, "", "It is done on %s, and that is not what lies uppermost.", c.On)
	}
}

// traits looks whether the surface is what is asked for.
func (s *surface) traits(i int, what string, c library.Condition) {
	for _, t := range c.Traits {
		if !slices.Contains(s.substrate.Traits, t) {
			s.add(i, Breaks, "trait "+t, "", "%s is only for a surface that is %s.", what, t)
		}
	}
	for _, t := range c.NotTraits {
		if slices.Contains(s.substrate.Traits, t) {
			s.add(i, Breaks, "trait "+t, "", "%s is not for a surface that is %s.", what, t)
		}
	}
}

func (s *surface) lies(on string) bool {
	switch on {
	case "":
		return true
	case "substrate":
		return s.top == nil
	case "film":
		return s.top != nil
	}
	return s.top != nil && s.top.Role == on
}

// needs looks for what step i cannot do without.
func (s *surface) needs(i int, needs []library.Need, at time.Time) {
	for _, n := range needs {
		if slices.ContainsFunc(n.Any, func(l library.Literal) bool { return s.holds(l, at) }) {
			continue
		}
		s.unmet(i, n.Any[0], n.Because, at)
	}
}

// unmet says of a need what is missing.
func (s *surface) unmet(i int, l library.Literal, because string, at time.Time) {
	if because == "" {
		because = s.meaning(l.Fact)
	}
	g, was := s.facts[l.Fact]
	switch {
	case s.lib.Words.Dry(l.Fact):
		s.notDry(i, s.top, l.Fact, because, at)
	case was && !g.until.IsZero() && at.After(g.until):
		s.add(i, Breaks, l.Fact, because, "%q did not last: it ended %s before this starts.", l.Fact, span(at.Sub(g.until)))
	case was:
		s.add(i, Breaks, l.Fact, because, "The scratch is %s, and this wants %s.", grits(s.grit), grits(l.Number))
	default:
		s.add(i, Breaks, l.Fact, because, "It needs %q, and nothing before it gives that.", l.Fact)
	}
}

func (s *surface) notDry(i int, f *laid, state, because string, at time.Time) {
	lag, ok := s.drying.Lag(f.Coating, state)
	if !ok {
		s.add(i, Breaks, state, because, "%s never gets %s in this air.", f.Title, state)
		return
	}
	s.add(i, Breaks, state, because, "%s is %s after %s, and this starts after %s.", f.Title, state, span(lag.Duration()), span(at.Sub(f.end)))
	s.late(f.step, lag.Duration(), at.Sub(f.end))
}

// wants looks for what spares rework.
func (s *surface) wants(i int, wants []library.Want) {
	for _, w := range wants {
		if _, ok := s.facts[w.Fact]; !ok {
			s.add(i, Risks, w.Fact, w.Because, "It goes better with %q.", w.Fact)
		}
	}
}

// before looks for a dryness state that has come already.
func (s *surface) before(i int, note *library.Step, at time.Time) {
	for _, state := range note.Before {
		if s.top != nil && s.dry(s.top, state, at) {
			lag, _ := s.drying.Lag(s.top.Coating, state)
			if at.Sub(s.top.end) <= lag.Duration()+time.Minute {
				continue // the plan's clock is in whole minutes
			}
			s.add(i, Breaks, "before "+state, note.Because, "%s is %s after %s, and this starts only after %s.", s.top.Title, state, span(lag.Duration()), span(at.Sub(s.top.end)))
		}
	}
}

// rest looks whether the part has stood for as long as the step before asks.
func (s *surface) rest(i int, note *library.Step, at time.Time) {
	if !s.isBench(note) && at.Before(s.standing) {
		s.add(i, Breaks, "stands", "", "The part must stand for another %s after the step before.", span(s.standing.Sub(at)))
		s.late(s.stood, s.standing.Sub(s.clock.end[s.stood]), at.Sub(s.clock.end[s.stood]))
	}
}

// clean looks whether the flush comes before the paint sets.
func (s *surface) clean(i int, note *library.Step, at time.Time) {
	if s.top == nil {
		return
	}
	if late := at.Sub(s.top.end); note.Within > 0 && late > note.Within.Duration() {
		s.add(i, Breaks, "within", note.Because, "It must be done within %s, and is done after %s.", note.Within, span(late))
	}
}

// strip lays bare what is under the substrate.
func (s *surface) strip() {
	under := s.lib.Substrates[s.substrate.Under]
	if under == nil || s.top != nil {
		return
	}
	for name := range s.facts {
		own := slices.ContainsFunc(s.substrate.Facts, func(l library.Literal) bool { return l.Fact == name })
		if f := s.lib.Words.Facts[name]; own || f != nil && f.Of == library.Surface {
			delete(s.facts, name)
		}
	}
	for name, f := range s.lib.Words.Facts {
		if f.AtStart == library.Always && f.Of == library.Surface {
			s.facts[name] = given{step: -1}
		}
	}
	for _, l := range under.Facts {
		s.facts[l.Fact] = given{step: -1}
	}
	s.substrate, s.grit, s.exposed = under, q.Range[q.Grit]{}, map[string]bool{}
	for _, t := range under.Traits {
		s.exposed[t] = true
	}
}

// change applies what step i spoils and gives.
func (s *surface) change(i int, spoils []string, gives []library.Literal, note *library.Step) {
	for _, f := range spoils {
		delete(s.facts, f)
		s.unkey(f)
	}
	for _, l := range gives {
		g := given{step: i}
		if lasts := note.Lasts[l.Fact]; lasts > 0 {
			g.until = s.clock.end[i].Add(lasts.Duration() + time.Second)
		}
		s.facts[l.Fact] = g
		if !l.Number.IsZero() {
			s.grit, s.ground = l.Number, l.Number
		}
	}
}

// unkey drops the scratch with the fact that carries it.
func (s *surface) unkey(fact string) {
	if f := s.lib.Words.Facts[fact]; f != nil && f.Number {
		s.grit, s.ground = q.Range[q.Grit]{}, q.Range[q.Grit]{}
	}
}

// finish looks at the part when the plan is done.
func (s *surface) finish() {
	finish := s.lib.Finishes[s.plan.Job.Finish]
	end := s.clock.start[0]
	last := -1
	for i := range s.plan.Steps {
		if s.mine(i) && !s.clock.start[i].Before(end) {
			end, last = s.clock.start[i], i
		}
	}
	for ; s.next < len(s.agreed); s.next++ {
		f := s.agreed[s.next]
		s.add(-1, Breaks, "film/"+f.Role, f.Asked, "%s never gets its %s.", s.part.Name, filmName(f.Role, f.Design))
	}
	for _, fact := range finish.Ends {
		if s.holds(library.Literal{Fact: fact}, end) {
			continue
		}
		s.add(-1, Breaks, fact, s.meaning(fact), "At the end %s does not have %q.", s.part.Name, fact)
	}
	for _, w := range finish.Wants {
		if _, ok := s.facts[w.Fact]; !ok {
			s.add(last, Risks, w.Fact, w.Because, "The job goes better with %q at the end.", w.Fact)
		}
	}
}
