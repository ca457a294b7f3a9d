package gun

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	q "coatwright/quantity"
)

// Worked by hand. With a half, the middle of the first pass is at one edge and
// that of the last at the other (g-wonlinetextbooks.com,
// auto-collision-repair-refinishing-2022/715), so that 1 m in steps of 0.1 m
// takes 11. With three quarters the first pass has only a quarter on the part.
func TestPasses(t *testing.T) {
	for _, c := range []struct {
		overlap q.Fraction
		across  q.Length
		want    int
	}{
		{0, 1, 5}, {0, 1.01, 6}, {0, 0.01, 1}, {0.5, 1, 11}, {0.5, 1.01, 12}, {0.5, 0.1, 2}, {0.5, 0.01, 2},
		{0.75, 1, 23}, {0.75, 0.2, 7},
		{0.5, 3 * (0.1 + 0.2), 10}, // a sliver over nine steps
	} {
		s := half
		s.Overlap = c.overlap
		if got := s.Passes(c.across); got != c.want {
			t.Errorf("passes over %v m with %v %% = %d, want %d", c.across, c.overlap.Percent(), got, c.want)
		}
	}
}

// Each spot of the face lies under as many passes as Layers says, and with one
// pass less it would not. Overlaps are those with a whole number of layers.
func TestPassesCover(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := half
		layers := rapid.IntRange(1, 6).Draw(t, "layers")
		s.Overlap = 1 - 1/q.Fraction(layers)
		across := anyOf[q.Length](t, "across", 0.001, 3)
		n := s.Passes(across)
		// Passes in the middle of the face; a spot at its edge.
		covered := func(n int) int {
			first := across/2 - q.Length(n-1)/2*s.Pitch()
			on := 0
			for i := range n {
				if middle := first + q.Length(i)*s.Pitch(); middle-s.Fan/2 <= 1e-9 && middle+s.Fan/2 > 1e-9 {
					on++
				}
			}
			return on
		}
		if got := covered(n); got != layers {
			t.Errorf("%d passes over %v m lie %d deep at the edge, want %d", n, across, got, layers)
		}
		if n > layers {
			if got := covered(n - 1); got >= layers {
				t.Errorf("%d passes over %v m do as well as %d", n-1, across, n)
			}
		}
	})
}

// Worked by hand. A face of 0.6 x 1 m, 11 passes of 2 s with the trigger held for
// a tenth more at each end: 26.4 s, of which 0.6/(0.3 x 0.1) = 20 s over the part.
// At 2.5 mL/s that is 66 mL, of which 30 mL land: 50 um on 0.6 m2.
func TestCoat(t *testing.T) {
	c, err := half.Coat(Face{Along: 0.6, Across: 1}, Stroke{Overrun: 0.1, Turn: 0.5})
	if err != nil {
		t.Fatal(err)
	}
	if c.Passes != 11 {
		t.Errorf("passes = %d, want 11", c.Passes)
	}
	near(t, "wet", c.Wet.Micrometres(), 50, 1e-12)
	near(t, "over the part", float64(c.Over), 20, 1e-12)
	near(t, "trigger", float64(c.Trigger), 26.4, 1e-12)
	near(t, "turns", float64(c.Turns), 5, 1e-12)
	near(t, "time", float64(c.Time()), 31.4, 1e-12)
	near(t, "sprayed", c.Sprayed.Millilitres(), 66, 1e-12)
	near(t, "lands", c.Lands.Millilitres(), 30, 1e-12)
	near(t, "lands of all", float64(c.Overall()), 30.0/66, 1e-12)
	near(t, "duty", float64(c.Duty()), 26.4/31.4, 1e-12)
	near(t, "trigger, by what is sprayed", float64(TriggerTime(c.Sprayed, half.Flow)), 26.4, 1e-12)
	// 300 L/min of free air: 5 L/s.
	air := c.Air(0.3 / 60)
	near(t, "air, at least", air.Low.Litres(), 132, 1e-12)
	near(t, "air, at most", air.High.Litres(), 157, 1e-12)
	if f := FaceOf(0.6, 0.6); f != (Face{0.6, 1}) {
		t.Errorf("FaceOf = %v", f)
	}
}

// Worked by hand. Of a bar 3 cm wide and a fan of 20 cm in two passes, 0.15 of
// the spray is over the bar; so no more can have landed, and 9 % in all is 60 %
// of that.
func TestLanding(t *testing.T) {
	bar := Face{Along: 1, Across: 0.03}
	got, err := half.Landing(0.09, bar, Stroke{})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "lands", float64(got), 0.6, 1e-12)
	_, err = half.Landing(0.09, Face{}, Stroke{})
	refuses(t, err, "face: found 0 by 0 m; expected both above 0 m")
	_, err = half.Landing(0.35, bar, Stroke{})
	refuses(t, err, "share that lands in all: found 35 %; expected up to 15 %, as no more is sprayed over a face 30 mm wide with a fan of 200 mm: a narrower fan or a shorter overrun is meant")
}

func TestCoatRefuses(t *testing.T) {
	face, stroke := Face{0.6, 1}, Stroke{}
	with := func(spoil func(s *Setting)) Setting {
		s := half
		spoil(&s)
		return s
	}
	for _, c := range []struct {
		setting Setting
		face    Face
		stroke  Stroke
		says    string
	}{
		{with(func(s *Setting) { s.Flow = 0 }), face, stroke, "flow of paint: found 0 mL/min; expected above 0 mL/min"},
		{with(func(s *Setting) { s.Fan = -0.2 }), face, stroke, "width of the fan: found -200 mm; expected above 0 mm"},
		{with(func(s *Setting) { s.Overlap = 1 }), face, stroke, "overlap: found 100 %; expected 0 to 99 %"},
		{with(func(s *Setting) { s.Speed = q.Speed(math.Inf(1)) }), face, stroke, "speed of the hand: found +Inf m/s; expected above 0 m/s"},
		{with(func(s *Setting) { s.Transfer = q.Fraction(math.NaN()) }), face, stroke, "share that lands: found NaN %; expected above 0 and up to 100 %"},
		{half, Face{0.6, 0}, stroke, "face: found 0.6 by 0 m; expected both above 0 m"},
		{half, Face{0.6, 1e12}, stroke, "face: found 1e+12 m across; expected as many passes as somebody can make"},
		{half, face, Stroke{Overrun: -1}, "overrun at each end of a pass: found -100 %; expected 0 to 1000 % of its length"},
		{half, face, Stroke{Turn: -1}, "turn between passes: found -1 s; expected 0 s or more"},
	} {
		_, err := c.setting.Coat(c.face, c.stroke)
		refuses(t, err, c.says)
	}
}

func TestCoatBalances(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anySetting(t)
		f := Face{anyOf[q.Length](t, "along", 0.01, 3), anyOf[q.Length](t, "across", 0.01, 3)}
		k := Stroke{anyOf[q.Fraction](t, "overrun", 0, 1), anyOf[q.Time](t, "turn", 0, 3)}
		c, err := s.Coat(f, k)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "flow x time over the part x share", float64(s.Flow)*float64(c.Over)*float64(s.Transfer), float64(c.Wet)*float64(f.Area()), 1e-9)
		near(t, "what lands", float64(c.Lands), float64(c.Wet)*float64(f.Area()), 1e-9)
		near(t, "sprayed, by the share of all", float64(c.Sprayed)*float64(c.Overall()), float64(c.Lands), 1e-9)
		if c.Trigger < c.Over*(1-1e-9) || c.Overall() > s.Transfer*(1+1e-9) {
			t.Errorf("%+v: over the part for longer than the trigger is pulled", c)
		}
		landing, err := s.Landing(c.Overall(), f, k)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "back from the share of all", float64(landing), float64(s.Transfer), 1e-9)

		better := s
		better.Transfer = anyOf[q.Fraction](t, "better", float64(s.Transfer), 1)
		better.Speed = better.SpeedFor(s.Wet())
		if d, err := better.Coat(f, k); err != nil || d.Sprayed > c.Sprayed*(1+1e-9) {
			t.Errorf("more lands and %v is sprayed for the film, was %v (%v)", d.Sprayed, c.Sprayed, err)
		}
	})
}

func BenchmarkCoat(b *testing.B) {
	for b.Loop() {
		if _, err := half.Coat(Face{0.6, 1}, Stroke{0.1, 0.5}); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkLanding(b *testing.B) {
	for b.Loop() {
		if _, err := half.Landing(0.09, Face{1, 0.03}, Stroke{}); err != nil {
			b.Fatal(err)
		}
	}
}
