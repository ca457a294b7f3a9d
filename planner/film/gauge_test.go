package film

import (
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	q "coatwright/quantity"
)

// Worked by hand: deviations -2, 0, 2, -1, 1 have squares of 10 in all, over 4.
func TestGauged(t *testing.T) {
	got, err := Gauged([]q.Length{58 * um, 60 * um, 62 * um, 59 * um, 61 * um})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "mean", got.Mean.Micrometres(), 60, 1e-12)
	near(t, "deviation", got.Deviation.Micrometres(), math.Sqrt(2.5), 1e-9)
	if got.Count != 5 || got.Low != 58*um || got.High != 62*um {
		t.Errorf("Gauged = %+v", got)
	}
	if one, err := Gauged([]q.Length{58 * um}); err != nil || one.Deviation != 0 || one.Mean != 58*um {
		t.Errorf("one reading = %+v, %v", one, err)
	}
	_, err = Gauged(nil)
	refuses(t, err, "readings of the gauge: found none; expected at least one")
	_, err = Gauged([]q.Length{58 * um, -3 * um})
	refuses(t, err, "reading 2 of the gauge: found -3 um; expected 0 um or more")
}

// Published: slideplayer.com/slide/1430003 on SSPC-PA 2. For 8 to 12 mil no spot
// may be under 6.4 or over 14.4 mil, and the mean must be in the range.
func TestJudge(t *testing.T) {
	for _, c := range []struct {
		name        string
		spots       []float64 // mil
		fit         Fit
		thin, thick []int
		few         bool
	}{
		{"within", []float64{8, 9, 10, 11, 12}, Good, nil, nil, false},
		{"the least and the most spot", []float64{6.4, 9, 10, 11, 14.4}, Good, nil, nil, false},
		{"spots beyond", []float64{6.39, 9, 10, 11, 14.41}, Good, []int{0}, []int{4}, false},
		{"mean too thin", []float64{7, 7, 8, 8, 8}, Thin, nil, nil, false},
		{"mean too thick", []float64{13, 13, 12, 12, 12}, Thick, nil, nil, false},
		{"few spots", []float64{10, 10, 10}, Good, nil, nil, true},
	} {
		t.Run(c.name, func(t *testing.T) {
			var spots []q.Length
			for _, s := range c.spots {
				spots = append(spots, q.Length(s*mil))
			}
			got, err := Judge(spots, lengths(8*mil, 12*mil))
			if err != nil {
				t.Fatal(err)
			}
			r, err := Gauged(spots)
			if err != nil {
				t.Fatal(err)
			}
			if diff := cmp.Diff(Judgement{r, c.fit, c.thin, c.thick, c.few}, got); diff != "" {
				t.Errorf("Judge (-want +got):\n%s", diff)
			}
			if want := c.fit == Good && c.thin == nil && c.thick == nil; got.Good() != want {
				t.Errorf("Good = %v, want %v", got.Good(), want)
			}
		})
	}
	_, err := Judge([]q.Length{8 * mil}, lengths(50*um, 40*um))
	refuses(t, err, "wanted dry film: found 50 to 40 um; expected a range from the least to the most")
	_, err = Judge(nil, lengths(40*um, 50*um))
	refuses(t, err, "readings of the gauge: found none; expected at least one")
}

func TestReadingsProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		readings := make([]q.Length, rapid.IntRange(1, 20).Draw(t, "count"))
		for i := range readings {
			readings[i] = anyOf[q.Length](t, "reading", 0, 300*um)
		}
		got, err := Gauged(readings)
		if err != nil {
			t.Fatal(err)
		}
		const eps = 1e-15
		if got.Low > got.Mean+eps || got.Mean > got.High+eps || got.Deviation > got.High-got.Low+eps {
			t.Errorf("Gauged = %+v", got)
		}
		j, err := Judge(readings, lengths(got.Low, got.High))
		if err != nil || !j.Good() {
			t.Errorf("readings between their own least and most are not good: %+v, %v", j, err)
		}
	})
}

func BenchmarkJudge(b *testing.B) {
	spots := []q.Length{58 * um, 60 * um, 62 * um, 59 * um, 61 * um}
	for b.Loop() {
		if _, err := Judge(spots, lengths(50*um, 70*um)); err != nil {
			b.Fatal(err)
		}
	}
}
