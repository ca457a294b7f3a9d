package drying

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	q "coatwright/quantity"
)

// Arrhenius, k(T2)/k(T1) = exp(Ea/R (1/T1 - 1/T2)), worked independently for
// the published activation energies: 29.3 kJ/mol (two-component fluorinated
// coating), 50, 70 and 77 kJ/mol (isocyanate and polyols).
func TestArrhenius(t *testing.T) {
	for _, c := range []struct{ energy, celsius, want float64 }{
		{29.3e3, 33, 1.475}, {50e3, 33, 1.941}, {70e3, 33, 2.531}, {77e3, 33, 2.777},
		{50e3, 60, 9.54}, {70e3, 60, 23.5},
	} {
		near(t, "speed", 1/slower(q.MolarEnergy(c.energy), q.Celsius(c.celsius)), c.want, 0.001)
	}
}

// Twice as fast for each 10 C: common practice for a cure. Doubling from 23 to
// 33 C would need 52.3 kJ/mol; ours gives 1.94, and less further up.
func TestCureDoublesAboutEveryTenDegrees(t *testing.T) {
	for _, celsius := range []float64{3, 13, 23, 33} {
		r := Factor(Cure, at(celsius, 50, 0.1)) / Factor(Cure, at(celsius+10, 50, 0.1))
		near(t, "speed gained over 10 C", r, 2, 0.12)
	}
}

// "For every 10 degrees C (18 degrees F) rise in temperature, pot life is
// reduced by approximately half": US guide specification UFGS-09971. One step
// up we are within 4 % of that, two steps up within 12 % and on the long side.
func TestPotLifeHalves(t *testing.T) {
	const atReference = 4 * 3600
	near(t, "pot life at 33 C", float64(PotLife(atReference, q.Celsius(33))), atReference/2, 0.04)
	near(t, "pot life at 43 C", float64(PotLife(atReference, q.Celsius(43))), atReference/4, 0.12)
}

func TestPotLifeIsNotStretchedByCold(t *testing.T) {
	for _, celsius := range []float64{-5, 10, 23} {
		if got := PotLife(3600, q.Celsius(celsius)); got != 3600 {
			t.Errorf("pot life at %v C = %v s, want 3600 s", celsius, got)
		}
	}
}

// The published rule from the temperature it is given for: 4 h at 21 C are 2 h
// at 31 C, 8 h at 11 C and 2.83 h at 26 C (UFGS-09971; the last worked
// independently). Arrhenius agrees within 3 %.
func TestPotLifeRuleFrom21(t *testing.T) {
	for _, c := range []struct{ celsius, hours float64 }{{31, 2}, {11, 8}, {26, 2.83}} {
		near(t, "pot life", 4/Faster(ActivationEnergy, q.Celsius(21), q.Celsius(c.celsius)), c.hours, 0.03)
	}
}

// "Every 10 degrees rise from 21 C will double the curing speed; 31 C twice, 41 C
// four times; 11 C half, 1 C a quarter": common practice, as a contractors'
// guide has it. We are within 12 % of it over those forty degrees.
func TestCureRuleFrom21(t *testing.T) {
	for _, c := range []struct{ celsius, times float64 }{{31, 2}, {41, 4}, {11, 0.5}, {1, 0.25}} {
		near(t, "speed", Faster(ActivationEnergy, q.Celsius(21), q.Celsius(c.celsius)), c.times, 0.12)
	}
}

// Twice as fast from 23 to 33 C needs 52.3 kJ/mol, worked independently.
func TestEnergyOf(t *testing.T) {
	cold, warm := Cured{7200, q.Celsius(23)}, Cured{3600, q.Celsius(33)}
	for _, pair := range [][2]Cured{{cold, warm}, {warm, cold}} {
		e, err := EnergyOf(pair[0], pair[1])
		if err != nil {
			t.Fatal(err)
		}
		near(t, "energy", float64(e), 52.3e3, 0.001)
	}
}

func TestEnergyOfTurnsFasterRound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		energy := q.MolarEnergy(rapid.Float64Range(10e3, 120e3).Draw(t, "energy"))
		at := q.Celsius(rapid.Float64Range(-5, 40).Draw(t, "cold"))
		cold := Cured{86400, at}
		warm := Cured{At: at + q.Temperature(rapid.Float64Range(1, 80).Draw(t, "more"))}
		warm.In = cold.In / q.Time(Faster(energy, cold.At, warm.At))
		got, err := EnergyOf(cold, warm)
		if err != nil || math.Abs(float64(got/energy)-1) > 1e-6 {
			t.Fatalf("%v, %v; want %v", got, err, energy)
		}
	})
}

func TestEnergyOfRefuses(t *testing.T) {
	for _, c := range []struct {
		name       string
		cold, warm Cured
		want       string
	}{
		{"no time", Cured{0, 300}, Cured{60, 310}, "expected two times above 0"},
		{"one temperature", Cured{120, 300}, Cured{60, 300.5}, "at least 1 K apart"},
		{"slower when warm", Cured{60, 300}, Cured{120, 310}, "the warmer cure to be the shorter"},
	} {
		if _, err := EnergyOf(c.cold, c.warm); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v, want it to say %q", c.name, err, c.want)
		}
	}
}

// Half an hour at 60 C, worked independently from the factors 23 to 60 C of the
// published energies: 9.54 for 50 kJ/mol (4.77 h), 3.70 for 29 (1.85 h), 32.2
// for 77 (16.1 h).
func TestEquivalent(t *testing.T) {
	got := Equivalent(1800, q.Celsius(60))
	near(t, "low", float64(got.Low), 1.85*3600, 0.005)
	near(t, "likely", float64(got.Likely), 4.77*3600, 0.005)
	near(t, "high", float64(got.High), 16.1*3600, 0.005)
}

// Half an hour at 60 C of the metal does what a night in the shop does, 8 to 16
// hours: common practice, no published source. That is the upper half of what
// the published energies give: two-pack films feel warmth more than the middle.
func TestBakeForANight(t *testing.T) {
	got := Equivalent(1800, q.Celsius(60))
	if !(got.Likely < 8*3600 && got.High > 16*3600) {
		t.Errorf("half an hour at 60 C is %v to %v h at 23 C", got.Likely/3600, got.High/3600)
	}
}

func TestEquivalentKeepsOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		at := q.Celsius(rapid.Float64Range(-10, 120).Draw(t, "celsius"))
		got := Equivalent(3600, at)
		if !(got.Low <= got.Likely && got.Likely <= got.High) {
			t.Fatalf("%+v", got)
		}
		if warmer := (got.Likely - 3600) * q.Time(at-Reference().Temperature); warmer < 0 {
			t.Fatalf("an hour at %v is %v s at 23 C", at, got.Likely)
		}
	})
}
