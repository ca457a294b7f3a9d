package main

import (
	"errors"
	"fmt"
	"net/http"
	"net/url"
	"strings"
	"time"

	"github.com/gin-gonic/gin"

	"coatwright/planner"
	"coatwright/strictyaml"
	"coatwright/web"
)

// planForm shows the form: empty, or as a saved plan's job left it.
func (s *site) planForm(c *gin.Context) error {
	choices := s.choices()
	form := web.NewForm(choices)
	form.Values["start"] = nextMorning(s.now()).Format("2006-01-02T15:04")
	if id := c.Query("from"); id != "" {
		saved, err := s.saved(id)
		if err != nil {
			return err
		}
		if form, err = formOf(saved.Job, form); err != nil {
			return err
		}
	}
	return send(c, http.StatusOK, web.FormPage{Frame: frame(c, "Plan a job", web.AtPlan), Form: form, Choices: choices, Areas: areasOf(form)})
}

// nextMorning is eight o'clock on the next working day after now.
func nextMorning(now time.Time) time.Time {
	day := now.AddDate(0, 0, 1)
	for day.Weekday() == time.Saturday || day.Weekday() == time.Sunday {
		day = day.AddDate(0, 0, 1)
	}
	return time.Date(day.Year(), day.Month(), day.Day(), 8, 0, 0, 0, time.UTC)
}

// makePlan plans what was posted, saves the plan and sends the reader to it. A
// form that cannot be read comes back as it was left, with what is wrong.
func (s *site) makePlan(c *gin.Context) error {
	form, err := postedForm(c, "job")
	if err != nil {
		return err
	}
	document, rows := documentOf(form)
	job, err := planner.ParseJob("the form", document, s.notes.Planner())
	var problems strictyaml.Problems
	if errors.As(err, &problems) {
		return s.formAgain(c, problems, rows)
	}
	if err != nil {
		return err
	}
	id, err := s.savePlan(job)
	if err != nil {
		return err
	}
	c.Redirect(http.StatusSeeOther, "/plan/"+id)
	return nil
}

func (s *site) formAgain(c *gin.Context, problems strictyaml.Problems, rows rows) error {
	form := web.Form{Values: map[string]string{}}
	for _, name := range web.Fields() {
		form.Values[name] = strings.Join(c.Request.PostForm[name], "\n")
	}
	page := web.FormPage{Frame: frame(c, "Plan a job", web.AtPlan), Form: form, Choices: s.choices(), Areas: areasOf(form)}
	for _, p := range problems {
		page.Problems = append(page.Problems, web.Problem{Field: rows.field(p.Path), Message: rows.message(c.Request.PostForm, p)})
	}
	return send(c, http.StatusUnprocessableEntity, page)
}

// messageOf says a problem of the job document to somebody who filled in a form.
func messageOf(p *strictyaml.Problem) string {
	switch p.Found {
	case "nothing": // a key that is missing from the document is an empty field here
		return "This is still to be filled in."
	case "a mapping", "a list": // a whole row of the form: nobody typed that
		_, expected, _ := strings.Cut(p.Message(), ", ")
		return sentence(expected)
	}
	return sentence(p.Message())
}

// sentence is a message as a sentence of its own; one that asks ends so.
func sentence(message string) string {
	if strings.HasSuffix(message, "?") {
		return upperFirst(message)
	}
	return upperFirst(message) + "."
}

// postedForm is the form that was posted for a thing that has a name; the error is
// for the reader.
func postedForm(c *gin.Context, what string) (url.Values, error) {
	err := c.Request.ParseForm()
	var large *http.MaxBytesError
	if errors.As(err, &large) {
		return nil, &failure{status: http.StatusRequestEntityTooLarge, heading: "That is too much for a " + what, detail: fmt.Sprintf("A %s may have at most %d kB.", what, maxBody>>10)}
	}
	if err != nil {
		return nil, &failure{status: http.StatusBadRequest, heading: "The form could not be read", detail: err.Error()}
	}
	return c.Request.PostForm, nil
}
