package main

import (
	"cmp"
	"errors"
	"maps"
	"net/http"
	"slices"
	"strings"

	"github.com/gin-gonic/gin"

	"coatwright/planner"
	"coatwright/planner/sheet"
	"coatwright/strictyaml"
	"coatwright/web"
)

// airFields are the fields of another day's air, and the choices they make.
var airFields = []struct{ field, key string }{
	{"air", "room.air"}, {"humidity", "room.humidity"}, {"airflow", "room.airflow"},
}

// whatIf shows what other choices would change in a kept plan, another day's air
// first where one is asked for. It plans the kept job anew, with the notes of
// today.
func (s *site) whatIf(c *gin.Context) error {
	saved, job, err := s.keptJob(c.Param("id"))
	if err != nil {
		return err
	}
	before, err := planner.New(job, s.notes.Planner())
	if err != nil {
		return err
	}
	page := web.WhatIfPage{Frame: frame(c, "What if: "+saved.Title, web.AtJobs), ID: saved.ID, Plan: before, Air: map[string]string{}, Problems: map[string]string{}}
	asked := planner.Alternative{}
	for _, f := range airFields {
		page.Air[f.field] = strings.TrimSpace(c.Query(f.field))
		if page.Air[f.field] != "" {
			asked[f.key] = page.Air[f.field]
		}
	}
	status := http.StatusOK
	if len(asked) > 0 {
		row, err := s.whatIfRow(before, asked)
		var problems strictyaml.Problems
		if errors.As(err, &problems) {
			status = http.StatusUnprocessableEntity
			for _, p := range problems {
				page.Problems[fieldName(p.Path)] = messageOf(p)
			}
		} else if err != nil {
			return err
		} else {
			page.Rows = append(page.Rows, row)
		}
	}
	for _, a := range planner.Alternatives(job, s.notes.Planner()) {
		row, err := s.whatIfRow(before, a)
		if err != nil {
			return err
		}
		page.Rows = append(page.Rows, row)
	}
	c.Header("Vary", "Accept")
	if wantsJSON(c) {
		return whatIfJSON(c, status, page)
	}
	return send(c, status, page)
}

// whatIfJSON sends the differences as data, or what is wrong with the air that
// was asked for.
func whatIfJSON(c *gin.Context, status int, page web.WhatIfPage) error {
	if status != http.StatusOK {
		c.JSON(status, gin.H{"problems": page.Problems})
		return nil
	}
	differences := []*planner.Difference{}
	for _, r := range page.Rows {
		differences = append(differences, r.Difference)
	}
	c.JSON(status, differences)
	return nil
}

// whatIfRow plans the job of before with a's choices, and compares the two.
func (s *site) whatIfRow(before *planner.Plan, a planner.Alternative) (web.WhatIfRow, error) {
	d, err := planner.With(before, s.notes.Planner(), a)
	if err != nil {
		return web.WhatIfRow{}, err
	}
	row := web.WhatIfRow{With: a.String(), Choices: s.choiceWords(a), Difference: d, Verdict: upperFirst(sheet.Verdict(d))}
	if before.Refused != nil && d.Refused == nil {
		row.Cures = true
		row.Verdict = "The job can be planned so."
	}
	return row, nil
}

// choiceWords says the choices of an alternative in the words of the form.
func (s *site) choiceWords(a planner.Alternative) []web.Figure {
	names := map[string]string{
		"applicator": "Applicator", "care": "Care", "clear": "Clear", "system": "Paint system",
		"room.air": "Air", "room.humidity": "Humidity", "room.airflow": "Air over the part",
	}
	var out []web.Figure
	for _, key := range slices.Sorted(maps.Keys(a)) {
		name, value := cmp.Or(names[key], key), a[key]
		if key == "applicator" {
			var titles []string
			for _, tool := range strings.Split(value, "+") {
				titles = append(titles, s.title("tool", tool))
			}
			value = strings.Join(titles, " and ")
		}
		out = append(out, web.Figure{Name: name, Value: upperFirst(value)})
	}
	return out
}

// planWith keeps the plan of a kept job with other choices, and sends the reader
// to it.
func (s *site) planWith(c *gin.Context) error {
	saved, job, err := s.keptJob(c.Param("id"))
	if err != nil {
		return err
	}
	form, err := postedForm(c, "form")
	if err != nil {
		return err
	}
	a, err := planner.ParseAlternative(form.Get("with"))
	if err == nil {
		job, err = a.Job(job, s.notes.Planner())
	}
	if err != nil {
		return &failure{status: http.StatusUnprocessableEntity, heading: "These choices cannot be planned", detail: upperFirst(err.Error()) + ".", suggest: "/plan/" + saved.ID + "/whatif"}
	}
	id, err := s.savePlan(job)
	if err != nil {
		return err
	}
	c.Redirect(http.StatusSeeOther, "/plan/"+id)
	return nil
}
