package area

import (
	"testing"

	"coatwright/planner/trace"
)

func BenchmarkArea(b *testing.B) {
	frame := &Frame{Tubes: []Tube{
		{Diameter: 0.0286, Length: 0.56}, {Diameter: 0.0318, To: 0.028, Length: 0.6}, {Diameter: 0.0286, Length: 0.53},
		{Diameter: 0.036, Length: 0.13}, {Diameter: 0.019, To: 0.012, Length: 0.42, Count: 2}, {Diameter: 0.014, Length: 0.52, Count: 2},
	}, Joints: 12}
	for _, c := range []struct {
		name  string
		shape Shape
	}{
		{"plate", &Plate{Length: 0.6, Width: 0.4}},
		{"tube, both sides", &Cylinder{Diameter: 0.03, Length: 0.4, Ends: 1, Shell: Shell{Both, 0.001}}},
		{"ellipsoid", &Ellipsoid{0.3, 0.2, 0.1, false}},
		{"helmet, both sides", &Helmet{Length: 0.28, Width: 0.22, Height: 0.18, Below: 0.03, Shell: Shell{Both, 0.004}}},
		{"body", &Body{Length: 0.49, Upper: 0.28, Waist: 0.24, Lower: 0.37, Thickness: 0.1}},
		{"frame", frame},
		{"plate with openings", &Cut{&Plate{Length: 0.6, Width: 0.4}, []Piece{{&Disc{Diameter: 0.1}, 4}}}},
	} {
		b.Run(c.name, func(b *testing.B) {
			for b.Loop() {
				c.shape.Area()
			}
		})
	}
}

func BenchmarkCheck(b *testing.B) {
	s := &Helmet{Length: 0.28, Width: 0.22, Height: 0.18, Below: 0.03, Shell: Shell{Both, 0.004}}
	for b.Loop() {
		if err := s.Check(); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkFigures(b *testing.B) {
	s := &Frame{[]Tube{{Diameter: 0.0286, Length: 0.56}, {Diameter: 0.0318, To: 0.028, Length: 0.6}}, 4}
	for b.Loop() {
		Figures(s, "parts[0].shape.frame", trace.FromJob)
	}
}

func BenchmarkKinds(b *testing.B) {
	for b.Loop() {
		Kinds()
	}
}
