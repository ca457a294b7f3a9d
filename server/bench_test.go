package main

import (
	"io"
	"net/http"
	"net/http/httptest"
	"testing"
)

// BenchmarkPages is the time that the handler takes for a page.
func BenchmarkPages(b *testing.B) {
	s := newSite(b, b.TempDir())
	plan := post(b, s, frameForm()).Header.Get("Location")
	h := s.handler()
	for _, c := range []struct{ name, address string }{
		{"note", "/note/material/two-pack-gloss-clear"}, {"home", "/"}, {"form", "/plan"},
		{"plan", plan}, {"search", "/search?q=candy+coats"}, {"suggest", "/search/suggest?q=cand"},
	} {
		b.Run(c.name, func(b *testing.B) {
			for b.Loop() {
				w := httptest.NewRecorder()
				h.ServeHTTP(w, httptest.NewRequest(http.MethodGet, c.address, nil))
				if w.Code != http.StatusOK {
					b.Fatal(w.Code)
				}
			}
		})
	}
}

// BenchmarkStart opens a site on an empty data folder: notes read, index built.
func BenchmarkStart(b *testing.B) {
	for b.Loop() {
		s, err := openSite(b.TempDir(), io.Discard)
		if err != nil {
			b.Fatal(err)
		}
		s.close()
	}
}
