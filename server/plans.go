package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"net/http"
	"strings"

	"github.com/gin-gonic/gin"

	"coatwright/planner"
	"coatwright/store"
	"coatwright/web"
)

// savePlan plans the job and keeps the plan under an address of its own.
func (s *site) savePlan(job *planner.Job) (id string, err error) {
	plan, err := planner.New(job, s.notes.Planner())
	if err != nil {
		return "", err
	}
	body, err := json.Marshal(plan)
	if err != nil {
		return "", err
	}
	return s.plans.Add(store.Saved{Saved: s.now().UTC(), Title: job.Title, Job: job.Document(), Plan: body})
}

// saved finds a plan by its id.
func (s *site) saved(id string) (store.Saved, error) {
	saved, err := s.plans.Plan(id)
	if errors.Is(err, store.ErrNotFound) {
		return saved, &failure{status: http.StatusNotFound, heading: "There is no such plan", detail: fmt.Sprintf("No plan is kept under %q. The list of jobs shows all there are.", id), suggest: "/jobs"}
	}
	return saved, err
}

// plan shows a kept plan, as a page or as JSON.
func (s *site) plan(c *gin.Context) error {
	saved, err := s.saved(c.Param("id"))
	if err != nil {
		return err
	}
	c.Header("Vary", "Accept")
	if wantsJSON(c) {
		c.Data(http.StatusOK, "application/json; charset=utf-8", saved.Plan)
		return nil
	}
	plan := &planner.Plan{}
	if err := json.Unmarshal(saved.Plan, plan); err != nil {
		return fmt.Errorf("the kept plan %s: %w", saved.ID, err)
	}
	return send(c, http.StatusOK, web.PlanPage{
		Frame: web.Frame{Title: plan.Title, Here: web.AtJobs}, ID: saved.ID, Plan: plan, Saved: saved.Saved, Titles: s.titles(),
	})
}

// titles is the title of every note by its path.
func (s *site) titles() map[string]string {
	out := map[string]string{}
	for _, n := range s.notes.Notes() {
		out[n.Path()] = n.Title
	}
	return out
}

func (s *site) jobs(c *gin.Context) error {
	jobs, err := s.savedJobs()
	if err != nil {
		return err
	}
	return send(c, http.StatusOK, web.JobsPage{Frame: web.Frame{Title: "Jobs", Here: web.AtJobs}, Jobs: jobs})
}

// savedJobs lists the kept plans, the newest first.
func (s *site) savedJobs() ([]web.SavedJob, error) {
	all, err := s.plans.Plans()
	if err != nil {
		return nil, err
	}
	jobs := make([]web.SavedJob, 0, len(all))
	for _, saved := range all {
		job, err := planner.ParseJob("the kept job", saved.Job, nil)
		if err != nil {
			return nil, fmt.Errorf("the kept job %s: %w", saved.ID, err)
		}
		var plan struct {
			Refused *planner.Refusal `json:"refused"`
		}
		if err := json.Unmarshal(saved.Plan, &plan); err != nil {
			return nil, fmt.Errorf("the kept plan %s: %w", saved.ID, err)
		}
		jobs = append(jobs, web.SavedJob{
			ID: saved.ID, Title: saved.Title, Substrates: s.substrates(job), Effect: s.title("effect", job.Effect),
			Finish: s.title("finish", job.Finish), Saved: saved.Saved, Refused: plan.Refused != nil,
		})
	}
	return jobs, nil
}

func (s *site) substrates(job *planner.Job) string {
	var titles []string
	for _, p := range job.Parts {
		if t := s.title("substrate", p.Substrate); !strings.Contains(strings.Join(titles, ", "), t) {
			titles = append(titles, t)
		}
	}
	return strings.Join(titles, ", ")
}

// title is a note's title, or its slug when the note is no longer there.
func (s *site) title(kind, slug string) string {
	if n := s.notes.Note(kind + "/" + slug); n != nil {
		return n.Title
	}
	return slug
}
