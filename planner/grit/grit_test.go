package grit

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"

	q "coatwright/quantity"
)

// Published: sizes.com/tools/sandpaper.htm.
func TestSize(t *testing.T) {
	got, err := Size(80)
	if err != nil || got != 201/1e6 {
		t.Errorf("Size(80) = %v, %v, want 201 um", got, err)
	}
}

func TestNumberedRefuses(t *testing.T) {
	for _, c := range []struct {
		system System
		number q.Grit
		want   string
	}{
		{P, 650, `found "P650", expected a grade of the P scale, P12 to P3000; did you mean "P600"?`},
		{P, 350, `found "P350", expected a grade of the P scale, P12 to P3000; did you mean "P360"?`},
		{P, 90000, `found "P90000", expected a grade of the P scale, P12 to P3000; did you mean "P3000"?`},
		{P, 0, `found "P0", expected a grade of the P scale, P12 to P3000`},
		{P, -80, `found "P-80", expected a grade of the P scale, P12 to P3000`},
		{P, q.Grit(math.NaN()), `found "PNaN", expected a grade of the P scale, P12 to P3000`},
		{CAMI, 3000, `found "CAMI 3000", expected a grade of the CAMI scale, CAMI 16 to CAMI 1000; did you mean "CAMI 1000"?`},
	} {
		_, err := Numbered(c.system, c.number)
		if err == nil || err.Error() != c.want {
			t.Errorf("Numbered(%s, %v) refuses with\n\t%v\nwant\n\t%s", c.system, c.number, err, c.want)
		}
	}
}

func TestNearest(t *testing.T) {
	for _, c := range []struct {
		um     float64
		system System
		want   string
	}{
		{26, P, "P600"}, {26, CAMI, "CAMI 360"}, {5, P, "P3000"}, {2500, P, "P12"}, {30, P, "P500"},
	} {
		got, err := Nearest(q.Length(c.um/1e6), c.system)
		if err != nil || got.Name() != c.want {
			t.Errorf("nearest to %v um is %s, %v, want %s", c.um, got.Name(), err, c.want)
		}
	}
	for _, size := range []q.Length{0, 3e-6, 3e-3, -1, q.Length(math.NaN()), q.Length(math.Inf(1))} {
		var e *q.Error
		if got, err := Nearest(size, P); !errors.As(err, &e) {
			t.Errorf("nearest to %v m is %s, %v", size, got.Name(), err)
		}
	}
	_, err := Nearest(3e-6, P)
	const want = `found "3 um", expected a grain of 6.5 to 1815 um, as the P scale has`
	if err == nil || err.Error() != want {
		t.Errorf("error is\n\t%v\nwant\n\t%s", err, want)
	}
}

func TestEnds(t *testing.T) {
	if g, ok := grade(t, "P12").Coarser(); ok {
		t.Errorf("%s is coarser than P12", g.Name())
	}
	if g, ok := grade(t, "P3000").Finer(); ok {
		t.Errorf("%s is finer than P3000", g.Name())
	}
	if g, ok := (Grade{System: P, Number: 601}).Finer(); ok {
		t.Errorf("%s is finer than no grade", g.Name())
	}
	if g, ok := grade(t, "P320").Finer(); !ok || g.Name() != "P360" {
		t.Errorf("next after P320 is %s", g.Name())
	}
}

// The finest P grades have no neighbour on the other scale.
func TestNoEquivalent(t *testing.T) {
	if got, _, err := grade(t, "P3000").Equivalent(CAMI); err == nil {
		t.Errorf("P3000 is near to %s", got.Name())
	}
}

func TestGradesIsACopy(t *testing.T) {
	Grades(P)[0].Size = 0
	if tables[P][0].Size == 0 {
		t.Error("who asks for the grades can change them")
	}
}

var anyGrade = rapid.Custom(func(t *rapid.T) Grade {
	return rapid.SampledFrom(tables[rapid.SampledFrom([]System{P, CAMI}).Draw(t, "system")]).Draw(t, "grade")
})

func TestHigherNumberIsFiner(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := anyGrade.Draw(t, "grade")
		if finer, ok := g.Finer(); ok {
			if finer.Number <= g.Number || finer.Size >= g.Size {
				t.Errorf("%v is finer than %v", finer, g)
			}
			if back, ok := finer.Coarser(); !ok || back != g {
				t.Errorf("coarser than %s is %s, not %s", finer.Name(), back.Name(), g.Name())
			}
		}
		if own, err := Nearest(g.Size, g.System); err != nil || own != g {
			t.Errorf("nearest to the grain of %s is %s, %v", g.Name(), own.Name(), err)
		}
	})
}

func BenchmarkNearest(b *testing.B) {
	for b.Loop() {
		if _, err := Nearest(26e-6, P); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkEquivalent(b *testing.B) {
	g := grade(b, "P800")
	for b.Loop() {
		if _, _, err := g.Equivalent(CAMI); err != nil {
			b.Fatal(err)
		}
	}
}
