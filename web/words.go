package web

import (
	"fmt"
	"html/template"
	"math"
	"strconv"
	"strings"
	"time"

	q "coatwright/quantity"
)

// funcs are what the templates may call.
var funcs = template.FuncMap{
	"asset":    AssetURL,
	"kindName": KindName,
	"kindOne":  KindOne,
	"note":     noteAddress,
	"words":    words,
	"duration": duration,
	"amount":   amount,
	"day":      day,
	"clock":    clock,
	"moment":   moment,
	"span":     span,
	"hits":     hits,
	"list":     list,
}

// kindNames are the kinds in plain words: of many, and of one.
var kindNames = map[string][2]string{
	"step":       {"Steps", "Step"},
	"substrate":  {"Surfaces", "Surface"},
	"effect":     {"Effects", "Effect"},
	"design":     {"Designs", "Design"},
	"finish":     {"Finishes", "Finish"},
	"material":   {"Materials", "Material"},
	"tool":       {"Tools", "Tool"},
	"fault":      {"Faults", "Fault"},
	"caution":    {"Cautions", "Caution"},
	"term":       {"Words", "Word"},
	"background": {"Background", "Background"},
}

// KindName is a kind of note in plain words, of many: "Surfaces" for "substrate".
func KindName(kind string) string { return kindWord(kind, 0) }

// KindOne is a kind of note in plain words, of one: "Surface" for "substrate".
func KindOne(kind string) string { return kindWord(kind, 1) }

func kindWord(kind string, number int) string {
	if names, ok := kindNames[kind]; ok {
		return names[number]
	}
	return words(kind)
}

// noteAddress is where a note is read. The slug may be a whole path already.
func noteAddress(kind, slug string) string {
	if strings.Contains(slug, "/") {
		return "/note/" + slug
	}
	return "/note/" + kind + "/" + slug
}

// words turns a slug or path into words: "Candy over fine metallic".
func words(slug string) string {
	slug = slug[strings.LastIndex(slug, "/")+1:]
	slug = strings.ReplaceAll(slug, "-", " ")
	if slug == "" {
		return ""
	}
	return strings.ToUpper(slug[:1]) + slug[1:]
}

// duration says minutes as a painter would: "45 min", "1 h 20 min", "2 d 3 h".
func duration(minutes float64) string { return q.Time(minutes * 60).String() }

// amount writes a measured figure: one decimal below ten, whole numbers above,
// which is as fine as a cup or a film gauge can be read.
func amount(x float64) string {
	if math.Abs(x) >= 9.95 {
		return strconv.FormatFloat(math.Round(x), 'f', -1, 64)
	}
	return strconv.FormatFloat(math.Round(x*10)/10, 'f', -1, 64)
}

func day(t time.Time) string   { return t.Format("Mon 2 Jan") }
func clock(t time.Time) string { return t.Format("15:04") }

// moment is a day and an hour.
func moment(t time.Time) string { return t.Format("Mon 2 Jan 15:04") }

// span writes from when to when, naming the second day only where it differs.
func span(from, to time.Time) string {
	if sameDay(from, to) {
		return moment(from) + "–" + clock(to)
	}
	return moment(from) + " – " + moment(to)
}

func sameDay(a, b time.Time) bool {
	return a.YearDay() == b.YearDay() && a.Year() == b.Year()
}

func hits(n int) string {
	if n == 1 {
		return "1 note"
	}
	return fmt.Sprintf("%d notes", n)
}

func list(names []string) string { return strings.Join(names, ", ") }
