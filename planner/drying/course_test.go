package drying

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"coatwright/planner/air"
	q "coatwright/quantity"
)

func steady(a air.Air) Course { return func(q.Time) air.Air { return a } }

func TestSteadyCourse(t *testing.T) {
	for _, p := range append(paces, "standing") {
		s := State{In: 7200, By: p, Film: 1.3}
		a := at(17, 60, 0.4)
		near(t, string(p)+", done", s.Done(steady(a), 3600), float64(3600/s.Time(a)), 1e-9)
		near(t, string(p)+", reached", float64(s.Reached(steady(a), 86400)), float64(s.Time(a)), 1e-9)
	}
}

// When 1/T goes in a straight line, the integral of exp(-E/(R T)) is that of an
// exponential, and known in closed form.
func TestWarmingInClosedForm(t *testing.T) {
	const lasts = 20 * 3600
	cold, warm := 1/float64(q.Celsius(8)), 1/float64(q.Celsius(31))
	ramp := func(after q.Time) air.Air {
		return air.Air{Temperature: q.Temperature(1 / (cold + (warm-cold)*float64(after)/lasts))}
	}
	for _, energy := range []float64{29e3, 50e3, 77e3} {
		s := State{In: 3600, By: Cure, Energy: q.MolarEnergy(energy)}
		k := energy / gasConstant
		reference := 1 / float64(Reference().Temperature)
		rise := k * (cold - warm)
		want := lasts / 3600.0 * math.Exp(k*(reference-cold)) * (math.Exp(rise) - 1) / rise
		near(t, "share done", s.Done(ramp, lasts), want, 1e-8)
	}
}

// A week of days and nights against a sum over every second.
func TestWeekAgainstFineSum(t *testing.T) {
	const week = 7 * 86400
	for _, p := range paces {
		s := State{In: 30 * 86400, By: p}
		sum := 0.0
		for i := range week / 60 {
			sum += 60 / float64(s.Time(day(q.Time(i)*60+30)))
		}
		near(t, string(p), s.Done(day, week), sum, 1e-6)
	}
}

// A day that swings cures further than one of its mean warmth: warm hours gain
// more than cold ones lose.
func TestSwingCuresFurther(t *testing.T) {
	s := State{In: 86400, By: Cure}
	swings, mean := s.Done(day, 86400), s.Done(steady(at(15, 60, 0.2)), 86400)
	if swings <= mean {
		t.Errorf("%v with swings, %v at the mean", swings, mean)
	}
}

func TestCourseEnds(t *testing.T) {
	full := steady(at(20, 100, 1))
	for _, c := range []struct {
		name   string
		s      State
		course Course
		limit  q.Time
		want   q.Time
	}{
		{"nothing to wait for", State{By: Evaporation}, full, 0, 0},
		{"full air", State{In: 600, By: Evaporation}, full, 86400, q.Time(math.Inf(1))},
		{"full air and no limit", State{In: 600, By: Evaporation}, full, q.Time(math.Inf(1)), q.Time(math.Inf(1))},
		{"after the limit", State{In: 7200, By: Cure}, steady(Reference()), 3600, q.Time(math.Inf(1))},
		{"at the limit", State{In: 7200, By: "standing"}, steady(Reference()), 7200, 7200},
	} {
		if got := c.s.Reached(c.course, c.limit); got != c.want && math.Abs(float64(got-c.want)) > 1e-6 {
			t.Errorf("%s: reached at %v, want %v", c.name, got, c.want)
		}
	}
	if got := (State{}).Done(full, 0); got != 1 {
		t.Errorf("of nothing to wait for %v is done, want 1", got)
	}
}

// What is reached is done to just 1, more is done as time goes on, and shares of
// two stretches add up.
func TestCourseProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		base := rapid.Float64Range(8, 28).Draw(t, "base")
		damp := rapid.Float64Range(20, 70).Draw(t, "damp")
		course := func(after q.Time) air.Air {
			swing := math.Sin(2 * math.Pi * float64(after) / 86400)
			return at(base+6*swing, damp-10*swing, 0.2)
		}
		s := State{In: q.Time(rapid.Float64Range(60, 5*86400).Draw(t, "in")), By: rapid.SampledFrom(paces).Draw(t, "pace")}
		const limit = 10 * 86400
		reached := s.Reached(course, limit)
		if d := s.Done(course, min(reached, limit)); d > 1+1e-6 || d < 1-1e-6 && reached < limit {
			t.Fatalf("at %v, %v is done", reached, d)
		}
		first := interval * q.Time(rapid.IntRange(0, 200).Draw(t, "first"))
		second := q.Time(rapid.Float64Range(0, 86400).Draw(t, "second"))
		later := func(after q.Time) air.Air { return course(first + after) }
		whole, parts := s.Done(course, first+second), s.Done(course, first)+s.Done(later, second)
		if math.Abs(whole-parts) > 1e-9*(1+whole) {
			t.Fatalf("%v as a whole, %v in parts", whole, parts)
		}
		if whole < s.Done(course, first) {
			t.Fatal("undone again")
		}
	})
}
