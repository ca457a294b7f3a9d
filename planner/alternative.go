package planner

import (
	"encoding/json"
	"fmt"
	"maps"
	"slices"
	"strings"

	"coatwright/nearest"
	"coatwright/planner/library"
	q "coatwright/quantity"
	"coatwright/strictyaml"
)

// Alternative is a job with some of its choices made otherwise, such as
// {"room.airflow": "1 m/s"}. A key is that of the job document, a dot for each
// level down.
type Alternative map[string]string

// alternativeKeys are the choices that a what-if may change.
var alternativeKeys = []string{
	"applicator", "candy-coats", "care", "clear", "effect", "finish", "start", "system",
	"room.air", "room.airflow", "room.humidity", "room.surface", "shop.hours",
}

// ParseAlternative reads "room.airflow=1 m/s, clear=two-pack". Values are checked
// when the job is read.
func ParseAlternative(text string) (Alternative, error) {
	a := Alternative{}
	for _, pair := range strings.Split(text, ",") {
		key, value, ok := strings.Cut(pair, "=")
		key, value = strings.TrimSpace(key), strings.TrimSpace(value)
		if !ok || value == "" {
			return nil, fmt.Errorf("found %q, expected a choice and its value, such as room.airflow=1 m/s", strings.TrimSpace(pair))
		}
		if !slices.Contains(alternativeKeys, key) {
			return nil, fmt.Errorf("found the choice %q, expected one of %s%s", key, strings.Join(alternativeKeys, ", "), nearest.Hint(nearest.To(key, alternativeKeys)))
		}
		a[key] = value
	}
	return a, nil
}

// String writes the alternative as ParseAlternative reads it.
func (a Alternative) String() string {
	var pairs []string
	for _, key := range slices.Sorted(maps.Keys(a)) {
		pairs = append(pairs, key+"="+a[key])
	}
	return strings.Join(pairs, ", ")
}

// Job is the job with the alternative's choices. The error is a
// strictyaml.Problems where a choice is none.
func (a Alternative) Job(job *Job, lib *library.Library) (*Job, error) {
	src, err := strictyaml.JSON(job.document)
	if err != nil {
		return nil, err
	}
	document := map[string]any{}
	if err := json.Unmarshal(src, &document); err != nil {
		return nil, err
	}
	for key, value := range a {
		in := document
		if group, rest, nested := strings.Cut(key, "."); nested {
			inner, ok := document[group].(map[string]any)
			if !ok {
				inner = map[string]any{}
				document[group] = inner
			}
			in, key = inner, rest
		}
		in[key] = value
		if key == "applicator" {
			in[key] = strings.Fields(strings.ReplaceAll(value, "+", " "))
		}
	}
	changed, err := json.Marshal(document)
	if err != nil {
		return nil, err
	}
	return ParseJob("the job with "+a.String(), changed, lib)
}

// With plans the job of a plan with the alternative's choices, and says what that
// changes. From a refusal there is no end to be later than.
func With(before *Plan, lib *library.Library, a Alternative) (*Difference, error) {
	other, err := a.Job(before.Job, lib)
	if err != nil {
		return nil, err
	}
	after, err := New(other, lib)
	if err != nil {
		return nil, err
	}
	d := compare(before, after)
	if before.Refused != nil {
		d.WorkMin, d.EndMin, d.RiskMin = 0, 0, 0
	}
	d.With, d.Title = a.String(), a.String()
	return d, nil
}

// The air of a small fan across the part, and how fast the air must be for one to
// be running already: common practice, no published source.
const (
	fanOn   = "1 m/s"
	fanIsOn = q.Speed(0.8)
)

// Alternatives are the other choices worth looking at for a job: the other
// applicators, clears, systems and levels of care, and a fan.
func Alternatives(job *Job, lib *library.Library) []Alternative {
	var out []Alternative
	add := func(key, value string) { out = append(out, Alternative{key: value}) }
	all, now := applicators(lib), strings.Join(slices.Sorted(slices.Values(job.Applicators)), "+")
	for _, tool := range append([]string{strings.Join(all, "+")}, all...) {
		if tool != now {
			add("applicator", tool)
		}
	}
	for _, s := range systems(lib) {
		if s != job.System && !slices.Contains(lib.Words.AnySystem, s) {
			add("system", s)
		}
		if s != job.Clear && clears(lib, job.Finish, s) {
			add("clear", s)
		}
	}
	if job.Room.Speed < fanIsOn {
		add("room.airflow", fanOn)
	}
	for _, c := range care(lib) {
		if c != job.Care {
			add("care", c)
		}
	}
	return out
}

// clears reports whether a material of the system makes the finish's last film.
func clears(lib *library.Library, finish, system string) bool {
	f := lib.Finishes[finish]
	last := f.Films[len(f.Films)-1]
	for _, m := range lib.Materials {
		if _, meets := m.Gloss.Meets(f.Gloss); m.Role == last.Role && m.System == system && meets {
			return true
		}
	}
	return false
}
