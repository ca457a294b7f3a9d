package workout

import (
	"slices"

	"coatwright/planner/air"
	"coatwright/planner/compressor"
	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// compressorSheet says whether a compressor keeps up with a gun.
var compressorSheet = &Sheet{
	Slug: "compressor", Title: "The compressor and its tank",
	Lead:   "Whether a compressor keeps up with a gun, for how long it does and with which pauses, what the hose takes, and how much water is to be drained.",
	Note:   "background/what-a-compressor-delivers",
	fields: compressorFields,
	answer: compressorAnswer,
}

// airDefers is to whom a sheet on compressed air defers.
const airDefers = "This says nothing of whether tank, valve and hose are sound: their plates and papers, and whoever inspects pressure vessels where you are, decide. No pressure above the plate's. Let it out before you undo anything."

// What a pump delivers is stated, or found by a test.
const (
	stated = "stated"
	timed  = "timed"
)

// ownGun is chosen for a gun that the notes do not have.
const ownGun = "own"

var (
	pumps   = q.Range[q.AirFlow]{Low: 1e-6, High: 1}
	tanks   = q.Range[q.Volume]{Low: 1e-4, High: 100}
	gauge   = q.Range[q.Pressure]{Low: 0, High: 20e5}
	pulls   = q.Range[q.Time]{Low: 0, High: 3600}
	pumping = q.Range[q.Time]{Low: 1, High: 24 * 3600}
	hoses   = q.Range[q.Length]{Low: 0, High: 500}
	bores   = q.Range[q.Length]{Low: 0.002, High: 0.1}
)

func compressorFields(e *Entry) []Field {
	guns := slices.DeleteFunc(applicatorChoices(e.lib), func(c Choice) bool { return e.lib.Tools[c.Value].Applicator.Air.High == 0 })
	guns = append(guns, Choice{Value: ownGun, Title: "A gun that I enter"})
	fields := []Field{
		{Key: "known", Label: "What the pump delivers", Default: stated, Choices: []Choice{
			{Value: stated, Title: "Its plate says, as free air"}, {Value: timed, Title: "I timed it"},
		}},
	}
	if chosen(e, "known", stated) == timed {
		fields = append(fields,
			Field{Key: "from", Label: "Timed from", Hint: "on the gauge, outlets shut: 0 bar", Default: "0 bar"},
			Field{Key: "to", Label: "Timed to", Hint: "8 bar or 116 psi", Default: "8 bar"},
			Field{Key: "took", Label: "It took", Hint: "130 s, the mean of three", Default: "130 s"})
	} else {
		fields = append(fields, Field{Key: "delivers", Label: "Free air delivered", Hint: "not the displacement: 180 L/min or 6.4 cfm", Default: "180 L/min"})
	}
	fields = append(fields,
		Field{Key: "tank", Label: "Tank", Hint: "with its pipes: 50 L or 13 US gal", Default: "50 L"},
		Field{Key: "cut-in", Label: "The pump starts at", Hint: "on the gauge: 6 bar or 87 psi", Default: "6 bar"},
		Field{Key: "cut-out", Label: "The pump stops at", Hint: "8 bar or 116 psi", Default: "8 bar"},
		Field{Key: "duty", Label: "Share of an hour that it may run", Hint: "50 %, from its plate", Optional: true},
		Field{Key: "gun", Label: "What sprays", Choices: guns, Default: firstOf(guns)})
	if chosen(e, "gun", firstOf(guns)) == ownGun {
		fields = append(fields,
			Field{Key: "draws", Label: "Air that the gun draws", Hint: "trigger pulled: 300 L/min or 11 cfm", Default: "300 L/min"},
			Field{Key: "at", Label: "Pressure at the gun", Hint: "trigger pulled: 2 bar or 29 psi", Default: "2 bar"})
	}
	return append(fields,
		Field{Key: "trigger", Label: "Share of the time that it is pulled", Hint: "over a coat: 60 %", Default: "60 %"},
		Field{Key: "pull", Label: "Longest single pull", Hint: "10 s", Default: "10 s"},
		Field{Key: "hose", Label: "Hose, length", Hint: "10 m or 33 ft", Default: "10 m"},
		Field{Key: "bore", Label: "Hose, inner width", Hint: "9 mm or 0.35 in", Default: "9 mm"},
		Field{Key: "room", Label: "Air of the room", Hint: "21 C or 70 F", Default: "21 C"},
		Field{Key: "humidity", Label: "Humidity", Hint: "55 %", Default: "55 %"},
		Field{Key: "pressure", Label: "Barometer", Hint: "1013 hPa at sea level", Default: "1013.25 hPa"})
}

// levels are the levels of a compressor's verdicts.
var levels = map[compressor.Verdict]string{compressor.Enough: "go", compressor.Pauses: "care", compressor.NotEnough: "no"}

func compressorAnswer(e *Entry) *Answer {
	tank := compressor.Tank{Volume: within(e, "tank", tanks), Atmosphere: within(e, "pressure", barometer)}
	p := pumpOf(e, tank)
	g := gunOf(e, tank.Atmosphere)
	room := air.Air{Temperature: within(e, "room", workable), Humidity: within(e, "humidity", damp)}
	u := compressor.Use{Air: g.draws, Trigger: within(e, "trigger", shares), Pull: within(e, "pull", pulls), Least: g.least}
	if !e.sound() {
		return nil
	}
	got, err := compressor.Judge(p.Compressor, u)
	if err != nil {
		e.take("known", err)
		return nil
	}
	a := &Answer{Verdict: &Verdict{levels[got.Verdict], got.Says(q.Metric)}, Defers: airDefers}
	if e.values["gun"] != ownGun {
		a.Says = []string{"Reckoned with the most air and the most pressure that the gun's note names."}
	}
	j := judged{got, p, g}
	a.Figures = append(a.Figures, j.figures()...)
	a.Figures = append(a.Figures, g.leastFigure(), g.dropFigure(), j.drained(room))
	if p.test != nil {
		a.Figures = append(a.Figures, *p.test)
	}
	return a
}

// pump is a compressor, and how its delivery is known.
type pump struct {
	compressor.Compressor
	delivers trace.Input
	test     *trace.Figure // nil where it is stated
}

func pumpOf(e *Entry, tank compressor.Tank) pump {
	p := pump{Compressor: compressor.Compressor{
		Tank: tank, CutIn: within(e, "cut-in", gauge), CutOut: within(e, "cut-out", gauge), Duty: within(e, "duty", shares),
	}}
	if p.CutIn >= p.CutOut {
		e.fail("cut-in", "Found %q, expected less than where the pump stops.", e.values["cut-in"])
	}
	if p.Duty == 0 && e.values["duty"] != "" {
		e.fail("duty", "Found %q, expected more than nothing.", e.values["duty"])
	}
	if e.text("known") == timed {
		f := pumpedUp(e, tank)
		p.test, p.delivers = &f, taken("FAD", "free air delivered", f)
		p.Delivers = q.AirFlow(f.Value.SI)
		return p
	}
	if e.problems["known"] != "" {
		return p
	}
	p.Delivers = within(e, "delivers", pumps)
	p.delivers = trace.In("FAD", "free air delivered", p.Delivers, entered("delivers"))
	return p
}

// pumpedUp is the figure of what a pump delivers by a pump-up test.
func pumpedUp(e *Entry, tank compressor.Tank) trace.Figure {
	from, to, took := within(e, "from", gauge), within(e, "to", gauge), within(e, "took", pumping)
	if from >= to {
		e.fail("from", "Found %q, expected less than what the gauge showed at the end.", e.values["from"])
	}
	if !e.sound() {
		return trace.Figure{}
	}
	return trace.Figure{
		Key: "delivered", Name: "Free air that the pump delivers", Value: q.ValueOf(tank.Delivery(from, to, took)), Formula: compressor.PumpUpFormula,
		Inputs: []trace.Input{
			trace.In("Vr + Vpipe", "tank with its pipes", tank.Volume, entered("tank")),
			trace.In("", "gauge at the start", from, entered("from")), trace.In("Pmax", "gauge at the end", to, entered("to")),
			trace.In("Patm", "barometer", tank.Atmosphere, entered("pressure")), trace.In("t", "it took", took, entered("took")),
		},
		Remarks: []string{"A tank that ends hot makes the pump look better than it is. From where the pump starts to where it stops is nearer to what a gun gets than from nothing."},
	}
}
