package main

import (
	"encoding/json"
	"net/http"
	"net/url"
	"regexp"
	"slices"
	"strings"
	"testing"

	"golang.org/x/net/html"

	"coatwright/planner"
	"coatwright/planner/room"
	q "coatwright/quantity"
)

// coldForm is the frame job in a room that is too cold, with a part that is too
// near the dew point.
func coldForm() url.Values {
	form := frameForm()
	form.Set("air", "14 C")
	form.Set("humidity", "72 %")
	form.Set("surface", "11 C")
	return form
}

// front is weather of two days: the first dry, the second damp.
const front = "time, temperature, humidity, cloud\n" +
	"2026-12-01 06:00, 8, 80, 1\n2026-12-01 12:00, 14, 70, 1\n2026-12-01 20:00, 10, 80, 2\n" +
	"2026-12-02 06:00, 19, 95, 8\n2026-12-02 20:00, 19, 95, 8\n"

func roomAddress(plan, weather string) string {
	return plan + "/room?" + url.Values{"weather": {weather}}.Encode()
}

// buttons are the values that the page's buttons post as "with".
func buttons(t *testing.T, page string) []string {
	t.Helper()
	root, err := html.Parse(strings.NewReader(page))
	if err != nil {
		t.Fatal(err)
	}
	var out []string
	for n := range root.Descendants() {
		if n.Data != "button" {
			continue
		}
		value, with := "", false
		for _, a := range n.Attr {
			with = with || a.Key == "name" && a.Val == "with"
			if a.Key == "value" {
				value = a.Val
			}
		}
		if with {
			out = append(out, value)
		}
	}
	return out
}

// The plan leads to its room, which is judged film by film, and every way out can
// be planned: in that room the same plan is a go.
func TestRoomOfAPlan(t *testing.T) {
	s := newSite(t, t.TempDir())
	address := post(t, s, coldForm()).Header.Get("Location")
	if !strings.Contains(text(t, get(t, s, address)), `href="`+address+`/room"`) {
		t.Error("the plan does not lead to its room")
	}
	r := get(t, s, address+"/room")
	body := text(t, r)
	for _, want := range []string{"The room does not suit", "wants 15 to 32 °C", "part above the dew point by 1.96 °C, wants at least 3 °C", `href="/note/material/waterborne-sealer"`, `class="chart"`, "this air: ", "The same as a table", "Warm the part by 1.5 K"} {
		if !strings.Contains(body, want) {
			t.Errorf("the page does not say %q", want)
		}
	}
	ways := buttons(t, body)
	if r.StatusCode != http.StatusOK || len(ways) < 2 {
		t.Fatalf("%s with the ways %q", r.Status, ways)
	}
	for _, with := range ways {
		made := postTo(t, s, address+"/whatif", url.Values{"with": {with}})
		if made.StatusCode != http.StatusSeeOther {
			t.Errorf("planning it with %s: %s", with, made.Status)
			continue
		}
		p := planAt(t, s, made.Header.Get("Location"))
		if !slices.ContainsFunc(p.Conditions, func(c planner.Condition) bool {
			return c.Level == "go" && strings.HasPrefix(c.What, "The room suits every film")
		}) {
			t.Errorf("with %s: %+v", with, p.Conditions)
		}
	}
	if p := planAt(t, s, address); p.Job.Room.Temperature != q.Celsius(14) {
		t.Error("the plan itself was changed")
	}
}

// A room that suits offers nothing to change.
func TestRoomThatSuits(t *testing.T) {
	s := newSite(t, t.TempDir())
	address := post(t, s, frameForm()).Header.Get("Location")
	body := text(t, get(t, s, address+"/room"))
	if !strings.Contains(body, "The room suits every film") || strings.Contains(body, "What would make it suit") || len(buttons(t, body)) != 0 {
		t.Errorf("ways out of a room that suits: %q", buttons(t, body))
	}
}

// Pasted weather shows its days and what was not read; the best start can be planned,
// and an hour that suits better is one of the ways out.
func TestRoomWithWeather(t *testing.T) {
	s := newSite(t, t.TempDir())
	address := post(t, s, frameForm()).Header.Get("Location")
	body := text(t, get(t, s, roomAddress(address, front)))
	for _, want := range []string{"Tue 1 Dec", "Wed 2 Dec", "Not read: cloud.", "none: it never suits long enough", "In a room kept at 21 °C with this air let in"} {
		if !strings.Contains(body, want) {
			t.Errorf("the page does not say %q", want)
		}
	}
	if got := fields(t, body)["weather"]; strings.TrimSpace(got) != strings.TrimSpace(front) {
		t.Errorf("the weather comes back as %q", got)
	}
	all := buttons(t, body)
	i := slices.IndexFunc(all, func(with string) bool { return strings.Contains(with, "start=2026-12-01T") })
	if i < 0 {
		t.Fatalf("no start can be planned: %q", all)
	}
	made := postTo(t, s, address+"/whatif", url.Values{"with": {all[i]}})
	if p := planAt(t, s, made.Header.Get("Location")); p.Job.Start.Format("2006-01-02") != "2026-12-01" || p.Job.Room.Humidity == 0.55 {
		t.Errorf("planned from %v at %v", p.Job.Start, p.Job.Room.Humidity)
	}
	damp := frameForm()
	damp.Set("humidity", "90 %")
	waits := text(t, get(t, s, roomAddress(post(t, s, damp).Header.Get("Location"), front)))
	if !regexp.MustCompile(`Wait until Tue 1 Dec`).MatchString(waits) {
		t.Error("waiting is no way out of damp air that dries")
	}
}

func TestRoomWithNonsense(t *testing.T) {
	s := newSite(t, t.TempDir())
	address := post(t, s, frameForm()).Header.Get("Location")
	r := get(t, s, roomAddress(address, "2026-12-01 08:00, cold, 80"))
	body := text(t, r)
	if r.StatusCode != http.StatusUnprocessableEntity || !strings.Contains(body, `id="weather-problem"`) || !strings.Contains(body, "Line 1, column 19: found &#34;cold&#34;") {
		t.Errorf("weather that is none: %s", r.Status)
	}
	if got := fields(t, body)["weather"]; strings.TrimSpace(got) != "2026-12-01 08:00, cold, 80" {
		t.Errorf("it comes back as %q", got)
	}
	if r := get(t, s, "/plan/nosuch/room"); r.StatusCode != http.StatusNotFound {
		t.Errorf("no such plan: %s", r.Status)
	}
	refused := frameForm()
	refused.Set("hours", "Mon 08:00-08:05")
	at := post(t, s, refused).Header.Get("Location")
	if r := get(t, s, at+"/room"); r.StatusCode != http.StatusConflict || !strings.Contains(text(t, r), `href="`+at+`"`) {
		t.Errorf("the room of a job without a plan: %s", r.Status)
	}
}

func TestRoomAsJSON(t *testing.T) {
	s := newSite(t, t.TempDir())
	address := post(t, s, coldForm()).Header.Get("Location")
	var got struct {
		Advice  struct{ Now struct{ Level string } }
		Ways    []struct{ With string }
		Slowest string
		Chart   struct {
			Lines []q.Value
			Times [][]*q.Value
		}
		Days *struct{ Rows [][]any }
	}
	body := text(t, get(t, s, roomAddress(address, front)+"&format=json"))
	if err := json.Unmarshal([]byte(body), &got); err != nil {
		t.Fatal(err)
	}
	if got.Advice.Now.Level != "no" || len(got.Ways) == 0 || got.Slowest == "" || len(got.Chart.Times) < 8 || len(got.Chart.Lines) == 0 || got.Days == nil || len(got.Days.Rows) != 2 {
		t.Errorf("%s", body)
	}
	if again := text(t, get(t, s, address+"/room", "Accept", "application/json")); !strings.Contains(again, `"days":null`) {
		t.Error("days without weather")
	}
}

// Figures are in the reader's units.
func TestRoomInUSUnits(t *testing.T) {
	s := newSite(t, t.TempDir())
	address := post(t, s, coldForm()).Header.Get("Location")
	body := text(t, get(t, s, address+"/room", "Cookie", "units=us"))
	for _, want := range []string{"wants 59 to 89.6 °F", "Air, °F", "The room does not suit: 57.2 °F"} {
		if !strings.Contains(body, want) {
			t.Errorf("the page does not say %q", want)
		}
	}
	if strings.Contains(body, "32 °C") {
		t.Error("a limit is left in Celsius")
	}
}

// The sheets about air show what they ask for, and their charts.
func TestRoomSheets(t *testing.T) {
	s := newSite(t, t.TempDir())
	for sheet, want := range map[string]string{
		"air": "Dew point", "psychrometer": "two thermometers", "drying": `class="chart"`, "forced-drying": "no permission", "room": "Film by film", "weather": "The days, in working hours",
	} {
		r := get(t, s, "/work-out/"+sheet)
		if body := text(t, r); r.StatusCode != http.StatusOK || !strings.Contains(body, want) {
			t.Errorf("%s: %s without %q", sheet, r.Status, want)
		}
		if data := text(t, get(t, s, "/work-out/"+sheet+"?format=json")); !json.Valid([]byte(data)) {
			t.Errorf("%s as JSON is none", sheet)
		}
	}
	if data := text(t, get(t, s, "/work-out/drying?humidity=100+%25&format=json")); !json.Valid([]byte(data)) {
		t.Error("a time that never comes is not JSON")
	}
	r := get(t, s, "/work-out/weather?weather=rain")
	if body := text(t, r); r.StatusCode != http.StatusUnprocessableEntity || !strings.Contains(body, `id="weather-problem"`) {
		t.Errorf("weather that is none: %s", r.Status)
	}
}

// wayOf writes what ParseAlternative reads, as fine as the room that it leads to.
func TestWayIsAnAlternative(t *testing.T) {
	job := &planner.Job{}
	job.Room.Temperature, job.Room.Humidity, job.Room.Surface, job.Room.Speed = q.Celsius(14), 0.72, q.Celsius(11), 0.1
	then := room.Room(job.Room)
	then.Temperature, then.Humidity = q.Celsius(17.5), 0.58173
	w := wayOf(room.Change{Acts: []room.Act{{Says: "Warm it."}, {Says: "Then wait."}}, Cost: 2.5, Room: then}, job)
	if w.With != "room.air=17.5 C, room.humidity=58.17 %" || w.Says != "Warm it. Then wait." || w.Cost != 150 {
		t.Errorf("%+v", w)
	}
	if _, err := planner.ParseAlternative(w.With); err != nil {
		t.Error(err)
	}
	if w := wayOf(room.Change{Room: room.Room(job.Room)}, job); w.With != "" {
		t.Errorf("a change that changes nothing: %q", w.With)
	}
}

func BenchmarkRoomPage(b *testing.B) {
	s := newSite(b, b.TempDir())
	address := roomAddress(post(b, s, coldForm()).Header.Get("Location"), front)
	for b.Loop() {
		if r := get(b, s, address); r.StatusCode != http.StatusOK {
			b.Fatal(r.Status)
		}
	}
}
