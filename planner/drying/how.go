package drying

import (
	"fmt"
	"math"
	"strconv"

	"coatwright/planner/air"
	q "coatwright/quantity"
)

// How says in words what Time is made of, such as "20 min at 23 °C, 50 % RH,
// still; ×1.19 because water leaves 84 % as fast (21 °C, 55 % RH, 0.1 m/s; wet
// bulb 15.3 °C); in all 23.8 min".
func How(in q.Time, p Pace, a air.Air, build, refBuild q.Length) string {
	return RatesIn(a).How(in, p, build, refBuild)
}

// How is as the function of that name says.
func (r Rates) How(in q.Time, p Pace, build, refBuild q.Length) string {
	a := r.air
	reason, known := reasons[p]
	if !known {
		return span(in) + " in any air"
	}
	factor := r.Factor(p)
	if math.IsInf(factor, 1) {
		return fmt.Sprintf("%s; never in this air, which is full of water (%s)", given(in, p), conditions(a))
	}
	text := fmt.Sprintf("%s; ×%.2f because %s", given(in, p), factor, reason(a, factor))
	if f := Thickness(p, build, refBuild).Likely; math.Abs(f-1) >= 0.005 {
		text += fmt.Sprintf("; ×%.2f because the film is %.0f %% of the one that this time is for", f, 100*f)
	}
	return text + "; in all " + span(r.Time(in, p, build, refBuild))
}

// given is the time in the note, with as much of the reference air as matters.
func given(in q.Time, p Pace) string {
	ref := Reference()
	text := span(in) + " at " + degrees(ref.Temperature)
	switch p {
	case Evaporation:
		return text + ", " + humidity(ref) + ", still"
	case Solvent:
		return text + ", still"
	}
	return text
}

// reasons says for each pace what makes its factor.
var reasons = map[Pace]func(a air.Air, factor float64) string{
	Evaporation: func(a air.Air, factor float64) string {
		return fmt.Sprintf("water leaves %.0f %% as fast (%s; wet bulb %s)",
			100/factor, conditions(a), degrees(a.WetBulb()))
	},
	Solvent: func(a air.Air, factor float64) string {
		return fmt.Sprintf("solvent leaves %.0f %% as fast (%s, %g m/s)",
			100/factor, degrees(a.Temperature), float64(a.Speed))
	},
	Cure: func(a air.Air, factor float64) string {
		least, most := slower(leastActivationEnergy, a.Temperature), slower(mostActivationEnergy, a.Temperature)
		return fmt.Sprintf("it cures %.0f %% as fast (%s, %.0f kJ/mol; published %.0f to %.0f kJ/mol give ×%.2f to ×%.2f)",
			100/factor, degrees(a.Temperature), ActivationEnergy/1e3,
			leastActivationEnergy/1e3, mostActivationEnergy/1e3, min(least, most), max(least, most))
	},
}

func conditions(a air.Air) string {
	return fmt.Sprintf("%s, %s, %g m/s", degrees(a.Temperature), humidity(a), float64(a.Speed))
}

func humidity(a air.Air) string { return fmt.Sprintf("%.0f %% RH", a.Humidity.Percent()) }

// degrees shows tenths where there are any.
func degrees(t q.Temperature) string {
	return strconv.FormatFloat(math.Round(t.Celsius()*10)/10, 'f', -1, 64) + " °C"
}

// span shows a time in the unit in which a painter would say it.
func span(t q.Time) string {
	switch m := t.Minutes(); {
	case m < 2:
		return fmt.Sprintf("%.0f s", float64(t))
	case m < 120:
		return tenths(m) + " min"
	case m < 72*60:
		return tenths(m/60) + " h"
	default:
		return tenths(m/60/24) + " d"
	}
}

func tenths(x float64) string {
	return strconv.FormatFloat(math.Round(x*10)/10, 'f', -1, 64)
}
