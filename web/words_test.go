package web

import (
	"strings"
	"testing"
)

func TestDuration(t *testing.T) {
	tests := []struct {
		minutes float64
		want    string
	}{
		{0, "0 min"}, {45, "45 min"}, {59.6, "1 h"}, {60, "1 h"}, {80, "1 h 20 min"},
		{1440, "24 h"}, {2880, "2 d"}, {4335, "3 d"}, {10080, "7 d"}, {3000, "2 d 2 h"},
	}
	for _, test := range tests {
		if got := duration(test.minutes); got != test.want {
			t.Errorf("duration(%v) = %q, want %q", test.minutes, got, test.want)
		}
	}
}

func TestAmount(t *testing.T) {
	tests := []struct {
		x    float64
		want string
	}{{0, "0"}, {0.04, "0"}, {6.25, "6.3"}, {9.94, "9.9"}, {9.96, "10"}, {26.3, "26"}, {148.5, "149"}, {1234.4, "1234"}}
	for _, test := range tests {
		if got := amount(test.x); got != test.want {
			t.Errorf("amount(%v) = %q, want %q", test.x, got, test.want)
		}
	}
}

func TestSpan(t *testing.T) {
	if got, want := span(at(1, 8, 0), at(1, 8, 20)), "Tue 1 Dec 08:00–08:20"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
	if got, want := span(at(1, 8, 0), at(2, 8, 20)), "Tue 1 Dec 08:00 – Wed 2 Dec 08:20"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}

func TestAddressesAndNames(t *testing.T) {
	tests := []struct{ got, want string }{
		{noteAddress("tool", "scale"), "/note/tool/scale"},
		{noteAddress("tool", "material/wipe"), "/note/material/wipe"},
		{words("candy-over-fine-metallic"), "Candy over fine metallic"},
		{words("step/tack-off"), "Tack off"},
		{words(""), ""},
		{KindName("substrate"), "Surfaces"},
		{KindOne("term"), "Word"},
		{KindName("something-new"), "Something new"},
		{shorten("Lay the effect", 9), "Lay the…"},
		{shorten("Lay", 9), "Lay"},
	}
	for _, test := range tests {
		if test.got != test.want {
			t.Errorf("got %q, want %q", test.got, test.want)
		}
	}
}

func TestAsset(t *testing.T) {
	body, contentType, ok := Asset(assetHash, "base.css")
	if !ok || len(body) == 0 || contentType != "text/css; charset=utf-8" {
		t.Errorf("base.css: %d bytes, %q, %v", len(body), contentType, ok)
	}
	for _, bad := range [][2]string{{"old", "base.css"}, {assetHash, "none.css"}, {assetHash, "../web.go"}, {assetHash, ""}} {
		if _, _, ok := Asset(bad[0], bad[1]); ok {
			t.Errorf("%v was answered", bad)
		}
	}
}

// TestPagesAskOnlyForAssetsThatExist follows the links of the frame.
func TestPagesAskOnlyForAssetsThatExist(t *testing.T) {
	doc := render(t, HomePage{})
	found := 0
	for n := range doc.Descendants() {
		for _, address := range []string{attr(n, "href"), attr(n, "src")} {
			rest, ok := strings.CutPrefix(address, "/assets/")
			if !ok {
				continue
			}
			found++
			hash, name, _ := strings.Cut(rest, "/")
			if _, _, ok := Asset(hash, name); !ok {
				t.Errorf("%s is not there", address)
			}
		}
	}
	if found == 0 {
		t.Error("no asset is asked for")
	}
}
