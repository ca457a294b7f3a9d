package viscosity

import (
	"math"
	"testing"

	q "coatwright/quantity"
)

// ASTM D4212, 8.1: readings may differ by "up to 5 % per °F".
func TestWarmedByAFahrenheit(t *testing.T) {
	const fahrenheit = 5.0 / 9
	got, err := Warmed(100*mm2, q.Celsius(25), q.Celsius(25)+fahrenheit)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "thinnest", float64(got.Low)/mm2, 95, 0.2)
}

// A maker's manual: standard oils change "between 3% and 8%" for each degree C.
func TestWarmedHoldsStandardOils(t *testing.T) {
	got, err := Warmed(100*mm2, q.Celsius(25), q.Celsius(26))
	if err != nil {
		t.Fatal(err)
	}
	if got.Low > 92*mm2 || got.High < 97*mm2 {
		t.Errorf("one degree makes %v of 100 mm2/s, want 92 to 97 inside", got)
	}
}

func TestWarmed(t *testing.T) {
	cold, err := Warmed(100*mm2, q.Celsius(25), q.Celsius(18))
	if err != nil {
		t.Fatal(err)
	}
	near(t, "7 C colder, least", float64(cold.Low)/mm2, 100*math.Exp(0.21), 1e-6)
	near(t, "7 C colder, most", float64(cold.High)/mm2, 100*math.Exp(0.63), 1e-6)
	same, err := Warmed(100*mm2, q.Celsius(25), q.Celsius(25))
	if err != nil || same.Low != 100*mm2 || same.High != 100*mm2 {
		t.Errorf("no change of temperature makes %v, %v", same, err)
	}
}

func TestWarmedRefuses(t *testing.T) {
	for _, c := range []struct{ from, to float64 }{{25, 40}, {25, 10}, {25, math.NaN()}} {
		if got, err := Warmed(100*mm2, q.Celsius(c.from), q.Celsius(c.to)); err == nil {
			t.Errorf("from %g to %g C is %v", c.from, c.to, got)
		}
	}
	_, err := Warmed(100*mm2, q.Celsius(25), q.Celsius(5))
	const want = "found 5 °C, read at 25 °C; expected no more than 10 °C between the two: bring the paint there and read it"
	if err == nil || err.Error() != want {
		t.Errorf("error is\n\t%v\nwant\n\t%s", err, want)
	}
}

func BenchmarkWarmed(b *testing.B) {
	for b.Loop() {
		if _, err := Warmed(100*mm2, 298.15, 293.15); err != nil {
			b.Fatal(err)
		}
	}
}
