package workout

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"coatwright/planner"
	"coatwright/planner/air"
	"coatwright/planner/library"
	"coatwright/planner/room"
	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// heated is the small library with prices for what can be done about a room, and
// an effect and two finishes.
func heated() *library.Library {
	lib := ovens()
	c := &lib.Words.RoomChanges
	c.Warm = library.RoomChange[q.Difference]{Fixed: 300, Each: 240, Most: 15}
	c.WarmPart = library.RoomChange[q.Difference]{Fixed: 300, Each: 180, Most: 20}
	c.Dry = library.RoomChange[q.Fraction]{Fixed: 600, Each: 180, Most: 0.35}
	lib.Effects = map[string]*library.Effect{"plain": {Slug: "plain", Title: "Plain", Films: []library.Film{{Role: "ground", Materials: []string{"water", "solvent"}}}}}
	clear := func(slug, system string, gloss q.Gloss) *library.Material {
		m := *lib.Materials["cure"]
		m.Slug, m.Title, m.System, m.Role, m.Gloss = slug, slug, system, "clear", q.Range[q.Gloss]{Low: gloss, High: gloss}
		return &m
	}
	lib.Materials["water"].System, lib.Materials["solvent"].System = "thin", "thick"
	lib.Words.Systems = append(lib.Words.Systems, library.Word{Name: "thick"})
	lib.Materials["a-shiny"], lib.Materials["shiny"], lib.Materials["dull"] = clear("a-shiny", "any", 90), clear("shiny", "thin", 90), clear("dull", "thin", 10)
	lib.Finishes = map[string]*library.Finish{
		"gloss": {Slug: "gloss", Title: "Gloss", Films: []library.Film{{Role: "clear"}}, Gloss: q.Range[q.Gloss]{Low: 80, High: 100}},
		"matt":  {Slug: "matt", Title: "Matt", Films: []library.Film{{Role: "clear"}}, Gloss: q.Range[q.Gloss]{Low: 5, High: 15}},
	}
	return lib
}

// judgedFilms are the films of a page's table.
func judgedFilms(p *Page) string {
	var out []string
	for _, row := range p.Answer.Tables[0].Rows {
		out = append(out, row[0].(string))
	}
	return strings.Join(out, "|")
}

// An effect and a finish are laid with the system's own materials, else with those
// that go with any, and the finish's gloss decides.
func TestRoomFilms(t *testing.T) {
	lib := heated()
	for _, c := range []struct {
		entries []string
		want    string
	}{
		{[]string{"effect", "plain", "finish", "gloss", "system", "thin"}, "Film by evaporation|Shiny"},
		{[]string{"effect", "plain", "finish", "matt", "system", "thin"}, "Film by evaporation|Dull"},
		{[]string{"effect", "plain", "finish", "gloss", "system", "thick"}, "Film by solvent|A-shiny"},
		{[]string{"films", "cure"}, "Film by cure"},
		{[]string{"films", "cure", "second", "water", "fourth", "cure"}, "Film by cure|Film by evaporation"},
	} {
		if got := judgedFilms(answered(t, roomSheet, lib, c.entries...)); got != c.want {
			t.Errorf("%q: %s, want %s", c.entries, got, c.want)
		}
	}
}

// Worked by hand: a part 1.04 K too near the dew point in air that is 1 K too cold.
// 14 C and 72 % have a dew point of 9.04 C (Magnus); the film is a go from 16.5 C
// (15 and the tenth of 15 K). 3 K more air cost 17 min and take it to 59 %; the
// part needs 12.5 C, which is 1.5 K more for 9.5 min: 26.5 min.
func TestRoomWays(t *testing.T) {
	p := answered(t, roomSheet, heated(), "films", "water", "air", "14 C", "humidity", "72 %", "surface", "11 C")
	wantVerdict(t, p, "no", "does not suit")
	wantWithin(t, p, "dew-point", celsius(9.04), 0.02)
	wantWithin(t, p, "warm", 2.5, 1e-9)
	wantWithin(t, p, "warm-part", 1.5, 1e-9)
	wantFigure(t, p, "trouble", (5+2.5*4+5+1.5*3)*60, 1e-9)
	ways := p.Answer.Tables[1].Rows
	last := 0.0
	for _, w := range ways {
		if w[1] != "go" || w[2].(q.Value).SI < last {
			t.Errorf("ways out of order or no way out: %v", ways)
		}
		last = w[2].(q.Value).SI
	}
}

func TestRoomThatSuits(t *testing.T) {
	p := answered(t, roomSheet, heated(), "films", "water", "air", "22.5 C", "humidity", "52.5 %", "surface", "22.5 C")
	wantVerdict(t, p, "go", "suits every film")
	wantFigure(t, p, "strain", 3.0/float64(22.5-12.25), 2e-2) // 3 K wanted, 10.3 K there
	if len(p.Answer.Tables) != 1 || hasFigure(p, "trouble") {
		t.Error("a room that suits is to be changed")
	}
}

// The trouble of the first way is the sum of its prices, and the room that it leads
// to is a go by the package.
func TestRoomProperties(t *testing.T) {
	lib := heated()
	wants := []room.Wants{planner.WantsOf(lib.Materials["water"])}
	rapid.Check(t, func(t *rapid.T) {
		warmth, humidity, part := rapid.IntRange(5, 35).Draw(t, "air"), rapid.IntRange(20, 95).Draw(t, "humidity"), rapid.IntRange(5, 35).Draw(t, "part")
		given := map[string]string{"films": "water", "air": decimal(float64(warmth)) + " C", "humidity": decimal(float64(humidity)) + " %", "surface": decimal(float64(part)) + " C"}
		p := roomSheet.Fill(lib, func(key string) (string, bool) { text, ok := given[key]; return text, ok })
		i := slices.IndexFunc(p.Answer.Figures, func(f trace.Figure) bool { return f.Key == "trouble" })
		if i < 0 {
			return
		}
		f := p.Answer.Figures[i]
		sum, each := 0.0, 0.0
		for _, in := range f.Inputs {
			switch in.Symbol {
			case "fixed":
				sum += in.Value.SI
			case "each":
				each = in.Value.SI
			case "amount":
				n := in.Value.SI
				if in.Value.Of == "percentage" {
					n *= 100
				}
				sum += each * n
			}
		}
		if math.Abs(sum-f.Value.SI) > 1e-6*sum {
			t.Fatalf("trouble %v, its prices come to %v", f.Value.SI, sum)
		}
		then := air.Air{Temperature: q.Celsius(float64(warmth)), Humidity: q.Fraction(humidity) / 100, Speed: 0.1}
		now := room.Assess(room.Room{Air: then, Surface: q.Celsius(float64(part))}, wants)
		if now.Level == room.Go {
			t.Fatal("a room that suits is to be changed")
		}
	})
}

func TestRoomInBothSystems(t *testing.T) {
	sameAnswers(t, roomSheet, heated(), 2e-4,
		[]string{"films", "water", "air", "14 C", "humidity", "72 %", "surface", "11 C"}, []string{"films", "water", "air", "57.2 F", "humidity", "72 %", "surface", "51.8 F"})
}

func TestRoomTells(t *testing.T) {
	lib := heated()
	lib.Effects["rare"] = &library.Effect{Slug: "rare", Title: "Rare", Films: []library.Film{{Role: "ground", Materials: []string{"gone"}}}}
	lib.Finishes["bare"] = &library.Finish{Slug: "bare", Title: "Bare"}
	checkTold(t, roomSheet, lib, []told{
		{[]string{"effect", "rare", "finish", "bare"}, "system", `Found "thin", expected a system that has films for this effect and finish.`},
		{[]string{"films", "watr"}, "films", `Found "watr", expected one of the list; did you mean "water"?`},
		{[]string{"surface", "20"}, "surface", `Found "20", expected a temperature in one of: C, °C, K, F, °F.`},
	})
}

// Films that no one room suits are told.
func TestRoomConflicts(t *testing.T) {
	lib := heated()
	m := *lib.Materials["water"]
	m.Air.Air = q.Range[q.Temperature]{Low: q.Celsius(35), High: q.Celsius(45)}
	m.Slug = "hot"
	lib.Materials["hot"] = &m
	p := answered(t, roomSheet, lib, "films", "hot", "second", "cure")
	if !tells(p, "No one room suits both") {
		t.Errorf("told %q", p.Answer.Says)
	}
}
