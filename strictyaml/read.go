// Package strictyaml reads YAML documents that people write by hand: every
// key must be asked for, every value must be what was expected, and whatever is
// not is reported with its line and column and the nearest valid spelling.
//
// It owns the walk over the document, not its meaning: callers ask a Map for
// the keys they know and call Close, which reports the rest. Reading goes on
// after a problem, so that one run lists them all. Anchors, aliases and tags
// are refused: a note or a job has no use for them.
package strictyaml

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"github.com/goccy/go-yaml"
	"github.com/goccy/go-yaml/ast"
	"github.com/goccy/go-yaml/parser"
	"github.com/goccy/go-yaml/token"

	"coatwright/nearest"
)

// maxDepth bounds nesting; nothing that people write by hand comes near it.
const maxDepth = 32

// maxSize bounds a document: the parser's time grows with its square. The
// listed words of the built-in notes, the longest of ours, have 10 kB.
const maxSize = 64 << 10

// Document gathers the problems found while a document is read.
type Document struct {
	file     string
	before   int // lines of the file above the YAML
	problems Problems
	seen     map[place]bool // where there is a problem
}

// place is a spot of the YAML itself, and the way to its value.
type place struct {
	line, column int
	path         string
}

// Read parses src, which starts after `before` lines of file, and returns its
// top mapping, nil when src cannot be parsed; the problems say why.
func Read(file string, src []byte, before int) (*Map, *Document) {
	d := &Document{file: file, before: before, seen: map[place]bool{}}
	if len(src) > maxSize {
		d.add(1, 1, "", fmt.Sprintf("%d bytes", len(src)), fmt.Sprintf("at most %d bytes", maxSize), "")
		return nil, d
	}
	if deep := tooDeep(src); deep > 0 {
		d.add(deep, 1, "", "brackets nested too deep", fmt.Sprintf("at most %d levels", maxDepth), "")
		return nil, d
	}
	f, err := parser.ParseBytes(src, 0, parser.AllowDuplicateMapKey()) // Map reports them, and reads on
	if err != nil {
		d.addSyntax(err)
		return nil, d
	}
	if len(f.Docs) == 0 || f.Docs[0].Body == nil {
		d.add(1, 1, "", "nothing", "a mapping of keys to values", "")
		return nil, d
	}
	if len(f.Docs) > 1 && f.Docs[1].Body != nil {
		p := firstToken(f.Docs[1].Body).Position
		d.add(p.Line, p.Column, "", "a second document", "one document", "")
	}
	return (&Value{doc: d, node: f.Docs[0].Body}).Map(), d
}

// Problems returns what was found wrong so far.
func (d *Document) Problems() Problems { return d.problems }

// add reports a problem at a line and column of the YAML itself: the first of
// each value, since what follows from it helps nobody.
func (d *Document) add(line, column int, path, found, expected, nearest string) {
	at := place{line, column, path}
	if d.seen[at] {
		return
	}
	d.seen[at] = true
	d.problems = append(d.problems, &Problem{d.file, line + d.before, column, path, found, expected, nearest})
}

func (d *Document) addSyntax(err error) {
	line, column := 1, 1
	var y yaml.Error
	if errors.As(err, &y) {
		if t := y.GetToken(); t != nil && t.Position != nil {
			line, column = t.Position.Line, t.Position.Column
		}
		d.add(line, column, "", "broken YAML ("+y.GetMessage()+")", "keys and values, indented with spaces", "")
		return
	}
	d.add(line, column, "", "broken YAML ("+err.Error()+")", "keys and values, indented with spaces", "")
}

// tooDeep returns the first line on which flow brackets nest beyond maxDepth
// or block indentation beyond any hand's use, and 0 when none does. The parser
// below it is recursive.
func tooDeep(src []byte) int {
	depth := 0
	for i, line := range strings.Split(string(src), "\n") {
		depth = max(0, depth+strings.Count(line, "[")+strings.Count(line, "{")-strings.Count(line, "]")-strings.Count(line, "}"))
		indent := len(line) - len(strings.TrimLeft(line, " -?:"))
		if depth > maxDepth || indent > 8*maxDepth || strings.Count(line, "[")+strings.Count(line, "{") > 4*maxDepth {
			return i + 1
		}
	}
	return 0
}

// Value is one value of a document. A nil *Value stands for an absent key:
// every method answers with a zero value and reports nothing.
type Value struct {
	doc  *Document
	node ast.Node
	path string
}

func (v *Value) place() (line, column int) {
	p := firstToken(v.node).Position
	return p.Line, p.Column
}

// firstToken is where n begins. The token that goccy/go-yaml gives for a
// mapping without braces is the colon after its first key.
func firstToken(n ast.Node) *token.Token {
	switch m := n.(type) {
	case *ast.MappingValueNode:
		return m.Key.GetToken()
	case *ast.MappingNode:
		if !m.IsFlowStyle && len(m.Values) > 0 {
			return m.Values[0].Key.GetToken()
		}
	}
	return n.GetToken()
}

// Fail reports that v is not what was expected. Nearest may be "".
func (v *Value) Fail(expected, nearest string) {
	line, column := v.place()
	v.doc.add(line, column, v.path, v.describe(), expected, nearest)
}

// Line returns the line of the file that v stands on.
func (v *Value) Line() int {
	line, _ := v.place()
	return line + v.doc.before
}

func (v *Value) describe() string {
	switch n := v.node.(type) {
	case *ast.NullNode:
		return "nothing"
	case *ast.MappingNode, *ast.MappingValueNode:
		return "a mapping"
	case *ast.SequenceNode:
		return "a list"
	default:
		if text, ok := scalarText(n); ok {
			return strconv.Quote(text)
		}
		return "a YAML " + strings.ToLower(n.Type().String())
	}
}

// Map is a mapping of a document. A nil *Map stands for one that is absent or
// could not be read: its methods find no keys and report nothing.
type Map struct {
	at     *Value
	keys   []string
	values map[string]*Value
	tokens map[string]*token.Token
	asked  []string
}

// Map returns v as a mapping, nil when it is absent or something else.
func (v *Value) Map() *Map {
	if v == nil {
		return nil
	}
	m := &Map{at: v, values: map[string]*Value{}, tokens: map[string]*token.Token{}}
	var pairs []*ast.MappingValueNode
	switch n := v.node.(type) {
	case *ast.MappingNode:
		pairs = n.Values
	case *ast.MappingValueNode:
		pairs = []*ast.MappingValueNode{n}
	default:
		v.Fail("a mapping of keys to values", "")
		return nil
	}
	for _, pair := range pairs {
		m.add(pair)
	}
	return m
}

func (m *Map) add(pair *ast.MappingValueNode) {
	t := pair.Key.GetToken()
	key, plain := scalarText(pair.Key)
	_, twice := m.values[key]
	switch d := m.at.doc; {
	case !plain:
		d.add(t.Position.Line, t.Position.Column, m.at.path, strconv.Quote(t.Value), "a plain key", "")
		return
	case twice:
		d.add(t.Position.Line, t.Position.Column, m.at.path, "a second "+strconv.Quote(key), "each key once", "")
		return
	}
	m.keys = append(m.keys, key)
	m.tokens[key] = t
	m.values[key] = &Value{doc: m.at.doc, node: pair.Value, path: join(m.at.path, key)}
}

func join(path, key string) string {
	if path == "" {
		return key
	}
	return path + "." + key
}

// Keys returns the keys in the order they are written.
func (m *Map) Keys() []string {
	if m == nil {
		return nil
	}
	return m.keys
}

// Get returns the value of key, nil when absent.
func (m *Map) Get(key string) *Value {
	if m == nil {
		return nil
	}
	m.asked = append(m.asked, key)
	return m.values[key]
}

// Need returns the value of key and reports it when absent.
func (m *Map) Need(key string) *Value {
	v := m.Get(key)
	if v == nil && m != nil {
		line, column := m.at.place()
		m.at.doc.add(line, column, join(m.at.path, key), "nothing", "the key "+strconv.Quote(key), "")
	}
	return v
}

// Fail reports a problem with the spelling of one of m's keys.
func (m *Map) Fail(key, expected, nearest string) {
	p := m.tokens[key].Position
	m.at.doc.add(p.Line, p.Column, m.at.path, "the key "+strconv.Quote(key), expected, nearest)
}

// Close reports every key that nobody asked for.
func (m *Map) Close() {
	if m == nil {
		return
	}
	for _, key := range m.keys {
		if !slices.Contains(m.asked, key) {
			m.Fail(key, "one of: "+strings.Join(m.asked, ", "), nearest.To(key, m.asked))
		}
	}
}
