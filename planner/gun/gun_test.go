package gun

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	q "coatwright/quantity"
)

const (
	um    = 1e-6      // m
	ml    = 1e-6      // m3
	mlMin = 1e-6 / 60 // m3/s
	mm    = 1e-3      // m
	mil   = 25.4e-6   // m
	ft2   = 0.3048 * 0.3048
	usGal = 231 * 0.0254 * 0.0254 * 0.0254 // m3
)

// tester is what *testing.T and *rapid.T have in common.
type tester interface {
	Helper()
	Errorf(format string, args ...any)
}

// near fails unless got is within a share tolerance of want.
func near(t tester, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance*math.Abs(want)) {
		t.Errorf("%s = %.12g, want %.12g within %g %%", what, got, want, 100*tolerance)
	}
}

// refuses fails unless err is an error that says so.
func refuses(t *testing.T, err error, says string) {
	t.Helper()
	if err == nil || err.Error() != says {
		t.Errorf("error is\n\t%v\nwant\n\t%s", err, says)
	}
}

// anyOf draws a number from low to high.
func anyOf[Q q.Quantity](t *rapid.T, label string, low, high float64) Q {
	return Q(rapid.Float64Range(low, high).Draw(t, label))
}

// 150 mL/min in a fan of 20 cm.
var half = Setting{Flow: 150 * mlMin, Fan: 0.2, Overlap: 0.5, Speed: 0.3, Transfer: 0.6}

func anySetting(t *rapid.T) Setting {
	return Setting{
		Flow: anyOf[q.Flow](t, "flow", 2*mlMin, 400*mlMin), Fan: anyOf[q.Length](t, "fan", 10*mm, 400*mm),
		Overlap: anyOf[q.Fraction](t, "overlap", 0, 0.9), Speed: anyOf[q.Speed](t, "speed", 0.02, 1.5),
		Transfer: anyOf[q.Fraction](t, "lands", 0.05, 1),
	}
}

// Worked by hand: 2.5 mL/s, of which 1.5 land, over 0.3 m/s x 0.2 m is 25 um in a
// pass, and 50 um with an overlap of a half.
func TestWet(t *testing.T) {
	near(t, "pass", half.Pass().Micrometres(), 25, 1e-12)
	near(t, "coat", half.Wet().Micrometres(), 50, 1e-12)
	near(t, "speed", float64(half.SpeedFor(50*um)), 0.3, 1e-12)
	near(t, "speed for half the film", float64(half.SpeedFor(25*um)), 0.6, 1e-12)
	near(t, "flow for half the film", float64(half.FlowFor(25*um)), 75*mlMin, 1e-12)

	// An airbrush, worked by hand: 6 mL/min, half of which land, 0.15 m/s, a cone
	// of 40 mm that overlaps by three quarters: 0.05 mL/s over 0.15 x 0.01 m2/s.
	cone := Setting{Flow: 6 * mlMin, Fan: 40 * mm, Overlap: 0.75, Speed: 0.15, Transfer: 0.5}
	near(t, "airbrush", cone.Wet().Micrometres(), 100.0/3, 1e-12)
}

// Published: g-wonlinetextbooks.com, auto-collision-repair-refinishing-2022/712:
// with 50 % each portion is covered by two strokes; with 75 % each stroke covers
// three quarters of the one before, so that four lie over each spot.
func TestLayers(t *testing.T) {
	for overlap, want := range map[q.Fraction]float64{0: 1, 0.5: 2, 0.75: 4} {
		near(t, "layers", float64(Setting{Fan: 0.2, Overlap: overlap}.Layers()), want, 1e-12)
	}
}

// Published: paintcenter.org/rj/feb07f.cfm, coverage in ft2 = 1604 x gallons x
// solids by volume x transfer efficiency / dry film in mils. What a gallon covers
// is how far the hand comes while it sprays it, times the pitch.
func TestWetAgainstCoverage(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, solids := anySetting(t), rapid.Float64Range(0.1, 1).Draw(t, "solids")
		covers := float64(s.Speed) * float64(TriggerTime(usGal, s.Flow)) * float64(s.Pitch())
		dry := float64(s.Wet()) * solids
		near(t, "ft2 a gallon", covers/ft2, 1604.17*solids*float64(s.Transfer)/(dry/mil), 1e-5)
	})
}

func TestSettingProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anySetting(t)
		wet := anyOf[q.Length](t, "wet", 1*um, 500*um)
		at := s
		at.Speed = s.SpeedFor(wet)
		near(t, "film at the speed for it", float64(at.Wet()), float64(wet), 1e-12)
		at = s
		at.Flow = s.FlowFor(wet)
		near(t, "film at the flow for it", float64(at.Wet()), float64(wet), 1e-12)

		more := s
		more.Overlap = anyOf[q.Fraction](t, "more overlap", float64(s.Overlap), 0.95)
		if more.Wet() < s.Wet() {
			t.Errorf("more overlap lays %v, less laid %v", more.Wet(), s.Wet())
		}
		faster := s
		faster.Speed *= anyOf[q.Speed](t, "faster", 1, 5)
		if faster.Wet() > s.Wet() {
			t.Errorf("a faster hand lays %v, a slower one %v", faster.Wet(), s.Wet())
		}
	})
}

func BenchmarkWet(b *testing.B) {
	for b.Loop() {
		half.Wet()
	}
}
