package gun

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	q "coatwright/quantity"
)

func to[Q q.Quantity](low, high Q) q.Range[Q] { return q.Range[Q]{Low: low, High: high} }

// A gun and a hand: common practice, no published source. In the middle, with 60 %
// landing, 96 mL/min go over 0.1 m times the speed.
var sprayGun = Gun{
	Flow: to[q.Flow](120*mlMin, 200*mlMin), Fan: to[q.Length](0.2, 0.2),
	Overlap: to[q.Fraction](0.5, 0.5), Speed: to[q.Speed](0.2, 0.5),
}

// Worked by hand: 96 mL/min are 1.6 mL/s, so that 16 um m/s is film x speed.
func TestFor(t *testing.T) {
	for _, c := range []struct {
		wet     q.Length
		speed   float64 // m/s
		verdict Verdict
		atFlow  float64 // mL/min
		atSpeed float64 // m/s
		lays    float64 // um
		coats   int
		say     string
	}{
		{40 * um, 0.4, Fits, 160, 0.4, 40, 1,
			"40 µm wet takes a hand of 0.4 m/s, which a hand can do (0.2 to 0.5 m/s)."},
		{25 * um, 0.64, LessFlow, 125, 0.5, 25, 1,
			"25 µm wet takes a hand of 0.64 m/s, faster than a hand goes (0.2 to 0.5 m/s): turn the needle in to 125 mL/min and move at 0.5 m/s."},
		{20 * um, 0.8, TooWet, 120, 0.5, 24, 1,
			"20 µm wet takes a hand of 0.8 m/s, faster than a hand goes (0.2 to 0.5 m/s): even 120 mL/min at 0.5 m/s lay 24 µm. Take a wider fan, less overlap or a smaller applicator."},
		{90 * um, 0.16 / 0.9, MoreFlow, 180, 0.2, 90, 1,
			"90 µm wet takes a hand of 0.178 m/s, slower than a hand goes (0.2 to 0.5 m/s): turn the needle out to 180 mL/min and move at 0.2 m/s."},
		{250 * um, 0.064, TooDry, 200, 0.2, 100, 3,
			"250 µm wet takes a hand of 0.064 m/s, slower than a hand goes (0.2 to 0.5 m/s): even 200 mL/min at 0.2 m/s lay 100 µm. Lay it in 3 coats, or take a larger applicator."},
	} {
		t.Run(string(c.verdict), func(t *testing.T) {
			a, err := sprayGun.For(c.wet, 0.6)
			if err != nil {
				t.Fatal(err)
			}
			if a.Verdict != c.verdict || a.Coats != c.coats {
				t.Errorf("%s in %d coats, want %s in %d", a.Verdict, a.Coats, c.verdict, c.coats)
			}
			near(t, "speed", float64(a.Speed), c.speed, 1e-12)
			near(t, "flow to set", float64(a.Setting.Flow), c.atFlow*mlMin, 1e-12)
			near(t, "speed to keep", float64(a.Setting.Speed), c.atSpeed, 1e-12)
			near(t, "film", a.Setting.Wet().Micrometres(), c.lays, 1e-12)
			if got := a.Say(q.Metric); got != c.say {
				t.Errorf("says\n\t%s\nwant\n\t%s", got, c.say)
			}
		})
	}
}

func TestForRefuses(t *testing.T) {
	_, err := sprayGun.For(0, 0.6)
	refuses(t, err, "wanted wet film: found 0 um; expected above 0 um")
	_, err = sprayGun.For(1e6, 0.6)
	refuses(t, err, "wanted wet film: found 1e+12 um; expected one that somebody can lay")
	_, err = sprayGun.For(40*um, 0)
	refuses(t, err, "share that lands: found 0 %; expected above 0 and up to 100 %")
	_, err = Gun{Flow: sprayGun.Flow, Fan: to[q.Length](0.2, math.MaxFloat64), Overlap: to[q.Fraction](0.5, 1)}.For(40*um, 0.6)
	refuses(t, err, "speed of the hand: found 0 m/s; expected above 0 m/s")
	worse := sprayGun
	worse.Overlap.High = 1
	_, err = worse.For(40*um, 0.6)
	refuses(t, err, "overlap: found 100 %; expected 0 to 99 %")
	turned := sprayGun
	turned.Fan = to[q.Length](0.3, 0.2)
	_, err = turned.For(40*um, 0.6)
	refuses(t, err, "ranges of the applicator: found one from high to low; expected each from low to high")
}

// The ends, worked by hand: 2 mL/s of which half lands, 0.5 m/s x 0.1 m; and
// 10/3 mL/s of which 0.6 land, 0.2 m/s x 0.1 m.
func TestGunWet(t *testing.T) {
	got := sprayGun.Wet(to[q.Fraction](0.5, 0.6))
	near(t, "thinnest", got.Low.Micrometres(), 20, 1e-12)
	near(t, "thickest", got.High.Micrometres(), 100, 1e-12)
}

func anyRange[Q q.Quantity](t *rapid.T, label string, low, high float64) q.Range[Q] {
	from := anyOf[Q](t, label+" at least", low, high)
	return to(from, anyOf[Q](t, label+" at most", float64(from), high))
}

func TestForProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := Gun{
			anyRange[q.Flow](t, "flow", 2*mlMin, 400*mlMin), anyRange[q.Length](t, "fan", 10*mm, 400*mm),
			anyRange[q.Fraction](t, "overlap", 0, 0.9), anyRange[q.Speed](t, "speed", 0.02, 1.5),
		}
		transfer, wet := anyOf[q.Fraction](t, "lands", 0.05, 1), anyOf[q.Length](t, "wet", 1*um, 500*um)
		a, err := g.For(wet, transfer)
		if err != nil {
			t.Fatal(err)
		}
		s, lays := a.Setting, float64(a.Setting.Wet())
		if !g.Speed.Holds(s.Speed) || !g.Flow.Holds(s.Flow) {
			t.Errorf("%+v is beyond %+v", s, g)
		}
		can := g.Wet(to(transfer, transfer))
		if lays < float64(can.Low)*(1-1e-9) || lays > float64(can.High)*(1+1e-9) {
			t.Errorf("lays %v, beyond all that it can, %v", lays, can)
		}
		switch a.Verdict {
		case TooWet:
			if !(lays > float64(wet)) || a.Coats != 1 {
				t.Errorf("too wet with %v for %v in %d coats", lays, wet, a.Coats)
			}
		case TooDry:
			if n := float64(a.Coats); !(lays < float64(wet)) || a.Coats < 2 || lays*n < float64(wet)*(1-1e-8) || lays*(n-1) >= float64(wet) {
				t.Errorf("too dry with %v for %v in %d coats", lays, wet, a.Coats)
			}
		default:
			near(t, "film", lays, float64(wet), 1e-9)
		}
		if (a.Verdict == Fits) != g.Speed.Holds(a.Speed) {
			t.Errorf("%s with a hand of %v of %v", a.Verdict, a.Speed, g.Speed)
		}
	})
}

func BenchmarkFor(b *testing.B) {
	for b.Loop() {
		if _, err := sprayGun.For(250*um, 0.6); err != nil {
			b.Fatal(err)
		}
	}
}
