package area

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	q "coatwright/quantity"
)

// tubesOf, openingsOf and piecesOf are lists that lines are read into.
func tubesOf(s *Frame) Measure  { return s.Measures()[0] }
func openingsOf(s *Cut) Measure { return s.Measures()[len(s.Measures())-1] }
func piecesOf(s *Sum) Measure   { return s.Measures()[0] }

func TestTubesInLines(t *testing.T) {
	for _, c := range []struct {
		text string
		want []Tube
		back string // "" for as it was
	}{
		{"28.6 mm x 560 mm", []Tube{{Diameter: 0.0286, Length: 0.56}}, ""},
		{"31.8 to 28 mm x 600 mm x 2", []Tube{{Diameter: 0.0318, To: 0.028, Length: 0.6, Count: 2}}, ""},
		{"28.6×560 mm", []Tube{{Diameter: 0.0286, Length: 0.56}}, "28.6 mm x 560 mm"},
		{"1 in to 20 mm x 2 ft", []Tube{{Diameter: 0.0254, To: 0.02, Length: 0.6096}}, ""},
		{" 1 in x 2 ft X 3 \r\n\n  20 mm x 40 cm\n", []Tube{{Diameter: 0.0254, Length: 0.6096, Count: 3}, {Diameter: 0.02, Length: 0.4}}, "1 in x 2 ft x 3\n20 mm x 40 cm"},
		{"28.6 mm x 560 mm, to 24 mm", []Tube{{Diameter: 0.0286, To: 0.024, Length: 0.56}}, "28.6 to 24 mm x 560 mm"},
	} {
		var f Frame
		if err := tubesOf(&f).Read(c.text); err != nil {
			t.Errorf("%q: %v", c.text, err)
			continue
		}
		if diff := cmp.Diff(c.want, f.Tubes, near9); diff != "" {
			t.Errorf("%q (-want +got):\n%s", c.text, diff)
		}
		back := c.back
		if back == "" {
			back = c.text
		}
		if got := Text(tubesOf(&f), anyOfItems(t, tubesOf(&f), c.text)); got != back {
			t.Errorf("%q comes back as %q", c.text, got)
		}
	}
}

var near9 = cmp.Comparer(func(a, b q.Length) bool { return math.Abs(float64(a-b)) < 1e-9 })

// anyOfItems is the items of a text as a document would hand them over.
func anyOfItems(t interface{ Fatal(...any) }, m Measure, text string) []any {
	items, err := Items(m, text)
	if err != nil {
		t.Fatal(err)
	}
	return loose(items).([]any)
}

// loose is what was written as a reader of documents has it: maps and lists of
// anything.
func loose(v any) any {
	switch v := v.(type) {
	case []Item:
		out := []any{}
		for _, item := range v {
			out = append(out, loose(item))
		}
		return out
	case Item:
		out := map[string]any{}
		for key, inner := range v {
			out[key] = loose(inner)
		}
		return out
	}
	return v
}

// Areas are textbook geometry, worked independently.
func TestShapesInLines(t *testing.T) {
	for _, c := range []struct {
		text string
		want float64 // m2
	}{
		{"area 0.02 m2", 0.02},
		{"0.02 m2 x 3", 0.06},
		{"plate 600 x 400 mm", 0.24},
		{"plate: 600 mm x 400 mm, both faces, thickness 20 mm", 0.52},
		{"Disc 500 mm x 2", 2 * 0.1963495},
		{"trapezium 60 cm x 40 cm", 0.12},
		{"trapezium 12 x 5 cm, top 8 cm", 0.005},
		{"cylinder 200 x 500 mm, ends 2", 0.376991},
		{"cylinder 200 mm x 500 mm, thickness 10 mm, painted both", 0.608841},
		{"frustum 600 to 400 x 240 mm", 0.408407},
		{"ring 640 x 40 mm, girth 160 mm, share 25 %", 0.0753982},
		{"prism 4 x 10 x 50 cm, ends 2", 0.22},
		{"slab 12 dm2 x 1.4 m x 45 mm", 0.303},
		{"dome 600 mm x 100 mm, painted inside", 0.314159},
		{"ellipsoid 6 x 8 x 5 m, half", 199.501704 / 2}, // planetcalc.com/149
		{"helmet 150 mm, circumference 94.2477796 cm", 2 * math.Pi * 0.0225},
		{"frame, tubes (28.6 mm x 560 mm; 31.8 to 28 mm x 600 mm), joints 3", 0.0503157 + 0.0563604 - 3*0.000672289},
		{"paper 62 g, sheet (1 m x 90 cm x 36 g)", 1.55},
		{"roll 45 cm x 2.4 m, over 10 %", 0.972},
		{"plate 60 x 40 cm x 2, both-faces, openings (disc 10 cm x 2; 1 dm2)", 2 * (0.48 - 0.02 - 4*0.00785398)},
		{"cylinder 200 mm x 500 mm x 2\nplate 60 cm x 40 cm\n1 dm2", 2*0.314159 + 0.25},
	} {
		var s Sum
		if err := piecesOf(&s).Read(c.text); err != nil {
			t.Errorf("%q: %v", c.text, err)
			continue
		}
		if got := float64(s.Area()); math.Abs(got-c.want) > 2e-6*c.want {
			t.Errorf("%q is %.9g m2, want %.9g", c.text, got, c.want)
		}
		var again Sum
		back := Text(piecesOf(&s), anyOfItems(t, piecesOf(&s), c.text))
		if err := piecesOf(&again).Read(back); err != nil || again.Area() != s.Area() {
			t.Errorf("%q comes back as %q: %v, %v m2", c.text, back, err, again.Area())
		}
	}
}

func TestFaultsInLines(t *testing.T) {
	frame, plate, sum := &Frame{}, &Cut{Of: &Plate{}}, &Sum{}
	shapes := strings.Join(Keys()[:len(Keys())-1], ", ")
	const tube = `a tube such as "28.6 mm x 560 mm"`
	for _, c := range []struct {
		m                    Measure
		text                 string
		key, found, expected string
	}{
		{tubesOf(frame), "28.6 mm x 560 mm\n28.6 mm", "tubes[1]", `"28.6 mm"`, tube},
		{tubesOf(frame), "28.6 mm x 560 mm x two", "tubes[0]", `"28.6 mm x 560 mm x two"`, tube},
		{tubesOf(frame), "28.6 mm x x 560 mm", "tubes[0]", `"28.6 mm x x 560 mm"`, tube},
		{tubesOf(frame), "28,6 mm x 560 mm", "tubes[0].diameter", `"28,6 mm"`, `a length such as "15 um"`},
		{tubesOf(frame), "28.6 x 560", "tubes[0].diameter", `"28.6"`, "a length in one of: um, µm, mil, mm, cm, m, in, ft"},
		{tubesOf(frame), "28.6 mm x 560 mn", "tubes[0].length", `"560 mn"`, `a length in one of: um, µm, mil, mm, cm, m, in, ft; did you mean "560 mm"?`},
		{tubesOf(frame), "28.6 mm x 560 m", "tubes[0].length", "560 m", "a length above 0 and at most 20 m"},
		{tubesOf(frame), "28.6 mm x 560 mm x 0", "tubes[0].count", "0", "a whole number from 1 to 200"},
		{tubesOf(frame), "28.6 mm x 560 mm, two", "tubes[0]", `"two"`, `one of: to; did you mean "to"?`},
		{tubesOf(frame), "", "tubes", "a list of 0", "a list of 1 to 60 tubes"},
		{tubesOf(frame), strings.Repeat("1 mm x 1 m\n", 61), "tubes", "a list of 61", "a list of 1 to 60 tubes"},
		{openingsOf(plate), "cylinder 20 mm x 40 mm", "openings[0]", `"cylinder 20 mm x 40 mm"`, "a shape: one of area, plate, disc, trapezium"},
		{openingsOf(plate), "disk 20 mm", "openings[0]", `"disk 20 mm"`, `a shape: one of area, plate, disc, trapezium; did you mean "disc"?`},
		{openingsOf(plate), "plate 20 mm", "openings[0]", `"plate 20 mm"`, `"plate length x width"`},
		{openingsOf(plate), "disc 20 mm x 300", "openings[0].count", "300", "a whole number from 1 to 200"},
		{openingsOf(plate), "20 mm", "openings[0].area", `"20 mm"`, `an area in one of: m2, m², dm2, cm2, cm², ft2, ft², in2, in²; did you mean "20 m2"?`},
		{piecesOf(sum), "sum 1 m2", "sum[0]", `"sum 1 m2"`, "a shape: one of " + shapes},
		{piecesOf(sum), "cylinder 20 mm x 40 mm, ends 3", "sum[0].cylinder.ends", "3", "a whole number from 0 to 2"},
		{piecesOf(sum), "cylinder 20 mm x 40 mm, painted top", "sum[0].cylinder.painted", `"top"`, "one of outside, inside, both"},
		{piecesOf(sum), "cylinder 20 mm x 40 mm, thicknes 3 mm", "sum[0]", `"thicknes 3 mm"`, `one of: ends, painted, thickness, openings; did you mean "thickness"?`},
		{piecesOf(sum), "cylinder 20 mm x 40 mm, ends 1, ends 2", "sum[0]", `"ends 2"`, "ends once"},
		{piecesOf(sum), "plate 20 mm x 40 mm, both faces maybe", "sum[0].plate.both-faces", `"maybe"`, "yes or no"},
		{piecesOf(sum), "plate 20 mm x 40 mm, openings disc 1 mm", "sum[0]", `"openings disc 1 mm"`, "openings (area or plate length x width or disc diameter or trapezium base x height)"},
		{piecesOf(sum), "plate 20 mm x 40 mm, openings (disc 1 mm", "sum[0]", `"plate 20 mm x 40 mm, openings (disc 1 mm"`, "as many parentheses closed as opened"},
		{piecesOf(sum), "plate 20 mm x 40 mm, openings (disc 1 mm; disc)", "sum[0].openings[1]", `"disc"`, `"disc diameter"`},
		{piecesOf(sum), "frame", "sum[0].frame.tubes", "a list of 0", "a list of 1 to 60 tubes"},
		{piecesOf(sum), "paper 62 g, sheet (1 m x 90 cm)", "sum[0]", `"1 m x 90 cm"`, "sheet (length of the sheet x width of the sheet x weight of the sheet)"},
		{piecesOf(sum), "helmet 150 mm", "sum[0].helmet.length", "no measures of the widest line", "length and width, or circumference"},
	} {
		err := c.m.Read(c.text)
		var e *Error
		if !errors.As(err, &e) {
			t.Errorf("%q: %v", c.text, err)
			continue
		}
		if diff := cmp.Diff(&Error{c.key, c.found, c.expected}, e); diff != "" {
			t.Errorf("%q (-want +got):\n%s", c.text, diff)
		}
	}
}

func TestReadOneMeasure(t *testing.T) {
	var c Cylinder
	measure := func(key string) Measure {
		for _, m := range c.Measures() {
			if m.Key == key {
				return m
			}
		}
		t.Fatal(key)
		return Measure{}
	}
	for key, text := range map[string]string{"diameter": " 30 mm ", "length": "16 in", "ends": "2", "painted": "both", "thickness": "0 mm"} {
		if err := measure(key).Read(text); err != nil {
			t.Errorf("%s: %v", key, err)
		}
	}
	if want := (Cylinder{0.03, 0.4064, 2, Shell{Both, 0}}); !cmp.Equal(want, c, near9) {
		t.Errorf("read %+v", c)
	}
	for key, text := range map[string]string{"diameter": "0 mm", "length": "-1 m", "ends": "1.5", "painted": "", "thickness": "thin"} {
		if err := measure(key).Read(text); (err == nil) != (text == "") {
			t.Errorf("%s of %q: %v", key, text, err)
		}
	}
}

func TestLineOf(t *testing.T) {
	text := "\n a\n\nb\nc"
	for i, want := range []int{2, 4, 5} {
		if got := LineOf(text, i); got != want {
			t.Errorf("item %d stands on line %d, want %d", i, got, want)
		}
	}
}

func TestPlaceOf(t *testing.T) {
	for way, want := range map[string]Place{
		"":                              {Item: -1},
		"length":                        {Field: "length", Item: -1},
		"sheet.mass":                    {Field: "sheet-mass", Item: -1},
		"tubes":                         {Field: "tubes", Item: -1},
		"tubes[1]":                      {Field: "tubes", Item: 1},
		"tubes[12].to":                  {Field: "tubes", Item: 12, Measure: "to"},
		"openings[0].disc":              {Field: "openings", Item: 0},
		"openings[0].area":              {Field: "openings", Item: 0},
		"openings[0].disc.diameter":     {Field: "openings", Item: 0, Measure: "diameter"},
		"sum[2].plate.openings[1].area": {Field: "sum", Item: 2, Measure: "openings"},
		"sum[2].paper.sheet.mass":       {Field: "sum", Item: 2, Measure: "mass"},
		"sum[0].count":                  {Field: "sum", Item: 0, Measure: "count"},
	} {
		if got := PlaceOf(way); got != want {
			t.Errorf("%q is at %+v, want %+v", way, got, want)
		}
	}
}

// The measures of every kind have fields of their own.
func TestFields(t *testing.T) {
	for _, k := range Kinds() {
		seen := map[string]bool{}
		for _, m := range Fields(k.Measures) {
			if m.Into == nil || seen[m.Key] {
				t.Errorf("%s: the field %s is of nothing, or there twice", k.Key, m.Key)
			}
			seen[m.Key] = true
		}
	}
	kind, _ := KindNamed("paper")
	var keys []string
	for _, m := range Fields(kind.Measures) {
		keys = append(keys, m.Key)
	}
	if diff := cmp.Diff([]string{"mass", "sheet-length", "sheet-width", "sheet-mass", "openings"}, keys); diff != "" {
		t.Error(diff)
	}
}

// itemFor writes what was measured, as somebody would.
func itemFor(measures []Measure) Item {
	write := func(si float64, unit string) string { return strconv.FormatFloat(si, 'f', -1, 64) + unit }
	item := Item{}
	for _, m := range measures {
		v, measured := m.Value()
		switch into := m.Into.(type) {
		case *q.Length, *q.Area, *q.Mass, *q.Fraction, *int:
			if measured {
				unit := map[string]string{"length": " m", "area": " m2", "mass": " kg", "count": "", "percentage": " %"}[m.Of()]
				if m.Of() == "percentage" {
					v.SI *= 100
				}
				item[m.Key] = write(v.SI, unit)
			}
		case *bool:
			if *into {
				item[m.Key] = "yes"
			}
		case *Side:
			if *into != "" {
				item[m.Key] = string(*into)
			}
		case *[]Tube:
			var tubes []any
			for i := range *into {
				tubes = append(tubes, map[string]any(itemFor((*into)[i].Measures())))
			}
			item[m.Key] = tubes
		case *[]Piece:
			if len(*into) > 0 {
				item[m.Key] = itemsFor(*into)
			}
		case nil:
			item[m.Key] = itemFor(m.Parts)
		}
	}
	return item
}

func itemsFor(pieces []Piece) []any {
	var out []any
	for _, p := range pieces {
		kind := p.Shape.Kind()
		kind.Measures = p.Shape.Measures()
		item := itemFor(kind.Measures)
		if !kind.Bare() {
			item = Item{kind.Key: item}
		}
		if p.Count > 0 {
			item["count"] = fmt.Sprint(p.Count)
		}
		out = append(out, item)
	}
	return out
}

// Whatever shapes are made of, their lines are read as the same shapes.
func TestTextIsReadAgain(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		kinds := Kinds()
		var s, again Sum
		for range rapid.IntRange(1, 3).Draw(t, "pieces") {
			k := kinds[rapid.IntRange(0, len(kinds)-2).Draw(t, "kind")]
			s.Pieces = append(s.Pieces, Piece{anyOf(t, k), rapid.IntRange(0, 3).Draw(t, "count")})
		}
		text := Text(piecesOf(&s), itemsFor(s.Pieces))
		if err := piecesOf(&again).Read(text); err != nil {
			t.Fatalf("%q: %v", text, err)
		}
		same(t, text, s.Area(), again.Area(), 1e-9)
	})
}

// Any text is read or refused, and what was read is written so that it is read
// again as the same.
func FuzzItems(f *testing.F) {
	for _, text := range []string{
		"28.6 mm x 560 mm", "31.8 to 28 mm x 600 mm x 2", "disc 20 mm x 4", "plate 60 x 40 cm, both faces, openings (disc 10 cm x 2; 1 dm2)",
		"frame, tubes (28.6 mm x 560 mm; 20 x 400 mm), joints 3", "paper 62 g, sheet (1 m x 90 cm x 36 g)", "x", "(", "a,,b", "area\n\n0.1 m2",
	} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		if len(text) > 4000 {
			t.Skip("longer than a form takes")
		}
		for _, m := range []Measure{tubesOf(&Frame{}), piecesOf(&Sum{})} {
			if m.Read(text) != nil {
				continue
			}
			var frame Frame
			var sum Sum
			again := map[string]Measure{"tubes": tubesOf(&frame), "shapes": piecesOf(&sum)}[m.Of()]
			if err := again.Read(Text(m, anyOfItems(t, m, text))); err != nil {
				t.Errorf("%q comes back as %q: %v", text, Text(m, anyOfItems(t, m, text)), err)
			}
		}
	})
}

func BenchmarkReadLines(b *testing.B) {
	const text = "28.6 mm x 560 mm\n31.8 to 28 mm x 600 mm\n28.6 mm x 530 mm\n36 mm x 130 mm\n19 to 12 mm x 420 mm x 2\n14 mm x 520 mm x 2"
	for b.Loop() {
		var f Frame
		if err := tubesOf(&f).Read(text); err != nil {
			b.Fatal(err)
		}
	}
}
