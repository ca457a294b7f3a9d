package mix

import (
	"math"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	q "coatwright/quantity"
)

func volumes(ml ...float64) []q.Volume {
	out := make([]q.Volume, len(ml))
	for i, v := range ml {
		out[i] = q.Volume(v * 1e-6)
	}
	return out
}

// Alligation with a part of strength 0 or 1 is a correction by the lacking part.
func TestCorrectAgainstAlligation(t *testing.T) {
	for _, c := range []struct {
		source               string
		strength, of, wanted float64
		add                  string
		want                 float64
	}{
		// Published: 300 mL of 70 % and 225 mL of water make 40 %.
		{"US Army MD0802, 2-35", 0.70, 300, 0.40, "water", 225},
		// Published: 500 mL of 1:200 and 9500 mL of water make 1:4000.
		{"US Army MD0802, 2-37", 1.0 / 200, 500, 1.0 / 4000, "water", 9500},
		// Published: 500 mL of 15 % made up to 1500 mL are 5 %.
		{"slideplayer.com/slide/3257090", 0.15, 500, 0.05, "water", 1000},
		// Published: 10 L of 40 % and 5 L of alcohol make 60 %.
		{"ASVAB arithmetic reasoning, mixture problems", 0.40, 10000, 0.60, "alcohol", 5000},
	} {
		parts := []Part{{Name: "alcohol", Parts: c.wanted}, {Name: "water", Parts: 1 - c.wanted}}
		got, err := Correct(parts, volumes(c.of*c.strength, c.of*(1-c.strength)), 0, 0)
		if err != nil {
			t.Fatal(err)
		}
		if got.Verdict != AddTo || len(got.Exact.Add) != 1 || got.Exact.Add[0].Name != c.add {
			t.Errorf("%s: %+v, want %s", c.source, got, c.add)
			continue
		}
		near(t, c.source, got.Exact.Add[0].Volume.Millilitres(), c.want, 1e-9)
		near(t, c.source+", total", got.Exact.Total.Millilitres(), c.of+c.want, 1e-9)
	}
}

// Worked by hand from 2 to 1 with 10 % of the base (5 to 15 %).
func TestCorrect(t *testing.T) {
	for _, c := range []struct {
		name    string
		poured  []q.Volume
		cup     float64
		slack   q.Fraction
		verdict Verdict
		least   []float64 // mL of base, hardener, thinner; nil for none
		exact   []float64
		out     float64 // of Least
		cups    int     // of Least
		running bool
	}{
		{"as the recipe has it", volumes(200, 100, 20), 600, 0, Leave, []float64{0, 0, 0}, []float64{0, 0, 0}, 0, 1, true},
		{"thinner at its low end", volumes(200, 100, 10), 600, 0, Leave, []float64{0, 0, 0}, []float64{0, 0, 10}, 0, 1, true},
		{"thinner at its high end", volumes(200, 100, 30), 600, 0, Leave, []float64{0, 0, 0}, []float64{100, 50, 0}, 0, 1, true},
		{"too much thinner", volumes(200, 100, 45), 800, 0, AddTo, []float64{100, 50, 0}, []float64{250, 125, 0}, 0, 1, true},
		{"too little thinner", volumes(200, 100, 4), 600, 0, AddTo, []float64{0, 0, 6}, []float64{0, 0, 16}, 0, 1, true},
		{"too much hardener", volumes(200, 110, 20), 600, 0, AddTo, []float64{20, 0, 0}, []float64{20, 0, 2}, 0, 1, true},
		{"too much hardener, within the slack", volumes(200, 104, 20), 600, 0.05, Leave, []float64{0, 0, 0}, []float64{8, 0, 0.8}, 0, 1, true},
		{"too much hardener, to within the slack", volumes(200, 115.5, 20), 600, 0.05, AddTo, []float64{20, 0, 0}, []float64{31, 0, 3.1}, 0, 1, true},
		{"too much hardener, thinner to come", volumes(200, 110, 0), 600, 0, AddTo, []float64{20, 0, 22}, []float64{20, 0, 22}, 0, 1, true},
		{"base only", volumes(200, 0, 0), 600, 0.05, PourOn, []float64{0, 100, 20}, []float64{0, 100, 20}, 0, 1, false},
		{"hardener first", volumes(0, 50, 0), 600, 0.05, PourOn, []float64{100, 0, 10}, []float64{100, 0, 10}, 0, 1, true},
		{"two that agree, one to come", volumes(200, 104, 0), 600, 0.05, PourOn, []float64{0, 0, 20}, []float64{8, 0, 20.8}, 0, 1, true},
		// 400, 200 and 60 mL are needed and 500 mL fit: 500/660 of all.
		{"too much for the cup", volumes(200, 200, 60), 500, 0, Overfull, []float64{200 * 500.0 / 660, 0, 0}, []float64{400 * 500.0 / 960, 100 * 500.0 / 960, 0}, 460 * (1 - 500.0/660), 2, true},
		{"any cup", volumes(200, 200, 60), 0, 0, AddTo, []float64{200, 0, 0}, []float64{400, 100, 0}, 0, 1, true},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, err := Correct(clear, c.poured, q.Volume(c.cup*ml), c.slack)
			if err != nil {
				t.Fatal(err)
			}
			if got.Verdict != c.verdict || got.Running != c.running {
				t.Errorf("verdict %q, running %v, want %q and %v", got.Verdict, got.Running, c.verdict, c.running)
			}
			for i, p := range clear {
				near(t, "least of "+p.Name, added(got.Least.Add, p.Name).Millilitres(), c.least[i], 1e-9)
				near(t, "exact of "+p.Name, added(got.Exact.Add, p.Name).Millilitres(), c.exact[i], 1e-9)
			}
			near(t, "to take out", got.Least.Out.Millilitres(), c.out, 1e-9)
			if got.Least.Cups != c.cups {
				t.Errorf("%d cups, want %d", got.Least.Cups, c.cups)
			}
		})
	}
}

// added is what a list of pours has of a part.
func added(pours []Pour, name string) q.Volume {
	var v q.Volume
	for _, p := range pours {
		if p.Name == name {
			v += p.Volume
		}
	}
	return v
}

// The marks of what is added go on from what is in the cup.
func TestCorrectMarks(t *testing.T) {
	got, err := Correct(clear, volumes(200, 110, 0), 600*ml, 0)
	if err != nil {
		t.Fatal(err)
	}
	want := []Pour{ // 200 mL and 110 mL weigh 198 and 117.7 g
		{"base", 20 * ml, 19.8 * gram, 330 * ml, 335.5 * gram, false},
		{"thinner", 22 * ml, 18.7 * gram, 352 * ml, 354.2 * gram, false},
	}
	if diff := cmp.Diff(want, got.Least.Add, about[q.Volume](), about[q.Mass]()); diff != "" {
		t.Errorf("Add (-want +got):\n%s", diff)
	}
}

// What is added has no masses where one of what it joins is not known, and more
// hardener does not start the pot life again.
func TestCorrectWithoutDensities(t *testing.T) {
	parts := slices.Clone(clear)
	parts[1].Density = 0
	got, err := Correct(parts, volumes(200, 110, 0), 0, 0)
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range got.Least.Add {
		if p.Mass != 0 || p.MarkMass != 0 {
			t.Errorf("masses of %+v", p)
		}
	}
	got, err = Correct(clear, volumes(300, 100, 0), 0, 0)
	if err != nil {
		t.Fatal(err)
	}
	if p := got.Least.Add[0]; p.Name != "hardener" || p.Starts || !got.Running {
		t.Errorf("more hardener: %+v", got)
	}
}

func TestNothingMends(t *testing.T) {
	parts := []Part{{Name: "base", Parts: 1}, {Name: "other"}, {Name: "thinner", Of: "base", Range: q.Range[q.Fraction]{High: 0.05}}}
	got, err := Correct(parts, volumes(100, 1, 0), 0, 0.05)
	if err != nil {
		t.Fatal(err)
	}
	if got.Verdict != Lost || got.Least != nil || got.Exact != nil {
		t.Errorf("a part that the recipe has none of: %+v, want it lost", got)
	}
	// Chosen is none, and some is allowed.
	got, err = Correct(parts, volumes(100, 0, 6), 0, 0.05)
	if err != nil {
		t.Fatal(err)
	}
	if got.Verdict != AddTo || got.Exact != nil {
		t.Errorf("thinner where none is chosen: %+v, want base to be added, and no way back to none", got)
	}
	near(t, "base", added(got.Least.Add, "base").Millilitres(), 20, 1e-9)
}

func TestCorrectRefuses(t *testing.T) {
	strong := []Part{{Name: "base", Parts: 1}, {Name: "thinner", Of: "base", Share: 0.12, Range: q.Range[q.Fraction]{Low: 0.05, High: 0.10}}}
	for _, c := range []struct {
		name   string
		parts  []Part
		poured []q.Volume
		cup    q.Volume
		slack  q.Fraction
		want   string
	}{
		{"an empty cup", clear, volumes(0, 0, 0), 0, 0,
			"the cup is empty; expected what was poured of at least one part"},
		{"two amounts", clear, volumes(200, 100), 0, 0,
			"found 2 amounts for 3 parts; expected one for each, 0 for what is not yet poured"},
		{"below nothing", clear, volumes(200, -1, 0), 0, 0,
			`part 2 of the mix, "hardener": found -1e-06; expected a volume, 0 or more`},
		{"more than the cup", clear, volumes(400, 200, 40), 600 * ml, 0,
			"found 640 mL in a cup of 600 mL; expected no more than it holds"},
		{"a cup below nothing", clear, volumes(400, 200, 40), -1, 0,
			"found -1; expected the size of the cup, 0 or more"},
		{"all slack", clear, volumes(400, 200, 40), 0, 1,
			"found 100 % as what a ratio may be off; expected a share from 0 % to below 100 %"},
		{"chosen outside the range", strong, volumes(100, 12), 0, 0,
			`part 2 of the mix, "thinner": found 12 % of base; expected 5 to 10 %: at most 10 %`},
		{"no density", []Part{{Name: "base", Density: 1000, Parts: 1}, {Name: "thinner", Of: "base", ByMass: true}}, volumes(1, 0), 0, 0,
			`part 2 of the mix, "thinner": found densities of 0 and 1000 kg/m3; expected both above 0, to go between mass and volume`},
		{"no such part", []Part{{Name: "base", Parts: 1}, {Name: "thinner", Of: "bsae", Share: 0.1}}, volumes(100, 12), 0, 0,
			`part 2 of the mix, "thinner": found a share of "bsae"; expected another part: base; did you mean "base"?`},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := Correct(c.parts, c.poured, c.cup, c.slack)
			if err == nil || err.Error() != c.want {
				t.Errorf("Correct refuses with\n\t%v\nwant\n\t%s", err, c.want)
			}
		})
	}
}

func TestFromScale(t *testing.T) {
	got, err := FromScale(clear, []q.Mass{198 * gram, 305 * gram})
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(volumes(200, 100, 0), got, about[q.Volume]()); diff != "" {
		t.Errorf("FromScale (-want +got):\n%s", diff)
	}
	got, err = FromMarks(clear, volumes(200, 300, 320))
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(volumes(200, 100, 20), got, about[q.Volume]()); diff != "" {
		t.Errorf("FromMarks (-want +got):\n%s", diff)
	}
	for _, c := range []struct {
		name  string
		parts []Part
		shown []q.Mass
		want  string
	}{
		{"set to zero in between", clear, []q.Mass{0.198, 0.107},
			`part 2 of the mix, "hardener": the scale went down from 198 g to 107 g; expected readings that rise, with nothing set to zero in between`},
		{"below zero", clear, []q.Mass{-1},
			`part 1 of the mix, "base": found -1; expected a reading, 0 or more`},
		{"too many", clear, []q.Mass{1, 2, 3, 4},
			"found 4 readings of the scale for 3 parts; expected one after each pour"},
		{"no density", []Part{{Name: "base", Parts: 1}}, []q.Mass{1},
			`part 1 of the mix, "base": found no density of "base"; expected one, to go from parts by mass to parts by volume`},
	} {
		_, err := FromScale(c.parts, c.shown)
		if err == nil || err.Error() != c.want {
			t.Errorf("%s: FromScale refuses with\n\t%v\nwant\n\t%s", c.name, err, c.want)
		}
	}
}

// anyPoured draws what is in the cup: some of the parts, some of them as the
// recipe has it and some not.
func anyPoured(t *rapid.T, parts []Part) []q.Volume {
	pours, err := Pours(parts, 300*ml)
	if err != nil {
		t.Fatal(err)
	}
	poured := make([]q.Volume, len(parts))
	for i, p := range pours {
		if i == 0 || rapid.IntRange(0, 4).Draw(t, "poured") > 0 {
			poured[i] = p.Volume * q.Volume(rapid.SampledFrom([]float64{0.5, 0.9, 1, 1, 1.04, 1.3, 4}).Draw(t, "times"))
		}
	}
	return poured
}

// With no slack and no ranges, and always for Exact, the mix comes back to its
// ratio with the least total: the most that any part asks for.
func TestCorrectExactly(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		parts := anyMix(t)
		poured := anyPoured(t, parts)
		got, err := Correct(parts, poured, 0, 0)
		if err != nil {
			t.Fatal(err)
		}
		shares, err := Shares(parts)
		if err != nil {
			t.Fatal(err)
		}
		var least q.Volume
		for i, v := range poured {
			least = max(least, v/q.Volume(shares[i]))
		}
		near(t, "total", float64(got.Exact.Total), float64(least), 1e-8)
		for i, p := range parts {
			near(t, p.Name, float64(poured[i]+added(got.Exact.Add, p.Name)), float64(least)*float64(shares[i]), 1e-8)
		}
	})
}

// What Least adds brings every part into its range, in a cup of any size, with
// something taken out or in several cups; and no other way into the ranges takes
// less of any part.
func TestCorrectWithTheLeast(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		parts := anyMix(t)
		poured := anyPoured(t, parts)
		slack := q.Fraction(rapid.SampledFrom([]float64{0, 0.05, 0.2}).Draw(t, "slack"))
		var there q.Volume
		for _, v := range poured {
			there += v
		}
		size := there * q.Volume(rapid.Float64Range(1, 3).Draw(t, "size of the cup"))
		got, err := Correct(parts, poured, size, slack)
		if err != nil {
			t.Fatal(err)
		}
		links, err := chainOf(parts, slack)
		if err != nil {
			t.Fatal(err)
		}
		links = links.settled(asNumbers(poured))

		r := got.Least
		stays := q.Volume(1)
		if r.Out > 0 {
			stays = 1 - r.Out/there
		}
		oneCup, manyCups := make([]float64, len(parts)), make([]float64, len(parts))
		for i, p := range parts {
			oneCup[i] = float64(poured[i]*stays + added(r.Add, p.Name))
			manyCups[i] = float64(poured[i]/q.Volume(r.Cups) + added(r.Each, p.Name))
		}
		for _, mixed := range [][]float64{oneCup, manyCups} {
			if sum(mixed) > float64(size)*(1+1e-9) {
				t.Errorf("%v in a cup of %v", sum(mixed), size)
			}
			checkLinks(t, parts, links, mixed)
		}
		near(t, "total", sum(oneCup), float64(r.Total), 1e-8)
		if r.Out > 0 {
			near(t, "a full cup", float64(r.Total), float64(size), 1e-9)
		}
		if (got.Verdict == Overfull) != (r.Out > 0) || (got.Verdict == Leave) != (len(r.Add) == 0) {
			t.Errorf("verdict %q with %+v", got.Verdict, r)
		}

		other := anotherWay(t, links, asNumbers(poured))
		for i := range parts {
			if mine := manyCups[i] * float64(r.Cups); mine > other[i]*(1+1e-8) {
				t.Errorf("%s: takes %v, and another way %v", parts[i].Name, mine, other[i])
			}
		}
	})
}

func asNumbers(vs []q.Volume) []float64 {
	out := make([]float64, len(vs))
	for i, v := range vs {
		out[i] = float64(v)
	}
	return out
}

// checkLinks fails unless every part lies in the range of what it hangs on.
func checkLinks(t *rapid.T, parts []Part, c chain, amounts []float64) {
	for i, l := range c.links {
		if l.to < 0 {
			continue
		}
		if ratio := amounts[i] / amounts[l.to]; ratio < l.low*(1-1e-7) || ratio > l.high*(1+1e-7) {
			t.Errorf("%s is %v of %s, want %v to %v", parts[i].Name, ratio, parts[l.to].Name, l.low, l.high)
		}
	}
}

// anotherWay draws a mix within the ranges that has all of what is there.
func anotherWay(t *rapid.T, c chain, there []float64) []float64 {
	out := make([]float64, len(there))
	for _, i := range c.order {
		l := c.links[i]
		if l.to < 0 {
			out[i] = 1
			continue
		}
		out[i] = out[l.to] * (l.low + (l.high-l.low)*rapid.Float64Range(0, 1).Draw(t, "in range"))
	}
	times := 0.0
	for i := range out {
		if there[i] > 0 {
			times = max(times, there[i]/out[i])
		}
	}
	for i := range out {
		out[i] *= times
	}
	return out
}

// A mix that is left alone stays so when it is asked about again.
func TestCorrectingTwiceIsLeaving(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		parts := anyMix(t)
		poured := anyPoured(t, parts)
		first, err := Correct(parts, poured, 0, 0.05)
		if err != nil {
			t.Fatal(err)
		}
		for i, p := range parts {
			poured[i] += added(first.Least.Add, p.Name)
		}
		again, err := Correct(parts, poured, 0, 0.05)
		if err != nil {
			t.Fatal(err)
		}
		if again.Verdict != Leave || math.Abs(float64(again.Least.Total-first.Least.Total)) > 1e-12 {
			t.Errorf("after the correction: %+v", again)
		}
	})
}
