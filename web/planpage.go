package web

import (
	"fmt"
	"html/template"
	"slices"
	"strings"
	"time"

	"coatwright/planner"
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
	return fmt.Sprintf("%.0f °C, %.0f %% humidity, air at %s m/s, surface %.0f °C",
		r.Temperature.Celsius(), r.Humidity.Percent(), amount(float64(r.Speed)), r.Surface.Celsius())
}

// PlanStep is a step with its number.
type PlanStep struct {
	planner.Step
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
	for i, s := range p.Plan.Steps {
		steps[i] = PlanStep{Step: s, N: i + 1}
	}
	return steps
}

// Groups are the steps in order, with a break wherever the film changes that
// they lead up to.
func (p PlanPage) Groups() []StepGroup {
	var groups []StepGroup
	for _, s := range p.Steps() {
		if len(groups) == 0 || groups[len(groups)-1].Role != s.For {
			groups = append(groups, StepGroup{Role: s.For})
		}
		last := &groups[len(groups)-1]
		last.Steps = append(last.Steps, s)
		if film, ok := p.film(s.ID); ok {
			last.Film = film
		}
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
// reason that is for the hand-over.
func (p PlanPage) Step(id string) PlanStep {
	for _, s := range p.Steps() {
		if s.ID == id {
			return s
		}
	}
	return PlanStep{}
}

// Closes is the latest start that a wait leaves; the zero time where it never closes.
func (p PlanPage) Closes(w planner.Wait) time.Time {
	after := p.Step(w.After)
	if w.Max == 0 || after.N == 0 {
		return time.Time{}
	}
	return after.End.Add(minutes(w.Max))
}

func minutes(m float64) time.Duration { return time.Duration(m * float64(time.Minute)) }

// Section is a drawing of films that one or more parts have alike.
type Section struct {
	Parts   []string
	Drawing template.HTML
}

// Sections draws each different stack of films once.
func (p PlanPage) Sections() []Section {
	var sections []Section
	index := map[string]int{}
	for _, part := range p.Plan.Job.Parts {
		drawing := StackSVG(p.Plan, part.Name)
		if drawing == "" {
			continue
		}
		key := stackKey(p.Plan, part.Name)
		if i, ok := index[key]; ok {
			sections[i].Parts = append(sections[i].Parts, part.Name)
			continue
		}
		index[key] = len(sections)
		sections = append(sections, Section{Parts: []string{part.Name}, Drawing: drawing})
	}
	return sections
}

// Timeline draws when things happen.
func (p PlanPage) Timeline() template.HTML { return TimelineSVG(p.Plan) }
