package web

import (
	"fmt"
	"html/template"
	"slices"
	"strings"
	"time"

	"coatwright/planner"
	q "coatwright/quantity"
)

// PlanPage is a plan, or the reason why there is none.
type PlanPage struct {
	Frame
	ID     string
	Plan   *planner.Plan
	Saved  time.Time
	Titles map[string]string // titles of notes by path; where one is missing, its slug is put in words
}

// NameOf is the title of a note.
func (p PlanPage) NameOf(kind, slug string) string {
	if slug == "" {
		return ""
	}
	path := strings.TrimPrefix(noteAddress(kind, slug), "/note/")
	if title := p.Titles[path]; title != "" {
		return title
	}
	return words(slug)
}

// Room is the air of the job in a line.
func (p PlanPage) Room() string {
	r := p.Plan.Job.Room
	u := p.units()
	return fmt.Sprintf("%s, %s humidity, air at %s, surface %s",
		q.Show(u, r.Temperature), q.Show(u, r.Humidity), q.Show(u, r.Speed), q.Show(u, r.Surface))
}

// Painted are the parts of the job that something is done to.
func (p PlanPage) Painted() []planner.Part {
	return slices.DeleteFunc(slices.Clone(p.Plan.Job.Parts), func(part planner.Part) bool { return part.Leave })
}

// PlanStep is a step with its number.
type PlanStep struct {
	*planner.Step
	N int
}

// StepGroup is the steps that lead up to one film, or follow the last.
type StepGroup struct {
	Role  string // "" after the last film
	Film  planner.Film
	Steps []PlanStep
}

// Steps are the steps of the plan, numbered from one.
func (p PlanPage) Steps() []PlanStep {
	steps := make([]PlanStep, len(p.Plan.Steps))
	for i := range p.Plan.Steps {
		steps[i] = PlanStep{Step: &p.Plan.Steps[i], N: i + 1}
	}
	return steps
}

// Groups are the steps in order, with a break after each film: what is done
// until the next film is laid stands under that film, whichever film it is for.
// Cleaning up after a film stays with the film before it.
func (p PlanPage) Groups() []StepGroup {
	var groups []StepGroup
	var next *StepGroup
	for _, s := range p.Steps() {
		if next == nil && s.For == "" && len(groups) > 0 && len(s.Films) > 0 {
			last := &groups[len(groups)-1]
			last.Steps = append(last.Steps, s)
			continue
		}
		if next == nil {
			next = &StepGroup{}
		}
		next.Steps = append(next.Steps, s)
		if film, ok := p.film(s.ID); ok {
			next.Role, next.Film = film.Role, film
			groups, next = append(groups, *next), nil
		}
	}
	if next != nil {
		groups = append(groups, *next)
	}
	return groups
}

func (p PlanPage) film(step string) (planner.Film, bool) {
	i := slices.IndexFunc(p.Plan.Films, func(f planner.Film) bool { return f.Step == step })
	if i < 0 {
		return planner.Film{}, false
	}
	return p.Plan.Films[i], true
}

// Step finds a step by its id; its number is 0 where there is none, as for a
// reason that is for the job as agreed.
func (p PlanPage) Step(id string) PlanStep {
	i := planner.StepAt(p.Plan.Steps, id)
	if i < 0 {
		return PlanStep{Step: &planner.Step{}}
	}
	return PlanStep{Step: &p.Plan.Steps[i], N: i + 1}
}

// ShownStep is a step with the page that it is on.
type ShownStep struct {
	Page PlanPage
	PlanStep
}

// Show hands a step to its template.
func (p PlanPage) Show(s PlanStep) ShownStep { return ShownStep{p, s} }

// HowAt is where a figure of a step is explained, "" for a plan that is not
// kept.
func (p PlanPage) HowAt(step, key string) string {
	if p.ID == "" {
		return ""
	}
	return "/plan/" + p.ID + "/how/" + step + "#" + key
}

// Defers says who decides about what goes into the air.
func (p PlanPage) Defers() string {
	for _, e := range p.Plan.Emissions {
		if e.Defer != "" {
			return e.Defer
		}
	}
	return ""
}

// TotalAt is where a total of the plan is explained, "" for a plan that is not
// kept.
func (p PlanPage) TotalAt(key string) string {
	if p.ID == "" {
		return ""
	}
	return "/plan/" + p.ID + "/how#" + key
}

// HowAt is where a figure of the step is explained.
func (s ShownStep) HowAt(key string) string { return s.Page.HowAt(s.ID, key) }

// ShownMix is a mix with the step that makes it.
type ShownMix struct {
	*planner.Mix
	Step ShownStep
}

// Mixed is what the step mixes.
func (s ShownStep) Mixed() ShownMix { return ShownMix{s.Mix, s} }

// HowAt is where a figure of the mix is explained; keys of the pours go by their
// place.
func (m ShownMix) HowAt(key string) string { return m.Step.HowAt(key) }

// ShownWait is a wait of a step, with the step that started its clock.
type ShownWait struct {
	planner.Wait
	Giver, Taker PlanStep
	page         PlanPage
	place        int // among the step's waits
}

// WaitOf finds what started the clock of the wait at a place among a step's.
func (p PlanPage) WaitOf(s PlanStep, place int, w planner.Wait) ShownWait {
	return ShownWait{Wait: w, Giver: p.Step(w.After), Taker: s, page: p, place: place}
}

// HowAt is where the wait, or when it must be over, is explained.
func (w ShownWait) HowAt(key string) string {
	return w.page.HowAt(w.Taker.ID, fmt.Sprintf("%s-%d", key, w.place+1))
}

// ShownRework is a way to take a film back or mend it, until when in words.
type ShownRework struct{ How, Until string }

// Rework is how the film that a step lays may be taken back or mended.
func (p PlanPage) Rework(s PlanStep) []ShownRework {
	film, _ := p.film(s.ID)
	out := make([]ShownRework, len(film.Rework))
	for i, r := range film.Rework {
		out[i] = ShownRework{How: r.How, Until: dated(r.Until, s.End)}
	}
	return out
}

// dated is a clock time, with its day where that is not the day of other.
func dated(t, other time.Time) string {
	if sameDay(t, other) {
		return clock(t)
	}
	return moment(t)
}

// Closes is the latest start that the wait leaves, with its day where that is
// not the step's own; "" where it never closes.
func (w ShownWait) Closes() string {
	if w.Max == 0 || w.Giver.N == 0 {
		return ""
	}
	return dated(w.Giver.End.Add(minutes(w.Max)), w.Taker.Start)
}

// Before is the dryness that the step must come before; "" for a wait of another
// kind.
func (w ShownWait) Before() string {
	state, is := strings.CutPrefix(w.Until, "before ")
	if !is {
		return ""
	}
	return state
}

func minutes(m float64) time.Duration { return time.Duration(m * float64(time.Minute)) }

// Section is a drawing of films that one or more parts have alike.
type Section struct {
	Parts   []string
	Drawing template.HTML
	Designs bool // films of designs are among those drawn
}

// Sections draws each different stack of films once.
func (p PlanPage) Sections() []Section {
	var sections []Section
	index := map[string]int{}
	for _, part := range coatedParts(p.Plan) {
		key := stackKey(p.Plan, part)
		if i, ok := index[key]; ok {
			sections[i].Parts = append(sections[i].Parts, part)
			continue
		}
		index[key] = len(sections)
		designs := slices.ContainsFunc(filmsOn(p.Plan, part), func(f planner.Film) bool { return f.Design != "" })
		sections = append(sections, Section{Parts: []string{part}, Drawing: StackSVG(p.Plan, part, p.units()), Designs: designs})
	}
	return sections
}

// Strips are those of the plan's candies.
func (p PlanPage) Strips() []ShownStrip {
	var out []ShownStrip
	for i := range p.Plan.Strips {
		s := &p.Plan.Strips[i]
		out = append(out, ShownStrip{s, s.Most(), "agreed", func(key string) string { return p.HowAt(s.Step, key) }})
	}
	return out
}

// Timeline draws when things happen.
func (p PlanPage) Timeline() template.HTML { return TimelineSVG(p.Plan) }
