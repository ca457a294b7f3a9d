package viscosity

import (
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	q "coatwright/quantity"
)

func share(low, high q.Fraction) q.Range[q.Fraction] {
	return q.Range[q.Fraction]{Low: low, High: high}
}

const (
	lastWord = "An estimate; the cup has the last word. Pour this, stir, read at 25 °C, and go on in small steps."
	farApart = "Two rules, far apart: run the cup before and after the first pour, and the two readings give a better figure."
)

// The paint runs 60 s in a Ford 4 and is to run 35 s. With readings, worked by
// hand from PullFormula: 60 s are 213.7, 35 s 117.5 mm2/s, and the reading of 44 s
// with 5 % is 152.1. α = ln(213.7/152.1)/(0.05 ln(152.1/0.7)) = 1.263, and the share
// is ln(213.7/117.5)/(1.263 ln(117.5/0.7)) = 9.25 %.
func TestAdvise(t *testing.T) {
	ford4 := cup(t, "Ford 4")
	estimate, err := Estimate(ford4.viscosity(60), 0.7*mm2)
	if err != nil {
		t.Fatal(err)
	}
	calibrated, err := Calibrated(Reading{ford4, 60}, Reading{ford4, 44}, 0.05, 0.7*mm2)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name     string
		thinning Thinning
		want     q.Time
		allowed  q.Range[q.Fraction]
		pour     float64
		held     Held
		remarks  []string
	}{
		{"by the rules", estimate, 35, share(0.02, 0.20), 0.0477, Free, []string{farApart, lastWord}},
		{"no recipe", estimate, 35, share(0, 0), 0.0477, Free, []string{farApart, lastWord}},
		{"read", calibrated, 35, share(0.05, 0.10), 0.0925, Free, []string{lastWord}},
		{"recipe allows less", calibrated, 35, share(0, 0.05), 0.05, Most, []string{
			"35 s Ford 4 would take 9.25 % of thinner or more; the recipe allows 0 % to 5 %, so stop at 5 %.", lastWord}},
		{"recipe wants more", calibrated, 35, share(0.15, 0.20), 0.15, Least, []string{
			"35 s Ford 4 would take 9.25 % of thinner or less; the recipe wants 15 % to 20 %, so begin at 15 %.",
			"This is far beyond the 5 % that was read: read again on the way.", lastWord}},
		{"thin already", calibrated, 70, share(0, 0.10), 0, Free, []string{
			"The paint runs out in no more than 70 s Ford 4 as it is.", lastWord}},
		{"far from the reading", calibrated, 25, share(0, 0), 0.1667, Free, []string{
			"This is far beyond the 5 % that was read: read again on the way.", lastWord}},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, err := c.thinning.Advise(Reading{ford4, c.want}, c.allowed)
			if err != nil {
				t.Fatal(err)
			}
			near(t, "share to pour", float64(got.Pour), c.pour, 0.00005)
			if got.Held != c.held {
				t.Errorf("held to %q, want %q", got.Held, c.held)
			}
			if diff := cmp.Diff(c.remarks, got.Remarks); diff != "" {
				t.Errorf("remarks (-want +got):\n%s", diff)
			}
		})
	}
}

func TestAdviseSaysWhatZahnIs(t *testing.T) {
	e := Thinning{Paint: 200 * mm2, Thinner: 0.7 * mm2}
	got, err := e.Advise(Reading{cup(t, "Zahn 2"), 30}, share(0, 0))
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff([]string{farApart, zahnCaution, lastWord}, got.Remarks); diff != "" {
		t.Errorf("remarks (-want +got):\n%s", diff)
	}
}

func TestAdviseRefuses(t *testing.T) {
	e := Thinning{Paint: 200 * mm2, Thinner: 50 * mm2}
	for _, c := range []struct {
		name string
		want Reading
	}{
		{"cup", Reading{cup(t, "Ford 4"), 15}},
		{"thinner than the thinner", Reading{cup(t, "Ford 3"), 22}},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got, err := e.Advise(c.want, share(0, 0)); err == nil {
				t.Errorf("%s is advised with %+v", c.want, got)
			}
		})
	}
}

// What is poured lies in the recipe, and where it need not be held brings the cup
// to no less than was wanted.
func TestAdviceKeepsToTheRecipe(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		e := anyThinning(t)
		c := anyCup.Draw(t, "cup")
		want := Reading{c, anyTime(t, c, "time")}
		low := q.Fraction(rapid.Float64Range(0, 0.5).Draw(t, "least"))
		allowed := share(low, low+q.Fraction(rapid.Float64Range(0.001, 0.5).Draw(t, "and more")))
		a, err := e.Advise(want, allowed)
		if err != nil {
			t.Skip(err)
		}
		const sliver = 1e-9
		if !allowed.Holds(a.Pour) {
			t.Errorf("pour %v, allowed is %v", a.Pour, allowed)
		}
		if a.Held == Most && a.Time.High < want.Time*(1-sliver) {
			t.Errorf("held to the most, but %v is less than %v", a.Time, want.Time)
		}
		if a.Held == Least && a.Time.Low > want.Time*(1+sliver) {
			t.Errorf("held to the least, but %v is more than %v", a.Time, want.Time)
		}
		if a.Pour == a.Share.Low && a.Share.Low > 0 && a.Time.High < want.Time*(1-sliver) {
			t.Errorf("the first pour may bring %v at most, wanted was %v", a.Time, want.Time)
		}
	})
}

func BenchmarkAdvise(b *testing.B) {
	e := Thinning{Paint: 200 * mm2, Thinner: 0.7 * mm2}
	want, allowed := Reading{cup(b, "Ford 4"), 25}, share(0.05, 0.1)
	for b.Loop() {
		if _, err := e.Advise(want, allowed); err != nil {
			b.Fatal(err)
		}
	}
}
