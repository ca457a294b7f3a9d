package planner

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"time"
	"unicode"
	"unicode/utf8"

	"coatwright/planner/calendar"
	"coatwright/planner/film"
	"coatwright/planner/library"
	"coatwright/planner/mix"
	"coatwright/planner/route"
	q "coatwright/quantity"
)

// plan puts everything about the placed items into words and figures.
func (b *builder) plan(slots []calendar.Slot) *Plan {
	p := &Plan{Title: b.job.Title, Job: b.job, Films: []Film{}, Kept: []Kept{}}
	reasons, advice := b.reasons(), b.advice()
	chains := b.chains(reasons)
	for _, i := range order(slots) {
		s := b.stepOf(i)
		s.Start, s.End = slots[i].Start, slots[i].End
		s.Why, s.Serves = reasons[i], chains[i]
		s.Waits = b.waitsOf(b.waits[i])
		s.Advised, s.CostsMin, s.SavesMin = advice[i].advised, advice[i].costs, advice[i].saves
		s.Meanwhile = b.meanwhile(i, slots)
		p.Steps = append(p.Steps, s)
		if it := b.items[i]; !it.film.IsZero() {
			p.Films = append(p.Films, b.filmOf(it, s))
		}
	}
	p.SumUp(b.lib)
	p.Hardware, p.Left = hardware(b.job), left(b.job)
	p.Conditions = b.conditions(p.Steps)
	p.Totals.LowEnd, _ = b.ends(wait.low)
	p.Totals.HighEnd, p.Conditions = b.highEnd(p.Conditions)
	p.Missed, p.Totals.RiskMin = b.missed()
	return p
}

// ends is when the job ends with waits as long as takes says. Where a window
// breaks then it is not kept, and the error says which.
func (b *builder) ends(takes func(wait) q.Time) (time.Time, error) {
	slots, err := b.schedule(takes)
	if err != nil {
		open := *b
		open.waits = make([][]wait, len(b.waits))
		for i, ws := range b.waits {
			open.waits[i] = slices.Clone(ws)
			for k := range ws {
				open.waits[i][k].max = 0
			}
		}
		var late error
		if slots, late = open.schedule(takes); late != nil {
			return time.Time{}, late
		}
	}
	var end time.Time
	for _, s := range slots {
		if s.End.After(end) {
			end = s.End
		}
	}
	return end, err
}

// highEnd is when the job ends if all dries as slowly as it may. A window that
// would break then is a remark.
func (b *builder) highEnd(remarks []Condition) (time.Time, []Condition) {
	end, err := b.ends(wait.high)
	var w *calendar.WindowError
	if errors.As(err, &w) {
		remarks = append(remarks, Condition{Level: "care", Note: "background/what-a-recoat-window-is", What: fmt.Sprintf(
			"If it all dries as slowly as it may, %s cannot follow %s within %s: then start earlier in the day, or key in between.", b.titleOf(w.ID), b.titleOf(w.After), span(w.Max))})
	}
	return end, remarks
}

func (b *builder) stepOf(i int) Step {
	it := b.items[i]
	hands, _ := b.hands(it)
	s := Step{
		ID: b.ids[i], Note: "step/" + it.step.Slug, Title: it.step.Title, Phase: it.step.Phase,
		Parts: b.partNames(it), Extents: b.extents(it), Films: []string{}, Needs: b.needNames(it), Gives: b.giveNames(it),
		Because: it.step.Because, Skipped: it.step.Skipped, Checks: it.step.Checks,
		WorkMin: toMinutes(hands).Minutes(), Uses: b.uses(it), Cautions: b.cautionSlugs(it),
	}
	if !it.lead.IsZero() && !it.step.Cleans {
		s.For = it.lead.Role
	}
	if m := it.atHand(); m != nil {
		s.Films, s.Material = []string{m.Title}, "material/"+m.Slug
	}
	s.Design = b.design(it)
	if it.step.Mixes && it.bench() {
		s.Mix = b.mix(it.of, b.benchOf(it.step))
	}
	if !it.film.IsZero() {
		b.addFilm(&s, it)
	}
	return s
}

// atHand is the material that an item lays, mixes or flushes out, nil for none.
func (it *item) atHand() *library.Material {
	if it.bench() {
		return it.of.film.Material
	}
	return it.film.Material
}

func (b *builder) addFilm(s *Step, it *item) {
	a := it.film.Tool.Applicator
	s.Coats = it.film.coats
	s.FlashMin = b.d.Flash(it.film.Coating).Minutes()
	s.DryUm = it.film.Build.Micrometres() * float64(s.Coats)
	s.WetUm = b.wetFilm(it.film.Coating).Micrometres()
	s.Colour = it.film.colour
	s.Applicator = "tool/" + it.film.Tool.Slug
	s.Pressure = a.Pressure.Middle().Kilopascals()
	s.FanMM, s.DistanceMM, s.Overlap = a.Fan.Middle().Millimetres(), a.Distance.Middle().Millimetres(), a.Overlap.Middle().Percent()
}

// wetFilm is one coat of c as sprayed.
func (b *builder) wetFilm(c route.Coating) q.Length {
	solids, err := mix.Solids(MixParts(c.Material, b.lib, c.Tool.Slug))
	if err != nil {
		return 0
	}
	return film.WetFilm(c.Build, solids)
}

// design is what an item does for a design, "" for work on the whole part.
func (b *builder) design(it *item) string {
	var names []string
	for _, g := range b.groupsOf(it) {
		action, films := b.groups[g].route.Actions[it.actions[g]], b.groups[g].films
		at := action.Required
		switch {
		case it.bench():
			at = b.groups[g].route.Actions[it.of.actions[g]].Required
		case it.step.Work.Of == library.OfLayer:
			at = action.Next
		case it.step.Work.Of == library.OfLaidLayer:
			at = action.Next - 1
		}
		if at >= 0 && films[at].Design != "" && !slices.Contains(names, films[at].Design) {
			names = append(names, films[at].Design)
		}
	}
	return strings.Join(names, "; ")
}

func (b *builder) filmOf(it *item, s Step) Film {
	m := it.film.Material
	f := Film{Step: s.ID, Parts: s.Parts, Role: m.Role, Material: m.Slug, Title: m.Title, Design: s.Design, Coats: s.Coats, DryUm: s.DryUm, Colour: s.Colour}
	f.Rework = b.rework(it, s.End)
	if g := m.Gloss; !g.IsZero() {
		f.Gloss = fmt.Sprintf("%.0f to %.0f GU at 60 degrees", float64(g.Low), float64(g.High))
	}
	return f
}

// rework is until when the item's film may be taken back or mended: a film that
// ends at laid is past it once it reaches a state.
func (b *builder) rework(it *item, laid time.Time) []Rework {
	out := []Rework{}
	for _, r := range it.film.Rework {
		if lag, ok := b.d.Lag(it.film.Coating, r.Until); ok {
			out = append(out, Rework{How: r.How, State: r.Until, Until: laid.Add(lag.Duration().Truncate(time.Minute))})
		}
	}
	return out
}

func (b *builder) partNames(it *item) []string {
	var names []string
	for _, g := range b.groupsOf(it) {
		for _, p := range b.groups[g].parts {
			names = append(names, p.Label())
		}
	}
	return names
}

// needNames is the facts that the item takes, each once, with their numbers.
func (b *builder) needNames(it *item) []string {
	names := []string{}
	for _, g := range b.groupsOf(it) {
		for _, l := range b.groups[g].route.Actions[it.actions[g]].Links {
			name := factText(l.Fact, l.Number)
			if !l.Want && !l.Covered && !slices.Contains(names, name) {
				names = append(names, name)
			}
		}
	}
	return names
}

func (b *builder) giveNames(it *item) []string {
	names := []string{}
	for _, l := range it.step.Gives {
		names = append(names, factText(l.Fact, l.Number))
	}
	if m := it.film.Material; m != nil {
		names = append(append(names, m.Gives...), "film/"+m.Role)
	}
	return names
}

// factText writes a fact with its number: "keyed P240 to P400".
func factText(fact string, n q.Range[q.Grit]) string {
	switch {
	case n.IsZero():
		return fact
	case n.Low == n.High:
		return fmt.Sprintf("%s P%.0f", fact, float64(n.Low))
	}
	return fmt.Sprintf("%s P%.0f to P%.0f", fact, float64(n.Low), float64(n.High))
}

func (b *builder) uses(it *item) []Use {
	uses := []Use{}
	for _, u := range it.step.Uses {
		if u.Tool != "" {
			t := b.lib.Tools[u.Tool]
			wears := t.Wear.Fixed + float64(t.Wear.PerArea)*float64(b.area(it))
			uses = append(uses, Use{Note: "tool/" + u.Tool, Title: t.Title, Count: wears, Piece: t.Wear.Piece})
			continue
		}
		use := Use{Note: "material/" + u.Material, Title: b.lib.Materials[u.Material].Title}
		if u.Spread > 0 {
			use.ML = (q.Volume(float64(b.area(it)) / float64(u.Spread))).Millilitres()
		}
		uses = append(uses, use)
	}
	if it.step.Cleans && it.bench() {
		m := b.lib.Materials[it.of.film.CleanWith]
		uses = append(uses, Use{Note: "material/" + m.Slug, Title: m.Title, ML: it.of.film.Tool.Applicator.Flush.Millilitres()})
	}
	return uses
}

// waitsOf words the lags that an item starts with; a lag of nothing is not told.
func (b *builder) waitsOf(ws []wait) []Wait {
	out := []Wait{}
	for _, w := range ws {
		if w.min <= 0 && w.max <= 0 {
			continue
		}
		out = append(out, Wait{
			Until: w.until, After: b.ids[w.after], Min: toMinutes(w.min).Minutes(), Low: toMinutes(w.low()).Minutes(), High: toMinutes(w.high()).Minutes(), Max: w.closes().Minutes(), By: w.by, How: w.how,
		})
	}
	return out
}

func lowerFirst(s string) string {
	if s == "" {
		return s
	}
	r, n := utf8.DecodeRuneInString(s)
	return string(unicode.ToLower(r)) + s[n:]
}
