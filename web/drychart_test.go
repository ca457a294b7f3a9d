package web

import (
	"html/template"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"coatwright/planner/air"
	"coatwright/planner/drying"
	"coatwright/planner/library"
	"coatwright/planner/room"
	q "coatwright/quantity"
	"coatwright/workout"
)

// sampleChart is the chart of a film that waits for water, or for a reaction.
func sampleChart(by string, in q.Time, a air.Air) *workout.Chart {
	return workout.DryingChart(&library.Material{
		Title: "Satin clear", Build: 20e-6, Dries: map[string]library.Drying{library.Recoat: {In: in, By: by}},
		Air: library.AirRange{Air: q.Range[q.Temperature]{Low: q.Celsius(15), High: q.Celsius(30)}, Humidity: q.Range[q.Fraction]{Low: 0.3, High: 0.75}},
	}, library.Recoat, a, 1)
}

func sampleAir() air.Air {
	return air.Air{Temperature: q.Celsius(21), Humidity: 0.55, Speed: 0.1}
}

func roomSamples() []Page {
	plan := samplePlan()
	films := []room.Wants{{Film: "fine silver", Note: "material/fine-silver", Air: q.Range[q.Temperature]{Low: q.Celsius(22), High: q.Celsius(30)}, Humidity: q.Range[q.Fraction]{Low: 0.6, High: 0.75}, OverDewPoint: 12, Speed: q.Range[q.Speed]{Low: 1, High: 2}}}
	judged := room.Assess(room.Room(plan.Job.Room), films)
	days := workout.Table{Title: "The days", Apart: true, Columns: []string{"Day", "Go", "Air then"}, Rows: [][]any{{"Tue 1 Dec", "08:00 to 12:00", q.ValueOf(q.Celsius(18))}, {"Wed 2 Dec", "", ""}}}
	return []Page{
		RoomPage{
			Frame: Frame{Title: "The room", Here: AtJobs, Units: q.US}, ID: "k3v9", Plan: plan,
			Advice: room.Advice{Now: judged, Conflicts: []room.Conflict{{Says: "No one room suits both."}}, Says: "Warm the air."},
			Films:  []RoomFilm{{Film: "Fine silver", Note: "material/fine-silver", Assessment: judged}, {Film: "Rust primer", Note: "material/rust-primer"}},
			Ways:   []RoomWay{{Says: "Warm the air by 3 K.", Level: room.Go, Cost: 1020, With: "room.air=24 C"}, {Says: "Turn the fan on.", Level: room.Care, Cost: 120}},
			Gone:   []string{"Old clear"}, Slowest: "Satin clear", Chart: sampleChart("evaporation", 1800, sampleAir()),
			Weather: "2026-12-01 08:00, 4.5, 88", Asked: []string{"In a room kept at 21 °C."}, Days: &days, Says: []string{"Not read: cloud."},
			Start: &workout.Choice{Value: "start=2026-12-01T08:00", Title: "Plan it from Tue 1 Dec 08:00 on"}, Titles: map[string]string{"background/what-a-change-of-air-costs": "What a change of air costs"},
		},
		RoomPage{Plan: plan, Problem: "Line 1, column 1: found <b>.", Advice: room.Advice{Now: room.Assessment{Level: room.Care}, Says: "Nothing at hand."}},
	}
}

func TestChartDrawings(t *testing.T) {
	likeFile(t, "drying.svg", chartSVG(sampleChart("evaporation", 1800, sampleAir()), q.Metric))
	likeFile(t, "curing.svg", chartSVG(sampleChart("cure", 12*3600, sampleAir()), q.US))
}

// A line of equal time lies where the package says that the film takes so long,
// within a kelvin.
func TestChartLinesAreExact(t *testing.T) {
	for by, in := range map[string]q.Time{"evaporation": 1800, "solvent": 1800, "cure": 12 * 3600} {
		c := newTimeChart(sampleChart(by, in, sampleAir()), q.Metric)
		s := drying.State{In: in, By: drying.Pace(by)}
		checked := 0
		for k, line := range c.Lines {
			for x := c.plot.x; x < c.plot.x+c.plot.w-20; x += 7 {
				y := c.pathAt(k, x)
				if y <= c.plot.y+1 || y >= c.plot.bottom()-1 {
					continue
				}
				at := sampleAir()
				at.Humidity = q.Fraction(0.2 + 0.8*(x-c.plot.x)/c.plot.w)
				at.Temperature = q.Celsius(5 + 35*(c.plot.bottom()-y)/c.plot.h)
				colder, warmer := at, at
				colder.Temperature--
				warmer.Temperature++
				checked++
				if t0 := q.Time(line.SI); s.Time(colder) < t0 || s.Time(warmer) > t0 {
					t.Errorf("%s: the line of %v passes %.1f C and %.0f %%, where it takes %v", by, t0, at.Temperature.Celsius(), at.Humidity.Percent(), s.Time(at))
				}
			}
		}
		if checked < 50 {
			t.Errorf("%s: only %d places were looked at", by, checked)
		}
	}
}

// Whatever the air and the time: no label lies on another or leaves the plot, every
// line that crosses the chart is drawn, and the bands keep their order.
func TestChartLabels(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := air.Air{Temperature: q.Celsius(rapid.Float64Range(-20, 60).Draw(t, "celsius")), Humidity: q.Fraction(rapid.Float64Range(0.01, 1).Draw(t, "humidity")), Speed: 0.1}
		by := rapid.SampledFrom([]string{"evaporation", "solvent", "cure", "standing"}).Draw(t, "by")
		c := newTimeChart(sampleChart(by, q.Time(rapid.Float64Range(60, 1e6).Draw(t, "in")), a), rapid.SampledFrom(q.Systems()).Draw(t, "units"))
		labels := c.labels()
		for i, l := range labels {
			b := l.box()
			if b.x < c.plot.x || b.x+b.w > c.plot.x+c.plot.w || b.y < c.plot.y || b.bottom() > c.plot.bottom() {
				t.Fatalf("%q leaves the plot", l.text)
			}
			for _, o := range labels[:i] {
				if overlap(b, o.box()) {
					t.Fatalf("%q lies on %q", l.text, o.text)
				}
			}
		}
		for k := 1; k < len(c.paths); k++ {
			for i := range c.paths[k] {
				if c.paths[k][i] < c.paths[k-1][i]-1e-6 {
					t.Fatalf("line %d crosses the one before it", k)
				}
			}
		}
		drawn := string(chartSVG(c.Chart, c.units))
		if strings.Contains(drawn, "NaN") || strings.Contains(drawn, "Inf") {
			t.Fatal("a place is no number")
		}
		if !strings.Contains(drawn, `class="point"`) || !strings.Contains(drawn, "this air") {
			t.Fatal("today's air is not marked")
		}
	})
}

// The axes are in the reader's units, at the same places.
func TestChartUnits(t *testing.T) {
	c := sampleChart("evaporation", 1800, sampleAir())
	metric, us := string(chartSVG(c, q.Metric)), string(chartSVG(c, q.US))
	for _, want := range []string{">Air, °C<", ">40<", ">100<"} {
		if !strings.Contains(metric, want) {
			t.Errorf("metric: no %s", want)
		}
	}
	for _, want := range []string{">Air, °F<", ">104<", ">41<", "this air, 69.8 °F and 55 %"} {
		if !strings.Contains(us, want) {
			t.Errorf("US: no %s", want)
		}
	}
}

// Hatching stays in its band, and the strip of never is there only where it is.
func TestChartHatching(t *testing.T) {
	c := newTimeChart(sampleChart("evaporation", 1800, sampleAir()), q.Metric)
	for band := 1; band <= len(c.Lines); band++ {
		d := &drawing{}
		c.drawBand(d, band)
		text := d.b.String()
		for _, p := range points(t, text[strings.Index(text, ` d="`):]) {
			if got := c.band(p[0], p[1]); got != band && c.band(p[0], p[1]-1) != band && c.band(p[0], p[1]+1) != band {
				t.Errorf("hatching of band %d at %v is in band %d", band, p, got)
			}
		}
	}
	if !strings.Contains(string(chartSVG(c.Chart, q.Metric)), `class="never"`) || strings.Contains(string(chartSVG(sampleChart("cure", 1800, sampleAir()), q.Metric)), `class="never"`) {
		t.Error("the strip in which nothing dries")
	}
	for _, none := range []*workout.Chart{nil, {}} {
		if got := chartSVG(none, q.Metric); got != template.HTML("") {
			t.Errorf("drew %q", got)
		}
	}
	full := sampleAir()
	full.Humidity = 1
	if got := string(chartSVG(sampleChart("evaporation", 1800, full), q.Metric)); !strings.Contains(got, "this air: never") {
		t.Error("air in which nothing dries is not told")
	}
}

func TestRoomPageFinds(t *testing.T) {
	p := roomSamples()[0].(RoomPage)
	var got []string
	for _, f := range p.Advice.Now.Findings {
		got = append(got, p.Finds(f))
	}
	want := "air at 69.8 °F, wants 71.6 to 86 °F|humidity of 55 %, wants 60 to 75 %|air moving at 59.1 ft/min, wants 197 to 394 ft/min|part above the dew point by 15.1 °F, wants at least 21.6 °F"
	if strings.Join(got, "|") != want {
		t.Errorf("finds %s\nwant  %s", strings.Join(got, "|"), want)
	}
}

func BenchmarkChart(b *testing.B) {
	c := sampleChart("evaporation", 1800, sampleAir())
	for b.Loop() {
		chartSVG(c, q.Metric)
	}
}
