package planner

import (
	"errors"
	"fmt"
	"regexp"
	"slices"
	"time"

	"coatwright/planner/air"
	"coatwright/planner/calendar"
	"coatwright/planner/colour"
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
	Wanted     string            // colour that the candy is to come to, as package colour reads it; "" for whichever
	CandyCoats int               // 0: as the material says
	Designs    []Design
	// Applicators are the guns and airbrushes at hand. Each film gets the one
	// that lays it for the least work.
	Applicators []string
	Room        Room
	Shop        calendar.Shop
	Booths      int
	Scale       q.Mass    // step of the shop's scale; zero for that of the notes
	Start       time.Time // wall-clock time of the shop, held as UTC

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
	KeepFree  string   // what must stay free of paint; "none" when nothing must
	Hardware  []string // what comes off with it, to be bagged and labelled
	Leave     bool     // nothing is done to it
}

// Label is how a plan names the part: with its number where there are several.
func (p Part) Label() string {
	if p.Count > 1 {
		return fmt.Sprintf("%s (%d)", p.Name, p.Count)
	}
	return p.Name
}

// In reports whether the parts of a step have the part, by its label or its name.
func (p Part) In(parts []string) bool {
	return slices.Contains(parts, p.Label()) || slices.Contains(parts, p.Name)
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
	maxDesigns   = 12
	maxHardware  = 60
	maxPainters  = 20
	maxSpeed     = q.Speed(5)
	minHumidity  = q.Fraction(0.01)
	maxHumidity  = q.Fraction(0.99)
	titleLetters = 120
)

// MaxCoats is the most coats of one film that a job or an edit may ask for.
const MaxCoats = 12

var (
	airLimits = q.Range[q.Temperature]{Low: q.Celsius(-10), High: q.Celsius(60)}
	hexColour = regexp.MustCompile(`^#[0-9a-fA-F]{6}$`)
)

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
func (j *Job) MarshalJSON() ([]byte, error) { return strictyaml.JSON(j.document) }

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
		Title:       title(m.Get("title")),
		System:      r.word(m.Need("system"), "a system", systems),
		Clear:       r.word(m.Get("clear"), "the system of the clear", systems),
		Parts:       r.parts(m.Need("parts")),
		Effect:      r.word(m.Need("effect"), "an effect", effects),
		Finish:      r.word(m.Need("finish"), "a finish", finishes),
		Care:        r.word(m.Get("care"), "a level of care", care),
		CandyCoats:  m.Get("candy-coats").Int(1, MaxCoats),
		Applicators: r.wordList(m.Need("applicator"), "an applicator", applicators),
		Room:        room(m.Get("room")),
		Start:       start(m.Need("start")),
	}
	tints := m.Get("colours").Map()
	j.Wanted = wanted(tints.Get("wanted"))
	j.Colours = colours(tints, library.JobColours)
	j.Designs = r.designs(m.Get("designs"), j.Parts)
	j.shop(m.Get("shop"))
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
	if len(parts) > 0 && !slices.ContainsFunc(parts, func(p Part) bool { return !p.Leave }) {
		v.Fail("at least one part that something is done to", "")
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
		Hardware:  m.Get("hardware").Texts(),
		Leave:     m.Get("leave").Bool(),
	}
	if len(p.Hardware) > maxHardware {
		m.Get("hardware").Fail(fmt.Sprintf("a list of at most %d things", maxHardware), "")
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
		if p.Area > 0 { // else a side is wrong, and has been reported
			checkArea(shape, p.Area)
		}
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

// colours reads a mapping of colours, which has no other keys left.
func colours(m *strictyaml.Map, keys []string) map[string]string {
	out := map[string]string{}
	for _, key := range keys {
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

// wanted reads a colour in any of the ways in which one may be given.
func wanted(v *strictyaml.Value) string {
	text := v.Text()
	if v == nil {
		return ""
	}
	_, err := colour.ParseSwatch(text)
	var wrong *q.Error
	if errors.As(err, &wrong) {
		v.Fail(wrong.Expected, wrong.Nearest)
	}
	return text
}
