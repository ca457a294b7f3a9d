package colour

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"

	q "coatwright/quantity"
)

// tb is what a test and a property have in common.
type tb interface {
	Helper()
	Errorf(format string, args ...any)
	Fatal(args ...any)
}

// table reads a check table of testdata/colour: its rows by the names of its
// columns.
func table(t tb, name string) []map[string]string {
	t.Helper()
	f, err := os.Open("../../testdata/colour/" + name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	records, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var rows []map[string]string
	for _, r := range records[1:] {
		row := map[string]string{}
		for i, column := range records[0] {
			row[column] = r[i]
		}
		rows = append(rows, row)
	}
	return rows
}

func float(t tb, text string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return x
}

// near fails unless got is within tolerance of want.
func near(t tb, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s = %.8g, want %.8g within %.2g", what, got, want, tolerance)
	}
}

// nearXYZ fails unless each of X, Y and Z is within tolerance.
func nearXYZ(t tb, what string, got, want XYZ, tolerance float64) {
	t.Helper()
	near(t, "X of "+what, got.X, want.X, tolerance)
	near(t, "Y of "+what, got.Y, want.Y, tolerance)
	near(t, "Z of "+what, got.Z, want.Z, tolerance)
}

// nearLab fails unless each of L, a and b is within tolerance.
func nearLab(t tb, what string, got, want Lab, tolerance float64) {
	t.Helper()
	near(t, "L of "+what, got.L, want.L, tolerance)
	near(t, "a of "+what, got.A, want.A, tolerance)
	near(t, "b of "+what, got.B, want.B, tolerance)
}

// swatch reads a colour that a test is sure of.
func swatch(t tb, text string) Swatch {
	t.Helper()
	s, err := ParseSwatch(text)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func ground(t tb, text string) Ground {
	t.Helper()
	g, err := NewGround(swatch(t, text), Mirroring)
	if err != nil {
		t.Fatal(err)
	}
	return g
}

func candy(t tb, text string, over Ground, film Film) Candy {
	t.Helper()
	c, err := NewCandy(swatch(t, text), over, film)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func coating(t tb, c Candy, over Ground, coat Film) Coating {
	t.Helper()
	out, err := c.Over(over, coat)
	if err != nil {
		t.Fatal(err)
	}
	return out
}

const um = 1e-6

// coats are so many coats of a candy at the strength of its swatch.
func coats(n float64) Film { return Film{Coats: q.Number(n), Build: 9 * um, Strength: 1} }
