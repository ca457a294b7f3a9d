package planner_test

import (
	"math"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"

	"coatwright/planner"
	"coatwright/planner/area"
	"coatwright/planner/trace"
	q "coatwright/quantity"
	"coatwright/strictyaml"
)

// shapeDocs has each kind of shape as a job document writes it, with everything
// that may be said of it somewhere. Areas are textbook geometry, worked
// independently.
var shapeDocs = []struct {
	name, doc string
	want      float64 // m2
	form      string
}{
	{"area", "{area: 0.55 m2}", 0.55, "solid"},
	{"plate", "{plate: {length: 600 mm, width: 400 mm}}", 0.24, "panel"},
	{"plate, both faces", "{plate: {length: 600 mm, width: 400 mm, both-faces: yes}}", 0.48, "panel"},
	{"plate with edges", "{plate: {length: 600 mm, width: 400 mm, both-faces: yes, thickness: 20 mm}}", 0.52, "panel"},
	{"plate without edges", "{plate: {length: 600 mm, width: 400 mm, both-faces: no, thickness: 0 mm}}", 0.24, "panel"},
	{"disc", "{disc: {diameter: 500 mm}}", 0.1963495, "panel"},
	{"trapezium", "{trapezium: {base: 12 cm, top: 8 cm, height: 5 cm}}", 0.005, "panel"},
	{"triangle", "{trapezium: {base: 60 cm, height: 40 cm}}", 0.12, "panel"},
	{"cylinder", "{cylinder: {diameter: 200 mm, length: 500 mm}}", 0.314159, "tube"},
	{"cylinder, no ends", "{cylinder: {diameter: 200 mm, length: 500 mm, ends: 0}}", 0.314159, "tube"},
	{"cylinder, both ends", "{cylinder: {diameter: 200 mm, length: 500 mm, ends: 2}}", 0.376991, "tube"},
	{"tube, both sides", "{cylinder: {diameter: 200 mm, length: 500 mm, painted: both, thickness: 10 mm}}", 0.608841, "tube"},
	{"frustum", "{frustum: {diameter: 600 mm, diameter2: 400 mm, length: 240 mm}}", 0.408407, "tube"},
	{"cone", "{cone: {diameter: 600 mm, height: 400 mm, ends: 1}}", 0.753982, "solid"},
	{"sphere", "{sphere: {diameter: 500 mm}}", 0.785398, "solid"},
	{"dome", "{dome: {diameter: 600 mm, height: 100 mm, painted: inside}}", 0.314159, "solid"},
	{"ellipsoid", "{ellipsoid: {length: 6 m, width: 8 m, height: 10 m}}", 199.501704, "solid"}, // planetcalc.com/149
	{"half of it", "{ellipsoid: {length: 6 m, width: 8 m, height: 5 m, half: yes}}", 199.501704 / 2, "solid"},
	{"ring", "{ring: {diameter: 640 mm, depth: 40 mm}}", 0.2368705, "tube"},
	{"bend", "{ring: {diameter: 640 mm, depth: 40 mm, girth: 160 mm, share: 25 %}}", 0.0753982, "tube"},
	{"box", "{box: {length: 60 cm, width: 40 cm, height: 2 cm}}", 0.52, "solid"},
	{"prism", "{prism: {sides: 4, side: 10 cm, length: 50 cm, ends: 2}}", 0.22, "tube"},
	{"slab", "{slab: {outline: 12 dm2, perimeter: 1.4 m, thickness: 45 mm}}", 0.303, "solid"},
	{"body", "{body: {length: 1 m, upper: 40 cm, waist: 40 cm, lower: 40 cm, thickness: 10 cm, upper-at: 20 cm, waist-at: 50 cm, lower-at: 80 cm}}",
		2*(math.Pi*0.04+0.24) + 0.1*(math.Pi*0.4+1.2), "solid"},
	{"body by its widths alone", "{body: {length: 490 mm, upper: 280 mm, waist: 240 mm, lower: 370 mm, thickness: 95 mm}}", 0.406347, "solid"},
	{"frame", "{frame: {tubes: [{diameter: 28.6 mm, length: 560 mm}, {diameter: 31.8 mm, to: 28 mm, length: 600 mm}], joints: 3}}",
		0.0503157 + 0.0563604 - 3*0.000672289, "lattice"},
	{"frame of a count", "{frame: {tubes: [{diameter: 28.6 mm, length: 560 mm, count: 6}]}}", 6 * 0.0503157, "lattice"},
	{"helmet", "{helmet: {length: 300 mm, width: 300 mm, height: 200 mm, below: 50 mm}}", 2 * math.Pi * 0.15 * 0.2, "solid"},
	{"helmet by its circumference", "{helmet: {circumference: 94.2477796 cm, height: 150 mm, painted: outside}}", 2 * math.Pi * 0.0225, "solid"},
	{"paper", "{paper: {mass: 62 g, sheet: {length: 1 m, width: 90 cm, mass: 36 g}}}", 1.55, "solid"},
	{"roll", "{roll: {width: 45 cm, length: 2.4 m, over: 10 %}}", 0.972, "solid"},
	{"sum", "{sum: [{cylinder: {diameter: 200 mm, length: 500 mm}, count: 2}, {plate: {length: 60 cm, width: 40 cm}}, {area: 1 dm2}]}", 2*0.314159 + 0.25, "tube"},
	{"openings", "{plate: {length: 60 cm, width: 40 cm, both-faces: yes, openings: [{disc: {diameter: 10 cm}, count: 2}, {area: 1 dm2}]}}", 0.48 - 0.02 - 4*0.00785398, "panel"},
	{"opening in a helmet", "{helmet: {length: 300 mm, width: 300 mm, height: 150 mm, painted: both, openings: [{plate: {length: 20 cm, width: 8 cm}}]}}",
		4*math.Pi*0.0225 - 2*0.016, "solid"},
	{"in lines", "\n  cylinder:\n    diameter: 200 mm\n    length: 500 mm\n", 0.314159, "tube"},
	{"US units", "{box: {length: 2 ft, width: 1 ft, height: 6 in}}", 7 * 0.3048 * 0.3048, "solid"},
}

func TestParseShape(t *testing.T) {
	seen := map[string]bool{}
	for _, c := range shapeDocs {
		t.Run(c.name, func(t *testing.T) {
			s, err := planner.ParseShape("job.yaml", []byte("shape: "+c.doc))
			if err != nil {
				t.Fatal(err)
			}
			seen[s.Kind().Key] = true
			if got := float64(s.Area()); math.Abs(got-c.want) > 2e-6*c.want {
				t.Errorf("area = %.9g m2, want %.9g", got, c.want)
			}
			if s.Form() != c.form {
				t.Errorf("form = %q, want %q", s.Form(), c.form)
			}
		})
	}
	for _, name := range planner.ShapeNames() {
		if !seen[name] {
			t.Errorf("no document has a %s", name)
		}
	}
}

// A part of a job is of the shape's area and, where nothing else is said, of
// its form.
func TestShapeOfPart(t *testing.T) {
	const doc = `
system: waterborne
effect: solid-colour
finish: satin
applicator: hvlp-gun
start: 2026-12-01T08:00
parts:
  - {name: frame, substrate: bare-steel, shape: {frame: {tubes: [{diameter: 28.6 mm, length: 560 mm}], joints: 1}}}
  - {name: lamp, substrate: bare-steel, form: lattice, shape: {dome: {diameter: 600 mm, height: 100 mm}}}
`
	job, err := planner.ParseJob("job.yaml", []byte(doc), nil)
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range []struct {
		area float64
		form string
	}{{0.0503157 - 0.00064242, "lattice"}, {0.314159, "lattice"}} {
		if p := job.Parts[i]; math.Abs(float64(p.Area)-want.area) > 1e-6 || p.Form != want.form {
			t.Errorf("%s: %v m2, %q", p.Name, p.Area, p.Form)
		}
	}
}

const (
	oneShape  = "one shape, such as {cylinder: {diameter: 30 mm, length: 400 mm}}"
	lengths   = "um, µm, mil, mm, cm, m, in, ft"
	pieceKeys = "one of: area, plate, disc, trapezium, count"
)

// problem is a strictyaml.Problem of the file "j".
type problem struct {
	line, column                   int
	path, found, expected, nearest string
}

func problems(want []problem) error {
	var ps strictyaml.Problems
	for _, p := range want {
		ps = append(ps, &strictyaml.Problem{
			File: "j", Line: p.line, Column: p.column, Path: p.path, Found: p.found, Expected: p.expected, Nearest: p.nearest})
	}
	return ps.Err()
}

func TestParseShapeProblems(t *testing.T) {
	shapes := "one of: area, plate, disc, trapezium, cylinder, frustum, cone, ring, frame, box, prism, slab, body, sphere, dome, ellipsoid, helmet, paper, roll, sum"
	for _, c := range []struct {
		name, doc string
		want      []problem
	}{
		{"no shape", "{}", []problem{{1, 8, "shape", "a mapping", oneShape, ""}}},
		{"nothing", "", []problem{{1, 8, "shape", "nothing", "a mapping of keys to values", ""}}},
		{"a word", "cylinder", []problem{{1, 8, "shape", `"cylinder"`, "a mapping of keys to values", ""}}},
		{"a list", "[{area: 1 m2}]", []problem{{1, 8, "shape", "a list", "a mapping of keys to values", ""}}},
		{"unknown shape", "{cilinder: {diameter: 30 mm, length: 1 m}}", []problem{{1, 9, "shape", `the key "cilinder"`, shapes, "cylinder"}}},
		{"two shapes", "{area: 1 m2, sphere: {diameter: 1 m}}", []problem{{1, 8, "shape", "a mapping", oneShape, ""}}},
		{"a count of the whole", "{area: 1 m2, count: 2}", []problem{
			{1, 8, "shape", "a mapping", oneShape, ""}, {1, 21, "shape", `the key "count"`, shapes, "cone"}}},
		{"unknown measure", "{cylinder: {diametre: 30 mm, length: 1 m}}", []problem{
			{1, 19, "shape.cylinder.diameter", "nothing", `the key "diameter"`, ""},
			{1, 20, "shape.cylinder", `the key "diametre"`, "one of: diameter, length, ends, painted, thickness, openings", "diameter"}}},
		{"missing measure", "{box: {length: 1 m, width: 1 m}}", []problem{{1, 14, "shape.box.height", "nothing", `the key "height"`, ""}}},
		{"no measures", "{box: 1 m}", []problem{{1, 14, "shape.box", `"1 m"`, "a mapping of keys to values", ""}}},
		{"no unit", "{sphere: {diameter: 30}}", []problem{{1, 28, "shape.sphere.diameter", `"30"`, "a length in one of: " + lengths, ""}}},
		{"wrong unit", "{sphere: {diameter: 30 mn}}", []problem{{1, 28, "shape.sphere.diameter", `"30 mn"`, "a length in one of: " + lengths, "30 mm"}}},
		{"nothing of it", "{sphere: {diameter: 0 mm}}", []problem{{1, 28, "shape.sphere.diameter", `"0 mm"`, "a length above 0 and at most 20 m", ""}}},
		{"too long", "{sphere: {diameter: 560 m}}", []problem{{1, 28, "shape.sphere.diameter", `"560 m"`, "a length above 0 and at most 20 m", ""}}},
		{"list for a length", "{sphere: {diameter: [1 m]}}", []problem{{1, 28, "shape.sphere.diameter", "a list", `a length such as "15 um"`, ""}}},
		{"area of a wrong kind", "{area: 30 mm}", []problem{{1, 15, "shape.area", `"30 mm"`, "an area in one of: m2, m², dm2, cm2, cm², ft2, ft², in2, in²", "30 m2"}}},
		{"area in braces", "{area: {area: 1 m2}}", []problem{{1, 15, "shape.area", "a mapping", `an area such as "0.55 m2"`, ""}}},
		{"too many ends", "{cylinder: {diameter: 30 mm, length: 1 m, ends: 3}}", []problem{{1, 56, "shape.cylinder.ends", `"3"`, "a whole number from 0 to 2", ""}}},
		{"no such side", "{cylinder: {diameter: 30 mm, length: 1 m, painted: insde}}", []problem{
			{1, 59, "shape.cylinder.painted", `"insde"`, "a side: one of outside, inside, both", "inside"}}},
		{"neither yes nor no", "{plate: {length: 1 m, width: 1 m, both-faces: both}}", []problem{{1, 54, "shape.plate.both-faces", `"both"`, "yes or no", ""}}},
		{"wall that fills the tube", "\n  cylinder:\n    diameter: 30 mm\n    length: 1 m\n    thickness: 15 mm\n", []problem{
			{5, 16, "shape.cylinder.thickness", `"15 mm"`, "a wall of less than 15 mm, at which nothing is left inside", ""}}},
		{"share of nothing", "{ring: {diameter: 1 m, depth: 1 cm, share: 0 %}}", []problem{
			{1, 51, "shape.ring.share", `"0 %"`, "a percentage above 0 and at most 100 %", ""}}},
		{"helmet without a size", "{helmet: {height: 150 mm}}", []problem{{1, 17, "shape.helmet", "a mapping", "length and width, or circumference", ""}}},
		{"helmet with two sizes", "{helmet: {length: 1 m, width: 1 m, height: 150 mm, circumference: 3 m}}", []problem{
			{1, 74, "shape.helmet.circumference", `"3 m"`, "either length and width or circumference, not both", ""}}},
		{"waist out of place", "{body: {length: 50 cm, upper: 28 cm, waist: 24 cm, lower: 36 cm, thickness: 9 cm, waist-at: 40 cm}}", []problem{
			{1, 100, "shape.body.waist-at", `"40 cm"`, "less than 375 mm, where the lower bout lies", ""}}},
		{"sheet by its grammage", "{paper: {mass: 62 g, sheet: 40 g}}", []problem{{1, 36, "shape.paper.sheet", `"40 g"`, "a mapping of keys to values", ""}}},
		{"sheet without weight", "{paper: {mass: 62 g, sheet: {length: 1 m, width: 1 m}}}", []problem{{1, 36, "shape.paper.sheet.mass", "nothing", `the key "mass"`, ""}}},

		{"frame of nothing", "{frame: {tubes: []}}", []problem{{1, 24, "shape.frame.tubes", "a list", "a list of 1 to 60 tubes", ""}}},
		{"frame of one tube, no list", "{frame: {tubes: {diameter: 3 cm, length: 1 m}}}", []problem{{1, 24, "shape.frame.tubes", "a mapping", "a list, such as [one, two]", ""}}},
		{"faults in tubes", "\n  frame:\n    tubes:\n      - {diameter: 28.6 mm}\n      - {diameter: 28.6 mm, lenght: 1 m, length: 0 m}\n", []problem{
			{4, 9, "shape.frame.tubes[0].length", "nothing", `the key "length"`, ""},
			{5, 29, "shape.frame.tubes[1]", `the key "lenght"`, "one of: diameter, to, length, count", "length"},
			{5, 50, "shape.frame.tubes[1].length", `"0 m"`, "a length above 0 and at most 20 m", ""}}},
		{"too many joints", "{frame: {tubes: [{diameter: 3 cm, length: 1 m}], joints: 3}}", []problem{
			{1, 65, "shape.frame.joints", `"3"`, "at most 2, the ends that the tubes have", ""}}},

		{"sum of nothing", "{sum: []}", []problem{{1, 14, "shape.sum", "a list", "a list of 1 to 60 shapes", ""}}},
		{"sum in a sum", "{sum: [{sum: [{area: 1 m2}]}]}", []problem{{1, 16, "shape.sum[0]", `the key "sum"`,
			shapes[:len(shapes)-len("sum")] + "count", ""}}},
		{"count of nothing", "{sum: [{count: 2}]}", []problem{{1, 15, "shape.sum[0]", "a mapping", oneShape, ""}}},
		{"counted too often", "{sum: [{area: 1 m2, count: 201}]}", []problem{{1, 35, "shape.sum[0].count", `"201"`, "a whole number from 1 to 200", ""}}},
		{"fault in a sum", "{sum: [{area: 1 m2}, {sphere: {diameter: 3 x}}]}", []problem{
			{1, 49, "shape.sum[1].sphere.diameter", `"3 x"`, "a length in one of: " + lengths, ""}}},

		{"openings larger than the plate", "{plate: {length: 60 cm, width: 40 cm, openings: [{area: 20 dm2}, {disc: {diameter: 30 cm}}]}}", []problem{
			{1, 56, "shape.plate.openings", "a list", "openings of less than the 0.24 m² that they are in", ""}}},
		{"ball for an opening", "{plate: {length: 60 cm, width: 40 cm, openings: [{sphere: {diameter: 3 cm}}]}}", []problem{
			{1, 58, "shape.plate.openings[0]", `the key "sphere"`, pieceKeys, ""}}},
		{"opening of both faces", "{plate: {length: 60 cm, width: 40 cm, openings: [{disc: {diameter: 3 cm, both-faces: yes}}]}}", []problem{
			{1, 56, "shape.plate.openings", "a list", "an opening as it is seen from one side", ""}}},
		{"openings, no list", "{plate: {length: 60 cm, width: 40 cm, openings: 3 cm2}}", []problem{
			{1, 56, "shape.plate.openings", `"3 cm2"`, "a list, such as [one, two]", ""}}},
		{"opening of a ball in a sum", "{sum: [{disc: {diameter: 1 m, openings: [{plat: {length: 1 cm, width: 1 cm}}]}}]}", []problem{
			{1, 50, "shape.sum[0].disc.openings[0]", `the key "plat"`, pieceKeys, "plate"}}},
	} {
		t.Run(c.name, func(t *testing.T) {
			s, err := planner.ParseShape("j", []byte("shape: "+c.doc))
			if diff := cmp.Diff(problems(c.want), err); diff != "" || s != nil {
				t.Errorf("(-want +got):\n%s", diff)
			}
		})
	}
}

// In a job the same problems stand at the part.
func TestShapeProblemInJob(t *testing.T) {
	const doc = "parts:\n  - name: tube\n    substrate: bare-steel\n    shape:\n      cylinder: {diameter: 30 mm, length: 1 m, thickness: 2 cm}\n" +
		"  - {name: slab, substrate: bare-steel, shape: {box: {length: 10 m, width: 10 m, height: 1 m}}}\n" +
		"system: a\neffect: b\nfinish: c\napplicator: d\nstart: 2026-12-01T08:00\n"
	_, err := planner.ParseJob("j", []byte(doc), nil)
	want := problems([]problem{
		{5, 59, "parts[0].shape.cylinder.thickness", `"2 cm"`, "a wall of less than 15 mm, at which nothing is left inside", ""},
		{6, 48, "parts[1].shape", "a mapping", "an area above 0 and at most 50 m2 for one piece", ""},
	})
	if diff := cmp.Diff(want, err); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}

// FuzzParseShape: no document makes the reader panic; a shape that is read
// passes its check, has an area and accounts for it; a problem has a place and
// words.
func FuzzParseShape(f *testing.F) {
	for _, c := range shapeDocs {
		f.Add([]byte("shape: " + c.doc))
	}
	f.Add([]byte("shape: {sum: [{frame: {tubes: [{diameter: 1 m, length: 1 um}]}}, {count: 1}]}"))
	f.Fuzz(func(t *testing.T, document []byte) {
		s, err := planner.ParseShape("shape", document)
		if err != nil {
			if s != nil || err.Error() == "" {
				t.Errorf("a shape (%v) in spite of the error %q", s, err)
			}
			return
		}
		if err := s.Check(); err != nil {
			t.Fatalf("read, but %v\n%s", err, document)
		}
		if a := float64(s.Area()); !(a > 0) || math.IsInf(a, 0) {
			t.Errorf("an area of %v m2\n%s", a, document)
		}
		if !slices.Contains([]string{"panel", "tube", "lattice", "solid"}, s.Form()) {
			t.Errorf("a form %q", s.Form())
		}
		figures := area.Figures(s, "shape", trace.FromJob)
		if last := figures[len(figures)-1]; last.Value != q.ValueOf(s.Area()) {
			t.Errorf("accounts for %v of %v m2", last.Value.SI, s.Area())
		}
	})
}

func BenchmarkParseShape(b *testing.B) {
	for _, c := range []struct{ name, doc string }{
		{"cylinder", "shape: {cylinder: {diameter: 30 mm, length: 400 mm}}"},
		{"frame", "shape: {frame: {tubes: [{diameter: 28.6 mm, length: 560 mm}, {diameter: 31.8 mm, to: 28 mm, length: 600 mm}], joints: 3}}"},
	} {
		b.Run(c.name, func(b *testing.B) {
			for b.Loop() {
				if _, err := planner.ParseShape("shape", []byte(c.doc)); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
