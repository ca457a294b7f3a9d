package area

import (
	"fmt"

	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// Figures is how the area of s came about: a figure for each shape that s is
// made of, and last that of s. At is where s stands, such as
// "parts[1].shape.cylinder"; the measures are origin's, each at its own key.
func Figures(s Shape, at string, origin trace.From) []trace.Figure {
	if c, ok := s.(*Cut); ok {
		if len(c.Openings) == 0 {
			return Figures(c.Of, at, origin)
		}
		return c.figures(at, origin)
	}
	own := trace.Figure{Key: at, Name: s.Kind().Title, Value: q.ValueOf(s.Area()), Range: spanOf(s), Formula: s.Formula()}
	own.Remarks = choices(s.Measures())
	if omits := s.Kind().Omits; omits != "" {
		own.Remarks = append(own.Remarks, omits)
	}
	var figures []trace.Figure
	if made, ok := s.(interface{ pieces() []named }); ok {
		figures, own.Inputs = figuresOf(made.pieces(), at, origin)
	}
	own.Inputs = append(own.Inputs, inputs(ways(s), at, origin)...)
	return append(figures, own)
}

// figures are those of the shape uncut, of its openings, and of what is left.
func (s *Cut) figures(at string, origin trace.From) []trace.Figure {
	figures := Figures(s.Of, at, origin)
	uncut := &figures[len(figures)-1]
	uncut.Key += ".uncut"
	own := trace.Figure{Key: at, Name: s.Kind().Title + ", less its openings", Value: q.ValueOf(s.Area()), Range: spanOf(s), Formula: CutFormula, Inputs: []trace.Input{
		{Symbol: "U", Name: uncut.Name, Value: uncut.Value, Range: uncut.Range, Origin: trace.Origin{From: trace.FromFigure, At: uncut.Key}},
		trace.In("F", facesName, q.Number(s.Faces()), trace.Origin{From: origin, At: at}),
	}}
	openings, taken := figuresOf(name("openings", s.Openings), at, origin)
	own.Inputs = append(own.Inputs, taken...)
	return append(append(figures, openings...), own)
}

// spanOf is Range, nil where the area is exact.
func spanOf(s Shape) *trace.Span {
	r := Range(s)
	if r.Low == r.High {
		return nil
	}
	return trace.SpanOf(r.Low, r.High)
}

const facesName = "Faces that are painted"

// figuresOf are the figures of pieces, and what they put into the figure of the
// whole: the area of each and, where there are several of it, how many.
func figuresOf(pieces []named, at string, origin trace.From) (figures []trace.Figure, in []trace.Input) {
	for i, p := range pieces {
		key := join(at, p.key)
		figures = append(figures, Figures(p.Shape, key, origin)...)
		last := figures[len(figures)-1]
		in = append(in, trace.Input{
			Symbol: fmt.Sprintf("A%d", i+1), Name: last.Name, Value: last.Value, Range: last.Range,
			Origin: trace.Origin{From: trace.FromFigure, At: last.Key},
		})
		if n := p.count(); n > 1 {
			in = append(in, trace.In(fmt.Sprintf("n%d", i+1), "How many of it", q.Number(n), trace.Origin{From: origin, At: key}))
		}
	}
	return figures, in
}

// choices say what was chosen and is no number of the formula.
func choices(measures []Measure) []string {
	var out []string
	for _, m := range measures {
		switch into := m.Into.(type) {
		case *Side:
			if *into != "" {
				out = append(out, m.Title+": "+string(*into)+".")
			}
		case *bool:
			if m.Symbol == "" && *into {
				out = append(out, m.Title+".")
			}
		}
	}
	return out
}

// inputs are what was measured and stands in a formula.
func inputs(measures []Measure, at string, origin trace.From) []trace.Input {
	var out []trace.Input
	for _, m := range measures {
		if m.Into == nil {
			out = append(out, inputs(m.Parts, join(at, m.Key), origin)...)
			continue
		}
		v, ok := m.Value()
		if m.Symbol == "" || !ok {
			continue
		}
		title := m.Title
		if m.Of() == "yes or no" {
			title = facesName
		}
		out = append(out, trace.Input{Symbol: m.Symbol, Name: title, Value: v, Origin: trace.Origin{From: origin, At: join(at, m.Key)}})
	}
	return out
}

// ways are the measures of s with the way to each from where s stands: none for
// the only one of a bare kind.
func ways(s Shape) []Measure {
	k := s.Kind()
	k.Measures = s.Measures()
	if k.Bare() {
		k.Measures[0].Key = ""
	}
	return k.Measures
}

// join is the way to what stands under key at a place: "sum" and "[0].disc" are
// "sum[0].disc".
func join(at, key string) string {
	if at == "" || key == "" || key[0] == '[' {
		return at + key
	}
	return at + "." + key
}
