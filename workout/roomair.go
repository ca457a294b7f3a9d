package workout

import (
	"coatwright/planner/air"
	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// Limits of what may be entered of a room. They catch slips of the pen.
var (
	workable  = q.Range[q.Temperature]{Low: q.Celsius(-20), High: q.Celsius(60)}
	damp      = q.Range[q.Fraction]{Low: 0.01, High: 1}
	breezes   = q.Range[q.Speed]{Low: 0, High: 10}
	barometer = q.Range[q.Pressure]{Low: 50e3, High: 110e3}
	heights   = q.Range[q.Length]{Low: -430, High: 5500}
)

// roomFields ask for the air of a room, as air, humidity and airflow.
func roomFields() []Field {
	return []Field{
		{Key: "air", Label: "Air", Hint: "21 C or 70 F", Default: "21 C"},
		{Key: "humidity", Label: "Humidity", Hint: "55 %", Default: "55 %"},
		{Key: "airflow", Label: "Air speed at the part", Hint: "still air 0.1 m/s or 20 ft/min, a fan that is felt 2 m/s or 400 ft/min", Default: "0.1 m/s"},
	}
}

// surfaceField asks for the warmth of the part.
var surfaceField = Field{Key: "surface", Label: "Part", Hint: "its own warmth, in its coldest place: 20 C or 68 F", Default: "20 C"}

// readRoom reads the air of a room.
func readRoom(e *Entry) air.Air {
	return air.Air{
		Temperature: within(e, "air", workable), Humidity: within(e, "humidity", damp), Speed: within(e, "airflow", breezes),
	}
}

// pressureFields ask for a barometer, or for how high the shop lies.
func pressureFields() []Field {
	return []Field{
		{Key: "altitude", Label: "Height of the shop above the sea", Hint: "300 m or 1000 ft", Optional: true},
		{Key: "barometer", Label: "Barometer in the shop, in place of the height", Hint: "1013 hPa or 29.9 inHg; not what a weather service gives, which is reckoned down to the sea", Optional: true},
	}
}

// readPressure is the pressure of the air, and its how where it was worked out:
// by the barometer, else by the height, else that at the sea.
func readPressure(e *Entry) (known[q.Pressure], []trace.Figure) {
	height := within(e, "altitude", heights)
	if p := within(e, "barometer", barometer); e.values["barometer"] != "" {
		return known[q.Pressure]{value: p, from: entered("barometer")}, nil
	}
	if e.values["altitude"] == "" {
		return known[q.Pressure]{value: air.StandardPressure, from: trace.Origin{From: trace.FromDefault}}, nil
	}
	p, err := air.PressureAt(height)
	if err != nil {
		e.take("altitude", err)
		return known[q.Pressure]{}, nil
	}
	f := trace.Figure{
		Key: "pressure", Name: "Pressure of the air", Value: q.ValueOf(p), Formula: air.PressureFormula,
		Inputs:  []trace.Input{trace.In("Z", "height above the sea", height, entered("altitude"))},
		Remarks: []string{"Of the standard atmosphere. Weather shifts it by some 3 %, which changes little here."},
	}
	return known[q.Pressure]{value: p, from: fromFigure(f.Key)}, []trace.Figure{f}
}
