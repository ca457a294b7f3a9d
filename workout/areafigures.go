package workout

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"coatwright/planner/area"
	"coatwright/planner/trace"
)

// surface is the key of the area that is asked for.
const surface = "surface"

// surfaceFigures are how the area of a shape comes about: first what was asked
// for, then what it is made of. Values are what stands in the fields.
func surfaceFigures(shape area.Shape, values map[string]string) []trace.Figure {
	figures := area.Figures(shape, surface, trace.FromEntry)
	for i := range figures {
		f := &figures[i]
		f.Name = pieceName(f.Name, wayOf(shape, f.Key), values)
		f.Key = pieceKey(f.Key)
		for k := range f.Inputs {
			in := &f.Inputs[k]
			way := wayOf(shape, in.Origin.At)
			switch in.Origin.From {
			case trace.FromFigure:
				in.Name = pieceName(in.Name, way, values)
				in.Origin.At = pieceKey(in.Origin.At)
			case trace.FromEntry:
				in.Origin.At = fieldOf(shape, way)
			}
		}
	}
	last := len(figures) - 1
	figures[last].Name = "Surface to be painted"
	slices.Reverse(figures)
	slices.Reverse(figures[1:]) // the pieces in their order
	return figures
}

// wayOf is the way from the shape to what a figure or an input is of:
// "tubes[0].diameter".
func wayOf(shape area.Shape, at string) string {
	way := strings.TrimPrefix(strings.TrimPrefix(at, surface), ".")
	if strings.HasPrefix(way, "[") { // the only measure of its kind
		way = shape.Kind().Key + way
	}
	return way
}

// pieceName names what stands on a line of a list: "Tube, line 2".
func pieceName(name, way string, values map[string]string) string {
	at := area.PlaceOf(way)
	at.Measure = ""
	if line := at.Says(values[at.Field]); line != "" {
		return name + ", " + line
	}
	if way == "uncut" {
		return name + ", before its openings"
	}
	return name
}

var itemNumber = regexp.MustCompile(`\[(\d+)\]`)

// pieceKey is the key of a figure as a page can have it: "surface-tubes-1" for
// the first of the tubes.
func pieceKey(at string) string {
	numbered := itemNumber.ReplaceAllStringFunc(at, func(found string) string {
		i, _ := strconv.Atoi(found[1 : len(found)-1]) // short enough: lists are
		return fmt.Sprintf("-%d", i+1)
	})
	return strings.ReplaceAll(numbered, ".", "-")
}

// fieldOf is the field that an input was entered in. What belongs to the whole
// shape is its only measure, or on how many faces it is painted.
func fieldOf(shape area.Shape, way string) string {
	if field := area.PlaceOf(way).Field; field != "" {
		return field
	}
	measures := area.Fields(shape.Measures())
	for _, m := range measures {
		if m.Of() == "side" || m.Key == "both-faces" {
			return m.Key
		}
	}
	if len(measures) == 1 {
		return measures[0].Key
	}
	return "kind"
}
