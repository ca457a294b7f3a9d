package strictyaml

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"

	"github.com/goccy/go-yaml/ast"
	"github.com/goccy/go-yaml/parser"
)

// JSON returns as JSON a document that Read found nothing wrong with: keys in
// their order, and every value as it was written, so that 012 or .inf, which
// are no JSON numbers, come out as text and are read again as they were.
func JSON(src []byte) ([]byte, error) {
	f, err := parser.ParseBytes(src, 0)
	if err != nil {
		return nil, err
	}
	if len(f.Docs) == 0 || f.Docs[0].Body == nil {
		return nil, errors.New("strictyaml: an empty document has no JSON")
	}
	var out bytes.Buffer
	if err := writeJSON(&out, f.Docs[0].Body); err != nil {
		return nil, err
	}
	return out.Bytes(), nil
}

func writeJSON(out *bytes.Buffer, n ast.Node) error {
	switch n := n.(type) {
	case *ast.MappingNode:
		return writeObject(out, n.Values)
	case *ast.MappingValueNode:
		return writeObject(out, []*ast.MappingValueNode{n})
	case *ast.SequenceNode:
		out.WriteByte('[')
		for i, item := range n.Values {
			if i > 0 {
				out.WriteByte(',')
			}
			if err := writeJSON(out, item); err != nil {
				return err
			}
		}
		out.WriteByte(']')
		return nil
	}
	return writeScalar(out, n)
}

func writeObject(out *bytes.Buffer, pairs []*ast.MappingValueNode) error {
	out.WriteByte('{')
	for i, pair := range pairs {
		if i > 0 {
			out.WriteByte(',')
		}
		if err := writeText(out, pair.Key); err != nil {
			return err
		}
		out.WriteByte(':')
		if err := writeJSON(out, pair.Value); err != nil {
			return err
		}
	}
	out.WriteByte('}')
	return nil
}

// writeScalar leaves a number or a truth value bare where JSON has the same.
func writeScalar(out *bytes.Buffer, n ast.Node) error {
	switch n.(type) {
	case *ast.IntegerNode, *ast.FloatNode, *ast.BoolNode:
		if text, _ := scalarText(n); json.Valid([]byte(text)) {
			out.WriteString(text)
			return nil
		}
	}
	return writeText(out, n)
}

func writeText(out *bytes.Buffer, n ast.Node) error {
	text, ok := scalarText(n)
	if !ok {
		return fmt.Errorf("strictyaml: a YAML %s has no JSON", n.Type())
	}
	quoted, err := json.Marshal(text)
	out.Write(quoted)
	return err
}
