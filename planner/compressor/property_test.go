package compressor

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"coatwright/planner/air"
	q "coatwright/quantity"
)

func anyCompressor(t *rapid.T) Compressor {
	cutIn := rapid.Float64Range(2, 8).Draw(t, "cut-in")
	return Compressor{
		Tank: Tank{
			Volume:     q.Volume(rapid.Float64Range(5, 500).Draw(t, "tank") * litre),
			Atmosphere: q.Pressure(rapid.Float64Range(0.7, 1.05).Draw(t, "atmosphere") * bar),
		},
		Delivers: q.AirFlow(rapid.Float64Range(20, 800).Draw(t, "delivers") * litreMin),
		CutIn:    q.Pressure(cutIn * bar),
		CutOut:   q.Pressure((cutIn + rapid.Float64Range(0.2, 3).Draw(t, "hysteresis")) * bar),
		Duty:     q.Fraction(rapid.Float64Range(0.3, 1).Draw(t, "duty")),
	}
}

func anyUse(t *rapid.T, c Compressor) Use {
	return Use{
		Air:     c.Delivers * q.AirFlow(rapid.Float64Range(0.1, 4).Draw(t, "air over delivery")),
		Trigger: q.Fraction(rapid.Float64Range(0.1, 1).Draw(t, "trigger")),
		Least:   c.CutIn * q.Pressure(rapid.Float64Range(0.3, 0.99).Draw(t, "least")),
		Pull:    q.Time(rapid.Float64Range(0, 20).Draw(t, "pull")),
	}
}

// plant is a compressor played in small steps: what goes into the tank and what
// comes out, and a switch. It shares nothing with the formulas.
type plant struct {
	c        Compressor
	pressure float64 // Pa gauge
	pumping  bool
	ran      float64 // s
}

// full is a plant whose pump has just stopped.
func full(c Compressor) *plant { return &plant{c: c, pressure: float64(c.CutOut)} }

func (p *plant) step(draw, dt float64) {
	in := 0.0
	if p.pumping {
		in, p.ran = float64(p.c.Delivers), p.ran+dt
	}
	p.pressure += (in - draw) * dt * float64(p.c.Atmosphere) / float64(p.c.Volume)
	if p.pressure <= float64(p.c.CutIn) {
		p.pumping = true
	}
	if p.pressure >= float64(p.c.CutOut) {
		p.pumping = false
	}
}

// Pauses: the times of the closed formulas, played.
func TestPausesAsPlayed(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := anyCompressor(t)
		u := anyUse(t, c)
		a, err := Judge(c, u)
		if err != nil {
			t.Fatal(err)
		}
		draw := float64(u.mean())
		if a.Cause == LongPull {
			draw = float64(u.Air)
		}
		if a.Verdict != Pauses || a.Cause == RunsHot || draw < 1.1*float64(c.Delivers) {
			t.Skip("enough, or so near to it that small steps take for ever")
		}
		p, spray, wait := full(c), 0.0, 0.0
		dt := min(float64(a.Spray), float64(a.Wait)) / 5000
		for p.pressure > float64(u.Least) {
			p.step(draw, dt)
			spray += dt
		}
		for p.pressure < float64(c.CutOut) {
			p.step(0, dt)
			wait += dt
		}
		near(t, "spray", float64(a.Spray), spray, 0.01)
		if float64(a.Wait) < 0.99*wait {
			t.Errorf("wait %v, played %v", a.Wait, wait)
		}
		if a.Running > c.Duty*(1+1e-12) {
			t.Errorf("the pump runs %v of the time, and may %v", a.Running, c.Duty)
		}
		near(t, "running", float64(a.Running), p.ran/float64(a.Spray+a.Wait), 0.01)
		// All the air that was drawn was pumped.
		near(t, "air", p.ran*float64(c.Delivers), draw*spray, 0.01)
	})
}

// Enough: pulled again and again for as long as the use says, the pressure
// never falls below the least, and the pump runs for its share.
func TestEnoughAsPlayed(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := anyCompressor(t)
		u := anyUse(t, c)
		u.Pull = max(u.Pull, 2)
		a, err := Judge(c, u)
		if err != nil {
			t.Fatal(err)
		}
		if a.Verdict != Enough {
			t.Skip("not enough")
		}
		p := full(c)
		const steps = 200 // of a pull
		dt := float64(u.Pull) / steps
		rest := int(steps * (1/float64(u.Trigger) - 1))
		drawn, time := 0.0, 0.0
		for range 60 {
			for i := range steps + rest {
				draw := 0.0
				if i < steps {
					draw = float64(u.Air)
				}
				p.step(draw, dt)
				drawn, time = drawn+draw*dt, time+dt
				// A step past the switch is a step too far.
				if slack := draw * dt * float64(c.Atmosphere/q.Pressure(c.Volume)); p.pressure < float64(u.Least)-slack {
					t.Fatalf("the pressure fell to %v, least %v", p.pressure, u.Least)
				}
			}
		}
		// What was drawn came from the pump or out of the tank.
		tank := float64(c.FreeAir(c.CutOut, q.Pressure(p.pressure)))
		near(t, "air", p.ran*float64(c.Delivers)+tank, drawn, 1e-6)
	})
}

// Over whole cycles of the switch the pump runs for its share.
func TestRunningAsPlayed(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := anyCompressor(t)
		c.Duty = 0
		u := Use{Air: c.Delivers * q.AirFlow(rapid.Float64Range(0.1, 0.9).Draw(t, "air over delivery")), Trigger: 1}
		a, err := Judge(c, u)
		if err != nil {
			t.Fatal(err)
		}
		p, time := full(c), 0.0
		dt := min(float64(c.idle(u.Air)), float64(c.RefillTime(c.CutIn, c.CutOut, c.Delivers, u.Air))) / 1000
		for cycles := 0; cycles < 3; {
			before := p.pumping
			p.step(float64(u.Air), dt)
			time += dt
			if before && !p.pumping {
				cycles++
			}
		}
		near(t, "running", float64(a.Running), p.ran/time, 0.005)
	})
}

// The pump that runs for all it may is in an hour what was drawn in it.
func TestRestKeepsTheAir(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := anyCompressor(t)
		c.Duty = min(c.Duty, 0.9)
		running := c.Duty + (1-c.Duty)*q.Fraction(rapid.Float64Range(0.01, 0.99).Draw(t, "over its duty"))
		u := Use{Air: c.Delivers, Trigger: running}
		a, err := Judge(c, u)
		if err != nil {
			t.Fatal(err)
		}
		if a.Verdict != Pauses || a.Cause != RunsHot {
			t.Fatalf("%s by %q, want %s by %q", a.Verdict, a.Cause, Pauses, RunsHot)
		}
		near(t, "hour", float64(a.Spray+a.Wait), 3600, 1e-12)
		near(t, "air", float64(c.Delivers)*float64(c.Duty)*3600, float64(u.mean())*float64(a.Spray), 1e-9)
	})
}

// A bigger tank, a stronger pump or a softer trigger is never worse.
func TestMoreIsNoWorse(t *testing.T) {
	rank := map[Verdict]int{NotEnough: 0, Pauses: 1, Enough: 2}
	rapid.Check(t, func(t *rapid.T) {
		c := anyCompressor(t)
		u := anyUse(t, c)
		better, gentler := c, u
		factor := rapid.Float64Range(1, 3).Draw(t, "factor")
		switch rapid.IntRange(0, 3).Draw(t, "what") {
		case 0:
			better.Volume *= q.Volume(factor)
		case 1:
			better.Delivers *= q.AirFlow(factor)
		case 2:
			gentler.Trigger /= q.Fraction(factor)
		case 3:
			gentler.Least /= q.Pressure(factor)
		}
		was, err := Judge(c, u)
		if err != nil {
			t.Fatal(err)
		}
		is, err := Judge(better, gentler)
		if err != nil {
			t.Fatal(err)
		}
		if rank[is.Verdict] < rank[was.Verdict] {
			t.Errorf("%s (%s) became %s (%s)", was.Verdict, was.Cause, is.Verdict, is.Cause)
		}
		if is.Verdict == Pauses && was.Cause == is.Cause && is.Spray < was.Spray*(1-1e-12) {
			t.Errorf("spray for %v became %v", was.Spray, is.Spray)
		}
	})
}

func TestReceiverAndRunTimeAreOne(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := anyCompressor(t)
		out := c.Delivers * q.AirFlow(rapid.Float64Range(1.1, 5).Draw(t, "air over delivery"))
		run := c.RunTime(c.CutOut, c.CutIn, out, c.Delivers)
		near(t, "tank", float64(Receiver(run, out, c.Delivers, c.CutOut, c.CutIn, c.Atmosphere)), float64(c.Volume), 1e-9)
		fill := c.RefillTime(c.CutIn, c.CutOut, c.Delivers, 0)
		near(t, "pump-up test", float64(c.Tank.Delivery(c.CutIn, c.CutOut, fill)), float64(c.Delivers), 1e-9)
	})
}

// Two lines one after the other lose what each does, as long as that is little.
func TestLineDropGrows(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		flow := q.AirFlow(rapid.Float64Range(0.1, 20).Draw(t, "flow") * litre)
		length := q.Length(rapid.Float64Range(1, 50).Draw(t, "length"))
		bore := q.Length(rapid.Float64Range(0.005, 0.05).Draw(t, "bore"))
		inlet := q.Pressure(rapid.Float64Range(3, 12).Draw(t, "inlet") * bar)
		drop := LineDrop(flow, length, bore, inlet)
		near(t, "twice the length", float64(LineDrop(flow, 2*length, bore, inlet)), 2*float64(drop), 1e-9)
		near(t, "half the bore", float64(LineDrop(flow, length, bore/2, inlet)), 32*float64(drop), 1e-9)
		near(t, "twice the pressure", float64(LineDrop(flow, length, bore, 2*inlet)), float64(drop)/2, 1e-9)
		near(t, "twice the flow", float64(LineDrop(2*flow, length, bore, inlet)), math.Pow(2, 1.85)*float64(drop), 1e-9)
	})
}

// Water is not made: no more settles than came in, more of it in a colder tank
// and under more pressure, and what settles and what stays are what came.
func TestWaterBalance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := air.Air{
			Temperature: q.Celsius(rapid.Float64Range(5, 40).Draw(t, "celsius")),
			Humidity:    q.Fraction(rapid.Float64Range(0.1, 1).Draw(t, "humidity")),
			Pressure:    q.Pressure(rapid.Float64Range(70e3, 105e3).Draw(t, "pressure")),
		}
		tank := q.Celsius(rapid.Float64Range(5, 60).Draw(t, "tank's celsius"))
		p := q.Pressure(rapid.Float64Range(1.5, 15).Draw(t, "pressed") * bar)
		got := float64(Condensed(a, 1, p, tank))
		// By the gas law of the vapour itself, with its own gas constant.
		const vapour = 461.52 // J/(kg K)
		came := float64(a.VapourPressure()) / (vapour * float64(a.Temperature))
		if got > came*(1+1e-4) {
			t.Errorf("%v kg settle of %v", got, came)
		}
		if got > 0 {
			// The dry air is now in a volume of its own partial pressure, and
			// the vapour that stays fills just that.
			left := float64(p - air.SaturationPressure(tank))
			volume := float64(a.Pressure-a.VapourPressure()) / left * float64(tank/a.Temperature)
			stays := float64(air.SaturationPressure(tank)) * volume / (vapour * float64(tank))
			near(t, "settles", got+stays, came, 1e-3)
		}
		if colder := float64(Condensed(a, 1, p, tank-5)); colder < got {
			t.Errorf("%v kg settle in a colder tank, %v in this", colder, got)
		}
		if harder := float64(Condensed(a, 1, 2*p, tank)); harder < got {
			t.Errorf("%v kg settle under more pressure, %v under this", harder, got)
		}
	})
}

func BenchmarkJudge(b *testing.B) {
	u := Use{Air: 200 * litreMin, Trigger: 0.5, Least: 4 * bar, Pull: 10}
	for b.Loop() {
		if _, err := Judge(shop, u); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkSays(b *testing.B) {
	a, err := Judge(shop, Use{Air: 200 * litreMin, Trigger: 0.5, Least: 4 * bar, Pull: 10})
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		a.Says(q.Metric)
	}
}

func BenchmarkRunTime(b *testing.B) {
	for b.Loop() {
		shop.RunTime(8*bar, 6*bar, 120*litreMin, 80*litreMin)
	}
}

func BenchmarkReceiver(b *testing.B) {
	for b.Loop() {
		Receiver(300, 120*litreMin, 80*litreMin, 8*bar, 6*bar, 0)
	}
}

func BenchmarkDelivery(b *testing.B) {
	for b.Loop() {
		shop.Delivery(0, 8*bar, 240)
	}
}

func BenchmarkLineDrop(b *testing.B) {
	for b.Loop() {
		LineDrop(0.010, 20, 0.010, 8*bar)
	}
}

func BenchmarkDrains(b *testing.B) {
	a := air.Air{Temperature: q.Celsius(21), Humidity: 0.55}
	for b.Loop() {
		shop.Drains(a, q.Celsius(21), 0.8)
	}
}
