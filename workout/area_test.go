package workout

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"coatwright/planner/area"
	q "coatwright/quantity"
)

// Areas are textbook geometry, worked independently, save where a source is
// named: in metric and in US units the same.
func TestAreaSheet(t *testing.T) {
	lib := builtIn(t)
	for _, c := range []struct {
		name     string
		si, us   []string
		want     float64 // m2
		accuracy float64
	}{
		{"plate", []string{"kind", "plate", "length", "609.6 mm", "width", "304.8 mm"}, []string{"kind", "plate", "length", "24 in", "width", "1 ft"}, 2 * 0.09290304, 1e-9},
		{"plate, both faces, a hole", []string{"kind", "plate", "length", "609.6 mm", "width", "304.8 mm", "both-faces", "yes", "openings", "disc 101.6 mm"},
			[]string{"kind", "plate", "length", "24 in", "width", "1 ft", "both-faces", "yes", "openings", "disc 4 in"}, 4*0.09290304 - 2*math.Pi*0.0508*0.0508, 1e-9},
		// planetcalc.com/149: half axes 3, 4 and 5 m.
		{"ellipsoid", []string{"kind", "ellipsoid", "length", "6 m", "width", "8 m", "height", "10 m"}, []string{"kind", "ellipsoid", "length", "236.220472 in", "width", "314.960630 in", "height", "393.700787 in"}, 199.501704, 1e-8},
		{"paper", []string{"kind", "paper", "mass", "56.69904625 g", "sheet-length", "914.4 mm", "sheet-width", "609.6 mm", "sheet-mass", "28.349523125 g"},
			[]string{"kind", "paper", "mass", "2 oz", "sheet-length", "3 ft", "sheet-width", "2 ft", "sheet-mass", "1 oz"}, 12 * 0.09290304, 1e-9},
		{"frame", []string{"kind", "frame", "tubes", "25.4 mm x 508 mm x 2\n25.4 to 12.7 mm x 254 mm", "joints", "1"}, []string{"kind", "frame", "tubes", "1 in x 20 in x 2\n1 to 0.5 in x 10 in", "joints", "1"},
			0.0254 * 0.0254 * (math.Pi*40 + math.Pi*0.75*math.Sqrt(100+1.0/16) - math.Pi/4*(2+9.0/16)/3), 1e-9},
		{"sum", []string{"kind", "sum", "sum", "cylinder 25.4 mm x 508 mm x 2"}, []string{"kind", "sum", "sum", "cylinder 1 in x 20 in x 2"}, 0.0254 * 0.0254 * math.Pi * 40, 1e-9},
	} {
		for _, entries := range [][]string{c.si, c.us} {
			p := answered(t, areaSheet, lib, entries...)
			f := p.Answer.Figures[0]
			if f.Key != "surface" || f.Value.Of != "area" || math.Abs(f.Value.SI-c.want) > c.accuracy*c.want {
				t.Errorf("%s %q: %s is %.9g, want %.9g", c.name, entries, f.Key, f.Value.SI, c.want)
			}
			if got := p.Answer.Shape; got == nil || float64(got.Area()) != f.Value.SI {
				t.Errorf("%s: the shape that is drawn is %v", c.name, got)
			}
		}
	}
}

// A frame's figure is made of those of its tubes, each named by its line.
func TestAreaSheetNamesLines(t *testing.T) {
	p := answered(t, areaSheet, builtIn(t), "kind", "frame", "tubes", "28.6 mm x 560 mm\n\n20 mm x 400 mm x 2", "joints", "1")
	got := ""
	for _, f := range p.Answer.Figures {
		got += f.Key + " " + f.Name + "\n"
	}
	want := "surface Surface to be painted\nsurface-tubes-1 Tube, line 1\nsurface-tubes-2 Tube, line 3\n"
	if got != want {
		t.Errorf("got\n%swant\n%s", got, want)
	}
	for _, in := range p.Answer.Figures[0].Inputs {
		if in.Symbol == "A2" && (in.Name != "Tube, line 3" || in.Origin.At != "surface-tubes-2") {
			t.Errorf("the second tube goes in as %+v", in)
		}
	}
}

// The table says what painting another side would make of it.
func TestAreaSheetBySide(t *testing.T) {
	for _, c := range []struct {
		entries []string
		want    map[string]float64
	}{
		{[]string{"kind", "plate", "length", "1 m", "width", "0.5 m"}, map[string]float64{"one face": 0.5, "both faces": 1}},
		{[]string{"kind", "cylinder", "diameter", "200 mm", "length", "500 mm", "painted", "inside"}, map[string]float64{"outside": math.Pi / 10, "inside": math.Pi / 10, "both": math.Pi / 5}},
	} {
		p := answered(t, areaSheet, builtIn(t), c.entries...)
		rows := p.Answer.Tables[0].Rows
		for _, row := range rows {
			if v, is := row[1].(q.Value); !is || math.Abs(v.SI-c.want[row[0].(string)]) > 1e-9 {
				t.Errorf("%q: %v", c.entries, row)
			}
		}
		if len(rows) != len(c.want) {
			t.Errorf("%q has the rows %v", c.entries, rows)
		}
	}
}

func TestAreaSheetProblems(t *testing.T) {
	lib := builtIn(t)
	for _, c := range []struct {
		entries     []string
		field, says string
	}{
		{[]string{"kind", "plait"}, "kind", `did you mean "plate"?`},
		{[]string{"kind", "plate", "length", ""}, "length", "Found nothing, expected length."},
		{[]string{"kind", "plate", "length", "600"}, "length", `Found "600", expected a length in one of`},
		{[]string{"kind", "plate", "length", "0 mm"}, "length", "Found 0 µm, expected a length above 0 and at most 20 m."},
		{[]string{"kind", "plate", "length", "1e9 m"}, "length", "expected a length"},
		{[]string{"kind", "plate", "openings", "plate 700 x 400 mm"}, "openings", "expected openings of less than the 0.24 m² that they are in"},
		{[]string{"kind", "plate", "openings", "disc 10 mm\n\ndisc"}, "openings", `Line 3: found "disc", expected "disc diameter".`},
		{[]string{"kind", "frame", "tubes", ""}, "tubes", "Found nothing, expected tubes."},
		{[]string{"kind", "frame", "tubes", "28 mm x 560 mm\n28 mm x 560"}, "tubes", `Line 2, length: found "560"`},
		{[]string{"kind", "frame", "tubes", "28 mm x 560 mm", "joints", "3"}, "joints", "Found 3, expected at most 2"},
		{[]string{"kind", "frame", "joints", "1.5"}, "joints", "a whole number from 0 to 200"},
		{[]string{"kind", "helmet", "length", ""}, "length", "expected length and width, or circumference"},
		{[]string{"kind", "helmet", "circumference", "820 mm"}, "circumference", "either length and width or circumference, not both"},
		{[]string{"kind", "paper", "sheet-mass", "0 g"}, "sheet-mass", "a mass above 0"},
		{[]string{"kind", "cylinder", "painted", "top"}, "painted", "expected one of the list"},
	} {
		p := filledIn(t, areaSheet, lib, c.entries...)
		if got := p.Problems[c.field]; p.Answer != nil || !strings.Contains(got, c.says) {
			t.Errorf("%q: at %s it says %q, not %q", c.entries, c.field, got, c.says)
		}
	}
}

// Every kind answers as it is first chosen, and says what is wrong at the field
// where nonsense stands.
func TestEveryKindOfShape(t *testing.T) {
	lib := builtIn(t)
	for _, k := range area.Kinds() {
		p := answered(t, areaSheet, lib, "kind", k.Key)
		checkSane(t, p, false)
		for _, f := range p.Fields[1:] {
			if f.Hint == "" {
				t.Errorf("%s: the field %s has no hint", k.Key, f.Key)
			}
			wrong := filledIn(t, areaSheet, lib, "kind", k.Key, f.Key, "nonsense £")
			if wrong.Problems[f.Key] == "" || wrong.Answer != nil {
				t.Errorf("%s: nonsense in %s is told as %v", k.Key, f.Key, wrong.Problems)
			}
		}
	}
}

// Whatever is typed in, the answer is sane or each problem is told.
func TestAnyShapeIsAnsweredOrTold(t *testing.T) {
	lib := builtIn(t)
	keys, answers := area.Keys(), 0
	rapid.Check(t, func(t *rapid.T) {
		given := map[string]string{"kind": rapid.SampledFrom(keys).Draw(t, "kind")}
		look := func(key string) (string, bool) { text, ok := given[key]; return text, ok }
		for _, f := range areaSheet.Fill(lib, look).Fields[1:] {
			if rapid.IntRange(0, 2).Draw(t, f.Key+": touched") > 0 {
				continue
			}
			if f.Lines {
				given[f.Key] = rapid.SampledFrom([]string{"", "20 mm x 1 m", "disc 10 mm x 3", "1e-300 m2", "area 50 m2 x 200", "(", "sum"}).Draw(t, f.Key)
				continue
			}
			given[f.Key] = anyEntry(t, f)
		}
		p := areaSheet.Fill(lib, look)
		checkSane(t, p, false)
		if p.Answer != nil {
			answers++
		}
	})
	if answers < 10 {
		t.Errorf("only %d entries were answered", answers)
	}
}

func BenchmarkAreaSheet(b *testing.B) {
	lib := builtIn(b)
	for _, kind := range []string{"frame", "body"} {
		b.Run(fmt.Sprintf("a %s", kind), func(b *testing.B) {
			for b.Loop() {
				areaSheet.Fill(lib, func(key string) (string, bool) { return kind, key == "kind" })
			}
		})
	}
}
