package planner_test

import (
	"slices"
	"strings"
	"testing"

	"coatwright/planner"
	"coatwright/planner/library"
	"coatwright/planner/room"
	q "coatwright/quantity"
)

// A plan judges its room as package room does, for each of its films once.
func TestConditionsAreThoseOfTheRoom(t *testing.T) {
	lib := builtIn(t)
	for _, words := range []string{
		"{air: 21 C, humidity: 55 %, surface: 20 C}", "{air: 12 C, humidity: 80 %, surface: 9 C}", "{air: 16 C, humidity: 74 %, surface: 16 C}", "{air: 33 C, humidity: 20 %, surface: 33 C}",
	} {
		p := plan(t, strings.Replace(frame(t), "{air: 21 C, humidity: 55 %, airflow: 0.3 m/s, surface: 20 C}", words, 1), lib)
		var wants []room.Wants
		for _, f := range p.Films {
			w := planner.WantsOf(lib.Materials[strings.TrimPrefix(f.Material, "material/")])
			if !slices.Contains(wants, w) {
				wants = append(wants, w)
			}
		}
		judged := room.Assess(room.Room(p.Job.Room), wants)
		var want, got []string
		for _, f := range judged.Findings {
			want = append(want, f.Level.String()+" "+f.What)
		}
		if judged.Level == room.Go {
			want = append(want, "go "+judged.Says)
		}
		for _, c := range p.Conditions {
			if strings.HasPrefix(c.What, "The air ") || strings.HasPrefix(c.What, "The part ") || strings.HasPrefix(c.What, "The room ") {
				got = append(got, c.Level+" "+c.What)
			}
		}
		slices.Sort(want)
		slices.Sort(got)
		if !slices.Equal(got, want) {
			t.Errorf("%s:\n%s\nwant\n%s", words, strings.Join(got, "\n"), strings.Join(want, "\n"))
		}
	}
}

// What a change costs is in minutes, each for a kelvin or a per cent.
func TestMeansOf(t *testing.T) {
	m := planner.MeansOf(library.RoomChanges{
		Warm: library.RoomChange[q.Difference]{Fixed: 300, Each: 240, Most: 15}, Dry: library.RoomChange[q.Fraction]{Fixed: 600, Each: 180, Most: 0.35},
		Fan: library.RoomChange[q.Speed]{Fixed: 120, Most: 2.5}, Wait: library.RoomChange[q.Time]{Each: 900, Most: 72 * 3600},
	})
	if m.Unit != "min" || m.Warm != (room.Price[q.Difference]{Fixed: 5, Each: 4, Most: 15}) || m.Dry != (room.Price[q.Fraction]{Fixed: 10, Each: 3, Most: 0.35}) ||
		m.Fan != (room.Price[q.Speed]{Fixed: 2, Most: 2.5}) || m.Wait.Each != 15 || m.Cool.Most != 0 {
		t.Errorf("%+v", m)
	}
	r := room.Room{}
	r.Temperature, r.Humidity, r.Surface = q.Celsius(12), 0.8, q.Celsius(12)
	a, err := room.Advise(r, []room.Wants{{Film: "the film", Air: q.Range[q.Temperature]{Low: q.Celsius(15), High: q.Celsius(30)}}}, m)
	if err != nil || len(a.Ways) == 0 || a.Ways[0].Cost != 5+4*4.5 { // to 16.5 C, which is the tenth within
		t.Errorf("%+v, %v", a.Ways, err)
	}
}
