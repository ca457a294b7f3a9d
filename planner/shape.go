package planner

import (
	"errors"
	"slices"
	"strings"

	"coatwright/planner/area"
	q "coatwright/quantity"
	"coatwright/strictyaml"
)

// ShapeNames are the shapes of a job document.
func ShapeNames() []string { return slices.Sorted(slices.Values(area.Keys())) }

// ParseShape reads a document of one shape, written as in a part of a job:
// "shape: {cylinder: {diameter: 30 mm, length: 400 mm}}". The error is a
// strictyaml.Problems.
func ParseShape(file string, document []byte) (area.Shape, error) {
	m, doc := strictyaml.Read(file, document, 0)
	s := readShape(m.Need("shape"))
	m.Close()
	if err := doc.Problems().Err(); err != nil {
		return nil, err
	}
	return s, nil
}

// The readers below report whatever is wrong where it stands; ok says that
// nothing is.

// readShape reads {cylinder: {diameter: 30 mm, length: 400 mm}}, nil when
// anything of it is wrong.
func readShape(v *strictyaml.Value) area.Shape {
	if v == nil {
		return nil
	}
	m := v.Map()
	s, ok := shapeIn(m, area.Keys())
	m.Close()
	if one := oneShape(v, len(m.Keys())); !one || !ok {
		return nil
	}
	return s
}

// readPiece reads a shape of one of the kinds named by keys and how many there
// are of it, as it stands in a list: {disc: {diameter: 20 mm}, count: 4}.
func readPiece(v *strictyaml.Value, keys []string) (p area.Piece, ok bool) {
	m := v.Map()
	p.Shape, ok = shapeIn(m, keys)
	written := len(m.Keys())
	if count := m.Get("count"); count != nil {
		p.Count = count.Int(1, area.MaxCount)
		written--
	}
	m.Close()
	return p, oneShape(v, written) && ok
}

// shapeIn reads the last of the shapes in a mapping that keys name.
func shapeIn(m *strictyaml.Map, keys []string) (s area.Shape, ok bool) {
	for _, key := range keys {
		if v := m.Get(key); v != nil {
			kind, _ := area.KindNamed(key)
			s, ok = readKind(v, kind)
		}
	}
	return s, ok
}

// oneShape reports a mapping that should name one shape and names so many.
func oneShape(v *strictyaml.Value, named int) bool {
	if named != 1 {
		v.Fail("one shape, such as {cylinder: {diameter: 30 mm, length: 400 mm}}", "")
	}
	return named == 1
}

// readKind reads a shape of a kind from its measures.
func readKind(v *strictyaml.Value, kind area.Kind) (s area.Shape, ok bool) {
	s = kind.New()
	if kind.Bare() {
		return s, readMeasure(v, s.Measures()[0]) && passes(s, v, nil)
	}
	written, ok := readMeasures(v, s.Measures())
	return s, ok && passes(s, v, written)
}

// readMeasures reads the measures that stand in one mapping; written are those
// that do.
func readMeasures(v *strictyaml.Value, measures []area.Measure) (written map[string]*strictyaml.Value, ok bool) {
	m := v.Map()
	written, ok = map[string]*strictyaml.Value{}, m != nil
	for _, measure := range measures {
		get := m.Need
		if measure.Optional {
			get = m.Get
		}
		if at := get(measure.Key); at != nil {
			written[measure.Key] = at
			ok = readMeasure(at, measure) && ok
		} else if !measure.Optional {
			ok = false
		}
	}
	m.Close()
	return written, ok
}

// readMeasure reads a measure into the shape that it is of.
func readMeasure(v *strictyaml.Value, m area.Measure) bool {
	ok := true
	switch into := m.Into.(type) {
	case *q.Length:
		*into = strictyaml.Quantity[q.Length](v)
	case *q.Area:
		*into = strictyaml.Quantity[q.Area](v)
	case *q.Mass:
		*into = strictyaml.Quantity[q.Mass](v)
	case *q.Fraction:
		*into = strictyaml.Quantity[q.Fraction](v)
	case *int:
		*into = v.Int(m.Least, m.Most)
		return true
	case *bool:
		*into = v.Bool()
	case *area.Side:
		*into = area.Side(v.OneOf("a side", area.Sides()))
	case *[]area.Tube:
		*into, ok = readTubes(v)
	case *[]area.Piece:
		*into, ok = readPieces(v, m.Shapes)
	case nil:
		_, ok = readMeasures(v, m.Parts)
	}
	m.Optional = m.Zero // what may be left out, but was not, is more than nothing
	return ok && passes(m, v, nil)
}

func readTubes(v *strictyaml.Value) (tubes []area.Tube, ok bool) {
	ok = true
	for _, item := range v.List() {
		var t area.Tube
		_, read := readMeasures(item, t.Measures())
		ok = ok && read
		tubes = append(tubes, t)
	}
	return tubes, ok
}

func readPieces(v *strictyaml.Value, keys []string) (pieces []area.Piece, ok bool) {
	ok = true
	for _, item := range v.List() {
		p, read := readPiece(item, keys)
		ok = ok && read
		pieces = append(pieces, p)
	}
	return pieces, ok
}

// passes reports what was read and cannot be: at the measure that is to blame
// where that was written, else at the whole.
func passes(read interface{ Check() error }, at *strictyaml.Value, written map[string]*strictyaml.Value) bool {
	var e *area.Error
	if !errors.As(read.Check(), &e) {
		return true
	}
	key, _, _ := strings.Cut(e.Key, "[")
	if v := written[key]; v != nil {
		at = v
	}
	at.Fail(e.Expected, "")
	return false
}
