package viscosity

import (
	"errors"
	"strings"
	"testing"

	q "coatwright/quantity"
)

func TestParseCup(t *testing.T) {
	for in, want := range map[string]string{
		"Ford 4":                "Ford 4",
		"ford cup no. 4":        "Ford 4",
		"#4 Ford":               "Ford 4",
		"FORD4":                 "Ford 4",
		"ASTM D1200 Ford #3":    "Ford 3",
		"zahn #2":               "Zahn 2",
		"Zahn-5":                "Zahn 5",
		"ISO 4 mm":              "ISO 4 mm",
		"ISO4mm":                "ISO 4 mm",
		"4 mm ISO flow cup":     "ISO 4 mm",
		"ISO 2431 6":            "ISO 6 mm",
		"DIN EN ISO 2431, 3 mm": "ISO 3 mm",
		"DIN 4":                 "DIN 4 mm",
		"DIN 53211 4 mm":        "DIN 4 mm",
	} {
		got, err := ParseCup(in)
		if err != nil || got.Name() != want {
			t.Errorf("ParseCup(%q) = %s, %v, want %s", in, got.Name(), err, want)
		}
	}
}

func TestEveryNameParses(t *testing.T) {
	for _, c := range cups {
		got, err := ParseCup(c.Name())
		if err != nil || got.Name() != c.Name() {
			t.Errorf("ParseCup(%q) = %s, %v", c.Name(), got.Name(), err)
		}
	}
}

func TestParseCupRefuses(t *testing.T) {
	for in, nearest := range map[string]string{
		"":                          "",
		"Fodr 4":                    "Ford 4",
		"Fort #3":                   "Ford 3",
		"zhan 2":                    "Zahn 2",
		"Ford 7":                    "",
		"Ford":                      "",
		"4":                         "",
		"4 mm":                      "",
		"Ford 0":                    "",
		"Ford 3 4":                  "Ford 3",
		"Ford Zahn 4":               "",
		"DIN 6":                     "",
		"ISO 4 mm DIN":              "ISO 4 mm",
		"Ford 4.5":                  "Ford 4",
		"Ford 99999999999999999999": "",
	} {
		_, err := ParseCup(in)
		var e *q.Error
		if !errors.As(err, &e) {
			t.Errorf("ParseCup(%q) = %v, want a *q.Error", in, err)
			continue
		}
		if e.Found != in || e.Nearest != nearest || !strings.Contains(e.Expected, "Ford 4") {
			t.Errorf("ParseCup(%q) refuses with %q, near to %q, want near to %q", in, err, e.Nearest, nearest)
		}
	}
}

func FuzzParseCup(f *testing.F) {
	for _, s := range []string{"Ford 4", "zahn #2", "ISO 2431 4 mm", "DIN EN ISO 2431 3", "Fodr 4", "４ Ford", "\xff1"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		c, err := ParseCup(s)
		var e *q.Error
		if err != nil && !errors.As(err, &e) {
			t.Errorf("%q: %v is no *q.Error", s, err)
		}
		if (err == nil) == (c.Kind == "") {
			t.Errorf("%q is read as a %q with error %v", s, c.Name(), err)
		}
		if err == nil {
			if again, err := ParseCup(c.Name()); err != nil || again.Name() != c.Name() {
				t.Errorf("%q is read as %q, that as %q", s, c.Name(), again.Name())
			}
		}
	})
}

func BenchmarkParseCup(b *testing.B) {
	for b.Loop() {
		if _, err := ParseCup("ASTM D1200 Ford cup no. 4"); err != nil {
			b.Fatal(err)
		}
	}
}
