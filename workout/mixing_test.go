package workout

import (
	"fmt"
	"testing"

	"pgregory.net/rapid"

	q "coatwright/quantity"
)

// mixing are the sheets about what is in the cup, and whether they must defer to
// somebody.
var mixing = map[*Sheet]bool{mixSheet: true, overpourSheet: true, thinningSheet: true, viscositySheet: false, gritSheet: false}

// ratio is a mix of an own ratio.
func ratio(text string, entries ...string) []string {
	return append([]string{"of", ownRatio, "ratio", text}, entries...)
}

// Published, end to end, entered in either system.
func TestMixPublished(t *testing.T) {
	lib := builtIn(t)
	for _, c := range []struct {
		source    string
		si, us    []string
		figure    string
		want      float64
		tolerance float64
	}{
		{"ehow.com/how_7878930_mix-singlestage-paint.html: a gallon of paint at 4:1:1 takes 32 fl oz of reducer, so six quarts in all",
			ratio("4:1:1", "by", byRest, "part", "A", "amount", "3.785411784 L"), ratio("4:1:1", "by", byRest, "part", "A", "amount", "1 US gal"),
			"makes", 192 * float64(ounce), 1e-9},
		// Each pour is a third: between two readings it may be off by a step.
		{"pharmacalculation.com/2024/01: what weighs to 10 mg can weigh 200 mg to 5 %",
			ratio("1:1:1", "scale", "0.01 g", "off", "5 %", "density-A", "1 kg/L", "density-B", "1 kg/L", "density-C", "1 kg/L"),
			ratio("1:1:1", "scale", "0.000352739619495804 oz", "off", "5 %", "density-A", "8.34540445 lb/gal", "density-B", "8.34540445 lb/gal", "density-C", "8.34540445 lb/gal"),
			"least-scale", 3 * 200e-6, 1e-9},
		{"finishing guidebook 2013, appendix B: means by volume; worked by hand, (990 + 0.5 x 1070)/1.5",
			ratio("2:1", "density-A", "0.99 kg/L", "density-B", "1.07 kg/L"), ratio("2:1", "density-A", "8.26195041 lb/gal", "density-B", "8.92958277 lb/gal"),
			"mix-density", 3050.0 / 3, 1e-8},
		// 4 fl oz of tint to a gallon: 4 of 132.
		{"MIL-HDBK-1110 7.3.3 allows 4 fl oz of tint to a gallon of paint",
			ratio("1 + 3.125 %", "amount", "1 L"), ratio("1 + 3.125 %", "amount", "33.8140227 fl oz"), "whole-B", 4.0 / 132, 1e-12},
		{"UFGS-09971 and MIL-HDBK-1110: epoxy keeps 4 h and stands 30 min; worked by hand, ten hours are three batches",
			ratio("4:1", "life", "4 h", "stand", "30 min", "work", "10 h", "air", "23 C", "amount", "2100 mL"),
			ratio("4:1", "life", "4 h", "stand", "30 min", "work", "10 h", "air", "73.4 F", "amount", "71.0094477 fl oz"), "batches", 3, 0},
		{"UFGS-09971: pot life is about halved by 10 C; worked independently with 50 kJ/mol, 4 h at 23 C are 2.06 h at 33 C",
			ratio("4:1", "life", "4 h", "air", "33 C"), ratio("4:1", "life", "4 h", "air", "91.4 F"), "pot-life", 2.06 * 3600, 2e-3},
	} {
		t.Run(c.source, func(t *testing.T) {
			wantFigure(t, answered(t, mixSheet, lib, c.si...), c.figure, c.want, c.tolerance)
			sameAnswers(t, mixSheet, lib, 1e-5, c.si, c.us)
		})
	}
}

// Published: a refinish painter's guide to ratios, 4:2:1: "pour the clear in to
// the 4 then the reducer in to the 6 then the hardener to the 7"
// (carpaint.blogspot.com/2006/12/mixing-paint-accurately.html).
func TestMixMarks(t *testing.T) {
	p := answered(t, mixSheet, builtIn(t), ratio("4:2:1", "amount", "7 fl oz", "cup", ownLines, "every", "0.5 fl oz")...)
	for i, want := range []float64{4, 6, 7} {
		wantNear(t, "mark", float64(p.Answer.Card.Pours[i].Mark/ounce), want, 1e-12)
		wantCell(t, p, 0, i, "Cup at", q.ValueOf(q.Volume(want)*ounce))
		wantCell(t, p, 1, i, "Line, fl oz", fmt.Sprint(want))
	}
}

// wantCell checks a cell of a table by its column.
func wantCell(t *testing.T, p *Page, table, row int, column string, want any) {
	t.Helper()
	tab := p.Answer.Tables[table]
	for i, c := range tab.Columns {
		if c != column {
			continue
		}
		got := tab.Rows[row][i]
		if v, is := got.(q.Value); is {
			if w := want.(q.Value); v.Of == w.Of {
				wantNear(t, fmt.Sprintf("%s, row %d, %s", tab.Title, row, column), v.SI, w.SI, 1e-9)
				return
			}
		}
		if got != want {
			t.Errorf("%s, row %d, %s: %v, want %v", tab.Title, row, column, got, want)
		}
		return
	}
	t.Errorf("%s has no column %q: %q", tab.Title, column, tab.Columns)
}

// Worked by hand from 2 to 1 with 10 % of the first: 400 mL in lines of 10 mL are
// off by 5 + 5 mL in 25, and a scale of 1 g by 1 g in 21.25.
func TestMixJudged(t *testing.T) {
	lib := builtIn(t)
	densities := []string{"density-A", "0.99 kg/L", "density-B", "1.07 kg/L", "density-C", "0.85 kg/L", "cup", ownLines, "every", "10 mL", "amount", "400 mL"}
	with := func(entries ...string) []string { return append(ratio("2:1 + 10 %", densities...), entries...) }
	p := answered(t, mixSheet, lib, with("scale", "1 g")...)
	wantFigure(t, p, "off-cup", 0.4, 1e-9)
	wantFigure(t, p, "off-scale", 1/21.25, 1e-9)
	wantFigure(t, p, "least-cup-ml", 10e-6*16/0.05, 1e-9)
	wantVerdict(t, p, "care", "Weigh it: by the lines of the cup C may be off by 40 %")
	wantCell(t, p, 1, 1, "Line, mL", "380") // 375
	wantCell(t, p, 1, 1, "Scale", "381 g")  // 247.5 + 133.75

	wantVerdict(t, answered(t, mixSheet, lib, with("scale", "5 g")...), "no", "Too little to measure")
	wantVerdict(t, answered(t, mixSheet, lib, append([]string{"every", "1 mL"}, with()...)...), "go", "By the lines of the cup")
	wantVerdict(t, answered(t, mixSheet, lib, ratio("2:1 + 10 %", "amount", "40 mL")...), "no", "enter the densities")
}

// What is chosen of a range changes strength and solids, and a material of the
// library says all that a card needs.
func TestMixOfTheLibrary(t *testing.T) {
	lib := builtIn(t)
	c := candied(t)
	low, high := answered(t, mixSheet, lib, "of", c, "share-"+reducerOf(t, c), "5 %"), answered(t, mixSheet, lib, "of", c, "share-"+reducerOf(t, c), "10 %")
	thin, thick := figureOf(t, high, "mix-solids"), figureOf(t, low, "mix-solids")
	wantNear(t, "solids with more thinner", thin.Value.SI, thick.Value.SI*1.35/1.40, 1e-9) // the binder is 1, the colour 0.3
	if low.Answer.Defers == "" || !tells(low, "let it stand for") || !tells(low, "Strain it through") {
		t.Errorf("the card says %q and defers to %q", low.Answer.Says, low.Answer.Defers)
	}
	checkTold(t, mixSheet, lib, []told{
		{[]string{"of", c, "share-" + reducerOf(t, c), "12 %"}, "share-" + reducerOf(t, c), `Found "12 %", expected 5 to 10 %.`},
	})
}

// candied is a material of the library that goes into another by a share, with a
// thinner that may vary.
func candied(t *testing.T) string {
	t.Helper()
	for slug, m := range builtIn(t).Materials {
		if len(m.Into) > 0 && m.Role != "" {
			return slug
		}
	}
	t.Fatal("no material goes into another")
	return ""
}

func reducerOf(t *testing.T, slug string) string {
	t.Helper()
	p := thinnerOf(builtIn(t), builtIn(t).Materials[slug])
	if p == nil {
		t.Fatalf("%s has no thinner", slug)
	}
	return p.Part
}

func TestMixTold(t *testing.T) {
	lib := builtIn(t)
	checkTold(t, mixSheet, lib, []told{
		{ratio("2 to 1"), "ratio", `Found "2 to 1", expected numbers of parts with ":" between them, such as "4:1:0.5" or "2:1 + 10 %", for "2 to 1".`},
		{ratio("2:0", "by", byRest, "part", "B"), "part", `Part 2 of the mix, "B": the mix takes none of it; expected a part that it takes.`},
		{ratio("2:1", "life", "30 min", "stand", "1 h"), "air", "Found a pot life of 30 min, and the mix must stand for 1 h first; expected a pot life that outlasts the standing."},
		{ratio("2:1", "life", "30 min", "work", "30 d"), "work", "It takes 1440 batches; expected at most 100: a bigger cup, or a mix that keeps longer after its stand."},
		{[]string{"amount", "2 m3"}, "amount", `Found "2 m3", expected 1 mL to 200 L.`},
		{[]string{"by", byCup, "holds", ""}, "holds", "Found nothing, expected mixing cup, as high as you fill it."},
	})
}

// Published, end to end, entered in either system: alligation with a part of
// strength 0 or 1 is a correction by the lacking part.
func TestOverpourPublished(t *testing.T) {
	lib := builtIn(t)
	in := func(known, a, b string) []string {
		return ratio("40:60", "known", known, "in-A", a, "in-B", b, "off", "0.1 %")
	}
	for _, c := range []struct {
		source string
		si, us []string
	}{
		{"US Army MD0802, 2-35: 300 mL of 70 % and 225 mL of water make 40 %", in(byVolumes, "210 mL", "90 mL"), in(byVolumes, "7.10094477 fl oz", "3.04326204 fl oz")},
		{"the same by marks", in(atTheMark, "210 mL", "300 mL"), in(atTheMark, "7.10094477 fl oz", "10.1442068 fl oz")},
	} {
		t.Run(c.source, func(t *testing.T) {
			p := answered(t, overpourSheet, lib, c.si...)
			wantFigure(t, p, "total-exact", 525e-6, 1e-9)
			wantCell(t, p, 2, 0, "This much", q.ValueOf(q.Volume(225e-6)))
			wantVerdict(t, p, "care", "Out of the range. Pour on 225 mL of B")
			sameAnswers(t, overpourSheet, lib, 1e-5, c.si, c.us)
		})
	}
}

// Worked by hand from 2 to 1 with 10 % of the first.
func TestOverpour(t *testing.T) {
	lib := builtIn(t)
	in := func(a, b, c string, more ...string) []string {
		return append(ratio("2:1 + 10 %", "known", byVolumes, "in-A", a, "in-B", b, "in-C", c), more...)
	}
	for _, c := range []struct {
		name    string
		entries []string
		level   string
		says    string
	}{
		{"as it should be", in("200 mL", "100 mL", "20 mL"), "go", "Within the range: leave it."},
		{"within what it may be off", in("200 mL", "104 mL", "20 mL"), "go", "Within the range: leave it."},
		{"the last to come", in("200 mL", "104 mL", ""), "go", "Within the range so far"},
		{"too much of the second", in("200 mL", "110 mL", "20 mL", "off", "0.1 %"), "care", "Pour on 19.8 mL of A"},
		{"too much for the cup", in("200 mL", "200 mL", "60 mL", "holds", "500 mL"), "care", "take "},
		{"dead", in("200 mL", "110 mL", "20 mL", "life", "2 h", "since", "2 h", "air", "23 C"), "no", "The pot life is over"},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := answered(t, overpourSheet, lib, c.entries...)
			wantVerdict(t, p, c.level, c.says)
			checkSane(t, p, true)
		})
	}
	alive := answered(t, overpourSheet, lib, in("200 mL", "110 mL", "20 mL", "life", "2 h", "since", "30 min", "air", "23 C")...)
	if !tells(alive, "in 1 h 30 min") {
		t.Errorf("of the pot life it says %q", alive.Answer.Says)
	}
	asleep := answered(t, overpourSheet, lib, "in-"+lib.Materials[overpourSheet.Fill(lib, defaults).Values["of"]].Slug, "198 g", "in-"+hardenerOf(t), "")
	if !tells(asleep, "has not begun") {
		t.Errorf("without hardener it says %q", asleep.Answer.Says)
	}
}

// hardenerOf is the part that starts the pot life in the mix that the sheet is
// first opened with.
func hardenerOf(t *testing.T) string {
	t.Helper()
	lib := builtIn(t)
	for _, p := range recipeOf(&Entry{lib: lib, given: defaults}, overpourSheet.Fill(lib, defaults).Values["of"]).parts {
		if p.Starts {
			return p.Name
		}
	}
	t.Fatal("no part starts the pot life")
	return ""
}

func TestOverpourTold(t *testing.T) {
	lib := builtIn(t)
	in := func(known, a, b string, more ...string) []string {
		return append(ratio("2:1", "known", known, "in-A", a, "in-B", b), more...)
	}
	checkTold(t, overpourSheet, lib, []told{
		{in(byVolumes, "", ""), "in-A", "Found an empty cup, expected what was poured of at least one part."},
		{in(byVolumes, "200 mL", "100 mL", "holds", "250 mL"), "holds", "Found 300 mL in a cup of 250 mL, expected no more than it holds."},
		{in(atTheMark, "200 mL", "100 mL"), "in-B", `Found "100 mL" after 200 mL, expected readings that rise, with nothing set to zero in between. If it went in earlier than the recipe has it, enter how much there is of each.`},
		{in(onTheScale, "200 g", "", "density-B", "1 kg/L"), "density-A", "Found nothing, expected the density: without it grams say nothing of the ratio."},
	})
}

// Published drain times of standard oils (cannoninstrument.com/Cups.htm): of one
// oil in two cups. Seconds are those of either system.
func TestViscosityPublished(t *testing.T) {
	lib := builtIn(t)
	for _, c := range []struct {
		cup, reads string
		mm2        float64
		other      string
		seconds    string
		tolerance  float64
	}{
		{"Ford 4", "64 s", 230, "Zahn 3", "27", 0.01}, {"Ford 3", "58 s", 120, "Zahn 2", "48", 0.011}, {"Zahn 4", "36 s", 460, "Ford 5", "40", 0.01},
	} {
		p := answered(t, viscositySheet, lib, "cup", c.cup, "reads", c.reads)
		wantFigure(t, p, "thickness", c.mm2*1e-6, c.tolerance)
		for i, row := range p.Answer.Tables[0].Rows {
			if row[0] == c.other {
				wantCell(t, p, 0, i, "Reads", c.seconds)
			}
		}
	}
	// By definition, 1 kg/L x 60 mm2/s is 60 mPa s.
	si, us := []string{"cup", ownViscosity, "thick", "60 mm2/s", "weighs", "1 kg/L"}, []string{"cup", ownViscosity, "thick", "60 cSt", "weighs", "8.34540445 lb/gal"}
	wantFigure(t, answered(t, viscositySheet, lib, si...), "dynamic", 60, 1e-9)
	sameAnswers(t, viscositySheet, lib, 1e-7, si, us)
	checkTold(t, viscositySheet, lib, []told{
		{[]string{"cup", "Ford 4", "reads", "15 s"}, "reads", "Found 15 s with the Ford 4 cup, expected 20 to 100 s; run the Ford 3 cup instead: 24.1 s."},
		{[]string{"cup", "Ford 4", "reads", "30 s", "warm", "40 C"}, "warm", "Found 25 °C, read at 40 °C; expected no more than 10 °C between the two: bring the paint there and read it."},
	})
	if p := answered(t, viscositySheet, lib, "cup", "Ford 4", "reads", "30 s", "warm", "18 C"); !tells(p, "bring it there and read again") {
		t.Errorf("a cold paint is told %q", p.Answer.Says)
	}
}

// Worked by hand from PullFormula, as in planner/viscosity: 60 s in a Ford 4, 44 s
// with 5 %, to run 35 s: 9.25 %.
func TestThinning(t *testing.T) {
	lib := builtIn(t)
	asked := func(amount string, more ...string) []string {
		return append([]string{"of", ownPaint, "cup", "Ford 4", "want", "35 s", "reads", "60 s", "known", byReading, "tried", "5 %", "then", "44 s", "thinner", "0.7 mm2/s", "amount", amount}, more...)
	}
	si, us := asked("400 mL"), asked("13.5256091 fl oz")
	p := answered(t, thinningSheet, lib, si...)
	wantFigure(t, p, "share", 0.0925, 0.001)
	wantFigure(t, p, "thinner-volume", 0.0925*400e-6, 0.001)
	wantFigure(t, p, "then-reads", 35, 1e-9)
	wantVerdict(t, p, "go", "Pour 37 mL into the 400 mL")
	sameAnswers(t, thinningSheet, lib, 1e-7, si, us)

	wantVerdict(t, answered(t, thinningSheet, lib, asked("400 mL", "allowed", "2 to 5 %")...), "care", "The recipe ends before the cup does, which wants 9.25 % or more")
	wantVerdict(t, answered(t, thinningSheet, lib, asked("400 mL", "allowed", "15 to 20 %")...), "go", "The cup would do with 9.25 %, and the recipe wants more")
	wantVerdict(t, answered(t, thinningSheet, lib, append([]string{"want", "60 to 70 s"}, asked("400 mL")...)...), "go", "It sprays as it is")
	wantVerdict(t, answered(t, thinningSheet, lib, append([]string{"want", "70 s"}, asked("400 mL")...)...), "no", "It is thinner than it sprays at")
	checkTold(t, thinningSheet, lib, []told{
		{append([]string{"then", "60 s"}, asked("1 L")...), "then", "Found 60 s Ford 4 with 5 % of thinner after 60 s Ford 4 without; expected less, and more than the thinner's own 0.7 mm²/s: stir, let it stand, and read both at one temperature."},
		{append([]string{"want", "15 s"}, asked("1 L")...), "want", "Found 15 s with the Ford 4 cup, expected 20 to 100 s; run the Ford 3 cup instead: 24.1 s."},
	})
}

// A recipe takes its thinner of one part, and the cup reads all that is in it: of
// two parts to one, 10 % of the first are 6.67 % of both.
func TestThinningOfAPart(t *testing.T) {
	p := answered(t, thinningSheet, builtIn(t))
	share, part := figureOf(t, p, "share"), figureOf(t, p, "share-of-part")
	wantNear(t, "share of the first part", part.Value.SI, share.Value.SI*3/2, 1e-9)
}

// Published: P800 is near to 400 of the other scale (metalclayuk.co.uk), and the
// grains of sizes.com/tools/sandpaper.htm. A grade has no units of its own; a grain
// is entered in either system.
func TestGritPublished(t *testing.T) {
	lib := builtIn(t)
	p := answered(t, gritSheet, lib, "grade", "P800", "to", "")
	wantFigure(t, p, "same-1", 400, 0)
	wantFigure(t, answered(t, gritSheet, lib, "grade", "P80"), "grain-1", 201e-6, 1e-12)
	sameAnswers(t, gritSheet, lib, 1e-9, []string{"grade", "25.4 um", "to", ""}, []string{"grade", "1 mil", "to", ""})

	// Common practice, no published source: twice the number at the most.
	p = answered(t, gritSheet, lib, "grade", "P180", "to", "P800")
	for i, want := range []string{"P180", "P320", "P500", "P800"} {
		wantCell(t, p, 1, i, "Paper", want)
	}
	if p := answered(t, gritSheet, lib, "grade", "400 grit"); !tells(p, "Look at the back of the paper") {
		t.Errorf("a bare number is told %q", p.Answer.Says)
	}
	checkTold(t, gritSheet, lib, []told{
		{[]string{"grade", "P650"}, "grade", `Found "P650", expected a grade of the P scale, P12 to P3000; did you mean "P600"?`},
		{[]string{"grade", "P800", "to", "P180"}, "to", "Found P800 to P180; expected the coarse grade first: P180 to P800."},
	})
}

// Whatever is typed in, the answer is sane or each problem is told.
func TestAnyMixIsAnsweredOrTold(t *testing.T) {
	lib := builtIn(t)
	for s, defers := range mixing {
		t.Run(s.Slug, func(t *testing.T) {
			answers := 0
			rapid.Check(t, func(t *rapid.T) {
				given := map[string]string{}
				look := func(key string) (string, bool) { text, ok := given[key]; return text, ok }
				for range 2 { // choices ask for other choices
					for _, f := range s.Fill(lib, look).Fields {
						if len(f.Choices) > 0 && given[f.Key] == "" {
							given[f.Key] = anyEntry(t, f)
						}
					}
				}
				if given["of"] == ownRatio {
					given["ratio"] = rapid.SampledFrom([]string{"2:1", "4:1:0.5", "2:1 + 10 %", "100 + 5..10 %", "1:0", "3", "1:1e9", "7:0.001 + 300 %", ":", "0:0"}).Draw(t, "ratio")
				}
				for _, f := range s.Fill(lib, look).Fields {
					if _, entered := given[f.Key]; !entered && rapid.IntRange(0, 3).Draw(t, f.Key+": touched") == 0 {
						given[f.Key] = anyEntry(t, f)
					}
				}
				p := s.Fill(lib, look)
				checkSane(t, p, defers)
				if p.Answer != nil {
					answers++
				}
			})
			if answers == 0 {
				t.Error("nothing was answered")
			}
		})
	}
}

// Every choice of every field is answered as it first comes, or says what it
// takes: a grain has no name, and a cup is not made for every paint.
func TestEveryMixChoiceIsAnswered(t *testing.T) {
	lib := builtIn(t)
	for s, defers := range mixing {
		for _, f := range s.Fill(lib, defaults).Fields {
			for _, c := range f.Choices {
				p := filledIn(t, s, lib, f.Key, c.Value)
				checkSane(t, p, defers)
				if p.Answer == nil && f.Key != "cup" {
					t.Errorf("%s, %s %q: %v", s.Slug, f.Key, c.Value, p.Problems)
				}
			}
		}
	}
}

func BenchmarkMixing(b *testing.B) {
	lib := builtIn(b)
	for s := range mixing {
		b.Run(s.Slug, func(b *testing.B) {
			for b.Loop() {
				if s.Fill(lib, defaults).Answer == nil {
					b.Fatal("no answer")
				}
			}
		})
	}
}
