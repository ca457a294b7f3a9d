package room

import (
	"encoding/json"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"coatwright/planner/air"
	q "coatwright/quantity"
)

func celsius(low, high float64) q.Range[q.Temperature] {
	return q.Range[q.Temperature]{Low: q.Celsius(low), High: q.Celsius(high)}
}

func percents(low, high float64) q.Range[q.Fraction] {
	return q.Range[q.Fraction]{Low: q.Fraction(low / 100), High: q.Fraction(high / 100)}
}

func of(t, rh, surface float64) Room {
	return Room{Air: air.Air{Temperature: q.Celsius(t), Humidity: q.Fraction(rh / 100), Speed: 0.1}, Surface: q.Celsius(surface)}
}

// wet and hard are what two films might want.
var (
	wet  = Wants{Film: "the wet film", Note: "material/wet", Air: celsius(15, 32), Humidity: percents(30, 75), OverDewPoint: 3}
	hard = Wants{Film: "the hard film", Note: "material/hard", Air: celsius(18, 28), Humidity: percents(0, 80), OverDewPoint: 3}
)

func TestAssess(t *testing.T) {
	windy := wet
	windy.Speed = q.Range[q.Speed]{Low: 0.3, High: 0.8}
	for _, c := range []struct {
		name  string
		room  Room
		films []Wants
		level Level
		says  string
		whats []string
	}{
		{"fair", of(22, 50, 22), []Wants{wet, hard}, Go,
			"The room suits every film: 22.0 °C, 50 % humidity, the part 10.9 K above the dew point.", nil},
		{"no films", of(2, 99, 2), nil, Go, "The room suits every film: 2.0 °C, 99 % humidity, the part 0.1 K above the dew point.", nil},
		{"cold", of(12, 50, 12), []Wants{wet}, No, "",
			[]string{"The air is 12.0 °C; the wet film wants 15 to 32 °C: 3.0 K too cold."}},
		{"a little cold", of(14.98, 50, 14.98), []Wants{wet}, No, "",
			[]string{"The air is 15.0 °C; the wet film wants 15 to 32 °C: 0.02 K too cold."}},
		{"warm end", of(31, 50, 31), []Wants{wet, hard}, No, "",
			[]string{"The air is 31.0 °C; the wet film wants 15 to 32 °C: 1.0 K from the warm end.",
				"The air is 31.0 °C; the hard film wants 18 to 28 °C: 3.0 K too warm."}},
		{"damp", of(21, 82, 21), []Wants{wet, hard}, No, "",
			[]string{"The air has 82 % humidity; the wet film wants 30 to 75 %: 7 % too damp.",
				"The air has 82 % humidity; the hard film wants 0 to 80 %: 2 % too damp."}},
		{"dry", of(21, 32, 21), []Wants{wet, hard}, Care, "The room suits every film, some of them only just: 21.0 °C, 32 % humidity, the part 17.3 K above the dew point.",
			[]string{"The air has 32 % humidity; the wet film wants 30 to 75 %: 2 % from the dry end."}},
		{"cold part", of(21, 60, 14), []Wants{wet}, No, "The room does not suit: 21.0 °C, 60 % humidity, the part 1.1 K above the dew point.",
			[]string{"The part is 1.1 K above the dew point; the wet film wants at least 3 K above: 1.9 K too little. Warm the part or dry the air."}},
		{"wet part", of(21, 60, 5), []Wants{wet}, No, "",
			[]string{"The part is 7.9 K below the dew point; the wet film wants at least 3 K above: 10.9 K too little. Warm the part or dry the air."}},
		{"still", of(21, 50, 21), []Wants{windy}, No, "",
			[]string{"The air moves at 0.1 m/s; the wet film wants 0.3 to 0.8 m/s: 0.2 m/s too slow."}},
		{"asks for nothing", of(-5, 100, -5), []Wants{{Film: "anything"}}, Go, "", nil},
		{"asks for nothing, but wet", of(21, 60, 5), []Wants{{Film: "anything"}}, No, "",
			[]string{"The part is 7.9 K below the dew point; water settles on it under anything. Warm the part or dry the air."}},
	} {
		got := Assess(c.room, c.films)
		var whats []string
		for _, f := range got.Findings {
			whats = append(whats, f.What)
		}
		if got.Level != c.level || strings.Join(whats, "\n") != strings.Join(c.whats, "\n") {
			t.Errorf("%s: %v\n\t%s\nwant %v\n\t%s", c.name, got.Level, strings.Join(whats, "\n\t"), c.level, strings.Join(c.whats, "\n\t"))
		}
		if c.says != "" && got.Says != c.says {
			t.Errorf("%s: says %q, want %q", c.name, got.Says, c.says)
		}
	}
}

// "Surface at least 3 C above the dew point": 23 C and 50 %, the part at 15.01 C
// or more (ISO 8502-4 as quoted by a trade article; worked independently by
// Magnus, which is within 0.1 K).
func TestDewPointRule(t *testing.T) {
	for surface, want := range map[float64]Level{14.9: No, 15.1: Go} {
		if got := Assess(of(23, 50, surface), []Wants{{OverDewPoint: 3}}).Level; got != want {
			t.Errorf("part at %v C: %v, want %v", surface, got, want)
		}
	}
}

func TestFindingHasItsFigures(t *testing.T) {
	got := Assess(of(12, 50, 12), []Wants{wet}).Findings[0]
	if got.Found.SI != float64(q.Celsius(12)) || got.Low.SI != float64(q.Celsius(15)) || got.High.SI != float64(q.Celsius(32)) || got.Off.SI != 3 {
		t.Errorf("figures %+v, low %v, high %v", got, got.Low, got.High)
	}
	text, err := json.Marshal(got)
	if err != nil || !strings.Contains(string(text), `"level":"no","of":"air","film":"the wet film","note":"material/wet"`) {
		t.Errorf("JSON %s, %v", text, err)
	}
}

// Whatever a film does not like, the figure says how far off it is, in the measure
// of what was found.
func TestEveryFindingSaysHowFarOff(t *testing.T) {
	r := of(40, 95, 20)
	r.Speed = 4
	w := wet
	w.Speed = q.Range[q.Speed]{Low: 0.1, High: 1}
	findings := Assess(r, []Wants{w}).Findings
	if len(findings) != 4 {
		t.Fatalf("%d findings, want 4", len(findings))
	}
	for _, f := range findings {
		if f.Off.Of == "" || !(f.Off.SI > 0) {
			t.Errorf("%s: off by %+v", f.Of, f.Off)
		}
	}
}

// The outer tenth of a range, at the numbers of temperature and humidity.
func TestGrade(t *testing.T) {
	for _, c := range []struct {
		x    float64
		want Level
	}{{14.9, No}, {15, Care}, {16.6, Care}, {16.8, Go}, {30.2, Go}, {30.4, Care}, {32, Care}, {32.1, No}} {
		if got := grade(celsius(15, 32), q.Celsius(c.x)); got != c.want {
			t.Errorf("%v C of 15 to 32: %v, want %v", c.x, got, c.want)
		}
	}
	if got := grade(percents(0, 80), 0); got != Go {
		t.Errorf("0 %% of 0 to 80: %v, want go: there is no low end", got)
	}
	if got := grade(q.Range[q.Fraction]{}, 0.7); got != Go {
		t.Errorf("70 %% of nothing asked: %v, want go", got)
	}
}

func anyWants(t *rapid.T) Wants {
	w := Wants{Film: "a film", OverDewPoint: q.Difference(rapid.IntRange(0, 5).Draw(t, "over"))}
	if rapid.Bool().Draw(t, "air asked") {
		low := rapid.Float64Range(5, 22).Draw(t, "cold")
		w.Air = celsius(low, low+rapid.Float64Range(5, 25).Draw(t, "width"))
	}
	if rapid.Bool().Draw(t, "humidity asked") {
		low := rapid.Float64Range(0, 45).Draw(t, "dry")
		w.Humidity = percents(low, low+rapid.Float64Range(10, 55).Draw(t, "breadth"))
	}
	if rapid.IntRange(0, 3).Draw(t, "speed asked") == 0 {
		low := rapid.Float64Range(0, 1).Draw(t, "slow")
		w.Speed = q.Range[q.Speed]{Low: q.Speed(low), High: q.Speed(low + 1)}
	}
	return w
}

func anyRoom(t *rapid.T) Room {
	r := of(rapid.Float64Range(-5, 38).Draw(t, "air"), rapid.Float64Range(5, 100).Draw(t, "humidity"), rapid.Float64Range(-5, 38).Draw(t, "part"))
	r.Speed = q.Speed(rapid.Float64Range(0, 2).Draw(t, "speed"))
	return r
}

func anyFilms(t *rapid.T) []Wants {
	return rapid.SliceOfN(rapid.Custom(anyWants), 1, 4).Draw(t, "films")
}

// The window of a level holds a room just where the judgement is no worse.
func TestWindowIsTheJudgement(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r, films := anyRoom(t), anyFilms(t)
		level := Assess(r, films).Level
		for l := Go; l < No; l++ {
			if got := windowOf(films, l).holds(r); got != (level <= l) {
				t.Fatalf("the window of %v holds %v: %v; judged %v", l, r, got, level)
			}
		}
	})
}

// Strain tells the levels apart, and is worst where the judgement is.
func TestStrainGoesWithTheLevel(t *testing.T) {
	const near = 1e-5
	rapid.Check(t, func(t *rapid.T) {
		r, films := anyRoom(t), anyFilms(t)
		s, level := Strain(r, films), Assess(r, films).Level
		if s < 0 || (level == No) != (s > 1+near) && (s < 1-near || s > 1+near) {
			t.Fatalf("strain %v, judged %v", s, level)
		}
		if level == Care && s < 0.8-near {
			t.Fatalf("strain %v, and care is wanted", s)
		}
		if more := Strain(r, append(films, anyWants(t))); more < s {
			t.Fatalf("strain %v, with one film more %v", s, more)
		}
	})
}

// Worked by hand: 15 to 32 C has its middle at 23.5 and half a width of 8.5.
func TestStrain(t *testing.T) {
	exact := Wants{Air: celsius(20, 20)}
	for _, c := range []struct {
		name string
		room Room
		film Wants
		want float64
	}{
		{"middle", of(23.5, 52.5, 30), wet, 3 / 16.81}, // the part: dew point 13.19 C by Magnus
		{"warm end", of(32, 52.5, 60), wet, 1},
		{"halfway to the cold end", of(19.25, 50, 40), wet, 0.5},
		{"no low end", of(23, 2, 40), Wants{Humidity: hard.Humidity}, 0},
		{"below the margin", of(20, 50, 10.78), wet, 1.5}, // dew point 9.28 C by Magnus
		{"wet, and nothing asked", of(20, 50, 8.28), Wants{}, 2},
		{"just so", of(20, 50, 30), exact, 0},
		{"not just so", of(20.1, 50, 30), exact, math.Inf(1)},
	} {
		if got := Strain(c.room, []Wants{c.film}); got != c.want && !(math.Abs(got-c.want) < 0.03) {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
}

func TestConflicts(t *testing.T) {
	cold := Wants{Film: "the cold film", Air: celsius(5, 15), Humidity: percents(0, 60)}
	warm := Wants{Film: "the warm film", Air: celsius(20, 30), Humidity: percents(30, 75)}
	got := Conflicts([]Wants{warm, cold, hard})
	if len(got) != 2 || got[0].Low != "the cold film" || got[0].High != "the warm film" ||
		got[0].Says != "No one room suits both: the cold film wants at most 15 °C and the warm film at least 20 °C. Change the room between them." {
		t.Errorf("conflicts %+v", got)
	}
	fast, still := Wants{Film: "the fast film", Humidity: percents(70, 90), Speed: q.Range[q.Speed]{Low: 0.5, High: 1}}, Wants{Film: "the still film", Humidity: percents(0, 50), Speed: q.Range[q.Speed]{Low: 0, High: 0.2}}
	got = Conflicts([]Wants{fast, still})
	if len(got) != 2 || got[0].Of != OfHumidity || got[1].Says != "No one room suits both: the still film wants at most 0.2 m/s and the fast film at least 0.5 m/s. Change the room between them." {
		t.Errorf("conflicts %+v", got)
	}
	if got := Conflicts([]Wants{wet, hard, {}}); len(got) != 0 {
		t.Errorf("conflicts %+v, want none", got)
	}
}
