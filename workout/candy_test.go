package workout

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"coatwright/content"
	"coatwright/planner"
	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// even is what an instrument reads of a surface that sends the same share of
// every wavelength back.
func even(share float64) string {
	var readings []string
	for nm := 400; nm <= 700; nm += 20 {
		readings = append(readings, fmt.Sprintf("%d:%g", nm, share))
	}
	return strings.Join(readings, ", ")
}

// Worked independently: a grey candy that lets half of the light down and up
// again in each coat, over a perfect white with flakes that lie flat. Three coats
// send back an eighth, of which CIE 15:2004 makes L* = 116 × 1/2 - 16 = 42; six
// coats 1/64, 116 × 1/4 - 16 = 13. Of two greys CIEDE2000 is ΔL'/SL, here with SL
// = 1 + 0.015 × 22.5² / √(20 + 22.5²) = 1.3310.
func TestCandySheetOfAGrey(t *testing.T) {
	lib := notes(t).Planner()
	p := answered(t, candySheet, lib, "looks", even(0.5), "over", even(1), "ground", even(1), "swatch-coats", "1", "coats", "3")
	for key, want := range map[string]float64{"strength": 1, "depth": 3, "lightness": 42, "sag-2": 29 / 1.3310} {
		wantNear(t, key, figureOf(t, p, key).Value.SI, want, 1e-4)
	}
	s := p.Answer.Strip
	wantNear(t, "darker", s.Sags[1].Darker, 29, 1e-9)
	for n, want := range []float64{100, 116*math.Cbrt(1.0/2) - 16, 116*math.Cbrt(1.0/4) - 16, 42, 116*math.Cbrt(1.0/16) - 16, 116*math.Cbrt(1.0/32) - 16, 13} {
		wantNear(t, fmt.Sprint(n, " coats"), s.Coats[n].L, want, 1e-9)
	}
	if len(s.Coats) != planner.MaxCoats+1 || s.Agreed != 3 || p.Answer.Verdict != nil {
		t.Errorf("%d coats, %d agreed, verdict %v", len(s.Coats), s.Agreed, p.Answer.Verdict)
	}
}

// The same candy over a white that scatters, by Saunderson's surface with k2 =
// 0.596, worked independently: the swatch lies over flakes, where a coat passes
// 1/2, so three coats send back 1/8 within the film, and (1 - 0.596) / 8 / (1 -
// 0.596 / 8) = 0.05457 outside it, L* 28.0.
func TestCandySheetOverWhatScatters(t *testing.T) {
	lib := notes(t).Planner()
	p := answered(t, candySheet, lib, "looks", even(0.5), "over", even(1), "ground", even(1), "swatch-coats", "1", "coats", "3", "surface", scatteredBelow)
	wantNear(t, "lightness", figureOf(t, p, "lightness").Value.SI, 116*math.Cbrt(0.404/8/(1-0.596/8))-16, 1e-6)
}

// A mix for an airbrush of 50 % to the gun's 30 %: 1.408 / 0.923, worked
// independently from 15 % and 28 % of solids. An entered share does the same.
func TestCandySheetStrength(t *testing.T) {
	lib := notes(t).Planner()
	for _, entries := range [][]string{{"with", "airbrush"}, {"share", "50 %"}} {
		p := answered(t, candySheet, lib, entries...)
		wantNear(t, "strength", figureOf(t, p, "strength").Value.SI, (0.5/(0.28+0.5*0.15))/(0.3/(0.28+0.3*0.15)), 1e-9)
		wantNear(t, "depth", figureOf(t, p, "depth").Value.SI, 1.5258, 1e-4)
	}
	p := answered(t, candySheet, lib, "build", "18 um", "coats", "6")
	wantNear(t, "depth of thick coats", figureOf(t, p, "depth").Value.SI, 4, 1e-9)
}

func TestCandySheetVerdict(t *testing.T) {
	lib := notes(t).Planner()
	for _, c := range []struct{ coats, wanted, level, says string }{
		{"3", "#b01020", "go", "3 coats come nearest to the colour wanted: 0.0 from it."},
		{"4", "#b01020", "care", "3 coats come nearest to the colour wanted, 0.0 from it; the 4 entered stay 5.3 from it."},
		{"3", "#0000ff", "no", "No count of coats looks like the colour wanted: "},
	} {
		p := answered(t, candySheet, lib, "coats", c.coats, "wanted", c.wanted)
		if v := p.Answer.Verdict; v == nil || v.Level != c.level || !strings.HasPrefix(v.Says, c.says) {
			t.Errorf("%s coats for %s: %v, want %s: %s", c.coats, c.wanted, v, c.level, c.says)
		}
		if !hasFigure(p, "nearest") || !hasFigure(p, "left") || p.Answer.Strip.Wanted != c.wanted {
			t.Errorf("%s is wanted, and not told of", c.wanted)
		}
	}
}

// Every answer says that it is an estimate, and to spray a card.
func TestCandySheetIsAnEstimate(t *testing.T) {
	says := answered(t, candySheet, notes(t).Planner()).Answer.Says
	if text := strings.Join(says, " "); !strings.Contains(text, "estimate") || !strings.Contains(text, "Spray a test card") || !strings.Contains(text, "A sag in candy shows as a dark line") {
		t.Errorf("says %q", says)
	}
}

func TestCandySheetInEitherUnits(t *testing.T) {
	lib := notes(t).Planner()
	sameAnswers(t, candySheet, lib, 1e-9, []string{"build", "12.7 um", "coats", "2"}, []string{"build", "0.5 mil", "coats", "2"})
}

func TestCandySheetTells(t *testing.T) {
	checkTold(t, candySheet, notes(t).Planner(), []told{
		{[]string{"looks", ""}, "looks", "Found nothing, expected how its swatch looks."},
		{[]string{"looks", "b01020"}, "looks", `Found "b01020", expected a colour of a screen such as "#c9ccd0": red, green and blue with two digits each; did you mean "#b01020"?`},
		{[]string{"ground", "L 50"}, "ground", `Found "L 50", expected a colour such as "L 52 a 10 b -30", each with its letter and a point for decimals.`},
		{[]string{"coats", "2.5"}, "coats", `Found "2.5", expected a whole number from 1 to 12.`},
		{[]string{"coats", "13"}, "coats", `Found "13", expected a number from 1 to 12.`},
		{[]string{"over", "#000000"}, "over", "The swatch of the candy: found a ground that reflects 0 %; expected 1 % or more, as every candy over black is black."},
		{[]string{"share", "0 %"}, "share", `Found "0 %", expected 0.1 to 1000 %.`},
		{[]string{"build", "1 m"}, "build", `Found "1 m", expected 0.1 µm to 5 mm.`},
	})
}

// A candy that comes ready to spray is not asked for a share.
func TestCandySheetAsksWhatThereIs(t *testing.T) {
	lib := notes(t).Planner()
	for _, c := range candyChoices(lib) {
		p := answered(t, candySheet, lib, "candy", c.Value)
		asked := false
		for _, f := range p.Fields {
			asked = asked || f.Key == "share"
		}
		if asked != concentrated(lib.Materials[c.Value]) {
			t.Errorf("%s is asked for a share: %v", c.Value, asked)
		}
	}
}

// Whatever is entered, there is an answer that can be measured, or a field to be
// told at.
func TestAnyCandyIsAnsweredOrTold(t *testing.T) {
	lib := notes(t).Planner()
	tint := rapid.OneOf(rapid.StringMatching(`#[0-9a-f]{6}`), rapid.SampledFrom([]string{"", "nonsense", "L 30 a 20 b 10", "L 99 a 0 b 0", even(0.3), even(0), even(1)}))
	amount := func(of ...string) *rapid.Generator[string] {
		return rapid.SampledFrom(append(of, "", "0", "-1", "1e9", "NaN"))
	}
	given := map[string]*rapid.Generator[string]{
		"looks": tint, "ground": tint, "over": tint, "wanted": tint,
		"coats": amount("1", "3", "12"), "swatch-coats": amount("1", "6"), "share": amount("0.1 %", "30 %", "1000 %"), "build": amount("0.1 um", "9 um", "5 mm", "1 mil"),
		"surface": rapid.SampledFrom([]string{flatBelow, scatteredBelow}), "candy": rapid.SampledFrom([]string{candyChoices(lib)[0].Value, candyChoices(lib)[1].Value}),
	}
	answers := 0
	rapid.Check(t, func(t *rapid.T) {
		values := map[string]string{}
		for _, key := range []string{"looks", "ground", "over", "wanted", "coats", "swatch-coats", "share", "build", "surface", "candy"} {
			if rapid.IntRange(0, 3).Draw(t, key+": entered") == 0 {
				values[key] = given[key].Draw(t, key)
			}
		}
		p := candySheet.Fill(lib, func(key string) (string, bool) { text, ok := values[key]; return text, ok })
		if (p.Answer == nil) != (len(p.Problems) > 0) {
			t.Fatalf("%v: answered %v with the problems %v", values, p.Answer != nil, p.Problems)
		}
		if p.Answer == nil {
			return
		}
		answers++
		for _, f := range p.Answer.Figures {
			finiteInput(t, values, trace.Input{Name: f.Key, Value: f.Value})
			for _, in := range f.Inputs {
				finiteInput(t, values, in)
			}
		}
		for _, c := range p.Answer.Strip.Coats {
			if !(c.L >= -1e-9 && c.L <= 100+1e-9 && c.Change >= 0) {
				t.Errorf("%v: %+v", values, c)
			}
		}
	})
	if answers < 10 {
		t.Errorf("only %d entries were answered", answers)
	}
}

func finiteInput(t *rapid.T, values map[string]string, in trace.Input) {
	if math.IsNaN(in.Value.SI) || math.IsInf(in.Value.SI, 0) || in.Value.Of == "" {
		t.Errorf("%v: %s is %v", values, in.Name, q.Metric.Show(in.Value))
	}
}

func BenchmarkCandySheet(b *testing.B) {
	all, err := content.Load(content.BuiltIn(), nil)
	if err != nil {
		b.Fatal(err)
	}
	lib := all.Planner()
	for b.Loop() {
		if candySheet.Fill(lib, func(key string) (string, bool) { return "#7a0a14", key == "wanted" }).Answer == nil {
			b.Fatal("no answer")
		}
	}
}
