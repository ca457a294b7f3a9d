package main

import (
	"fmt"
	"html/template"
	"net/http"
	"slices"
	"strings"

	"github.com/gin-gonic/gin"

	"coatwright/content"
	"coatwright/search"
	"coatwright/web"
)

// recentJobs is how many saved jobs the front door shows.
const recentJobs = 5

func (s *site) home(c *gin.Context) error {
	jobs, err := s.savedJobs()
	if err != nil {
		return err
	}
	return send(c, http.StatusOK, web.HomePage{
		Frame: frame(c, "Look up, or plan a job", ""),
		Kinds: s.kinds(), Recent: jobs[:min(len(jobs), recentJobs)],
	})
}

// kinds counts the notes of each kind.
func (s *site) kinds() []web.KindCount {
	var out []web.KindCount
	for _, kind := range content.Kinds {
		n := 0
		for _, note := range s.notes.Notes() {
			if note.Kind == kind {
				n++
			}
		}
		if n > 0 {
			out = append(out, web.KindCount{Kind: kind, Count: n})
		}
	}
	return out
}

func (s *site) search(c *gin.Context) error {
	query := search.Query{Text: c.Query("q"), Kind: c.Query("kind")}
	if query.Kind != "" && !slices.Contains(content.Kinds, query.Kind) {
		query.Kind = ""
	}
	found, err := s.index.Search(c.Request.Context(), query)
	if err != nil {
		return err
	}
	if wantsJSON(c) {
		c.JSON(http.StatusOK, found)
		return nil
	}
	page := web.SearchPage{
		Frame: frame(c, fmt.Sprintf("Look up: %s", query.Text), web.AtLookUp),
		Kind:  query.Kind, Total: found.Total, Suggest: found.Suggest,
	}
	page.Query = query.Text
	for _, k := range found.Kinds {
		page.Kinds = append(page.Kinds, web.KindCount{Kind: k.Kind, Count: k.Count})
	}
	for _, h := range found.Hits {
		page.Hits = append(page.Hits, web.Hit{Path: h.Path, Kind: h.Kind, Title: h.Title, Fragment: h.Fragment})
	}
	return send(c, http.StatusOK, page)
}

// suggestions is how many notes are offered while one types.
const suggestions = 8

func (s *site) suggest(c *gin.Context) error {
	hits, err := s.index.Prefix(c.Request.Context(), c.Query("q"), suggestions)
	if err != nil {
		return err
	}
	type suggestion struct {
		Path     string        `json:"path"`
		Kind     string        `json:"kind"`
		Title    string        `json:"title"`
		Fragment template.HTML `json:"fragment"`
	}
	out := []suggestion{}
	for _, h := range hits {
		out = append(out, suggestion{h.Path, web.KindOne(h.Kind), h.Title, h.Fragment})
	}
	c.JSON(http.StatusOK, out)
	return nil
}

func (s *site) kind(c *gin.Context) error {
	kind := c.Param("kind")
	if !slices.Contains(content.Kinds, kind) {
		return s.notFound(c.Request.URL.Path)
	}
	page := web.KindPage{Frame: frame(c, web.KindName(kind), web.AtLookUp), Kind: kind}
	for _, n := range s.notes.Notes() {
		if n.Kind == kind {
			page.Notes = append(page.Notes, noteLink(n))
		}
	}
	return send(c, http.StatusOK, page)
}

func noteLink(n *content.Note) web.NoteLink {
	return web.NoteLink{Path: n.Path(), Kind: n.Kind, Title: n.Title, Summary: n.Summary}
}

func (s *site) note(c *gin.Context) error {
	path := c.Param("kind") + "/" + strings.TrimSuffix(c.Param("slug"), ".md")
	n := s.notes.Note(path)
	if n == nil {
		return s.notFound(c.Request.URL.Path)
	}
	page := web.NotePage{
		Frame: frame(c, n.Title, web.AtLookUp),
		// The body is our own rendering of CommonMark with raw HTML off.
		Note: n, Body: template.HTML(n.HTML),
	}
	page.Figures, page.Standing = s.figures(n, page.Units)
	for _, m := range s.notes.MentionedBy(path) {
		page.MentionedBy = append(page.MentionedBy, noteLink(m))
	}
	return send(c, http.StatusOK, page)
}
