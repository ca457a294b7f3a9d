package strictyaml

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"github.com/goccy/go-yaml/ast"

	"coatwright/nearest"
	q "coatwright/quantity"
)

// scalarText is a scalar as it was written, without its quotes. Anchors,
// aliases, tags and merge keys are none: goccy/go-yaml counts them as such.
func scalarText(n ast.Node) (text string, ok bool) {
	switch n := n.(type) {
	case *ast.StringNode:
		return n.Value, true
	case *ast.LiteralNode:
		return strings.TrimRight(n.Value.Value, "\n"), true
	case *ast.IntegerNode, *ast.FloatNode, *ast.BoolNode, *ast.InfinityNode, *ast.NanNode:
		return n.GetToken().Value, true
	}
	return "", false
}

// scalar is v's text without the space around it, "" when v is not a scalar.
func (v *Value) scalar() string {
	text, _ := scalarText(v.node)
	return strings.TrimSpace(text)
}

// Text returns v as text, "" when it is absent, empty or not a scalar.
func (v *Value) Text() string {
	if v == nil {
		return ""
	}
	s := v.scalar()
	if s == "" {
		v.Fail("text", "")
	}
	return s
}

// List returns the items of v, nil when it is absent or not a list.
func (v *Value) List() []*Value {
	if v == nil {
		return nil
	}
	s, ok := v.node.(*ast.SequenceNode)
	if !ok {
		v.Fail("a list, such as [one, two]", "")
		return nil
	}
	items := make([]*Value, len(s.Values))
	for i, n := range s.Values {
		items[i] = &Value{doc: v.doc, node: n, path: fmt.Sprintf("%s[%d]", v.path, i)}
	}
	return items
}

// WordOrWords is Words, but one word need not stand in a list.
func (v *Value) WordOrWords(what string, allowed []string) []string {
	if v == nil || v.IsList() {
		return v.Words(what, allowed)
	}
	if w := v.OneOf(what, allowed); w != "" {
		return []string{w}
	}
	return nil
}

// IsList reports whether v is a list.
func (v *Value) IsList() bool {
	if v == nil {
		return false
	}
	_, list := v.node.(*ast.SequenceNode)
	return list
}

// IsMap reports whether v is a mapping.
func (v *Value) IsMap() bool {
	if v == nil {
		return false
	}
	switch v.node.(type) {
	case *ast.MappingNode, *ast.MappingValueNode:
		return true
	}
	return false
}

// OneOf returns v's text when it is one of words; what says what they are,
// such as "a fact".
func (v *Value) OneOf(what string, words []string) string {
	if v == nil {
		return ""
	}
	s := v.scalar()
	if slices.Contains(words, s) {
		return s
	}
	expected := what
	if len(words) > 0 && len(words) <= 12 {
		expected += ": one of " + strings.Join(words, ", ")
	}
	v.Fail(expected, nearest.To(s, words))
	return ""
}

// Words returns a list of words, each one of allowed.
func (v *Value) Words(what string, allowed []string) []string {
	var out []string
	for _, item := range v.List() {
		if w := item.OneOf(what, allowed); w != "" {
			out = append(out, w)
		}
	}
	return out
}

// Texts returns a list of texts.
func (v *Value) Texts() []string {
	var out []string
	for _, item := range v.List() {
		if t := item.Text(); t != "" {
			out = append(out, t)
		}
	}
	return out
}

// Int returns a whole number from low to high.
func (v *Value) Int(low, high int) int {
	if v == nil {
		return 0
	}
	n, err := strconv.Atoi(v.scalar())
	if err != nil || n < low || n > high {
		v.Fail(fmt.Sprintf("a whole number from %d to %d", low, high), "")
		return 0
	}
	return n
}

// Number returns a number above zero.
func (v *Value) Number() float64 {
	if v == nil {
		return 0
	}
	f, err := strconv.ParseFloat(v.scalar(), 64)
	if err != nil || !(f > 0) || f > 1e9 {
		v.Fail("a number above 0", "")
		return 0
	}
	return f
}

// Bool returns yes or no.
func (v *Value) Bool() bool {
	if v == nil {
		return false
	}
	switch v.scalar() {
	case "yes", "true":
		return true
	case "no", "false":
		return false
	}
	v.Fail("yes or no", "")
	return false
}

// Quantity returns a quantity with a unit.
func Quantity[Q q.Quantity](v *Value) Q {
	if v == nil {
		return 0
	}
	x, err := q.Parse[Q](v.scalar())
	v.failQuantity(err)
	return x
}

// Range returns a range of quantities, or one quantity as a range of no width.
func Range[Q q.Quantity](v *Value) q.Range[Q] {
	if v == nil {
		return q.Range[Q]{}
	}
	r, err := q.ParseRange[Q](v.scalar())
	v.failQuantity(err)
	return r
}

func (v *Value) failQuantity(err error) {
	var e *q.Error
	if errors.As(err, &e) {
		v.Fail(e.Expected, e.Nearest)
	}
}
