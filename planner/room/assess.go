package room

import (
	"fmt"
	"math"
	"strconv"

	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// sliver is what the search for a dew point may leave over, in K: a part at the
// temperature of full air is not below its dew point.
const sliver q.Difference = 1e-6

// Formula is how the levels come about.
var Formula = trace.Formula{
	Text:   "no outside a film's range, care in the outer tenth of it, go within; and t_surface - t_dew >= what the film wants",
	Source: "the film's data sheet, by its note; over the dew point ISO 8502-4, as quoted by a trade article; the tenth is common practice, no published source",
	Note:   "background/dew-point-and-cold-parts",
}

// Subject is what a finding is about.
type Subject string

// The subjects.
const (
	OfAir      Subject = "air" // its temperature
	OfHumidity Subject = "humidity"
	OfPart     Subject = "over-dew-point"
	OfSpeed    Subject = "airflow"
)

// Finding is one thing about the room that one film does not like.
type Finding struct {
	Level Level    `json:"level"`
	Of    Subject  `json:"of"`
	Film  string   `json:"film"`
	Note  string   `json:"note"`
	Found q.Value  `json:"found"`
	Low   *q.Value `json:"low"`  // the least that is wanted
	High  *q.Value `json:"high"` // the most; null where there is none
	Off   q.Value  `json:"off"`  // No: how far outside; Care: how far within the nearer end
	What  string   `json:"what"` // a sentence
}

// Assessment is a room judged for some films.
type Assessment struct {
	Level    Level     `json:"level"`
	Findings []Finding `json:"findings"` // film by film; empty where all is well
	DewPoint q.Value   `json:"dew_point"`
	Over     q.Value   `json:"over_dew_point"`
	Says     string    `json:"says"` // the room in one sentence
}

// Assess judges a room for films.
func Assess(r Room, films []Wants) Assessment {
	dewPoint := r.DewPoint()
	over := q.Difference(r.Surface - dewPoint)
	out := Assessment{Findings: []Finding{}, DewPoint: q.ValueOf(dewPoint), Over: q.ValueOf(over)}
	for _, w := range films {
		out.Findings = append(out.Findings, w.findings(r, over)...)
	}
	for _, f := range out.Findings {
		out.Level = max(out.Level, f.Level)
	}
	out.Says = map[Level]string{
		Go:   "The room suits every film: ",
		Care: "The room suits every film, some of them only just: ",
		No:   "The room does not suit: ",
	}[out.Level] + r.String() + "."
	return out
}

// String says the room in figures.
func (r Room) String() string {
	return fmt.Sprintf("%s, %s humidity, the part %s", degrees(r.Temperature), percent(r.Humidity), overText(r.Over()))
}

func overText(over q.Difference) string {
	if over < 0 {
		return kelvins(-over) + " below the dew point"
	}
	return kelvins(over) + " above the dew point"
}

// findings is what a film does not like about a room whose part lies so far over
// the dew point.
func (w Wants) findings(r Room, over q.Difference) []Finding {
	var out []Finding
	if f, off := measure(OfAir, w.Air, r.Temperature); f.Level != Go {
		f.Off = q.ValueOf(q.Difference(off))
		f.What = fmt.Sprintf("The air is %s; %s wants %s to %s °C: %s.", degrees(r.Temperature), w.Film,
			whole(w.Air.Low.Celsius()), whole(w.Air.High.Celsius()), end(f.Level, kelvins(q.Difference(off)), "cold", "warm", r.Temperature < w.Air.Middle()))
		out = append(out, f)
	}
	if f, off := measure(OfHumidity, w.Humidity, r.Humidity); f.Level != Go {
		f.Off = q.ValueOf(off)
		f.What = fmt.Sprintf("The air has %s humidity; %s wants %s to %s %%: %s.", percent(r.Humidity), w.Film,
			whole(w.Humidity.Low.Percent()), whole(w.Humidity.High.Percent()), end(f.Level, percent(off), "dry", "damp", r.Humidity < w.Humidity.Middle()))
		out = append(out, f)
	}
	if f, off := measure(OfSpeed, w.Speed, r.Speed); f.Level != Go {
		f.Off = q.ValueOf(off)
		f.What = fmt.Sprintf("The air moves at %s; %s wants %s to %s m/s: %s.", speed(r.Speed), w.Film,
			whole(float64(w.Speed.Low)), whole(float64(w.Speed.High)), end(f.Level, speed(off), "slow", "fast", r.Speed < w.Speed.Middle()))
		out = append(out, f)
	}
	if over < w.OverDewPoint-sliver {
		low, off := q.ValueOf(w.OverDewPoint), w.OverDewPoint-over
		wants := fmt.Sprintf("%s wants at least %s K above: %s too little", w.Film, whole(float64(w.OverDewPoint)), kelvins(off))
		if w.OverDewPoint == 0 {
			wants = "water settles on it under " + w.Film
		}
		out = append(out, Finding{Level: No, Of: OfPart, Found: q.ValueOf(over), Low: &low, Off: q.ValueOf(off),
			What: fmt.Sprintf("The part is %s; %s. Warm the part or dry the air.", overText(over), wants)})
	}
	for i := range out {
		out[i].Film, out[i].Note = w.Film, w.Note
	}
	return out
}

// measure grades x in r, and says how far it lies from the nearer end.
func measure[Q q.Quantity](of Subject, r q.Range[Q], x Q) (f Finding, off Q) {
	low, high := q.ValueOf(r.Low), q.ValueOf(r.High)
	f = Finding{Level: grade(r, x), Of: of, Found: q.ValueOf(x), Low: &low, High: &high}
	return f, min(distance(x, r.Low), distance(x, r.High))
}

func distance[Q q.Quantity](a, b Q) Q { return max(a, b) - min(a, b) }

// end words how far a figure is off: "3.0 K too cold", "1.0 K from the cold end".
func end(l Level, off, lowWord, highWord string, low bool) string {
	word := highWord
	if low {
		word = lowWord
	}
	if l == No {
		return off + " too " + word
	}
	return off + " from the " + word + " end"
}

func degrees(t q.Temperature) string { return toPlaces(t.Celsius(), 1) + " °C" }

func kelvins(d q.Difference) string { return toPlaces(float64(d), 1) + " K" }

func percent(f q.Fraction) string { return toPlaces(f.Percent(), 0) + " %" }

func speed(v q.Speed) string { return toPlaces(float64(v), 1) + " m/s" }

// whole writes a limit as its note gives it, to two decimals at most.
func whole(x float64) string {
	return strconv.FormatFloat(math.Round(x*100)/100, 'f', -1, 64)
}

// toPlaces writes x to so many decimals, and to more where that would be
// nothing, so that no figure is off by 0.0.
func toPlaces(x float64, places int) string {
	for x != 0 && places < 6 && math.Abs(x) < 0.5*math.Pow10(-places) {
		places++
	}
	return strconv.FormatFloat(x, 'f', places, 64)
}
