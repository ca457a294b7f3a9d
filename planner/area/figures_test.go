package area

import (
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"coatwright/planner/trace"
	q "coatwright/quantity"
)

func job(at string) trace.Origin    { return trace.Origin{From: trace.FromJob, At: at} }
func figure(at string) trace.Origin { return trace.Origin{From: trace.FromFigure, At: at} }

func TestFigures(t *testing.T) {
	hole := &Disc{Diameter: 0.1}
	plate := &Plate{Length: 0.6, Width: 0.4, Sheet: Sheet{BothFaces: true}}
	ball := &Ellipsoid{Length: 0.3, Width: 0.2, Height: 0.1}
	for _, c := range []struct {
		name  string
		shape Shape
		want  []trace.Figure
	}{
		{"measured", &Measured{0.5}, []trace.Figure{{
			Key: "shape.k", Name: "Area already measured", Value: q.ValueOf(q.Area(0.5)), Formula: MeasuredFormula,
			Inputs: []trace.Input{trace.In("A", "Area", q.Area(0.5), job("shape.k"))},
		}}},
		{"no openings", &Cut{Of: &Sphere{0.2}}, []trace.Figure{{
			Key: "shape.k", Name: "Ball", Value: q.ValueOf((&Sphere{0.2}).Area()), Formula: SphereFormula,
			Inputs: []trace.Input{trace.In("d", "Diameter", q.Length(0.2), job("shape.k.diameter"))},
		}}},
		{"painted side", &Dome{Diameter: 0.6, Height: 0.1, Shell: Shell{Both, 0.002}}, []trace.Figure{{
			Key: "shape.k", Name: "Dome or bowl", Value: q.ValueOf((&Dome{Diameter: 0.6, Height: 0.1, Shell: Shell{Both, 0.002}}).Area()), Formula: DomeFormula,
			Inputs: []trace.Input{
				trace.In("d", "Diameter of the rim", q.Length(0.6), job("shape.k.diameter")),
				trace.In("h", "Height", q.Length(0.1), job("shape.k.height")),
				trace.In("t", "Thickness of the wall", q.Length(0.002), job("shape.k.thickness")),
			},
			Remarks: []string{"Painted side: both.", new(Dome).Kind().Omits},
		}}},
		{"half", &Ellipsoid{0.3, 0.2, 0.1, true}, []trace.Figure{{
			Key: "shape.k", Name: "Egg or half egg", Value: q.ValueOf((&Ellipsoid{0.3, 0.2, 0.1, true}).Area()), Formula: EllipsoidFormula,
			Range: trace.SpanOf((&Ellipsoid{0.3, 0.2, 0.1, true}).Area()/1.01061, (&Ellipsoid{0.3, 0.2, 0.1, true}).Area()/0.98939),
			Inputs: []trace.Input{
				trace.In("l", "Length", q.Length(0.3), job("shape.k.length")),
				trace.In("w", "Width", q.Length(0.2), job("shape.k.width")),
				trace.In("h", "Height", q.Length(0.1), job("shape.k.height")),
			},
			Remarks: []string{"Only half of it.", new(Ellipsoid).Kind().Omits},
		}}},
		{"paper", &Paper{0.062, 1, 0.9, 0.036}, []trace.Figure{{
			Key: "shape.k", Name: "Weighed paper", Value: q.ValueOf((&Paper{0.062, 1, 0.9, 0.036}).Area()), Formula: PaperFormula,
			Inputs: []trace.Input{
				trace.In("m", "Weight of the pieces", q.Mass(0.062), job("shape.k.mass")),
				trace.In("l", "Length of the sheet", q.Length(1), job("shape.k.sheet.length")),
				trace.In("w", "Width of the sheet", q.Length(0.9), job("shape.k.sheet.width")),
				trace.In("M", "Weight of the sheet", q.Mass(0.036), job("shape.k.sheet.mass")),
			},
			Remarks: []string{new(Paper).Kind().Omits},
		}}},
		{"openings", &Cut{plate, []Piece{{hole, 2}, {&Measured{0.01}, 0}}}, []trace.Figure{
			{
				Key: "shape.k.uncut", Name: "Plate", Value: q.ValueOf(plate.Area()), Formula: PlateFormula,
				Inputs: []trace.Input{
					trace.In("l", "Length", q.Length(0.6), job("shape.k.length")),
					trace.In("w", "Width", q.Length(0.4), job("shape.k.width")),
					trace.In("F", "Faces that are painted", q.Number(2), job("shape.k.both-faces")),
				},
			},
			{
				Key: "shape.k.openings[0].disc", Name: "Disc", Value: q.ValueOf(hole.Area()), Formula: DiscFormula,
				Inputs: []trace.Input{
					trace.In("d", "Diameter", q.Length(0.1), job("shape.k.openings[0].disc.diameter")),
					trace.In("F", "Faces that are painted", q.Number(1), job("shape.k.openings[0].disc.both-faces")),
				},
			},
			{
				Key: "shape.k.openings[1].area", Name: "Area already measured", Value: q.ValueOf(q.Area(0.01)), Formula: MeasuredFormula,
				Inputs: []trace.Input{trace.In("A", "Area", q.Area(0.01), job("shape.k.openings[1].area"))},
			},
			{
				Key: "shape.k", Name: "Plate, less its openings",
				Value: q.ValueOf(plate.Area() - 2*(2*hole.Area()+0.01)), Formula: CutFormula,
				Inputs: []trace.Input{
					trace.In("U", "Plate", plate.Area(), figure("shape.k.uncut")),
					trace.In("F", "Faces that are painted", q.Number(2), job("shape.k")),
					trace.In("A1", "Disc", hole.Area(), figure("shape.k.openings[0].disc")),
					trace.In("n1", "How many of it", q.Number(2), job("shape.k.openings[0].disc")),
					trace.In("A2", "Area already measured", q.Area(0.01), figure("shape.k.openings[1].area")),
				},
			},
		}},
		{"sum", &Sum{[]Piece{{ball, 1}}}, []trace.Figure{
			{
				Key: "shape.k[0].ellipsoid", Name: "Egg or half egg", Value: q.ValueOf(ball.Area()), Formula: EllipsoidFormula,
				Range: trace.SpanOf(ball.Area()/1.01061, ball.Area()/0.98939),
				Inputs: []trace.Input{
					trace.In("l", "Length", q.Length(0.3), job("shape.k[0].ellipsoid.length")),
					trace.In("w", "Width", q.Length(0.2), job("shape.k[0].ellipsoid.width")),
					trace.In("h", "Height", q.Length(0.1), job("shape.k[0].ellipsoid.height")),
				},
				Remarks: []string{ball.Kind().Omits},
			},
			{
				Key: "shape.k", Name: "Several shapes together", Value: q.ValueOf(ball.Area()), Formula: SumFormula,
				Range: trace.SpanOf(ball.Area()/1.01061, ball.Area()/0.98939),
				Inputs: []trace.Input{{
					Symbol: "A1", Name: "Egg or half egg", Value: q.ValueOf(ball.Area()),
					Range: trace.SpanOf(ball.Area()/1.01061, ball.Area()/0.98939), Origin: figure("shape.k[0].ellipsoid"),
				}},
				Remarks: []string{new(Sum).Kind().Omits},
			},
		}},
		{"frame", &Frame{[]Tube{{Diameter: 0.03, Length: 0.5, Count: 3}}, 2}, []trace.Figure{
			{
				Key: "shape.k.tubes[0]", Name: "Tube", Value: q.ValueOf((&Tube{Diameter: 0.03, Length: 0.5}).Area()), Formula: TubeFormula,
				Inputs: []trace.Input{
					trace.In("d", "Diameter", q.Length(0.03), job("shape.k.tubes[0].diameter")),
					trace.In("l", "Length", q.Length(0.5), job("shape.k.tubes[0].length")),
				},
			},
			{
				Key: "shape.k", Name: "Frame of tubes", Value: q.ValueOf((&Frame{[]Tube{{Diameter: 0.03, Length: 0.5, Count: 3}}, 2}).Area()), Formula: FrameFormula,
				Inputs: []trace.Input{
					trace.In("A1", "Tube", (&Tube{Diameter: 0.03, Length: 0.5}).Area(), figure("shape.k.tubes[0]")),
					trace.In("n1", "How many of it", q.Number(3), job("shape.k.tubes[0]")),
					trace.In("j", "Joints", q.Number(2), job("shape.k.joints")),
				},
				Remarks: []string{new(Frame).Kind().Omits},
			},
		}},
	} {
		t.Run(c.name, func(t *testing.T) {
			if diff := cmp.Diff(c.want, Figures(c.shape, "shape.k", trace.FromJob)); diff != "" {
				t.Errorf("(-want +got):\n%s", diff)
			}
		})
	}
}

// The last figure is that of the shape, every figure has a key of its own, and
// what one takes from another is that other's value.
func TestFiguresHangTogether(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anyShape(t)
		figures := Figures(s, "shape.any", trace.FromEntry)
		values := map[string]q.Value{}
		for _, f := range figures {
			if _, twice := values[f.Key]; twice {
				t.Errorf("%q is there twice", f.Key)
			}
			values[f.Key] = f.Value
			for _, in := range f.Inputs {
				if in.Origin.From == trace.FromFigure && values[in.Origin.At] != in.Value {
					t.Errorf("%s of %q is %v, and %q is %v", in.Symbol, f.Key, in.Value, in.Origin.At, values[in.Origin.At])
				}
			}
		}
		if last := figures[len(figures)-1]; last.Key != "shape.any" || last.Value != q.ValueOf(s.Area()) {
			t.Errorf("the last figure is %q, %v", last.Key, last.Value)
		}
	})
}
