package main

import (
	"net/http"

	"github.com/gin-gonic/gin"

	"coatwright/nearest"
	"coatwright/web"
	"coatwright/workout"
)

// workOuts lists what can be worked out.
func (s *site) workOuts(c *gin.Context) error {
	return send(c, http.StatusOK, web.WorkOutIndex{Frame: frame(c, "Work out", web.AtWorkOut), Sheets: workout.Sheets()})
}

// workOut fills in a sheet with what the address says, and works it out.
func (s *site) workOut(c *gin.Context) error {
	sheet := workout.Find(c.Param("sheet"))
	if sheet == nil {
		return s.noSheet(c)
	}
	page := sheet.Fill(s.notes.Planner(), c.GetQuery)
	status := http.StatusOK
	if len(page.Problems) > 0 {
		status = http.StatusUnprocessableEntity
	}
	c.Header("Vary", "Accept, Cookie")
	if wantsJSON(c) {
		c.JSON(status, gin.H{"sheet": sheet.Slug, "values": page.Values, "problems": page.Problems, "answer": page.Answer})
		return nil
	}
	return send(c, status, web.WorkOutPage{Frame: frame(c, sheet.Title, web.AtWorkOut), Sheet: page, Titles: s.titles()})
}

func (s *site) noSheet(c *gin.Context) error {
	var slugs []string
	for _, sheet := range workout.Sheets() {
		slugs = append(slugs, sheet.Slug)
	}
	f := &failure{status: http.StatusNotFound, heading: "There is no such sheet", detail: "Nothing is worked out at " + c.Request.URL.Path + ". The list of sheets shows all there are.", suggest: "/work-out"}
	if near := nearest.To(c.Param("sheet"), slugs); near != "" {
		f.suggest = "/work-out/" + near
	}
	return f
}
