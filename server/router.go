package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"net/http"
	"runtime/debug"
	"strings"

	"github.com/gin-gonic/gin"

	"coatwright/nearest"
	"coatwright/web"
)

// maxBody is the largest request body that is read. A job of forty parts has
// 20 kB.
const maxBody = 256 << 10

// reading is the methods of a page that is only looked at. Whoever asks with HEAD
// gets the headers; net/http keeps the body back.
var reading = []string{http.MethodGet, http.MethodHead}

// handler is every route of the site.
func (s *site) handler() http.Handler {
	gin.SetMode(gin.ReleaseMode)
	r := gin.New()
	r.HandleMethodNotAllowed = true
	if err := r.SetTrustedProxies(nil); err != nil {
		panic("server: " + err.Error()) // nil is a valid list
	}
	r.Use(s.recovered, secure, limitBody)
	r.Match(reading, "/", s.page(s.home))
	r.Match(reading, "/search", s.page(s.search))
	r.Match(reading, "/search/suggest", s.page(s.suggest))
	r.Match(reading, "/notes/:kind", s.page(s.kind))
	r.Match(reading, "/note/:kind/:slug", s.page(s.note))
	r.Match(reading, "/plan", s.page(s.planForm))
	r.POST("/plan", s.page(s.makePlan))
	r.Match(reading, "/plan/:id", s.page(s.plan))
	r.Match(reading, "/plan/:id/without/:step", s.page(s.without))
	r.Match(reading, "/plan/:id/how", s.page(s.howTotals))
	r.Match(reading, "/plan/:id/how/:step", s.page(s.how))
	r.Match(reading, "/plan/:id/quote", s.page(s.quote))
	r.POST("/plan/:id/quote", s.page(s.setRates))
	r.Match(reading, "/plan/:id/room", s.page(s.roomOf))
	r.Match(reading, "/plan/:id/whatif", s.page(s.whatIf))
	r.POST("/plan/:id/whatif", s.page(s.planWith))
	r.Match(reading, "/plan/:id/edit", s.page(s.editForm))
	r.POST("/plan/:id/edit", s.page(s.editPlan))
	r.Match(reading, "/coverage", s.page(s.coverage))
	r.Match(reading, "/coverage/cell", s.page(s.coverageCell))
	r.Match(reading, "/jobs", s.page(s.jobs))
	r.Match(reading, "/work-out", s.page(s.workOuts))
	r.Match(reading, "/work-out/:sheet", s.page(s.workOut))
	r.POST("/units", s.page(s.chooseUnits))
	r.Match(reading, "/assets/:hash/*name", s.page(s.asset))
	r.Match(reading, "/healthz", func(c *gin.Context) { c.String(http.StatusOK, "well\n") })
	r.NoRoute(s.page(func(c *gin.Context) error { return s.notFound(c.Request.URL.Path) }))
	r.NoMethod(s.page(func(c *gin.Context) error {
		return &failure{status: http.StatusMethodNotAllowed, heading: "That cannot be done here", detail: fmt.Sprintf("This address does not take %s.", c.Request.Method)}
	}))
	return http.NewCrossOriginProtection().Handler(r)
}

// secure sets the headers that keep a browser from running anything but ours.
func secure(c *gin.Context) {
	h := c.Writer.Header()
	h.Set("Content-Security-Policy", "default-src 'self'; base-uri 'none'; form-action 'self'; frame-ancestors 'none'; object-src 'none'")
	h.Set("X-Content-Type-Options", "nosniff")
	h.Set("Referrer-Policy", "same-origin")
	c.Next()
}

func limitBody(c *gin.Context) {
	c.Request.Body = http.MaxBytesReader(c.Writer, c.Request.Body, maxBody)
	c.Next()
}

// recovered turns a panic into a plain failure and a line in the log.
func (s *site) recovered(c *gin.Context) {
	defer func() {
		if p := recover(); p != nil {
			s.log.Error("a page panicked", "path", c.Request.URL.Path, "panic", p, "stack", string(debug.Stack()))
			s.fail(c, fmt.Errorf("panic: %v", p))
		}
	}()
	c.Next()
}

// page makes a gin handler of one that returns an error; only here are errors
// turned into pages.
func (s *site) page(do func(*gin.Context) error) gin.HandlerFunc {
	return func(c *gin.Context) {
		if err := do(c); err != nil {
			s.fail(c, err)
		}
	}
}

// failure is an error that a reader may see as it is.
type failure struct {
	status          int
	heading, detail string
	suggest         string // the nearest valid address
}

func (f *failure) Error() string { return f.heading + ": " + f.detail }

// fail sends an error page, or JSON to who asked for that.
func (s *site) fail(c *gin.Context, err error) {
	var f *failure
	if errors.Is(err, context.Canceled) {
		return // the reader went away; there is nobody to tell
	}
	if !errors.As(err, &f) {
		s.log.Error("a page failed", "path", c.Request.URL.Path, "error", err)
		f = &failure{status: http.StatusInternalServerError, heading: "Something broke on our side", detail: "It is in the log. Nothing you entered was lost or half saved; go back and try again."}
	}
	if wantsJSON(c) {
		c.JSON(f.status, gin.H{"error": gin.H{"heading": f.heading, "detail": f.detail, "nearest": f.suggest}})
		return
	}
	body, err := web.Render(web.ErrorPage{Frame: frame(c, f.heading, ""), Status: f.status, Heading: f.heading, Detail: f.detail, Suggest: f.suggest})
	if err != nil {
		s.log.Error("the error page failed", "error", err)
		c.String(f.status, "%s\n%s\n", f.heading, f.detail)
		return
	}
	c.Data(f.status, "text/html; charset=utf-8", body)
}

// send renders a page whole before it sends any of it.
func send(c *gin.Context, status int, page web.Page) error {
	body, err := web.Render(page)
	if err != nil {
		return err
	}
	c.Data(status, "text/html; charset=utf-8", body)
	return nil
}

// notFound is the failure for an address without a page, with the nearest note.
func (s *site) notFound(path string) error {
	f := &failure{status: http.StatusNotFound, heading: "There is no such page", detail: fmt.Sprintf("Nothing stands at %s.", path)}
	var paths []string
	for _, n := range s.notes.Notes() {
		paths = append(paths, "/note/"+n.Path())
	}
	f.suggest = nearest.To(path, paths)
	return f
}

// wantsJSON reports whether the caller asked for data: by its Accept header, or
// with ?format=json, which a link can carry.
func wantsJSON(c *gin.Context) bool {
	return c.Query("format") == "json" || c.NegotiateFormat(gin.MIMEHTML, gin.MIMEJSON) == gin.MIMEJSON
}

func (s *site) asset(c *gin.Context) error {
	body, contentType, ok := web.Asset(c.Param("hash"), strings.TrimPrefix(c.Param("name"), "/"))
	if !ok {
		return s.notFound(c.Request.URL.Path)
	}
	c.Header("Cache-Control", "public, max-age=31536000, immutable")
	c.DataFromReader(http.StatusOK, int64(len(body)), contentType, bytes.NewReader(body), nil)
	return nil
}
