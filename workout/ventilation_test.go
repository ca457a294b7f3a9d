package workout

import (
	"encoding/csv"
	"os"
	"strconv"
	"testing"
)

const (
	cfm           = 0.3048 * 0.3048 * 0.3048 / 60 // m3/s
	footPerMinute = 0.3048 / 60                   // m/s
)

// table is a file of testdata/hazard by column; its sources stand on its top.
func table(t *testing.T, name string) []map[string]string {
	t.Helper()
	f, err := os.Open("../testdata/hazard/" + name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	records, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var out []map[string]string
	for _, record := range records[1:] {
		row := map[string]string{}
		for i, column := range records[0] {
			row[column] = record[i]
		}
		out = append(out, row)
	}
	return out
}

func read64(t *testing.T, text string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return x
}

// The velocities of the listed words are those that were published, each of them
// once.
func TestListedVelocities(t *testing.T) {
	words := builtIn(t).Words
	published := table(t, "face_velocity.csv")
	if len(words.BoothVelocities) != len(published) {
		t.Fatalf("%d velocities are listed, %d published", len(words.BoothVelocities), len(published))
	}
	seen := map[int]bool{}
	for _, v := range words.BoothVelocities {
		name := map[string]string{
			"guns-small": "air-operated guns/50/small", "guns-large": "air-operated guns/50/large",
			"guns-small-draught": "air-operated guns/100/small", "guns-large-draught": "air-operated guns/100/large",
			"unmanned-small": "electrostatic or automatic airless without operator/negligible/small", "unmanned-large": "electrostatic or automatic airless without operator/negligible/large",
			"dry-filters": "any but electrostatic//", "dry-filters-charged": "electrostatic//",
		}[v.Name]
		for i, row := range published {
			if row["for"]+"/"+row["crossdraft_to"]+"/"+row["booth"] != name {
				continue
			}
			seen[i] = true
			wantNear(t, v.Name+", design", float64(v.Design)/footPerMinute, read64(t, row["design"]), 1e-9)
			wantNear(t, v.Name+", least", float64(v.Range.Low)/footPerMinute, read64(t, row["low"]), 1e-9)
			wantNear(t, v.Name+", most", float64(v.Range.High)/footPerMinute, read64(t, row["high"]), 1e-9)
		}
	}
	if len(seen) != len(published) {
		t.Errorf("%d of %d published velocities are listed", len(seen), len(published))
	}
}

// Worked independently: an opening of 10 ft by 8 ft at 100 ft/min takes 8000
// ft3/min; the rule's 75 to 125 ft/min take 6000 to 10000.
func TestBoothAir(t *testing.T) {
	lib := builtIn(t)
	us := []string{"width", "10 ft", "height", "8 ft", "rule", "guns-large", "fan", "4000 cfm"}
	p := answered(t, boothSheet, lib, us...)
	air := figureOf(t, p, "air")
	wantNear(t, "to design for", air.Value.SI/cfm, 8000, 1e-9)
	wantNear(t, "least", air.Range.Low.SI/cfm, 6000, 1e-9)
	wantNear(t, "most", air.Range.High.SI/cfm, 10000, 1e-9)
	wantNear(t, "what the fan makes", figureOf(t, p, "face").Value.SI/footPerMinute, 50, 1e-9)
	sameAnswers(t, boothSheet, lib, 1e-3, []string{"width", "3.048 m", "height", "243.84 cm", "rule", "guns-large", "fan", "6796 m3/h"}, us)

	p = answered(t, boothSheet, lib, append(us, "slots", "20 ft2")...)
	wantNear(t, "with other openings", figureOf(t, p, "air").Value.SI/cfm, 10000, 1e-9)
	p = answered(t, boothSheet, lib, "width", "10 ft", "height", "8 ft", "rule", ownVelocity, "velocity", "60 ft/min")
	if f := figureOf(t, p, "air"); f.Range != nil {
		t.Errorf("a velocity of one's own has the range %v", f.Range)
	}
	wantNear(t, "at a velocity of one's own", figureOf(t, p, "air").Value.SI/cfm, 4800, 1e-9)
}

// No fan is ever let off: what reaches the rule is "care".
func TestBoothFan(t *testing.T) {
	lib := builtIn(t)
	for fan, want := range map[string]Verdict{
		"4000 cfm":  {"no", "The fan stays 3398 m³/h behind the least that the rule asks for."},
		"8000 cfm":  {"care", "The fan reaches what the rule asks for, on average. That says nothing of what may be breathed there."},
		"12000 cfm": {"care", "The fan draws more than the rule's range. Faster air carries paint past the part, and the filters must be made for it."},
	} {
		p := answered(t, boothSheet, lib, "width", "10 ft", "height", "8 ft", "rule", "guns-large", "fan", fan)
		if *p.Answer.Verdict != want {
			t.Errorf("%s: %v, want %v", fan, *p.Answer.Verdict, want)
		}
	}
	if p := answered(t, boothSheet, lib); p.Answer.Verdict != nil {
		t.Errorf("without a fan: %v", p.Answer.Verdict)
	}
}

// A shop whose words list no velocities enters one.
func TestBoothWithoutRules(t *testing.T) {
	lib := builtIn(t)
	words := *lib.Words
	words.BoothVelocities = nil
	bare := *lib
	bare.Words = &words
	p := answered(t, boothSheet, &bare)
	wantNear(t, "air", figureOf(t, p, "air").Value.SI, 7.2*0.5, 1e-9)
}

func TestBoothTells(t *testing.T) {
	checkTold(t, boothSheet, builtIn(t), []told{
		{[]string{"width", "0 m"}, "width", `Found "0 m", expected 50 mm to 50 m.`},
		{[]string{"height", "3 kg"}, "height", `Found "3 kg", expected a length in one of: um, µm, mil, mm, cm, m, in, ft.`},
		{[]string{"rule", "guns"}, "rule", `Found "guns", expected one of the list.`},
		{[]string{"rule", ownVelocity, "velocity", "0 m/s"}, "velocity", `Found "0 m/s", expected 0.05 to 5 m/s.`},
		{[]string{"fan", "much"}, "fan", `Found "much", expected an air flow such as "180 L/min".`},
	})
}
