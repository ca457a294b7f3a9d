package web

import (
	"fmt"
	"math"
	"os"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// contrast is the contrast ratio of two colours "#rrggbb", from 1 to 21.
// Source: WCAG 2.2, definitions of contrast ratio and relative luminance.
func contrast(a, b string) float64 {
	light, dark := luminance(a), luminance(b)
	if light < dark {
		light, dark = dark, light
	}
	return (light + 0.05) / (dark + 0.05)
}

func luminance(colour string) float64 {
	weights := []float64{0.2126, 0.7152, 0.0722}
	sum := 0.0
	for i, w := range weights {
		n, err := strconv.ParseUint(colour[1+2*i:3+2*i], 16, 8)
		if err != nil {
			return math.NaN()
		}
		c := float64(n) / 255
		if c <= 0.04045 {
			c /= 12.92
		} else {
			c = math.Pow((c+0.055)/1.055, 2.4)
		}
		sum += w * c
	}
	return sum
}

// TestContrast checks the formula against what WCAG says of it: black on white
// is 21:1, a colour on itself 1:1, and #767676 on white is the well-known
// lightest grey over 4.5:1.
func TestContrast(t *testing.T) {
	tests := []struct {
		a, b string
		want float64
	}{{"#000000", "#ffffff", 21}, {"#a8380b", "#a8380b", 1}, {"#767676", "#ffffff", 4.54}}
	for _, test := range tests {
		if got := contrast(test.a, test.b); math.Abs(got-test.want) > 0.005 {
			t.Errorf("%s on %s: %.3f, want %.2f", test.a, test.b, got, test.want)
		}
	}
}

var property = regexp.MustCompile(`--([a-z-]+): (#[0-9a-f]{6});`)

// palettes reads the light and the dark colours from the style sheet.
func palettes(t *testing.T) (light, dark map[string]string) {
	t.Helper()
	css, err := assetFiles.ReadFile("assets/base.css")
	if err != nil {
		t.Fatal(err)
	}
	first, second, ok := strings.Cut(string(css), "@media (prefers-color-scheme: dark)")
	if !ok {
		t.Fatal("base.css has no dark palette")
	}
	read := func(text string) map[string]string {
		m := map[string]string{}
		for _, p := range property.FindAllStringSubmatch(text, -1) {
			m[p[1]] = p[2]
		}
		return m
	}
	return read(first), read(second)
}

var pair = regexp.MustCompile(`(?m)^\| ([a-z-]+) on ([a-z-]+) \|[^|]*\| ([\d.]+) \| ([\d.]+) \| ([\d.]+) \|$`)

// TestPalette recomputes every pair of the table in design.md: at least 4.5:1
// for text, 3:1 for large text and for edges that say something (WCAG 2.2,
// 1.4.3 and 1.4.11).
func TestPalette(t *testing.T) {
	light, dark := palettes(t)
	if len(light) != len(dark) || len(light) < 8 {
		t.Fatalf("%d light and %d dark colours", len(light), len(dark))
	}
	design, err := os.ReadFile("design.md")
	if err != nil {
		t.Fatal(err)
	}
	rows := pair.FindAllStringSubmatch(string(design), -1)
	if len(rows) < 10 {
		t.Fatalf("design.md lists %d pairs of colours", len(rows))
	}
	for _, row := range rows {
		least, err := strconv.ParseFloat(row[3], 64)
		if err != nil || least < 3 {
			t.Errorf("%s on %s: a least contrast of %s", row[1], row[2], row[3])
		}
		for i, palette := range []map[string]string{light, dark} {
			got := contrast(palette[row[1]], palette[row[2]])
			if got < least {
				t.Errorf("%s on %s: %.2f, want at least %v", row[1], row[2], got, least)
			}
			if text := fmt.Sprintf("%.1f", got); text != row[4+i] {
				t.Errorf("%s on %s: design.md says %s, it is %s", row[1], row[2], row[4+i], text)
			}
		}
	}
}
