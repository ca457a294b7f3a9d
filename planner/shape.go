package planner

import (
	"maps"
	"slices"

	"coatwright/planner/amounts"
	q "coatwright/quantity"
	"coatwright/strictyaml"
)

// shapes reads each shape of a job document.
var shapes = map[string]func(*strictyaml.Map) amounts.Shape{
	"plate": func(m *strictyaml.Map) amounts.Shape {
		return amounts.Plate{Length: side(m, "length"), Width: side(m, "width"), BothFaces: m.Get("both-faces").Bool()}
	},
	"cylinder": func(m *strictyaml.Map) amounts.Shape {
		return amounts.Cylinder{Diameter: side(m, "diameter"), Length: side(m, "length"), Ends: m.Get("ends").Int(0, 2)}
	},
	"frustum": func(m *strictyaml.Map) amounts.Shape {
		return amounts.Frustum{Diameter1: side(m, "diameter"), Diameter2: side(m, "diameter2"), Length: side(m, "length")}
	},
	"sphere": func(m *strictyaml.Map) amounts.Shape {
		return amounts.Sphere{Diameter: side(m, "diameter")}
	},
	"ellipsoid": func(m *strictyaml.Map) amounts.Shape {
		return amounts.Ellipsoid{Length: side(m, "length"), Width: side(m, "width"), Height: side(m, "height")}
	},
	"box": func(m *strictyaml.Map) amounts.Shape {
		return amounts.Box{Length: side(m, "length"), Width: side(m, "width"), Height: side(m, "height")}
	},
}

// ShapeNames are the shapes of a job document.
func ShapeNames() []string { return slices.Sorted(maps.Keys(shapes)) }

// readShape reads {cylinder: {diameter: 30 mm, length: 400 mm}}, nil when it
// names no shape.
func readShape(v *strictyaml.Value) amounts.Shape {
	m := v.Map()
	keys := m.Keys()
	var shape amounts.Shape
	for _, name := range ShapeNames() {
		if s := m.Get(name); s != nil {
			dims := s.Map()
			shape = shapes[name](dims)
			dims.Close()
		}
	}
	m.Close()
	if len(keys) != 1 {
		v.Fail("one shape, such as {cylinder: {diameter: 30 mm, length: 400 mm}}", "")
		return nil
	}
	return shape
}

// side reads a length of a shape: above zero and at most 20 m.
func side(m *strictyaml.Map, key string) q.Length {
	v := m.Need(key)
	l := strictyaml.Quantity[q.Length](v)
	if v != nil && !(l > 0 && l <= 20) {
		v.Fail("a length above 0 and at most 20 m", "")
	}
	return l
}
