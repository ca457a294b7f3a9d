package room

import (
	"math"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	q "coatwright/quantity"
)

var now = time.Date(2026, 12, 1, 8, 0, 0, 0, time.UTC)

// shop has a heater, a dehumidifier, a lamp on the part, a fan and patience.
func shop() Means {
	return Means{
		Unit: "min", Now: now,
		Warm:     Price[q.Difference]{Fixed: 5, Each: 4, Most: 12},
		Dry:      Price[q.Fraction]{Fixed: 10, Each: 3, Most: 0.4},
		WarmPart: Price[q.Difference]{Fixed: 8, Each: 5, Most: 15},
		Wait:     Price[q.Time]{Each: 30, Most: 48 * 3600},
	}
}

func TestAdvise(t *testing.T) {
	breezy := wet
	breezy.Speed = q.Range[q.Speed]{Low: 0.3, High: 0.8}
	for _, c := range []struct {
		name  string
		room  Room
		films []Wants
		means func(*Means)
		ways  []string
		level Level
	}{
		{"a go needs nothing", of(22, 50, 22), []Wants{wet}, nil, nil, Go},
		{"cold: the heater, and no further than needed", of(12, 60, 12), []Wants{wet}, nil,
			[]string{"Warm the air by 5 K, to 17.0 °C: its humidity falls to 43 %. That costs 25 min."}, Go},
		{"damp: warming dries more cheaply than a dehumidifier", of(20, 76, 20), []Wants{wet}, nil,
			[]string{"Warm the air by 1.5 K, to 21.5 °C: its humidity falls to 69 %. That costs 11 min.",
				"Dry the air from 76 % to 70 %: 1.1 g of water out of each m³. That costs 28 min."}, Go},
		{"cold part", of(21, 60, 14), []Wants{wet}, nil,
			[]string{"Warm the part by 2 K, to 16.0 °C: it is then 3.1 K above the dew point. That costs 18 min.",
				"Dry the air from 60 % to 52 %: 1.5 g of water out of each m³. That costs 34 min."}, Go},
		{"cold, and the part too", of(12, 60, 6), []Wants{wet}, nil,
			[]string{"Warm the air by 5 K, to 17.0 °C: its humidity falls to 43 %. Warm the part by 1.5 K, to 7.5 °C: it is then 3.0 K above the dew point. That costs 40.5 min."}, Go},
		{"dry and hot", of(35, 28, 35), []Wants{wet}, func(m *Means) {
			m.Cool, m.Damp = Price[q.Difference]{Each: 6, Most: 10}, Price[q.Fraction]{Each: 2, Most: 0.3}
		}, []string{"Cool the air by 5 K, to 30.0 °C: its humidity rises to 37 %. That costs 30 min."}, Go},
		{"dry", of(22, 28, 22), []Wants{wet}, func(m *Means) { m.Damp = Price[q.Fraction]{Each: 2, Most: 0.3} },
			[]string{"Damp the air from 28 % to 35 %: 1.4 g of water into each m³. That costs 14 min."}, Go},
		{"still air", of(21, 50, 21), []Wants{breezy}, func(m *Means) { m.Fan = Price[q.Speed]{Fixed: 2, Most: 0.5} },
			[]string{"Turn the fan on: 0.5 m/s at the part. That costs 2 min."}, Go},
		{"wait for noon", of(21, 85, 21), []Wants{wet}, func(m *Means) {
			*m = Means{Unit: "min", Now: now, Wait: m.Wait, Later: []Later{
				{now.Add(26 * time.Hour), of(22, 55, 20)}, {now.Add(4 * time.Hour), of(23, 60, 21)}, {now.Add(-time.Hour), of(22, 50, 21)}}}
		}, []string{"Wait until Tue 1 Dec 12:00, when it is 23.0 °C, 60 % humidity, the part at 21.0 °C. That costs 120 min."}, Go},
		{"only care can be had", of(12, 60, 12), []Wants{wet}, func(m *Means) { *m = Means{Warm: Price[q.Difference]{Each: 1, Most: 4}} },
			[]string{"Warm the air by 3 K, to 15.0 °C: its humidity falls to 49 %. That costs 3."}, Care},
		{"nothing at hand", of(12, 60, 12), []Wants{wet}, func(m *Means) { *m = Means{} }, nil, No},
	} {
		m := shop()
		if c.means != nil {
			c.means(&m)
		}
		got, err := Advise(c.room, c.films, m)
		if err != nil {
			t.Fatal(err)
		}
		var says []string
		for _, w := range got.Ways {
			says = append(says, w.Says)
			if w.Then.Level != c.level {
				t.Errorf("%s: leads to %v, want %v", c.name, w.Then.Level, c.level)
			}
		}
		if len(says) > len(c.ways) && len(c.ways) > 0 {
			says = says[:len(c.ways)]
		}
		if strings.Join(says, "\n") != strings.Join(c.ways, "\n") {
			t.Errorf("%s:\n\t%s\nwant\n\t%s", c.name, strings.Join(says, "\n\t"), strings.Join(c.ways, "\n\t"))
		}
		if got.Says == "" {
			t.Errorf("%s: says nothing", c.name)
		}
	}
}

// Two films that no room suits: the advice says so and does not guess.
func TestAdviseOnAConflict(t *testing.T) {
	cold := Wants{Film: "the cold film", Air: celsius(5, 12)}
	got, err := Advise(of(16, 50, 16), []Wants{cold, hard}, shop())
	if err != nil || len(got.Ways) != 0 || !strings.Contains(got.Says, "the cold film wants at most 12 °C and the hard film at least 18 °C") {
		t.Errorf("%+v, %v", got, err)
	}
}

func TestAdviseRefusesPrices(t *testing.T) {
	for _, m := range []Means{
		{Warm: Price[q.Difference]{Each: -1, Most: 3}},
		{Dry: Price[q.Fraction]{Fixed: math.NaN(), Most: 0.3}},
		{Wait: Price[q.Time]{Most: q.Time(math.Inf(1))}},
		{Cool: Price[q.Difference]{Most: 61}},
	} {
		if _, err := Advise(of(12, 60, 12), []Wants{wet}, m); err == nil {
			t.Errorf("no error for %+v", m)
		}
	}
}

func anyMeans(t *rapid.T) Means {
	price := rapid.Float64Range(0, 20)
	kelvins := func(name string) Price[q.Difference] {
		return Price[q.Difference]{Fixed: price.Draw(t, name), Each: price.Draw(t, name), Most: q.Difference(rapid.IntRange(0, 4).Draw(t, name))}
	}
	humidity := func(name string) Price[q.Fraction] {
		return Price[q.Fraction]{Fixed: price.Draw(t, name), Each: price.Draw(t, name), Most: q.Fraction(rapid.Float64Range(0, 0.08).Draw(t, name))}
	}
	m := Means{Warm: kelvins("warm"), Cool: kelvins("cool"), WarmPart: kelvins("part"), Dry: humidity("dry"), Damp: humidity("damp"), Now: now}
	if rapid.Bool().Draw(t, "a fan") {
		m.Fan = Price[q.Speed]{Fixed: price.Draw(t, "fan"), Most: 1.5}
	}
	m.Wait = Price[q.Time]{Each: price.Draw(t, "wait"), Most: 48 * 3600}
	for range rapid.IntRange(0, 2).Draw(t, "later") {
		m.Later = append(m.Later, Later{now.Add(time.Duration(rapid.IntRange(-5, 60).Draw(t, "hours")) * time.Hour), anyRoom(t)})
	}
	return m
}

// Whatever is proposed leads where it says, costs what its acts cost, and
// nothing that can be done alone, nor any two things, would do it for less.
func TestAdviseIsTheCheapest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r, films, m := anyRoom(t), anyFilms(t), anyMeans(t)
		a, err := Advise(r, films, m)
		if err != nil {
			t.Fatal(err)
		}
		least := func(aim Level) float64 { return bruteForce(r, films, m, aim) }
		if a.Now.Level == Go {
			if len(a.Ways) != 0 {
				t.Fatal("advice for a room that suits")
			}
			return
		}
		aim := Go
		if math.IsInf(least(Go), 1) && a.Now.Level == No {
			aim = Care
		}
		if len(a.Ways) == 0 {
			if !math.IsInf(least(aim), 1) {
				t.Fatalf("no way found, but there is one at %v", least(aim))
			}
			return
		}
		for i, w := range a.Ways {
			cost := 0.0
			for _, act := range w.Acts {
				cost += act.Cost
				if act.Says == "" {
					t.Fatal("an act says nothing")
				}
			}
			if got := Assess(w.Room, films).Level; got > aim || got != w.Then.Level {
				t.Fatalf("%s leads to %v, want %v", w.Says, got, aim)
			}
			if math.Abs(cost-w.Cost) > 1e-9 || i > 0 && w.Cost < a.Ways[i-1].Cost {
				t.Fatalf("way %d costs %v, its acts %v", i, w.Cost, cost)
			}
		}
		if got := a.Ways[0].Cost; math.Abs(got-least(aim)) > 1e-9 {
			t.Fatalf("%s; %v would do", a.Ways[0].Says, least(aim))
		}
	})
}

// bruteForce is the cost of the cheapest one or two things in any order of the
// steps that lead to a level, judged by Assess alone.
func bruteForce(r Room, films []Wants, m Means, aim Level) float64 {
	least := math.Inf(1)
	try := func(cost float64, r Room) {
		if cost < least && Assess(r, films).Level <= aim {
			least = cost
		}
	}
	for _, p := range pairs {
		for _, first := range m.options(p[0], r) {
			try(first.Cost, first.room)
			for _, second := range m.options(p[1], first.room) {
				if cost := first.Cost + second.Cost; cost < least {
					try(cost, second.room)
				}
			}
		}
		for _, second := range m.options(p[1], r) {
			try(second.Cost, second.room)
		}
	}
	return least
}

// What is done to the air keeps to physics: warming keeps the dew point and the
// part, cooling never leaves a part warmer than the air, drying lowers the dew
// point.
func TestActsKeepToPhysics(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := anyRoom(t)
		d := q.Difference(rapid.Float64Range(0.1, 20).Draw(t, "kelvins"))
		warm, cool := r.warm(d), r.warm(-d)
		if math.Abs(float64(warm.DewPoint()-r.DewPoint())) > 1e-6 || warm.Surface != r.Surface || warm.Humidity >= r.Humidity {
			t.Fatalf("warmed: %+v from %+v", warm, r)
		}
		if cool.Surface > cool.Temperature || cool.Surface > r.Surface || cool.Humidity < r.Humidity || cool.DewPoint() > r.DewPoint()+1e-6 {
			t.Fatalf("cooled: %+v from %+v", cool, r)
		}
		dry := r.humid(r.Humidity * 0.9)
		if dry.Over() <= r.Over() {
			t.Fatalf("dried: %+v from %+v", dry, r)
		}
	})
}

func BenchmarkAssess(b *testing.B) {
	r, films := of(21, 60, 14), []Wants{wet, hard, wet, hard}
	for b.Loop() {
		Assess(r, films)
	}
}

// The worst case: nothing does it alone, and most pairs are looked through.
func BenchmarkAdvise(b *testing.B) {
	m := shop()
	m.Cool, m.Damp, m.Fan = m.Warm, m.Dry, Price[q.Speed]{Fixed: 2, Most: 0.5}
	m.Warm.Most, m.WarmPart.Most = 30, 30
	for i := range 48 {
		m.Later = append(m.Later, Later{now.Add(time.Duration(i+1) * time.Hour), of(10, 90, 5)})
	}
	r, films := of(9, 92, 2), []Wants{wet, hard}
	for b.Loop() {
		if _, err := Advise(r, films, m); err != nil {
			b.Fatal(err)
		}
	}
}
