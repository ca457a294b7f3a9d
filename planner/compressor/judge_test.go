package compressor

import (
	"math"
	"testing"

	q "coatwright/quantity"
)

// shop is a small compressor: 50 L between 6 and 8 bar, 80 L/min.
var shop = Compressor{
	Tank: Tank{Volume: 50 * litre, Atmosphere: 1 * bar}, Delivers: 80 * litreMin,
	CutIn: 6 * bar, CutOut: 8 * bar,
}

// Worked by hand. The tank gives 50 L of free air for each bar.
func TestJudge(t *testing.T) {
	rested := shop
	rested.Duty = 0.5
	inf := math.Inf(1)
	for _, c := range []struct {
		name    string
		c       Compressor
		u       Use
		verdict Verdict
		cause   Cause
		spray   float64 // s
		wait    float64 // s
		longest float64 // s
		running float64
	}{
		{"an airbrush", shop, Use{Air: 20 * litreMin, Trigger: 1, Least: 3 * bar},
			Enough, "", inf, 0, inf, 0.25},
		{"nothing drawn", shop, Use{Trigger: 1}, Enough, "", inf, 0, inf, 0},
		{"trigger never pulled", shop, Use{Air: 200 * litreMin, Least: 4 * bar},
			// 100 L at 120 L/min on top of the pump.
			Enough, "", inf, 0, 50, 0},
		{"half the time", shop, Use{Air: 120 * litreMin, Trigger: 0.5, Least: 4 * bar, Pull: 10},
			// 60 of 80 L/min; a pull takes 40 L/min out of 100 L.
			Enough, "", inf, 0, 150, 0.75},
		{"more than it delivers", shop, Use{Air: 200 * litreMin, Trigger: 0.5, Least: 4 * bar},
			// 100 L at 100 L/min, then 100 L at 20 L/min; 200 L fill at 80 L/min.
			// A single pull: 100 L at 200 L/min, 100 L at 120 L/min.
			Pauses, DrawsMore, 60 + 300, 150, 30 + 50, 450.0 / 510},
		{"more than it delivers, and rests", rested, Use{Air: 200 * litreMin, Trigger: 0.5, Least: 4 * bar},
			// 450 s of running make a cycle of 900 s.
			Pauses, DrawsMore, 360, 540, 80, 0.5},
		{"gun needs just what starts the pump", shop, Use{Air: 200 * litreMin, Trigger: 0.5, Least: 6 * bar},
			// 100 L at 100 L/min; as much fills at 80 L/min.
			Pauses, DrawsMore, 60, 75, 30, 75.0 / 135},
		{"pulls where the gun needs just what starts the pump", shop, Use{Air: 120 * litreMin, Trigger: 0.5, Least: 6 * bar},
			// On average the pump keeps up, but when it starts a pull is too much at
			// once. From a full tank 100 L at 120 L/min; as much fills at 80 L/min.
			Pauses, LongPull, 50, 75, 50, 0.6},
		{"gun needs just what starts a pump that keeps up", shop, Use{Air: 60 * litreMin, Trigger: 1, Least: 6 * bar},
			Enough, "", inf, 0, inf, 0.75},
		{"long pulls", shop, Use{Air: 200 * litreMin, Trigger: 0.2, Least: 4 * bar, Pull: 60},
			// From 6 bar a pull lasts 50 s only; from a full tank 80 s.
			Pauses, LongPull, 80, 150, 80, 200.0 / 230},
		{"would run hot", rested, Use{Air: 120 * litreMin, Trigger: 0.5, Least: 4 * bar},
			// 60 L/min for the whole hour are 45 min of running; it may run 30.
			Pauses, RunsHot, 2400, 1200, 150, 0.5},
		{"pull too long", shop, Use{Air: 200 * litreMin, Trigger: 0.2, Least: 4 * bar, Pull: 90},
			NotEnough, LongPull, 0, 0, 80, 0},
		{"starts late", shop, Use{Air: 20 * litreMin, Trigger: 0.2, Least: 7 * bar},
			NotEnough, StartsLate, 0, 0, 0, 0},
		{"stops early", shop, Use{Air: 20 * litreMin, Trigger: 0.2, Least: 8 * bar},
			NotEnough, StopsEarly, 0, 0, 0, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, err := Judge(c.c, c.u)
			if err != nil {
				t.Fatal(err)
			}
			if got.Verdict != c.verdict || got.Cause != c.cause {
				t.Errorf("%s by %q, want %s by %q", got.Verdict, got.Cause, c.verdict, c.cause)
			}
			for _, n := range []struct {
				what      string
				got, want float64
			}{
				{"spray", float64(got.Spray), c.spray},
				{"wait", float64(got.Wait), c.wait},
				{"longest pull", float64(got.LongestPull), c.longest},
				{"running", float64(got.Running), c.running},
			} {
				if n.got != n.want && !(math.Abs(n.got-n.want) <= 1e-9*n.want) {
					t.Errorf("%s = %v, want %v", n.what, n.got, n.want)
				}
			}
		})
	}
}

// Published by a maker of piston compressors, 2017: a cycle of 10 min with 6 min
// of running is a duty cycle of 60 %.
func TestDutyCycle(t *testing.T) {
	got, err := Judge(shop, Use{Air: 0.6 * 80 * litreMin, Trigger: 1})
	if err != nil {
		t.Fatal(err)
	}
	on := float64(shop.RefillTime(shop.CutIn, shop.CutOut, shop.Delivers, got.Air))
	off := float64(shop.RunTime(shop.CutOut, shop.CutIn, got.Air, 0))
	near(t, "running of a cycle", on/(on+off), 0.6, 1e-12)
	near(t, "Running", float64(got.Running), 0.6, 1e-12)
}

func TestSays(t *testing.T) {
	base := Answer{Compressor: shop, Use: Use{Least: 4 * bar, Pull: 90.5}}
	for _, c := range []struct {
		name   string
		with   func(a *Answer)
		system *q.System
		want   string
	}{
		{"enough", func(a *Answer) { a.Verdict, a.Running, a.LongestPull = Enough, 0.25, q.Time(math.Inf(1)) }, q.Metric,
			"Enough: the pump runs 25 % of the time."},
		{"enough, for short pulls", func(a *Answer) { a.Verdict, a.Running, a.LongestPull = Enough, 0.75, 150 }, q.Metric,
			"Enough: the pump runs 75 % of the time. One pull of the trigger may last 2 min."},
		{"draws more", func(a *Answer) { a.Verdict, a.Cause, a.Spray, a.Wait, a.Running = Pauses, DrawsMore, 359, 150, 0.88 }, q.Metric,
			"Enough with pauses: spray for up to 5 min from a full tank, then wait 3 min. The pump runs 88 % of the time."},
		{"long pull", func(a *Answer) { a.Verdict, a.Cause, a.Spray, a.Wait = Pauses, LongPull, 80.7, 110.2 }, q.Metric,
			"Enough with pauses: one pull of the trigger lasts 80 s from a full tank. Before each long one wait up to 111 s, until the pump stops."},
		{"runs hot", func(a *Answer) { a.Verdict, a.Cause, a.Spray, a.Wait, a.Running = Pauses, RunsHot, 2400, 1200, 0.5 }, q.Metric,
			"Enough with pauses: the pump may run 50 % of an hour. Spray 40 min of it, and let the pump rest for 20 min."},
		{"pull too long", func(a *Answer) { a.Verdict, a.Cause, a.LongestPull = NotEnough, LongPull, 80 }, q.Metric,
			"Not enough: a full tank and the pump hold one pull of the trigger for 80 s, and one takes 91 s."},
		{"starts late", func(a *Answer) { a.Verdict, a.Cause, a.Least = NotEnough, StartsLate, 7*bar }, q.Bar,
			"Not enough: the pump starts only when the tank is down to 6 bar, and the gun and its line need 7 bar. Set the pump to start earlier, or lose less in the line."},
		{"stops early", func(a *Answer) { a.Verdict, a.Cause, a.Least = NotEnough, StopsEarly, 9*bar }, q.Metric,
			"Not enough: the pump stops at 800 kPa in the tank, and the gun and its line need 900 kPa."},
	} {
		t.Run(c.name, func(t *testing.T) {
			a := base
			c.with(&a)
			if got := a.Says(c.system); got != c.want {
				t.Errorf("Says\n\t%s\nwant\n\t%s", got, c.want)
			}
		})
	}
}

func TestRefuses(t *testing.T) {
	with := func(change func(c *Compressor, u *Use)) error {
		c, u := shop, Use{Air: 120 * litreMin, Trigger: 0.5, Least: 4 * bar}
		change(&c, &u)
		_, err := Judge(c, u)
		return err
	}
	for _, c := range []struct {
		name   string
		change func(c *Compressor, u *Use)
		want   string
	}{
		{"no tank", func(c *Compressor, u *Use) { c.Volume = 0 }, "found a tank of 0 m3; expected more than 0"},
		{"no air", func(c *Compressor, u *Use) { c.Atmosphere = -1 }, "found a room at -1 Pa absolute; expected more than 0, or 0 for sea level"},
		{"no pump", func(c *Compressor, u *Use) { c.Delivers = 0 }, "found a delivery of 0 m3/s of free air; expected more than 0"},
		{"a switch turned round", func(c *Compressor, u *Use) { c.CutIn = 8 * bar }, "found a pump that starts at 800000 Pa and stops at 800000 Pa; expected gauge pressures, the one it stops at higher"},
		{"more than an hour", func(c *Compressor, u *Use) { c.Duty = 1.2 }, "found a pump that may run 120 % of an hour; expected up to 100 %, or 0 for all of it"},
		{"guns that blow back", func(c *Compressor, u *Use) { u.Air = -1 }, "found guns that draw -1 m3/s of free air; expected 0 or more"},
		{"trigger over the whole", func(c *Compressor, u *Use) { u.Trigger = 1.5 }, "found triggers pulled for 150 % of the time; expected 0 to 100 %"},
		{"a gun that sucks", func(c *Compressor, u *Use) { u.Least = -1 }, "found a least pressure of -1 Pa; expected a gauge pressure of 0 or more"},
		{"a pull of no number", func(c *Compressor, u *Use) { u.Pull = q.Time(math.NaN()) }, "found a pull of the trigger of NaN s; expected 0 or more"},
	} {
		t.Run(c.name, func(t *testing.T) {
			if err := with(c.change); err == nil || err.Error() != c.want {
				t.Errorf("refuses with\n\t%v\nwant\n\t%s", err, c.want)
			}
		})
	}
}
