package film

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	q "coatwright/quantity"
)

func TestCoats(t *testing.T) {
	for _, c := range []struct {
		wanted, each q.Length
		want         int
	}{
		{0, 25 * um, 0}, {1 * um, 25 * um, 1}, {25 * um, 25 * um, 1}, {26 * um, 25 * um, 2}, {75 * um, 25 * um, 3},
		{3 * (0.1 + 0.2) * um, 0.3 * um, 3}, // a sliver over three
		{10 * um, q.Length(math.Inf(1)), 0},
	} {
		got, err := Coats(c.wanted, c.each)
		if math.IsInf(float64(c.each), 1) {
			refuses(t, err, "dry film of one coat: found +Inf um; expected above 0 um")
		} else if err != nil || got != c.want {
			t.Errorf("Coats(%v, %v) = %d, %v, want %d", c.wanted, c.each, got, err, c.want)
		}
	}
	_, err := Coats(10*um, 0)
	refuses(t, err, "dry film of one coat: found 0 um; expected above 0 um")
	_, err = Coats(-10*um, 5*um)
	refuses(t, err, "wanted dry film: found -10 um; expected 0 um or more")
	_, err = Coats(1, 1e-15)
	refuses(t, err, "coats of 1e-09 um for 1e+06 um: found 1e+15; expected as many as somebody can lay")
}

// Worked by hand. 25 um dry at 46 % is 54.3 um wet, under a sag limit of 90 um,
// which leaves 41.4 um dry.
func TestCoat(t *testing.T) {
	c := Coat{Build: 25 * um, Sag: 90 * um, Solids: 0.46}
	near(t, "wet", c.Wet().Micrometres(), 54.35, 1e-4)
	near(t, "most", c.Most().Micrometres(), 41.4, 1e-12)
	if c.Runs() {
		t.Error("a coat under its sag limit runs")
	}
	got, err := c.For(60 * um)
	if err != nil {
		t.Fatal(err)
	}
	if got.Coats != 3 || got.Held {
		t.Errorf("60 um in %+v, want 3 full coats", got)
	}
	near(t, "each", got.Dry.Micrometres(), 20, 1e-12)
	near(t, "each, wet", got.Wet.Micrometres(), 20/0.46, 1e-12)
}

// Worked by hand: 50 um dry at 46 % is 109 um wet and runs above 90 um, so that
// 100 um take three coats and not two.
func TestCoatThatRuns(t *testing.T) {
	c := Coat{Build: 50 * um, Sag: 90 * um, Solids: 0.46}
	got, err := c.For(100 * um)
	if err != nil {
		t.Fatal(err)
	}
	if !c.Runs() || got.Coats != 3 || !got.Held || got.Wet > c.Sag {
		t.Errorf("100 um in %+v, want 3 coats held under the sag limit", got)
	}
	// A coat just at its limit does not run.
	if at := (Coat{Build: DryFilm(90*um, 0.46), Sag: 90 * um, Solids: 0.46}); at.Runs() {
		t.Error("a coat at its sag limit runs")
	}
	// Nobody knows the limit.
	if free := (Coat{Build: 50 * um, Solids: 0.46}); free.Runs() || !math.IsInf(float64(free.Most()), 1) {
		t.Error("a coat without a sag limit has one")
	}
}

func TestCoatRefuses(t *testing.T) {
	_, err := Coat{Build: 25 * um}.For(50 * um)
	refuses(t, err, "solids by volume of the mix: found 0 %; expected above 0 and up to 100 %")
	_, err = Coat{Build: 25 * um, Solids: 0.4, Sag: -1 * um}.For(50 * um)
	refuses(t, err, "sag limit: found -1 um wet; expected above 0 um, or 0 where nobody knows")
	_, err = Coat{Solids: 0.4}.For(50 * um)
	refuses(t, err, "dry film of one coat: found 0 um; expected above 0 um")
}

func TestCoatProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := Coat{anyOf[q.Length](t, "build", 1*um, 100*um), anyOf[q.Length](t, "sag", 10*um, 300*um), anyOf[q.Fraction](t, "solids", 0.05, 1)}
		wanted := anyOf[q.Length](t, "wanted", 0, 500*um)
		got, err := c.For(wanted)
		if err != nil {
			t.Fatal(err)
		}
		if got.Dry > c.Build*(1+1e-8) || got.Wet > c.Sag*(1+1e-8) {
			t.Errorf("%+v is laid in %+v", c, got)
		}
		near(t, "the coats together", float64(got.Dry)*float64(got.Coats), float64(wanted), 1e-9)
		if got.Coats > 1 && wanted <= q.Length(got.Coats-1)*min(c.Build, c.Most()) {
			t.Errorf("%+v takes %d coats for %v, one too many", c, got.Coats, wanted)
		}
		more, err := c.For(wanted + anyOf[q.Length](t, "more", 0, 500*um))
		if err != nil || more.Coats < got.Coats {
			t.Errorf("more film takes %d coats, less took %d (%v)", more.Coats, got.Coats, err)
		}
		thicker := c
		thicker.Build += anyOf[q.Length](t, "thicker", 0, 100*um)
		if fewer, err := thicker.For(wanted); err != nil || fewer.Coats > got.Coats {
			t.Errorf("thicker coats take %d, thinner took %d (%v)", fewer.Coats, got.Coats, err)
		}
	})
}

func BenchmarkCoatFor(b *testing.B) {
	c := Coat{Build: 50 * um, Sag: 90 * um, Solids: 0.46}
	for b.Loop() {
		if _, err := c.For(100 * um); err != nil {
			b.Fatal(err)
		}
	}
}
