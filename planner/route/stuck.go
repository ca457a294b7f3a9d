package route

import (
	"fmt"
	"slices"
)

// stuck explains a search that found no order although each fact alone could
// be had: how far it came, and what was missing there.
func (s *search) stuck() *Refusal {
	far := s.nodes[0].state
	for _, n := range s.nodes {
		if n.state.next >= far.next {
			far = n.state
		}
	}
	if int(far.next) == len(s.Films) {
		if r := s.lacking(far, s.end.needs, "", map[int]bool{}); r != nil {
			return r
		}
		return &Refusal{Fact: s.name(s.end.needs[0].choices[0]), Reasons: []string{"all films can be laid, but no order of steps leads from them to the hand-over"}}
	}
	if r := s.ruledOut(far.next); r != nil {
		return r
	}
	f := s.Films[far.next]
	for i := range s.ops {
		o := &s.ops[i]
		if t := o.turns[far.next]; !t.ok || !t.required {
			continue
		}
		if r := s.lacking(far, o.needs, o.step.Slug, map[int]bool{}); r != nil {
			return r
		}
	}
	return &Refusal{Fact: "film/" + f.Role, Reasons: []string{
		fmt.Sprintf("no order of steps lays it: what prepares it is spoiled again, or its window cannot be met, after film %d of %d", far.next, len(s.Films))}}
}

// ruledOut names the rules about what lies below that stand in the way of the
// required film next, or of its mask, wherever the search came as far as that;
// nil when there are none.
func (s *search) ruledOut(next uint8) *Refusal {
	r := &Refusal{Fact: "film/" + s.Films[next].Role}
	for _, n := range s.nodes {
		if n.state.next != next {
			continue
		}
		for i := range s.ops {
			o := &s.ops[i]
			if t := o.turns[next]; !t.ok || o.top != 0 && !t.required {
				continue
			}
			for k := range o.rules {
				rule := &o.rules[k]
				if !s.touches(n.state, rule) {
					continue
				}
				if _, holds := s.holds(n.state, rule.needs); !rule.Never && holds {
					continue
				}
				r.Step = o.step.Slug
				if why := s.says(o, rule); !slices.Contains(r.Reasons, why) {
					r.Reasons = append(r.Reasons, why)
				}
			}
		}
	}
	if len(r.Reasons) == 0 {
		return nil
	}
	return r
}

// says words a rule about what lies below.
func (s *search) says(o *op, r *rule) string {
	what := o.step.Slug
	if !o.film.IsZero() {
		what = o.film.Slug
	}
	below := r.Material
	switch {
	case r.Trait != "":
		below = "anything " + r.Trait
	case r.System != "":
		below = "a film of the " + r.System + " system"
	case r.Role != "":
		below = "a film of the role " + r.Role
	}
	if r.Never {
		return fmt.Sprintf("%s must not lie over %s: %s", what, below, r.Because)
	}
	return fmt.Sprintf("%s over %s needs %q, which it never gets: %s", what, below, s.name(r.needs), r.Because)
}

// lacking follows the needs that do not hold in st, through the steps that would
// give them, down to a dryness state that the top film never reaches. It returns
// nil when there is none at the bottom.
func (s *search) lacking(st state, needs []need, step string, seen map[int]bool) *Refusal {
	for _, n := range needs {
		if _, ok := s.chosen(st, n, st.wait); ok {
			continue
		}
		ch := n.choices[0]
		if ch.fact < 0 {
			return &Refusal{Fact: s.name(ch), Step: step, Reasons: []string{fmt.Sprintf("%s never gets there in this air", s.material(st).Slug)}}
		}
		if seen[ch.fact] {
			continue
		}
		seen[ch.fact] = true
		for i := range s.ops {
			if o := &s.ops[i]; o.top == 0 && o.gives.has(ch.fact) {
				if r := s.lacking(st, o.needs, o.step.Slug, seen); r != nil {
					return r
				}
			}
		}
	}
	return nil
}
