package workout

import (
	"fmt"
	"slices"

	"coatwright/planner/air"
	"coatwright/planner/drying"
	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// airSheet says what the air of a room holds and where damp settles.
var airSheet = &Sheet{
	Slug: "air", Title: "The air and the dew point",
	Lead: "What the air holds, how far a part is from the dew point, and how fast water leaves.",
	Note: "background/dew-point-and-cold-parts",
	fields: func(*Entry) []Field {
		return slices.Concat(roomFields(), []Field{surfaceField}, pressureFields())
	},
	answer: airAnswer,
}

// What a surface is to lie over the dew point, and the air at most to hold.
// Source: as air.MarginFormula.
const (
	overDewPoint q.Difference = 3
	dampest      q.Fraction   = 0.85
)

// held is the air of a room, and the figures that are worked out of it.
type held struct {
	air.Air
	surface  q.Temperature
	pressure known[q.Pressure]
}

func airAnswer(e *Entry) *Answer {
	h := held{Air: readRoom(e), surface: within(e, "surface", workable)}
	var figures []trace.Figure
	h.pressure, figures = readPressure(e)
	if !e.sound() {
		return nil
	}
	h.Pressure = h.pressure.value
	return &Answer{
		Verdict: h.judge(),
		Figures: slices.Concat([]trace.Figure{
			h.dewFigure(), h.marginFigure(), h.leastFigure(), h.wetFigure(), h.ratioFigure(),
			h.fullFigure(), h.vapourFigure(), h.waterFigure(),
		}, figures),
		Tables: []Table{h.warmedTable()},
	}
}

// judge holds the part and the air against the published rule.
func (h held) judge() *Verdict {
	over := h.OverDewPoint(h.surface)
	switch {
	case over < 0:
		return &Verdict{"no", fmt.Sprintf("The part is %.1f K below the dew point: water settles on it.", -over)}
	case over < overDewPoint:
		return &Verdict{"no", fmt.Sprintf("The part is %.1f K above the dew point, and that should be at least 3 K. Warm the part or dry the air.", over)}
	case h.Humidity >= dampest:
		return &Verdict{"care", fmt.Sprintf("The part is %.1f K above the dew point, but the air holds %.0f %% and should hold less than 85 %%.", over, h.Humidity.Percent())}
	}
	return &Verdict{"go", fmt.Sprintf("The part is %.1f K above the dew point: no water settles on it. What a film wants besides, its own data sheet says.", over)}
}

func (h held) t() trace.Input {
	return trace.In("t", "temperature of the air", h.Temperature, entered("air"))
}

func (h held) rh() trace.Input {
	return trace.In("RH", "humidity of the air", h.Humidity, entered("humidity"))
}

// full, vapour, dew and wet are figures as they go into others.
func (h held) full() trace.Input {
	return trace.In("p_ws(t)", "vapour pressure of air that is full", air.SaturationPressure(h.Temperature), fromFigure("full-pressure"))
}

func (h held) vapour() trace.Input {
	return trace.In("p_w", "vapour pressure of the air", h.VapourPressure(), fromFigure("vapour-pressure"))
}

func (h held) dew() trace.Input {
	return trace.In("t_dew", "dew point", h.DewPoint(), fromFigure("dew-point"))
}

func (h held) fullFigure() trace.Figure {
	return trace.Figure{
		Key: "full-pressure", Name: "Vapour pressure of air that is full", Value: h.full().Value, Formula: air.SaturationFormula,
		Inputs: []trace.Input{h.t()},
	}
}

func (h held) vapourFigure() trace.Figure {
	f := trace.Figure{
		Key: "vapour-pressure", Name: "Vapour pressure of this air", Value: h.vapour().Value, Formula: air.VapourFormula,
		Inputs: []trace.Input{h.rh(), h.full()},
	}
	if h.Temperature < q.Celsius(0) {
		f.Remarks = []string{"Below freezing the humidity is counted over ice here. Most meters count it over water, and show up to a tenth less."}
	}
	return f
}

// waterFormula is W/v of a m3, with the pressure of the air gone from both.
var waterFormula = trace.Formula{
	Text:   "m = 0.621945 p_w / (0.287042 T), in kg, kPa and K",
	Source: "ASHRAE Handbook, Fundamentals (2017), ch. 1, absolute humidity W/v with eq. 20 and 26 put in",
	Note:   air.WaterFormula.Note,
}

func (h held) waterFigure() trace.Figure {
	most := h.Air
	most.Humidity = 1
	return trace.Figure{
		Key: "water", Name: "Water in a cubic metre of it", Value: q.ValueOf(inACubicMetre(h.Air)), Formula: waterFormula,
		Inputs: []trace.Input{h.vapour(), trace.In("T", "temperature of the air", h.Temperature, entered("air"))},
		Remarks: []string{
			fmt.Sprintf("Full, it would hold %s.", metric(inACubicMetre(most))),
		},
	}
}

// inACubicMetre is the water in a m3 of a.
func inACubicMetre(a air.Air) q.Mass { return q.Mass(a.Vapour()) }

func (h held) dewFigure() trace.Figure {
	return trace.Figure{Key: "dew-point", Name: "Dew point", Value: h.dew().Value, Formula: air.DewPointFormula, Inputs: []trace.Input{h.rh(), h.full()}}
}

func (h held) marginFigure() trace.Figure {
	return trace.Figure{
		Key: "over-dew-point", Name: "The part lies above the dew point by", Value: q.ValueOf(h.OverDewPoint(h.surface)), Formula: air.MarginFormula,
		Inputs:  []trace.Input{trace.In("t_surface", "the part", h.surface, entered("surface")), h.dew()},
		Remarks: []string{"A hygrometer that is 5 % off moves the dew point by about 1 K."},
	}
}

// leastFigure is how warm the part has to be.
func (h held) leastFigure() trace.Figure {
	formula := air.MarginFormula
	formula.Text = "t_surface = t_dew + 3 K"
	return trace.Figure{
		Key: "least-surface", Name: "The part has to be at least", Value: q.ValueOf(h.LeastSurface(overDewPoint)), Formula: formula,
		Inputs: []trace.Input{h.dew()},
	}
}

func (h held) wetFigure() trace.Figure {
	return trace.Figure{
		Key: "wet-bulb", Name: "Wet bulb", Value: q.ValueOf(h.WetBulb()), Formula: air.WetBulbFormula,
		Inputs:  []trace.Input{h.t(), h.vapour(), h.pressure.in("p", "pressure of the air")},
		Remarks: []string{"A wet film cools down to this while water leaves it and nothing warms it."},
	}
}

// ratioFigure is how fast water leaves, held against the air that drying times
// are given for.
func (h held) ratioFigure() trace.Figure {
	ref, formula := drying.Reference(), air.EvaporationFormula
	formula.Text = "E/E0, " + formula.Text
	return trace.Figure{
		Key: "evaporation", Name: "Water leaves, of what it does in the reference air", Value: q.ValueOf(leaving(h.Air)), Formula: formula,
		Inputs: []trace.Input{
			trace.In("t_surface", "the wet film, at the wet bulb", h.WetBulb(), fromFigure("wet-bulb")), h.vapour(),
			trace.In("v", "speed of the air at the part", h.Speed, entered("airflow")),
			trace.In("t0", "temperature of the reference air", ref.Temperature, trace.Origin{From: trace.FromSource, At: "ISO 3270"}),
			trace.In("RH0", "humidity of the reference air", ref.Humidity, trace.Origin{From: trace.FromSource, At: "ISO 3270"}),
			trace.In("v0", "speed of still air", ref.Speed, trace.Origin{From: trace.FromDefault}),
			h.pressure.in("p", "pressure of both airs"),
		},
		Remarks: []string{
			"The reference air, which drying times are given for, is 23 °C, 50 % humidity and still.",
			"The equation is for free water and not for paint: only the ratio of two airs is of use.",
		},
	}
}

// leaving is how fast water leaves in a, of what it does in the reference air at
// the same pressure: the equation was found near the sea, and holds for the ratio.
func leaving(a air.Air) q.Fraction {
	ref := drying.Reference()
	ref.Pressure = a.Pressure
	return q.Fraction(a.Evaporation() / ref.Evaporation())
}

// warmer is how much the air is warmed in the table, in K.
var warmer = []q.Temperature{0, 2, 5, 10, 15}

// warmedTable says what the air becomes when it is warmed with the water in it.
func (h held) warmedTable() Table {
	t := Table{Title: "The same air, warmed", Columns: []string{"Air", "Humidity", "Water leaves, of the reference"}}
	for _, d := range warmer {
		to := h.Temperature + d
		if to > workable.High {
			break
		}
		a := h.WarmedTo(to)
		t.Rows = append(t.Rows, []any{q.ValueOf(to), q.ValueOf(a.Humidity), q.ValueOf(leaving(a))})
	}
	return t
}
