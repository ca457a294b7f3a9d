package ventilation

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	q "coatwright/quantity"
)

func anyVapour(t *rapid.T) Vapour {
	return Vapour{
		LEL:   q.Fraction(rapid.Float64Range(0.005, 0.15).Draw(t, "LEL")),
		Yield: q.VapourYield(rapid.Float64Range(100, 700).Draw(t, "yield")),
	}
}

func anySpace(t *rapid.T) Space {
	k := rapid.Float64Range(1, 10).Draw(t, "mixing")
	return Space{
		Volume: q.Volume(rapid.Float64Range(1, 500).Draw(t, "volume")),
		Flow:   q.AirFlow(rapid.Float64Range(0.001, 5).Draw(t, "flow")),
		Mixing: q.Range[q.Number]{Low: q.Number(k), High: q.Number(k * rapid.Float64Range(1, 3).Draw(t, "worse"))},
	}
}

// The law's form, by mass balance: vapour mixed into its air makes a quarter of
// the LEL, and little more.
func TestAirDilutesToQuarter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := anyVapour(t)
		solvent := q.Volume(rapid.Float64Range(1e-6, 1e-2).Draw(t, "solvent"))
		vapour := float64(v.Yield) * float64(solvent)
		share := vapour / (vapour + float64(v.Air(solvent)))
		near(t, "share of a quarter of the LEL", share/(0.25*float64(v.LEL)), 1/(1-0.75*float64(v.LEL)), 1e-9)
	})
}

// A booth that has just the flow it needs settles at a quarter of the LEL, and
// the rest of the way by 1/(1 - LEL), as the vapour's own room is not counted.
func TestFlowHoldsTheLevel(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := anyVapour(t)
		rate := q.Flow(rapid.Float64Range(1e-9, 1e-5).Draw(t, "rate"))
		mixing := q.Range[q.Number]{Low: 1, High: q.Number(rapid.Float64Range(1, 10).Draw(t, "mixing"))}
		need, err := Dilute(v, q.Range[q.Flow]{Low: rate, High: rate}, mixing)
		if err != nil {
			t.Fatal(err)
		}
		for flow, k := range map[q.AirFlow]q.Number{need.Flow.Low: mixing.Low, need.Flow.High: mixing.High} {
			s := Space{Volume: 20, Flow: flow, Mixing: q.Range[q.Number]{Low: k, High: k}}
			level, err := s.After(q.Time(math.Inf(1)), v.From(rate), 0)
			if err != nil {
				t.Fatal(err)
			}
			near(t, "share of the LEL", float64(level.OfLEL(v).High), 0.25/(1-float64(v.LEL)), 1e-9)
		}
	})
}

func TestBlendLiesBetween(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		solvents := make([]Solvent, rapid.IntRange(1, 4).Draw(t, "count"))
		low, high := math.Inf(1), 0.0
		var vapour, liquid float64
		for i := range solvents {
			solvents[i] = Solvent{"solvent", q.Volume(rapid.Float64Range(0.01, 10).Draw(t, "volume")), anyVapour(t)}
			low, high = min(low, float64(solvents[i].LEL)), max(high, float64(solvents[i].LEL))
			vapour += float64(solvents[i].Volume) * float64(solvents[i].Yield)
			liquid += float64(solvents[i].Volume)
		}
		mix, err := Blend(solvents)
		if err != nil {
			t.Fatal(err)
		}
		if l := float64(mix.LEL); l < low*(1-1e-12) || l > high*(1+1e-12) {
			t.Errorf("LEL %v outside %v to %v", l, low, high)
		}
		near(t, "vapour", float64(mix.Yield)*liquid, vapour, 1e-9)
		turned, err := Blend(append(solvents[1:len(solvents):len(solvents)], solvents[0]))
		if err != nil {
			t.Fatal(err)
		}
		near(t, "LEL in another order", float64(turned.LEL), float64(mix.LEL), 1e-12)
	})
}

// Le Chatelier by another way: at the LEL of the mix, the shares of each
// solvent's own LEL make 1.
func TestBlendFillsTheLimit(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := Solvent{"a", 1, anyVapour(t)}, Solvent{"b", q.Volume(rapid.Float64Range(0.1, 10).Draw(t, "volume")), anyVapour(t)}
		mix, err := Blend([]Solvent{a, b})
		if err != nil {
			t.Fatal(err)
		}
		va, vb := float64(a.Yield), float64(b.Yield)*float64(b.Volume)
		at := float64(mix.LEL) / (va + vb)
		near(t, "sum of shares", va*at/float64(a.LEL)+vb*at/float64(b.LEL), 1, 1e-9)
	})
}

func TestRateKeepsTheSolvent(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := Spraying{
			Paint:   q.Volume(rapid.Float64Range(0, 0.01).Draw(t, "paint")),
			Solvent: SolventShare(q.Fraction(rapid.Float64Range(0, 1).Draw(t, "solids")), q.Fraction(rapid.Float64Range(0, 1).Draw(t, "water"))),
			Spray:   q.Time(rapid.Float64Range(1, 3600).Draw(t, "spray")),
			Flash:   q.Time(rapid.Float64Range(0, 3600).Draw(t, "flash")),
		}
		rate, err := s.Rate()
		if err != nil {
			t.Fatal(err)
		}
		solvent := float64(s.Paint) * float64(s.Solvent)
		near(t, "spread out", float64(rate.Low)*float64(s.Spray+s.Flash), solvent, 1e-9)
		near(t, "at worst", float64(rate.High)*float64(s.Spray), solvent, 1e-9)
		if rate.Low > rate.High {
			t.Errorf("rate %v", rate)
		}
	})
}

// The closed form against the balance of the air in small steps.
func TestAfterAgreesWithSmallSteps(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anySpace(t)
		vapour := rapid.Float64Range(0, 1e-4).Draw(t, "vapour")
		start := rapid.Float64Range(0, 0.05).Draw(t, "start")
		changes := rapid.Float64Range(0.01, 5).Draw(t, "changes")
		end := changes * float64(s.Volume) / float64(s.Flow)
		got, err := s.After(q.Time(end), q.AirFlow(vapour), q.Fraction(start))
		if err != nil {
			t.Fatal(err)
		}
		const steps = 4000
		c, dt := start, end/steps
		for range steps {
			// The middle of the step, so that the error goes by its square.
			gain := func(c float64) float64 {
				return (vapour - float64(s.Flow)/float64(s.Mixing.High)*c) / float64(s.Volume)
			}
			c += gain(c+gain(c)*dt/2) * dt
		}
		if math.Abs(float64(got.Vapour.High)-c) > 1e-5*(c+1e-9) {
			t.Errorf("after %v s: %v, in small steps %v", end, got.Vapour.High, c)
		}
	})
}

// How long it takes is how long it took.
func TestClearUndoesAfter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anySpace(t)
		from := q.Fraction(rapid.Float64Range(0.001, 0.5).Draw(t, "from"))
		to := from * q.Fraction(rapid.Float64Range(0.001, 0.999).Draw(t, "left"))
		c, err := s.Clear(from, to)
		if err != nil {
			t.Fatal(err)
		}
		for at, k := range map[q.Time]q.Number{c.Time.Low: s.Mixing.Low, c.Time.High: s.Mixing.High} {
			alone := Space{s.Volume, s.Flow, q.Range[q.Number]{Low: k, High: k}}
			level, err := alone.After(at, 0, from)
			if err != nil {
				t.Fatal(err)
			}
			near(t, "level", float64(level.Vapour.Low), float64(to), 1e-9)
		}
		if c.Time.Low > c.Time.High {
			t.Errorf("time %v", c.Time)
		}
	})
}

func TestWorseMixedIsNoBetter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anySpace(t)
		level, err := s.After(q.Time(rapid.Float64Range(0, 1e5).Draw(t, "time")), q.AirFlow(rapid.Float64Range(0, 1e-3).Draw(t, "vapour")), q.Fraction(rapid.Float64Range(0, 0.1).Draw(t, "start")))
		if err != nil {
			t.Fatal(err)
		}
		if level.Vapour.Low > level.Vapour.High*(1+1e-12) || level.Vapour.High > 1 {
			t.Errorf("level %v", level.Vapour)
		}
	})
}

func BenchmarkBlend(b *testing.B) {
	solvents := []Solvent{{"a", 3, Vapour{0.012, 200}}, {"b", 1, Vapour{0.026, 329}}, {"c", 1, Vapour{0.017, 185}}}
	for b.Loop() {
		if _, err := Blend(solvents); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkYield(b *testing.B) {
	for b.Loop() {
		YieldOf(867, 0.09214)
	}
}

func BenchmarkDilute(b *testing.B) {
	rate := q.Range[q.Flow]{Low: 8e-8, High: 24e-8}
	for b.Loop() {
		if _, err := Dilute(example, rate, Room); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkRate(b *testing.B) {
	s := Spraying{Paint: 120e-6, Solvent: 0.48, Spray: 240, Flash: 480}
	for b.Loop() {
		if _, err := s.Rate(); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkThrough(b *testing.B) {
	v := Velocity{Design: 0.508, Range: q.Range[q.Speed]{Low: 0.381, High: 0.635}}
	for b.Loop() {
		if _, err := v.Through(7.4); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkClear(b *testing.B) {
	s := Space{Volume: 40, Flow: 0.5, Mixing: Room}
	for b.Loop() {
		if _, err := s.Clear(0.0035, 0.0001); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkAfter(b *testing.B) {
	s := Space{Volume: 40, Flow: 0.5, Mixing: Room}
	for b.Loop() {
		if _, err := s.After(600, 5e-5, 0); err != nil {
			b.Fatal(err)
		}
	}
}
