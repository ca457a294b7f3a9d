package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"reflect"
	"strings"
	"time"
	"unicode/utf8"

	"coatwright/nearest"
	"coatwright/planner"
	"coatwright/planner/library"
	"coatwright/strictyaml"
)

// planFile is a plan file that is being read.
type planFile struct {
	name     string
	src      []byte
	problems strictyaml.Problems
}

// parsePlan reads a plan as the plan command writes it as JSON, with whatever
// was edited in it. Its job is read anew against lib. The error is a
// strictyaml.Problems.
func parsePlan(name string, src []byte, lib *library.Library) (*planner.Plan, error) {
	f := &planFile{name: name, src: src}
	var read struct {
		planner.Plan
		Job json.RawMessage `json:"job"`
	}
	if err := json.Unmarshal(src, &read); err != nil {
		f.addJSON(err)
		return nil, f.problems.Err()
	}
	if !bytes.HasPrefix(bytes.TrimSpace(src), []byte("{")) {
		f.add(0, "", "null", "a plan: a JSON object", "")
		return nil, f.problems.Err()
	}
	p := &read.Plan
	job := -1
	f.members(src, 0, reflect.TypeFor[planner.Plan](), "", func(key string, value []byte, at int) {
		switch key {
		case "job":
			job = at
		case "steps":
			f.steps(value, at)
		}
	})
	if p.Refused == nil && len(p.Steps) == 0 {
		f.add(0, "steps", "no step", "at least one step", "")
	}
	if job < 0 || string(read.Job) == "null" {
		f.add(0, "job", "nothing", "the job that the plan is for", "")
	} else {
		p.Job = f.job(job, len(read.Job), lib)
	}
	if err := f.problems.Err(); err != nil {
		return nil, err
	}
	return p, nil
}

// job reads the job that stands at an offset of the file. What it complains of
// is told by its place in the file.
func (f *planFile) job(at, length int, lib *library.Library) *planner.Job {
	line, column := f.place(at)
	document := append(bytes.Repeat([]byte(" "), column-1), f.src[at:at+length]...)
	job, err := planner.ParseJob(f.name, document, lib)
	var problems strictyaml.Problems
	if errors.As(err, &problems) {
		for _, p := range problems {
			moved := *p
			moved.Line += line - 1
			moved.Path = strings.TrimSuffix("job."+p.Path, ".")
			f.problems = append(f.problems, &moved)
		}
	}
	return job
}

// steps looks for steps that no one can point at: without an id, or with that
// of another.
func (f *planFile) steps(value []byte, at int) {
	first := map[string]int{}
	n := 0
	for dec := opened(value); dec.More(); n++ {
		step, start := next(dec)
		path := fmt.Sprintf("steps[%d]", n)
		id, idAt := "", at+start
		f.members(step, at+start, reflect.TypeFor[planner.Step](), path, func(key string, value []byte, at int) {
			if key == "id" && json.Unmarshal(value, &id) == nil {
				idAt = at
			}
		})
		line, known := first[id]
		switch {
		case id == "":
			f.add(idAt, path+".id", "no id", "an id of the step's own", "")
		case known:
			f.add(idAt, path+".id", fmt.Sprintf("%q again", id), fmt.Sprintf("an id of its own (%q is on line %d)", id, line), "")
		default:
			first[id], _ = f.place(idAt)
		}
	}
}

// members calls do for each member of the object that starts at an offset of
// the file, and complains of keys that t has not.
func (f *planFile) members(object []byte, at int, t reflect.Type, path string, do func(key string, value []byte, at int)) {
	if !bytes.HasPrefix(bytes.TrimSpace(object), []byte("{")) {
		return
	}
	known := keysOf(t)
	for dec := opened(object); dec.More(); {
		token, _ := dec.Token()
		key, _ := token.(string)
		keyAt := at + literalStart(object, int(dec.InputOffset()))
		value, start := next(dec)
		if !contains(known, key) {
			f.add(keyAt, path, fmt.Sprintf("the key %q", key), "one of "+strings.Join(known, ", "), nearest.To(key, known))
		}
		do(key, value, at+start)
	}
}

// opened is a decoder past the first bracket of a value that is known to be
// sound.
func opened(value []byte) *json.Decoder {
	dec := json.NewDecoder(bytes.NewReader(value))
	if _, err := dec.Token(); err != nil {
		panic("server: JSON that was sound is not: " + err.Error())
	}
	return dec
}

// next is the next value of dec, and where it starts.
func next(dec *json.Decoder) (value json.RawMessage, at int) {
	if err := dec.Decode(&value); err != nil {
		panic("server: JSON that was sound is not: " + err.Error())
	}
	return value, int(dec.InputOffset()) - len(value)
}

// keysOf is the keys that a struct has in JSON, in its order.
func keysOf(t reflect.Type) []string {
	var keys []string
	for i := range t.NumField() {
		key, _, _ := strings.Cut(t.Field(i).Tag.Get("json"), ",")
		keys = append(keys, key)
	}
	return keys
}

func contains(keys []string, key string) bool {
	for _, k := range keys {
		if strings.EqualFold(k, key) { // as encoding/json takes them
			return true
		}
	}
	return false
}

// addJSON says where and what a JSON error is.
func (f *planFile) addJSON(err error) {
	var syntax *json.SyntaxError
	var kind *json.UnmarshalTypeError
	var moment *time.ParseError
	switch {
	case errors.As(err, &syntax) && int(syntax.Offset) >= len(bytes.TrimRight(f.src, " \t\r\n")) && strings.HasPrefix(syntax.Error(), "unexpected end"):
		f.add(len(f.src), "", "the end of the file", "the rest of a plan: a bracket or a quote is still open", "")
	case errors.As(err, &syntax):
		at := max(int(syntax.Offset)-1, 0)
		r, _ := utf8.DecodeRune(f.src[at:])
		f.add(at, "", fmt.Sprintf("%q", string(r)), "JSON: "+syntax.Error(), "")
	case errors.As(err, &kind):
		f.add(literalStart(f.src, int(kind.Offset)), strings.TrimPrefix(kind.Field, "Plan."), article(kind.Value), expected(kind.Type), "")
	case errors.As(err, &moment):
		f.add(max(bytes.Index(f.src, []byte(strings.Trim(moment.Value, `"`))), 0), "", moment.Value, "a time such as 2026-12-01T08:00:00Z", "")
	default:
		f.add(0, "", "no plan", "a plan as plan -format json writes it: "+err.Error(), "")
	}
}

// expected says in words what a Go type takes.
func expected(t reflect.Type) string {
	switch t.Kind() {
	case reflect.Int:
		return "a whole number"
	case reflect.Float64:
		return "a number"
	case reflect.String:
		return "a text"
	case reflect.Bool:
		return "true or false"
	case reflect.Slice:
		return "a list"
	}
	return "an object"
}

func article(kind string) string {
	if strings.IndexByte("aeiou", kind[0]) >= 0 {
		return "an " + kind
	}
	return "a " + kind
}

// literalStart is where the text, number or word starts that ends at an offset;
// of an object or a list, its bracket.
func literalStart(src []byte, end int) int {
	end = min(end, len(src))
	i := end - 1
	if i >= 0 && src[i] == '"' {
		for i--; i > 0 && (src[i] != '"' || src[i-1] == '\\'); i-- {
		}
		return max(i, 0)
	}
	for i > 0 && strings.IndexByte(" \t\r\n,:[{", src[i-1]) < 0 {
		i--
	}
	return max(i, 0)
}

func (f *planFile) add(at int, path, found, expected, near string) {
	line, column := f.place(at)
	f.problems = append(f.problems, &strictyaml.Problem{File: f.name, Line: line, Column: column, Path: path, Found: found, Expected: expected, Nearest: near})
}

// place is the line and the column of an offset, in letters from one.
func (f *planFile) place(at int) (line, column int) {
	before := f.src[:min(at, len(f.src))]
	start := bytes.LastIndexByte(before, '\n') + 1
	return 1 + bytes.Count(before, []byte("\n")), 1 + utf8.RuneCount(before[start:])
}
