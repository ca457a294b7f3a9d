package grit

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"

	q "coatwright/quantity"
)

// rows reads a check table of testdata/grit by its column names.
func rows(t *testing.T, name string) []map[string]string {
	t.Helper()
	f, err := os.Open("../../testdata/grit/" + name)
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

// um reads a size in um.
func um(t *testing.T, s string) q.Length {
	t.Helper()
	x, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return q.Length(x / 1e6)
}

// grade is the only grade of that name.
func grade(t testing.TB, name string) Grade {
	t.Helper()
	m, err := Parse(name)
	if err != nil || len(m.Grades) != 1 {
		t.Fatalf("Parse(%q) = %v, %v", name, m, err)
	}
	return m.Grades[0]
}

// sizes.csv says where each size is from, and names every grade.
func TestSizes(t *testing.T) {
	standings := map[string]Standing{"found": Published, "second-hand": SecondHand, "memory": Memory}
	table := rows(t, "sizes.csv")
	for _, r := range table {
		g := grade(t, r["grade"])
		if want := um(t, r["um"]); g.Size != want || g.Standing != standings[r["standing"]] {
			t.Errorf("%s is %v m, %s, want %v m, %s", g.Name(), g.Size, g.Standing, want, r["standing"])
		}
	}
	if known := len(Grades(P)) + len(Grades(CAMI)); known != len(table) {
		t.Errorf("%d grades are known, %d are in the table of sizes", known, len(table))
	}
}

// Tables disagree by a few percent, and never so far that a grade would be taken
// for its neighbour.
func TestSecondTable(t *testing.T) {
	for _, r := range rows(t, "second-table.csv") {
		g, other := grade(t, r["grade"]), um(t, r["um"])
		if off := math.Abs(float64(g.Size/other) - 1); off > 0.06 {
			t.Errorf("%s is %v m, the second table has %v, %.1f %% apart", g.Name(), g.Size, other, 100*off)
		}
		if back, err := Nearest(other, P); err != nil || back != g {
			t.Errorf("%v m is nearest to %v, %v, want %s", other, back, err, g.Name())
		}
	}
}

// equivalents.csv says where each pair is from. By the sizes, the nearest to CAMI
// 240 and to some others is another P grade than the table's, so it is read in one
// direction.
func TestEquivalents(t *testing.T) {
	for _, r := range rows(t, "equivalents.csv") {
		got, ratio, err := grade(t, r["p"]).Equivalent(CAMI)
		if err != nil || got.Name() != r["cami"] {
			t.Errorf("%s is near to %s, %v, want %s (%s)", r["p"], got.Name(), err, r["cami"], r["source"])
		}
		if ratio < 1/1.15 || ratio > 1.15 {
			t.Errorf("%s has a grain %.2f times as large as that of %s", r["cami"], ratio, r["p"])
		}
	}
}
