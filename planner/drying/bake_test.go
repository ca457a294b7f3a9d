package drying

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"coatwright/planner/air"
	q "coatwright/quantity"
)

// 12 h at 23 C, baked at 60 C of the part with nothing done before, is 12 h by
// the factors worked independently: 9.54 for 50 kJ/mol, 3.70 for 29, 32.2 for
// 77.
func TestBakeByFactors(t *testing.T) {
	s := State{In: 12 * 3600, By: Cure}
	b, err := s.Bake(Oven{Room: Reference(), Film: q.Celsius(60)})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "likely", float64(b.Hold.Likely), 12*3600/9.54, 0.005)
	near(t, "high", float64(b.Hold.High), 12*3600/3.70, 0.005)
	near(t, "low", float64(b.Hold.Low), 12*3600/32.2, 0.005)
}

// A state that takes no time is there when the film has flashed off.
func TestBakeOfNothing(t *testing.T) {
	b, err := State{By: Cure}.Bake(Oven{Room: Reference(), Film: q.Celsius(60), Flash: State{In: 600, By: "standing"}})
	if err != nil || b.Hold.High != 0 || b.Whole.Likely != 600 {
		t.Errorf("%+v, %v", b, err)
	}
}

func TestBakeLimits(t *testing.T) {
	for _, c := range []struct {
		name             string
		wish, film, part float64 // C
		at               float64
		limit            Limit
	}{
		{"film", 0, 60, 90, 60, ByFilm},
		{"part", 0, 60, 45, 45, ByPart},
		{"wish", 40, 60, 45, 40, ByWish},
		{"wish beyond the part", 80, 60, 45, 45, ByPart},
		{"no limit of the part", 80, 60, -273.15, 60, ByFilm},
	} {
		o := Oven{Room: Reference(), Film: q.Celsius(c.film), Part: q.Celsius(c.part), HeatUp: 600}
		if c.wish > 0 {
			o.At = q.Celsius(c.wish)
		}
		b, err := State{In: 43200, By: Cure}.Bake(o)
		if err != nil || b.At != q.Celsius(c.at) || b.Limit != c.limit {
			t.Errorf("%s: %v by %s, %v; want %v by %s", c.name, b.At.Celsius(), b.Limit, err, c.at, c.limit)
		}
	}
}

func TestBakeRefuses(t *testing.T) {
	s := State{In: 43200, By: Cure}
	for _, c := range []struct {
		name string
		o    Oven
		want string
	}{
		{"no heat", Oven{Room: Reference()}, "expected it to dry in the room"},
		{"a part that bears none", Oven{Room: Reference(), Film: q.Celsius(60), Part: q.Celsius(20)}, "at most 20 °C (by the part) in a room of 23 °C"},
		{"never flashes", Oven{Room: at(23, 100, 0.1), Film: q.Celsius(60), Flash: State{In: 600, By: Evaporation}}, "or it pops"},
	} {
		if _, err := s.Bake(c.o); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v, want it to say %q", c.name, err, c.want)
		}
	}
}

func anyOven(t *rapid.T) (State, Oven) {
	celsius := rapid.Float64Range(10, 30)
	o := Oven{
		Room:   at(celsius.Draw(t, "room"), rapid.Float64Range(20, 90).Draw(t, "percent"), 0.2),
		Flash:  State{In: q.Time(rapid.Float64Range(0, 1800).Draw(t, "flash")), By: rapid.SampledFrom(paces).Draw(t, "flashes by")},
		At:     q.Celsius(rapid.Float64Range(35, 120).Draw(t, "wish")),
		HeatUp: q.Time(rapid.Float64Range(0, 3600).Draw(t, "heat-up")),
		Film:   q.Celsius(rapid.Float64Range(35, 120).Draw(t, "film")),
		Part:   q.Celsius(rapid.Float64Range(35, 120).Draw(t, "part")),
	}
	return State{In: q.Time(rapid.Float64Range(600, 7*86400).Draw(t, "in")), By: rapid.SampledFrom(paces).Draw(t, "by")}, o
}

// A bake keeps every limit and the flash-off, and its three shares make one.
func TestBakeProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, o := anyOven(t)
		b, err := s.Bake(o)
		if err != nil {
			t.Fatal(err)
		}
		if b.At > o.At || b.At > o.Film || b.At > o.Part {
			t.Fatalf("%v, beyond %+v", b.At, o)
		}
		if b.Flash != o.Flash.Time(o.Room) {
			t.Fatalf("flashes off for %v", b.Flash)
		}
		if !(b.Hold.Low <= b.Hold.Likely && b.Hold.Likely <= b.Hold.High) {
			t.Fatalf("hold %+v", b.Hold)
		}
		done := float64(b.Flash/s.Time(o.Room)) + s.warming(o.Room, b.At, o.HeatUp) + float64(b.Hold.Likely/s.Time(o.Room.WarmedTo(b.At)))
		if done < 1-1e-9 || b.Hold.Likely > 0 && done > 1+1e-9 {
			t.Fatalf("%v of the way is done", done)
		}
		warmer := o
		warmer.At += 5
		warmer.Film += 5
		warmer.Part += 5
		w, err := s.Bake(warmer)
		if err != nil || w.Hold.Likely > b.Hold.Likely*(1+1e-9) {
			t.Fatalf("held for %v at 5 K more, for %v before; %v", w.Hold.Likely, b.Hold.Likely, err)
		}
	})
}

// The warming against the course of the same straight line.
func TestWarmingIsACourse(t *testing.T) {
	room := at(18, 55, 0.2)
	s := State{In: 86400, By: Cure}
	const lasts = 2 * 3600
	course := func(after q.Time) air.Air {
		return room.WarmedTo(room.Temperature + (q.Celsius(70)-room.Temperature)*q.Temperature(after/lasts))
	}
	near(t, "share", s.warming(room, q.Celsius(70), lasts), s.Done(course, lasts), 1e-5)
}

func TestHurry(t *testing.T) {
	o := Oven{Room: Reference(), Flash: State{In: 600, By: Solvent}, HeatUp: 900, Part: q.Celsius(70)}
	for _, c := range []struct {
		name      string
		s         State
		f         Forced
		o         Oven
		fan, heat string
	}{
		{"water, a fan and no heat", State{In: 1200, By: Evaporation}, Forced{Air: true, Because: "warmth shuts the skin"}, o,
			"A fan, 2.5 m/s at the part: 7 min instead of 20 min.", "No heat: warmth shuts the skin."},
		{"two-pack", State{In: 12 * 3600, By: Cure}, Forced{Air: true, Heat: q.Celsius(60), Because: "as the sheet says"}, o,
			"A fan gains nothing: the film waits for a reaction, and that goes by warmth.",
			"Let it flash off for 10 min, then warm the part to 60 °C (the most that the film may get) over 15 min, and hold it there for 1 h 8 min (published energies: 18 min to 3 h 3 min): 1 h 33 min in all. In the room it takes 12 h."},
		{"nothing said", State{In: 1200, By: Solvent}, Forced{}, o,
			"No fan: its note says nothing of hurrying it.", "No heat: its note says nothing of hurrying it."},
		{"full air", State{In: 1200, By: Evaporation}, Forced{Air: true, Heat: q.Celsius(40), Because: "gently"}, Oven{Room: at(20, 100, 0.1), HeatUp: 600},
			"Not even a fan helps: this air is full of water (20 °C, 100 % RH, 0.1 m/s).",
			"Warm the part to 40 °C (the most that the film may get) over 10 min, and hold it there for 4 min: 14 min in all. In the room it takes for ever."},
		{"neither", State{In: 600, By: "standing"}, Forced{Air: true, Heat: q.Celsius(40)}, Oven{Room: Reference(), Part: q.Celsius(20)},
			"A fan gains nothing: nothing has to leave the film.",
			"No heat here: found at most 20 °C (by the part) in a room of 23 °C; expected a bake warmer than the room."},
		{"a short bake", State{In: 600, By: Cure, Energy: 50e3}, Forced{Heat: q.Celsius(60), Because: "lamps"}, Oven{Room: Reference(), HeatUp: 60},
			"No fan: lamps.", "Warm the part to 60 °C (the most that the film may get) over 60 s, and hold it there for 38 s: 98 s in all. In the room it takes 10 min."},
		{"a booth in wind", State{In: 1200, By: Solvent}, Forced{Air: true, Heat: q.Celsius(40)}, Oven{Room: at(23, 50, 3), HeatUp: 3600, Flash: State{In: 1200, By: Solvent}},
			"A fan of 2.5 m/s gains nothing: the air moves at 3 m/s already.",
			"Heat gains nothing: in the room it takes 6 min, with flash-off and warming up 1 h 6 min."},
	} {
		got := c.s.Hurry(c.f, c.o, 2.5)
		for i, want := range []string{c.fan, c.heat} {
			if got[i].Says != want {
				t.Errorf("%s: says\n\t%s\nwant\n\t%s", c.name, got[i].Says, want)
			}
		}
		for _, h := range got {
			if math.IsNaN(float64(h.Saves)) {
				t.Errorf("%s: %s saves %v", c.name, h.With, h.Saves)
			}
		}
	}
}

// Whatever the oven says, no help is allowed that the note does not allow, and
// none saves time that its own figures do not.
func TestHurryProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, o := anyOven(t)
		f := Forced{Air: rapid.Bool().Draw(t, "air")}
		if rapid.Bool().Draw(t, "heat") {
			f.Heat = q.Celsius(rapid.Float64Range(35, 90).Draw(t, "at"))
		}
		for _, h := range s.Hurry(f, o, 2.5) {
			if h.With == Fan && h.Allowed != f.Air || h.With == Heat && h.Allowed != (f.Heat > 0) {
				t.Fatalf("%s is allowed: %v, by %+v", h.With, h.Allowed, f)
			}
			if h.Bake != nil && (h.Bake.At > f.Heat || h.Bake.Flash < o.Flash.Time(o.Room)) {
				t.Fatalf("baked at %v after %v", h.Bake.At, h.Bake.Flash)
			}
			if h.Saves > 0 && h.Time.Likely >= s.Time(o.Room) {
				t.Fatalf("%s saves %v of %v by %v", h.With, h.Saves, s.Time(o.Room), h.Time.Likely)
			}
			if h.Says == "" {
				t.Fatal("nothing said")
			}
		}
	})
}
