package main

import (
	"encoding/json"
	"io"
	"os"
	"os/exec"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// arrows are the imports of ours that each package may have. DEVELOPERS.md
// says why.
var arrows = map[string][]string{
	"nearest":             {},
	"quantity":            {"nearest"},
	"strictyaml":          {"nearest", "quantity"},
	"content":             {"nearest", "quantity", "strictyaml", "planner/library"},
	"store":               {},
	"search":              {"content"},
	"planner/library":     {"quantity"},
	"planner/trace":       {"quantity"},
	"planner/area":        {"nearest", "quantity", "planner/trace"},
	"planner/film":        {"quantity", "planner/trace"},
	"planner/mix":         {"nearest", "quantity", "planner/trace"},
	"planner/gun":         {"quantity", "planner/trace"},
	"planner/air":         {"quantity", "planner/trace"},
	"planner/drying":      {"quantity", "planner/air", "planner/trace"},
	"planner/room":        {"quantity", "planner/air", "planner/trace"},
	"planner/weather":     {"nearest", "quantity", "planner/air", "planner/trace"},
	"planner/colour":      {"quantity", "planner/trace"},
	"planner/voc":         {"quantity", "planner/trace"},
	"planner/ventilation": {"quantity", "planner/trace"},
	"planner/compressor":  {"quantity", "planner/air", "planner/trace"},
	"planner/viscosity":   {"nearest", "quantity", "planner/trace"},
	"planner/grit":        {"nearest", "quantity", "planner/trace"},
	"planner/cost":        {"nearest", "quantity", "planner/trace"},
	"planner/calendar":    {"nearest"},
	"planner/route":       {"quantity", "planner/library"},
	"planner": {"nearest", "quantity", "strictyaml", "planner/library", "planner/air", "planner/drying", "planner/area", "planner/film", "planner/colour",
		"planner/mix", "planner/trace", "planner/viscosity", "planner/voc", "planner/room", "planner/calendar", "planner/route"},
	"planner/how": {"nearest", "quantity", "planner/route", "planner", "planner/library", "planner/trace", "planner/air", "planner/drying", "planner/film", "planner/gun",
		"planner/mix", "planner/viscosity", "planner/voc"},
	"planner/quote":    {"nearest", "quantity", "strictyaml", "planner", "planner/cost", "planner/library"},
	"planner/critique": {"nearest", "quantity", "planner", "planner/library", "planner/mix", "planner/calendar", "planner/route"},
	"planner/sheet":    {"planner", "planner/cost", "planner/critique", "planner/quote", "planner/trace", "quantity"},
	"workout": {"nearest", "quantity", "planner", "planner/library", "planner/trace", "planner/air", "planner/area", "planner/calendar", "planner/colour", "planner/compressor",
		"planner/cost", "planner/drying", "planner/film", "planner/grit", "planner/gun", "planner/mix", "planner/room", "planner/ventilation",
		"planner/viscosity", "planner/voc", "planner/weather"},
	"web": {"content", "planner", "planner/area", "planner/cost", "planner/critique", "planner/quote", "planner/trace", "planner/colour", "planner/room", "quantity", "workout"},
	"server": {"nearest", "quantity", "strictyaml", "content", "store", "search", "web", "workout", "planner", "planner/area", "planner/critique", "planner/how",
		"planner/library", "planner/quote", "planner/sheet", "planner/colour", "planner/cost", "planner/room", "planner/weather"},
}

// homes are the only packages that may import a library.
var homes = map[string]string{
	"github.com/gin-gonic/gin":        "server",
	"github.com/blevesearch/bleve/v2": "search",
	"github.com/yuin/goldmark":        "content",
	"go.etcd.io/bbolt":                "store",
	"github.com/govalues/decimal":     "planner/cost",
}

func TestArrowsGoOneWay(t *testing.T) {
	out, err := exec.Command("go", "list", "-json=ImportPath,Imports", "coatwright/...").Output()
	if err != nil {
		t.Fatal(err)
	}
	for list := json.NewDecoder(strings.NewReader(string(out))); ; {
		var p struct {
			ImportPath string
			Imports    []string
		}
		if err := list.Decode(&p); err == io.EOF {
			break
		} else if err != nil {
			t.Fatal(err)
		}
		name := strings.TrimPrefix(p.ImportPath, "coatwright/")
		allowed, known := arrows[name]
		if !known {
			t.Errorf("the package %s is not in the table of arrows", name)
		}
		for _, i := range p.Imports {
			if ours, is := strings.CutPrefix(i, "coatwright/"); is && !slices.Contains(allowed, ours) {
				t.Errorf("%s imports %s", name, ours)
			}
			for library, home := range homes {
				if strings.HasPrefix(i, library) && name != home {
					t.Errorf("%s imports %s; only %s may", name, library, home)
				}
			}
		}
	}
}

// TestDocumentsNameWhatExists: a path that the guides put in code type is there.
func TestDocumentsNameWhatExists(t *testing.T) {
	path := regexp.MustCompile("`([a-z.]+/[a-zA-Z0-9_./-]*)`")
	for _, guide := range []string{"../README.md", "../DEVELOPERS.md"} {
		text, err := os.ReadFile(guide)
		if err != nil {
			t.Fatal(err)
		}
		for _, m := range path.FindAllStringSubmatch(string(text), -1) {
			if strings.HasPrefix(m[1], "./") {
				continue // a flag's default, made at run time
			}
			if _, err := os.Stat("../" + m[1]); err != nil {
				t.Errorf("%s names %s, which is not there", guide, m[1])
			}
		}
	}
}
