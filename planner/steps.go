package planner

import (
	"fmt"
	"slices"
	"unicode"
	"unicode/utf8"

	"coatwright/planner/amounts"
	"coatwright/planner/calendar"
	"coatwright/planner/library"
	q "coatwright/quantity"
)

// plan puts everything about the placed items into words and figures.
func (b *builder) plan(slots []calendar.Slot) *Plan {
	p := &Plan{Title: b.job.Title, Job: b.job, Films: []Film{}}
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
		if it := b.items[i]; it.material != nil {
			p.Films = append(p.Films, b.filmOf(it, s))
		}
	}
	p.Materials = b.shopping(p.Steps)
	p.Cautions = b.cautions(p.Steps)
	p.Conditions = b.conditions(p.Steps)
	p.Totals = totals(p)
	p.Missed, p.Totals.RiskMin = b.missed()
	return p
}

func (b *builder) stepOf(i int) Step {
	it := b.items[i]
	hands, _ := b.hands(it)
	s := Step{
		ID: b.ids[i], Note: "step/" + it.step.Slug, Title: it.step.Title, Phase: it.step.Phase,
		Parts: b.partNames(it), Films: []string{}, Needs: b.needNames(it), Gives: b.giveNames(it),
		Because: it.step.Because, Skipped: it.step.Skipped, Checks: it.step.Checks,
		WorkMin: toMinutes(hands).Minutes(), Uses: b.uses(it), Cautions: b.cautionSlugs(it),
	}
	if it.lead != nil && !it.step.Cleans {
		s.For = it.lead.Role
	}
	if m := b.filmAtHand(it); m != nil {
		s.Films, s.Material = []string{m.Title}, "material/"+m.Slug
	}
	if it.step.Mixes && it.lead != nil {
		if film := b.filmItem(it); film != nil {
			s.Mix = b.mix(film)
		}
	}
	if it.material != nil {
		b.addFilm(&s, it)
	}
	return s
}

// filmAtHand is the material that an item lays, mixes or flushes out.
func (b *builder) filmAtHand(it *item) *library.Material {
	if it.material != nil {
		return it.material
	}
	if it.bench {
		return it.lead
	}
	return nil
}

// filmItem is the film that a mix is for.
func (b *builder) filmItem(mix *item) *item {
	for _, it := range b.items {
		if it.material == mix.lead && it.material != nil {
			return it
		}
	}
	return nil
}

func (b *builder) addFilm(s *Step, it *item) {
	m := it.material
	s.Coats = b.coats(it)
	s.FlashMin = b.d.flash(m).Minutes()
	s.DryUm = m.Build.Micrometres() * float64(s.Coats)
	s.WetUm = b.wetFilm(m).Micrometres()
	s.Colour = b.colour(it)
	s.Applicator = "tool/" + b.gun.Slug
	s.Pressure = b.gun.Applicator.Pressure.Middle().Kilopascals()
}

// wetFilm is one coat of m as sprayed.
func (b *builder) wetFilm(m *library.Material) q.Length {
	solids, err := amounts.SolidsOfMix(mixParts(m, b.lib, b.job.Applicator))
	if err != nil {
		return 0
	}
	return amounts.WetFilm(m.Build, solids)
}

// colour is the job's colour for the film, "" for none.
func (b *builder) colour(it *item) string {
	for g, a := range it.actions {
		if r := b.groups[g].route.Actions[a].Required; r >= 0 {
			films := slices.Concat(b.lib.Effects[b.job.Effect].Films, b.lib.Finishes[b.job.Finish].Films)
			return b.job.Colours[films[r].Colour]
		}
	}
	return ""
}

func (b *builder) filmOf(it *item, s Step) Film {
	f := Film{Step: s.ID, Parts: s.Parts, Role: it.material.Role, Material: it.material.Slug, Title: it.material.Title, Coats: s.Coats, DryUm: s.DryUm, Colour: s.Colour}
	if g := it.material.Gloss; !g.IsZero() {
		f.Gloss = fmt.Sprintf("%.0f to %.0f GU at 60 degrees", float64(g.Low), float64(g.High))
	}
	return f
}

func (b *builder) partNames(it *item) []string {
	var names []string
	for _, g := range b.groupsOf(it) {
		for _, p := range b.groups[g].parts {
			name := p.Name
			if p.Count > 1 {
				name = fmt.Sprintf("%s (%d)", p.Name, p.Count)
			}
			names = append(names, name)
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
			if !l.Want && !slices.Contains(names, name) {
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
	if it.material != nil {
		names = append(append(names, it.material.Gives...), "film/"+it.material.Role)
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
			uses = append(uses, Use{Note: "tool/" + u.Tool, Title: b.lib.Tools[u.Tool].Title})
			continue
		}
		use := Use{Note: "material/" + u.Material, Title: b.lib.Materials[u.Material].Title}
		if u.Spread > 0 {
			use.ML = (q.Volume(float64(b.area(it)) / float64(u.Spread))).Millilitres()
		}
		uses = append(uses, use)
	}
	if it.step.Cleans && it.lead != nil {
		m := b.lib.Materials[it.lead.CleanWith]
		uses = append(uses, Use{Note: "material/" + m.Slug, Title: m.Title, ML: b.gun.Applicator.Flush.Millilitres()})
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
			Until: w.until, After: b.ids[w.after], Min: toMinutes(w.min).Minutes(), Max: w.closes().Minutes(), By: w.by, How: w.how,
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
