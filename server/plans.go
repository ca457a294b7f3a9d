package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"net/http"
	"slices"
	"strings"

	"github.com/gin-gonic/gin"

	"coatwright/planner"
	"coatwright/planner/sheet"
	"coatwright/store"
	"coatwright/web"
)

// savePlan plans the job and keeps the plan under an address of its own.
func (s *site) savePlan(job *planner.Job) (id string, err error) {
	plan, err := planner.New(job, s.notes.Planner())
	if err != nil {
		return "", err
	}
	return s.keepPlan(plan)
}

// keepPlan keeps a plan, as it was found or as it was edited, under an address
// of its own.
func (s *site) keepPlan(plan *planner.Plan) (id string, err error) {
	job := plan.Job
	body, err := json.Marshal(plan)
	if err != nil {
		return "", err
	}
	entry := store.Entry{Saved: s.now().UTC(), Title: plan.Title, Effect: job.Effect, Finish: job.Finish, Refused: plan.Refused != nil}
	for _, p := range job.Parts {
		if !slices.Contains(entry.Substrates, p.Substrate) {
			entry.Substrates = append(entry.Substrates, p.Substrate)
		}
	}
	return s.plans.Add(store.Saved{Entry: entry, Job: job.Document(), Plan: body})
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
	page, err := s.kept.get(saved.ID+" in "+unitsOf(c).Name, func() ([]byte, error) { return s.renderPlan(c, saved) })
	if err != nil {
		return err
	}
	c.Data(http.StatusOK, "text/html; charset=utf-8", page)
	return nil
}

// keptPlan reads a plan as it was kept.
func keptPlan(saved store.Saved) (*planner.Plan, error) {
	plan := &planner.Plan{}
	if err := json.Unmarshal(saved.Plan, plan); err != nil {
		return nil, fmt.Errorf("the kept plan %s: %w", saved.ID, err)
	}
	return plan, nil
}

func (s *site) renderPlan(c *gin.Context, saved store.Saved) ([]byte, error) {
	plan, err := keptPlan(saved)
	if err != nil {
		return nil, err
	}
	return web.Render(web.PlanPage{
		Frame: frame(c, plan.Title, web.AtJobs), ID: saved.ID, Plan: plan, Saved: saved.Saved, Titles: s.titles(),
	})
}

// without shows what leaving out a step of a kept plan would change. It plans
// the kept job anew, with the notes of today.
func (s *site) without(c *gin.Context) error {
	saved, job, err := s.keptJob(c.Param("id"))
	if err != nil {
		return err
	}
	d, err := planner.Without(job, s.notes.Planner(), c.Param("step"))
	var unknown *planner.UnknownStepError
	if errors.As(err, &unknown) {
		f := &failure{status: http.StatusNotFound, heading: "There is no such step", detail: upperFirst(unknown.Error()) + "."}
		if unknown.Nearest != "" {
			f.suggest = "/plan/" + saved.ID + "/without/" + unknown.Nearest
		}
		return f
	}
	if err != nil {
		return err
	}
	if wantsJSON(c) {
		c.JSON(http.StatusOK, d)
		return nil
	}
	return send(c, http.StatusOK, web.WithoutPage{
		Frame: frame(c, "What if it is left out: "+d.Title, web.AtJobs), ID: saved.ID, Job: saved.Title, Difference: d, Verdict: upperFirst(sheet.Verdict(d)),
	})
}

// keptJob finds a plan by its id, and reads its job with the notes of today.
func (s *site) keptJob(id string) (store.Saved, *planner.Job, error) {
	saved, err := s.saved(id)
	if err != nil {
		return saved, nil, err
	}
	job, err := planner.ParseJob("the kept job", saved.Job, s.notes.Planner())
	if err != nil {
		return saved, nil, &failure{status: http.StatusConflict, heading: "The notes have changed since this was planned", detail: fmt.Sprintf("The job can no longer be planned as it was kept: %v.", err)}
	}
	return saved, job, nil
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
	return send(c, http.StatusOK, web.JobsPage{Frame: frame(c, "Jobs", web.AtJobs), Jobs: jobs})
}

// savedJobs lists the kept plans, the newest first.
func (s *site) savedJobs() ([]web.SavedJob, error) {
	all, err := s.plans.Entries()
	if err != nil {
		return nil, err
	}
	jobs := make([]web.SavedJob, 0, len(all))
	for _, e := range all {
		var substrates []string
		for _, slug := range e.Substrates {
			substrates = append(substrates, s.title("substrate", slug))
		}
		jobs = append(jobs, web.SavedJob{
			ID: e.ID, Title: e.Title, Substrates: strings.Join(substrates, ", "), Effect: s.title("effect", e.Effect),
			Finish: s.title("finish", e.Finish), Saved: e.Saved, Refused: e.Refused,
		})
	}
	return jobs, nil
}

// title is a note's title, or its slug when the note is no longer there.
func (s *site) title(kind, slug string) string {
	if n := s.notes.Note(kind + "/" + slug); n != nil {
		return n.Title
	}
	return slug
}
