package main

import (
	"net/http"
	"strings"

	"github.com/gin-gonic/gin"

	q "coatwright/quantity"
	"coatwright/web"
)

// unitsCookie remembers the units that a person reads, on their own device.
const unitsCookie = "units"

// unitsFor is for how long, in seconds: a year.
const unitsFor = 365 * 24 * 3600

// unitsOf is the units that whoever asks reads.
func unitsOf(c *gin.Context) *q.System {
	name, err := c.Cookie(unitsCookie)
	if err != nil { // there is none
		return q.Metric
	}
	return q.SystemNamed(name)
}

// frame is what a page has around it. What was posted is not asked for again,
// so its page does not offer other units.
func frame(c *gin.Context, title, here string) web.Frame {
	f := web.Frame{Title: title, Here: here, Units: unitsOf(c)}
	if c.Request.Method != http.MethodPost {
		f.Path = c.Request.URL.RequestURI()
	}
	return f
}

// chooseUnits keeps the units that were chosen and goes back to the page.
func (s *site) chooseUnits(c *gin.Context) error {
	form, err := postedForm(c, "choice")
	if err != nil {
		return err
	}
	c.SetSameSite(http.SameSiteLaxMode)
	c.SetCookie(unitsCookie, q.SystemNamed(form.Get("units")).Name, unitsFor, "/", "", false, true)
	c.Redirect(http.StatusSeeOther, ownPath(form.Get("back")))
	return nil
}

// ownPath is a path of this site, "/" for anything that leads elsewhere.
func ownPath(path string) string {
	if !strings.HasPrefix(path, "/") || strings.HasPrefix(path, "//") || strings.ContainsAny(path, "\\\r\n") {
		return "/"
	}
	return path
}
