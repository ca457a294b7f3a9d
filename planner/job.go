package planner

import (
	"fmt"
	"maps"
	"regexp"
	"slices"
	"time"

	"github.com/goccy/go-yaml"

	"coatwright/planner/air"
	"coatwright/planner/calendar"
	"coatwright/planner/library"
	q "coatwright/quantity"
	"coatwright/strictyaml"
)

// Job is what a customer agreed to, and where and when it is done. It is read
// from a job document by ParseJob; the same document is what the form posts,
// what the command reads and what is stored. In JSON a Job is that document.
type Job struct {
	Title      string
	System     string
	Clear      string // system of the clear; "" for whichever makes the cheapest plan
	Parts      []Part
	Effect     string
	Finish     string
	Care       string
	Colours    map[string]string // "ground", "candy", "pearl" to "#rrggbb"
	CandyCoats int               // 0: as the material says
	Applicator string
	Room       Room
	Shop       calendar.Shop
	Booths     int
	Start      time.Time // wall-clock time of the shop, held as UTC

	document []byte // YAML as it was given
}

// Part is one object, or several alike.
type Part struct {
	Name      string
	Substrate string
	Count     int
	Area      q.Area // of one
	Form      string
	Assembled bool
	KeepFree  string // what must stay free of paint; "none" when nothing must
}

// Total is the area of all pieces of the part.
func (p Part) Total() q.Area { return p.Area * q.Area(p.Count) }

// Room is the air of the spray room and the temperature of the part in it.
type Room struct {
	air.Air
	Surface q.Temperature
}

// Limits of what a job may say. They catch slips of the pen (a bicycle frame
// of 550 m2), not ambition.
const (
	maxArea      = q.Area(50)
	maxParts     = 40
	maxPieces    = 200
	maxCoats     = 12
	maxPainters  = 20
	maxSpeed     = q.Speed(5)
	minHumidity  = q.Fraction(0.01)
	maxHumidity  = q.Fraction(0.99)
	titleLetters = 120
)

var (
	airLimits = q.Range[q.Temperature]{Low: q.Celsius(-10), High: q.Celsius(60)}
	hexColour = regexp.MustCompile(`^#[0-9a-fA-F]{6}$`)
)

// ColourKeys are the keys of a job's colours.
var ColourKeys = []string{"ground", "candy", "pearl"}

// ParseJob reads a job document. Slugs and words are checked against lib, which
// may be nil for a document that was checked before. The error is a
// strictyaml.Problems.
func ParseJob(file string, document []byte, lib *library.Library) (*Job, error) {
	m, doc := strictyaml.Read(file, document, 0)
	if len(m.Keys()) == 0 && len(doc.Problems()) > 0 {
		return nil, doc.Problems().Err()
	}
	r := jobReader{lib: lib}
	j := r.job(m)
	j.document = document
	if err := doc.Problems().Err(); err != nil {
		return nil, err
	}
	return j, nil
}

// Document returns the job as it was given.
func (j *Job) Document() []byte { return j.document }

// MarshalJSON writes the job document as JSON.
func (j *Job) MarshalJSON() ([]byte, error) { return yaml.YAMLToJSON(j.document) }

// UnmarshalJSON reads a job document written by MarshalJSON.
func (j *Job) UnmarshalJSON(b []byte) error {
	read, err := ParseJob("job", b, nil)
	if err != nil {
		return err
	}
	*j = *read
	return nil
}

// jobReader reads a job with the words that lib lists.
type jobReader struct{ lib *library.Library }

func (r jobReader) job(m *strictyaml.Map) *Job {
	j := &Job{
		Title:      title(m.Get("title")),
		System:     r.word(m.Need("system"), "a system", systems),
		Clear:      r.word(m.Get("clear"), "the system of the clear", systems),
		Parts:      r.parts(m.Need("parts")),
		Effect:     r.word(m.Need("effect"), "an effect", effects),
		Finish:     r.word(m.Need("finish"), "a finish", finishes),
		Care:       r.word(m.Get("care"), "a level of care", care),
		Colours:    colours(m.Get("colours")),
		CandyCoats: m.Get("candy-coats").Int(1, maxCoats),
		Applicator: r.word(m.Need("applicator"), "an applicator", applicators),
		Room:       room(m.Get("room")),
		Start:      start(m.Need("start")),
	}
	j.Shop, j.Booths = shop(m.Get("shop"))
	if j.Care == "" {
		j.Care = "daily"
	}
	m.Close()
	return j
}

func title(v *strictyaml.Value) string {
	s := v.Text()
	if len([]rune(s)) > titleLetters {
		v.Fail(fmt.Sprintf("a title of at most %d letters", titleLetters), "")
	}
	return s
}

// word reads a slug or listed word; list picks the valid ones from a library.
func (r jobReader) word(v *strictyaml.Value, what string, list func(*library.Library) []string) string {
	if r.lib == nil {
		return v.Text()
	}
	return v.OneOf(what, list(r.lib))
}

func systems(l *library.Library) []string  { return names(l.Words.Systems) }
func forms(l *library.Library) []string    { return names(l.Words.Forms) }
func effects(l *library.Library) []string  { return slices.Sorted(maps.Keys(l.Effects)) }
func finishes(l *library.Library) []string { return slices.Sorted(maps.Keys(l.Finishes)) }
func substrates(l *library.Library) []string {
	return slices.Sorted(maps.Keys(l.Substrates))
}

func care(l *library.Library) []string {
	var out []string
	for _, c := range l.Words.Care {
		out = append(out, c.Name)
	}
	return out
}

func applicators(l *library.Library) []string {
	var out []string
	for slug, t := range l.Tools {
		if t.Applicator != nil {
			out = append(out, slug)
		}
	}
	slices.Sort(out)
	return out
}

func names(words []library.Word) []string {
	var out []string
	for _, w := range words {
		out = append(out, w.Name)
	}
	return out
}

func (r jobReader) parts(v *strictyaml.Value) []Part {
	items := v.List()
	if v != nil && (len(items) == 0 || len(items) > maxParts) {
		v.Fail(fmt.Sprintf("a list of 1 to %d parts", maxParts), "")
	}
	var parts []Part
	for _, item := range items {
		p := r.part(item.Map())
		if slices.ContainsFunc(parts, func(other Part) bool { return other.Name == p.Name }) {
			item.Fail(fmt.Sprintf("a part name of its own (%q is there already)", p.Name), "")
		}
		parts = append(parts, p)
	}
	return parts
}

func (r jobReader) part(m *strictyaml.Map) Part {
	p := Part{
		Name:      title(m.Need("name")),
		Substrate: r.word(m.Need("substrate"), "a substrate", substrates),
		Count:     m.Get("count").Int(1, maxPieces),
		Form:      r.word(m.Get("form"), "a form", forms),
		Assembled: m.Get("condition").OneOf("a condition", []string{"loose", "assembled"}) == "assembled",
		KeepFree:  m.Get("keep-free").Text(),
	}
	r.area(&p, m)
	p.Count = max(p.Count, 1)
	m.Close()
	return p
}

// area reads either a measured area or a shape.
func (r jobReader) area(p *Part, m *strictyaml.Map) {
	measured, shape := m.Get("area"), m.Get("shape")
	switch {
	case measured != nil && shape != nil:
		shape.Fail("either an area or a shape, not both", "")
	case shape != nil:
		s := readShape(shape)
		if s == nil {
			return
		}
		p.Area = s.Area()
		if p.Form == "" {
			p.Form = s.Form()
		}
		checkArea(shape, p.Area)
	default:
		measured = m.Need("area")
		p.Area = strictyaml.Quantity[q.Area](measured)
		checkArea(measured, p.Area)
		if p.Form == "" {
			p.Form = "solid"
		}
	}
}

func checkArea(v *strictyaml.Value, a q.Area) {
	if v != nil && !(a > 0 && a <= maxArea) {
		v.Fail(fmt.Sprintf("an area above 0 and at most %g m2 for one piece", float64(maxArea)), "")
	}
}

func colours(v *strictyaml.Value) map[string]string {
	out := map[string]string{}
	m := v.Map()
	for _, key := range ColourKeys {
		c := m.Get(key)
		if text := c.Text(); hexColour.MatchString(text) {
			out[key] = text
		} else if c != nil {
			c.Fail(`a colour such as "#0f6f6b", in quotes`, "")
		}
	}
	m.Close()
	return out
}

// room reads the room; what is not given is a mild day in a still room.
func room(v *strictyaml.Value) Room {
	m := v.Map()
	r := Room{Air: air.Air{
		Temperature: within(m.Get("air"), q.Celsius(21), airLimits),
		Humidity:    within(m.Get("humidity"), 0.55, q.Range[q.Fraction]{Low: minHumidity, High: maxHumidity}),
		Speed:       within(m.Get("airflow"), 0.1, q.Range[q.Speed]{Low: 0, High: maxSpeed}),
	}}
	r.Surface = within(m.Get("surface"), r.Temperature, airLimits)
	m.Close()
	return r
}

// within reads a quantity that must lie in limits, or answers with otherwise.
func within[Q q.Quantity](v *strictyaml.Value, otherwise Q, limits q.Range[Q]) Q {
	if v == nil {
		return otherwise
	}
	x := strictyaml.Quantity[Q](v)
	if !limits.Holds(x) {
		v.Fail("a value "+limitsText(limits), "")
	}
	return x
}

func limitsText[Q q.Quantity](r q.Range[Q]) string {
	switch l := any(r).(type) {
	case q.Range[q.Temperature]:
		return fmt.Sprintf("from %.0f to %.0f C", l.Low.Celsius(), l.High.Celsius())
	case q.Range[q.Fraction]:
		return fmt.Sprintf("from %.0f to %.0f %%", l.Low.Percent(), l.High.Percent())
	case q.Range[q.Speed]:
		return fmt.Sprintf("from %g to %g m/s", float64(l.Low), float64(l.High))
	}
	return fmt.Sprintf("from %g to %g", float64(r.Low), float64(r.High))
}

// DefaultHours are the hours of a shop that does not say.
const DefaultHours = "Mon-Fri 08:00-17:00"

func shop(v *strictyaml.Value) (calendar.Shop, int) {
	m := v.Map()
	hours, err := calendar.ParseHours(DefaultHours)
	if err != nil {
		panic("planner: DefaultHours: " + err.Error())
	}
	if h := m.Get("hours"); h != nil {
		text := h.Text()
		if hours, err = calendar.ParseHours(text); err != nil {
			h.Fail(hoursExpected(err))
		}
	}
	painters, booths := m.Get("painters").Int(1, maxPainters), m.Get("booths").Int(1, maxPainters)
	m.Close()
	return calendar.Shop{Hours: hours, Painters: max(painters, 1)}, max(booths, 1)
}

func start(v *strictyaml.Value) time.Time {
	text := v.Text()
	for _, layout := range []string{"2006-01-02T15:04", "2006-01-02T15:04:05", "2006-01-02"} {
		if t, err := time.Parse(layout, text); err == nil {
			if t.Year() < 1990 || t.Year() > 2200 {
				break
			}
			return t
		}
	}
	if v != nil {
		v.Fail(`a date and time such as "2026-12-01T08:00"`, "")
	}
	return time.Time{}
}
