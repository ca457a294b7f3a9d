package workout

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"coatwright/planner/drying"
	"coatwright/planner/library"
	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// bakeSheet says whether a film may be hurried by heat or by a fan, and how long
// it is then held.
var bakeSheet = &Sheet{
	Slug: "forced-drying", Title: "Heat and fans on a film",
	Lead:   "Whether a film may be warmed or blown on, how warm its part may get, how long to hold it there, and what that equals without heat.",
	Note:   "background/forced-drying",
	fields: bakeFields,
	answer: bakeAnswer,
}

// bakeDefer is to whom an answer on heat defers.
const bakeDefer = "This is no permission to heat anything. The data sheets of the film and of the part, the maker of the oven or lamp, and the local rules on fire come first; solvent in a closed warm box can explode."

// ownPart is chosen for a part that no note knows.
const ownPart = "own-part"

var (
	baking   = q.Range[q.Temperature]{Low: q.Celsius(0), High: q.Celsius(250)}
	warmings = q.Range[q.Time]{Low: 0, High: 24 * 3600}
)

func bakeFields(e *Entry) []Field {
	parts := partChoices(e.lib)
	fields := slices.Concat(bakedFields(e), []Field{{Key: "part", Label: "Part", Choices: parts, Default: hardiest(e.lib, parts)}})
	if e.choice("part", hardiest(e.lib, parts)) == ownPart {
		fields = append(fields, Field{Key: "limit", Label: "The warmest that the part may get", Hint: "80 C or 176 F", Default: "80 C"})
	}
	return slices.Concat(fields, []Field{
		{Key: "at", Label: "Warmth of the part", Hint: "60 C or 140 F, measured on it and not in the oven; left empty: as warm as is allowed", Optional: true},
		{Key: "heat-up", Label: "Warming it up takes", Hint: "15 min; a thick part an hour", Default: "15 min"},
		{Key: "flash", Label: "Flash-off before any warmth", Hint: "15 min; left empty: as long as its note asks for between coats", Optional: true},
		{Key: "held", Label: "Held there for", Hint: "30 min, as its data sheet says; left empty: as worked out", Optional: true},
	}, roomFields())
}

// bakedFields ask for a film and a state. The film is at first one that may be
// warmed, the state the last that a reaction brings within a day.
func bakedFields(e *Entry) []Field {
	fields := dryingFields(e, anyBaked)
	if len(fields) < 2 {
		return fields
	}
	states := fields[1].Choices
	m := e.lib.Materials[e.choice("of", fields[0].Default)]
	for _, c := range states {
		if t := m.Dries[c.Value]; drying.Pace(t.By) == drying.Cure && t.In <= day {
			fields[1].Default = c.Value
		}
	}
	return fields
}

// anyBaked is the film laid last of those that may be warmed most.
func anyBaked(lib *library.Library, choices []Choice) string {
	best, most := firstOf(choices), q.Temperature(0)
	role := ""
	for _, c := range choices {
		m := lib.Materials[c.Value]
		if m.Forced.Heat > 0 && (m.Role != role || m.Forced.Heat > most) {
			best, most, role = c.Value, m.Forced.Heat, m.Role
		}
	}
	return best
}

// partChoices are the surfaces whose notes say what warmth they stand.
func partChoices(lib *library.Library) []Choice {
	var known []*library.Substrate
	for s := range maps.Values(lib.Substrates) {
		if s.HeatLimit > 0 {
			known = append(known, s)
		}
	}
	slices.SortFunc(known, func(a, b *library.Substrate) int { return strings.Compare(a.Title, b.Title) })
	var out []Choice
	for _, s := range known {
		out = append(out, Choice{Value: s.Slug, Title: s.Title})
	}
	return append(out, Choice{ownPart, "A part of which I know the limit", "From its data sheet"})
}

// hardiest is the first surface that stands the most warmth.
func hardiest(lib *library.Library, choices []Choice) string {
	best, most := firstOf(choices), q.Temperature(0)
	for _, c := range choices {
		if s := lib.Substrates[c.Value]; s != nil && s.HeatLimit > most {
			best, most = c.Value, s.HeatLimit
		}
	}
	return best
}

// baked is a film that somebody means to hurry.
type baked struct {
	drier
	oven drying.Oven
	part trace.Input // the most that it may get
	wish q.Temperature
	fan  q.Speed
	held q.Time // zero for as worked out
}

func readBaked(e *Entry) baked {
	b := baked{drier: readDrier(e), wish: within(e, "at", baking), fan: e.lib.Words.RoomChanges.Fan.Most, held: within(e, "held", warmings)}
	chosen := e.text("part")
	limit := q.Temperature(0)
	switch s := e.lib.Substrates[chosen]; {
	case chosen == ownPart:
		limit = within(e, "limit", baking)
		b.part = trace.In("", "the most that the part may get", limit, entered("limit"))
	case s != nil:
		limit = s.HeatLimit
		b.part = trace.In("", "the most that the part may get", limit, fromNote("substrate/"+s.Slug, ""))
	}
	b.oven = drying.Oven{Room: b.air, At: b.wish, HeatUp: within(e, "heat-up", warmings), Part: limit}
	flash := within(e, "flash", warmings)
	if b.Material == nil {
		return b
	}
	b.oven.Film, b.oven.Flash = b.Forced.Heat, stateOf(b.Flash, 1)
	if e.values["flash"] != "" {
		b.oven.Flash = drying.State{In: flash}
	}
	return b
}

func bakeAnswer(e *Entry) *Answer {
	b := readBaked(e)
	if b.Material == nil || !e.sound() {
		return nil
	}
	helps := b.state().Hurry(b.hurried(), b.oven, b.fan)
	fan, heat := helps[0], helps[1]
	a := &Answer{Verdict: b.judge(heat), Defers: bakeDefer}
	if heat.Allowed {
		a.Says = append(a.Says, heat.Says)
	}
	if b.fan > 0 {
		a.Says = append(a.Says, fan.Says)
	}
	if heat.Bake != nil {
		a.Figures = b.bakeFigures(*heat.Bake)
		a.Tables = append(a.Tables, b.table(heat.Bake.At))
	}
	if without, ok := b.timeFigure(); ok {
		without.Key, without.Name = "without", "In the room, without heat"
		a.Figures = append(a.Figures, without)
	}
	if len(a.Figures) == 0 || slices.ContainsFunc(a.Figures, b.cools) {
		a.Figures = append(a.Figures, b.wetFigure())
	}
	return a
}

// cools reports whether the wet bulb goes into a figure.
func (b baked) cools(f trace.Figure) bool {
	return slices.ContainsFunc(f.Inputs, func(in trace.Input) bool { return in.Origin == fromFigure("wet-bulb") })
}

// judge says whether the film may be warmed.
func (b baked) judge(heat drying.Help) *Verdict {
	switch {
	case !heat.Allowed, heat.Bake == nil:
		return &Verdict{"no", heat.Says}
	case heat.Saves <= 0:
		return &Verdict{"care", fmt.Sprintf("Its note allows %s, but here it gains nothing.", metric(b.Forced.Heat))}
	case b.wish > heat.Bake.At:
		return &Verdict{"care", fmt.Sprintf("Not %s: %s is %s.", metric(b.wish), metric(heat.Bake.At), heldBack[heat.Bake.Limit])}
	case heat.Bake.Limit == drying.ByPart:
		return &Verdict{"care", fmt.Sprintf("No warmer than %s, which is %s.", metric(heat.Bake.At), heldBack[drying.ByPart])}
	}
	return &Verdict{"go", fmt.Sprintf("Its note allows it, up to %s on the part. %s", metric(b.Forced.Heat), b.Forced.Because)}
}

// heldBack says what a bake is limited by.
var heldBack = map[drying.Limit]string{
	drying.ByFilm: "the most that the film may get",
	drying.ByPart: "the most that the part may get",
}
