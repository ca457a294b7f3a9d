package area

import q "coatwright/quantity"

// Shell is how a hollow part is painted: on the outside, on the inside or on
// both, and on its open edges where the thickness of its wall is given.
type Shell struct {
	Painted   Side
	Thickness q.Length // 0: as good as none
}

// Faces is on how many faces it is painted.
func (s *Shell) Faces() int {
	if s.Painted == Both {
		return 2
	}
	return 1
}

// painted is the area of a shell, of which outside, inside and edges are the
// faces and the open edges.
func (s *Shell) painted(outside, inside, edges q.Area) q.Area {
	switch s.Painted {
	case Inside:
		return inside + edges
	case Both:
		return outside + inside + edges
	default:
		return outside + edges
	}
}

func (s *Shell) measures() []Measure {
	return []Measure{
		{Key: "painted", Title: "Painted side", Says: "Outside, inside or both; the outside where nothing is said.", Optional: true, Into: &s.Painted},
		lengthOf(&s.Thickness, "thickness", "t", "Thickness of the wall", "Makes the inside smaller, and counts the open edges as painted; left out, the wall is as good as none.").orNone(),
	}
}
