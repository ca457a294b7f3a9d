package grit

import (
	"errors"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	q "coatwright/quantity"
)

func TestParse(t *testing.T) {
	for _, c := range []struct {
		in      string
		want    string
		remarks []string
	}{
		{"P600", "P600", nil},
		{"p 600", "P600", nil},
		{"P-600", "P600", nil},
		{"FEPA P80", "P80", nil},
		{"CAMI 400", "CAMI 400", nil},
		{"ansi400 grit", "CAMI 400", nil},
		{"600 grit", "P600, CAMI 600", []string{"Without a P it may be CAMI 600, which is near to P1200. Look at the back of the paper."}},
		{"600", "P600, CAMI 600", []string{"Without a P it may be CAMI 600, which is near to P1200. Look at the back of the paper."}},
		{"#400", "P400, CAMI 400", []string{"Without a P it may be CAMI 400, which is near to P800. Look at the back of the paper."}},
		{"grit no. 60", "P60, CAMI 60", nil}, // alike on both
		{"180 grit", "P180, CAMI 180", nil},
		{"2500 grit", "P2500", nil}, // only on one
		{"26 um", "P600, CAMI 360", nil},
		{"26 µm", "P600, CAMI 360", nil},
		{"26 μm", "P600, CAMI 360", nil}, // with the Greek letter
		{"26 microns", "P600, CAMI 360", nil},
		{"0.2 mm", "P80, CAMI 80", nil},
		{"6.5 um", "P3000", nil},
	} {
		got, err := Parse(c.in)
		if err != nil {
			t.Errorf("Parse(%q): %v", c.in, err)
			continue
		}
		var names []string
		for _, g := range got.Grades {
			names = append(names, g.Name())
		}
		if text := strings.Join(names, ", "); text != c.want {
			t.Errorf("Parse(%q) = %s, want %s", c.in, text, c.want)
		}
		if diff := cmp.Diff(c.remarks, got.Remarks); diff != "" {
			t.Errorf("remarks on %q (-want +got):\n%s", c.in, diff)
		}
	}
}

func TestParseKeepsTheSize(t *testing.T) {
	got, err := Parse("27 um")
	if err != nil || got.Size != 27*1e-6 {
		t.Errorf("Parse of 27 um has size %v, %v", got.Size, err)
	}
}

func TestParseRefuses(t *testing.T) {
	const example = `a grade such as "P600", "600 grit" or "CAMI 400", or a grain such as "26 um"`
	for in, want := range map[string]string{
		"":             `found "", expected ` + example,
		"P":            `found "P", expected ` + example,
		"F180":         `found "F180", expected ` + example,
		"P600 CAMI":    `found "P600 CAMI", expected ` + example,
		"P600-800":     `found "P600-800", expected ` + example,
		"600.5":        `found "600.5", expected ` + example,
		"99999999":     `found "99999999", expected ` + example,
		"0 grit":       `found "0 grit", expected ` + example,
		"fine":         `found "fine", expected ` + example,
		"P650":         `found "P650", expected a grade of the P scale, P12 to P3000; did you mean "P600"?`,
		"650 grit":     `found "650 grit", expected a grade of the P scale, P12 to P3000; did you mean "P600"?`,
		"CAMI 90 grit": `found "CAMI 90 grit", expected a grade of the CAMI scale, CAMI 16 to CAMI 1000; did you mean "CAMI 100"?`,
		"1 um":         `found "1 um", expected a grain of 6.5 to 1815 um, as the P scale has`,
	} {
		_, err := Parse(in)
		if err == nil || err.Error() != want {
			t.Errorf("Parse(%q) refuses with\n\t%v\nwant\n\t%s", in, err, want)
		}
	}
}

func FuzzParse(f *testing.F) {
	for _, s := range []string{"P600", "600 grit", "CAMI 400", "26 µm", "26 μm", "#400", "F180", "６００", "\xff1", "1e3 um"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		m, err := Parse(s)
		var e *q.Error
		if err != nil && !errors.As(err, &e) {
			t.Errorf("%q: %v is no *q.Error", s, err)
		}
		if (err == nil) != (len(m.Grades) > 0) {
			t.Errorf("%q is read as %v with error %v", s, m.Grades, err)
		}
		for _, g := range m.Grades {
			if again, err := Parse(g.Name()); err != nil || len(again.Grades) != 1 || again.Grades[0] != g {
				t.Errorf("%q is read as %q, that as %v, %v", s, g.Name(), again.Grades, err)
			}
		}
	})
}

func BenchmarkParse(b *testing.B) {
	for b.Loop() {
		if _, err := Parse("600 grit"); err != nil {
			b.Fatal(err)
		}
	}
}
