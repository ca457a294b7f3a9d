package main

import (
	"errors"
	"net/http"

	"github.com/gin-gonic/gin"

	"coatwright/planner"
	"coatwright/planner/how"
	"coatwright/store"
	"coatwright/web"
)

// howTotals explains the totals of a kept plan.
func (s *site) howTotals(c *gin.Context) error {
	saved, plan, err := s.savedPlan(c.Param("id"))
	if err != nil {
		return err
	}
	return s.sendHow(c, web.HowPage{
		Frame: frame(c, "How: "+saved.Title, web.AtJobs), ID: saved.ID, Job: saved.Title, Heading: "What the steps add up to, and the air they are done in.",
		Figures: how.Totals(plan, s.notes.Planner()), Titles: s.titles(),
	})
}

// savedPlan finds a plan by its id and reads it as it was kept.
func (s *site) savedPlan(id string) (store.Saved, *planner.Plan, error) {
	saved, err := s.saved(id)
	if err != nil {
		return saved, nil, err
	}
	plan, err := keptPlan(saved)
	return saved, plan, err
}

// how explains the figures of one step of a kept plan.
func (s *site) how(c *gin.Context) error {
	saved, plan, err := s.savedPlan(c.Param("id"))
	if err != nil {
		return err
	}
	figures, err := how.Step(plan, s.notes.Planner(), c.Param("step"))
	var unknown *planner.UnknownStepError
	if errors.As(err, &unknown) {
		f := &failure{status: http.StatusNotFound, heading: "There is no such step", detail: upperFirst(unknown.Error()) + "."}
		if unknown.Nearest != "" {
			f.suggest = "/plan/" + saved.ID + "/how/" + unknown.Nearest
		}
		return f
	}
	if err != nil {
		return err
	}
	i := planner.StepAt(plan.Steps, c.Param("step"))
	step := plan.Steps[i]
	return s.sendHow(c, web.HowPage{
		Frame: frame(c, "How: "+step.Title, web.AtJobs), ID: saved.ID, Job: saved.Title, N: i + 1, Step: step.ID, Heading: stepHeading(step),
		Figures: figures, Titles: s.titles(),
	})
}

// sendHow shows figures as a page, or as JSON to who asked for that.
func (s *site) sendHow(c *gin.Context, page web.HowPage) error {
	c.Header("Vary", "Accept, Cookie")
	if wantsJSON(c) {
		c.JSON(http.StatusOK, page.Figures)
		return nil
	}
	return send(c, http.StatusOK, page)
}

// stepHeading names a step with what it lays.
func stepHeading(s planner.Step) string {
	text := s.Title
	for _, f := range s.Films {
		text += ", " + f
	}
	return text
}
