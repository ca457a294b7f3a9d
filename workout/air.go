package workout

import (
	"fmt"

	"coatwright/planner/air"
	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// airSheet says what the air of a room holds and where damp settles.
var airSheet = &Sheet{
	Slug: "air", Title: "The air and the dew point",
	Lead: "What the air holds, how far a part is from the dew point, and how fast water leaves.",
	Note: "background/dew-point-and-cold-parts",
	fields: func(*Entry) []Field {
		return []Field{
			{Key: "air", Label: "Air", Hint: "with its unit: 21 C or 70 F", Default: "21 C"},
			{Key: "humidity", Label: "Humidity", Hint: "55 %", Default: "55 %"},
			{Key: "surface", Label: "Part", Hint: "how warm the part is", Default: "20 C"},
			{Key: "airflow", Label: "Air speed at the part", Hint: "still air 0.1 m/s, a fan 2 m/s", Default: "0.1 m/s"},
			{Key: "pressure", Label: "Barometer", Hint: "1013 hPa at sea level", Default: "1013.25 hPa"},
		}
	},
	answer: airAnswer,
}

var (
	workable  = q.Range[q.Temperature]{Low: q.Celsius(-20), High: q.Celsius(60)}
	damp      = q.Range[q.Fraction]{Low: 0.01, High: 1}
	breezes   = q.Range[q.Speed]{Low: 0, High: 10}
	barometer = q.Range[q.Pressure]{Low: 50e3, High: 110e3}
)

func airAnswer(e *Entry) *Answer {
	a := air.Air{
		Temperature: within(e, "air", workable), Humidity: within(e, "humidity", damp),
		Speed: within(e, "airflow", breezes), Pressure: within(e, "pressure", barometer),
	}
	surface := within(e, "surface", workable)
	if !e.sound() {
		return nil
	}
	inputs := []trace.Input{
		trace.In("t", "air", a.Temperature, entered("air")), trace.In("φ", "humidity", a.Humidity, entered("humidity")),
	}
	dew := a.DewPoint()
	margin := float64(surface - dew)
	return &Answer{
		Says: []string{fmt.Sprintf("The part is %.1f K above the dew point.", margin)},
		Figures: []trace.Figure{
			{Key: "dew-point", Name: "Dew point", Value: q.ValueOf(dew), Formula: air.DewPointFormula, Inputs: inputs},
		},
	}
}
